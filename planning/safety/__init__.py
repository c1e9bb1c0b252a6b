"""Food safety: what the tables say about this potluck. Nothing is ever called safe."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from planning.kitchen.result import Timeline
from planning.kitchen.units import say_in_units
from planning.potluck import Answer, Potluck, Stage
from planning.safety.allergens import allergen_notes, avoided, topping_notes
from planning.safety.guests import food_notes
from planning.safety.heat import hot_notes, slow_cooker_notes, thaw_notes
from planning.safety.notes import BLOCK, NOTE, WARN, SafetyNote
from planning.safety.standing import power_notes, standing_notes
from planning.safety.standing_out import cooling_notes, leftover_notes, out_notes, transport_notes

__all__ = ["BLOCK", "NOTE", "WARN", "SafetyNote", "safety"]

_ORDER = {BLOCK: 0, WARN: 1, NOTE: 2}


def safety(potluck: Potluck, now: datetime, timeline: Timeline | None = None) -> tuple[SafetyNote, ...]:
    """Every block, warning and note, blocks first, then by promise in the potluck's order.

    Blocks come only from rows whose source was read; what we know from memory is at most a note.
    """
    if potluck.stage is Stage.CANCELLED:
        return ()
    found: list[SafetyNote] = []
    needs = avoided(potluck)
    for promise in potluck.promises:
        guest = potluck.guest(promise.guest)
        if guest is not None and guest.answer is Answer.NO:
            continue
        found.extend(out_notes(potluck, promise, now, timeline))
        found.extend(cooling_notes(potluck, promise))
        found.extend(thaw_notes(potluck, promise, now, timeline))
        found.extend(slow_cooker_notes(potluck, promise, timeline))
        found.extend(hot_notes(potluck, promise))
        found.extend(food_notes(potluck, promise))
        found.extend(allergen_notes(potluck, promise, needs))
    found.extend(topping_notes(potluck, needs))
    found.extend(power_notes(potluck, timeline))
    found.extend(transport_notes(potluck))
    found.extend(leftover_notes(potluck))
    found.extend(standing_notes(potluck))
    told = (replace(n, say=say_in_units(potluck, n.say)) for n in found)
    return tuple(sorted(told, key=lambda n: _ORDER[n.severity]))
