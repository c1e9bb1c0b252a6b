"""The shopping list: what is wanted and nobody brings, in whole packages."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from planning.bar import ToppingAmount, amounts, topping_anywhere
from planning.headcount import Headcount, headcount
from planning.menu import kinds_in, servings_of
from planning.portions import Item, Package, Portion, items, packed, portions
from planning.portions.measures import NoConversion, convert, readable, rounded
from planning.portions.rules import counted
from planning.portions.wanted import STAPLES, base_item, item_for, item_of
from planning.potluck import Money, Potluck
from planning.shopping.prices import cost_of


@dataclass(frozen=True)
class ShoppingRow:
    """One thing to buy: `need` of `unit`, held by `packages` with `left_over` of `unit` to spare.

    `cost` is None when nobody knows a price; `estimated` tells that the figure is ours and not the host's.
    `running` is the sum of the costs so far in one currency, `over_budget` whether it has passed the budget.
    `why` is the category it is for.
    """

    item: str
    need: float
    unit: str
    packages: tuple[Package, ...]
    left_over: float
    cost: Money | None
    estimated: bool
    running: Money | None
    over_budget: bool
    why: str
    source: str


def shopping(
    potluck: Potluck, count: Headcount | None = None, needed: Sequence[Portion] | None = None
) -> tuple[ShoppingRow, ...]:
    """What nobody brings of the wanted items, the staples, the bar's base and its toppings.

    What promises bring in part is bought for the rest. `count` and `needed` are computed when not given.
    """
    count = count if count is not None else headcount(potluck)
    needed = needed if needed is not None else portions(potluck, count)
    found = [row for portion in needed if (row := _row(potluck, count, portion, needed)) is not None]
    found += [_topping(potluck, a) for a in amounts(potluck, count) if a.guest is None and a.buy > 0]
    return _with_totals(potluck, found)


def _row(potluck: Potluck, count: Headcount, portion: Portion, needed: Sequence[Portion]) -> ShoppingRow | None:
    item = _item(potluck, portion)
    if item is None:
        return None
    left = 1.0 - _brought(potluck, count, item, needed)
    if left <= 1e-6 or portion.buy <= 0:
        return None
    need, unit, packages, left_over = portion.buy, portion.buy_unit, portion.packages, portion.left_over
    if left < 1.0:
        own = {"grams_per_cup": item.grams_per_cup, "grams_each": item.grams_each}
        bought = convert(portion.buy, portion.buy_unit, item.buy_unit, **own) * left
        packages = packed(item, bought, potluck.units)
        value, unit = readable(bought, item.buy_unit, potluck.units)
        need = float(math.ceil(value - 1e-9)) if unit == "each" else rounded(value)
        held = sum(p.count * convert(p.amount, p.unit, unit, **own) for p in packages)
        left_over = rounded(max(0.0, held - need))
    cost, estimated = cost_of(potluck, item, need, unit, packages, portion.item)
    return ShoppingRow(
        portion.item, need, unit, packages, left_over, cost, estimated, None, False, portion.category, portion.source
    )


def _item(potluck: Potluck, portion: Portion) -> Item | None:
    """The table's row of a thing that is to be bought if nobody brings it; None for what is there only by promise."""
    wanted = {item_for(name).name: item_for(name) for name in potluck.items}
    if potluck.bar is not None:
        base = base_item(potluck.bar.base)
        wanted.setdefault(base.name, base)
    for name in STAPLES:
        wanted.setdefault(name, items()[name])
    return wanted.get(portion.item)


def _brought(potluck: Potluck, count: Headcount, item: Item, needed: Sequence[Portion]) -> float:
    """The share of the need that promises cover, 0..1 or more; of cold drinks also what other lines of the list cover.

    Supplies and ice without a number are promised for everybody; "plates and cups" are both.
    Cold drinks are covered by every cold drink anybody brings, a serving being a glass.
    """
    people = counted(item, potluck, count)
    if people <= 0:
        return 1.0
    covered = 0.0
    for promise in potluck.promises:
        theirs = item_of(promise)
        laid = promise.category == "supplies" and item.name in kinds_in(promise.dish)
        if theirs.name == item.name or laid:
            covered += servings_of(promise, count, potluck) / people
        elif item.name == "cold drinks" and theirs.kind == "cold-drink":
            glasses = servings_of(promise, count, potluck)
            covered += glasses / (people * _glasses_each(needed))
    return covered + (_poured(potluck, needed) if item.name == "cold drinks" else 0.0)


def _poured(potluck: Potluck, needed: Sequence[Portion]) -> float:
    """The share of all cold drinks which the named ones on the same list are: lemonade bought is not bought again.

    Those somebody promises are counted as promised.
    """
    promised = {item_of(promise).name for promise in potluck.promises}
    named = {item.name for item in map(item_for, potluck.items) if item.kind == "cold-drink"} - promised
    every = next((p for p in needed if p.item == "cold drinks"), None)
    if every is None or every.total <= 0:
        return 0.0
    poured = sum(convert(p.total, p.total_unit, every.total_unit) for p in needed if p.item in named)
    return poured / every.total


GLASS_FL_OZ = 8.0
"""One glass, as the cold drinks of the table are reckoned in (`portions.csv`)."""


def _glasses_each(needed: Sequence[Portion]) -> float:
    """Glasses one eater drinks at this potluck, with its hours and heat."""
    every = next(p for p in needed if p.item == "cold drinks")
    return convert(every.per_eater_value, every.per_eater_unit, "fl oz") / GLASS_FL_OZ


def _topping(potluck: Potluck, amount: ToppingAmount) -> ShoppingRow:
    assert potluck.bar is not None
    row = topping_anywhere(potluck.bar.base, amount.topping)
    like = replace(
        items()["ketchup"],
        name=amount.topping,
        kind="condiment",
        amount=row.amount if row else 2.0,
        unit=row.unit if row else "tbsp",
        grams_per_cup=row.grams_per_cup if row else None,
        grams_each=row.grams_each if row else None,
        buy_unit=row.buy_unit if row else "cup",
        buy_each=None,
        cooked_yield=1.0,
    )
    try:
        cost, estimated = cost_of(potluck, like, amount.buy, amount.buy_unit, amount.packages)
    except NoConversion:
        cost, estimated = None, True
    return ShoppingRow(
        amount.topping, amount.buy, amount.buy_unit, amount.packages, amount.left_over, cost, estimated, None, False,
        "topping", amount.source,
    )  # fmt: skip


def _with_totals(potluck: Potluck, found: Sequence[ShoppingRow]) -> tuple[ShoppingRow, ...]:
    result = []
    running: dict[str, Decimal] = {}
    for row in found:
        if row.cost is None:
            result.append(row)
            continue
        currency = row.cost.currency
        running[currency] = running.get(currency, Decimal(0)) + row.cost.amount
        budget = potluck.budget
        over = budget is not None and budget.currency == currency and running[currency] > budget.amount
        result.append(replace(row, running=Money(running[currency], currency), over_budget=over))
    return tuple(result)
