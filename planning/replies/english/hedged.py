"""A "maybe" that belongs to what stands right behind it: people who may come, one dish of several."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.intents import AddPromise, Intent, ReplyContext, SetAnswer, SetParty
from planning.replies.text import Message, Sentence

MAYBE, UNSURE = 0.9, 0.7
_HEDGE = r"(?:maybe|perhaps|probably|possibly|most likely|likely|potentially|prob|mebbe|might be|may be|could be)"
_BEFORE_PEOPLE = re.compile(
    rf"^ (?:(?:hm+|um+|uh|ok|oh|well|so|i think|i guess|i suppose|at this point|for now|tbh|,) )*{_HEDGE} (?:(?:just|it is|it will be|there will be|,) )*$"
)
_BEFORE_A_DISH = re.compile(rf" (?:{_HEDGE}) (?:(?:also|even|too|i will bring|i can bring|bring|with|,) )*$")


def told(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """ "Maybe me and 3 friends" is a maybe of four; of "deviled eggs and maybe a fruit tray" only the tray is asked
    about, and the writer's own coming is not in doubt."""
    return _people(message, _dishes(message, found, context), context)


def _people(message: Message, found: list[Intent], context: ReplyContext) -> list[Intent]:
    if context.answer is Answer.YES or context.asked in ("people", "servings", "diets"):
        return found
    if any(isinstance(i, SetAnswer) and i.who == context.writer for i in found):
        return found
    for at, intent in enumerate(found):
        if not isinstance(intent, SetParty) or intent.relative or intent.who != context.writer:
            continue
        before = _before(message, intent)
        if before is not None and _BEFORE_PEOPLE.match(before[1]) is not None:
            start = before[0].tokens[0].start
            maybe = SetAnswer(context.writer, Answer.MAYBE, start=start, end=intent.start, confidence=MAYBE)
            return [*found[:at], maybe, *found[at:]]
    return found


def _dishes(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    dishes = [i for i in found if isinstance(i, AddPromise) and i.by is None]
    first: AddPromise | None = None
    for dish in sorted(dishes, key=lambda i: i.start)[1:]:
        before = _before(message, dish)
        if before is not None and _BEFORE_A_DISH.search(before[1]) is not None:
            first = dish
            break
    if first is None:
        return list(found)
    unsure = first.start
    made: list[Intent] = []
    for intent in found:
        own = isinstance(intent, SetAnswer) and intent.who == context.writer and intent.answer is Answer.MAYBE
        if own and any(i.start < intent.start < intent.end <= unsure for i in dishes):
            continue
        if isinstance(intent, AddPromise) and intent.by is None and intent.start >= unsure:
            intent = replace(intent, confidence=min(intent.confidence, UNSURE))
        made.append(intent)
    return made


def _before(message: Message, intent: Intent) -> tuple[Sentence, str] | None:
    """The sentence an intent was read from, and its plain words before the intent (with a space around)."""
    for sentence in message.sentences:
        if sentence.tokens[0].start <= intent.start < sentence.tokens[-1].end and intent.end > intent.start:
            words = [t.plain for t in sentence.tokens if t.start < intent.start]
            return sentence, " " + "".join(f"{w} " for w in words)
    return None
