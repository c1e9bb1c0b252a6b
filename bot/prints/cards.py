"""Cards that stand on the table, and the tags that bring dishes home again."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Protocol

from bot.prints.eating import food_of
from bot.prints.say import Writer, apart
from planning.diets import listed as _listed
from planning.potluck import Potluck, Promise

Plan = Mapping[str, Any]

SHOWN_DIETS = ("vegan", "vegetarian", "pescatarian")
"""The only diets a card names, the strictest first. What is free of something, halal or kosher depends on more
than a list."""

SHOWN_MARKS = ("meat", "beef", "pork", "poultry", "lard", "gelatin", "rennet", "carmine", "alcohol", "honey")
"""What else people ask about before they eat."""

SMALL_CARD_LETTERS = 330
"""A card with more text than this gets a whole page instead of half of one."""


class Listed(Protocol):
    """What `planning.diets.listed` returns, which explains each; `basis` is "cook", "usual recipe" or "unknown"."""

    @property
    def contains(self) -> frozenset[str]: ...
    @property
    def may_contain(self) -> frozenset[str]: ...
    @property
    def basis(self) -> str: ...
    @property
    def breaks(self) -> frozenset[str]: ...
    @property
    def may_break(self) -> frozenset[str]: ...
    @property
    def holds(self) -> frozenset[str]: ...
    @property
    def unknown_ingredients(self) -> tuple[str, ...]: ...


ListedOf = Callable[[Promise], Listed]


def listed_by_planning(promise: Promise) -> Listed:
    return _listed(promise)


def cards_data(potluck: Potluck, write: Writer, listed: ListedOf = listed_by_planning) -> dict[str, Any]:
    food = food_of(potluck)
    cards = [_card(p, write, listed(p)) for p in food]
    return {
        "page": write.page,
        "title": write("cards-title"),
        "small": [c for c in cards if _letters(c) <= SMALL_CARD_LETTERS],
        "large": [c for c in cards if _letters(c) > SMALL_CARD_LETTERS],
        "cut": write("cut-here"),
        "fold": write("fold-here"),
        "footer": write("card-footer"),
        "empty": "" if cards else write("cards-empty"),
    }


def _letters(card: Mapping[str, Any]) -> int:
    return 2 * len(card["dish"]) + sum(
        len(str(card[k])) for k in ("by", "contains", "may", "also", "unknown", "diets", "ask")
    )


def _card(promise: Promise, write: Writer, listed: Listed) -> dict[str, Any]:
    contains, may = allergen_lines(listed, write)
    unknown = listed.unknown_ingredients
    sure = listed.basis == "cook" and not unknown
    return {
        "dish": write.called(promise),
        "by": write("card-by", name=write.cooks(promise)),
        "serve": write("card-serve", serve=promise.serve) if promise.serve else "",
        "contains": contains,
        "may": may,
        "also": also_line(listed, write),
        "unknown": write("card-not-known", items=write.listed(unknown)) if unknown else "",
        "diets": _diets(write, listed),
        "ask": "" if sure else write("card-ask", name=write.cooks(promise)),
        "sure": sure,
    }


def also_line(listed: Listed, write: Writer) -> str:
    """Meat, alcohol and the like: no allergens, but what people ask about."""
    marks = [write("mark", mark=m) for m in SHOWN_MARKS if m in listed.holds and m not in listed.contains]
    return write("card-also", marks=write.listed(marks)) if marks else ""


def allergen_lines(listed: Listed, write: Writer) -> tuple[str, str]:
    """What it contains and who says so; what it may contain. Never that it is free of something."""
    contains = write.listed(write("need", need=a) for a in sorted(listed.contains))
    may = write.listed(write("need", need=a) for a in sorted(listed.may_contain - listed.contains))
    if listed.basis == "unknown" and not listed.contains:
        first = write("card-unknown")
    elif listed.basis != "cook" and may and not contains:
        return write("card-not-listed"), write("card-may-usually", allergens=may)
    elif contains:
        first = write("card-contains" if listed.basis == "cook" else "card-contains-usually", allergens=contains)
    else:
        first = write("card-nothing-listed" if listed.basis == "cook" else "card-nothing-usual")
    return first, write("card-may", allergens=may) if may else ""


def _diets(write: Writer, listed: Listed) -> str:
    """The strictest diet the whole list fits; nothing while any part of it is unknown."""
    fit = next((d for d in SHOWN_DIETS if d not in listed.breaks | listed.may_break), None)
    if fit is None or listed.basis == "unknown" or listed.unknown_ingredients:
        return ""
    return write("card-diets" if listed.basis == "cook" else "card-diets-usually", diets=write("need", need=fit))


def name_tags_data(potluck: Potluck, write: Writer) -> dict[str, Any]:
    tags = [{"name": write.cooks(p), "dish": write.called(p)} for p in potluck.promises]
    if potluck.bar:
        tags += [
            {"name": write.name(t.guest), "dish": apart(write.goods(t.name))} for t in potluck.bar.toppings if t.guest
        ]
    return {
        "page": write.page,
        "title": write("tags-title"),
        "tags": tags,
        "line": write("tags-line"),
        "from": write.title,
        "empty": "" if tags else write("cards-empty"),
    }
