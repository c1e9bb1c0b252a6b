"""The catalogue of everyday dishes, from `data/dishes.csv` and `data/dishes_more.csv`.

Heat is written compactly in the table, `kind:minutes@temp_f`, links separated by spaces:
`prep:30 oven:60@375 rest:15`. `time_source` says where the minutes come from: a source id, "practice" for
common practice, or "invented" for a guess of ours. An invented time is shown to nobody as a fact and plans
nothing: `Dish.known_heat` leaves it out.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache

from planning import tables
from planning.potluck import CATEGORIES, HeatStep

INVENTED = "invented"
SEASONS = ("spring", "summer", "fall", "winter")
_LINK = re.compile(r"([a-z-]+):(\d+)(?:@(\d+))?")
_BUSY = {"prep": 1.0, "stove": 0.35, "grill": 0.6}
"""The part of a link in which a cook's hands are busy; other links need a touch (common practice, no source)."""


@dataclass(frozen=True)
class Dish:
    """One everyday dish as it usually is.

    `servings`: eaters' portions in the usual `vessel`, more than 0. `serve`: hot, cold or room. `cost_class`
    and `skill`: 1 (little) to 3 (much). `seasons` empty means any time of year. `travels` false means it
    suffers on the way and is better made where it is eaten. `like` names the dish whose row it shares, when it has
    none of its own.
    """

    name: str
    category: str
    servings: float
    vessel: str
    serve: str
    heat: tuple[HeatStep, ...]
    time_source: str
    ingredients: tuple[str, ...]
    seasons: tuple[str, ...]
    cost_class: int
    skill: int
    travels: bool
    source: str
    aliases: tuple[str, ...] = ()
    like: str = ""

    @property
    def times_known(self) -> bool:
        """Whether the minutes come from a source or common practice."""
        return self.time_source not in ("", INVENTED)

    @property
    def known_heat(self) -> tuple[HeatStep, ...]:
        """The heat links a plan may use: none when the minutes were invented."""
        return self.heat if self.times_known else ()

    @property
    def minutes(self) -> int | None:
        """From the first link to the last, one after another; None when nobody knows."""
        if self.heat and not self.times_known:
            return None
        return sum(step.minutes for step in self.heat)

    @property
    def needs_oven(self) -> bool:
        return any(step.kind == "oven" for step in self.heat)

    @property
    def needs_cooking(self) -> bool:
        return any(step.temp_f is not None or step.kind in _HOT_KINDS for step in self.heat)

    @property
    def hands_min(self) -> int:
        """Minutes a cook is busy with it."""
        return sum(step.hands_min for step in self.heat)

    def in_season(self, season: str | None) -> bool:
        return season is None or not self.seasons or season in self.seasons


_HOT_KINDS = frozenset({"oven", "stove", "slow-cooker-low", "slow-cooker-high", "microwave", "grill"})


def read_heat(text: str) -> tuple[HeatStep, ...]:
    """Heat links from the table's notation; cooked at home, as dishes brought to a potluck are.

    >>> read_heat("prep:10 oven:45@350")[1].temp_f
    350.0

    Raises ValueError for a link that does not follow the notation.
    """
    steps = []
    for link in text.split():
        found = _LINK.fullmatch(link)
        if found is None or int(found[2]) <= 0:
            raise ValueError(f"not a heat link: {link!r}")
        kind, minutes = found[1], int(found[2])
        hands = round(minutes * _BUSY.get(kind, 0.0))
        if kind in _HOT_KINDS and hands == 0:
            hands = min(5, minutes)
        steps.append(HeatStep(kind, minutes, float(found[3]) if found[3] else None, at="home", hands_min=hands))
    return tuple(steps)


def _split(cell: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in cell.split(";") if part.strip())


@cache
def catalogue() -> tuple[Dish, ...]:
    """All dishes, in the table's order (by category, the commonest first).

    Raises ValueError when a row has a category, season or number outside its range.
    """
    found = []
    for row in tables.rows("dishes"):
        dish = Dish(
            name=row["name"],
            category=row["category"],
            servings=float(row["servings"]),
            vessel=row["vessel"],
            serve=row["serve"],
            heat=read_heat(row["heat"]),
            time_source=row["time_source"],
            ingredients=_split(row["ingredients"]),
            seasons=_split(row["seasons"]),
            cost_class=int(row["cost_class"]),
            skill=int(row["skill"]),
            travels=row["travels"] == "yes",
            source=row["source"],
            aliases=_split(row["aliases"]),
        )
        bad = (
            dish.category not in CATEGORIES
            or dish.servings <= 0
            or dish.serve not in ("hot", "cold", "room")
            or not set(dish.seasons) <= set(SEASONS)
            or dish.cost_class not in (1, 2, 3)
            or dish.skill not in (1, 2, 3)
        )
        if bad:
            raise ValueError(f"dishes.csv: {dish.name} has a value outside its range")
        found.append(dish)
        # Much the same to plan with, yet another dish: it doubles nothing, and its ingredients are not known.
        for name in _split(row["like"]):
            found.append(replace(dish, name=name, aliases=(), ingredients=(), like=dish.name))
    return (*found, *_more({dish.name: dish for dish in found}))


def _more(known: dict[str, Dish]) -> tuple[Dish, ...]:
    """Dishes which are planned like another and hold something else; `known` are the others by name.

    Raises ValueError when a row is like a dish that stands neither in `known` nor above it in the table.
    """
    found: dict[str, Dish] = {}
    for row in tables.rows("dishes_more"):
        like = known.get(row["like"]) or found.get(row["like"])
        if like is None:
            raise ValueError(f"dishes_more.csv: {row['name']} is like an unknown dish")
        found[row["name"]] = replace(
            like,
            name=row["name"],
            aliases=_split(row["aliases"]),
            category=row["category"] or like.category,
            serve=row["serve"] or like.serve,
            # A publication's minutes are for the dish it names; for one like it they are common practice at most.
            time_source=like.time_source if like.time_source in ("", INVENTED) else tables.PRACTICE,
            ingredients=_split(row["ingredients"]),
            like=like.name,
            source=row["source"],
        )
    return tuple(found.values())


@cache
def _by_name() -> dict[str, Dish]:
    return {dish.name: dish for dish in catalogue()}


def dish_named(name: str) -> Dish | None:
    """The dish with exactly this catalogue name."""
    return _by_name().get(name)


def suggest(
    category: str, n: int = 5, season: str | None = None, avoid: frozenset[str] = frozenset()
) -> tuple[Dish, ...]:
    """Up to `n` common dishes of a category to offer somebody, commonest first, those in season before others.

    `avoid` holds catalogue names not to offer (promised already). Dishes which travel badly, and dishes whose
    times were invented, are never offered.
    """
    fit = [
        dish
        for dish in catalogue()
        if dish.category == category
        and dish.name not in avoid
        and dish.travels
        and dish.minutes is not None
        and not dish.like
    ]
    fit.sort(key=lambda dish: not dish.in_season(season))
    return tuple(fit[: max(0, n)])
