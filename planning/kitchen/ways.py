"""What can be done about a dish without trying, and what stands in its way."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from planning.kitchen.attempt import Attempt
from planning.kitchen.mend import can_cook_at_home, reheated, reheated_at_home
from planning.kitchen.modes import SLOT_MIN
from planning.kitchen.result import DishTimes, PlannedStep
from planning.kitchen.steps import HEATING, Checked, usable_watts
from planning.kitchen.waking import wake_up
from planning.potluck import Potluck

MOST_LATER_MIN = 180
"""Nobody is asked to wait for longer; common practice, no source."""

CHANGE_MIN = 45
"""No change of an oven's set-point takes longer: 5 minutes and one for every 10 °F."""


@dataclass(frozen=True)
class Way:
    """One thing changed: `kind` of the fix, minutes it costs, the kitchen tried (None: not tried), and until when."""

    kind: str
    minutes: int
    attempt: Attempt | None = None
    by: datetime | None = None


def can_cook_ahead(potluck: Potluck, one: Checked, now: datetime) -> bool:
    """Whether the dish could be cooked on an earlier day, chilled, and reheated."""
    guest = potluck.guest(one.promise.guest)
    if guest is not None and guest.id != potluck.host and not can_cook_at_home(potluck, one.promise, one.steps):
        return False
    again = reheated_at_home(potluck, one.promise, one.steps) or reheated(potluck.kitchen, one.steps)
    return one.hot and bool(again) and now < wake_up(potluck) - timedelta(hours=12)


def usual_way(potluck: Potluck, one: Checked, dish: DishTimes, now: datetime) -> Way | None:
    """The usual advice for a dish that nothing tried has mended; None where only another dish is left."""
    heats = [s for s in one.steps if s.kind in HEATING]
    if dish.unsafe_min and not dish.late_min:
        return Way("cooler" if heats and heats[-1].at == "home" else "keep-hot", 0)
    heated_there = any(s.at == "venue" for s in heats)
    if can_cook_ahead(potluck, one, now):
        return Way("cook-ahead", 0)
    later = math.ceil(dish.late_min / SLOT_MIN) * SLOT_MIN
    if later <= MOST_LATER_MIN:
        return Way("later", later)
    if heated_there and can_cook_at_home(potluck, one.promise, one.steps) and now < wake_up(potluck):
        return Way("cook-at-home", 0)
    return None


def in_use(potluck: Potluck, one: Checked, steps: Sequence[PlannedStep]) -> str:
    """What others use at the moment before the dish's first heat at the venue: oven, slow-cooker, burner, power,
    hands, or "other" where nothing of the kind keeps it waiting."""
    mine = [s for s in steps if s.promise == one.promise.id and s.at == "venue"]
    heat = next((s for s in mine if s.kind in HEATING), mine[0] if mine else None)
    if heat is None:
        return "other"
    moment, group = heat.start - timedelta(minutes=1), (heat.appliance or "").partition(":")[0]
    # An oven that changes its set-point is as good as taken; elsewhere the rest of a slot is lost at most.
    lost = timedelta(minutes=CHANGE_MIN if group == "oven" else SLOT_MIN)
    going = [s for s in steps if s.promise != one.promise.id and s.at == "venue" and s.start <= moment < s.end + lost]
    same = [s for s in going if (s.appliance or "").partition(":")[0] == group and group not in ("", "own")]
    kitchen = potluck.kitchen
    if heat.circuit is not None and heat.circuit < len(kitchen.circuits):
        circuit = kitchen.circuits[heat.circuit]
        plugged = [s for s in going if s.circuit == heat.circuit]
        full = sum(s.watts for s in plugged) + heat.watts > usable_watts(circuit.amps, circuit.volts)
        if plugged and (full or len(plugged) >= circuit.outlets):
            return "power"
    if group == "oven":
        same = [s for s in same if s.appliance == heat.appliance]
    count = {"slow-cooker": len(kitchen.slow_cookers), "burner": kitchen.burners, "microwave": len(kitchen.microwaves),
             "grill": kitchen.grills, "oven": 1}.get(group, 0)  # fmt: skip
    if same and len(same) >= count:
        return group
    hands = [s for s in going if s.hands_min and moment < s.start + timedelta(minutes=s.hands_min)]
    return "hands" if len(hands) >= max(1, kitchen.cooks) else "other"
