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
from planning.potluck import Answer, HeatStep, Potluck, Promise

SURE = 0.8
"""How sure the catalogue must be of a dish's name before its usual steps are planned or asked about."""

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

    The host's kitchen is the venue; anybody else does the usual work at home.
    """
    if promise.heat is not None:
        return promise.heat, "cook"
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
        if dish is None or dish.time_source != "practice" or dish.serve != "hot":
            continue
        steps = tuple(s for s in dish.known_heat if s.kind in (*HEATING, "rest"))
        if any(s.kind in HEATING for s in steps):
            found.append(Estimate(promise.id, steps, dish.time_source))
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
