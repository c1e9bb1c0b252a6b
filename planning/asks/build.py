"""The problem of asks of one potluck: from its guests, gaps and needs to plain values."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from math import ceil
from typing import Protocol

from planning.asks.eligible import can_be_asked, season_of
from planning.asks.people import able_to_make, cooks_of, gladness, likes_of, loads_of
from planning.asks.problem import Gap, Person, Problem, Profile, Template
from planning.asks.templates import again, candidates, merge
from planning.diets import DietRow
from planning.dishes import Dish, lookup
from planning.menu import tiny
from planning.potluck import Potluck

WEIGHTS = {
    "main": 4, "side": 2, "salad": 2, "starter": 1, "bread": 1, "dessert": 2, "drink": 2, "topping": 1, "supplies": 1,
}  # fmt: skip
"""How much a missing serving of a category hurts a table (common practice, no source)."""

INSTEAD = "asks-why-instead"
HOST_COULD = "asks-why-host"
"""Reasons of other ways, beside the asks: nobody was asked by them."""


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
    cooks = cooks_of(potluck, askable, now)
    dishes = candidates(gaps, profiles, cooks, season, promised, before)
    able = able_to_make(cooks, dishes)
    templates, able_for = merge(dishes, able, profiles, again(gaps, dishes))
    loads = loads_of(potluck, askable)
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
                t: gladness(guest, template, likes)
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


def _same_but_other(templates: Sequence[Template], asked: int | None, t: int) -> bool:
    """Who was asked for a side is not asked for another side instead."""
    return asked is not None and t != asked and templates[t].category == templates[asked].category


def _template_of(templates: Sequence[Template], category: str, dish: str) -> int | None:
    for t, template in enumerate(templates):
        if template.category == category and dish in template.dishes:
            return t
    return next((t for t, template in enumerate(templates) if template.category == category), None)
