"""Figures nobody can mean: said once, with what to correct, while the rest of the plan stands.

The bounds are common practice, no source: they only catch a slip of the pen.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from planning.kitchen.result import Conflict
from planning.kitchen.steps import say_conflict
from planning.potluck import Guest, Party, Potluck

MOST_SERVINGS = 1000
MOST_PARTY = 200
MOST_COUNT = 5000
MOST_OUT_MIN = 1440
MOST_PRICE = Decimal(10_000)
MOST_TRAVEL_MIN = 2880


def implausible(potluck: Potluck) -> Iterator[Conflict]:
    """One conflict for each such figure of the promises, the guests and the prices.

    About a guest `promises` is empty.
    """
    for promise in potluck.promises:
        one = (promise.id,)
        facts: dict[str, object] = {"dish": promise.dish}
        servings = promise.servings
        if servings is not None and not 0 < servings <= MOST_SERVINGS:
            yield say_conflict(one, "servings", "figure", facts, n=_plain(servings), most=MOST_SERVINGS)
        if not 0 <= promise.out_min <= MOST_OUT_MIN:
            yield say_conflict(one, "out-min", "figure", facts, n=_plain(promise.out_min))
    for guest in potluck.guests:
        if guest.party.total > MOST_PARTY:
            yield say_conflict((), "party", "figure", {"name": guest.name}, n=_plain(guest.party.total))
        if guest.travel_min > MOST_TRAVEL_MIN:
            yield say_conflict((), "travel", "figure", {"name": guest.name}, n=_plain(guest.travel_min))
        if any(need.count > MOST_PARTY for need in guest.all_needs()):
            yield say_conflict((), "need-count", "figure", {})
    if potluck.expected_people is not None and potluck.expected_people > MOST_COUNT:
        yield say_conflict((), "expected", "figure", n=_plain(potluck.expected_people))
    for item, price in potluck.prices.items():
        if not _believable_price(price.money.amount):
            yield say_conflict((), "price", "figure", {"item": item}, n=str(price.money.amount)[:20])


def believable(potluck: Potluck) -> Potluck:
    """The potluck without those figures: what nobody can mean must not feed anybody, fill a list or cost money.

    Servings become the dish's usual ones, a party one person of each age group it names, a need one person's; a price
    and a number of people expected are left out.
    """
    promises = tuple(
        replace(p, servings=None) if p.servings is not None and not 0 < p.servings <= MOST_SERVINGS else p
        for p in potluck.promises
    )
    guests = tuple(_believable_guest(g) for g in potluck.guests)
    expected = potluck.expected_people
    prices = {item: p for item, p in potluck.prices.items() if _believable_price(p.money.amount)}
    return replace(
        potluck, promises=promises, guests=guests, prices=prices,
        expected_people=None if expected is not None and expected > MOST_COUNT else expected,
    )  # fmt: skip


def _believable_guest(guest: Guest) -> Guest:
    if guest.party.total > MOST_PARTY:
        guest = replace(guest, party=Party(**{"adults": 0} | {group: 1 for group, _ in guest.party.counts()}))
    if any(need.count > MOST_PARTY for need in guest.needs):
        needs = tuple(replace(n, count=1) if n.count > MOST_PARTY else n for n in guest.needs)
        guest = replace(guest, needs=needs)
    return guest


def _believable_price(amount: Decimal) -> bool:
    return amount.is_finite() and 0 <= amount <= MOST_PRICE


def _plain(value: float) -> object:
    """A number that stays readable in a sentence; text for what is none."""
    return value if math.isfinite(value) and abs(value) < 1e15 else f"{value:.3g}"
