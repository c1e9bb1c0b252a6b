"""Why a timeline breaks a rule, and the cheapest way out, found by solving again with one thing changed.

The ways out stand in the order of what they ask of people; the first that mends the dish, without
spoiling another, is offered. The order is common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from planning.kitchen.attempt import Attempt, attempt
from planning.kitchen.check import check
from planning.kitchen.mend import can_cook_at_home, mended, reheated_in
from planning.kitchen.modes import SLOT_MIN
from planning.kitchen.result import Conflict, DishTimes
from planning.kitchen.steps import HEATING, OVEN, SLOW, STOVE, Checked, say_conflict, span_said
from planning.kitchen.waking import wake_up
from planning.kitchen.ways import MOST_LATER_MIN, Way, can_cook_ahead, in_use, usual_way
from planning.potluck import Potluck
from planning.safety.wall_clock import plain_facts

MOST_EXPLAINED = 6
"""Dishes for which a way out is searched; the others get the usual advice."""

LARGE = 60
"""Tasks above which a try is made by list scheduling alone."""

SOON_MIN, LATER_MIN = (5, 10, 15, 20), (30, 45, 60, 90, 120)


class _Enough(Exception):
    """The tries are used up."""


class _Search:
    """Tries variants of one potluck, each at most once, with a small part of the effort."""

    def __init__(self, potluck: Potluck, checked: Sequence[Checked], now: datetime, effort: float, seed: int) -> None:
        self.potluck, self.now, self.seed = potluck, now, seed
        self.effort = min(effort / 10, 0.02)
        # The larger the kitchen, the longer a try takes, so the fewer are made. Counted, not timed: always the same.
        self.left = max(8, 800 // max(1, sum(len(c.steps) for c in checked)))
        self._known: dict[tuple[str, int, str], Attempt | None] = {}

    def mend(self, kind: str, promise: str = "", minutes: int = 0) -> Attempt | None:
        """The kitchen with this way out taken; None where it cannot be taken. Raises _Enough."""
        key = (kind, minutes, promise)
        if key not in self._known:
            changed = mended(self.potluck, promise, kind, minutes)
            self._known[key] = None if changed is None else self.run(changed)
        return self._known[key]

    def run(self, potluck: Potluck) -> Attempt | None:
        if self.left <= 0:
            raise _Enough
        self.left -= 1
        dishes, _ = check(potluck)
        if not dishes:
            return None
        quick = attempt(potluck, dishes, self.now, effort=0, lists=12)
        if quick.broken and self.effort > 0 and len(quick.made.problem.tasks) <= LARGE:
            return attempt(potluck, dishes, self.now, effort=self.effort, seed=self.seed, neat=False, lists=12)
        return quick


def explain(potluck: Potluck, checked: Sequence[Checked], now: datetime, found: Attempt, *, effort: float,
            seed: int, told: frozenset[str] = frozenset(),
            most: int = MOST_EXPLAINED) -> tuple[Conflict, ...]:  # fmt: skip
    """One conflict for each dish that comes late or waits too long off heat, the worst first.

    Each names what the dish waits for and a way out. What mends one of several alike need not mend the
    others, so each is asked for itself; where nothing tried mends a dish, it gets the usual advice. Dishes `told` of
    already, for what the kitchen lacks, are not told of again. A way out is searched for the `most` worst dishes.
    """
    if not found.broken:
        return ()
    search = _Search(potluck, checked, now, effort, seed)
    conflicts: list[Conflict] = []
    by_id = {c.promise.id: c for c in checked}
    worst = sorted(found.dishes, key=lambda d: (-d.late_min - d.unsafe_min, d.promise))
    for number, dish in enumerate(d for d in worst if (d.late_min or d.unsafe_min) and d.promise not in told):
        one = by_id[dish.promise]
        way = _first_that_mends(search, one, dish, found) if number < most else None
        if way is None or way.kind == "leave-out":
            way = usual_way(potluck, one, dish, now) or way
        conflict = _told(potluck, one, dish, way, found, now)
        if number < most and (later := _just_later(search, dish, conflict.fix.kind, found)) is not None:
            conflict = replace(conflict, others=(_told(potluck, one, dish, later, found, now).fix,))
        conflicts.append(conflict)
    return tuple(conflicts)


def _first_that_mends(search: _Search, one: Checked, dish: DishTimes, found: Attempt) -> Way | None:
    try:
        return next((way for way in _ways(search, one, dish) if _mends(way, dish, found)), None)
    except _Enough:
        return None


def _just_later(search: _Search, dish: DishTimes, offered: str, found: Attempt) -> Way | None:
    """Serving just so much later as the dish is late, where that mends it and is not what is offered already."""
    minutes = math.ceil(dish.late_min / SLOT_MIN) * SLOT_MIN
    if offered == "later" or not 0 < minutes <= MOST_LATER_MIN:
        return None
    try:
        way = Way("later", minutes, search.mend("later", minutes=minutes))
    except _Enough:
        return None
    return way if _mends(way, dish, found) else None


def _saved(way: Way | None, found: Attempt) -> int | None:
    """Minutes late and unsafe that all dishes have less, once it is taken."""
    if way is None or way.attempt is None:
        return None
    return max(0, sum(found.broken.values()) - sum(way.attempt.broken.values()))


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
    here = [s for s in one.steps if s.at == "venue"]
    kinds = {s.kind for s in here if not s.own_appliance}
    heats = [s for s in one.steps if s.kind in HEATING]
    if dish.unsafe_min and heats and heats[-1].at == "home":
        yield Way("cooler", 0, search.mend("cooler", promise.id))
    if promise.arrives_at is not None:
        yield from _earlier(search, one, promise.arrives_at, dish)
    if any(s.kind == "prep" or s.hands_min for p in search.potluck.promises for s in p.heat or () if s.at == "venue"):
        yield Way("more-hands", 0, search.mend("more-hands"))
    if kinds & {STOVE, *SLOW}:
        yield Way("borrow-slow-cooker", 0, search.mend("borrow-slow-cooker"))
    yield from _later(search, SOON_MIN)
    # A guest cooks at home and brings it hot in a cooler; or it is cooked the day before and reheated.
    if any(s.kind in HEATING for s in here) and can_cook_at_home(search.potluck, promise, one.steps):
        yield Way("cook-at-home", 0, search.mend("cook-at-home", promise.id))
    if heats and can_cook_ahead(search.potluck, one, search.now):
        yield Way("cook-ahead", 0, search.mend("cook-ahead", promise.id))
    if kinds & {*SLOW, "microwave"} or any(s.own_appliance for s in one.steps):
        yield Way("another-circuit", 0, search.mend("another-circuit"))
    if OVEN in kinds:
        yield Way("borrow-oven", 0, search.mend("borrow-oven"))
    just = math.ceil(dish.late_min / SLOT_MIN) * SLOT_MIN
    yield from _later(search, tuple(sorted({*LATER_MIN, just} if just <= MOST_LATER_MIN else LATER_MIN)))
    if len(search.potluck.promises) > 1:
        yield Way("leave-out", 0, search.mend("leave-out", promise.id))


def _earlier(search: _Search, one: Checked, arrives_at: datetime, dish: DishTimes) -> Iterator[Way]:
    """By what it is late, a little more, or as much as the dish would begin earlier if it were there all day."""
    free = replace(one.promise, arrives_at=None)
    others = tuple(free if p.id == free.id else p for p in search.potluck.promises)
    there = search.run(replace(search.potluck, promises=others))
    at = (
        min((s.start for s in there.steps if s.promise == free.id and s.at == "venue"), default=None) if there else None
    )
    if at is not None and at < arrives_at:
        most = math.ceil((arrives_at - at).total_seconds() / 60)
        just = math.ceil((dish.late_min or dish.unsafe_min) / SLOT_MIN) * SLOT_MIN
        for minutes in sorted({m for m in (just, just + 15, just + 45) if 0 < m < most} | {most}):
            by = arrives_at - timedelta(minutes=minutes)
            yield Way("arrive-earlier", minutes, search.mend("arrive-earlier", free.id, minutes), by)


def _later(search: _Search, choices: tuple[int, ...]) -> Iterator[Way]:
    for minutes in choices:
        yield Way("later", minutes, search.mend("later", minutes=minutes))


def _told(potluck: Potluck, one: Checked, dish: DishTimes, way: Way | None, found: Attempt, now: datetime) -> Conflict:
    """The conflict in facts: what is short, by what would mend it, else by what is in use when the dish would begin."""
    need, left = _need_and_left(potluck, one, now)
    rule = "off-heat"
    if one.promise.arrives_at is not None and one.promise.arrives_at >= potluck.starts_at and dish.late_min:
        rule = "arrives-late"
    elif dish.late_min:
        rule = "too-long" if need > left else "late"
    minutes = dish.late_min or dish.off_heat_min
    kind, by = (way.kind, way.minutes) if way else ("leave-out", 0)
    facts: dict[str, object] = {
        "dish": one.promise.dish, "minutes": minutes, "need": need, "left": left, "by": by,
        "again": reheated_in(potluck, one.promise, one.steps),
        "short": _SHORT.get(kind) or in_use(potluck, one, found.steps),
        "span": span_said(minutes), "need_span": span_said(need),
        "left_span": span_said(left), "by_span": span_said(by),
    }  # fmt: skip
    until = way.by if way and way.by else potluck.starts_at + timedelta(minutes=by)
    facts |= plain_facts(potluck, {"until": until})
    facts["that_day"] = "yes" if potluck.local(until).date() == potluck.local(potluck.starts_at).date() else "no"
    told = say_conflict((one.promise.id,), rule, kind, facts, fix_min=by)
    return replace(told, fix=replace(told.fix, saves_min=_saved(way, found)))


def _need_and_left(potluck: Potluck, one: Checked, now: datetime) -> tuple[int, int]:
    """(minutes of work on the day, minutes left for it): at the venue from its arrival on, where that is the tighter.

    Thawing is over by then.
    """
    thawed = max((n for n, s in enumerate(one.steps) if s.kind == "thaw"), default=-1)
    steps = one.steps[thawed + 1 :]
    up = max(now, wake_up(potluck))
    whole = sum(s.minutes for s in steps), _minutes_to(potluck, up)
    there = (
        sum(s.minutes for s in steps if s.at == "venue"),
        _minutes_to(potluck, max(up, one.promise.arrives_at or up)),
    )
    return min(whole, there, key=lambda p: p[1] - p[0])


def _minutes_to(potluck: Potluck, begin: datetime) -> int:
    return max(0, math.floor((potluck.starts_at - begin).total_seconds() / 60))


_SHORT = {"borrow-oven": "oven", "borrow-slow-cooker": "slow-cooker", "more-hands": "hands", "another-circuit": "power"}
