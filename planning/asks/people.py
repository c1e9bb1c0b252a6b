"""The guests as people who can be asked: who can make what, what they carry already, what they like."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from planning.asks.eligible import can_make, minutes_left
from planning.asks.problem import Template
from planning.dishes import Dish
from planning.potluck import Answer, Guest, Potluck

HEAVY = 4
"""More dishes than this beyond the least loaded person's make no difference any more."""


@dataclass(frozen=True)
class Cooks:
    """Guests alike in what they can make: the same way to go, an oven or none, cooks or not; the host alone."""

    guests: tuple[Guest, ...]
    left_min: float
    is_host: bool

    def can(self, dish: Dish) -> bool:
        return can_make(dish, self.guests[0], self.left_min, self.is_host)


def cooks_of(potluck: Potluck, askable: Sequence[Guest], now: datetime) -> tuple[Cooks, ...]:
    alike: dict[tuple[int, bool, bool, bool], list[Guest]] = {}
    for guest in askable:
        kind = (guest.travel_min, guest.has_oven, guest.can_cook, guest.id == potluck.host)
        alike.setdefault(kind, []).append(guest)
    return tuple(
        Cooks(tuple(guests), minutes_left(potluck, guests[0], now), kind[-1]) for kind, guests in alike.items()
    )


def able_to_make(cooks: Sequence[Cooks], dishes: Sequence[Dish]) -> dict[str, tuple[str, ...]]:
    """Dish -> who can make it and bring it in time."""
    return {dish.name: tuple(guest.id for some in cooks if some.can(dish) for guest in some.guests) for dish in dishes}


def loads_of(potluck: Potluck, askable: Sequence[Guest]) -> dict[str, int]:
    """What each carries beyond the least loaded: dishes brought to earlier potlucks and promised for this one.

    An unsure answer counts as one more, as the table would rest on somebody who may not come.
    """
    brought: dict[str, int] = {}
    for past in potluck.history:
        if past.came and past.category:
            brought[past.guest] = brought.get(past.guest, 0) + 1
    loads = {
        guest.id: brought.get(guest.id, 0)
        + len(potluck.promises_of(guest.id))
        + (0 if guest.answer is Answer.YES or guest.id == potluck.host else 1)
        for guest in askable
    }
    least = min(loads.values(), default=0)
    return {who: min(HEAVY, load - least) for who, load in loads.items()}


def likes_of(potluck: Potluck) -> frozenset[tuple[str, str]]:
    return frozenset((past.guest, past.category) for past in potluck.history if past.came and past.category)


def gladness(guest: Guest, template: Template, likes: frozenset[tuple[str, str]]) -> int:
    """1 to 10: more for a category they brought before, and for a sure answer."""
    glad = 5
    glad += 3 if (guest.id, template.category) in likes else 0
    glad += {Answer.YES: 1, Answer.MAYBE: -2, Answer.NONE: -1}.get(guest.answer, 0)
    return max(1, min(10, glad))
