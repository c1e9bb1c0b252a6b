"""What is listed in a promised dish, three-valued: listed, perhaps, not listed.

The answer for a dish is the union over its ingredients, then tested again as a whole: kosher meat with milk is
only seen there. Adding an ingredient can only add to what is listed. A word like "vegan" in a name takes
nothing off the list: where it contradicts the usual recipe, the item becomes a question for the cook.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache

from planning.diets.ingredients import Found, Ingredient, find, ingredient_named, key_of, rows_without
from planning.diets.needs import ANYTHING, NeedRule, allergens, core_of, rule_of
from planning.dishes import Dish, lookup
from planning.dishes.index import dishes_known_as
from planning.dishes.names import is_kind
from planning.potluck import Promise

COOK, USUAL, UNKNOWN = "cook", "usual recipe", "unknown"
MEATS = frozenset({"meat", "beef", "pork", "poultry", "lard"})
DIETS = ("vegetarian", "vegan", "pescatarian", "halal", "kosher", "gluten-free", "dairy-free", "nut-free")


@dataclass(frozen=True)
class Listed:
    """What is listed in one dish.

    `contains` and `may_contain` are allergens; `holds` and `may_hold` all marks, also meat, gelatin, honey,
    alcohol. `breaks` and `may_break` are diets. `basis` says who listed it: the "cook", the "usual recipe" of the
    catalogue, or "unknown". `unknown_ingredients` are what the cook listed and no table knows: they have to be asked.
    """

    contains: frozenset[str]
    may_contain: frozenset[str]
    breaks: frozenset[str]
    may_break: frozenset[str]
    basis: str
    unknown_ingredients: tuple[str, ...]
    holds: frozenset[str]
    may_hold: frozenset[str]
    sources: tuple[str, ...]


def listed(promise: Promise) -> Listed:
    """What is listed in a promised dish: by its cook, else as usually made; the name's own words always count."""
    return _listed(promise.dish, promise.ingredients or None)


@lru_cache(maxsize=4096)
def _listed(name: str, ingredients: tuple[str, ...] | None) -> Listed:
    name = name if dishes_known_as(name) else _asserted(name)
    named = find(name)
    if ingredients:
        ingredients = tuple(text for said in ingredients if (text := _asserted(said)))
        found = [find(text) for text in ingredients]
        unknown = tuple(text for text, what in zip(ingredients, found, strict=True) if what.unmatched or not what.rows)
        return _union([*found, _by_its_name(name, named)], frozenset(), COOK, unknown)
    dish = lookup(name).dish or next(iter(dishes_known_as(name)), None)
    rows = usual_rows(dish) if dish is not None else ()
    if dish is not None and rows:
        usual = Found(_without_other_meats(rows, name, dish, named), frozenset(), ())
        return _union([usual, _by_its_name(name, named), _beside(name, dish)], named.claims, USUAL, ())
    row = ingredient_named(name)
    if row is not None:
        return _union([Found((row,), frozenset(), ())], named.claims, USUAL, ())
    return _union([named, _of_its_sort(name), _beside(name, None)], named.claims, UNKNOWN, ())


_DENIED = re.compile(r"(?:^|,\s*|;\s*|\s+(?:but|and|with|y|pero)\s+|\s+)(?:no|without|sin)\s+[^,;]+", re.IGNORECASE)


def _asserted(text: str) -> str:
    """Without what is said not to be in it: "carrot cake, no walnuts" holds none by its name. A denial the tables take
    for a claim ("no nuts") stays.

    >>> _asserted("carrot cake, no walnuts"), _asserted("cake, no nuts")
    ('carrot cake', 'cake, no nuts')
    """
    return _DENIED.sub(lambda m: m[0] if find(m[0].strip(" ,;")).claims else "", text).strip(" ,;")


def _beside(name: str, dish: Dish | None) -> Found:
    """What other dishes named beside the one that counts may bring: the fish of "ceviche tostadas"."""
    said = key_of(name)
    if dish is not None and lookup(name).confidence >= 1.0:
        return Found((), frozenset(), ())
    rows: list[Ingredient] = []
    for length in (3, 2, 1):
        for start in range(len(said) - length):
            other = lookup(" ".join(said[start : start + length]))
            if other.dish is not None and other.confidence >= 1.0 and other.dish != dish:
                rows.extend(_doubting(row, row.holds) for row in usual_rows(other.dish))
    return Found(tuple(dict.fromkeys(rows)), frozenset(), ())


