"""What could be asked for: dishes for every gap and need, those alike merged into one template."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import islice
from math import ceil

from planning.asks.people import Cooks
from planning.asks.problem import Gap, Profile, Template
from planning.diets import usually_fits
from planning.dishes import Dish, dish_named, suggest

OFFERED = 10
"""Dishes considered for a category, commonest and in season first."""

SEVERAL = ("drink", "supplies")
"""Categories in which the same thing three times is no fault."""

STEPS = (4, 6, 8, 10, 12, 14, 16, 20, 24, 32, 40, 50)
"""Servings of templates."""

FOR_PROFILE = 6
"""More dishes considered for people with needs, as usually made free of what they avoid."""

FOR_COOKS = 3
"""Dishes which each kind of cook can make are among those considered, whatever the others can."""

EVERY = 10_000
"""As many dishes as there are."""


def candidates(
    gaps: Sequence[Gap],
    profiles: Sequence[Profile],
    cooks: Sequence[Cooks],
    season: str,
    promised: frozenset[str],
    before: Mapping[str, tuple[str, str]],
) -> tuple[Dish, ...]:
    """Dishes to consider: those asked for before; for each gap the first ones which somebody can make, and some for
    each kind of cook (without an oven, from far away, short of time); those that suit people with needs."""
    found: dict[str, Dish] = {}
    for category, name in before.values():
        dish = dish_named(name)
        if dish is not None and dish.category == category:
            found[dish.name] = dish
    for gap in gaps:
        offers = suggest(gap.category, EVERY, season, promised) or suggest(gap.category, EVERY, season)
        makeable = (dish for dish in offers if any(some.can(dish) for some in cooks))
        for dish in islice(makeable, OFFERED + gap.dishes):
            found.setdefault(dish.name, dish)
        for some in cooks:
            for dish in islice(filter(some.can, offers), FOR_COOKS):
                found.setdefault(dish.name, dish)
    for profile in profiles:
        fit = (
            dish
            for dish in suggest(profile.part, EVERY, season, promised)
            if any(some.can(dish) for some in cooks) and all(usually_fits(dish, need) for need in profile.needs)
        )
        for dish in islice(fit, FOR_PROFILE):
            found.setdefault(dish.name, dish)
    return tuple(found.values())


def merge(
    dishes: Sequence[Dish], able: Mapping[str, tuple[str, ...]], profiles: Sequence[Profile], often: Mapping[str, int]
) -> tuple[tuple[Template, ...], list[frozenset[str]]]:
    """Dishes alike in category, servings, effort, whom they suit and who can make them become one template."""
    groups: dict[tuple[str, int, int, frozenset[int], tuple[str, ...]], list[Dish]] = {}
    for dish in dishes:
        fits = frozenset(
            p
            for p, profile in enumerate(profiles)
            if profile.part == dish.category and all(usually_fits(dish, need) for need in profile.needs)
        )
        if able[dish.name]:
            key = (dish.category, _steps(dish.servings), _effort(dish), fits, able[dish.name])
            groups.setdefault(key, []).append(dish)
    templates = []
    able_for = []
    for (category, servings, effort, fits, people), group in groups.items():
        most = len(group) * often.get(category, 1)
        templates.append(Template(category, servings, effort, tuple(dish.name for dish in group), fits, most))
        able_for.append(frozenset(people))
    return tuple(templates), able_for


def again(gaps: Sequence[Gap], dishes: Sequence[Dish]) -> dict[str, int]:
    """How often one dish may be asked for: once, unless a category has too few dishes to fill its gap.

    Drinks and supplies may always be asked for several times.
    """
    often = {}
    for gap in gaps:
        mine = sorted(dish.servings for dish in dishes if dish.category == gap.category)
        if mine:
            needed = max(gap.dishes, ceil(gap.servings / mine[len(mine) // 2]))
            often[gap.category] = max(3 if gap.category in SEVERAL else 1, ceil(needed / len(mine)))
    return often


def _effort(dish: Dish) -> int:
    """1 little, 2 some, 3 much: by the skill and the busy minutes it takes, and what it costs."""
    return 1 + (dish.skill >= 2 or dish.hands_min >= 20) + (dish.skill == 3 or dish.cost_class == 3)


def _steps(servings: float) -> int:
    """Servings rounded down to a step, so that dishes nearly alike become one template and none is overstated."""
    return max((step for step in STEPS if step <= servings), default=max(1, int(servings)))
