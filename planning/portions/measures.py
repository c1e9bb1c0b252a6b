"""Kitchen measures as plain numbers: a value and a unit, changed into another unit.

Factors are the exact definitions in NIST Handbook 44 (Appendix C) and NIST SP 811 (Appendix B). The kinds are
mass, volume and count; grams per cup and grams per piece belong to a food and take one kind to another.
"""

from __future__ import annotations

import math
from fractions import Fraction

GRAMS_PER_POUND = Fraction("453.59237")
ML_PER_GALLON = Fraction("3785.411784")

MASS_G: dict[str, Fraction] = {
    "g": Fraction(1),
    "kg": Fraction(1000),
    "lb": GRAMS_PER_POUND,
    "oz": GRAMS_PER_POUND / 16,
}
VOLUME_ML: dict[str, Fraction] = {
    "mL": Fraction(1),
    "L": Fraction(1000),
    "gal": ML_PER_GALLON,
    "qt": ML_PER_GALLON / 4,
    "pt": ML_PER_GALLON / 8,
    "cup": ML_PER_GALLON / 16,
    "fl oz": ML_PER_GALLON / 128,
    "tbsp": ML_PER_GALLON / 256,
    "tsp": ML_PER_GALLON / 768,
}
ML_PER_CUP = VOLUME_ML["cup"]


class NoConversion(ValueError):
    """Two units of different kinds with nothing known to take one to the other."""


def kind(unit: str) -> str:
    """ "mass", "volume", or "count" for every other word (each, slice, piece, bag, ...)."""
    return "mass" if unit in MASS_G else "volume" if unit in VOLUME_ML else "count"


def convert(
    value: float, unit: str, to: str, *, grams_per_cup: float | None = None, grams_each: float | None = None
) -> float:
    """`value` in another unit. `grams_per_cup` and `grams_each` are the food's own.

    Raises NoConversion when the kinds differ and the food's figure is missing.
    """
    if unit == to:
        return value
    here, there = kind(unit), kind(to)
    if here == there == "mass":
        return float(Fraction(value) * MASS_G[unit] / MASS_G[to])
    if here == there == "volume":
        return float(Fraction(value) * VOLUME_ML[unit] / VOLUME_ML[to])
    if here == there:
        # Every count word here is one piece of the food: "each", "slice", "roll".
        return value
    return _from_grams(_grams(value, unit, grams_per_cup, grams_each), to, grams_per_cup, grams_each)


def _grams(value: float, unit: str, grams_per_cup: float | None, grams_each: float | None) -> float:
    match kind(unit):
        case "mass":
            return float(Fraction(value) * MASS_G[unit])
        case "volume" if grams_per_cup:
            return float(Fraction(value) * VOLUME_ML[unit] / ML_PER_CUP) * grams_per_cup
        case "count" if grams_each:
            return value * grams_each
    raise NoConversion(unit)


def _from_grams(grams: float, to: str, grams_per_cup: float | None, grams_each: float | None) -> float:
    match kind(to):
        case "mass":
            return float(Fraction(grams) / MASS_G[to])
        case "volume" if grams_per_cup:
            return float(Fraction(grams / grams_per_cup) * ML_PER_CUP / VOLUME_ML[to])
        case "count" if grams_each:
            return grams / grams_each
    raise NoConversion(to)


US_LADDER = {"mass": ("oz", "lb"), "volume": ("tsp", "tbsp", "cup", "qt", "gal")}
METRIC_LADDER = {"mass": ("g", "kg"), "volume": ("mL", "L")}
_STEP_UP = {"oz": 16.0, "g": 1000.0, "mL": 1000.0, "tsp": 3.0, "tbsp": 8.0, "cup": 8.0, "qt": 8.0}


def readable(value: float, unit: str, system: str) -> tuple[float, str]:
    """The same amount in the unit a cook would say it in; `system` is "us" or "metric". Counts stay."""
    here = kind(unit)
    if here == "count":
        return value, unit
    ladder = (METRIC_LADDER if system == "metric" else US_LADDER)[here]
    for step in ladder:
        found = convert(value, unit, step)
        if step == ladder[-1] or found < _STEP_UP[step]:
            return found, step
    raise AssertionError(ladder)


def rounded(value: float, digits: int = 3) -> float:
    """To three significant digits, so that a figure pretends no more than it knows."""
    if value == 0 or not math.isfinite(value):
        return value
    return round(value, digits - 1 - math.floor(math.log10(abs(value))))


def text(value: float, unit: str) -> str:
    """A value and its unit, "0.5 cup", "2 each"; a figure for a plan, not a sentence."""
    return f"{rounded(value):.10g} {unit}"
