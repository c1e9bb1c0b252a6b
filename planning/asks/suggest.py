"""From a potluck to its asks: builds the problem, solves it, and puts the three ways beside each gap."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from math import ceil
from typing import Protocol

from planning.asks.costs import cost_of
from planning.asks.eligible import can_be_asked, can_make, minutes_left, minutes_needed, season_of
from planning.asks.problem import Gap, Person, Problem, Profile, Template
from planning.asks.solve import Solution, solve
from planning.diets import DietRow, usually_fits
from planning.dishes import Dish, dish_named, lookup, suggest
from planning.potluck import Answer, Guest, Money, Potluck, Say

WEIGHTS = {
    "main": 4, "side": 2, "salad": 2, "starter": 1, "bread": 1, "dessert": 2, "drink": 2, "topping": 1, "supplies": 1,
}  # fmt: skip
"""How much a missing serving of a category hurts a table (common practice, no source)."""

OFFERED = 10
"""Dishes considered for a category, commonest and in season first."""

FOR_PROFILE = 6
"""More dishes considered for people with needs, as usually made free of what they avoid."""


class MenuLine(Protocol):
    """What the asks read from a row of the menu."""

    @property
    def category(self) -> str: ...
    @property
    def short_servings(self) -> float: ...
    @property
    def short_dishes(self) -> int: ...


@dataclass(frozen=True)
class Ask:
    """One way to close a gap.

    `how`: "ask" a guest, "host-cooks", or "buy". `cost` is what host or shop would spend, None when nobody knows.
    `alternative`: another way for a gap the asks before it close already. `minutes` it takes, shopping included;
    `needs` it is meant for.
    """

    guest: str | None
    how: str
    category: str
    dish: str
    servings: float
    why: Say
    cost: Money | None = None
    alternative: bool = False
    minutes: int | None = None
    needs: tuple[str, ...] = ()


@dataclass(frozen=True)
class Built:
    """The problem and what its numbers stand for. `names`: what each previously asked person was asked for."""

    problem: Problem
    dishes: tuple[Dish, ...]
    asked_dish: Mapping[str, str]
    season: str


def asks(
    potluck: Potluck,
    menu_rows: Sequence[MenuLine],
    diet_rows: Sequence[DietRow],
    now: datetime,
    effort: float = 1.0,
    seed: int = 0,
    seconds: float | None = None,
) -> tuple[Ask, ...]:
    """Who to ask for what, then the other ways for each gap; empty when nothing is short.

    The same arguments give the same answer; `effort` 0 is the quick greedy one. A gap nobody can be asked for is
    bought, within the budget; the budget counts only what is bought or cooked by the host.
    """
    built = problem_of(potluck, menu_rows, diet_rows, now)
    solution = solve(built.problem, effort, seed, seconds)
    chosen = _named(potluck, built, solution)
    return (*chosen, *_other_ways(potluck, built, chosen, now))


def problem_of(
    potluck: Potluck, menu_rows: Sequence[MenuLine], diet_rows: Sequence[DietRow], now: datetime
) -> Built:
    """The problem of asks of a potluck, in plain values."""
    season = season_of(potluck)
    gaps = tuple(
        Gap(row.category, max(0, ceil(row.short_servings)), max(0, row.short_dishes), WEIGHTS.get(row.category, 1))
        for row in menu_rows
        if row.short_servings > 0 or row.short_dishes > 0
    )
    profiles = _profiles(potluck, diet_rows)
    askable = [guest for guest in potluck.guests if can_be_asked(potluck, guest)]
    before = _asked_before(potluck, {gap.category for gap in gaps} | {profile.part for profile in profiles})
    dishes = _candidates(potluck, gaps, profiles, season, before)
    able = {
        dish.name: tuple(
            guest.id
            for guest in askable
            if can_make(dish, guest, minutes_left(potluck, guest, now), guest.id == potluck.host)
        )
        for dish in dishes
    }
    templates, able_for = _merge(dishes, able, profiles, season)
    loads = _loads(potluck, askable)
    likes = _likes(potluck)
    no = {(declined.guest, declined.category) for declined in potluck.declined}
    people = tuple(
        Person(
            guest.id,
            loads[guest.id],
            {
                t: _gladness(guest, template, likes, dish_named(template.dishes[0]), season)
                for t, template in enumerate(templates)
                if guest.id in able_for[t] and (guest.id, template.category) not in no
            },
        )
        for guest in askable
    )
    asked = {}
    for who, (category, dish_name) in before.items():
        t = _template_of(templates, category, dish_name)
        if t is not None:
            asked[who] = t
    return Built(
        Problem(people, templates, gaps, profiles, asked),
        dishes,
        {who: dish_name for who, (_, dish_name) in before.items()},
        season,
    )


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
    """Person -> (category, dish) asked before and still open: not declined, not promised, still wanted."""
    previous = (potluck.previous or {}).get("asks", ())
    no = {(declined.guest, declined.category) for declined in potluck.declined}
    found: dict[str, tuple[str, str]] = {}
    for ask in previous if isinstance(previous, Sequence) else ():
        if not isinstance(ask, Mapping) or ask.get("how") not in ("ask", "host-cooks") or ask.get("alternative"):
            continue
        who, category, dish = str(ask.get("guest")), str(ask.get("category")), str(ask.get("dish"))
        kept_word = any(promise.category == category for promise in potluck.promises_of(who))
        if category in wanted and (who, category) not in no and not kept_word and who not in found:
            found[who] = (category, dish)
    return found


def _candidates(
    potluck: Potluck,
    gaps: Sequence[Gap],
    profiles: Sequence[Profile],
    season: str,
    before: Mapping[str, tuple[str, str]],
) -> tuple[Dish, ...]:
    promised = frozenset(
        match.dish.name for promise in potluck.promises if (match := lookup(promise.dish)).dish is not None
    )
    found: dict[str, Dish] = {}
    for category, name in before.values():
        dish = dish_named(name)
        if dish is not None and dish.category == category:
            found[dish.name] = dish
    for gap in gaps:
        for dish in suggest(gap.category, OFFERED, season, promised) or suggest(gap.category, OFFERED, season):
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
    dishes: Sequence[Dish], able: Mapping[str, tuple[str, ...]], profiles: Sequence[Profile], season: str
) -> tuple[tuple[Template, ...], list[frozenset[str]]]:
    """Dishes alike in category, servings, effort, whom they suit and who can make them become one template."""
    groups: dict[tuple[object, ...], list[Dish]] = {}
    for dish in dishes:
        fits = frozenset(
            p
            for p, profile in enumerate(profiles)
            if profile.part == dish.category and all(usually_fits(dish, need) for need in profile.needs)
        )
        if able[dish.name]:
            key = (dish.category, round(dish.servings), _effort(dish), fits, able[dish.name], dish.in_season(season))
            groups.setdefault(key, []).append(dish)
    templates = []
    able_for = []
    for key, group in groups.items():
        first = group[0]
        templates.append(
            Template(
                first.category,
                max(1, round(first.servings)),
                _effort(first),
                tuple(dish.name for dish in group),
                key[3],  # type: ignore[arg-type]
            )
        )
        able_for.append(frozenset(able[first.name]))
    return tuple(templates), able_for


def _effort(dish: Dish) -> int:
    """1 to 5: the skill it takes, and one more for 20 busy minutes or more, and for what costs much."""
    return min(5, dish.skill + (dish.hands_min >= 20) + (dish.cost_class == 3))


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
    return {who: min(6, load - least) for who, load in loads.items()}


def _likes(potluck: Potluck) -> frozenset[tuple[str, str]]:
    return frozenset((past.guest, past.category) for past in potluck.history if past.came and past.category)


def _gladness(
    guest: Guest, template: Template, likes: frozenset[tuple[str, str]], dish: Dish | None, season: str
) -> int:
    """1 to 10: more for a category they brought before, a dish in season, and a sure answer."""
    glad = 5
    glad += 3 if (guest.id, template.category) in likes else 0
    glad += 1 if dish is not None and dish.seasons and dish.in_season(season) else 0
    glad += {Answer.YES: 1, Answer.MAYBE: -2, Answer.NONE: -1}.get(guest.answer, 0)
    return max(1, min(10, glad))


def _template_of(templates: Sequence[Template], category: str, dish: str) -> int | None:
    for t, template in enumerate(templates):
        if template.category == category and dish in template.dishes:
            return t
    return next((t for t, template in enumerate(templates) if template.category == category), None)


def _named(potluck: Potluck, built: Built, solution: Solution) -> tuple[Ask, ...]:
    """Templates back to dishes: those asked before keep theirs, the others get names nobody has yet."""
    problem = built.problem
    gaps = {gap.category: gap for gap in problem.gaps}
    used: dict[str, int] = {}
    names: dict[str, str] = {}
    for who, t in solution.chosen.items():
        if built.asked_dish.get(who) in problem.templates[t].dishes:
            names[who] = built.asked_dish[who]
            used[names[who]] = used.get(names[who], 0) + 1
    for guest in potluck.guests:
        t = solution.chosen.get(guest.id, -1)
        if t >= 0 and guest.id not in names:
            choice = min(problem.templates[t].dishes, key=lambda name: used.get(name, 0))
            names[guest.id] = choice
            used[choice] = used.get(choice, 0) + 1
    loads = {person.id: person.load for person in problem.people}
    likes = _likes(potluck)
    made = []
    for guest in potluck.guests:
        t = solution.chosen.get(guest.id, -1)
        if t < 0:
            continue
        template = problem.templates[t]
        dish = dish_named(names[guest.id])
        is_host = guest.id == potluck.host
        needs = tuple(sorted({need for p in template.fits for need in problem.profiles[p].needs}))
        why = _why(guest, template, gaps.get(template.category), problem, loads[guest.id], likes, solution, is_host)
        made.append(
            Ask(
                guest=guest.id,
                how="host-cooks" if is_host else "ask",
                category=template.category,
                dish=names[guest.id],
                servings=float(template.servings),
                why=why,
                cost=cost_of(potluck, dish, template.servings) if is_host else None,
                minutes=minutes_needed(dish) if dish else None,
                needs=needs,
            )
        )
    order = {category: at for at, category in enumerate(WEIGHTS)}
    return tuple(sorted(made, key=lambda ask: order.get(ask.category, 99)))


def _why(
    guest: Guest,
    template: Template,
    gap: Gap | None,
    problem: Problem,
    load: int,
    likes: frozenset[tuple[str, str]],
    solution: Solution,
    is_host: bool,
) -> Say:
    """One line a host can read; people with needs are counted, never named."""
    if problem.asked.get(guest.id) is not None and solution.chosen.get(guest.id) == problem.asked[guest.id]:
        because = "asked"
    elif (guest.id, template.category) in likes:
        because = "likes"
    elif is_host:
        because = "host"
    elif load == 0:
        because = "turn"
    else:
        because = "free"
    people = sum(problem.profiles[p].people for p in template.fits)
    facts: dict[str, object] = {"category": template.category, "because": because}
    if people:
        return Say("asks-why-diet", {**facts, "people": people})
    return Say(
        "asks-why-short",
        {**facts, "servings": gap.servings if gap else 0, "dishes": gap.dishes if gap else 0},
    )


def _other_ways(potluck: Potluck, built: Built, chosen: tuple[Ask, ...], now: datetime) -> tuple[Ask, ...]:
    """For each gap the host's kitchen and the shop: for what the asks leave open, and as other ways for the rest."""
    host = potluck.guest(potluck.host)
    left_min = minutes_left(potluck, None, now)
    spent = sum((ask.cost.amount for ask in chosen if ask.cost is not None), start=Decimal(0))
    found = []
    for gap in built.problem.gaps:
        asked = [ask for ask in chosen if ask.category == gap.category]
        closed = sum(ask.servings for ask in asked)
        open_servings = max(0, ceil(gap.servings - closed))
        open_dishes = max(0, gap.dishes - len(asked))
        offers = suggest(gap.category, OFFERED, built.season)
        wanted = open_servings or (gap.servings if asked else 0) or (round(offers[0].servings) if offers else gap.servings)
        is_open = open_servings > 0 or open_dishes > 0
        if not any(ask.how == "host-cooks" for ask in asked):
            dish = next((d for d in offers if host is not None and can_make(d, host, left_min, True)), None)
            if dish is not None and gap.category != "supplies":
                found.append(
                    Ask(
                        potluck.host, "host-cooks", gap.category, dish.name, float(wanted),
                        Say("asks-why-host", {"category": gap.category, "servings": wanted, "open": is_open}),
                        cost_of(potluck, dish, wanted), True, minutes_needed(dish),
                    )  # fmt: skip
                )
        bought = _to_buy(offers)
        if bought is None:
            continue
        cost = cost_of(potluck, bought, wanted, bought=True)
        over = False
        if is_open and cost is not None and potluck.budget is not None:
            over = spent + cost.amount > potluck.budget.amount
            spent += 0 if over else cost.amount
        facts = {"category": gap.category, "servings": wanted, "open": is_open, "over": over}
        found.append(
            Ask(None, "buy", gap.category, bought.name, float(wanted), Say("asks-why-buy", facts), cost, not is_open or over)
        )
    return tuple(found)


def _to_buy(offers: Sequence[Dish]) -> Dish | None:
    """What is simplest to buy: least skill, then cheapest, then commonest."""
    return min(offers, key=lambda dish: (dish.skill, dish.cost_class), default=None)
