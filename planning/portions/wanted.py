"""Which items a potluck needs figures for, and the figures."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from planning.dishes import lookup
from planning.headcount import Headcount
from planning.portions.catalogue import GENERAL, Item, find, items, named_so
from planning.portions.names import best, words
from planning.portions.rules import Portion, portion_of, table_of
from planning.portions.suited import suited_factors
from planning.potluck import Potluck, Promise
from planning.tables import rows

STAPLES = ("cold drinks", "ice", "plates", "cups", "napkins", "cutlery")
"""What every potluck needs, whoever thinks of it: common practice, no source."""


@cache
def item_for(text: str, category: str | None = None) -> Item:
    """The table's item; else the one the dish catalogue's name for it has; else the words themselves.

    Words of no item are reckoned like the usual thing of their category (`GENERAL`); what the catalogue does not
    take for food either is a thing for the table, one a person. Both say "common practice, no source".
    """
    found = find(text, category)
    known = lookup(text)
    if found is not None and (known.dish is None or named_so(text) or _goes(known.dish.category, found)):
        return found
    if known.dish is not None and known.confidence >= SURE:
        # "Orange chicken" is no orange: the words of a sure dish count only where they mean a thing of its category.
        for name in filter(None, (known.dish.name, known.dish.like, known.dish.name.split()[-1])):
            found = find(name, known.dish.category)
            if found is not None and _goes(known.dish.category, found):
                return found
        category = category or known.dish.category
    if category is None:
        category = known.category if known.category in GENERAL else "supplies"
    like = items()[GENERAL[category]]
    if category == "supplies":
        like = replace(like, amount=1.0)
    elif category == "topping":
        # Nobody knows what it is sold in; a bottle of ketchup is a wrong answer.
        like = replace(like, sizes=())
    return replace(like, name=" ".join(text.lower().split())[:60] or like.name, aliases=(), source="practice")


GOES = frozenset((
    ("side", "salad"), ("salad", "side"), ("side", "main"), ("main", "starter"), ("starter", "main"),
    ("bread", "dessert"), ("bread", "starter"), ("topping", "starter"),
))  # fmt: skip
"""(a dish's category, an item's) which go together: samosas are a starter here and a main there."""


def _goes(category: str, item: Item) -> bool:
    return item.category == category or (category, item.category) in GOES


SURE = 0.5
"""How sure the catalogue of dishes must be before its name is taken."""


@cache
def _item_in(dish: str, category: str) -> Item:
    found = item_for(dish, category)
    if found.category == category:
        return found
    if category in ("side", "salad") and found.category == "main":
        # What is a main elsewhere is taken as a side here: half of a main's portion (common practice, no source).
        return replace(found, category=category, kind=category, amount=found.amount / 2, source="practice")
    if "topping" in (category, found.category) or "supplies" in (category, found.category):
        return replace(found, category=category)
    return replace(found, category=category, kind=_kind_in(category, found))


def _kind_in(category: str, found: Item) -> str:
    eaten = category in ("main", "side", "salad", "starter", "bread", "dessert")
    return category if eaten and found.category != "drink" else found.kind


def item_of(promise: Promise) -> Item:
    """What the promised dish is; its category is the one the guest's promise stands in."""
    return _item_in(promise.dish, promise.category)


@cache
def base_item(base: str) -> Item:
    """What the toppings of a bar go on, in the category the bar stands for."""
    index = {}
    for row in rows("bases"):
        index[words(row["base"])] = row["base"]
    for row in rows("bases"):
        for alias in row["aliases"].split(";"):
            index.setdefault(words(alias), row["base"])
    known = best(base, index)
    for row in rows("bases"):
        if row["base"] == known:
            return replace(items()[row["item"]], category=row["counts_as"], kind=row["counts_as"])
    found = item_for(base)
    return found if found.category in ("main", "dessert") else replace(found, category="main", kind="main")


def portions(potluck: Potluck, headcount: Headcount) -> tuple[Portion, ...]:
    """Every item promised, wanted (`potluck.items`) or needed anyway (`STAPLES`), once each, in the table's order.

    The toppings of the bar stand in `bar.amounts`, its base here.
    """
    wanted: dict[str, Item] = {}
    dishes: dict[str, set[tuple[str, ...]]] = {}
    mains: dict[str, list[Promise]] = {}
    for promise in potluck.promises:
        item = item_of(promise)
        wanted.setdefault(item.name, item)
        dishes.setdefault(item.name, set()).add(tuple(sorted(words(promise.dish))))
        if item.kind == "main":
            mains.setdefault(item.name, []).append(promise)
    for name in potluck.items:
        item = item_for(name)
        wanted.setdefault(item.name, item)
        if item.kind == "main":
            mains.setdefault(item.name, []).append(Promise("", "", name, "main"))
    base = None if potluck.bar is None else base_item(potluck.bar.base)
    if base is not None:
        wanted[base.name] = base
    # Two unlike casseroles are one item here but two dishes on the table.
    several = {name: len(dishes.get(name, ())) or 1 for name in wanted}
    table = table_of(potluck, [item for item in wanted.values() for _ in range(several[item.name])])
    # Everybody takes one base at a bar, whatever else is there: the Armed Forces card (Q177) counts one each.
    alone = replace(table, dishes={})
    for name in STAPLES:
        wanted.setdefault(name, items()[name])
    suited = {} if base is not None and base.category == "main" else suited_factors(potluck, headcount, mains)
    return tuple(
        portion_of(potluck, headcount, item, alone)
        if base is not None and item.name == base.name
        else portion_of(
            potluck, headcount, item, table, dishes=several.get(item.name, 1), suited=suited.get(item.name, 1.0)
        )
        for item in wanted.values()
    )