def _of_its_sort(name: str) -> Found:
    """What a dish nobody knows may hold: what the commonest of its sort does, an unheard-of pie a pie's crust."""
    said = key_of(name)
    sort = lookup(said[-1]).dish if len(said) > 1 else None
    rows = usual_rows(sort) if sort is not None else ()
    return Found(tuple(_doubting(row, row.holds) for row in rows), frozenset(), ())


def _doubting(row: Ingredient, marks: frozenset[str]) -> Ingredient:
    """The row with these marks only perhaps there."""
    if not row.holds & marks:
        return row
    return replace(
        row,
        holds=row.holds - marks,
        may_hold=row.may_hold | (row.holds & marks),
        breaks=frozenset(),
        may_break=row.breaks | row.may_break,
    )


def _without_other_meats(rows: tuple[Ingredient, ...], name: str, dish: Dish, named: Found) -> tuple[Ingredient, ...]:
    """The usual recipe's meats become a question where the name puts something else in their place.

    "Mushroom stroganoff", "veggie wraps" or "shrimp tacos" may well be without the usual beef; nobody has said so.
    """
    instead = [word for word in key_of(name) if word not in key_of(dish.name)]
    if not any(is_kind(word, "meat", "fish", "bean", "veg", "vegetable", "egg") for word in instead):
        return rows
    said = frozenset().union(*(row.holds for row in named.rows))
    return tuple(_doubting(row, MEATS - said) for row in rows)


def _only_plain(name: str, named: Found) -> Found:
    """What a name surely mentions ("peanut noodle salad"), without whole dishes in it ("potato salad").

    A whole dish in the table is a usual recipe, and a usual recipe must not speak against the cook's own list; nor
    must what only some brands hold.
    """
    rows = rows_without(name, _is_recipe) if any(_is_recipe(row) for row in named.rows) else named.rows
    surely = tuple(replace(row, may_hold=frozenset(), may_break=frozenset()) for row in rows)
    return Found(surely, named.claims, named.unmatched)


def _by_its_name(name: str, named: Found) -> Found:
    """What a name surely mentions; in a whole name that is the table's own, a word for something else only perhaps.

    "Tortilla de patatas" is a dish of eggs, whatever the word for a flatbread, and "cabbage rolls" are no bread.
    Nothing is taken away: where the usual recipe has it not, the cook is asked.
    """
    plain = _only_plain(name, named)
    usual = frozenset(
        mark for dish in dishes_known_as(name) for row in usual_rows(dish) for mark in row.holds | row.may_hold
    )
    if not usual:
        return plain
    rows = tuple(_doubting(row, row.holds) if row.holds - usual - MEATS else row for row in plain.rows)
    return Found(rows, plain.claims, plain.unmatched)


@lru_cache(maxsize=1024)
def _is_recipe(row: Ingredient) -> bool:
    dish = lookup(row.name).dish
    return dish is not None and key_of(dish.name) == key_of(row.name) and len(dish.ingredients) > 1


@lru_cache(maxsize=2048)
def usual_rows(dish: Dish) -> tuple[Ingredient, ...]:
    """The table's rows for a dish as usually made: its own row where there is one, and its usual ingredients'."""
    rows: list[Ingredient] = []
    own = ingredient_named(dish.name)
    if own is not None:
        rows.append(own)
    for text in dish.ingredients:
        rows.extend(find(text).rows)
    return tuple(dict.fromkeys(rows))


