"""The balance of the menu: how much of each category the table wants, has, lacks and has too much of.

A serving is one eater's portion. Servings follow the eaters at the service level, so that nobody goes
without; the number of dishes follows the expected people, so that a few unlikely guests add no dish.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from planning.dishes import lookup
from planning.headcount import Headcount
from planning.menu.servings import servings_of
from planning.menu.supplies import SETS, covered_by_supplies
from planning.portions.names import words
from planning.portions.rules import HEARTY, heat, hours
from planning.portions.wanted import base_item, item_of
from planning.potluck import CATEGORIES, FOOD_CATEGORIES, Potluck, Promise
from planning.tables import rows, source_text


@dataclass(frozen=True)
class Target:
    """One row of `targets.csv`: servings an eater with the published range, and people to a dish."""

    category: str
    servings: float
    low: float
    high: float
    people_per_dish: float
    fewest_dishes: int
    between_meals: float
    source: str


@dataclass(frozen=True)
class MenuRow:
    """One category. Servings 0 or more, as decimals; `low` and `high` are the target's range from the sources.

    `short_servings` and `surplus_servings` are what the promised servings stay below the target and go beyond it, in
    every category alike. `covered_servings` are the eaters the promises are good for: the promised servings, but for
    supplies the people who get one of every kind, so that napkins for forty cover nobody. `lacking_servings` are
    the eaters not covered; `too_much_servings` is what the covered go beyond `high`, the part worth a word.
    `tiny` is true where what is lacking is not worth asking anybody for.
    """

    category: str
    target_servings: float
    target_dishes: int
    promised_servings: float
    promised_dishes: int
    short_servings: float
    short_dishes: int
    surplus_servings: float
    low: float = 0.0
    high: float = 0.0
    source: str = ""
    covered_servings: float = 0.0
    too_much_servings: float = 0.0

    @property
    def lacking_servings(self) -> float:
        return round(max(0.0, self.target_servings - self.covered_servings), 2)

    @property
    def tiny(self) -> bool:
        return tiny(self.lacking_servings, self.target_servings)


def tiny(short: float, target: float) -> bool:
    """Less than two servings (than half of a target below four), or less than a tenth of the target: within what
    the portions can be told at all (common practice, no source)."""
    return short <= 0.5 or short < max(min(2.0, target / 2), 0.1 * target)


@dataclass(frozen=True)
class Needed:
    """A category to bring next: `servings` is a sensible amount for one dish, `urgency` 0..1 how open it is.

    `short_servings` are the eaters the promises do not cover (`MenuRow.lacking_servings`)."""

    category: str
    servings: float
    short_servings: float
    short_dishes: int
    urgency: float


@cache
def targets() -> dict[str, Target]:
    """The targets by category, in the table's order."""
    found = {
        row["category"]: Target(
            row["category"],
            float(row["servings"]),
            float(row["low"]),
            float(row["high"]),
            float(row["people_per_dish"]),
            int(row["fewest_dishes"]),
            float(row["between_meals"]),
            row["source"],
        )
        for row in rows("targets")
    }
    return {category: found[category] for category in CATEGORIES}


def menu(potluck: Potluck, headcount: Headcount) -> tuple[MenuRow, ...]:
    """All nine categories in the order of the table."""
    return tuple(_row(potluck, headcount, target) for target in targets().values())


def _row(potluck: Potluck, headcount: Headcount, target: Target) -> MenuRow:
    promised = [p for p in potluck.promises if p.category == target.category]
    eaters = float(headcount.at_service_level) if target.category == "supplies" else headcount.eaters
    factor = target.between_meals if potluck.mealtime == "between-meals" else 1.0
    if target.category == "topping" and potluck.bar is None:
        factor = 0.0
    if target.category in FOOD_CATEGORIES and target.category != "topping":
        factor *= 1 + HEARTY * min(1.0, max(0.0, potluck.hearty))
    # What the group's own potlucks taught (`theday.leftovers.learned`) moves the whole range alike.
    factor *= potluck.corrections.get(target.category, 1.0)
    want = target.servings * factor * eaters
    want_dishes = _dishes_wanted(target, headcount.expected, target.servings * factor) if want > 0 else 0
    have = math.fsum(_portions_of(p, headcount, potluck) for p in promised)
    dishes = len({_dish_key(p) for p in promised})
    covered: float | None = None
    if target.category == "supplies":
        covered, dishes = covered_by_supplies(promised, eaters)
    elif target.category == "topping" and potluck.bar is not None:
        # A plate takes a little of several toppings: each taken one is its part of every eater's.
        taken = sum(potluck.brings_topping(t) for t in potluck.bar.toppings)
        have, dishes = have + taken * want / max(1, want_dishes), dishes + taken
    elif potluck.bar is not None and target.category == bar_category(potluck.bar.base):
        # The bar is the meal's main: the host sees to the base, which the shopping list has while nobody brings it.
        base = base_item(potluck.bar.base)
        brought = any(item_of(p).name == base.name for p in promised)
        have, dishes = have + (0.0 if brought else headcount.eaters * factor), dishes + (0 if brought else 1)
        want_dishes = min(want_dishes, 1)
    good_for = have if covered is None else covered
    high = target.high * factor * eaters
    return MenuRow(
        category=target.category,
        target_servings=round(want, 2),
        target_dishes=want_dishes,
        promised_servings=round(have, 2),
        promised_dishes=dishes,
        short_servings=round(max(0.0, want - have), 2),
        short_dishes=max(0, want_dishes - dishes),
        surplus_servings=round(max(0.0, have - want), 2),
        low=round(target.low * factor * eaters, 2),
        high=round(high, 2),
        source=source_text(target.source),
        covered_servings=round(good_for, 2),
        too_much_servings=round(max(0.0, good_for - max(want, high)), 2) if want > 0 else 0.0,
    )


