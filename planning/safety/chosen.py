"""Where a diet somebody chose, or an intolerance, meets a dish that breaks it: the mildest news, once to each cook.

An allergy is not told here but in `met.py`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from planning.diets import can_eat, listed, meant, rule_of
from planning.diets.table import BY_KITCHEN
from planning.potluck import Answer, Need, Potluck, Promise
from planning.safety.allergens import ALLERGY, degree_of
from planning.safety.met import needing


@dataclass(frozen=True)
class Broken:
    """One dish and one need it breaks: `marks` are what is listed against it ("pork"), empty where it is what stands
    beside what (meat beside milk); `usual`: nobody listed it, it is as such a dish is usually made."""

    promise: str
    dish: str
    need: str
    marks: tuple[str, ...]
    usual: bool
    owners: frozenset[str]


def broken(potluck: Potluck) -> tuple[Broken, ...]:
    """Every such need at the table against every dish that breaks it, in the potluck's order.

    A need of nobody but the dish's own cooks is left out: they know."""
    owners: dict[str, set[str]] = {}
    for guest in potluck.guests:
        if guest.answer is Answer.NO:
            continue
        for need in _chosen(guest.all_needs()):
            owners.setdefault(need, set()).add(guest.id)
    if not owners:
        return ()
    found = []
    for promise in potluck.promises:
        for need, whose in owners.items():
            if promise.category == "supplies" or not whose - {promise.guest, *promise.sharers}:
                continue
            if can_eat(promise, need) == "contains":
                found.append(_how(promise, need, frozenset(whose)))
    return tuple(found)


def _chosen(needs: tuple[Need, ...]) -> Iterator[str]:
    """Those of the needs that are no allergy, as the tables call them."""
    for need in (one for said in needs for one in meant(said)):
        rule = rule_of(need.need)
        if rule is not None and rule.kind == "diet" and degree_of(need, rule.kind) < ALLERGY:
            yield rule.need


def _how(promise: Promise, need: str, owners: frozenset[str]) -> Broken:
    what, rule = listed(promise), rule_of(need)
    marks = tuple(sorted(rule.avoids & what.holds)) if rule is not None else ()
    named = frozenset(marks) & listed(replace(promise, ingredients=("water",))).holds
    return Broken(promise.id, promise.dish, need, marks, what.basis == "usual recipe" and not named, owners)


@dataclass(frozen=True)
class BrokenNews:
    """`by_dish`: a dish is new or differently made; `by_need`: somebody told of a need, or comes after all."""

    by_dish: tuple[Broken, ...]
    by_need: tuple[Broken, ...]


def broken_news(before: Potluck, after: Potluck) -> BrokenNews:
    """What is broken now and was not before. A cook who has brought such a dish already knows of the need and is not
    told again, but for a need that is about the kitchen too (halal, kosher): there every dish counts."""
    if before.promises == after.promises and needing(before) == needing(after):
        return BrokenNews((), ())
    was = broken(before)
    known = {(b.promise, b.need) for b in was}
    cooks = {p.id: p.guest for p in after.promises}
    told = {(cooks.get(b.promise), b.need) for b in was if b.need not in BY_KITCHEN}
    owned = {(b.need, who) for b in was for who in b.owners} | _owned(before)
    by_dish, by_need = [], []
    for one in broken(after):
        if (one.promise, one.need) in known:
            continue
        if not any((one.need, who) in owned for who in one.owners):
            by_need.append(one)
        elif (cooks[one.promise], one.need) not in told:
            by_dish.append(one)
    return BrokenNews(tuple(by_dish), tuple(by_need))


def _owned(potluck: Potluck) -> set[tuple[str, str]]:
    return {(need, g.id) for g in potluck.guests if g.answer is not Answer.NO for need in _chosen(g.all_needs())}
