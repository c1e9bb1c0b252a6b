"""From when on somebody can be there: "only from 7", "can't get there before 6", "I'll be there at 4:30pm"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.potluck import Answer
from planning.replies.intents import Intent, Late, ReplyContext, SetAnswer
from planning.replies.text import Message, Sentence

MOST_WORDS = 16
"""In the open chatter what is longer is a story."""
_HOUR = (
    r"(?:about |around |like |maybe |roughly |approx |say |at )*(?P<h>[0-9]{1,2}(?:[:.][0-9]{2})?(?: ?[ap]m)?|half past [0-9]{1,2}|noon)(?: o'clock|ish| ish| or so| at the earliest)*"
    r"(?= $| [,;(\x00-]| (?:because|as|since|so|but|and|due|cos|when|that|then|though|sorry|my|our|kids|the kids|work|if|tho|to|till|on the day|after|earliest)\b)"
)
_FROM = r"(?:at|by|from|after|around|about|past|starting)"
_NOT_BEFORE = r"(?:before|until|till|earlier than|any earlier than|prior to|any sooner than|sooner than)"
_BE = r"(?:be|get|make it|arrive|come|join|show up|turn up|get away|get off|pop in|drop in|swing by|stop by)(?: (?:there|over|here|you|in|up|us|along|able to|free|available|around|by))*"
_I = r"(?:(?:i|we)(?: (?:am|are))?|^(?:(?: yes| ok| sure| sorry| but| though| ,))*)"
_ARRIVES = tuple(
    re.compile(source)
    for source in (
        rf"{_I} (?:can|will|could|may|should|am able to|are able to)(?: probably| only| just| really)* (?:not )?{_BE} (?:only |just )*{_FROM} {_HOUR}",
        rf"{_I} (?:can|will|could|am|are|may)(?: probably| really)* not (?:be )?(?:able to |going to )?(?:be )?(?:{_BE}|free|available|there|here|home|off|done) {_NOT_BEFORE} {_HOUR}",
        rf"(?:^| ,| but| though| yes| and| coming| in| joining)(?: (?:but|though|,|i|we|am|are|will be|can|though))* (?:only|just)(?: (?:free|available|able|coming|there|around|here|arriving|able to come|able to make it|come|make it))* {_FROM} {_HOUR}",
        rf"(?:^| ,| but| though| yes| and| coming| in| joining)(?: (?:but|though|,|i|we|am|are|will be|can))* not(?: (?:free|available|able|coming|there|around|here|arriving|able to come|able to make it|come|make it|be there))* {_NOT_BEFORE} {_HOUR}",
        rf"{_I} (?:only )?(?:free|available|arriving|arrive|getting there|get there|coming over) (?:only )?{_FROM} {_HOUR}",
    )
)
"""The hour in group `h` is the clock's."""


def read_arrival(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The writer's own hour of arrival; its words are taken, so that "can't get there" in them is no "no"."""
    if sentence.question:
        return []
    for pattern in _ARRIVES:
        match = pattern.search(sentence.left)
        if match is None:
            continue
        start, end = sentence.span_of(match)
        hour = match["h"].replace(".", ":")
        return [Late(None, hour, start=start, end=end, confidence=0.88)]
    return []


def without_its_no(given: list[Intent], arrivals: list[Intent]) -> list[Intent]:
    """The answers less a "no" read from the words that tell of the hour ("can't get there before 6")."""
    return [
        i for i in given
        if not (
            isinstance(i, SetAnswer) and i.answer is not Answer.YES
            and any(a.start <= i.start < a.end or i.start <= a.start < i.end for a in arrivals)
        )
    ]  # fmt: skip


def for_us(message: Message, found: list[Intent], context: ReplyContext) -> bool:
    """Whether an hour told to nobody in the open group is for the host of this supper: right below the board, or from
    somebody who comes."""
    near = context.near_board or context.answer in (Answer.YES, Answer.MAYBE)
    if not near or message.quoted or sum(len(s.tokens) for s in message.sentences) > MOST_WORDS:
        return False
    if not any(isinstance(i, Late) and i.at is not None for i in found):
        return False
    return all(isinstance(i, Late) or (isinstance(i, SetAnswer) and i.who == context.writer) for i in found)
