"""One dish's chain of work as tasks: what runs on together, what keeps it hot, the hands it needs, what holds it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from planning.kitchen.core import Lag, Mode, Problem, Touch
from planning.kitchen.modes import SLOT_MIN, TOLERANCE_F, slots, step_minutes
from planning.kitchen.steps import HEATING, HOLD_F, KEEP_WARM, OVEN, SLOW
from planning.potluck import HeatStep, SlowCooker

BETWEEN_HEATS_MIN = 30
"""Heating that has begun goes on without a longer break (COOK-38: never cook partly to finish later)."""


def groups(steps: tuple[HeatStep, ...]) -> list[tuple[int, ...]]:
    """Steps that run on in the same place without a break: one oven at one temperature, a slow cooker kept warm.

    So does the way of a dish that rests first: neither takes anything of a kitchen.
    """
    groups: list[list[int]] = []
    for number, step in enumerate(steps):
        if groups:
            last = steps[groups[-1][-1]]
            same = step.at == last.at and step.own_appliance == last.own_appliance
            if same and step.kind == last.kind == OVEN and step.temp_f == last.temp_f:
                groups[-1].append(number)
                continue
            if same and last.kind in SLOW and step.kind in (KEEP_WARM, *SLOW):
                groups[-1].append(number)
                continue
            if same and last.kind == "rest" and step.kind == "transport":
                groups[-1].append(number)
                continue
        groups.append([number])
    return [tuple(g) for g in groups]


def keeps_hot(step: HeatStep) -> bool:
    return step.kind in HEATING or (step.kind == KEEP_WARM and (step.temp_f is None or step.temp_f >= HOLD_F))


def roomy(modes: tuple[Mode, ...], places: list[tuple[str | None, int | None]], volume_qt: float | None,
           units: tuple[tuple[SlowCooker, tuple[int, ...]], ...],
           ) -> tuple[tuple[Mode, ...], list[tuple[str | None, int | None]]]:  # fmt: skip
    """Only the slow cookers which the dish fills to two thirds at most (SLOW-03), else those which hold it at all.

    Where none does all are kept: that is a warning and does not stop the plan.
    """
    size = {f"slow:{n}": cooker.quarts for n, (cooker, _) in enumerate(units)}
    if volume_qt is None or not all(place in size for place, _ in places):
        return modes, places
    for least in (volume_qt * 3 / 2, volume_qt):
        if fits := [n for n, (place, _) in enumerate(places) if size[place or ""] >= least - 1e-6]:
            return tuple(modes[n] for n in fits), [places[n] for n in fits]
    return modes, places


def lag(before: str, after: str, first: HeatStep, then: HeatStep, travel: int) -> Lag:
    least = travel if first.at == "home" and then.at == "venue" and "transport" not in (first.kind, then.kind) else 0
    most: int | None = None
    if then.kind == KEEP_WARM and first.kind == OVEN and least == 0:
        # It may have to wait until the oven, or another, is at the setting it is kept warm at.
        most = slots(BETWEEN_HEATS_MIN)
    elif then.kind in ("rest", KEEP_WARM) or (then.kind == "transport" and first.kind in HEATING):
        most = least
    elif first.kind in HEATING and then.kind in HEATING and least == 0:
        most = slots(BETWEEN_HEATS_MIN)
    return Lag(before, after, least, most)


def wide_enough(lag: Lag, before: Sequence[Mode], after: Sequence[Mode]) -> Lag:
    """The lag with time for the oven to come to its next setting, where that takes longer than the lag allows."""
    if lag.most is None or not before or not after:
        return lag
    between = Problem(())
    return replace(lag, most=max(lag.most, min(between.gap(a, b) for a in before for b in after)))


def touches(steps: list[HeatStep], hands: str = "hands") -> tuple[Touch, ...]:
    """Hands: all of a preparation, and the first `hands_min` of any other step; `hands` names whose.

    A later step of a stay in the oven begins when the one before it ends, at any setting of the oven: the hands are
    taken from the earliest slot in which that can be to the latest.
    """
    found: list[Touch] = []
    sooner = later = 0
    for step in steps:
        busy = step.minutes if step.kind == "prep" else min(step.hands_min, step.minutes)
        if step.kind != "transport" and busy > 0:
            first = sooner // SLOT_MIN
            found.append(Touch(hands, first, slots(later + busy) - first))
        if step.kind == OVEN:
            settings = [step.temp_f + d for d in (TOLERANCE_F, -TOLERANCE_F)] if step.temp_f and step.movable else []
            lengths = [math.ceil(step.minutes), *(step_minutes(step, t) for t in settings)]
            sooner, later = sooner + min(lengths), later + max(lengths)
        else:
            sooner = later = later + slots(step.minutes) * SLOT_MIN
    return tuple(found)
