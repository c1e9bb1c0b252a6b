"""What a dish would cost host or shop: the host's own price where there is one, else a class of costs.

The classes are a rough estimate in US dollars ("common practice, no source"); in another currency, or where nobody
has named one and the group measures in kilograms, nothing is guessed without the host's own price.
"""

from __future__ import annotations

from decimal import Decimal, localcontext
from functools import cache

from planning import tables
from planning.dishes import Dish
from planning.potluck import Money, Potluck

CENT = Decimal("0.01")
ESTIMATED_IN = "USD"


@cache
def _classes() -> dict[tuple[str, int], tuple[Decimal, Decimal]]:
    return {
        (row["category"], int(row["cost_class"])): (Decimal(row["cook_usd"]), Decimal(row["buy_usd"]))
        for row in tables.rows("dishes_costs")
    }


def currency_of(potluck: Potluck) -> str | None:
    """The budget's currency, else that of the host's prices, else of what was paid, else US dollars - but not in a
    group with metric units, whose money nobody has named yet."""
    if potluck.budget is not None:
        return potluck.budget.currency
    known = [p.money.currency for p in potluck.prices.values()] + [p.money.currency for p in potluck.payments]
    return known[0] if known else "USD" if potluck.units == "us" else None


def cost_of(potluck: Potluck, dish: Dish | None, servings: float, bought: bool = False) -> Money | None:
    """The cost of so many servings; None when no price is known in the potluck's currency."""
    if dish is None or servings <= 0:
        return None
    price = potluck.prices.get(dish.name)
    if price is not None and price.per in ("serving", "portion", "servings"):
        return Money(_cents(price.money.amount * Decimal(servings)), price.money.currency)
    if (currency_of(potluck) or "").upper() != ESTIMATED_IN:
        return None
    cook, buy = _classes()[dish.category, dish.cost_class]
    return Money(_cents((buy if bought else cook) * Decimal(servings)), ESTIMATED_IN)


def _cents(amount: Decimal) -> Decimal:
    # More digits than the usual 28, so that an absurd price is a large figure and no crash.
    with localcontext(prec=120):
        return amount.quantize(CENT)
