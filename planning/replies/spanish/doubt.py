"""How much of a sentence was understood: words that nobody read make what was read beside them doubtful.

A number or a person left over counts against a party, another number or "menos" against a promise, "pero", "salvo" and
"no" against all. Doubtful is asked about below the bot's own messages, and left alone in the open chatter.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from planning.potluck import Answer
from planning.replies.intents import (
    AddPromise,
    ChangePromise,
    DropPromise,
    Intent,
    ReplyContext,
    SetAnswer,
    SetNeeds,
    SetParty,
    TakeTopping,
)  # fmt: skip
from planning.replies.spanish.lexicon import words
from planning.replies.spanish.members import groups
from planning.replies.spanish.names import known_dish
from planning.replies.spanish.verbs import finite
from planning.replies.text import Message, Sentence, Token

DOUBTFUL = 0.78
"""Below what is done at once, above what is asked about."""
MOST_UNREAD = 4
"""So many words of content may be left beside a reading (common practice, no source)."""
_TURNS = frozenset(
    ("no", "salvo", "excepto", "menos", "nunca", "tampoco", "sino", "ni", "sin", "ninguno", "ninguna", "casi", "o")
)
_REASON = re.compile(
    r" (?:porque|ya que|que|pues|es que|por|asi que|para que|si no|aunque|eh|perdon|no se|no (?:hace falta|hay problema|pasa nada|importa|te preocupes|os preocupeis|se preocupen|me pidan|pidan|puede ser|lo dudes|duden|lo duden|mas|tengo (?:mas|nada)|le|les|os|nos|la|lo|tengo|hay|cocino|soy|sabe|me|traigan|traigais|llevo nada|traigo nada|quiero|ten)) "
)
"""What follows explains, and turns nothing."""


@dataclass(frozen=True)
class Unread:
    numbers: tuple[int, ...] = ()
    persons: int = 0
    dishes: int = 0
    turns: int = 0
    content: int = 0


def doubt(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """The intents, less sure where words of their sentence were left unread."""
    made: list[Intent] = []
    for intent in found:
        sentence = next((s for s in message.sentences if _holds(s, intent)), None)
        if sentence is None or intent.confidence <= DOUBTFUL or isinstance(intent, SetNeeds):
            made.append(intent)
            continue
        left = unread(sentence, found, context)
        doubtful = _doubtful(intent, left, context) or _contradicted(intent, found, context)
        made.append(replace(intent, confidence=DOUBTFUL) if doubtful else intent)
    return made


def _holds(sentence: Sentence, intent: Intent) -> bool:
    return sentence.tokens[0].start <= intent.start < sentence.tokens[-1].end and intent.end > intent.start


def _contradicted(intent: Intent, found: Sequence[Intent], context: ReplyContext) -> bool:
    """Whether the writer's no stands beside a party that comes."""
    if not isinstance(intent, SetParty) or intent.relative:
        return False
    return any(isinstance(i, SetAnswer) and i.who == context.writer and i.answer is Answer.NO for i in found)


def _doubtful(intent: Intent, left: Unread, context: ReplyContext) -> bool:
    many = left.content > MOST_UNREAD
    match intent:
        case SetAnswer():
            return (
                intent.answer is Answer.YES
                and not intent.implied
                and (left.turns > 0 or left.content > MOST_UNREAD + 2)
            )
        case SetParty():
            agreed = {intent.party.total, context.party.total if context.party is not None else 0}
            return (
                bool(
                    [n for n in left.numbers if n not in agreed]
                    or left.turns
                    or (left.persons and not intent.relative and not _counted(intent))
                )
                or many
            )
        case AddPromise() | TakeTopping():
            return bool(left.numbers or left.turns) or many
        case ChangePromise() | DropPromise():
            return bool([n for n in left.numbers if n > 1]) or many
    return False


def _counted(intent: SetParty) -> bool:
    return intent.confidence >= 0.9


def unread(sentence: Sentence, found: Sequence[Intent], context: ReplyContext) -> Unread:
    """What is left of the sentence beside these intents."""
    last = max((i.end for i in found if _holds(sentence, i)), default=0)
    reason = next((m for m in _REASON.finditer(sentence.text) if _place(sentence, m.start()) >= last), None)
    ends = _place(sentence, reason.start()) if reason is not None else 1 << 30
    tokens = [t for t in sentence.tokens if t.plain[:1].isalnum() and not _read(t, found)]
    before = [t for t in tokens if t.start < ends]
    before = [t for k, t in enumerate(before) if not _refuted(before, k)]
    members = " ".join(i.member for i in found if isinstance(i, SetNeeds) and i.member).split()
    own = {w for _, dish in context.own_promises for w in dish.lower().split()}
    plain = [t.plain for t in before]
    return Unread(
        numbers=tuple(int(w) for w in plain if w.isascii() and w.isdecimal() and len(w) < 5),
        persons=sum(1 for g in groups(plain) if g.kin not in members),
        dishes=sum(w not in own and w not in words("plain") and known_dish(w) is not None for w in plain),
        turns=sum(w in _TURNS for w in plain),
        content=len({w for w in plain if len(w) > 2 and not _small(w)}),
    )


def _refuted(left: Sequence[Token], k: int) -> bool:
    """ "Somos 3, no 2": the number that is not so, and its "no"."""
    if left[k].plain == "no":
        return k + 1 < len(left) and left[k + 1].plain.isdecimal()
    return left[k].plain.isdecimal() and k > 0 and left[k - 1].plain == "no"


def _place(sentence: Sentence, at: int) -> int:
    """Where in the message a place of the sentence's text is."""
    return next((t.start for i, t in enumerate(sentence.tokens) if sentence.offset(i) >= at), sentence.tokens[-1].end)


def _read(token: Token, found: Sequence[Intent]) -> bool:
    return any(i.start <= token.start < i.end for i in found)


def _small(word: str) -> bool:
    """A word that says little by itself."""
    return (
        any(word in words(role) for role in ("stop", "lead", "plain", "tail", "size", "eaters", "neutral"))
        or word in finite()
    )
