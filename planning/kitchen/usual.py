"""How a dish is usually heated, where its cook said nothing: what the plan may use, and what is only asked about.

Minutes with a named source are planned, a roast turkey's by its weight. Minutes that are common practice plan
nothing: they become an `Estimate`, which the cook is asked about and may take over.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache

from planning import tables
from planning.amounts import parse, to_unit
from planning.dishes import Dish, lookup
from planning.potluck import Answer, HeatStep, Kitchen, Potluck, Promise

SURE = 0.8
"""How sure the catalogue must be of a dish's name before its usual steps are planned or asked about."""

SLOW = ("slow-cooker-low", "slow-cooker-high")
HEATING = ("oven", "stove", "slow-cooker-low", "slow-cooker-high", "microwave", "grill")

ROAST_TURKEY = (("COOK-27", "COOK-28", 12.0), ("COOK-29", "COOK-30", 14.0), ("COOK-31", "COOK-32", 18.0),
                ("COOK-33", "COOK-34", 20.0), ("COOK-35", "COOK-36", 24.0))  # fmt: skip
"""(row unstuffed, row stuffed, up to so many pounds): the USDA timetable at 325 °F. Where two rows meet the heavier
counts, and of a row the longer time; what is lighter than the table is given its first row."""

HEAVIEST_LB = 24.0
"""The timetable ends here (COOK-35)."""


@dataclass(frozen=True)
class Estimate:
    """The usual heating of a dish nobody gave any for: shown as an estimate, asked about, and never planned."""

    promise: str
    steps: tuple[HeatStep, ...]
    source: str


def steps_of(potluck: Potluck, promise: Promise) -> tuple[tuple[HeatStep, ...], str]:
    """(steps, where they come from): the cook's own, else the usual ones when they carry a source.

    The host's kitchen is the venue; anybody else does the usual work at home. What is only usual never stands in
    the way: where there is nothing to do it in, it becomes an `Estimate`.
    """
    if promise.heat is not None:
        return promise.heat, "cook"
    steps, source = _assumed(potluck, promise)
    return (steps, source) if _possible(potluck, promise, steps) else ((), "")


def _assumed(potluck: Potluck, promise: Promise) -> tuple[tuple[HeatStep, ...], str]:
    """The usual steps that carry a source, whether or not they can be done."""
    dish = _usual(promise)
    if dish is None or dish.time_source in ("", "practice", "invented"):
        return (), ""
    steps, source = tuple(dish.known_heat), dish.time_source
    if source in {row for rows in ROAST_TURKEY for row in rows[:2]}:
        stuffed = re.search(r"\b(?:stuffed|stuffing)\b", _name(promise)) is not None
        source, minutes = roast_turkey(pounds(promise), stuffed=stuffed)
        steps = tuple(replace(s, minutes=minutes) if s.kind == "oven" else s for s in steps)
    if promise.guest == potluck.host:
        steps = tuple(replace(s, at="venue") for s in steps)
    return steps, source


