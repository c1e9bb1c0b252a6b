"""What a guest's sentence means, in the guest's own words: pure, quick, without a network.

`read` is the whole of it. Languages are folders of rules beside their words in `data/`; another one is added to
`LANGUAGES` with a function `message_of(text)` and a function `read(message, context)`.
"""

from __future__ import annotations

from collections.abc import Callable

from planning.potluck import Party
from planning.replies import english
from planning.replies.decide import decide, kind_of, tidy, with_implied
from planning.replies.intents import (
    TOPICS,
    AddPerson,
    AddPromise,
    Ask,
    ChangePromise,
    DropPromise,
    Intent,
    KitchenSays,
    Late,
    MoveTo,
    Reading,
    ReplyContext,
    Reschedule,
    Resize,
    SetAnswer,
    SetNeeds,
    SetParty,
    SetPregnant,
    TakeTopping,
    Undo,
)  # fmt: skip
from planning.replies.text import Message

__all__ = [
    "TOPICS", "AddPerson", "AddPromise", "Ask", "ChangePromise", "DropPromise", "Intent", "KitchenSays", "Late",
    "MoveTo", "Reading", "ReplyContext", "Reschedule", "Resize", "SetAnswer", "SetNeeds", "SetParty", "SetPregnant",
    "TakeTopping", "Undo", "kind_of", "read", "read_party",
]  # fmt: skip

LANGUAGES: dict[
    str,
    tuple[
        Callable[[str], Message],
        Callable[[Message, ReplyContext], tuple[list[Intent], list[str]]],
    ],
] = {"en": (english.message_of, english.read)}

PARTIES: dict[str, Callable[[str], Party | None]] = {"en": english.people.read_party}


def read(text: str, context: ReplyContext) -> Reading:
    """What the text asks for, seen from that context. Never raises, whatever the text; 4,096 characters at most
    are looked at. An unknown language is read as English."""
    message_of, understand = LANGUAGES.get(context.language, LANGUAGES["en"])
    found, passed = understand(message_of(text), context)
    return decide(with_implied(tidy(found), context), passed, context, text)


def read_party(text: str, language: str = "en") -> Party | None:
    """A party in words by itself ("2 adults and 1 child", "3"), or None."""
    return PARTIES.get(language, PARTIES["en"])(text)
