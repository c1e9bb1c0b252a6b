"""Somebody who is told of and does not come: "my sister is vegan but she lives in Oslo"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.replies.english.persons import noun_at
from planning.replies.intents import Intent, ReplyContext, SetNeeds
from planning.replies.text import Message, Sentence

_WHO = r"(?:(?:luckily|anyway|sadly|since|then|that) )*(?P<who>he|she|they|who|(?:my|our|the) [a-z]+|[a-z]+) (?:(?:also|still|now|just) )*"
_NOT_THERE = re.compile(
    rf" (?:but|and|though|although|only|so|luckily|anyway|,|:|-|\() {_WHO}(?:am|is|are|will|can|could|would) not (?:be )?(?:able to )?(?:com(?:e|ing)|join(?:ing)?|be there|attend(?:ing)?|there|with us|around|invited|here|make it|going)(?= |$)"
)
_FAR_OFF = re.compile(
    rf" (?:but|though|although|luckily|thankfully) {_WHO}(?:(?:lives?|living|works?|studies|resides?|is based|are based) (?:(?:far )?away|abroad|overseas|elsewhere|(?:over |back |down |up |out )?in (?P<there>[a-z]+))|moved (?:away|abroad|to (?P<to>[a-z]+))|(?:is|are) (?:away|abroad|overseas|elsewhere|out of town|at sea|(?:over |back |down |up |out )?in (?P<at>[a-z]+))|(?:stays?|is staying|will stay) (?:at )?home)(?= |$)"
)
UNSURE = 0.6
_PRONOUNS = ("he", "she", "they", "who")


def without_the_absent(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """The readings without the needs of somebody else who, as the same sentence says, will not be there."""
    made: list[Intent] = []
    for intent in found:
        sentence = next((s for s in message.sentences if _holds(s, intent)), None)
        told = (
            isinstance(intent, SetNeeds)
            and sentence is not None
            and (bool(intent.member) or intent.who != context.writer)
            and not intent.cleared
        )
        if told and sentence is not None and (far := _absent(sentence)) is not None:
            several = far in _PRONOUNS and sum(noun_at(sentence.tokens, k) for k in range(len(sentence.tokens))) > 1
            if several:  # "my son is allergic, my aunt says she isn't coming": who is meant is asked
                made.append(replace(intent, confidence=min(intent.confidence, UNSURE)))
            continue
        made.append(intent)
    return made


def _absent(sentence: Sentence) -> str | None:
    """The word for who is told to be away: a pronoun, or a name said before; None when nobody is."""
    match = _NOT_THERE.search(sentence.text) or _FAR_OFF.search(sentence.text)
    if match is None:
        return None
    who, place = match["who"], next((v for k, v in match.groupdict().items() if v and k != "who"), "")
    if place and not any(t.plain == place and t.raw[:1].isupper() for t in sentence.tokens):
        return None  # "but she lives in the same house"
    said_before = f" {who.split()[-1]} " in sentence.text[: match.start() + 1]
    return who if who in _PRONOUNS or said_before else None


def _holds(sentence: Sentence, intent: Intent) -> bool:
    return sentence.tokens[0].start <= intent.start < sentence.tokens[-1].end and intent.end > intent.start
