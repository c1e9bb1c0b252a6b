"""How long food may stand: the two-hour and one-hour clocks.

Minutes out of temperature add up: `Promise.out_min` already spent in the car and on the counter,
plus what passes after `Promise.out_since`. Sources: TIME-01 (two hours), TIME-02 (one hour in
heat), TIME-04 (the threshold; taken as "at 90 °F and above", the stricter reading).
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from planning.kitchen.result import PlannedStep
from planning.potluck import Potluck, Promise

HOT_DAY_F = 90.0
LIMIT_MIN = 120
LIMIT_HOT_MIN = 60
DAY_MIN = 1440
WARN_BEFORE_MIN = 15
"""How long before the end people are told; common practice, no source."""

HOT = ("oven", "stove", "slow-cooker-low", "slow-cooker-high", "microwave", "grill", "keep-warm")
"""Kinds of steps that keep a dish hot."""

WARM_HALF_NORTH = range(4, 10)
"""April to September; October to March in the south."""

_SOUTH = (
    "Australia/", "Antarctica/", "America/Argentina/", "America/Sao_Paulo", "America/Santiago", "America/Asuncion",
    "America/Montevideo", "America/La_Paz", "America/Lima", "America/Buenos_Aires", "America/Punta_Arenas",
    "Africa/Johannesburg", "Africa/Harare", "Africa/Windhoek", "Africa/Maputo", "Africa/Lusaka", "Africa/Gaborone",
    "Africa/Maseru", "Africa/Mbabane", "Africa/Blantyre", "Indian/Antananarivo", "Indian/Mauritius", "Indian/Reunion",
    "Pacific/Auckland", "Pacific/Chatham", "Pacific/Fiji", "Pacific/Apia", "Pacific/Tongatapu", "Pacific/Noumea",
)  # fmt: skip
_TROPICS = ("Asia/Singapore", "Asia/Jakarta", "Asia/Kuala_Lumpur", "Asia/Manila", "Africa/Nairobi", "Africa/Lagos",
            "America/Bogota", "America/Guayaquil", "Asia/Colombo", "Pacific/Honolulu", "Asia/Bangkok")  # fmt: skip


@dataclass(frozen=True)
class Clock:
    """`limit_min` in all, `spent_min` until `since`, `deadline` UTC when the clock is running."""

    limit_min: int
    spent_min: float
    since: datetime | None
    deadline: datetime | None
    assumed_hot: bool
    rule: str

    def left_min(self, now: datetime) -> float:
        """Minutes left at `now`; negative once over."""
        running = 0.0 if self.since is None else max(0.0, (now - self.since).total_seconds() / 60)
        return self.limit_min - self.spent_min - running


def warm_half(timezone: str, when: datetime) -> bool:
    """Whether an unknown outdoor temperature must be reckoned as hot at that place and month.

    The warm half of the year is April to September, October to March for zones south of the
    equator. A zone whose hemisphere is not known, and one near the equator, counts as warm all
    year: the conservative reading (HEAT-01 asks to assume heat when it is unknown).
    """
    month = when.month
    if timezone.startswith(_SOUTH):
        return month not in WARM_HALF_NORTH
    known_north = timezone.startswith(("America/", "Europe/", "US/", "Canada/", "Asia/")) or timezone in (
        "Africa/Cairo",
    )
    if timezone in _TROPICS or not known_north:
        return True
    return month in WARM_HALF_NORTH


def more_minutes(potluck: Potluck, promise_id: str, minutes: float) -> Potluck:
    """The potluck once a dish has spent so many minutes more in the car or on the counter; at most a day in all."""

    def more(promise: Promise) -> Promise:
        spent = promise.out_min if math.isfinite(promise.out_min) else float(DAY_MIN)
        return replace(promise, out_min=min(float(DAY_MIN), max(0.0, spent) + max(0.0, minutes)))

    return replace(potluck, promises=tuple(more(p) if p.id == promise_id else p for p in potluck.promises))


def on_the_table(potluck: Potluck, promise_id: str, steps: Iterable[PlannedStep], now: datetime) -> Potluck:
    """The potluck with the minutes counted that a dish, put on the table now for the first time, spent off heat."""
    promise = potluck.promise(promise_id)
    if promise is None or promise.out_since is not None or promise.out_min > 0:
        return potluck
    return more_minutes(potluck, promise_id, _counted_min(potluck, promise, steps, now))


def is_hot(potluck: Potluck) -> tuple[bool, bool]:
    """(the one-hour limit holds, that is an assumption). Indoors it holds only when a temperature says so."""
    if potluck.outdoor_temp_f is not None and potluck.setting == "outdoor":
        return potluck.outdoor_temp_f >= HOT_DAY_F, False
    if potluck.setting != "outdoor":
        return False, False
    return (warm_half(potluck.timezone, potluck.local(potluck.starts_at)),) * 2


def off_heat_min(potluck: Potluck, promise: Promise, steps: Iterable[PlannedStep], table: datetime) -> float:
    """Minutes between the end of a dish's last heat, as planned, and the table: counter and car count too.

    0 where nothing is planned for it. What is chilled after its heat counts until it is in the refrigerator, and then
    only for what is done with it outside: the way, or a preparation.
    """
    mine = sorted((s for s in steps if s.promise == promise.id), key=lambda s: (s.start, s.step))
    since = max((s.end for s in mine if s.kind in HOT), default=None)
    if since is None:
        return 0.0
    minutes, cold = 0.0, False
    for step in mine:
        if step.start < since or step.kind in HOT:
            continue
        if step.kind == "chill":
            minutes += 0.0 if cold else (step.start - since).total_seconds() / 60
            cold, since = True, step.end
        elif cold:
            minutes += (step.end - step.start).total_seconds() / 60
    return minutes if cold else max(0.0, (table - since).total_seconds() / 60)


def stands_warm(promise: Promise) -> bool:
    """Whether it is meant to stay warm until it is served; what is served cold is chilled, whoever says so or not."""
    if promise.serve is None:
        return promise.category in ("main", "side", "starter")
    return promise.serve != "cold"


def _counted_min(potluck: Potluck, promise: Promise, steps: Iterable[PlannedStep], table: datetime) -> float:
    """The minutes off heat that count: a cold dish which would stand for longer than the limit is chilled meanwhile."""
    minutes = off_heat_min(potluck, promise, steps, table)
    return minutes if stands_warm(promise) or minutes < _limit(potluck) else 0.0


def _limit(potluck: Potluck) -> int:
    return LIMIT_HOT_MIN if is_hot(potluck)[0] else LIMIT_MIN


def clock(potluck: Potluck, promise: Promise, steps: Iterable[PlannedStep] = ()) -> Clock:
    """The clock of one dish, running when `out_since` is set.

    Before that the minutes planned between its last heat and the table, by the steps of the timeline, are
    spent as well; once it is on the table they stand in `out_min`.
    """
    hot, assumed = is_hot(potluck)
    limit = _limit(potluck)
    # A figure that is none counts as used up: the careful reading.
    spent = min(max(0.0, promise.out_min), DAY_MIN) if math.isfinite(promise.out_min) else float(DAY_MIN)
    if promise.out_since is None:
        spent = min(spent + _counted_min(potluck, promise, steps, potluck.starts_at), float(DAY_MIN))
    deadline = None
    if promise.out_since is not None:
        deadline = promise.out_since + timedelta(minutes=limit - spent)
    return Clock(limit, spent, promise.out_since, deadline, assumed, "TIME-02" if hot else "TIME-01")
