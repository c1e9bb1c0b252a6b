"""Units of measure: their words, and exact factors between those that measure the same thing."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from planning.tables import path_of, rows


@dataclass(frozen=True)
class Unit:
    name: str
    kind: str
    system: str


@cache
def _units() -> dict[str, Unit]:
    return {row["word"]: Unit(row["unit"], row["kind"], row["system"]) for row in rows("words_units")}


def unit_of(word: str) -> Unit | None:
    """The unit a word means, or None. "T" is a tablespoon and "t" a teaspoon; other case is ignored."""
    units = _units()
    if (unit := units.get(word)) is not None:
        return unit
    return units.get(word.lower().rstrip(".").replace(". ", " "))


def unit_or_package(rest: str) -> tuple[Unit, str | None] | None:
    """ "lb" -> pound; "oz bags" -> ounces in a bag."""
    if (unit := unit_of(rest)) is not None:
        return unit, None
    head, space, tail = rest.partition(" ")
    while space:
        unit, package = unit_of(head), unit_of(tail)
        if unit is not None and package is not None and unit.kind in ("mass", "volume", "count"):
            return (unit, package.name) if package.kind in ("package", "can") else None
        more, space, tail = tail.partition(" ")
        head = f"{head} {more}"
    return None


@cache
def registry() -> Any:
    """The private unit registry, built once from `data/units.txt`; only unit names of that file go in."""
    import pint  # here, because loading it takes longer than most commands

    return pint.UnitRegistry(path_of("units.txt"), non_int_type=Fraction)


@cache
def factor(unit: str, into: str) -> Fraction | None:
    """How many `into` one `unit` is, exactly; None when they don't measure the same thing."""
    if unit == into:
        return Fraction(1)
    units = registry()
    if unit not in units or into not in units:
        return None
    if units.get_dimensionality(unit) != units.get_dimensionality(into):
        return None
    return Fraction(units.Quantity(Fraction(1), unit).to(into).magnitude)
