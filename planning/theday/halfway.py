"""What an appliance that fails leaves half cooked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from planning.kitchen.result import Conflict, PlannedStep, Timeline
from planning.kitchen.usual import HEATING
from planning.potluck import Kitchen, Potluck, Say


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
    """The timeline without what its conflicts say about these promises."""
    if timeline is None or not promises:
        return timeline
    left = (_of_others(c, promises) for c in timeline.conflicts if not set(c.promises) <= promises)
    return replace(timeline, conflicts=tuple(left))


def _of_others(conflict: Conflict, promises: set[str]) -> Conflict:
    """What is said of several dishes at once, without some of them."""
    if promises.isdisjoint(conflict.promises):
        return conflict
    stay = [n for n, p in enumerate(conflict.promises) if p not in promises]
    why = _naming(conflict.why, stay, len(conflict.promises))
    fixes = []
    for fix in (conflict.fix, *conflict.others):
        of = fix.promises or conflict.promises
        mine = [n for n, p in enumerate(of) if p not in promises]
        if mine:
            text = _naming(fix.text, mine, len(of))
            fixes.append(replace(fix, promises=tuple(of[n] for n in mine) if fix.promises else (), text=text))
    names = tuple(conflict.promises[n] for n in stay)
    return replace(conflict, promises=names, why=why, fix=fixes[0], others=tuple(fixes[1:]))


def _naming(said: Say, stay: list[int], of: int) -> Say:
    """The same sentence with only these of its dishes."""
    dishes = said.facts.get("dishes")
    if not isinstance(dishes, (list, tuple)) or len(dishes) != of:
        return said
    return Say(said.key, {**said.facts, "dishes": [dishes[n] for n in stay]})


def _there(step: PlannedStep, kitchen: Kitchen) -> bool:
    name, _, number = (step.appliance or "").partition(":")
    counts = {
        "oven": len(kitchen.ovens), "stove": kitchen.burners, "burner": kitchen.burners, "grill": kitchen.grills,
        "slow-cooker": len(kitchen.slow_cookers), "microwave": len(kitchen.microwaves),
    }  # fmt: skip
    if name not in counts:
        return True
    return not number.isdecimal() or int(number) < counts[name]
