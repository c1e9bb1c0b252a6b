"""The rules which turn one eater's portion into a total for this potluck."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from planning.headcount import Headcount
from planning.portions.catalogue import Item, best_packages, kinds
from planning.portions.measures import NoConversion, convert, kind, readable, rounded, text
from planning.potluck import Potluck
from planning.tables import source_text

HOT_FROM_F, HOT_AT_F = 75.0, 90.0
"""Outdoors the heat factors grow from nothing at 75 °F to their full value at 90 °F (the sources say "in heat"
without a number): common practice, no source."""

PLATE_OZ = 24.0
"""The fullest published cookout menu (Illinois Extension: Q061-Q064, Q059, Q060) comes to about 24 oz of food an
eater without dessert and drinks; a menu that would pass it has its sides and salads made smaller."""

LEAST_OF_SIDES = 0.6
"""No side shrinks below this share of its portion for the plate's sake: common practice, no source."""

HEARTY = 0.5
"""A table of hearty eaters takes 1.5 portions (Q247, no publication named)."""

USUAL_HOURS = 3.0

MOST_DRINKS = 6.0
"""Nobody is planned more standard drinks than this, however long the day: common practice, no source."""


@dataclass(frozen=True)
class Package:
    """`count` packages of a size, which hold `amount` of `unit` each."""

    size: str
    count: int
    amount: float
    unit: str


@dataclass(frozen=True)
class Portion:
    """What this potluck needs of one item.

    `per_eater` is what one eater is reckoned to take here (after every rule) as text, `total` the whole as served,
    `buy` the whole as bought: raw or dry where that is how it is sold, with the margin. `packages` hold at
    least `buy`; `left_over` is what they hold more. `source` is a source id or "common practice, no source".
    """

    item: str
    category: str
    per_eater: str
    total: float
    total_unit: str
    buy: float
    buy_unit: str
    packages: tuple[Package, ...]
    source: str
    per_eater_value: float = 0.0
    per_eater_unit: str = ""
    left_over: float = 0.0
    factors: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True)
class Table:
    """What stands on it: the number of dishes of each kind, and what decides the appetite."""

    dishes: Mapping[str, int]
    hours: float
    heat: float
    between_meals: bool
    hearty: float
    sides_share: float = 1.0


def heat(potluck: Potluck) -> float:
    """0 (indoors, cool, or unknown) to 1 (90 °F or more outdoors)."""
    if potluck.setting != "outdoor" or potluck.outdoor_temp_f is None:
        return 0.0
    return min(1.0, max(0.0, (potluck.outdoor_temp_f - HOT_FROM_F) / (HOT_AT_F - HOT_FROM_F)))


def hours(potluck: Potluck) -> float:
    """How long people eat and drink, between half an hour and half a day: longer is a stay, not a party (practice)."""
    return min(12.0, max(0.5, (potluck.ends - potluck.starts_at).total_seconds() / 3600))


def table_of(potluck: Potluck, served: Iterable[Item]) -> Table:
    """The table these different items make."""
    here = tuple(served)
    dishes: dict[str, int] = {}
    for item in here:
        family = _family(item.kind)
        dishes[family] = dishes.get(family, 0) + 1
    between = potluck.mealtime == "between-meals"
    table = Table(dishes, hours(potluck), heat(potluck), between, min(1.0, max(0.0, potluck.hearty)))
    return replace(table, sides_share=_sides_share(here, table))


def variety(kind_name: str, dishes: int) -> float:
    """The share of its portion which each of `dishes` dishes of a kind is taken at, 0..1.

    Up to the usual number of dishes everybody takes a whole portion of each. Beyond it the total grows with the
    square root of the number (more choice, more eaten, but less of each), and not past `most` portions more
    than usual. Published bounds conflict - no growth at all (Q138) to one of each (Q249); experiments found a fifth
    more with three kinds of one food (Q357) and three fifths more with four courses (Q358). The square root lies
    between them: common practice, no source.
    """
    rule = kinds()[kind_name]
    usual = max(1, rule.usual_dishes)
    if dishes <= usual:
        return 1.0
    total = usual * min(math.sqrt(dishes / usual), max(1.0, rule.most))
    return total / dishes


def factors(item: Item, table: Table) -> dict[str, float]:
    """Every factor on the item's portion by name; those that change nothing are left out."""
    rule = kinds()[item.kind]
    found = {
        "uptake": item.uptake,
        "variety": variety(item.kind, table.dishes.get(_family(item.kind), 1)),
        "meal": rule.between_meals if table.between_meals else 1.0,
        "heat": 1 + (rule.in_heat - 1) * table.heat,
        "hours": _hours_factor(item.kind, table.hours),
        "hearty": 1 + HEARTY * table.hearty if rule.counts == "eaters" and item.category != "drink" else 1.0,
        "plate": table.sides_share if item.kind in ("side", "salad") else 1.0,
    }
    return {name: value for name, value in found.items() if value != 1.0}