def _union(found: Iterable[Found], claims: frozenset[str], basis: str, unknown: tuple[str, ...]) -> Listed:
    holds: set[str] = set()
    may_hold: set[str] = set()
    breaks: set[str] = set()
    may_break: set[str] = set()
    sources: set[str] = set()
    for what in found:
        doubted = _doubted(what.claims | claims)
        for row in what.rows:
            left = row.holds - doubted
            holds |= left
            may_hold |= row.may_hold | (row.holds & doubted)
            # A diet whose breach the claim puts in doubt is a question, too: vegan lasagna may suit vegetarians.
            open_again = {
                diet
                for diet in row.breaks
                if left != row.holds and (rule := rule_of(diet)) is not None and not rule.avoids & left
            }
            breaks |= row.breaks - open_again
            may_break |= row.may_break | open_again
            sources.add(row.source)
    for diet in DIETS:
        rule = rule_of(diet)
        if rule is None:
            continue
        verdict = _verdict(rule, frozenset(holds), frozenset(may_hold))
        if verdict == "contains":
            breaks.add(diet)
        elif verdict == "ask":
            may_break.add(diet)
    if holds & MEATS and "milk" in holds:
        breaks.add("kosher")
    elif (holds | may_hold) & MEATS and "milk" in holds | may_hold:
        may_break.add("kosher")
    all_allergens = allergens()
    sure = frozenset(holds)
    perhaps = frozenset(may_hold) - sure
    return Listed(
        contains=sure & all_allergens,
        may_contain=perhaps & all_allergens,
        breaks=frozenset(breaks),
        may_break=frozenset(may_break) - frozenset(breaks),
        basis=basis,
        unknown_ingredients=unknown,
        holds=sure,
        may_hold=perhaps,
        sources=tuple(sorted(sources)),
    )


def _doubted(claims: frozenset[str]) -> frozenset[str]:
    """What the claims speak against: no longer listed as there, but not as absent either."""
    rules = [rule_of(claim) for claim in claims]
    return frozenset().union(*(rule.avoids for rule in rules if rule is not None))


def _verdict(rule: NeedRule, holds: frozenset[str], may_hold: frozenset[str]) -> str:
    if rule.avoids & holds:
        return "contains"
    if ANYTHING in rule.asks or rule.avoids & may_hold or rule.asks & (holds | may_hold):
        return "ask"
    return "listed-free"


def can_eat(promise: Promise, need: str) -> str:
    """ "contains", "ask", or "listed-free" (nothing listed against it, by the cook's own list).

    Only the cook's whole list, every item known, makes "listed-free"; a usual recipe never does. A need no table
    knows ("kiwi") is contained where its own words stand in the name or the list, else always asked.
    """
    return _can_eat(promise.dish, promise.ingredients or None, need)


@lru_cache(maxsize=16384)
def _can_eat(dish: str, ingredients: tuple[str, ...] | None, need: str) -> str:
    if rule_of(need) is None and _names_it(dish, ingredients, need):
        return "contains"
    return verdict(_listed(dish, ingredients), need)


def names_it(promise: Promise, need: str) -> bool:
    """Whether the words of a need ("no mushrooms") stand together in the dish's name, its list or its usual recipe."""
    return _names_it(promise.dish, promise.ingredients or None, need)


def _names_it(name: str, ingredients: tuple[str, ...] | None, need: str) -> bool:
    wanted = set(key_of(core_of(need)))
    if ingredients is None and (dish := lookup(name).dish) is not None:
        ingredients = dish.ingredients
    return bool(wanted) and any(wanted <= set(key_of(text)) for text in (name, *(ingredients or ())))


def verdict(what: Listed, need: str) -> str:
    """`can_eat` for what is listed already."""
    rule = rule_of(need)
    if rule is None:
        return "ask"
    found = _verdict(rule, what.holds, what.may_hold)
    if found == "contains" or rule.need in what.breaks:
        return "contains"
    if found == "ask" or rule.need in what.may_break or what.basis != COOK or what.unknown_ingredients:
        return "ask"
    return "listed-free"


@lru_cache(maxsize=8192)
def usually_fits(dish: Dish, need: str) -> bool:
    """Whether a dish as usually made has nothing listed, nor perhaps listed, against a need: good to ask for."""
    rule = rule_of(need)
    if rule is None or ANYTHING in rule.asks:
        return False
    rows = usual_rows(dish)
    if not rows:
        return False
    what = _union([Found(rows, frozenset(), ()), _only_plain(dish.name, find(dish.name))], frozenset(), USUAL, ())
    return (
        _verdict(rule, what.holds, what.may_hold) == "listed-free"
        and rule.need not in what.breaks
        and rule.need not in what.may_break
    )
