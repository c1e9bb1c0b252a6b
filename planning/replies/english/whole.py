"""A message that is read to its last word: then what it names is meant, though no verb says so ("ice and 50 cups")."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.english.bare import BARE
from planning.replies.english.counts import MOST_ALONE
from planning.replies.english.doubt import odd_name, unread
from planning.replies.intents import AddPromise, Intent, ReplyContext, SetAnswer, SetParty
from planning.replies.text import Message

SURE = 0.85


def settled(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """The intents, dishes that were only named made sure where they stand in a list, beside an amount, a yes or a
    party, and every word of the message is part of what was read. A single dish by itself is asked about."""
    found = _fed(_counted(message, found))
    named = [i for i in found if isinstance(i, AddPromise) and BARE <= i.confidence < SURE]
    others = [i for i in found if i not in named]
    told = [i for i in found if isinstance(i, AddPromise) and not i.conditional and i.by is None]
    if not context.addressed or not named or message.quoted or not all(_plain(i) for i in named):
        return list(found)
    coming = any(
        (isinstance(i, SetAnswer) and i.answer is Answer.YES and not i.conditional and i.confidence >= SURE)
        or (isinstance(i, SetParty) and i.confidence >= SURE)
        for i in others
    )
    listed = len(told) > 1 or any(i.servings or i.quantity for i in told)
    if not (coming or listed) or any(s.question for s in message.sentences):
        return list(found)
    for sentence in message.sentences:
        left = unread(sentence, found, context)
        if left.content or left.numbers or left.dishes or left.turns or left.instead:
            return list(found)
    return [replace(i, confidence=SURE) if i in named else i for i in found]


def _counted(message: Message, found: Sequence[Intent]) -> list[Intent]:
    """ "Confirmed. Two. Wine, three bottles.": beside a yes a number that is a sentence by itself counts people."""
    yes = any(
        isinstance(i, SetAnswer) and i.answer is Answer.YES and not i.conditional and i.confidence >= SURE
        for i in found
    )
    if not yes or sum(isinstance(i, SetParty) for i in found) != 1:
        return list(found)
    alone = {s.tokens[0].start for s in message.sentences if len(s.tokens) == 1 and not s.question}
    return [
        replace(i, confidence=SURE)
        if isinstance(i, SetParty) and i.confidence == 0.6 and i.start in alone and 0 < i.party.total <= MOST_ALONE
        else i
        for i in found
    ]


MOST_GUESTS = 7
"""A party of more is rarely told beside a dish for as many (common practice, no source)."""


def _fed(found: Sequence[Intent]) -> list[Intent]:
    """ "Lasagna, 20 people" is for 20: those a dish feeds are no party of that many, where both were read from the
    same words."""
    dishes = [i for i in found if isinstance(i, AddPromise) and i.servings]
    return [
        i
        for i in found
        if not isinstance(i, SetParty)
        or i.relative
        or i.party.total <= MOST_GUESTS
        or all(d.servings != i.party.total or not (d.start < i.end and i.start < d.end) for d in dishes)
    ]


def _plain(promise: AddPromise) -> bool:
    whole = bool(promise.category) and not odd_name(promise.dish)
    return whole and not promise.vague and not promise.conditional and promise.by is None
