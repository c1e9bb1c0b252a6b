"""Which items a potluck needs figures for, and the figures."""

from __future__ import annotations

from dataclasses import replace

from planning.headcount import Headcount
from planning.portions.catalogue import GENERAL, Item, find, items
from planning.portions.rules import Portion, portion_of, table_of
from planning.potluck import Potluck, Promise

STAPLES = ("cold drinks", "ice", "plates", "cups", "napkins", "cutlery")
"""What every potluck needs, whoever thinks of it: common practice, no source."""


def item_for(text: str, category: str | None = None) -> Item:
    """The table's item, or the words themselves reckoned like the usual thing of their category."""
    found = find(text, category)
    if found is not None:
        return found
    like = items()[GENERAL.get(category or "main", "casserole")]
    return replace(like, name=" ".join(text.lower().split())[:60] or like.name, aliases=(), source="practice")


def item_of(promise: Promise) -> Item:
    """What the promised dish is; its category is the one the guest's promise stands in."""
    found = item_for(promise.dish, promise.category)
    return found if found.category == promise.category else replace(found, category=promise.category)


def portions(potluck: Potluck, headcount: Headcount, *, hearty: float = 0.0) -> tuple[Portion, ...]:
    """Every item promised, wanted (`potluck.items`) or needed anyway (`STAPLES`), once each, in the table's order.

    `hearty` is the share of hearty eaters in 0..1.
    """
    wanted: dict[str, Item] = {}
    for promise in potluck.promises:
        item = item_of(promise)
        wanted.setdefault(item.name, item)
    for name in potluck.items:
        item = item_for(name)
        wanted.setdefault(item.name, item)
    served = tuple(wanted.values())
    if potluck.bar is not None:
        base = item_for(potluck.bar.base)
        wanted.setdefault(base.name, base)
        served = tuple(wanted.values())
    for name in STAPLES:
        wanted.setdefault(name, items()[name])
    table = table_of(potluck, served, hearty)
    return tuple(portion_of(potluck, headcount, item, table) for item in wanted.values())
