"""What runs in the kitchen at a moment, and what comes next."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from planning.kitchen.result import PlannedStep, Timeline

SOON = timedelta(minutes=10)
NEXT = timedelta(hours=2)
"""How far "next" looks; the first step is shown however far it is. Common practice, no source."""


@dataclass(frozen=True)
class Moment:
    """`running` by when they end, `coming` by when they start; each only steps that somebody or something does."""

    running: tuple[PlannedStep, ...]
    coming: tuple[PlannedStep, ...]


def moment(timeline: Timeline | None, now: datetime, ahead: timedelta = NEXT) -> Moment:
    """The steps that run at `now`, and those that start within `ahead` (at least the next one)."""
    steps = timeline.doable if timeline is not None else ()
    running = sorted((s for s in steps if s.start <= now < s.end), key=lambda s: (s.end, s.promise, s.step))
    later = sorted((s for s in steps if s.start > now), key=lambda s: (s.start, s.promise, s.step))
    first = later[0].start if later else now
    return Moment(tuple(running), tuple(s for s in later if s.start <= max(now + ahead, first)))


def soon(timeline: Timeline | None, now: datetime) -> tuple[PlannedStep, ...]:
    """What must be begun or ended within the next ten minutes, by time."""
    steps = timeline.doable if timeline is not None else ()
    due = [s for s in steps if now <= s.start <= now + SOON or now < s.end <= now + SOON]
    return tuple(sorted(due, key=lambda s: (s.start, s.promise, s.step)))
