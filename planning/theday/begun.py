"""A dish that is on the heat since an hour that was told: when it is done, and which one the meal waits for."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from planning.kitchen.usual import HEATING, steps_of
from planning.potluck import Potluck, Promise

BEFORE = timedelta(hours=16)
"""Nothing is on the heat longer than that before a meal (common practice, no source)."""


@dataclass(frozen=True)
class Cooking:
    """`minutes` on the heat from `since`, `done` with them; after `rest` minutes more it is `ready`. Instants."""

    since: datetime
    minutes: int
    rest: int

    @property
    def done(self) -> datetime:
        return self.since + timedelta(minutes=self.minutes)

    @property
    def ready(self) -> datetime:
        return self.done + timedelta(minutes=self.rest)


def cooking(potluck: Potluck, dish: Promise, since: datetime) -> Cooking | None:
    """How it goes on if it went in at `since`; None for what is not heated, as far as is known. Pure."""
    steps, _ = steps_of(potluck, dish)
    minutes = sum(s.minutes for s in steps if s.kind in HEATING)
    rest = sum(s.minutes for s in steps if s.kind == "rest")
    return Cooking(since, minutes, rest) if minutes else None


def going_on(potluck: Potluck, dish: Promise) -> Cooking | None:
    """Since when it is on the heat, as was told of this meal's day; None where nobody did. Pure."""
    if dish.began_at is None or not potluck.starts_at - BEFORE <= dish.began_at <= potluck.ends:
        return None  # told of another day, before the meal was moved
    return cooking(potluck, dish, dish.began_at)


def waits_for(potluck: Potluck) -> tuple[Promise, datetime] | None:
    """The dish that is ready last after the start, as was told, and when; None where the meal waits for none. Pure."""
    going = ((dish, going_on(potluck, dish)) for dish in potluck.promises)
    late = [(dish, one.ready) for dish, one in going if one is not None and one.ready > potluck.starts_at]
    return max(late, key=lambda one: one[1], default=None)
