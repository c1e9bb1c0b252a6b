"""Replays a timeline minute by minute against every kitchen rule; shares no code with the planner.

The rules are those of the outside contract's paragraph on kitchens. `faults` gives one line for
each broken rule; none means the timeline keeps them all.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator
from datetime import datetime, time, timedelta
from itertools import pairwise

from planning.kitchen.result import PlannedStep, Timeline
from planning.potluck import HeatStep, Potluck, Promise

HEAT = {"oven", "stove", "slow-cooker-low", "slow-cooker-high", "microwave", "grill"}
PLUGGED = {"slow-cooker-low", "slow-cooker-high", "microwave"}


def faults(potluck: Potluck, timeline: Timeline, now: datetime) -> list[str]:
    return [*_chains(potluck, timeline, now), *_ovens(potluck, timeline, now), *_units(potluck, timeline),
            *_power(potluck, timeline), *_hands(potluck, timeline), *_off_heat(potluck, timeline)]  # fmt: skip


def last_waking(potluck: Potluck) -> datetime:
    """When the cook got up for the last time before serving."""
    up = time.fromisoformat(potluck.kitchen.awake[0])
    serving = potluck.starts_at.astimezone(potluck.zone)
    at = datetime.combine(serving.date(), up, potluck.zone)
    return at if at < serving else datetime.combine(serving.date() - timedelta(days=1), up, potluck.zone)


def _up_before(potluck: Potluck, moment: datetime) -> datetime:
    """When the cook got up before a moment."""
    if moment >= last_waking(potluck):
        return last_waking(potluck)
    up = time.fromisoformat(potluck.kitchen.awake[0])
    day = moment.astimezone(potluck.zone).date()
    at = datetime.combine(day, up, potluck.zone)
    return at if at <= moment else datetime.combine(day - timedelta(days=1), up, potluck.zone)


LACKING = {"no-oven", "too-many-pans", "no-burner", "no-grill", "no-slow-cooker", "no-microwave", "no-outlet",
           "too-much-power", "nothing-to-hold-in"}  # fmt: skip


def _lacking(timeline: Timeline) -> set[str]:
    """Dishes of which a conflict says that the kitchen has nothing for them: their steps may stand in nothing."""
    return {p for c in timeline.conflicts if c.rule in LACKING for p in c.promises}


def _given(promise: Promise, step: PlannedStep) -> HeatStep | None:
    steps = promise.heat or ()
    return steps[step.step] if step.step < len(steps) else None


def _minutes(start: datetime, end: datetime) -> float:
    return (end - start).total_seconds() / 60


def _chains(potluck: Potluck, timeline: Timeline, now: datetime) -> Iterator[str]:
    """Steps in order, none overlapping, as long as they take, after arrival and waking, over by serving."""
    by_promise: dict[str, list[PlannedStep]] = defaultdict(list)
    for step in timeline.steps:
        by_promise[step.promise].append(step)
    times = {d.promise: d for d in timeline.dishes}
    if set(times) != set(by_promise):
        yield "dishes and steps do not name the same promises"
    waking = last_waking(potluck)
    for name, steps in by_promise.items():
        promise = potluck.promise(name)
        assert promise is not None
        steps.sort(key=lambda s: s.step)
        numbers = [s.step for s in steps]
        wanted = [n for n, s in enumerate(promise.heat or ()) if s.minutes > 0]
        if numbers[: len(wanted)] != wanted:
            yield f"{name}: steps {numbers} are not those given"
        for before, after in pairwise(steps):
            if after.start < before.end:
                yield f"{name}: step {after.step} begins before step {before.step} ends"
        for step in steps:
            given = _given(promise, step)
            long = _minutes(step.start, step.end)
            if given is None:
                if step.kind != "keep-warm" or (step.temp_f or 0) < 140:
                    yield f"{name}: an added step that does not keep it hot"
            else:
                if given.kind != step.kind:
                    yield f"{name}: step {step.step} is {step.kind}, not {given.kind}"
                due = float(given.minutes)
                if step.kind == "oven" and not given.own_appliance and given.temp_f:
                    due = given.minutes * given.temp_f / (step.temp_f or math.inf)
                if not due - 1e-6 <= long <= due + 1:
                    yield f"{name}: step {step.step} takes {long} minutes, not {due}"
                before_it = [s for s in steps if s.step == step.step - 1]
                if step.kind == "rest" and before_it and step.start != before_it[0].end:
                    yield f"{name}: resting does not begin at once"
            if step.start < now:
                yield f"{name}: step {step.step} begins in the past"
            if (
                promise.arrives_at
                and step.at == "venue"
                and step.kind != "transport"
                and step.start < promise.arrives_at
            ):
                yield f"{name}: step {step.step} begins before arrival"
            wall = step.start.astimezone(potluck.zone).time()
            up, down = (time.fromisoformat(t) for t in potluck.kitchen.awake)
            if step.start < waking and not up <= wall <= down:
                yield f"{name}: step {step.step} begins while the cook sleeps"
            if step.start < waking and step.kind in HEAT and times[name].off_heat_min:
                yield f"{name}: heated on an earlier day"
        ready = max(s.end for s in steps)
        late = max(0.0, _minutes(potluck.starts_at, ready))
        told = times[name]
        if abs(late - told.late_min) > 0.5 or told.ready_at != ready:
            yield f"{name}: {late} minutes late, told {told.late_min}"


def _ovens(potluck: Potluck, timeline: Timeline, now: datetime) -> Iterator[str]:
    """Pans within racks, one set-point, close enough to each dish, gaps between set-points, preheating."""
    by_oven: dict[str, list[PlannedStep]] = defaultdict(list)
    for step in timeline.steps:
        if step.appliance and step.appliance.startswith("oven:"):
            by_oven[step.appliance].append(step)
        elif step.kind == "oven" and step.at == "venue" and not (step.appliance or "").startswith("own:"):
            if step.promise in _lacking(timeline):
                continue
            yield f"{step.promise}: an oven step without an oven"
    for name, steps in by_oven.items():
        oven = potluck.kitchen.ovens[int(name.split(":")[1])]
        for step in steps:
            promise = potluck.promise(step.promise)
            given = _given(promise, step) if promise else None
            if step.temp_f is None:
                yield f"{name}: no set-point for {step.promise}"
            elif given is not None and given.kind == "oven" and given.temp_f is not None:
                apart = abs(step.temp_f - given.temp_f)
                if apart > 25 or (apart > 0 and not given.movable):
                    yield f"{name}: {step.temp_f} °F is too far from {given.temp_f} of {step.promise}"
            if given is not None and given.kind == "oven" and step.pans != given.pans:
                yield f"{name}: {step.pans} pans told, {given.pans} given"
            if _minutes(max(now, _up_before(potluck, step.start)), step.start) < 15:
                yield f"{name}: no time to preheat for {step.promise}"
        for minute in _minutes_of(steps):
            inside = [s for s in steps if s.start <= minute < s.end]
            if sum(s.pans for s in inside) > oven.racks * oven.pans_per_rack:
                yield f"{name}: too many pans at {minute}"
            if len({s.temp_f for s in inside}) > 1:
                yield f"{name}: two set-points at {minute}"
        for a in steps:
            for b in steps:
                if a.end <= b.start and a.temp_f != b.temp_f:
                    need = 5 + abs((a.temp_f or 0) - (b.temp_f or 0)) / 10
                    if _minutes(a.end, b.start) < need - 1e-6:
                        yield f"{name}: {_minutes(a.end, b.start)} minutes from {a.temp_f} to {b.temp_f} °F"


def _minutes_of(steps: list[PlannedStep]) -> Iterator[datetime]:
    """Every moment at which what is going on can change."""
    yield from sorted({s.start for s in steps} | {s.end - timedelta(minutes=1) for s in steps})


def _units(potluck: Potluck, timeline: Timeline) -> Iterator[str]:
    """Burners, grills, slow cookers, microwaves: numbered within what there is, one dish each."""
    kitchen = potluck.kitchen
    count = {"burner": kitchen.burners, "grill": kitchen.grills, "slow-cooker": len(kitchen.slow_cookers),
             "microwave": len(kitchen.microwaves), "oven": len(kitchen.ovens)}  # fmt: skip
    expected = {"stove": "burner", "grill": "grill", "microwave": "microwave", "slow-cooker-low": "slow-cooker",
                "slow-cooker-high": "slow-cooker", "oven": "oven"}  # fmt: skip
    in_use: dict[str, list[PlannedStep]] = defaultdict(list)
    for step in timeline.steps:
        place = step.appliance or ""
        if place.startswith("own:") or (not place and step.promise in _lacking(timeline)):
            continue
        group, _, number = place.partition(":")
        if step.at == "venue" and step.kind in expected and group != expected[step.kind]:
            yield f"{step.promise}: {step.kind} in {place or 'nothing'}"
        if group in count:
            if not number.isdigit() or int(number) >= count[group]:
                yield f"{step.promise}: there is no {place}"
            if group != "oven":
                in_use[place].append(step)
    for place, steps in in_use.items():
        for i, a in enumerate(steps):
            for b in steps[i + 1 :]:
                if a.start < b.end and b.start < a.end:
                    yield f"{place}: {a.promise} and {b.promise} at once"


def _power(potluck: Potluck, timeline: Timeline) -> Iterator[str]:
    """Watts within 80 % of each circuit, plugs within its outlets."""
    for step in timeline.steps:
        plugged_in = step.kind in PLUGGED or (step.appliance or "") in ("own:oven", "own:stove", "own:keep-warm")
        lacking = step.appliance is None and step.promise in _lacking(timeline)
        if step.at == "venue" and plugged_in and step.circuit is None and not lacking:
            yield f"{step.promise}: {step.kind} is not plugged in"
    for number, circuit in enumerate(potluck.kitchen.circuits):
        plugged = [s for s in timeline.steps if s.circuit == number]
        for minute in _minutes_of(plugged):
            on = [s for s in plugged if s.start <= minute < s.end]
            if sum(s.watts for s in on) > 0.8 * circuit.amps * circuit.volts + 1e-6:
                yield f"circuit {number}: {sum(s.watts for s in on)} W at {minute}"
            if len(on) > circuit.outlets:
                yield f"circuit {number}: {len(on)} plugs at {minute}"


def _hands(potluck: Potluck, timeline: Timeline) -> Iterator[str]:
    """Every preparation and touch at the venue has somebody for it."""
    busy: list[tuple[datetime, datetime]] = []
    for step in timeline.steps:
        promise = potluck.promise(step.promise)
        given = _given(promise, step) if promise else None
        if given is None or step.at != "venue" or step.kind == "transport":
            continue
        minutes = given.minutes if given.kind == "prep" else min(given.hands_min, given.minutes)
        if minutes > 0:
            busy.append((step.start, step.start + timedelta(minutes=minutes)))
    if potluck.kitchen.cooks <= 0 and any(c.rule == "no-hands" for c in timeline.conflicts):
        return
    for start, _ in busy:
        if sum(a <= start < b for a, b in busy) > potluck.kitchen.cooks:
            yield f"hands: too few at {start}"


def _off_heat(potluck: Potluck, timeline: Timeline) -> Iterator[str]:
    """A dish served hot is off heat at most 30 minutes, or it is told by how much more."""
    for told in timeline.dishes:
        promise = potluck.promise(told.promise)
        assert promise is not None
        if promise.serve != "hot":
            continue
        mine = [s for s in timeline.steps if s.promise == told.promise]
        hot = [s.end for s in mine if s.kind in HEAT or (s.kind == "keep-warm" and (s.temp_f or 140) >= 140)]
        if not hot:
            continue
        off = _minutes(max(hot), max(potluck.starts_at, told.ready_at))
        if abs(max(0.0, off - 30) - told.unsafe_min) > 0.5:
            yield f"{told.promise}: off heat {off} minutes, {told.unsafe_min} told beyond the limit"
