"""Words for persons, and how many of which age a group of them has."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from planning.potluck import AGE_GROUPS, Party
from planning.replies.english.lexicon import words
from planning.replies.text import Token

ROLES = ("kin", "kins", "guestkin")
DETERMINERS = frozenset(("my", "our", "the", "a", "an", "his", "her", "their", "both", "all", "those", "these", "some"))
ADJECTIVES = frozenset(
    ("little", "older", "younger", "small", "big", "lovely", "dear", "new", "hungry", "other", "extra", "more",
     "grown", "whole", "them", "us", "whom", "young", "old", "two", "elderly", "wee", "tiny", "teenage",
     "adult", "grown-up", "very", "dearest", "wonderful", "noisy", "of", "own", "best", "sweet", "better",
     "vegetarian", "vegan", "visiting")
)  # fmt: skip
_NAMED_KIN = frozenset(
    ("mum", "mom", "mam", "mummy", "mommy", "mama", "dad", "daddy", "papa", "hubby", "wifey", "mrs", "grandma",
     "grandpa", "granny", "gran", "grandad", "granddad", "nan", "nana", "nanna", "auntie", "aunty", "missus")
)  # fmt: skip
"""Words for kin that need no "my" ("mum and dad are coming")."""
AND = (",", "and", "&", "+", "plus", "with", "also")
"""What stands between the members of a list."""


@dataclass
class People:
    """Counts found from token `first` up to `last`; `me` when the writer is among them."""

    first: int
    last: int
    counts: dict[str, int] = field(default_factory=dict)
    me: bool = False
    kin: str = ""
    kin_raw: str = ""
    household: bool = True
    unknown_number: bool = False
    items: int = 1
    names: int = 0
    """How many are known by a name only, and so taken for adults."""
    again: bool = False
    """The writer is named more than once."""
    bare: bool = False
    """Only numbers with general words ("2 people")."""

    def add(self, group: str, n: int) -> None:
        self.counts[group] = self.counts.get(group, 0) + n

    def merge(self, other: People) -> None:
        self.items += 1
        self.last = other.last
        for group, n in other.counts.items():
            self.add(group, n)
        self.me |= other.me
        self.household &= other.household
        self.unknown_number |= other.unknown_number
        self.names += other.names

    def divide(self, group: str, parts: dict[str, int]) -> None:
        """Moves the persons of `parts` out of `group`, which keeps the rest."""
        self.counts[group] = self.counts.get(group, 0) - sum(parts.values())
        for other, n in parts.items():
            self.add(other, n)
        self.counts = {g: n for g, n in self.counts.items() if n}

    @property
    def total(self) -> int:
        return sum(self.counts.values())

    def party(self) -> Party:
        return Party(**{group: self.counts.get(group, 0) for group in AGE_GROUPS})


def named_kin(token: Token) -> bool:
    """Whether it is a word for kin that is used like a name ("Mum", "grandpa's")."""
    return re.sub(r"['’]s$", "", token.raw.lower()) in _NAMED_KIN


def noun_at(tokens: Sequence[Token], i: int) -> bool:
    """Whether a word for a person or persons stands at `i`."""
    return i < len(tokens) and any(tokens[i].plain in words(role) for role in ROLES)


def phrase_at(tokens: Sequence[Token], i: int) -> bool:
    """Whether an adjective here is the first word of a name for persons ("little ones", "other half")."""
    phrase = " ".join(t.plain for t in tokens[i : i + 2])
    return any(phrase in words(role) for role in ROLES)
