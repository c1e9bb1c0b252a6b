"""Who may do what, and how large things may get."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, replace

from planning.potluck import Guest, Potluck, Stage

MOST_OF_ONE_AGE = 50
MOST_GUESTS = 500
MOST_PROMISES = 500
MOST_SERVINGS = 1000
LONGEST_NAME = 100
LONGEST_TEXT = 200


class Refusal(Exception):
    """An expected "no": a text key and its facts, never a crash."""

    def __init__(self, key: str, **facts: object) -> None:
        super().__init__(key)
        self.key = key
        self.facts = facts


@dataclass(frozen=True)
class Actor:
    """The person who acts. `is_admin` is true for an administrator of the potluck's group."""

    id: str
    name: str
    is_admin: bool = False
    username: str | None = None


def may_manage(potluck: Potluck, by: Actor) -> bool:
    """The host, a co-host, or an administrator of the group who steps in."""
    return by.id == potluck.host or by.id in potluck.cohosts or by.is_admin


def require_manager(potluck: Potluck, by: Actor) -> None:
    if not may_manage(potluck, by):
        host = potluck.guest(potluck.host)
        raise Refusal("refused-not-host", host=host.name if host else "")


def require_open(potluck: Potluck) -> None:
    if potluck.stage is Stage.CANCELLED:
        raise Refusal("refused-cancelled")
    if potluck.stage is Stage.DONE:
        raise Refusal("refused-over")


def speaks_for(potluck: Potluck, by: Actor, guest: Guest) -> bool:
    """Oneself, a person one added, a named person without an account, or anybody if one manages."""
    return guest.id == by.id or guest.added_by == by.id or guest.id.startswith("n") or may_manage(potluck, by)


def require_voice(potluck: Potluck, by: Actor, guest: Guest) -> None:
    if not speaks_for(potluck, by, guest):
        raise Refusal("refused-not-yours", name=guest.name)


def tidy(text: str, longest: int, *, empty: str) -> str:
    """One line, NFC, no control or direction characters, at most `longest` code points.

    Raises Refusal(empty) when nothing readable is left.
    """
    kept = (" " if c.isspace() else c for c in unicodedata.normalize("NFC", text))
    # Cf holds the direction marks that could reorder somebody else's words; the joiner U+200D
    # stays because emoji and several scripts are spelled with it.
    clean = "".join(c for c in kept if c == "\u200d" or unicodedata.category(c) not in ("Cc", "Cf", "Cs", "Co"))
    clean = " ".join(clean.split()).strip("\u200d ")
    if not clean:
        raise Refusal(empty)
    if len(clean) > longest:
        raise Refusal("refused-too-long", most=longest)
    return clean


def whole(value: float, low: int, high: int, key: str) -> int:
    """`value` as an int within [low, high], else Refusal(key)."""
    if value != int(value) or not low <= value <= high:
        raise Refusal(key, low=low, high=high)
    return int(value)


def replace_guest(potluck: Potluck, guest: Guest) -> Potluck:
    return replace(potluck, guests=tuple(guest if g.id == guest.id else g for g in potluck.guests))


def next_id(potluck: Potluck, letter: str) -> tuple[Potluck, str]:
    """A fresh id, and the potluck that remembers it was used."""
    number = potluck.last_number + 1
    return replace(potluck, last_number=number), f"{letter}{number}"


def without(values: Iterable[str], value: str) -> tuple[str, ...]:
    return tuple(v for v in values if v != value)
