"""The ways to do a step in a kitchen: which appliance, which circuit, which set-point, and how long it then takes."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from planning.kitchen.core import Hold, Mode, Task
from planning.kitchen.steps import (
    GRILL,
    HEATING,
    HOLD_F,
    KEEP_WARM,
    MICROWAVE,
    OVEN,
    SLOW,
    STOVE,
    Checked,
    draw,
    own_power,
    usable_watts,
)
from planning.potluck import HeatStep, Kitchen, Oven, SlowCooker

SLOT_MIN = 5
TOLERANCE_F = 25
"""OVEN-14: how far an oven may be set from a dish's own temperature; nothing for a dish that must not be moved."""

USUAL_OVEN_F = 350
"""Set for a dish whose cook gave no temperature; common practice, no source."""

WARM_OVEN_F, WARM_MOST_F = 200, 250
"""HOLD-10: an oven at 200-250 °F holds hot dishes."""


def slots(minutes: float) -> int:
    """Whole slots that hold the minutes."""
    return max(0, math.ceil(minutes / SLOT_MIN - 1e-9))


def span(steps: Sequence[HeatStep]) -> int:
    """Slots of steps that run on: each waits for its own slot, but for a rest and the way after it."""
    if steps[0].kind == "rest":
        return slots(sum(s.minutes for s in steps))
    return sum(slots(s.minutes) for s in steps)


def adjusted_minutes(minutes: float, recipe_f: float, set_f: float) -> int:
    """Minutes at another setting: minutes x recipe / set, rounded up (OVEN-16, the linear rule; an estimate).

    >>> adjusted_minutes(40, 375, 350)
    43
    """
    return max(1, math.ceil(minutes * recipe_f / set_f - 1e-9))


def alike(kitchen: Kitchen) -> tuple[tuple[SlowCooker, tuple[int, ...]], ...]:
    groups: dict[tuple[float, int], list[int]] = {}
    for number, cooker in enumerate(kitchen.slow_cookers):
        groups.setdefault((cooker.quarts, cooker.watts), []).append(number)
    return tuple((kitchen.slow_cookers[g[0]], tuple(g)) for g in groups.values())


Modes = tuple[tuple[Mode, ...], list[tuple[str | None, int | None]]]
"""Ways to do a task, and for each of them (appliance group, circuit)."""


def all_set_points(dishes: Iterable[Checked], place: str = "venue") -> tuple[int, ...]:
    """Settings worth having in the ovens of a place: each dish's own, and 25 °F above or below it.

    The highest lower end of ranges that meet is one of these, so no sharing is lost by the choice.
    """
    heated = [s for c in dishes for s in c.steps if s.at == place and s.temp_f]
    own = {round(s.temp_f or 0) for s in heated if s.kind == OVEN or (s.kind == KEEP_WARM and not own_power(s))}
    return tuple(sorted(own | {t - TOLERANCE_F for t in own} | {t + TOLERANCE_F for t in own if len(own) > 1}))


def modes_of(kitchen: Kitchen, steps: list[HeatStep], set_points: tuple[int, ...],
           units: tuple[tuple[SlowCooker, tuple[int, ...]], ...], heat: str | None = None) -> Modes:  # fmt: skip
    """The ways to do these steps (one group at the venue) in this kitchen; `heat` is what heated last."""
    first = steps[0]
    length = span(steps)
    spare = slots(steps[-1].minutes) * SLOT_MIN - math.ceil(steps[-1].minutes)
    if own_power(first):
        plugged = list(_plugs(kitchen, max(draw(kitchen, s) for s in steps)))
        return (tuple(Mode(length, uses, spare_min=spare) for uses, _ in plugged),
                [(f"own:{first.kind}", circuit) for _, circuit in plugged])  # fmt: skip
    if first.kind == OVEN:
        return oven_modes(kitchen.ovens, steps, set_points)
    modes: list[Mode] = []
    places: list[tuple[str | None, int | None]] = []
    if first.kind == KEEP_WARM:
        # What was baked or grilled stays in the oven where it fits; what was in a pot stays on its burner or goes
        # into any slow cooker that is free.
        if heat in (OVEN, GRILL) or not (units and first.temp_f is None):
            some, there = oven_modes(kitchen.ovens, steps, set_points)
            modes += some
            places += there
        if heat == STOVE and kitchen.burners > 0:
            modes.append(Mode(length, (("burner", 1),), spare_min=spare))
            places.append(("burner", None))
        if modes and heat in (OVEN, GRILL):
            units = ()
    if first.kind in SLOW or first.kind == KEEP_WARM:
        for number, (cooker, _) in enumerate(units):
            watts = max(0, first.watts if first.watts is not None else cooker.watts)
            for uses, circuit in _plugs(kitchen, watts):
                modes.append(Mode(length, ((f"slow:{number}", 1), *uses), spare_min=spare))
                places.append((f"slow:{number}", circuit))
    elif first.kind == MICROWAVE:
        for number, microwave in enumerate(kitchen.microwaves):
            watts = max(0, first.watts if first.watts is not None else microwave.watts)
            for uses, circuit in _plugs(kitchen, watts):
                modes.append(Mode(length, ((f"microwave:{number}", 1), *uses), spare_min=spare))
                places.append((f"microwave:{number}", circuit))
    elif (first.kind == STOVE and kitchen.burners <= 0) or (
        first.kind == GRILL and kitchen.grills <= 0 and not first.own_appliance
    ):
        return (), []
    elif first.kind == STOVE:
        return (Mode(length, (("burner", 1),), spare_min=spare),), [("burner", None)]
    elif first.kind == "grill" and not first.own_appliance:
        return (Mode(length, (("grill", 1),), spare_min=spare),), [("grill", None)]
    else:
        return (Mode(length, spare_min=spare),), [("own:grill" if first.kind == "grill" else None, None)]
    return tuple(modes), places


