"""What an appliance that fails leaves half cooked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from planning.kitchen.result import PlannedStep, Timeline
from planning.kitchen.usual import HEATING
from planning.potluck import Kitchen, Potluck


def interrupted(after: Kitchen, steps: Iterable[PlannedStep], now: datetime) -> tuple[PlannedStep, ...]:
    """The heating steps that run at `now` (UTC) on an appliance of the venue that `after` no longer has, by dish.

    `steps` are those last planned, so that what has begun is among them. A dish that is to be taken out half cooked
    is never kept to be finished later (COOK-38).
    """
    found: dict[str, PlannedStep] = {}
    for step in steps:
        if step.at == "venue" and step.kind in HEATING and step.start <= now < step.end and not _there(step, after):
            found.setdefault(step.promise, step)
    return tuple(found.values())


def as_it_runs(potluck: Potluck, last: Timeline | None) -> Timeline | None:
    """The last timeline without the steps whose appliance is no longer there: what else has begun goes on."""
    if last is None:
        return None
    return replace(last, steps=tuple(s for s in last.steps if s.at == "home" or _there(s, potluck.kitchen)))


def without_conflicts_of(timeline: Timeline | None, promises: set[str]) -> Timeline | None:
    """The timeline without the conflicts that are about nothing but these promises."""
    if timeline is None or not promises:
        return timeline
    return replace(timeline, conflicts=tuple(c for c in timeline.conflicts if not set(c.promises) <= promises))


def _there(step: PlannedStep, kitchen: Kitchen) -> bool:
    name, _, number = (step.appliance or "").partition(":")
    counts = {
        "oven": len(kitchen.ovens), "stove": kitchen.burners, "burner": kitchen.burners, "grill": kitchen.grills,
        "slow-cooker": len(kitchen.slow_cookers), "microwave": len(kitchen.microwaves),
    }  # fmt: skip
    if name not in counts:
        return True
    return not number.isdigit() or int(number) < counts[name]
