"""The timeline of a potluck."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime

from planning.kitchen.asleep import asleep_conflicts
from planning.kitchen.attempt import attempt
from planning.kitchen.check import LACKING, check
from planning.kitchen.conflicts import MOST_EXPLAINED, explain
from planning.kitchen.fridge import fridge_conflicts
from planning.kitchen.implausible import believable, implausible
from planning.kitchen.result import Conflict, Fix, PlannedStep, Timeline
from planning.kitchen.solve import EFFORT
from planning.kitchen.thawing import thaw_conflicts
from planning.kitchen.units import say_in_units
from planning.potluck import Answer, Potluck, Stage

NOTHING = Timeline("optimal", 0, 0)


def timeline(
    potluck: Potluck,
    now: datetime,
    effort: float = EFFORT,
    seed: int = 0,
    seconds: float | None = None,
    clock: Callable[[], float] | None = None,
    searched: int = MOST_EXPLAINED,
) -> Timeline:
    """Who does what when, backwards from serving time. Always answers; the same input gives the same timeline.

    `effort` is the solver's deterministic budget, `seconds` a wall-clock backstop, kept exactly where a `clock`
    (seconds, from anywhere) comes with it. Ways out are searched for the `searched` worst dishes, the others get
    the usual advice: 0 for whoever wants the steps alone. Dishes of guests who cannot come are left out. Nothing to
    heat or prepare, a cancelled potluck, or one that has started: an empty timeline, without waking the solver.
    """
    if potluck.stage is not Stage.PLANNED or now >= potluck.starts_at:
        return NOTHING
    # A figure nobody can mean is told whoever gave it, also by a guest who cannot come.
    figures = tuple(implausible(potluck))
    here = tuple(p for p in potluck.promises if (g := potluck.guest(p.guest)) is None or g.answer is not Answer.NO)
    potluck = believable(replace(potluck, promises=here))
    checked, faults = check(potluck)
    faults += figures
    if not checked:
        told = _in_units(potluck, faults + _warnings(potluck, (), now))
        return replace(NOTHING, status="impossible" if faults else "optimal", conflicts=told)
    found = attempt(potluck, checked, now, effort=effort, seed=seed, seconds=seconds, clock=clock)
    lacking = frozenset(p for fault in faults if fault.rule in LACKING for p in fault.promises)
    broken = faults + explain(potluck, checked, now, found, effort=effort, seed=seed, told=lacking, most=searched)
    status = "impossible" if broken else "optimal" if found.solution.proved else "feasible"
    conflicts = _in_units(potluck, broken + _warnings(potluck, found.steps, now))
    objective, bound = found.solution.cost.objective, found.solution.bound
    return Timeline(status, objective, bound, found.steps, found.dishes, conflicts)


def _warnings(potluck: Potluck, steps: tuple[PlannedStep, ...], now: datetime) -> tuple[Conflict, ...]:
    """What stands in no step's way: when people sleep, what is frozen, and room in the refrigerator."""
    return (*asleep_conflicts(potluck, steps), *thaw_conflicts(potluck, steps, now), *fridge_conflicts(potluck, steps))


def _in_units(potluck: Potluck, conflicts: tuple[Conflict, ...]) -> tuple[Conflict, ...]:
    return tuple(
        replace(c, why=say_in_units(potluck, c.why), fix=_fix_in_units(potluck, c.fix),
                others=tuple(_fix_in_units(potluck, f) for f in c.others))
        for c in conflicts
    )  # fmt: skip


def _fix_in_units(potluck: Potluck, fix: Fix) -> Fix:
    return replace(fix, text=say_in_units(potluck, fix.text))
