"""Thawing, slow cookers, reheating, holding and cooking through."""

from __future__ import annotations

import math
from collections.abc import Iterator
from datetime import datetime, timedelta

from planning.kitchen.result import Timeline
from planning.kitchen.steps import HEATING, HOLD_F, KEEP_WARM, OVEN, SLOW, is_hot
from planning.kitchen.usual import likely_steps
from planning.kitchen.volume import quarts
from planning.potluck import HeatStep, Potluck, Promise
from planning.safety.notes import BLOCK, NOTE, WARN, SafetyNote, note
from planning.safety.thaw import MOST_DAYS, cold_water_min, thaw_by, thaw_days
from planning.safety.wall_clock import plain_facts
from planning.safety.words import has

REHEAT_OVEN_F = 325
SHORT_SLOW_MIN = 120
"""A slow cooker that runs for less warms up rather than cooks; common practice, no source."""


def thaw_notes(potluck: Potluck, promise: Promise, now: datetime, timeline: Timeline | None) -> Iterator[SafetyNote]:
    """In the refrigerator by a day, else in cold water by an hour, else not at all."""
    steps = timeline.doable if timeline is not None else ()
    latest = thaw_by(potluck, promise, steps)
    lb = promise.frozen_lb
    if latest is None or lb is None:
        return
    needed = latest + timedelta(days=min(thaw_days(lb), MOST_DAYS))
    facts: dict[str, object] = {"dish": promise.dish, "lb": lb, "days": thaw_days(lb)}
    if now <= latest:
        yield note("THAW-03", NOTE, "thaw-fridge", facts | plain_facts(potluck, {"by": latest}),
                   promise=promise.id, deadline=latest)  # fmt: skip
        return
    water_by = needed - timedelta(minutes=cold_water_min(lb))
    facts |= plain_facts(potluck, {"by": water_by, "hours": math.ceil(cold_water_min(lb) / 30) / 2})
    late = now > water_by
    yield note("THAW-05", BLOCK if late else WARN, "thaw-too-late" if late else "thaw-water", facts,
               promise=promise.id, deadline=water_by)  # fmt: skip


def slow_cooker_notes(potluck: Potluck, promise: Promise, timeline: Timeline | None) -> Iterator[SafetyNote]:
    """Not for reheating, not from frozen, not too full, not on warm."""
    steps = likely_steps(promise)
    slow = next((i for i, s in enumerate(steps) if s.kind in SLOW), None)
    facts: dict[str, object] = {"dish": promise.dish}
    warm_only = [s for s in steps if s.kind == KEEP_WARM] and not any(s.kind in HEATING for s in steps)
    if warm_only and any(s.kind in ("chill", "thaw") for s in steps):
        yield note("SLOW-06", BLOCK, "slow-warm", facts, promise=promise.id)
    if slow is None:
        return
    if reheated(promise, steps, slow):
        yield note("REHEAT-05", BLOCK, "slow-reheat", facts, promise=promise.id)
    elif not any(s.kind in HEATING for s in steps[:slow]) and steps[slow].minutes < SHORT_SLOW_MIN:
        yield note("REHEAT-05", WARN, "slow-short", facts | {"minutes": steps[slow].minutes}, promise=promise.id)
    if (promise.frozen_lb or 0) > 0 and not any(s.kind == "thaw" for s in steps[:slow]):
        yield note("SLOW-05", BLOCK, "slow-frozen", facts, promise=promise.id)
    if has(promise, "kidney"):
        dry = has(promise, "dry-bean") and not has(promise, "boiled-bean")
        if dry:
            yield note("SLOW-18", BLOCK, "kidney-dry", facts | {"minutes": 10}, promise=promise.id)
        elif not has(promise, "boiled-bean"):
            yield note("SLOW-18", WARN, "kidney-ask", facts | {"minutes": 10}, promise=promise.id)
    if has(promise, "big-cut"):
        yield note("SLOW-19", WARN, "slow-big", facts, promise=promise.id)
    yield from _fill_notes(potluck, promise, timeline)


