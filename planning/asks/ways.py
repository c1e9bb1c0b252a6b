"""Asks in words a host can act on: whom to ask, what to cook oneself, what to buy."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from decimal import Decimal
from math import ceil

from planning.asks.build import HOST_COULD, INSTEAD, WEIGHTS, Built
from planning.asks.costs import cost_of
from planning.asks.eligible import can_make, minutes_left, minutes_needed
from planning.asks.people import likes_of
from planning.asks.problem import Gap, Problem, Template
from planning.asks.solve import Solution
from planning.asks.templates import EVERY, OFFERED
from planning.diets import usually_fits
from planning.dishes import Dish, dish_named, suggest
from planning.potluck import Guest, Money, Potluck, Say


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


def chosen_asks(potluck: Potluck, built: Built, solution: Solution) -> tuple[Ask, ...]:
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
            offered = problem.templates[t].dishes
            choice = min(offered, key=lambda name: (used.get(name, 0), offered.index(name)))
            names[guest.id] = choice
            used[choice] = used.get(choice, 0) + 1
    loads = {person.id: person.load for person in problem.people}
    likes = likes_of(potluck)
    made = []
    hungry = set(range(len(problem.profiles)))
    for guest in potluck.guests:
        t = solution.chosen.get(guest.id, -1)
        if t < 0:
            continue
        template = problem.templates[t]
        dish = dish_named(names[guest.id])
        is_host = guest.id == potluck.host
        fed = template.fits & hungry
        hungry -= fed
        needs = tuple(sorted({need for p in fed for need in problem.profiles[p].needs}))
        why = _why(
            guest, template, fed, gaps.get(template.category), problem, loads[guest.id],
            len(potluck.promises_of(guest.id)), likes, solution, is_host,
        )  # fmt: skip
        made.append(
            Ask(
                guest=guest.id,
                how="host-cooks" if is_host else "ask",
                category=template.category,
                dish=names[guest.id],
                servings=dish.servings if dish else float(template.servings),
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
    fed: frozenset[int],
    gap: Gap | None,
    problem: Problem,
    load: int,
    promises: int,
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
    elif load == 0 and not promises:
        because = "turn"
    else:
        because = "free"
    people = sum(problem.profiles[p].people for p in fed)
    facts: dict[str, object] = {"category": template.category, "because": because}
    if people:
        return Say("asks-why-diet", {**facts, "people": people})
    return Say(
        "asks-why-short",
        {**facts, "servings": gap.servings if gap else 0, "dishes": gap.dishes if gap else 0},
    )


def other_ways(potluck: Potluck, built: Built, chosen: tuple[Ask, ...], now: datetime) -> tuple[Ask, ...]:
    """For each gap the host's kitchen and the shop: for what the asks leave open, and as other ways for the rest."""
    kitchen = _Kitchen(potluck, built, now, chosen)
    found: list[Ask] = []
    for gap in built.problem.gaps:
        asked = [ask for ask in chosen if ask.category == gap.category]
        missing = max(0, ceil(gap.servings - sum(ask.servings for ask in asked)))
        is_open = missing > 0 or gap.dishes > len(asked)
        taken = built.promised | {ask.dish for ask in asked}
        offers = suggest(gap.category, EVERY, built.season, taken) or suggest(gap.category, EVERY)
        if not offers:
            continue
        wanted = missing or (gap.servings if asked else 0) or round(offers[0].servings)
        if not any(ask.how == "ask" for ask in asked):
            found.extend(_ask_somebody(potluck, built, (*chosen, *found), gap))
        if not any(ask.how == "host-cooks" for ask in asked) and gap.category != "supplies":
            found.extend(kitchen.host_cooks(offers, gap.category, wanted, is_open))
        found.append(kitchen.buy(_to_buy(offers[:OFFERED]), gap.category, wanted, is_open))
    for_needs: list[Ask] = []
    for profile in built.problem.profiles:
        if any(set(profile.needs) <= set(ask.needs) for ask in chosen if ask.category == profile.part):
            continue
        same = next((ask for ask in for_needs if ask.category == profile.part and _suits(ask, profile.needs)), None)
        if same is not None:
            for_needs[for_needs.index(same)] = replace(same, needs=tuple(sorted({*same.needs, *profile.needs})))
        else:
            for_needs.extend(kitchen.for_needs(profile.needs, profile.part, profile.people))
    found.extend(for_needs)
    return tuple(found)


