"""The grid a kitchen is planned on, and at which of its slots a step may begin: while people are up."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta

from planning.kitchen.modes import SLOT_MIN, TOLERANCE_F, slots, step_minutes
from planning.kitchen.steps import OVEN
from planning.potluck import HeatStep, Potluck

MOST_DAYS = 21
"""Nothing is planned longer ahead than that; common practice, no source."""

OPEN = 1 << 20
"""The end of a window that does not end."""

Spans = tuple[tuple[int, int], ...]
"""Slots from the first to the last of each, both included, in order."""


@dataclass(frozen=True)
class Frame:
    """The grid: slot 0 is `origin` (UTC), serving is at slot `due`, people are up from slot `wake`."""

    origin: datetime
    due: int
    wake: int
    now: int

    def slot_up(self, instant: datetime) -> int:
        """The first slot that begins at or after the instant, never below 0."""
        return max(0, math.ceil((instant - self.origin).total_seconds() / 60 / SLOT_MIN))

    def slot_down(self, instant: datetime) -> int:
        return math.floor((instant - self.origin).total_seconds() / 60 / SLOT_MIN)

    def instant(self, slot: int) -> datetime:
        return self.origin + timedelta(minutes=slot * SLOT_MIN)


def hours(potluck: Potluck) -> tuple[time, time]:
    """When people get up and go to bed; the usual hours where what is written is none."""
    try:
        up, down = (time.fromisoformat(t) for t in potluck.kitchen.awake)
    except ValueError:
        return time(7, 0), time(22, 0)
    return up, down


def _on(potluck: Potluck, back: int, at: time) -> datetime:
    """The instant at which clocks show `at`, `back` days before the day of the potluck."""
    day = potluck.local(potluck.starts_at).date() - timedelta(days=back)
    return datetime.combine(day, at, potluck.zone).replace(fold=0).astimezone(UTC)


def wake_up(potluck: Potluck) -> datetime:
    """The last time people got up before serving (UTC)."""
    up, _ = hours(potluck)
    today = _on(potluck, 0, up)
    return today if today < potluck.starts_at else _on(potluck, 1, up)


def bed_time(potluck: Potluck) -> datetime:
    """When people go to bed after they got up for the potluck (UTC); who gives one is up until it begins."""
    up, down = hours(potluck)
    back = 0 if _on(potluck, 0, up) < potluck.starts_at else 1
    return max(_on(potluck, back if down > up else back - 1, down), potluck.starts_at)


def days_before(potluck: Potluck, frame: Frame) -> Iterator[tuple[int, int]]:
    """The slots in which people are up on each of the days before, the earliest first."""
    up, down = hours(potluck)
    last = 0 if _on(potluck, 0, up) < potluck.starts_at else 1
    for back in range(MOST_DAYS + last, last, -1):
        end = _on(potluck, back if down > up else back - 1, down)
        if potluck.local(end).time() > down:
            # No clock shows that hour in this night: it is over with the last minute before.
            end -= timedelta(minutes=1)
        lo, hi = frame.slot_up(_on(potluck, back, up)), min(frame.slot_down(end), frame.wake - 1)
        if lo <= hi:
            yield lo, hi


def windows(potluck: Potluck, frame: Frame, steps: Sequence[HeatStep], low: int, *, early: bool, warm: int) -> Spans:
    """When these steps, which run on, may start, at `low` at the earliest: on the day, and with `early` on days before.

    Every one of them begins while people are up. `warm`: slots an oven needs before, from waking or from now.
    """
    low = max(low, frame.now + warm)
    today = (max(low, frame.wake + warm), OPEN)
    if not early:
        return (today,)
    before = tuple(days_before(potluck, frame))
    up = (*before, (frame.wake, OPEN))
    starts: Spans = (*((max(lo + warm, low), hi) for lo, hi in before), today)
    for begin in _begins(steps):
        starts = tuple(_both(starts, [(lo - begin, hi - begin) for lo, hi in up]))
    return tuple(s for s in starts if s[0] <= s[1])


def _begins(steps: Sequence[HeatStep]) -> Iterator[int]:
    """For each step after the first, after how many slots it begins at the soonest and at the latest."""
    sooner = later = 0
    for step in steps[:-1]:
        lengths = {slots(step.minutes)}
        if step.kind == OVEN and step.temp_f and step.movable:
            lengths |= {slots(step_minutes(step, step.temp_f + by)) for by in (TOLERANCE_F, -TOLERANCE_F)}
        sooner, later = sooner + min(lengths), later + max(lengths)
        yield sooner
        yield later


def _both(some: Iterable[tuple[int, int]], others: Sequence[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    for a, b in some:
        for c, d in others:
            if max(a, c) <= min(b, d):
                yield max(a, c), min(b, d)
