"""The problem of asks as plain values: people, what could be asked for, gaps, diets, what was asked before."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Template:
    """Something to ask for. Dishes alike in every way that matters are one template, under several names.

    `servings` 1 or more; `effort` 1 (little) or more; `fits` are the profiles for which it counts, by index.
    `most` is how many people can be asked for it, 1 or more: one for each of its dishes, more where a crowd needs
    more than there are.
    """

    category: str
    servings: int
    effort: int
    dishes: tuple[str, ...]
    fits: frozenset[int] = frozenset()
    most: int = 1

    def __post_init__(self) -> None:
        if self.servings < 1 or self.effort < 1 or self.most < 1 or not self.dishes:
            raise ValueError(f"a template needs servings, effort, a dish and somebody to ask: {self}")


@dataclass(frozen=True)
class Person:
    """Somebody who can be asked. `load`: what they carry already, their past and present dishes beyond the least
    loaded person's; 0 or more. `can`: template index -> how gladly, 1 to 10. One ask at a time for each person."""

    id: str
    load: int
    can: Mapping[int, int]


@dataclass(frozen=True)
class Gap:
    """What a category is short of; both 0 or more. `weight`: how much a missing serving hurts, 1 or more."""

    category: str
    servings: int
    dishes: int
    weight: int


@dataclass(frozen=True)
class Profile:
    """People with the same needs and nothing listed free of them in one part of the meal."""

    needs: tuple[str, ...]
    part: str
    people: int


@dataclass(frozen=True)
class Problem:
    """`asked`: person id -> the template they have been asked for; such asks are moved as little as possible."""

    people: tuple[Person, ...]
    templates: tuple[Template, ...]
    gaps: tuple[Gap, ...]
    profiles: tuple[Profile, ...] = ()
    asked: Mapping[str, int] = field(default_factory=dict)

    def burden(self, person: Person, template: int) -> int:
        """What one ask puts on one person: its effort, and twice what they carry already."""
        return self.templates[template].effort + 2 * person.load

    @property
    def open_asks(self) -> dict[str, int]:
        """The asks made before which can still be kept: person id -> template."""
        people = {person.id: person for person in self.people}
        return {who: t for who, t in self.asked.items() if who in people and t in people[who].can}

    @property
    def most_moves(self) -> int:
        """How many open asks may be taken back or changed: one in ten, one at least, and those nobody can keep."""
        times = Counter(self.open_asks.values())
        too_many = sum(max(0, n - self.templates[t].most) for t, n in times.items())
        return max(1, len(self.open_asks) // 10, too_many)


Chosen = Mapping[str, int]
"""Person id -> template index; who is not in it is not asked."""

LEVELS = ("shortage", "diets", "moves", "heaviest", "history", "count", "reluctance")
"""What is made small, each only as far as those before allow: weighted servings and dishes short; people with
needs left out; people asked before and now not, or for another thing; the heaviest burden on one person; effort
laid on those who carry much; people asked; how little they like it."""
