"""The problem of asks of one potluck: from its guests, gaps and needs to plain values."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from math import ceil
from typing import Protocol

from planning.asks.eligible import can_be_asked, can_make, minutes_left, season_of
from planning.asks.problem import Gap, Person, Problem, Profile, Template
from planning.diets import DietRow, usually_fits
from planning.dishes import Dish, dish_named, lookup, suggest
from planning.menu import tiny
from planning.potluck import Answer, Guest, Potluck

WEIGHTS = {
    "main": 4, "side": 2, "salad": 2, "starter": 1, "bread": 1, "dessert": 2, "drink": 2, "topping": 1, "supplies": 1,
}  # fmt: skip
"""How much a missing serving of a category hurts a table (common practice, no source)."""

OFFERED = 10
"""Dishes considered for a category, commonest and in season first."""

INSTEAD = "asks-why-instead"
HOST_COULD = "asks-why-host"
"""Reasons of other ways, beside the asks: nobody was asked by them."""

SEVERAL = ("drink", "supplies")
"""Categories in which the same thing three times is no fault."""

HEAVY = 4
"""More dishes than this beyond the least loaded person's make no difference any more."""

STEPS = (4, 6, 8, 10, 12, 14, 16, 20, 24, 32, 40, 50)
"""Servings of templates."""

FOR_PROFILE = 6
"""More dishes considered for people with needs, as usually made free of what they avoid."""


class MenuLine(Protocol):
    """What the asks read from a row of the menu."""

    @property
    def category(self) -> str: ...
    @property
    def target_servings(self) -> float: ...
    @property
    def lacking_servings(self) -> float: ...
    @property
    def short_dishes(self) -> int: ...


@dataclass(frozen=True)
class Built:
    """The problem and what its numbers stand for. `names`: what each previously asked person was asked for."""

    problem: Problem
    dishes: tuple[Dish, ...]
    asked_dish: Mapping[str, str]
    season: str
    promised: frozenset[str]


def problem_of(potluck: Potluck, menu_rows: Sequence[MenuLine], diet_rows: Sequence[DietRow], now: datetime) -> Built:
    """The problem of asks of a potluck, in plain values."""
    season = season_of(potluck)
    gaps = tuple(
        Gap(row.category, _servings_short(row), max(0, row.short_dishes), WEIGHTS.get(row.category, 1))
        for row in menu_rows
        if _servings_short(row) > 0 or row.short_dishes > 0
    )
    profiles = _profiles(potluck, diet_rows)
    askable = [guest for guest in potluck.guests if can_be_asked(potluck, guest)]
    before = _asked_before(potluck, {gap.category for gap in gaps} | {profile.part for profile in profiles})
    promised = frozenset(
        match.dish.name for promise in potluck.promises if (match := lookup(promise.dish)).dish is not None
    )
    dishes = _candidates(gaps, profiles, season, promised, before)
    able = _able(potluck, askable, dishes, now)
    templates, able_for = _merge(dishes, able, profiles, _again(gaps, dishes))
    loads = _loads(potluck, askable)
    likes = likes_of(potluck)
    no = {(declined.guest, declined.category) for declined in potluck.declined}
    # Who brings a main is not asked for another; so a promise in a category is the yes to the ask for it.
    no |= {(guest.id, promise.category) for guest in askable for promise in potluck.promises_of(guest.id)}
    asked = {
        who: t
        for who, (category, dish_name) in before.items()
        if (t := _template_of(templates, category, dish_name)) is not None
    }
    people = tuple(
        Person(
            guest.id,
            loads[guest.id],
            {
                t: _gladness(guest, template, likes)
                for t, template in enumerate(templates)
                if guest.id in able_for[t]
                and (guest.id, template.category) not in no
                and not _same_but_other(templates, asked.get(guest.id), t)
            },
        )
        for guest in askable
    )
    times = Counter(asked.values())
    templates = tuple(replace(template, most=max(template.most, times[t])) for t, template in enumerate(templates))
    return Built(
        Problem(people, templates, gaps, profiles, asked),
        dishes,
        {who: dish_name for who, (_, dish_name) in before.items()},
        season,
        promised,
    )


def _able(
    potluck: Potluck, askable: Sequence[Guest], dishes: Sequence[Dish], now: datetime
) -> dict[str, tuple[str, ...]]:
    """Dish -> who can make it and bring it in time. Guests alike in what decides that are looked at once."""
    alike: dict[tuple[int, bool, bool, bool], list[Guest]] = {}
    for guest in askable:
        kind = (guest.travel_min, guest.has_oven, guest.can_cook, guest.id == potluck.host)
        alike.setdefault(kind, []).append(guest)
    found: dict[str, tuple[str, ...]] = {}
    for dish in dishes:
        able = {
            guest.id
            for kind, guests in alike.items()
            if can_make(dish, guests[0], minutes_left(potluck, guests[0], now), kind[-1])
            for guest in guests
        }
        found[dish.name] = tuple(guest.id for guest in askable if guest.id in able)
    return found


def _servings_short(row: MenuLine) -> int:
    """Whole servings worth asking for: nobody is asked to close a gap that is next to nothing."""
    if tiny(row.lacking_servings, row.target_servings):
        return 0
    return min(MOST_SHORT, max(0, ceil(row.lacking_servings)))


MOST_SHORT = 10**9
"""An absurd crowd is asked for no more than this, which the solver can still count."""


