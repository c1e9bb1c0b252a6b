"""One dish's chain of work as tasks: what runs on together, what keeps it hot, the hands it needs, what holds it."""

from __future__ import annotations

from planning.kitchen.core import Lag, Mode, Touch
from planning.kitchen.modes import slots
from planning.kitchen.steps import HEATING, HOLD_F, KEEP_WARM, OVEN, SLOW
from planning.potluck import HeatStep, SlowCooker

BETWEEN_HEATS_MIN = 30
"""Heating that has begun goes on without a longer break (COOK-38: never cook partly to finish later)."""


def groups(steps: tuple[HeatStep, ...]) -> list[tuple[int, ...]]:
    """Steps that run on in the same place without a break: one oven at one temperature, a slow cooker kept warm."""
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


def touches(steps: list[HeatStep]) -> tuple[Touch, ...]:
    """Hands: all of a preparation, and the first `hands_min` of any other step. Nobody else's hands at home."""
    found: list[Touch] = []
    offset = 0
    for step in steps:
        busy = step.minutes if step.kind == "prep" else step.hands_min
        if step.at == "venue" and step.kind != "transport" and busy > 0:
            found.append(Touch("hands", offset, slots(busy)))
        offset += slots(step.minutes)
    return tuple(found)