def _plugs(kitchen: Kitchen, watts: int) -> Iterator[tuple[tuple[tuple[str, int], ...], int]]:
    """Circuits that can carry the watts."""
    for number, circuit in enumerate(kitchen.circuits):
        if circuit.outlets > 0 and watts <= usable_watts(circuit.amps, circuit.volts):
            yield ((f"watts:{number}", watts), (f"outlets:{number}", 1)), number


def oven_modes(ovens: tuple[Oven, ...], steps: list[HeatStep], set_points: tuple[int, ...]) -> Modes:
    """One mode for each oven that holds the pans and each set-point within 25 °F, its time adjusted."""
    first = steps[0]
    pans = max(s.pans for s in steps)
    away = TOLERANCE_F if all(s.movable for s in steps) else 0
    if first.kind == KEEP_WARM and first.temp_f is None:
        settings = [WARM_OVEN_F]
    elif first.temp_f is None:
        # Nobody bakes at what only keeps warm.
        settings = [t for t in set_points if t > WARM_MOST_F] or [USUAL_OVEN_F]
    else:
        own = round(first.temp_f)
        settings = [t for t in set_points if abs(t - first.temp_f) <= away] or [own]
        settings.sort(key=lambda t: (abs(t - own), t))
    if first.kind == KEEP_WARM:
        settings = [t for t in settings if t >= HOLD_F] or [math.ceil(HOLD_F)]
    modes: list[Mode] = []
    places: list[tuple[str | None, int | None]] = []
    for setting in settings:
        minutes = sum(step_minutes(s, setting) for s in steps)
        for number, oven in enumerate(ovens):
            if oven.racks * oven.pans_per_rack >= pans:
                spare = slots(minutes) * SLOT_MIN - minutes
                modes.append(
                    Mode(slots(minutes), ((f"pans:{number}", pans),), f"oven:{number}", setting, setting, spare)
                )
                places.append((f"oven:{number}", None))
    return tuple(modes), places


def step_minutes(step: HeatStep, set_f: float | None) -> int:
    """How long the step takes with the oven at `set_f`."""
    if step.kind == OVEN and step.temp_f and set_f and abs(step.temp_f - set_f) >= 1:
        return adjusted_minutes(step.minutes, step.temp_f, set_f)
    return math.ceil(step.minutes)


def hold_of(kitchen: Kitchen, one: Checked, task: Task, places: dict[tuple[str, int], tuple[str | None, int | None]],
            units: tuple[tuple[SlowCooker, tuple[int, ...]], ...]) -> Hold | None:  # fmt: skip
    """Ways to keep a hot dish at 140 °F or more until serving, where its last step is the heat itself."""
    steps = one.steps
    last = steps[-1]
    if not one.hot or last.at != "venue" or last.kind not in (*HEATING, KEEP_WARM):
        return None
    if places[task.id, 0][0] is None:
        return None
    modes: list[tuple[Mode, int | None]] = []
    key = f"hold:{one.promise.id}"
    if last.kind in SLOW or last.kind == KEEP_WARM:
        for number, mode in enumerate(task.modes):
            if mode.oven:
                continue
            places[key, len(modes)] = places[task.id, number]
            modes.append((Mode(0, mode.uses), number))
    elif last.kind == STOVE and not last.own_appliance:
        for number, (cooker, _) in enumerate(units):
            for uses, circuit in _plugs(kitchen, max(0, cooker.watts)):
                places[key, len(modes)] = (f"slow:{number}", circuit)
                modes.append((Mode(0, ((f"slow:{number}", 1), *uses)), None))
    elif last.kind == OVEN and not last.own_appliance and len(kitchen.ovens) > 1:
        for number, oven in enumerate(kitchen.ovens):
            if oven.racks * oven.pans_per_rack >= last.pans:
                places[key, len(modes)] = (f"oven:{number}", None)
                modes.append(
                    (Mode(0, ((f"pans:{number}", last.pans),), f"oven:{number}", WARM_OVEN_F, WARM_OVEN_F), None)
                )
    return Hold(task.id, tuple(modes), limit_min=None) if modes else None