def _profiles(potluck: Potluck, rows: Sequence[DietRow]) -> tuple[Profile, ...]:
    """People without a dish listed free of what they avoid and none to ask about, merged by their needs.

    Where a dish only has to be asked about, asking its cook comes before asking for another dish.
    """
    counts: dict[tuple[tuple[str, ...], str], int] = {}
    by_guest: dict[tuple[str, str], list[DietRow]] = {}
    for row in rows:
        by_guest.setdefault((row.guest, row.category), []).append(row)
    for (guest_id, part), mine in by_guest.items():
        guest = potluck.guest(guest_id)
        open_rows = [row for row in mine if row.short and not row.ask_first]
        if guest is None or not open_rows:
            continue
        if guest.party.total <= 1:
            counts[_plus(counts, tuple(sorted(row.need for row in mine)), part, 1)] += 0
        else:
            for row in open_rows:
                people = max((need.count for need in guest.all_needs() if need.need == row.need), default=1)
                counts[_plus(counts, (row.need,), part, people)] += 0
    return tuple(Profile(needs, part, people) for (needs, part), people in sorted(counts.items()))


def _plus(
    counts: dict[tuple[tuple[str, ...], str], int], needs: tuple[str, ...], part: str, people: int
) -> tuple[tuple[str, ...], str]:
    counts[needs, part] = counts.get((needs, part), 0) + people
    return needs, part


def _asked_before(potluck: Potluck, wanted: set[str]) -> dict[str, tuple[str, str]]:
    """Person -> (category, dish) asked before and still open: not declined, not promised, still wanted.

    What would be bought was asked of nobody, and other ways were only offered.
    """
    previous = (potluck.previous or {}).get("asks", ())
    no = {(declined.guest, declined.category) for declined in potluck.declined}
    found: dict[str, tuple[str, str]] = {}
    for ask in previous if isinstance(previous, Sequence) else ():
        if not isinstance(ask, Mapping) or ask.get("how") not in ("ask", "host-cooks") or _only_offered(ask):
            continue
        who, category, dish = str(ask.get("guest")), str(ask.get("category")), str(ask.get("dish"))
        kept_word = any(promise.category == category for promise in potluck.promises_of(who))
        if category in wanted and (who, category) not in no and not kept_word and who not in found:
            found[who] = (category, dish)
    return found


def _only_offered(ask: Mapping[object, object]) -> bool:
    """Another way beside the asks; of the host's cooking without a word on it, nobody knows whether it was one."""
    if ask.get("alternative") or ask.get("key") in (INSTEAD, HOST_COULD):
        return True
    return ask.get("how") == "host-cooks" and "alternative" not in ask and "key" not in ask


def _candidates(
    gaps: Sequence[Gap],
    profiles: Sequence[Profile],
    season: str,
    promised: frozenset[str],
    before: Mapping[str, tuple[str, str]],
) -> tuple[Dish, ...]:
    found: dict[str, Dish] = {}
    for category, name in before.values():
        dish = dish_named(name)
        if dish is not None and dish.category == category:
            found[dish.name] = dish
    for gap in gaps:
        enough = OFFERED + gap.dishes
        for dish in suggest(gap.category, enough, season, promised) or suggest(gap.category, enough, season):
            found.setdefault(dish.name, dish)
    for profile in profiles:
        fit = [
            dish
            for dish in suggest(profile.part, 999, season, promised)
            if all(usually_fits(dish, need) for need in profile.needs)
        ]
        for dish in fit[:FOR_PROFILE]:
            found.setdefault(dish.name, dish)
    return tuple(found.values())


def _merge(
    dishes: Sequence[Dish], able: Mapping[str, tuple[str, ...]], profiles: Sequence[Profile], again: Mapping[str, int]
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
        most = len(group) * again.get(category, 1)
        templates.append(Template(category, servings, effort, tuple(dish.name for dish in group), fits, most))
        able_for.append(frozenset(people))
    return tuple(templates), able_for


def _again(gaps: Sequence[Gap], dishes: Sequence[Dish]) -> dict[str, int]:
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


def _loads(potluck: Potluck, askable: Sequence[Guest]) -> dict[str, int]:
    """What each carries beyond the least loaded: dishes brought to earlier potlucks and promised for this one.

    An unsure answer counts as one more, as the table would rest on somebody who may not come.
    """
    brought: dict[str, int] = {}
    for past in potluck.history:
        if past.came and past.category:
            brought[past.guest] = brought.get(past.guest, 0) + 1
    loads = {
        guest.id: brought.get(guest.id, 0)
        + len(potluck.promises_of(guest.id))
        + (0 if guest.answer is Answer.YES or guest.id == potluck.host else 1)
        for guest in askable
    }
    least = min(loads.values(), default=0)
    return {who: min(HEAVY, load - least) for who, load in loads.items()}


def likes_of(potluck: Potluck) -> frozenset[tuple[str, str]]:
    return frozenset((past.guest, past.category) for past in potluck.history if past.came and past.category)


def _gladness(guest: Guest, template: Template, likes: frozenset[tuple[str, str]]) -> int:
    """1 to 10: more for a category they brought before, and for a sure answer."""
    glad = 5
    glad += 3 if (guest.id, template.category) in likes else 0
    glad += {Answer.YES: 1, Answer.MAYBE: -2, Answer.NONE: -1}.get(guest.answer, 0)
    return max(1, min(10, glad))


def _same_but_other(templates: Sequence[Template], asked: int | None, t: int) -> bool:
    """Who was asked for a side is not asked for another side instead."""
    return asked is not None and t != asked and templates[t].category == templates[asked].category


def _template_of(templates: Sequence[Template], category: str, dish: str) -> int | None:
    for t, template in enumerate(templates):
        if template.category == category and dish in template.dishes:
            return t
    return next((t for t, template in enumerate(templates) if template.category == category), None)
