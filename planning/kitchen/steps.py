"""The kinds of steps, what they draw, and a promise's steps once they are checked."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from planning.kitchen.result import Conflict, Fix
from planning.kitchen.usual import HEATING as HEATING
from planning.potluck import HeatStep, Kitchen, Promise, Say

OVEN, STOVE, MICROWAVE, GRILL, KEEP_WARM = "oven", "stove", "microwave", "grill", "keep-warm"
SLOW = ("slow-cooker-low", "slow-cooker-high")
PASSIVE = ("rest", "chill", "thaw", "transport", "serve")
NO_LENGTH = ("serve", "rest", "transport", "prep")
"""Kinds of steps that may take no time at all."""

KINDS = (*HEATING, KEEP_WARM, "prep", *PASSIVE)

HOLD_F = 140.0
"""HOLD-06: hot food is held at this temperature or above (USDA FSIS, Cooking for Groups)."""

HOT_CATEGORIES = ("main", "side", "starter")


@dataclass(frozen=True)
class Checked:
    """The steps of one promise that can be planned. `hot`: it is meant to be served hot.

    `numbers` are their numbers in the cook's own list and the number after its last, where a step of no length
    was left away; () when none was.
    """

    promise: Promise
    steps: tuple[HeatStep, ...]
    hot: bool
    source: str = "cook"
    numbers: tuple[int, ...] = ()

    def number(self, index: int) -> int:
        """The number in the cook's own list of the step at `index`; past the end for one added after the last."""
        return self.numbers[index] if index < len(self.numbers) else index


def span_said(minutes: int) -> Say:
    """So many minutes, in words by hours and minutes."""
    return Say("kitchen-span", {"hours": minutes // 60, "minutes": minutes % 60})


def say_conflict(
    promises: tuple[str, ...],
    rule: str,
    fix: str,
    facts: Mapping[str, object] | None = None,
    *,
    fix_min: int = 0,
    **more: object,
) -> Conflict:
    """A conflict and its fix, worded under keys made of `rule` and `fix`, with the same facts."""
    told = {**(facts or {}), **more}
    if "dish" in told:
        told = {"several": "no", "dishes": [told["dish"]], "again": "", **told}
    return Conflict(promises, rule, Say(f"kitchen-{rule}", told), Fix(fix, fix_min, None, Say(f"fix-{fix}", told)))


def is_hot(promise: Promise, steps: tuple[HeatStep, ...]) -> bool:
    """Served hot: as the cook said; unsaid, when a main, side or starter is heated after the last chilling."""
    heated = False
    for step in steps:
        heated = (heated or step.kind in HEATING) and step.kind != "chill"
    if promise.serve is not None:
        return promise.serve == "hot" and any(s.kind in (*HEATING, KEEP_WARM) for s in steps)
    return heated and promise.category in HOT_CATEGORIES


def last_heat(steps: Sequence[HeatStep], number: int) -> str | None:
    """What heated the dish last before step `number`; None where nothing did."""
    return next((s.kind for s in reversed(steps[:number]) if s.kind in HEATING), None)


def own_power(step: HeatStep) -> bool:
    """Whether the step runs in something of its own that is plugged in: it takes an outlet and watts, and no oven.

    Keeping warm with watts told is such: an oven or a burner draws on no outlet.
    """
    if step.kind == KEEP_WARM:
        return step.own_appliance or bool(step.watts)
    return step.own_appliance and step.kind in (OVEN, STOVE, *SLOW, MICROWAVE)


def usable_watts(amps: float, volts: float) -> int:
    """80 % of a circuit, for everything plugged in at service (ELEC-03, ELEC-04): 15 A at 120 V gives 1440 W."""
    return max(0, math.floor(0.8 * amps * volts + 1e-9)) if math.isfinite(amps * volts) else 0


def draw(kitchen: Kitchen, step: HeatStep) -> int:
    """Watts: the step's own figure, else the appliance's nameplate, else the table's (APPL-04, APPL-21, APPL-14)."""
    if step.watts is not None:
        return max(0, step.watts)
    if step.kind in SLOW:
        return min((c.watts for c in kitchen.slow_cookers), default=250) if not step.own_appliance else 250
    if step.kind == MICROWAVE:
        return min((m.watts for m in kitchen.microwaves), default=1200) if not step.own_appliance else 1200
    return {OVEN: 1200, STOVE: 1150, KEEP_WARM: 250}.get(step.kind, 0)
