"""The table of portions: what one eater takes of each thing, and how it is bought."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from planning.portions.measures import NoConversion, convert
from planning.portions.names import best, words
from planning.tables import PRACTICE, rows


@dataclass(frozen=True)
class Size:
    """One size a thing is sold in: `amount` > 0 of `unit`; `metric` is the like of it where people weigh in grams,
    None where it is the same (rounded to what is usual there: common practice, no source)."""

    id: str
    size: str
    amount: float
    unit: str
    source: str
    metric: Size | None = None

    def in_system(self, system: str) -> Size:
        """The size as it is sold in a "metric" or "us" country."""
        return self.metric if system == "metric" and self.metric is not None else self


@dataclass(frozen=True)
class Item:
    """One row of `portions.csv`.

    `amount` of `unit` is one eater's portion as served, when the dish is one of as many as usual (`kinds.csv`).
    `cooked_yield` is served weight per bought weight (0..1]; `buy_each`, if set, is the amount of `buy_unit`
    bought for one `unit` served and goes before weights. `uptake` is the share of eaters who take it, 0..1.
    """

    name: str
    category: str
    kind: str
    aliases: tuple[str, ...]
    amount: float
    unit: str
    grams_per_cup: float | None
    grams_each: float | None
    cooked_yield: float
    buy_unit: str
    buy_each: float | None
    sizes: tuple[Size, ...]
    uptake: float
    source: str
    note: str = ""

    def served(self, value: float, unit: str) -> float:
        """An amount of the ready dish in this item's own unit; NoConversion when it cannot be known."""
        return convert(value, unit, self.unit, grams_per_cup=self.grams_per_cup, grams_each=self.grams_each)

    def to_buy(self, served: float) -> float:
        """How much of `buy_unit` makes `served` of `unit`."""
        if self.buy_each is not None:
            return served * self.buy_each
        bought = convert(served, self.unit, self.buy_unit, grams_per_cup=self.grams_per_cup, grams_each=self.grams_each)
        return bought / self.cooked_yield

    def grams(self) -> float | None:
        """What one portion weighs as served, or None."""
        try:
            return convert(self.amount, self.unit, "g", grams_per_cup=self.grams_per_cup, grams_each=self.grams_each)
        except NoConversion:
            return None


@dataclass(frozen=True)
class Kind:
    """How the things of one kind share a table (`kinds.csv`)."""

    name: str
    usual_dishes: int
    most: float
    between_meals: float
    in_heat: float
    margin: float
    counts: str
    source: str


def _number(cell: str) -> float | None:
    return float(cell) if cell else None


@cache
def sizes() -> dict[str, Size]:
    return {
        row["id"]: Size(
            row["id"],
            row["size"],
            float(row["amount"]),
            row["unit"],
            row["source"],
            Size(row["id"], row["metric_size"], float(row["metric_amount"]), row["metric_unit"], PRACTICE)
            if row["metric_size"]
            else None,
        )
        for row in rows("packages")
    }


@cache
def kinds() -> dict[str, Kind]:
    return {
        row["kind"]: Kind(
            row["kind"],
            int(row["usual_dishes"]),
            float(row["most"]),
            float(row["between_meals"]),
            float(row["in_heat"]),
            float(row["margin"]),
            row["counts"],
            row["source"],
        )
        for row in rows("kinds")
    }


@cache
def items() -> dict[str, Item]:
    """Every item of `portions.csv` by its name."""
    return {
        row["item"]: Item(
            name=row["item"],
            category=row["category"],
            kind=row["kind"],
            aliases=tuple(a for a in row["aliases"].split(";") if a),
            amount=float(row["amount"]),
            unit=row["unit"],
            grams_per_cup=_number(row["grams_per_cup"]),
            grams_each=_number(row["grams_each"]),
            cooked_yield=_number(row["cooked_yield"]) or 1.0,
            buy_unit=row["buy_unit"],
            buy_each=_number(row["buy_each"]),
            sizes=tuple(sizes()[s] for s in row["packages"].split(";") if s),
            uptake=_number(row["uptake"]) or 1.0,
            source=row["source"],
            note=row["note"],
        )
        for row in rows("portions")
    }


@cache
def _index() -> dict[tuple[str, ...], str]:
    found: dict[tuple[str, ...], str] = {}
    # Names go before aliases, so that no alias of one row can hide another row.
    for item in items().values():
        found.setdefault(words(item.name), item.name)
    for item in items().values():
        for alias in item.aliases:
            found.setdefault(words(alias), item.name)
    return found


@cache
def _index_of(category: str) -> dict[tuple[str, ...], str]:
    return {key: name for key, name in _index().items() if items()[name].category == category}


@cache
def find(text: str, category: str | None = None) -> Item | None:
    """The item which these words mean, or None.

    With a `category`, an item of it is preferred: a "side" of macaroni and cheese is still macaroni and cheese,
    but "cake" as a bread is not a dessert of the same name if the breads have one.
    """
    if category is not None and (own := _index_of(category)) and words(text) in own:
        return items()[own[words(text)]]
    name = best(text, _index())
    return items()[name] if name else None


def named_so(text: str) -> bool:
    """Whether an item goes by exactly these words."""
    return words(text) in _index()


GENERAL = {
    "main": "casserole",
    "side": "vegetables",
    "salad": "vegetable salad",
    "starter": "appetizer pieces",
    "bread": "rolls",
    "dessert": "cake",
    "drink": "soda",
    "topping": "ketchup",
    "supplies": "plates",
}
"""What a dish nobody knows is reckoned like, by its category: common practice, no source."""


def best_packages(
    need: float, unit: str, offered: Iterable[Size], item: Item | None = None
) -> tuple[tuple[Size, int], ...]:
    """Whole packages which hold at least `need` with the least left over; among equals the fewest packages.

    Sizes in a unit that cannot be compared with `unit` are left out. Exact: every count of the larger sizes is
    tried, the smallest fills up. `need` is 0 or more; 0 takes nothing.
    """
    if need <= 1e-9:
        return ()
    usable: list[tuple[float, Size]] = []
    for size in offered:
        try:
            amount = convert(
                size.amount,
                size.unit,
                unit,
                grams_per_cup=item.grams_per_cup if item else None,
                grams_each=item.grams_each if item else None,
            )
        except NoConversion:
            continue
        if amount > 0:
            usable.append((amount, size))
    if not usable:
        return ()
    usable.sort(key=lambda pair: (-pair[0], pair[1].id))
    counts = _fewest(need, [amount for amount, _ in usable])
    return tuple((size, n) for (_, size), n in zip(usable, counts, strict=True) if n)


_MOST_TRIED = 400


def _fewest(need: float, amounts: list[float]) -> tuple[int, ...]:
    slack = need * 1e-9 + 1e-9
    if len(amounts) == 1:
        return (max(0, -int(-(need - slack) // amounts[0])),)
    best_key: tuple[float, int] | None = None
    best_counts: tuple[int, ...] = ()
    most = -int(-(need - slack) // amounts[0])
    for n in range(most, max(-1, most - _MOST_TRIED), -1):
        rest = need - n * amounts[0]
        counts = (n, *_fewest(rest, amounts[1:])) if rest > slack else (n, *[0] * (len(amounts) - 1))
        held = sum(c * a for c, a in zip(counts, amounts, strict=True))
        key = (round(held, 9), sum(counts))
        if best_key is None or key < best_key:
            best_key, best_counts = key, counts
        if held <= need + slack and n == most:
            break
    return best_counts
