"""The minutes between a dish's last heat and the table, which five-minute slots would make more than they are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from planning.kitchen.core import Mode, Touch
from planning.kitchen.modes import SLOT_MIN, slots, span
from planning.potluck import HeatStep

OFF_HEAT_MIN = 30
"""How long a hot dish may stand off heat before it is served; common practice, no source."""


def shorter_rest(modes: tuple[Mode, ...], rest: Sequence[HeatStep], spare_min: int) -> tuple[Mode, ...]:
    """The rest (and the way after it) as long as it takes from the moment the dish leaves the heat, which is at
    least `spare_min` before the end of a slot."""
    length = max(1, slots(sum(s.minutes for s in rest) - spare_min))
    return tuple(replace(m, duration=length) for m in modes)


def ending_on_a_slot(
    modes: tuple[Mode, ...], hands: tuple[Touch, ...], after: Sequence[Sequence[HeatStep]]
) -> tuple[tuple[Mode, ...], tuple[Touch, ...], bool]:
    """The last heat, moved to the end of its last slot where what comes after it would else be too long off heat.

    It then begins some minutes after a slot does, and so do the hands it needs: they are taken for as much longer.
    """
    spare = [m.spare_min for m in modes]
    if not after or not any(spare):
        return modes, hands, False
    tail = sum(span(steps) for steps in after)
    if after[0][0].kind == "rest":
        tail += slots(sum(s.minutes for s in after[0]) - min(spare)) - span(after[0])
    if tail * SLOT_MIN + max(spare) <= OFF_HEAT_MIN:
        return modes, hands, False
    # At most one slot more for each pair of hands: what is lost is less than a slot.
    longer = tuple(replace(t, length=t.length + 1) for t in hands)
    return tuple(replace(m, spare_min=0) for m in modes), longer, True
