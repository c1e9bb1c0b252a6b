"""How many eaters' portions a promise brings."""

from __future__ import annotations

import re
from dataclasses import replace

from planning.amounts import parse
from planning.dishes import lookup
from planning.headcount import Headcount
from planning.portions.catalogue import Item, Size
from planning.portions.measures import NoConversion, convert, kind
from planning.portions.wanted import item_of
from planning.potluck import Potluck, Promise
from planning.tables import rows

USUAL_YIELD = {
    "main": 10.0,
    "side": 10.0,
    "salad": 10.0,
    "starter": 12.0,
    "bread": 12.0,
    "dessert": 12.0,
    "drink": 10.0,
    "topping": 12.0,
    "supplies": 24.0,
}
"""Servings of a dish nobody said more about: a 9x13 pan feeds 10-12 (Q117, no publication named) and a 2-litre
bottle ten glasses with ice (Q280, likewise); the rest is common practice, no source."""

MOST_SERVINGS = 1_000_000.0
"""A promise of more is a slip of the finger; the plan reckons with so many and goes on."""

PIECE_SQ_IN = 5.33
"""A piece of sheet cake or bars: 36 from a 12x16 in pan (Q147, no publication named)."""

CUBIC_IN_PER_CUP = 231 / 16
"""The US gallon is 231 cubic inches (NIST Handbook 44)."""

SURE = 0.5
"""How sure the catalogue of dishes must be before its yield is used."""


def servings_of(promise: Promise, headcount: Headcount | None = None, potluck: Potluck | None = None) -> float:
    """Eaters' portions which the promise brings, 0 or more.

    What the guest said; else what their quantity holds of the item's portions (weight of things sold raw or dry
    is taken as bought, the smaller figure); else the usual yield of the dish's usual vessel from the catalogue;
    else the usual yield of its category. Things for the table without a number are for everybody of the headcount.
    """
    if promise.servings is not None:
        return min(MOST_SERVINGS, max(0.0, promise.servings))
    if promise.category == "supplies":
        pieces = pieces_for_the_table(promise)
        everybody = USUAL_YIELD["supplies"] if headcount is None else float(headcount.at_service_level)
        return everybody if pieces is None else min(MOST_SERVINGS, pieces)
    if promise.quantity and (found := servings_in(promise.quantity, item_of(promise))) is not None:
        return min(MOST_SERVINGS, found)
    known = lookup(promise.dish)
    if known.dish is not None and known.confidence >= SURE and known.dish.servings > 0:
        return float(known.dish.servings)
    return USUAL_YIELD.get(promise.category, 10.0)


def pieces_for_the_table(promise: Promise) -> float | None:
    """For how many people a promise of supplies is, one piece each; None when nobody said how many.

    "40" of napkins is for 40, whatever a generous host would buy for each.
    """
    if promise.servings is not None:
        return max(0.0, promise.servings)
    if not promise.quantity:
        return None
    item = item_of(promise)
    return servings_in(promise.quantity, replace(item, amount=1.0) if item.unit == "each" else item)


def servings_in(quantity: str, item: Item) -> float | None:
    """Portions of the item in words like "3 lb", "2 dozen" or "a 9x13 pan".

    None when the words cannot be compared with the item. Of a range ("8-10") the lower end counts.
    """
    amount = parse(quantity)
    if amount is None or not 0 <= amount.value < 1e12:
        return None
    value, unit = float(amount.value), str(amount.unit)
    match amount.kind:
        case "serving":
            return value
        case "pan":
            return _of_pan(value, unit, item)
        case "can":
            return _of_cans(value, unit, item)
        case "package":
            size = _size_called(unit, item)
            return None if size is None else _of(value * size.amount, size.unit, item)
        case "count":
            return _of_count(value, unit, item)
    return _of(value, UNIT_NAMES.get(unit, unit), item)