def _portions_of(promise: Promise, headcount: Headcount, potluck: Potluck) -> float:
    """A promise in eaters' portions. A drink said by quantity is counted in glasses first, of which one eater
    has several: three in the usual three hours, one more or fewer for each hour (Q270, Q271), in heat half as many
    again, as of everything cold (`kinds.csv`)."""
    servings = servings_of(promise, headcount, potluck)
    if promise.category != "drink" or promise.servings is not None or not promise.quantity:
        return servings
    return servings / (GLASSES * (1 + hours(potluck)) / 4 * (1 + 0.5 * heat(potluck)))


GLASSES = 3.0
"""Glasses an eater drinks in three hours: between Q270's and Q271's figures, no publication named."""


def _dishes_wanted(target: Target, people: float, servings: float) -> int:
    """How many dishes a table of so many expected people has, at least the category's fewest.

    None of what not everybody takes (`servings` an eater below 1) while the whole table would eat less than one.
    """
    if people <= 0 or (servings < 1 and people * servings < 1 - 1e-9):
        return 0
    if target.category == "topping":
        return min(MOST_TOPPINGS, max(target.fewest_dishes, math.ceil(people / target.people_per_dish - 1e-9)))
    if target.category == "supplies":
        return len(SETS)
    if target.category == "drink":
        return target.fewest_dishes
    return max(target.fewest_dishes, math.ceil(people * target.servings / target.people_per_dish - 1e-9))


MOST_TOPPINGS = 10
"""More kinds than a hand can carry past: common practice, no source."""


def bar_category(base: str) -> str:
    """The category a bar stands for: "dessert" for sweet bases, "main" for all others."""
    return base_item(base).category


def doubles(potluck: Potluck) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Dishes which two or more promises bring, each as (dish, promise ids), in the order first promised.

    "Ravi's slaw" and "coleslaw" are one dish; two unlike dishes that only share a kind are not.
    """
    found: dict[str, list[Promise]] = {}
    for promise in potluck.promises:
        found.setdefault(_dish_key(promise), []).append(promise)
    return tuple((same[0].dish, tuple(p.id for p in same)) for same in found.values() if len(same) > 1)


def most_needed(potluck: Potluck, headcount: Headcount) -> tuple[Needed, ...]:
    """The categories still open, the most needed first, each with a sensible amount for one dish.

    Ordered by the share of the target that is missing, a main weighing most (`WEIGHT`, common practice, no
    source); the amount closes the gap by as many dishes as are missing, in steps a cook would say. Of toppings and
    things for the table each is for everybody. What is short by next to nothing (`tiny`) is not needed.
    """
    found = []
    for row in menu(potluck, headcount):
        if row.target_servings <= 0 or (row.tiny and row.short_dishes <= 0):
            continue
        share = max(row.lacking_servings / row.target_servings, 0.5 * row.short_dishes / max(1, row.target_dishes))
        dishes = max(1, row.short_dishes)
        each = max(row.lacking_servings / dishes, min(4.0, row.target_servings))
        if row.category in ("topping", "supplies"):
            each = row.target_servings
        found.append(
            Needed(
                row.category,
                _sayable(each),
                row.lacking_servings,
                row.short_dishes,
                round(share * WEIGHT[row.category], 4),
            )
        )
    return tuple(sorted(found, key=lambda n: (-n.urgency, CATEGORIES.index(n.category))))


WEIGHT = {
    "main": 1.0,
    "side": 0.8,
    "salad": 0.7,
    "starter": 0.4,
    "bread": 0.5,
    "dessert": 0.6,
    "drink": 0.6,
    "topping": 0.6,
    "supplies": 0.5,
}


def _sayable(servings: float) -> float:
    """Rounded up to what people say: 1 to 8, then 10, 12, 15, 20, 25, 30, ... in fives."""
    whole = math.ceil(servings - 1e-9)
    if whole <= 8:
        return float(max(1, whole))
    return float(next((s for s in (10, 12, 15) if whole <= s), 5 * math.ceil(whole / 5)))


def _dish_key(promise: Promise) -> str:
    """Which dish it is: the catalogue's name when the catalogue is sure, else the words in any order."""
    known = lookup(promise.dish)
    if known.dish is not None and known.confidence >= SAME_DISH:
        return f"={known.dish.name}"
    return " ".join(sorted(words(promise.dish))) or promise.id


SAME_DISH = 0.85
"""How sure the catalogue must be before two promises are called the same dish."""
