"""What a thing costs: the host's own figure, else an estimate that is marked as one."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal, localcontext
from functools import cache

from planning.portions import Item, Package
from planning.portions.catalogue import find
from planning.portions.measures import NoConversion, convert
from planning.portions.names import words
from planning.potluck import Money, Potluck, Price
from planning.shopping.evening import smallest
from planning.tables import rows

ESTIMATED_IN = "USD"
"""Our estimates are in this currency; a potluck that reckons in another gets none rather than a wrong one."""

PACKAGE_WORDS = frozenset((
    "package", "pack", "packet", "bag", "bottle", "can", "box", "jar", "tub", "carton", "jug", "pan", "loaf", "bunch",
    "case", "container", "tin",
))  # fmt: skip
_OF_SO_MANY = re.compile(
    r"^(?:pack(?:age|et)?|box|bag|case|sleeve) of (?P<n>[1-9][0-9]{0,4})$|^(?P<m>[1-9][0-9]{0,4})[- ](?:pack|count|ct)$"
)
"""A price for a package of a counted thing: so many of them are bought as hold the need."""
PRICE_UNITS = {
    "lbs": "lb", "pound": "lb", "ounce": "oz", "gram": "g", "kilo": "kg", "kilogram": "kg", "liter": "L", "litre": "L",
    "l": "L", "ml": "mL", "gallon": "gal", "quart": "qt", "pint": "pt", "cups": "cup", "piece": "each", "one": "each",
}  # fmt: skip


@cache
def estimates() -> dict[str, Decimal]:
    """US dollars for one portion by the item or its kind (`prices.csv`): common practice, no source."""
    return {row["of"]: Decimal(row["usd_per_portion"]) for row in rows("prices")}


def own_price(potluck: Potluck, *names: str) -> Price | None:
    """The host's figure for a thing under any of these names, or None."""
    asked = {words(name) for name in names}
    exact = next((price for item, price in potluck.prices.items() if words(item) in asked), None)
    if exact is not None:
        return exact
    return next((price for item, price in potluck.prices.items() if words(_row_of(item)) in asked), None)


@cache
def _row_of(item: str) -> str:
    """The table's name of a thing: "paper napkins" are napkins."""
    found = find(item)
    return found.name if found is not None else item


def currency_of(potluck: Potluck) -> str:
    """What the potluck reckons in: its budget's, else its prices', else its payments' currency, else US dollars.

    A metric table that named no currency reckons in none we know: "", so that it is told no dollars.
    """
    if potluck.budget is not None:
        return potluck.budget.currency
    known = [p.money.currency for p in potluck.prices.values()] + [p.money.currency for p in potluck.payments]
    return known[0] if known else ESTIMATED_IN if potluck.units == "us" else ""


def cost_of(
    potluck: Potluck, item: Item, buy: float, buy_unit: str, packages: Sequence[Package], name: str = ""
) -> tuple[Money | None, bool]:
    """(cost, whether it is our estimate) of `buy` of `buy_unit` in these packages; None when nobody knows.

    A price per package word counts packages; a price per unit, and our own estimate of a portion, is paid for all
    that the packages hold: nobody sells the half of a bag. So nothing costs less by needing more of it.
    """
    price = own_price(potluck, name or item.name, item.name)
    if price is not None:
        amount = _units_paid(price.per, item, buy, buy_unit, packages)
        if amount is not None:
            return _rounded(price.money.amount * amount, price.money.currency), False
    currency = currency_of(potluck)
    per_portion = estimates().get(item.name, estimates().get(item.kind))
    if currency.upper() != ESTIMATED_IN or per_portion is None:
        return None, True
    own = {"grams_per_cup": item.grams_per_cup, "grams_each": item.grams_each}
    try:
        held = sum(p.count * convert(p.amount, p.unit, item.buy_unit, **own) for p in packages)
        portions = (held or convert(buy, buy_unit, item.buy_unit, **own)) / item.to_buy(item.amount)
    except NoConversion:
        return None, True
    return _rounded(per_portion * Decimal(repr(round(portions, 6))), currency), True


def _units_paid(per: str, item: Item, buy: float, buy_unit: str, packages: Sequence[Package]) -> Decimal | None:
    said = " ".join(per.lower().split())
    if (number := _OF_SO_MANY.search(said)) is not None and buy_unit == "each":
        return Decimal(math.ceil(buy / int(number["n"] or number["m"])))
    same = [p for p in packages if p.size.lower() == said]
    if same:
        return Decimal(sum(p.count for p in packages))
    if said in PACKAGE_WORDS or (said and said.split()[-1] in PACKAGE_WORDS) or said.startswith("pack"):
        return Decimal(sum(p.count for p in packages) or math.ceil(buy))
    unit = PRICE_UNITS.get(said.rstrip("."), PRICE_UNITS.get(said.rstrip("s"), said))
    own = {"grams_per_cup": item.grams_per_cup, "grams_each": item.grams_each}
    try:
        held = sum(p.count * convert(p.amount, p.unit, unit, **own) for p in packages)
        return Decimal(repr(round(held or convert(buy, buy_unit, unit, **own), 6)))
    except NoConversion:
        return None


def _rounded(amount: Decimal, currency: str) -> Money:
    # More digits than the usual 28, so that an absurd price is a large figure and no crash.
    with localcontext(prec=120):
        return Money(amount.quantize(smallest(currency), ROUND_HALF_UP), currency)
