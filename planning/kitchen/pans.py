"""When pans go into an oven and come out of it, as the cook at the oven is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from planning.kitchen.result import PlannedStep

IDLE = timedelta(minutes=60)
"""An oven that nobody uses for longer is switched off, and preheated again; common practice, no source."""

TOGETHER = timedelta(minutes=5)
"""Pans whose times end so near to each other come out at once, with the last of them."""


@dataclass(frozen=True)
class Pans:
    """One visit to an oven: `out` comes out at `at`, `into` goes in at `in_at`. `cold`: it must be turned on first."""

    oven: str
    at: datetime
    out: tuple[PlannedStep, ...] = ()
    into: tuple[PlannedStep, ...] = ()
    in_at: datetime | None = None
    cold: bool = False


def visits(steps: Iterable[PlannedStep]) -> Iterator[Pans]:
    """All visits to all ovens, oven by oven. Pans that come out and those that go in next are one visit."""
    every = [s for s in steps if s.appliance is not None and s.appliance.startswith("oven:")]
    for oven in sorted({s.appliance or "" for s in every}):
        yield from _of_one(oven, _spells([s for s in every if s.appliance == oven]))


def _spells(steps: list[PlannedStep]) -> list[PlannedStep]:
    """Steps of one dish that run on at the same setting are one stay in the oven."""
    stays: list[PlannedStep] = []
    for step in sorted(steps, key=lambda s: (s.promise, s.start, s.step)):
        last = stays[-1] if stays else None
        if last and (last.promise, last.end, last.temp_f) == (step.promise, step.start, step.temp_f):
            stays[-1] = replace(last, end=step.end)
        else:
            stays.append(step)
    return sorted(stays, key=lambda s: (s.start, s.promise, s.step))


def _of_one(oven: str, stays: Sequence[PlannedStep]) -> Iterator[Pans]:
    left = _ends(stays)
    for start in sorted({s.start for s in stays}):
        into = tuple(s for s in stays if s.start == start)
        if not any(s.start < start and s.end >= start - IDLE for s in stays):
            yield Pans(oven, start, into=into, in_at=start, cold=True)
            continue
        out = next((e for e in reversed(left) if start - IDLE <= max(s.end for s in e) <= start), ())
        if out:
            left.remove(out)
        yield Pans(oven, max((s.end for s in out), default=start), out, into, start)
    for out in left:
        yield Pans(oven, max(s.end for s in out), out)


def _ends(stays: Sequence[PlannedStep]) -> list[tuple[PlannedStep, ...]]:
    """The stays by when they end, those that come out together in one."""
    groups: list[tuple[PlannedStep, ...]] = []
    for stay in sorted(stays, key=lambda s: (s.end, s.promise, s.step)):
        if groups and stay.end - groups[-1][0].end <= TOGETHER:
            groups[-1] += (stay,)
        else:
            groups.append((stay,))
    return groups
