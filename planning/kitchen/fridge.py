"""Room in the venue's refrigerator: what thaws and what stays cold there until it is served.

How much room a thing takes is common practice, no source; so a full refrigerator is a warning with a way out,
and never makes a timeline impossible.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from planning.amounts import parse, to_unit
from planning.dishes import lookup
from planning.kitchen.result import Conflict, PlannedStep
from planning.kitchen.steps import say_conflict
from planning.kitchen.units import L_PER_QT
from planning.kitchen.usual import SURE
from planning.kitchen.volume import quarts
from planning.kitchen.waking import wake_up
from planning.potluck import Answer, Potluck, Promise
from planning.safety.thaw import thaw_by, thaw_days
from planning.safety.wall_clock import plain_facts

THAW_L_PER_LB = 1.5
"""A bird in its wrapping on a tray."""

DISH_L_PER_SERVING = 0.3
"""A cup of food and its share of the bowl."""

BOWL = 1.25
"""A bowl takes a quarter more than what is in it."""

USUAL_SERVINGS = 10

WARNINGS = ("fridge-full",)
"""Rules that warn and leave the timeline's status alone."""


@dataclass(frozen=True)
class Chilled:
    """One thing in the refrigerator from `start` to `end` (UTC). `thawing`: it cannot wait in a cooler."""

    promise: Promise
    litres: float
    start: datetime
    end: datetime
    thawing: bool


def chilled(potluck: Potluck, steps: Sequence[PlannedStep] = ()) -> tuple[Chilled, ...]:
    """What needs the venue's refrigerator, and when.

    Frozen things of the host thaw there (guests' own at their homes); cold dishes of the host stand there from the
    morning, those of guests from their arrival where that is before serving; chilling in the plan counts as planned.
    """
    found: list[Chilled] = []
    for promise in potluck.promises:
        guest = potluck.guest(promise.guest)
        if guest is not None and guest.answer is Answer.NO:
            continue
        hosts = promise.guest == potluck.host
        begin = thaw_by(potluck, promise, steps) if hosts else None
        if begin is not None and promise.frozen_lb is not None:
            until = begin + timedelta(days=min(thaw_days(promise.frozen_lb), 60))
            found.append(Chilled(promise, promise.frozen_lb * THAW_L_PER_LB, begin, until, thawing=True))
        since = [s.start for s in steps if s.promise == promise.id and s.kind == "chill" and s.at == "venue"]
        if promise.arrives_at is not None:
            since.append(promise.arrives_at)
        if hosts:
            since.append(wake_up(potluck))
        if is_cold(promise) and since and min(since) < potluck.starts_at:
            found.append(Chilled(promise, litres(promise), min(since), potluck.starts_at, thawing=False))
    return tuple(found)


def is_cold(promise: Promise) -> bool:
    """Whether it is served cold: as said, else as the catalogue surely knows it."""
    if promise.serve is not None or promise.category in ("drink", "supplies"):
        return promise.serve == "cold"
    match = lookup(promise.dish)
    return match.dish is not None and match.confidence >= SURE and match.dish.serve == "cold"


def litres(promise: Promise) -> float:
    """Room for a dish: its volume or weight (a litre a kilogram) and a bowl around it, else by servings."""
    if (volume := quarts(promise.quantity)) is not None:
        return volume * L_PER_QT * BOWL
    amount = parse(promise.quantity) if promise.quantity else None
    mass = to_unit(amount, "kg") if amount is not None and amount.kind == "mass" else None
    if mass is not None:
        return float(mass) * BOWL
    servings = promise.servings if promise.servings is not None and promise.servings > 0 else USUAL_SERVINGS
    return min(servings, 1e6) * DISH_L_PER_SERVING if math.isfinite(servings) else USUAL_SERVINGS * DISH_L_PER_SERVING


def fridge_conflicts(potluck: Potluck, steps: Sequence[PlannedStep] = ()) -> tuple[Conflict, ...]:
    """At most one: the moment at which most is in the refrigerator, if that is more than it holds."""
    room = potluck.kitchen.fridge_l
    if room is None or not math.isfinite(room) or room < 0:
        return ()
    every = chilled(potluck, steps)
    worst = max((c.start for c in every), key=lambda at: (_sum(_inside(every, at)), -at.timestamp()), default=None)
    if worst is None or _sum(inside := _inside(every, worst)) <= room + 1e-6:
        return ()
    names = tuple(c.promise.id for c in inside)
    facts: dict[str, object] = {
        "dish": inside[0].promise.dish, "dishes": [c.promise.dish for c in inside],
        "litres": math.ceil(_sum(inside)), "room": round(room),
    }  # fmt: skip
    facts |= plain_facts(potluck, {"at": worst})
    kind, out = "cooler-cold", _taken_out([c for c in inside if not c.thawing], inside, room)
    if out is None:
        # A cooler does not thaw; a second refrigerator takes anything.
        kind, out = "second-fridge", _taken_out(inside, inside, room) or list(inside)
    return (say_conflict(names, "fridge-full", kind, facts, out=[c.promise.dish for c in out]),)


def _taken_out(choice: Sequence[Chilled], inside: Sequence[Chilled], room: float) -> list[Chilled] | None:
    """The fewest of the choice, what thaws and then the largest first, without which the rest fits; None if none do."""
    over = _sum(inside) - room
    out: list[Chilled] = []
    for one in sorted(choice, key=lambda c: (not c.thawing, -c.litres, c.promise.id)):
        if over <= 1e-6:
            break
        out.append(one)
        over -= one.litres
    return out if over <= 1e-6 else None


def _inside(every: Iterable[Chilled], at: datetime) -> tuple[Chilled, ...]:
    return tuple(c for c in every if c.start <= at < c.end)


def _sum(things: Iterable[Chilled]) -> float:
    return sum(c.litres for c in things)
