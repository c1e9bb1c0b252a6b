"""How long food may stand: the two-hour and one-hour clocks.

Minutes out of temperature add up: `Promise.out_min` already spent in the car and on the counter,
plus what passes after `Promise.out_since`. Sources: TIME-01 (two hours), TIME-02 (one hour in
heat), TIME-04 (the threshold; taken as "at 90 °F and above", the stricter reading).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import datetime, timedelta

from planning.potluck import Potluck, Promise

HOT_DAY_F = 90.0
LIMIT_MIN = 120
LIMIT_HOT_MIN = 60
DAY_MIN = 1440
WARN_BEFORE_MIN = 15
"""How long before the end people are told; common practice, no source."""

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


def is_hot(potluck: Potluck) -> tuple[bool, bool]:
    """(the one-hour limit holds, that is an assumption). Indoors it holds only when a temperature says so."""
    if potluck.outdoor_temp_f is not None and potluck.setting == "outdoor":
        return potluck.outdoor_temp_f >= HOT_DAY_F, False
    if potluck.setting != "outdoor":
        return False, False
    return (warm_half(potluck.timezone, potluck.local(potluck.starts_at)),) * 2


def clock(potluck: Potluck, promise: Promise) -> Clock:
    """The clock of one dish, running when `out_since` is set."""
    hot, assumed = is_hot(potluck)
    limit = LIMIT_HOT_MIN if hot else LIMIT_MIN
    # A figure that is none counts as used up: the careful reading.
    spent = min(max(0.0, promise.out_min), DAY_MIN) if math.isfinite(promise.out_min) else float(DAY_MIN)
    deadline = None
    if promise.out_since is not None:
        deadline = promise.out_since + timedelta(minutes=limit - spent)
    return Clock(limit, spent, promise.out_since, deadline, assumed, "TIME-02" if hot else "TIME-01")