def _ask_somebody(potluck: Potluck, built: Built, chosen: tuple[Ask, ...], gap: Gap) -> list[Ask]:
    """Where the host would cook: the guest with the least burden who could be asked instead, if anybody is free."""
    problem = built.problem
    busy = {ask.guest for ask in chosen} | {potluck.host}
    ways = [
        (problem.burden(person, t), -person.can[t], at, t)
        for at, person in enumerate(problem.people)
        for t in sorted(person.can)
        if person.id not in busy and problem.templates[t].category == gap.category
    ]
    if not ways:
        return []
    *_, at, t = min(ways)
    template = problem.templates[t]
    dish = dish_named(template.dishes[0])
    why = Say(
        INSTEAD,
        {"category": gap.category, "because": "free", "servings": gap.servings, "dishes": gap.dishes},
    )
    minutes = minutes_needed(dish) if dish else None
    who = problem.people[at].id
    return [Ask(who, "ask", gap.category, template.dishes[0], float(template.servings), why, None, True, minutes)]


SOLD = 4.0
"""Less of a dish is hardly sold: common practice, no source."""


class _Kitchen:
    """The host's own ways, each at least a sensible batch: nobody bakes one portion of a dish. The budget counts what
    is bought or cooked because nobody else does."""

    def __init__(self, potluck: Potluck, built: Built, now: datetime, chosen: tuple[Ask, ...]) -> None:
        self.potluck = potluck
        self.built = built
        self.host = potluck.guest(potluck.host)
        self.left_min = minutes_left(potluck, None, now)
        self.spent = sum((ask.cost.amount for ask in chosen if ask.cost is not None), start=Decimal(0))

    def host_cooks(self, offers: Sequence[Dish], category: str, servings: int, is_open: bool) -> list[Ask]:
        """The first dish the host can still make; never the chosen way, as buying stands beside it."""
        host = self.host
        dish = next((d for d in offers if host is not None and can_make(d, host, self.left_min, True)), None)
        if dish is None:
            return []
        why = Say(HOST_COULD, {"category": category, "servings": servings, "open": _yes(is_open)})
        batch = max(float(servings), dish.servings)
        cost = cost_of(self.potluck, dish, batch)
        minutes = minutes_needed(dish)
        return [Ask(self.potluck.host, "host-cooks", category, dish.name, batch, why, cost, True, minutes)]

    def buy(self, dish: Dish, category: str, servings: int, is_open: bool, needs: tuple[str, ...] = ()) -> Ask:
        """Bought for what nobody can be asked for, while the budget lasts; else only another way."""
        batch = max(float(servings), min(SOLD, dish.servings))
        cost = cost_of(self.potluck, dish, batch, bought=True)
        over = is_open and self.over(cost)
        if is_open and not over and cost is not None:
            self.spent += cost.amount
        facts = {"category": category, "servings": servings, "open": _yes(is_open), "over": _yes(over)}
        why = Say("asks-why-buy", facts)
        return Ask(None, "buy", category, dish.name, batch, why, cost, not is_open or over, None, needs)

    def over(self, cost: Money | None) -> bool:
        """Whether this would be more than what is left of the budget."""
        budget = self.potluck.budget
        return cost is not None and budget is not None and self.spent + cost.amount > budget.amount

    def for_needs(self, needs: tuple[str, ...], category: str, people: int) -> list[Ask]:
        """For people with needs whom no ask can feed: the host cooks something that usually suits them, or buys it."""
        fit = [d for d in suggest(category, EVERY, self.built.season) if all(usually_fits(d, need) for need in needs)]
        if not fit:
            return []
        for own in self.host_cooks(fit, category, people, True):
            over = self.over(own.cost)
            if own.cost is not None and not over:
                self.spent += own.cost.amount
            return [replace(own, alternative=over, needs=needs)]
        return [self.buy(_to_buy(fit), category, people, True, needs)]


def _suits(ask: Ask, needs: tuple[str, ...]) -> bool:
    dish = dish_named(ask.dish)
    return dish is not None and all(usually_fits(dish, need) for need in needs)


def _yes(flag: bool) -> str:
    return "yes" if flag else "no"


def _to_buy(offers: Sequence[Dish]) -> Dish:
    """What is simplest to buy: least skill, then cheapest, then commonest."""
    return min(offers, key=lambda dish: (dish.skill, dish.cost_class))