def portion_of(
    potluck: Potluck,
    headcount: Headcount,
    item: Item,
    table: Table,
    name: str = "",
    *,
    dishes: int = 1,
    suited: float = 1.0,
) -> Portion:
    """The item's portion for this potluck; `name` if it goes by another name than the table's.

    `dishes` is how many unlike dishes of the table are this item; things for the table are one however called.
    `suited`, 1 or more, is for those who can't eat the others (`suited_factors`).
    """
    applied = factors(item, table)
    if (learned := potluck.corrections.get(item.category, 1.0)) != 1.0:
        applied["learned"] = learned
    if suited > 1.0:
        applied["diets"] = suited
    if dishes > 1 and item.category != "supplies":
        applied["dishes"] = float(dishes)
    per_eater = item.amount * math.prod(applied.values())
    served = per_eater * counted(item, potluck, headcount)
    bought = item.to_buy(served) * (1 + kinds()[item.kind].margin)
    packages = packed(item, bought, potluck.units)
    total, total_unit = readable(served, item.unit, potluck.units)
    buy, buy_unit = readable(bought, item.buy_unit, potluck.units)
    held = sum(p.count * convert(p.amount, p.unit, buy_unit, **_own(item)) for p in packages)
    shown, shown_unit = per_eater, item.unit
    if potluck.units == "metric":
        shown, shown_unit = readable(per_eater, item.unit, "metric")
    elif item.unit in ("g", "mL"):
        # Some published portions are in grams; a US group reads ounces.
        shown_unit = "oz" if item.unit == "g" else "fl oz"
        shown = convert(per_eater, item.unit, shown_unit)
    if kind(buy_unit) == "count":
        buy = math.ceil(buy - 1e-9)
    return Portion(
        item=name or item.name,
        category=item.category,
        per_eater=text(shown, shown_unit),
        total=rounded(total),
        total_unit=total_unit,
        buy=rounded(buy),
        buy_unit=buy_unit,
        packages=packages,
        source=source_text(item.source),
        per_eater_value=shown,
        per_eater_unit=shown_unit,
        left_over=rounded(max(0.0, held - buy)) if packages else 0.0,
        factors=applied,
    )


def packed(item: Item, bought: float, system: str = "us") -> tuple[Package, ...]:
    """Whole packages for `bought` of the item's `buy_unit`; sizes from the item's own list, as sold in that system."""
    chosen = best_packages(bought, item.buy_unit, (size.in_system(system) for size in item.sizes), item)
    return tuple(Package(size.size, count, size.amount, size.unit) for size, count in chosen)


def counted(item: Item, potluck: Potluck, headcount: Headcount) -> float:
    """How many of what the portion is for: eaters, people, grown-ups with teens, or adults."""
    share = headcount.at_service_level / headcount.expected if headcount.expected > 0 else 0.0
    match kinds()[item.kind].counts:
        case "people":
            return float(headcount.at_service_level)
        case "grown":
            return (headcount.by_age.get("adults", 0.0) + headcount.by_age.get("teens", 0.0)) * share
        case "adults":
            return headcount.by_age.get("adults", 0.0) * share
    return headcount.eaters


def _own(item: Item) -> dict[str, float | None]:
    return {"grams_per_cup": item.grams_per_cup, "grams_each": item.grams_each}


def _family(kind_name: str) -> str:
    return "side" if kind_name == "salad" else kind_name


def _hours_factor(kind_name: str, event_hours: float) -> float:
    match kind_name:
        case "cold-drinks":
            return 1 + event_hours
        case "cold-drink":
            return (1 + event_hours) / (1 + USUAL_HOURS)
        case "alcohol":
            return min(MOST_DRINKS, event_hours)
    return 1.0


def _sides_share(served: tuple[Item, ...], table: Table) -> float:
    """What share of its portion every side keeps so that the plate holds at most `PLATE_OZ`."""
    sides = others = 0.0
    for item in served:
        if item.category in ("dessert", "drink", "supplies", "topping"):
            continue
        grams = item.grams()
        if grams is None:
            continue
        try:
            ounces = convert(grams, "g", "oz") * math.prod(factors(item, table).values())
        except NoConversion:  # pragma: no cover - grams always convert
            continue
        if item.kind in ("side", "salad"):
            sides += ounces
        else:
            others += ounces
    if sides == 0 or sides + others <= PLATE_OZ:
        return 1.0
    return max(LEAST_OF_SIDES, min(1.0, (PLATE_OZ - others) / sides))
