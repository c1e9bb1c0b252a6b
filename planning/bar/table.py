"""The tables of the bar: bases, the toppings of each, and the combinations (all invented for this project)."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

from planning.dishes import lookup
from planning.portions.catalogue import Size, sizes
from planning.portions.names import best, words
from planning.potluck import Combo
from planning.tables import rows


@dataclass(frozen=True)
class Base:
    """What toppings go on: `units` an eater takes, the category it `counts_as`, its `item` in the portions."""

    name: str
    aliases: tuple[str, ...]
    counts_as: str
    item: str
    units: float
    warm: bool
    source: str


@dataclass(frozen=True)
class ToppingRow:
    """One topping of a base: `amount` of `unit` for one who takes it; `uptake` the share of eaters who do, 0..1.

    `ingredients` are its names in the allergen tables. Uptakes below 1 are common practice, no source: the Armed
    Forces potato bar (card Q-G-4) counts every topping for every diner.
    """

    base: str
    name: str
    aliases: tuple[str, ...]
    amount: float
    unit: str
    uptake: float
    warm: bool
    ingredients: tuple[str, ...]
    sizes: tuple[Size, ...]
    buy_unit: str
    grams_per_cup: float | None
    grams_each: float | None
    source: str


@cache
def base_rows() -> dict[str, Base]:
    return {
        row["base"]: Base(
            row["base"],
            tuple(a for a in row["aliases"].split(";") if a),
            row["counts_as"],
            row["item"],
            float(row["units"]),
            row["warm"] == "yes",
            row["source"],
        )
        for row in rows("bases")
    }


@cache
def topping_rows(base: str) -> dict[str, ToppingRow]:
    """The toppings of a base named as in the table."""
    return {
        row["topping"]: ToppingRow(
            base,
            row["topping"],
            tuple(a for a in row["aliases"].split(";") if a),
            float(row["amount"]),
            row["unit"],
            float(row["uptake"]),
            row["warm"] == "yes",
            tuple(i for i in row["ingredient"].split(";") if i),
            tuple(sizes()[s] for s in row["packages"].split(";") if s),
            row["buy_unit"],
            float(row["grams_per_cup"]) if row["grams_per_cup"] else None,
            float(row["grams_each"]) if row["grams_each"] else None,
            row["source"],
        )
        for row in rows("toppings")
        if row["base"] == base
    }


def bases() -> tuple[str, ...]:
    """The bases we have tables for; a host may name any other."""
    return tuple(base_rows())


@cache
def base_named(text: str) -> str | None:
    """The base which free words mean ("jacket spuds"), or None.

    >>> base_named("Jacket potatoes")
    'baked potato'
    """
    index = {words(b.name): b.name for b in base_rows().values()}
    for b in base_rows().values():
        for alias in b.aliases:
            index.setdefault(words(alias), b.name)
    found = best(text, index)
    if found is None and (dish := lookup(text).dish) is not None:
        # A name in another language is that of a dish we know.
        found = best(dish.name, index)
    return found


def toppings_for(base: str) -> tuple[str, ...]:
    """The base's toppings, the most taken first; none for a base without a table."""
    known = topping_rows(base_named(base) or base)
    return tuple(sorted(known, key=lambda name: (-known[name].uptake, name)))


@cache
def combos_for(base: str) -> tuple[Combo, ...]:
    """The base's named combinations in the table's order; none for a base without a table."""
    known = base_named(base) or base
    return tuple(
        Combo(row["combo"], tuple(row["toppings"].split(";"))) for row in rows("combos") if row["base"] == known
    )


@cache
def combo_weights(base: str) -> dict[str, float]:
    """The share of eaters expected to like each combination, 0..1: what its least taken topping has."""
    known = base_named(base) or base
    return {row["combo"]: float(row["weight"]) for row in rows("combos") if row["base"] == known}


@cache
def _topping_index(base: str) -> dict[tuple[str, ...], str]:
    found = {words(name): name for name in topping_rows(base)}
    for row in topping_rows(base).values():
        for alias in row.aliases:
            found.setdefault(words(alias), row.name)
    return found


@cache
def match_topping(base: str, text: str) -> str | None:
    """The base's topping which free words mean ("some grated cheese"), or None."""
    return best(text, _topping_index(base_named(base) or base))


def topping_row(base: str, topping: str) -> ToppingRow | None:
    """The table's row for a topping of a base, or None for one of the hosts' own."""
    matched = match_topping(base, topping)
    return topping_rows(base_named(base) or base).get(matched) if matched else None


@cache
def topping_anywhere(base: str, topping: str) -> ToppingRow | None:
    """The base's row for a topping; else, for one of the hosts' own, the row of the first other base that has it.

    So bacon is weighed the same on a taco as on a potato. Only the very words count elsewhere; how many take it there
    is the other base's figure and therefore common practice, no source.
    """
    own = topping_row(base, topping)
    if own is not None:
        return own
    for other in base_rows():
        name = _topping_index(other).get(words(topping))
        if name is not None:
            return replace(topping_rows(other)[name], base=base, source="practice")
    return None


@cache
def canonical(base: str, name: str) -> str:
    """One name for all spellings of a topping, so that the host's "Cheese" is the table's grated cheddar."""
    exact = _topping_index(base_named(base) or base).get(words(name))
    return exact or " ".join(words(name)) or name
