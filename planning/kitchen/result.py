"""What the kitchen hands back: plain values, nothing of the solver."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from planning.potluck import Money, Say

NO_APPLIANCE = ("prep", "rest", "chill", "thaw", "transport", "serve")
"""Kinds of steps that nothing has to be switched on for."""


@dataclass(frozen=True)
class PlannedStep:
    """One step of one dish with its place and time (UTC instants).

    `appliance` is "oven:0", "burner:1", "slow-cooker:0", "microwave:0", "grill:0" (numbered as in
    `Kitchen`), "own:<kind>" for one a guest brings, "home" away from the venue, or None where no
    appliance is needed. `circuit` is the number of the circuit it is plugged into, `watts` what it
    draws there. `temp_f` is the set-point of the oven, not the recipe's figure. `step` is the
    number of the step in the promise's own list; an added keep-warm has the number after the last.
    """

    promise: str
    kind: str
    appliance: str | None
    circuit: int | None
    start: datetime
    end: datetime
    temp_f: float | None = None
    pans: int = 0
    watts: int = 0
    at: str = "venue"
    step: int = 0
    hands_min: int = 0
    covered: bool = False

    @property
    def lacking(self) -> bool:
        """Whether it needs an appliance and the kitchen has none for it: it only says when it would be."""
        return self.at == "venue" and self.appliance is None and self.kind not in NO_APPLIANCE


@dataclass(frozen=True)
class DishTimes:
    """`late_min`: minutes after serving time. `unsafe_min`: minutes off heat beyond the dish's limit."""

    promise: str
    ready_at: datetime
    serve_at: datetime
    late_min: int = 0
    unsafe_min: int = 0
    off_heat_min: int = 0


@dataclass(frozen=True)
class Fix:
    """The cheapest way out. `kind`: cook-ahead, borrow-slow-cooker, borrow-oven, later, cooler, ask, split.

    `minutes` is what it costs in time (0 when it costs none); `cost` in money where known. `saves_min` are the
    minutes late and too long off heat that all dishes together had less when it was tried; None: it was not tried.
    `promises`: which of the conflict's it is for, where others have another; () for all.
    """

    kind: str
    minutes: int
    cost: Money | None
    text: Say
    saves_min: int | None = None
    promises: tuple[str, ...] = ()


@dataclass(frozen=True)
class Conflict:
    """One thing that cannot be, which promises it is about, and a way out. `rule` is a short id.

    `others` are further ways out that were tried: serving later, where that alone helps.
    """

    promises: tuple[str, ...]
    rule: str
    why: Say
    fix: Fix
    others: tuple[Fix, ...] = ()


@dataclass(frozen=True)
class Timeline:
    """`status`: "optimal" (proved), "feasible" (not proved) or "impossible" (some rule is broken by
    `late_min` or `unsafe_min`, or something could not be planned at all: see `conflicts`). What an
    impossible kitchen lacks has steps all the same, the least bad ones, in no appliance.

    `objective` and `bound` are in weighted minutes: 10,000 x unsafe + 1,000 x late + the minutes
    hot dishes wait. They are equal when proved; the bound carries no percentage.
    """

    status: str
    objective: int
    bound: int
    steps: tuple[PlannedStep, ...] = ()
    dishes: tuple[DishTimes, ...] = ()
    conflicts: tuple[Conflict, ...] = ()

    @property
    def doable(self) -> tuple[PlannedStep, ...]:
        """The steps of the dishes that lack nothing: what people can be told to do."""
        lacking = {s.promise for s in self.steps if s.lacking}
        return tuple(s for s in self.steps if s.promise not in lacking)