def reheated(promise: Promise, steps: tuple[HeatStep, ...], slow: int) -> bool:
    """Whether the slow cooker would warm up something already cooked: cooked, then chilled; or called so."""
    heated = next((i for i, s in enumerate(steps[:slow]) if s.kind in HEATING), None)
    chilled = heated is not None and any(s.kind in ("chill", "thaw") for s in steps[heated:slow])
    return chilled or has(promise, "reheat")


def _fill_notes(potluck: Potluck, promise: Promise, timeline: Timeline | None) -> Iterator[SafetyNote]:
    """Between half and two thirds full (SLOW-02, SLOW-03)."""
    volume = quarts(promise.quantity)
    cookers = potluck.kitchen.slow_cookers
    own = any(s.own_appliance for s in promise.heat or () if s.kind in SLOW)
    if volume is None or not cookers or own:
        return
    sizes = sorted({c.quarts for c in cookers})
    for step in timeline.doable if timeline is not None else ():
        place = step.appliance or ""
        if step.promise == promise.id and place.startswith("slow-cooker:") and place[12:].isdecimal():
            number = int(place[12:])
            sizes = [cookers[number].quarts] if number < len(cookers) else sizes
    facts: dict[str, object] = {"dish": promise.dish, "volume": round(volume, 1), "size": sizes[-1]}
    if volume > sizes[-1] * 2 / 3 + 1e-6:
        yield note("SLOW-03", WARN, "slow-full", facts, promise=promise.id)
    elif volume < sizes[0] / 2 - 1e-6:
        yield note("SLOW-02", NOTE, "slow-empty", facts | {"size": sizes[0]}, promise=promise.id)


def hot_notes(potluck: Potluck, promise: Promise) -> Iterator[SafetyNote]:
    """Kept at 140 °F, reheated to 165 °F, the oven not below 325 °F for it, cooked through."""
    steps = likely_steps(promise)
    facts: dict[str, object] = {"dish": promise.dish}
    cool = next((s for s in steps if s.kind == KEEP_WARM and s.temp_f is not None and s.temp_f < HOLD_F), None)
    if cool is not None:
        yield note("HOLD-06", BLOCK, "hold-too-cool", facts | {"temp": cool.temp_f}, promise=promise.id)
    if is_hot(promise, steps) or promise.serve == "hot":
        yield note("HOLD-06", NOTE, "hold-hot", facts, promise=promise.id)
    first = next((i for i, s in enumerate(steps) if s.kind in HEATING), None)
    again = None
    if first is not None:
        rest = steps[first + 1 :]
        chilled = next((i for i, s in enumerate(rest) if s.kind == "chill"), None)
        if chilled is not None:
            again = next((s for s in rest[chilled:] if s.kind in HEATING), None)
    if again is None and has(promise, "reheat"):
        again = next((s for s in steps if s.kind in HEATING), None)
    if again is not None:
        rule, key = ("REHEAT-02", "reheat-boil") if has(promise, "sauce") else ("REHEAT-01", "reheat")
        yield note(rule, NOTE, key, facts, promise=promise.id)
        if again.kind == OVEN and again.temp_f is not None and again.temp_f < REHEAT_OVEN_F:
            yield note("REHEAT-04", WARN, "reheat-oven", facts | {"temp": again.temp_f}, promise=promise.id)
    elif first is not None:
        yield from cook_notes(promise)


COOK_RULES = (("poultry", "COOK-01"), ("stuffing", "COOK-11"), ("casserole", "COOK-14"), ("ground", "COOK-02"),
              ("egg", "COOK-12"), ("fish", "COOK-15"))  # fmt: skip
"""The first that fits gives the temperature: they stand from the highest to the lowest where a dish is several."""


def cook_notes(promise: Promise) -> Iterator[SafetyNote]:
    """The inside temperature to reach, by what the dish is called."""
    for tag, rule in COOK_RULES:
        if has(promise, tag):
            yield note(rule, NOTE, "cook-through", {"dish": promise.dish, "kind": tag}, promise=promise.id)
            return
