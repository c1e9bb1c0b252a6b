"""Why a timeline breaks a rule, and the cheapest way out, found by solving again with one thing changed.

The ways out stand in the order of what they ask of people; the first that mends the dish, without
spoiling another, is offered. The order is common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from planning.kitchen.attempt import Attempt, attempt
from planning.kitchen.modes import SLOT_MIN
from planning.kitchen.problem import wake_up
from planning.kitchen.result import Conflict, DishTimes
from planning.kitchen.steps import HEATING, OVEN, SLOW, STOVE, Checked, say_conflict
from planning.kitchen.ways import MOST_LATER_MIN, Way, can_cook_ahead, can_cook_at_home, in_use, usual_way
from planning.potluck import Circuit, HeatStep, Kitchen, Oven, Potluck, Say, SlowCooker
from planning.safety.wall_clock import plain_facts

MOST_EXPLAINED = 6
"""Dishes for which a way out is searched; the others get the usual advice."""

LARGE = 60
"""Tasks above which a try is made by list scheduling alone."""

SOON_MIN, LATER_MIN = (5, 10, 15, 20), (30, 45, 60, 90, 120)
REHEAT = HeatStep("oven", 30, 350)
"""A dish cooked ahead and reheated; the time is common practice, no source."""


class _Enough(Exception):
    """The tries are used up."""


class _Search:
    """Tries variants of one potluck, each at most once, with a small part of the effort."""

    def __init__(self, potluck: Potluck, checked: Sequence[Checked], now: datetime, effort: float, seed: int) -> None:
        self.potluck, self.checked, self.now, self.seed = potluck, tuple(checked), now, seed
        self.effort = min(effort / 10, 0.02)
        # The larger the kitchen, the longer a try takes, so the fewer are made. Counted, not timed: always the same.
        self.left = max(8, 800 // max(1, sum(len(c.steps) for c in checked)))
        self._known: dict[str, Attempt] = {}

    def run(self, name: str, potluck: Potluck | None = None, checked: Sequence[Checked] | None = None,
            coolers: frozenset[str] = frozenset()) -> Attempt:  # fmt: skip
        if name not in self._known:
            dishes = self.checked if checked is None else tuple(checked)
            where = potluck or self.potluck
            if self.left <= 0:
                raise _Enough
            self.left -= 1
            quick = attempt(where, dishes, self.now, effort=0, coolers=coolers, lists=12)
            if quick.broken and self.effort > 0 and len(quick.made.problem.tasks) <= LARGE:
                quick = attempt(
                    where, dishes, self.now, effort=self.effort, seed=self.seed, coolers=coolers, neat=False, lists=12
                )
            self._known[name] = quick
        return self._known[name]

    def with_kitchen(self, name: str, change: Callable[[Kitchen], Kitchen]) -> Attempt:
        return self.run(name, replace(self.potluck, kitchen=change(self.potluck.kitchen)))

    def swapped(self, promise: str, steps: tuple[HeatStep, ...]) -> list[Checked]:
        return [replace(c, steps=steps) if c.promise.id == promise else c for c in self.checked]


def explain(potluck: Potluck, checked: Sequence[Checked], now: datetime, found: Attempt, *, effort: float,
            seed: int) -> tuple[Conflict, ...]:  # fmt: skip
    """One conflict for each dish that comes late or waits too long off heat, the worst first.

    Each names what the dish waits for and a way out. What mends one of several alike need not mend the
    others, so each is asked for itself; where nothing tried mends a dish, it gets the usual advice.
    """
    if not found.broken:
        return ()
    search = _Search(potluck, checked, now, effort, seed)
    conflicts: list[Conflict] = []
    by_id = {c.promise.id: c for c in checked}
    worst = sorted(found.dishes, key=lambda d: (-d.late_min - d.unsafe_min, d.promise))
    for number, dish in enumerate(d for d in worst if d.late_min or d.unsafe_min):
        one = by_id[dish.promise]
        way = _first_that_mends(search, one, dish, found) if number < MOST_EXPLAINED else None
        if way is None or way.kind == "leave-out":
            way = usual_way(potluck, one, dish, now) or way
        conflicts.append(_told(potluck, one, dish, way, found, now))
    return tuple(conflicts)


def _first_that_mends(search: _Search, one: Checked, dish: DishTimes, found: Attempt) -> Way | None:
    try:
        return next((way for way in _ways(search, one, dish) if _mends(way, dish, found)), None)
    except _Enough:
        return None


def _mends(way: Way, dish: DishTimes, found: Attempt) -> bool:
    """The dish is well, and all dishes together are better off by at least what it had."""
    if way.attempt is None:
        return False
    after = way.attempt.broken
    gained = sum(found.broken.values()) - sum(after.values())
    return dish.promise not in after and gained >= found.broken[dish.promise]


def _ways(search: _Search, one: Checked, dish: DishTimes) -> Iterator[Way]:
    """What could be done about this dish, from the least to the most trouble."""
    promise = one.promise
    kinds = {s.kind for s in one.steps if s.at == "venue" and not s.own_appliance}
    heats = [s for s in one.steps if s.kind in HEATING]
    if dish.unsafe_min and heats and heats[-1].at == "home":
        yield Way("cooler", 0, search.run(f"cooler {promise.id}", coolers=frozenset({promise.id})))
    if promise.arrives_at is not None:
        free = [replace(c, promise=replace(c.promise, arrives_at=None)) if c is one else c for c in search.checked]
        earlier = search.run(f"arrive {promise.id}", checked=free)
        at = min((s.start for s in earlier.steps if s.promise == promise.id and s.at == "venue"), default=None)
        if at is not None and at < promise.arrives_at:
            minutes = math.ceil((promise.arrives_at - at).total_seconds() / 60)
            yield Way("arrive-earlier", minutes, earlier, at)
    if any(s.kind == "prep" or s.hands_min for c in search.checked for s in c.steps if s.at == "venue"):
        yield Way("more-hands", 0, search.with_kitchen("hands", lambda k: replace(k, cooks=k.cooks + 1)))
    if kinds & {STOVE, *SLOW}:
        extra = SlowCooker()
        yield Way("borrow-slow-cooker", 0, search.with_kitchen(
            "slow", lambda k: replace(k, slow_cookers=(*k.slow_cookers, extra))))  # fmt: skip
    yield from _later(search, SOON_MIN)
    yield from _ahead(search, one)
    if kinds & {*SLOW, "microwave"} or any(s.own_appliance for s in one.steps):
        yield Way("another-circuit", 0, search.with_kitchen(
            "circuit", lambda k: replace(k, circuits=(*k.circuits, Circuit()))))  # fmt: skip
    if OVEN in kinds:
        yield Way("borrow-oven", 0, search.with_kitchen("oven", lambda k: replace(k, ovens=(*k.ovens, Oven()))))
    just = math.ceil(dish.late_min / SLOT_MIN) * SLOT_MIN
    yield from _later(search, tuple(sorted({*LATER_MIN, just} if just <= MOST_LATER_MIN else LATER_MIN)))
    rest = [c for c in search.checked if c is not one]
    if rest:
        yield Way("leave-out", 0, search.run(f"without {promise.id}", checked=rest))


def _later(search: _Search, choices: tuple[int, ...]) -> Iterator[Way]:
    for minutes in choices:
        when = search.potluck.starts_at + timedelta(minutes=minutes)
        yield Way("later", minutes, search.run(f"later {minutes}", replace(search.potluck, starts_at=when)))


def _ahead(search: _Search, one: Checked) -> Iterator[Way]:
    """A guest cooks at home and brings it hot in a cooler; the host cooks the day before and reheats."""
    potluck, promise = search.potluck, one.promise
    if not any(s.kind in HEATING and s.at == "venue" for s in one.steps):
        return
    if can_cook_at_home(potluck, one):
        home = tuple(replace(s, at="home") for s in one.steps)
        moved = search.swapped(promise.id, home)
        yield Way("cook-at-home", 0, search.run(f"home {promise.id}", checked=moved, coolers=frozenset({promise.id})))
    if can_cook_ahead(potluck, one, search.now):
        pans = max((s.pans for s in one.steps), default=1)
        reheated = search.swapped(promise.id, (replace(REHEAT, pans=pans),))
        yield Way("cook-ahead", 0, search.run(f"ahead {promise.id}", checked=reheated))


def _told(potluck: Potluck, one: Checked, dish: DishTimes, way: Way | None, found: Attempt, now: datetime) -> Conflict:
    """The conflict in facts: what is short, by what would mend it, else by what is in use when the dish would begin."""
    need = sum(s.minutes for s in one.steps)
    begin = max(now, wake_up(potluck), one.promise.arrives_at or now)
    left = max(0, math.floor((potluck.starts_at - begin).total_seconds() / 60))
    rule = "off-heat"
    if one.promise.arrives_at is not None and one.promise.arrives_at >= potluck.starts_at and dish.late_min:
        rule = "arrives-late"
    elif dish.late_min:
        rule = "too-long" if sum(s.minutes for s in one.steps if s.at == "venue") > left else "late"
    minutes = dish.late_min or dish.off_heat_min
    kind, by = (way.kind, way.minutes) if way else ("leave-out", 0)
    facts: dict[str, object] = {
        "dish": one.promise.dish, "minutes": minutes, "need": need, "left": left, "by": by,
        "short": _SHORT.get(kind) or in_use(potluck, one, found.steps),
        "span": span(minutes), "need_span": span(need), "left_span": span(left), "by_span": span(by),
    }  # fmt: skip
    until = way.by if way and way.by else potluck.starts_at + timedelta(minutes=by)
    facts |= plain_facts(potluck, {"until": until})
    facts["that_day"] = "yes" if potluck.local(until).date() == potluck.local(potluck.starts_at).date() else "no"
    return say_conflict((one.promise.id,), rule, kind, facts, fix_min=by)


def span(minutes: int) -> Say:
    """So many minutes, in words by hours and minutes."""
    return Say("kitchen-span", {"hours": minutes // 60, "minutes": minutes % 60})


_SHORT = {"borrow-oven": "oven", "borrow-slow-cooker": "slow-cooker", "more-hands": "hands", "another-circuit": "power"}