UNIT_NAMES = {
    "gram": "g",
    "kilogram": "kg",
    "ounce": "oz",
    "pound": "lb",
    "teaspoon": "tsp",
    "tablespoon": "tbsp",
    "fluid_ounce": "fl oz",
    "pint": "pt",
    "quart": "qt",
    "gallon": "gal",
    "milliliter": "mL",
    "liter": "L",
}
"""What `amounts.py` calls its units, in the words of `measures.py`."""


def _of(value: float, unit: str, item: Item) -> float | None:
    if unit == "stick":
        value, unit = value / 4, "lb"
    elif unit in ("centiliter", "deciliter"):
        value, unit = value * (10 if unit == "centiliter" else 100), "mL"
    own = {"grams_per_cup": item.grams_per_cup, "grams_each": item.grams_each}
    try:
        if kind(unit) == kind(item.buy_unit) and (item.buy_each is not None or item.cooked_yield != 1.0):
            return convert(value, unit, item.buy_unit, **own) / item.to_buy(item.amount)
        return item.served(value, unit) / item.amount
    except NoConversion:
        return None


def _of_pan(value: float, unit: str, item: Item) -> float | None:
    """A pan by its volume, filled as far as `vessels.csv` says; of things in pieces, by its area."""
    if (sized := re.fullmatch(r"pan-(\d{1,2})x(\d{1,2})", unit)) is not None:
        pan = next(row for row in rows("vessels") if row["unit"] == "pan")
        length, width = float(sized[1]), float(sized[2])
    else:
        pan = next((row for row in rows("vessels") if row["unit"] == unit), {})
        if not pan:
            return None
        length, width = float(pan["length_in"]), float(pan["width_in"])
    if kind(item.unit) == "count" or (item.grams_each and not item.grams_per_cup):
        return _of(value * length * width / PIECE_SQ_IN, "each", item)
    cups = length * width * float(pan["depth_in"]) * float(pan["filled"]) / CUBIC_IN_PER_CUP
    return _of(value * cups, "cup", item)


def _of_cans(value: float, unit: str, item: Item) -> float | None:
    if item.category == "drink":
        # A can of something to drink is 12 fl oz; beer is counted by the can already.
        return _of(value, "each", item) if kind(item.buy_unit) == "count" else _of(value * 12, "fl oz", item)
    can = next((row for row in rows("cans") if row["unit"] == unit), None)
    return None if can is None else _of(value * float(can["cups"]), "cup", item)


def _size_called(word: str, item: Item) -> Size | None:
    """The item's package of that word ("bag", "bottle"), else the one it is mostly sold in."""
    plain = word.replace("_", " ")
    same = [size for size in item.sizes if plain in size.size.split()]
    return (same or list(item.sizes) or [None])[0]  # type: ignore[list-item]


def _of_count(value: float, unit: str, item: Item) -> float | None:
    """Pieces; of what is cut into slices, whole ones ("2" pies are sixteen slices); else so many dishes."""
    if unit == "slice" and item.unit == "slice":
        return value / item.amount
    whole = next((size for size in item.sizes if size.unit == "slice" and size.amount > 1), None)
    if unit in ("piece", "loaf", "wheel", "unit") and item.unit == "slice" and value <= MOST_WHOLE:
        slices = whole.amount if whole else SLICES_A_LOAF
        return value * slices / item.amount
    if unit in ("loaf", "batch") or (unit in ("piece", "unit") and value <= MOST_WHOLE and _in_one_vessel(item)):
        return value * USUAL_YIELD.get(item.category, 10.0)
    if unit in ("head", "bunch", "clove", "wheel"):
        return None
    return _of(value, "each", item)


SLICES_A_LOAF = 16
"""Common practice, no source."""

MOST_WHOLE = 8
""""2" of a pie are two pies, but "24" are slices: common practice, no source."""


def _in_one_vessel(item: Item) -> bool:
    """A dish that stands on the table as one thing: measured by the cup and not by pieces."""
    return kind(item.unit) == "volume" and item.grams_each is None
