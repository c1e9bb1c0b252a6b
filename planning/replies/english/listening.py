"""Whether what somebody writes in the open group, to nobody, is meant for this supper all the same.

A linear model (logistic regression, one for changes and one for questions) over the message's words, pairs of
neighbouring words and what the rules would read in it below the board. Foods, kin and numbers count by their kind, so
that a dish nobody has written of yet weighs like any other. The weights, `data/words_overheard.csv`, are fitted to the
labelled sentences of our own corpus by `python -m tests.replies.learn`. What passes is read as if it hung below the
board: it is done, asked about or left alone by the same rules; a false alarm is told in one line with undo.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise
from math import exp

from planning.potluck import Answer
from planning.replies.english import doubt
from planning.replies.english.lexicon import singulars, words
from planning.replies.english.nouns import known_thing
from planning.replies.english.open_chat import LONE
from planning.replies.intents import (
    AddPerson,
    AddPromise,
    Ask,
    ChangePromise,
    DropPromise,
    Intent,
    ReplyContext,
    SetAnswer,
    SetNeeds,
    SetParty,
    TakeTopping,
)
from planning.replies.text import Message, Token
from planning.tables import rows

CHANGES = (SetAnswer, SetParty, AddPerson, AddPromise, ChangePromise, DropPromise, TakeTopping)
SEVERAL, NEAR_UNANSWERED, NEAR, FAR = 0.5, 0.72, 0.85, 0.95
"""How likely it must be: right below the board from somebody who has not answered, with two things told at once or with
one; from somebody who has; and long after the board. With
each file of the corpus left out in turn, at 0.8 88 % of what was meant for us passed, and 6 % of talk made to be taken
for it (`python -m tests.replies.learn --leave-out`)."""
ASKS, ASKS_THE_HOST, ASKS_FAR = 0.55, 0.85, 0.93
"""How likely a question must be ours: one the plan answers, one only the host could, and long after the board (from a
host, who asks what is missing, or on the day itself)."""
MOST_WORDS = 60
"""A longer message is a story."""
_WORD = re.compile(r"\w")
_KIN = ("kin", "kins", "guestkin")


def features(message: Message, found: Sequence[Intent], context: ReplyContext) -> frozenset[str]:
    """What the model sees of a message and of what the rules would read in it below the board."""
    return frozenset((*_of_words(message), *_of_reading(message, found, context)))


def _of_words(message: Message) -> Iterator[str]:
    count = 0
    for sentence in message.sentences:
        kinds = [_kind(t) for t in sentence.tokens if _WORD.match(t.plain)]
        count += len(kinds)
        yield from kinds
        yield from (f"{a} {b}" for a, b in pairwise(["^", *kinds, "?" if sentence.question else "$"]))
    yield f"length:{min(6, count // 4)}"


def _kind(token: Token) -> str:
    plain = token.plain
    if plain[0].isdecimal():
        return "#"
    if any(s in words(role) for role in _KIN for s in singulars(plain)):
        return "<kin>"
    if plain not in words("filler") and plain not in words("plain") and known_thing(plain)[1] >= 0.95:
        return "<food>"
    return plain


def _of_reading(message: Message, found: Sequence[Intent], context: ReplyContext) -> Iterator[str]:
    kinds = set()
    for intent in found:
        kind = _named(intent, context)
        kinds.add(kind)
        yield f"sure:{kind}:{int(intent.confidence * 10)}"
        if isinstance(intent, AddPromise) and (intent.servings or intent.quantity):
            kinds.add("amount")
    yield from (f"read:{kind}" for kind in kinds)
    yield f"kinds:{min(4, len(kinds))}"
    left = [doubt.unread(s, found, context) for s in message.sentences]
    yield f"left:{min(5, sum(u.content for u in left))}"
    yield f"turns:{min(2, sum(u.turns for u in left))}"
    yield f"numbers:{min(2, sum(len(u.numbers) for u in left))}"


def _named(intent: Intent, context: ReplyContext) -> str:
    match intent:
        case SetAnswer():
            whose = "" if intent.who == context.writer else ":other"
            return f"answer:{intent.answer.value}{':implied' if intent.implied else ''}{whose}"
        case AddPromise():
            return "vague" if intent.vague else "bring" if intent.category else "bring:odd"
        case Ask():
            return f"ask:{intent.topic}"
        case _:
            return intent.kind


@cache
def _weights() -> dict[str, tuple[float, float]]:
    return {row["feature"]: (float(row["change"]), float(row["ask"])) for row in rows("words_overheard")}


def _says_more(message: Message, found: Sequence[Intent], context: ReplyContext) -> bool:
    """Whether words of content are left beside who comes."""
    return any(doubt.unread(s, found, context).content > 0 for s in message.sentences)


def odds(found: frozenset[str]) -> tuple[float, float]:
    """The probability that something is told, and that something is asked, which is for us."""
    weights = _weights()
    told, asked = weights[""]
    for feature in found:
        more = weights.get(feature, (0.0, 0.0))
        told, asked = told + more[0], asked + more[1]
    return 1 / (1 + exp(-told)), 1 / (1 + exp(-asked))


SHORT = 12


def _stays_away(message: Message, found: Sequence[Intent], context: ReplyContext) -> bool:
    """Whether somebody who has not answered says no or perhaps right below the board, in a short message that begins
    with it ("can't make it, dentist"): what else could it answer?"""
    if not context.near_board or context.answer is not Answer.NONE or len(found) != 1:
        return False
    given, tokens = found[0], [t for s in message.sentences for t in s.tokens]
    return (
        isinstance(given, SetAnswer) and given.who == context.writer and given.answer is not Answer.YES
        and given.confidence >= 0.9 and len(tokens) <= SHORT
        and sum(t.start < given.start for t in tokens) <= 2
    )  # fmt: skip


def for_us(message: Message, found: Sequence[Intent], context: ReplyContext) -> bool:
    """Whether a message in the open is to be taken as written to us; `found` is what it says as to the board."""
    if message.quoted or not found or sum(len(s.tokens) for s in message.sentences) > MOST_WORDS:
        return False
    told, asked = odds(features(message, found, context))
    if any(isinstance(i, Ask) for i in found):
        only = all(isinstance(i, Ask) for i in found)
        if not only:
            return False
        least = ASKS_THE_HOST if any(isinstance(i, Ask) and i.topic in ("host", "why") for i in found) else ASKS
        if not (context.near_board or context.today):
            least = ASKS_FAR if context.host else 2.0
        return asked >= least
    mine = [i for i in found if isinstance(i, CHANGES) and getattr(i, "who", context.writer) == context.writer]
    if not mine or all(isinstance(i, (SetNeeds, SetAnswer)) and i.confidence < 0.6 for i in mine):
        return False
    plain = [t.plain for s in message.sentences for t in s.tokens if _WORD.match(t.plain)]
    if len(plain) < 2 or (len(plain) < 3 and set(plain) & LONE):
        return False
    if _stays_away(message, found, context):
        return told >= SEVERAL
    kinds = {type(i) for i in found if not getattr(i, "implied", False)}
    if not any(isinstance(i, (AddPromise, SetNeeds)) for i in found) and _says_more(message, found, context):
        return told >= FAR  # "3 of us watched it"
    if context.near_board:
        if context.answer is not Answer.NONE:
            return told >= NEAR
        return told >= (SEVERAL if len(kinds) > 1 else NEAR_UNANSWERED)
    amounts = any(isinstance(i, AddPromise) and (i.servings or i.quantity) for i in found)
    return told >= FAR and (len(kinds) > 1 or amounts)
