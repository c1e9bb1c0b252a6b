"""Amounts as one would say them: a unit of the group's system and a round number of it."""

from __future__ import annotations

from fractions import Fraction

from planning.amounts.numbers import number
from planning.amounts.units import factor, unit_of
from planning.potluck import Say

_STEPS: dict[tuple[str, str], tuple[tuple[str, Fraction, Fraction], ...]] = {
    # (kind, system) -> (unit, used from this many of it on, rounded to this step), largest first.
    ("mass", "us"): (
        ("pound", Fraction(10), Fraction(1)),
        ("pound", Fraction(4), Fraction(1, 2)),
        ("pound", Fraction(1), Fraction(1, 4)),
        ("ounce", Fraction(4), Fraction(1)),
        ("ounce", Fraction(0), Fraction(1, 4)),
    ),
    ("mass", "metric"): (
        ("kilogram", Fraction(10), Fraction(1, 2)),
        ("kilogram", Fraction(1), Fraction(1, 10)),
        ("gram", Fraction(200), Fraction(10)),
        ("gram", Fraction(20), Fraction(5)),
        ("gram", Fraction(0), Fraction(1)),
    ),
    ("volume", "us"): (
        ("gallon", Fraction(10), Fraction(1)),
        ("gallon", Fraction(1), Fraction(1, 4)),
        ("quart", Fraction(2), Fraction(1, 2)),
        ("cup", Fraction(1, 4), Fraction(1, 4)),
        ("tablespoon", Fraction(1), Fraction(1, 2)),
        ("teaspoon", Fraction(0), Fraction(1, 4)),
    ),
    ("volume", "metric"): (
        ("liter", Fraction(10), Fraction(1, 2)),
        ("liter", Fraction(1), Fraction(1, 10)),
        ("milliliter", Fraction(200), Fraction(10)),
        ("milliliter", Fraction(20), Fraction(5)),
        ("milliliter", Fraction(0), Fraction(1)),
    ),
}  # fmt: skip
_SYMBOL = {
    "pound": "lb", "ounce": "oz", "kilogram": "kg", "gram": "g", "gallon": "gal", "quart": "qt", "cup": "cup",
    "tablespoon": "tbsp", "teaspoon": "tsp", "liter": "l", "milliliter": "ml",
}  # fmt: skip


def friendly(value: float | Fraction, unit: str, system: str = "us") -> tuple[Fraction, str]:
    """The amount as one would say it: a unit of that system ("us" or "metric") and a round number of it.

    Rounds to nearest; what must not fall short is rounded up by the caller beforehand. Never rounds to
    nothing what is more than nothing.
    """
    exact = Fraction(value).limit_denominator(1_000_000)
    known = unit_of(unit)
    name, kind = (known.name, known.kind) if known else (unit, "")
    if name == "dozen":
        exact, name = exact * 12, "piece"
    steps = _STEPS.get((kind, system))
    if steps is None:
        step = Fraction(1, 4) if 0 < exact < 5 else Fraction(1)
        return _rounded(exact, step), name
    for target, least, step in steps:
        there = exact * (factor(name, target) or 1)
        if _nearest(there, step) >= least:
            return _rounded(there, step), target
    return exact, name


def _nearest(value: Fraction, step: Fraction) -> Fraction:
    return Fraction(int(value / step + Fraction(1, 2))) * step


def _rounded(value: Fraction, step: Fraction) -> Fraction:
    return _nearest(value, step) or (step if value > 0 else Fraction(0))


def show(value: float | Fraction, unit: str, system: str = "us") -> str:
    """A short form with the unit's sign: show(20, "oz") -> "1¼ lb"; `parse` reads it back.

    Units without a sign are named as they are ("12 serving"); use `say` where people read a sentence.
    """
    shown, name = friendly(value, unit, system)
    sign = _SYMBOL.get(name, name.replace("_", " "))
    return f"{number(shown)} {sign}{'s' if sign == 'cup' and shown > 1 else ''}"


def say(value: float | Fraction, unit: str, system: str = "us") -> Say:
    """The same as a text key and facts: `number` as it is written, `unit`, `count` for the plural (1 for "½ cup")."""
    shown, name = friendly(value, unit, system)
    return Say("amount", {"number": number(shown), "count": max(1.0, float(shown)), "unit": name})
