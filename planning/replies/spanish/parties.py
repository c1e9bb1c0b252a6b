"""A party in figures, and the words of the message it was told in."""

from __future__ import annotations

from collections.abc import Sequence

from planning.potluck import Party
from planning.replies.intents import ReplyContext, SetParty
from planning.replies.spanish.members import Group
from planning.replies.text import Sentence


def party(
    sentence: Sentence, context: ReplyContext, party: Party, first: int, last: int, sure: float = 0.9
) -> SetParty:
    start, end = span(sentence, first, last)
    return SetParty(context.writer, party, start=start, end=end, confidence=sure)


def relative(
    sentence: Sentence, context: ReplyContext, counts: dict[str, int], first: int, last: int, told: Sequence[Group] = ()
) -> SetParty:
    if told:
        first = min(first, sentence.offset(told[0].first) - 1)
    start, end = span(sentence, first, last)
    return SetParty(context.writer, Party(**counts), True, start=start, end=end, confidence=0.86)


def span(sentence: Sentence, first: int, last: int) -> tuple[int, int]:
    """The characters of the message for places in the sentence's text."""
    at = [
        t
        for i, t in enumerate(sentence.tokens)
        if first < sentence.offset(i) + len(t.plain) and sentence.offset(i) < last
    ]
    return (at[0].start, at[-1].end) if at else (0, 0)


def end_of(sentence: Sentence, told: Sequence[Group]) -> int:
    return sentence.offset(told[-1].last) if told else 0


def count(said: str) -> int:
    return int(said) if said.isdecimal() else 1