def _possible(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> bool:
    """Whether there is something to do these usual steps in, beside what other dishes are told to need."""
    if promise.guest != potluck.host:
        guest = potluck.guest(promise.guest)
        return guest is None or guest.has_oven or not any(s.kind == "oven" for s in steps)
    has = _has(potluck.kitchen)
    if not all(has.get(s.kind, True) for s in steps):
        return False
    if not any(s.kind in SLOW for s in steps):
        return True
    taken = sum(_wants_slow_cooker(p.heat) for p in potluck.promises if p.heat is not None)
    before = potluck.promises[: next((n for n, p in enumerate(potluck.promises) if p is promise), 0)]
    taken += sum(_wants_slow_cooker(_assumed(potluck, p)[0]) for p in before if p.heat is None)
    return taken < len(potluck.kitchen.slow_cookers)


def _wants_slow_cooker(steps: tuple[HeatStep, ...]) -> bool:
    return any(s.kind in SLOW and s.at == "venue" and not s.own_appliance for s in steps)


def _has(kitchen: Kitchen) -> dict[str, bool]:
    """Whether a kitchen has something for a step of this kind."""
    watts = max((0.8 * c.amps * c.volts for c in kitchen.circuits if c.outlets > 0), default=0.0)
    slow = any(c.watts <= watts for c in kitchen.slow_cookers) and watts > 0
    return {
        "oven": any(o.racks * o.pans_per_rack > 0 for o in kitchen.ovens), "stove": kitchen.burners > 0,
        "slow-cooker-low": slow, "slow-cooker-high": slow, "grill": kitchen.grills > 0,
        "microwave": any(m.watts <= watts for m in kitchen.microwaves) and watts > 0, "prep": kitchen.cooks > 0,
    }  # fmt: skip


POT_MIN = 180
"""What is usually in a slow cooker for hours is done so long in a pot on the stove, or covered in an oven at 325 °F, at
a low simmer; the longer end of common practice, no source."""


def _another_way(kitchen: Kitchen, steps: tuple[HeatStep, ...]) -> tuple[HeatStep, ...]:
    """The usual steps with a pot for a slow cooker that is not there (or not free)."""
    has = _has(kitchen)
    if has["stove"]:
        pot = HeatStep("stove", POT_MIN, covered=True, hands_min=10)
    elif has["oven"]:
        pot = HeatStep("oven", POT_MIN, 325, covered=True)
    else:
        return steps
    return tuple(pot if s.kind in SLOW else s for s in steps)


def _name(promise: Promise) -> str:
    return promise.dish.casefold()


_STATE = re.compile(r"\b(?:unstuffed|stuffed|frozen|thawed|with stuffing)\b")
"""Said of a dish beside its name; the catalogue knows it without."""


def _usual(promise: Promise) -> Dish | None:
    match = lookup(" ".join(_STATE.sub(" ", _name(promise)).split()) or promise.dish)
    return match.dish if match.dish is not None and match.confidence >= SURE else None


def is_roast_turkey(promise: Promise) -> bool:
    """Whether the catalogue's row for it takes its minutes from the turkey timetable."""
    dish = _usual(promise)
    return dish is not None and dish.time_source in {row for rows in ROAST_TURKEY for row in rows[:2]}


def pounds(promise: Promise) -> float | None:
    """The weight of one piece, as said of it frozen or as its amount; None where nobody said."""
    if promise.frozen_lb is not None and 0 < promise.frozen_lb < 1e6:
        return promise.frozen_lb
    amount = parse(promise.quantity) if promise.quantity else None
    lb = to_unit(amount, "lb") if amount is not None and amount.kind == "mass" else None
    return float(lb) if lb is not None and 0 < lb < 10**6 else None


def roast_turkey(lb: float | None, *, stuffed: bool) -> tuple[str, int]:
    """(row, minutes at 325 °F) for a turkey of so many pounds; 14 to 18 lb where nobody said.

    >>> roast_turkey(13, stuffed=False), roast_turkey(14, stuffed=True)
    (('COOK-29', 225), ('COOK-32', 255))
    """
    weight = 14.0 if lb is None else lb
    rows = next((r for r in ROAST_TURKEY if weight < r[2]), ROAST_TURKEY[-1])
    row = rows[1] if stuffed else rows[0]
    return row, _hours()[row]


@cache
def _hours() -> dict[str, int]:
    """Minutes of each row of the timetable: the longer end of "3-3.75" hours."""
    wanted = {row for rows in ROAST_TURKEY for row in rows[:2]}
    found = {r["id"]: r["value"].rpartition("-")[2] for r in tables.rows("safety") if r["id"] in wanted}
    return {row: round(float(value) * 60) for row, value in found.items()}


def estimates(potluck: Potluck) -> tuple[Estimate, ...]:
    """The dishes whose heating nobody has told, with what is usual for them, by the potluck's order."""
    found: list[Estimate] = []
    for promise in potluck.promises:
        guest = potluck.guest(promise.guest)
        if promise.heat is not None or promise.serve in ("cold", "room") or (guest and guest.answer is Answer.NO):
            continue
        dish = _usual(promise)
        if dish is None or dish.time_source in ("", "invented") or dish.serve != "hot":
            continue
        steps = tuple(s for s in dish.known_heat if s.kind in (*HEATING, "rest"))
        if dish.time_source != tables.PRACTICE:
            if steps_of(potluck, promise)[0]:
                continue
            steps = _another_way(potluck.kitchen, steps) if promise.guest == potluck.host else steps
        if any(s.kind in HEATING for s in steps):
            found.append(Estimate(promise.id, steps, tables.PRACTICE))
    return tuple(found)


def likely_steps(promise: Promise) -> tuple[HeatStep, ...]:
    """The cook's own steps, else what is usual for the dish: enough to say what to watch for, not when."""
    if promise.heat is not None:
        return promise.heat
    dish = _usual(promise)
    return tuple(dish.known_heat) if dish is not None and promise.serve in (None, "hot") else ()


def heated_at(steps: tuple[HeatStep, ...], place: str) -> tuple[HeatStep, ...]:
    """The same steps at the venue or at home."""
    return tuple(replace(s, at=place) for s in steps)
