"""The writer and the others answer apart: "not me, but my wife and son will be there", "I'm coming but my wife isn't"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.english.lexicon import any_of
from planning.replies.english.lists import Members
from planning.replies.english.members import item
from planning.replies.english.stays import AWAY
from planning.replies.intents import AddPerson, Intent, ReplyContext, SetAnswer, SetParty
from planning.replies.text import Message, Sentence

SURE = 0.88
_NOT_ME = re.compile(
    r"(?:^|(?<= ,)|(?<= but)|(?<= though)|(?<= so)|(?<= \.)) (?:(?:sadly|sorry|unfortunately|not gonna lie|ok|so|,) )*(?P<no>(?:count|leave) me out|(?:but )?not me(?: though)?(?! and| or| but)|without me|minus me|not (?:going to|able to) (?:make it|come|be there)|not (?:coming|myself)|i (?:can|will|could) not(?: (?:make it|come|be there|join|do it))?(?: myself)?|i (?:am|will be) (?:not (?:coming|able to (?:make it|come))|away|working|busy|sick|ill|out)|i (?:have|got|need) to work)(?= $| ,| but| though| so| and| \.| this)"
)
_THEY_COME = re.compile(
    r"^ (?:(?:still|both|all|also) )*(?:(?:is|are|will be) (?:still |both |all |also )*(?:coming|there|in|joining|attending|free)|(?:will|can|would (?:love|like) to|want to|wants to) (?:still |both |all |also )*(?:come|be there|join|make it|attend)|(?:still )?(?:can|will)(?= $| ,| \.)|comes?|yes)(?= |$)"
)
_BUT_NOT_ME = re.compile(r"^(?: ,)? (?:but not me|without me|not me|minus me|and not me)(?= |$)")
_WHO = rf"(?:(?:my|our|the) )?(?:{any_of('kin')}|{any_of('kins')}|{any_of('guestkin')})"
_NOT_THEY = re.compile(
    rf"(?: ,| but| and| though| \.| -){{0,4}} (?:(?P<kin>{_WHO}|he|she|they) (?:{AWAY}|is out|is a no|are out|no(?= $| ,)|(?:is|are|can|will) not(?= $| ,| though| sadly))|(?:a )?no (?:for|from) (?:{_WHO}|him|her|them)|not (?:{_WHO}|him|her|them)(?= $| ,))(?= |$)"
)
_ME_YES = re.compile(
    r"(?:^|(?<= ,)|(?<= but)|(?<= so)|(?<= and)|(?<= \.)) (?:(?:yes|ok|so|though|still|well|,) ){0,4}(?P<yes>(?:a )?yes (?:for|from) (?:me|myself)|me yes|i (?:am|will be) (?:still |definitely )*(?:in|coming|there|on|free|up for it)|i (?:can|will) (?:still |definitely )*(?:come|be there|make it)|i (?:still )?(?:can|will)(?= $| ,)|just me then|count me in|in|coming)(?= $| ,| but| though| and| \.| no )"
)


MOST_WORDS = 60
"""A longer message is a story."""


def apart(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """The intents, where the writer's own answer and that of the party differ: who of them comes is the party."""
    if (
        not context.addressed
        or message.quoted
        or any(s.question for s in message.sentences)
        or len(message.sentences) > 3
        or sum(len(s.tokens) for s in message.sentences) > MOST_WORDS
    ):
        return list(found)
    return _without_me(message, found, context) or _without_them(message, found, context) or list(found)


def _without_me(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    said = next(((s, m) for s in message.sentences if (m := _NOT_ME.search(s.text)) is not None), None)
    if said is None:
        return []
    for sentence in message.sentences:
        members = Members(sentence)
        i = 0
        while i < len(sentence.tokens):
            told = members.at(i) or item(sentence.tokens, i, True)
            while (
                told is not None
                and told.last + 1 < len(sentence.tokens)
                and sentence.tokens[told.last].plain in ("and", "&", "+", ",")
            ):
                more = item(sentence.tokens, told.last + 1, True)
                if more is None or more.me or not more.total:
                    break
                told.merge(more)  # "my wife and son"
            if told is None or told.me or not told.total or not told.household:
                i += 1
                continue
            rest = sentence.text[sentence.offset(told.last) - 1 :]
            comes = _THEY_COME.match(rest) or _BUT_NOT_ME.match(rest)
            if comes is None or " not " in sentence.text[
                sentence.offset(told.last) - 1 : sentence.offset(told.last) + 12
            ].replace("but not", ""):
                i = told.last
                continue
            first, last = sentence.span(i, min(len(sentence.tokens), told.last + len(comes[0].split())))
            also = (said[0].span_of(said[1], "no"),)
            sure = SURE if not told.unknown_number else 0.7
            kept = [
                k for k in found
                if not (isinstance(k, (SetAnswer, SetParty)) and k.who == context.writer)
                and not (isinstance(k, AddPerson) and k.start < last and k.end > first)
            ]  # fmt: skip
            return [
                SetAnswer(context.writer, Answer.YES, start=first, end=last, also=also, confidence=sure),
                SetParty(context.writer, told.party(), start=first, end=last, also=also, confidence=sure),
                *kept,
            ]
    return []


def _without_them(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    if any(isinstance(k, SetParty) and not k.relative for k in found):
        return []
    for sentence in message.sentences:
        theirs = _NOT_THEY.search(sentence.text)
        mine = _ME_YES.search(_blanked(sentence, theirs)) if theirs is not None else None
        if theirs is None or mine is None:
            continue
        start, end = sentence.span_of(mine, "yes")
        also = (sentence.span_of(theirs),)
        yes = SetAnswer(context.writer, Answer.YES, start=start, end=end, also=also, confidence=SURE)
        kept = [
            replace(k, also=(*k.also, *also)) if isinstance(k, SetParty) else k
            for k in found if not (isinstance(k, SetAnswer) and k.who == context.writer)
        ]  # fmt: skip
        return [yes, *kept]
    return []


def _blanked(sentence: Sentence, match: re.Match[str]) -> str:
    """The text with the others' no blanked out (as long as before), so that it is nobody's yes."""
    return (
        sentence.text[: match.start()]
        + " ,"
        + "\x00" * (match.end() - match.start() - 2)
        + sentence.text[match.end() :]
    )
