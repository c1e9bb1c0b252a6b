"""When frozen food must leave the freezer."""

from __future__ import annotations

import math
from collections.abc import Iterable
from datetime import datetime, timedelta

from planning.kitchen.result import PlannedStep
from planning.potluck import Potluck, Promise
from planning.safety.wall_clock import wall

THAW_LB_PER_DAY = 4.0
COLD_WATER_MIN_PER_LB = 30
HEAVIEST_LB = 1000.0
"""Only keeps a slip of the pen within what a calendar can hold."""

MOST_DAYS = 60
"""As `HEAVIEST_LB`, for days in the refrigerator."""


def thaw_days(frozen_lb: float) -> int:
    """Whole days in the refrigerator: ceil(lb / 4) (THAW-03, the slower of the published rates)."""
    return max(1, math.ceil(min(frozen_lb, 1e9) / THAW_LB_PER_DAY))


def cold_water_min(frozen_lb: float) -> float:
    """Minutes in cold water: 30 a pound (THAW-05), the water changed every 30 minutes (THAW-04)."""
    return COLD_WATER_MIN_PER_LB * min(frozen_lb, HEAVIEST_LB)


def thaw_by(potluck: Potluck, promise: Promise, steps: Iterable[PlannedStep] = ()) -> datetime | None:
    """The last moment (UTC) to move it from the freezer to the refrigerator; None when it is not frozen.

    It must be thawed when its first step begins: as planned, or else reckoned back from serving. Where its thawing is
    planned, and no later than the rule asks for, that is the moment.
    """
    if promise.frozen_lb is None or not math.isfinite(promise.frozen_lb) or promise.frozen_lb <= 0:
        return None
    work = [s for s in promise.heat or () if s.kind != "thaw" and s.minutes > 0]
    mine = [s for s in steps if s.promise == promise.id]
    planned = [s.start for s in mine if s.kind != "thaw"]
    needed = min(planned, default=potluck.starts_at - timedelta(minutes=min(sum(s.minutes for s in work), 2880)))
    # Days are counted on the wall clock, so that a night of 23 hours does not move the hour.
    local = potluck.local(needed)
    days = min(thaw_days(promise.frozen_lb), MOST_DAYS)
    latest = wall(potluck.zone, local.date() - timedelta(days=days), local.time().replace(tzinfo=None))
    begins = min((s.start for s in mine if s.kind == "thaw"), default=None)
    # The hour of a changed clock is no matter of safety here.
    return begins if begins is not None and begins <= latest + timedelta(hours=1) else latest
