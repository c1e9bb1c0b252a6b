"""Guests' own kitchens: what a cook has at home, where several of one cook's dishes stand in each other's way.

Nobody has listed what there is, so an ordinary kitchen is reckoned with: one oven for four pans, four burners, one
microwave, one pair of hands (common practice, no source). What one dish alone asks for is taken to be there.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from planning.kitchen.core import Mode, Resource
from planning.kitchen.modes import SLOT_MIN, Modes, all_set_points, oven_modes, slots, span
from planning.kitchen.steps import HEATING, KEEP_WARM, MICROWAVE, OVEN, STOVE, Checked
from planning.potluck import HeatStep, Oven, Potluck

OVEN_RACKS, PANS_A_RACK, BURNERS, MICROWAVES, HANDS = 2, 2, 4, 1, 1


@dataclass(frozen=True)
class Home:
    """One cook's kitchen. `shared`: more than one step is baked in its oven, so that it has a setting to keep to."""

    guest: str
    pans: int
    shared: bool
    set_points: tuple[int, ...]

    def name(self, what: str) -> str:
        return f"home:{self.guest}:{what}"


def homes(potluck: Potluck, dishes: Iterable[Checked]) -> dict[str, Home]:
    """The homes in which something is cooked, by guest."""
    by_guest: dict[str, list[Checked]] = {}
    for one in dishes:
        if any(s.at == "home" for s in one.steps):
            by_guest.setdefault(one.promise.guest, []).append(one)
    found: dict[str, Home] = {}
    for guest, cooked in by_guest.items():
        baked = [s for one in cooked for s in one.steps if in_home_oven(s)]
        most = max((s.pans for s in baked), default=0)
        points = all_set_points(cooked, "home")
        found[guest] = Home(guest, max(OVEN_RACKS * PANS_A_RACK, most), len(baked) > 1, points)
    return found


def in_home_oven(step: HeatStep) -> bool:
    return step.kind == OVEN and step.at == "home" and not step.own_appliance


def resources_of(home: Home) -> Iterator[Resource]:
    yield Resource(home.name("pans"), home.pans)
    yield Resource(home.name("burner"), BURNERS)
    yield Resource(home.name("microwave"), MICROWAVES)
    yield Resource(home.name("hands"), HANDS)


def home_modes(home: Home, steps: list[HeatStep]) -> Modes:
    """The ways to do these steps (one group) in this home; the place is always "home"."""
    first = steps[0]
    if in_home_oven(first) and home.shared:
        # Racks and pans stand for the room there is; only their number counts.
        modes, _ = oven_modes((Oven(1, home.pans),), steps, home.set_points)
        there = Mode(0, ((home.name("pans"), max(s.pans for s in steps)),), home.name("oven"))
        return tuple(Mode(m.duration, there.uses, there.oven, m.low, m.high, m.spare_min) for m in modes), [
            ("home", None) for _ in modes
        ]
    what = {STOVE: "burner", MICROWAVE: "microwave"}.get(first.kind)
    uses = ((home.name(what), 1),) if what is not None and not first.own_appliance else ()
    length = span(steps)
    spare = slots(steps[-1].minutes) * SLOT_MIN - math.ceil(steps[-1].minutes)
    place = "home" if first.kind in (*HEATING, KEEP_WARM) else None
    return (Mode(length, uses, spare_min=spare),), [(place, None)]

