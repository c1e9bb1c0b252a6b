"""A promise's steps, checked: what cannot be is said once, and what stands goes on to be planned."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import timedelta

from planning.kitchen.dial import HOTTEST_F, OVEN_LEAST_F, OVEN_MOST_F, likely_f, looks_like_celsius
from planning.kitchen.mend import elsewhere, reheated_in
from planning.kitchen.result import Conflict, Fix
from planning.kitchen.steps import (
    GRILL,
    HEATING,
    HOLD_F,
    KEEP_WARM,
    KINDS,
    MICROWAVE,
    NO_LENGTH,
    OVEN,
    SLOW,
    STOVE,
    Checked,
    draw,
    is_hot,
    last_heat,
    own_power,
    say_conflict,
    span_said,
    usable_watts,
)
from planning.kitchen.usual import HEAVIEST_LB, is_roast_turkey, pounds, steps_of
from planning.potluck import HeatStep, Kitchen, Potluck, Promise, Say

TOO_HEAVY = ("frozen-weight", "too-heavy")
"""Rules about a weight: the dish is planned all the same."""

LACKING = ("no-oven", "too-many-pans", "no-burner", "no-grill", "no-slow-cooker", "no-microwave", "no-hands",
           "nothing-to-hold-in", "no-outlet", "too-much-power")  # fmt: skip
"""Rules about what the kitchen does not have: the dish is planned as if it had, in no appliance."""

FAR_TOO_LATE = timedelta(hours=12)
"""An arrival so long after serving is a slip of the pen, not a late guest."""

LONGEST_MIN = 7 * 24 * 60

MOST_ROUNDS = 3
"""More are nobody's afternoon: others may bake a part; common practice, no source."""


def check(potluck: Potluck) -> tuple[tuple[Checked, ...], tuple[Conflict, ...]]:
    """Every promise with steps to plan, and one conflict for each fault found.

    A dish with a figure that cannot be is left out; one for which the kitchen lacks something is not.
    """
    good: list[Checked] = []
    conflicts: list[Conflict] = []
    for promise in potluck.promises:
        steps, source = steps_of(potluck, promise)
        if not steps and promise.frozen_lb is None:
            continue
        faults = _said_once(list(_faults(potluck, promise, steps)))
        conflicts.extend(faults)
        kept = tuple(n for n, s in enumerate(steps) if not _takes_no_time(s))
        if not kept or any(f.rule not in (*TOO_HEAVY, *LACKING) for f in faults):
            continue
        numbers = (*kept, len(steps)) if len(kept) < len(steps) else ()
        good.append(Checked(promise, tuple(_clean(steps[n]) for n in kept), is_hot(promise, steps), source, numbers))
    return tuple(good), tuple(_together(conflicts))


ALIKE = ("no-oven", "no-burner", "no-grill", "no-slow-cooker", "no-microwave", "no-hands", "nothing-to-hold-in",
         "no-outlet")  # fmt: skip
"""Rules that say the same of every dish: told once, of all of them."""


def _together(conflicts: list[Conflict]) -> Iterator[Conflict]:
    """One conflict for each thing the kitchen lacks altogether, with all dishes that need it.

    What helps most of them is its way out, and what else was found for some stands beside it, with their names.
    """
    for first in conflicts:
        if first.rule not in ALIKE:
            yield first
            continue
        same = [c for c in conflicts if c.rule == first.rule]
        if same[0] is first:
            yield first if len(same) == 1 else _joined(same)


def _joined(same: list[Conflict]) -> Conflict:
    by_kind: dict[str, list[Conflict]] = {}
    for one in same:
        by_kind.setdefault(one.fix.kind, []).append(one)
    most = sorted(by_kind.values(), key=len, reverse=True)
    fixes = [_for_several(some, partly=len(most) > 1) for some in most]
    why = Say(same[0].why.key, {**same[0].why.facts, **_of_several(same)})
    return Conflict(tuple(p for c in same for p in c.promises), same[0].rule, why, fixes[0], tuple(fixes[1:]))


def _of_several(same: list[Conflict]) -> dict[str, object]:
    return {"several": "yes", "dishes": [str(c.why.facts["dish"]) for c in same]}


def _for_several(same: list[Conflict], *, partly: bool) -> Fix:
    """The way out of all of them. `partly`: others have another."""
    fix = same[0].fix
    many = {"several": "yes"} if len(same) > 1 or partly else {}
    facts = {**fix.text.facts, **_of_several(same), **many}
    return replace(fix, text=Say(fix.text.key, facts), promises=tuple(p for c in same for p in c.promises))


def _said_once(faults: list[Conflict]) -> list[Conflict]:
    """What is to be said of one dish: its weight, and one that stops it, hands last: other ways spare them."""
    weights = [f for f in faults if f.rule in TOO_HEAVY]
    stops = sorted((f for f in faults if f.rule not in TOO_HEAVY), key=lambda f: f.rule == "no-hands")
    return weights + stops[:1]


def _takes_no_time(step: HeatStep) -> bool:
    """No minutes of what needs no heat: setting it down on the table, say. Nothing is planned for it."""
    return step.minutes == 0 and step.kind in NO_LENGTH


def _clean(step: HeatStep) -> HeatStep:
    return replace(step, hands_min=max(0, min(step.hands_min, step.minutes)), pans=max(1, step.pans))


def _bad(value: float | None) -> bool:
    return value is not None and not math.isfinite(value)


def _faults(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> Iterator[Conflict]:
    """At most one conflict a rule for this promise."""
    one, dish = (promise.id,), promise.dish
    if promise.frozen_lb is not None and (_bad(promise.frozen_lb) or promise.frozen_lb < 0):
        yield say_conflict(one, "frozen-weight", "correct", dish=dish, lb=str(promise.frozen_lb))
    elif promise.frozen_lb is not None and promise.frozen_lb > HEAVIEST_LB:
        yield say_conflict(one, "frozen-weight", "smaller", dish=dish, lb=promise.frozen_lb, most=HEAVIEST_LB)
    elif (pounds(promise) or 0) > HEAVIEST_LB and is_roast_turkey(promise):
        yield say_conflict(one, "too-heavy", "smaller", dish=dish, lb=pounds(promise), most=HEAVIEST_LB)
    if promise.arrives_at is not None and promise.arrives_at > potluck.starts_at + FAR_TOO_LATE:
        yield say_conflict(one, "arrives-late", "correct-arrival", dish=dish)
        return
    for number, step in enumerate(steps, start=1):
        facts: dict[str, object] = {"dish": dish, "number": number, "kind": step.kind}
        if step.kind not in KINDS:
            yield say_conflict(one, "unknown-kind", "correct", facts)
            return
        if not _takes_no_time(step) and (_bad(step.minutes) or not 0 < step.minutes <= LONGEST_MIN):
            yield say_conflict(one, "minutes", "correct", facts, minutes=_plain(step.minutes))
            return
        if step.at not in ("venue", "home"):
            yield say_conflict(one, "unknown-place", "correct", facts, at=step.at)
            return
        if fault := _temperature_fault(one, step, facts):
            yield fault
            return
    yield from _order_faults(promise, steps)
    yield from _equipment_faults(potluck, promise, steps)


def _plain(value: float) -> object:
    return value if math.isfinite(value) else str(value)


def _temperature_fault(one: tuple[str, ...], step: HeatStep, facts: dict[str, object]) -> Conflict | None:
    temp = step.temp_f
    if temp is None:
        return None
    if not math.isfinite(temp):
        return say_conflict(one, "temperature", "correct", facts, temp=str(temp))
    if step.kind == OVEN and temp > OVEN_MOST_F:
        likely = likely_f(step) or 0
        return say_conflict(one, "temperature-typo", "temperature" if likely else "correct", facts,
                            temp=round(temp), likely=likely)  # fmt: skip
    if looks_like_celsius(step):
        return say_conflict(one, "celsius", "temperature", facts, temp=round(temp), likely=likely_f(step) or 0)
    if step.kind == OVEN and temp < OVEN_LEAST_F:
        return say_conflict(one, "temperature", "correct", facts, temp=round(temp))
    if step.kind == KEEP_WARM and temp < HOLD_F:
        return say_conflict(one, "hold-too-cool", "hold-hotter", facts, temp=round(temp), least=round(HOLD_F))
    if not -40 <= temp <= HOTTEST_F:
        return say_conflict(one, "temperature", "correct", facts, temp=round(temp))
    return None


def _order_faults(promise: Promise, steps: tuple[HeatStep, ...]) -> Iterator[Conflict]:
    """Work at home after work at the venue, or a thaw after the heat, cannot be meant; said once for a dish."""
    venue = next((i for i, s in enumerate(steps) if s.at == "venue" and s.kind != "transport"), None)
    if venue is not None and any(s.at == "home" for s in steps[venue + 1 :]):
        yield say_conflict((promise.id,), "home-after-venue", "correct", dish=promise.dish)
        return
    heat = next((i for i, s in enumerate(steps) if s.kind in HEATING), None)
    if heat is not None and any(s.kind == "thaw" for s in steps[heat + 1 :]):
        yield say_conflict((promise.id,), "thaw-after-heat", "correct", dish=promise.dish)


def _equipment_faults(potluck: Potluck, promise: Promise, steps: tuple[HeatStep, ...]) -> Iterator[Conflict]:
    """What the venue does not have at all."""
    kitchen, one, seen = potluck.kitchen, (promise.id,), set()
    way, again = elsewhere(potluck, promise, steps), reheated_in(potluck, promise, steps)
    for number, step in enumerate(steps):
        if step.at != "venue" or step.kind in seen or _takes_no_time(step):
            continue
        facts: dict[str, object] = {"dish": promise.dish, "minutes": step.minutes, "again": again}
        fault: Conflict | None = None
        if own_power(step):
            fault = _power_fault(kitchen, one, step, facts, way)
        elif step.kind == OVEN:
            most = max((o.racks * o.pans_per_rack for o in kitchen.ovens), default=0)
            if most <= 0:
                fault = say_conflict(one, "no-oven", way, facts)
            elif step.pans > most:
                every = sum(max(0, o.racks * o.pans_per_rack) for o in kitchen.ovens)
                rounds = math.ceil(step.pans / every)
                facts |= {"pans": step.pans, "most": most, "ovens": len(kitchen.ovens), "rounds": rounds}
                facts["many"] = "yes" if rounds > MOST_ROUNDS else "no"
                facts["in_all"] = span_said(rounds * math.ceil(step.minutes))
                fault = say_conflict(one, "too-many-pans", "split", facts)
        elif step.kind == STOVE and kitchen.burners <= 0:
            fault = say_conflict(one, "no-burner", way, facts)
        elif step.kind == GRILL and kitchen.grills <= 0 and not step.own_appliance:
            fault = say_conflict(one, "no-grill", way, facts)
        elif step.kind in SLOW:
            fault = (_power_fault(kitchen, one, step, facts, way) if kitchen.slow_cookers
                     else say_conflict(one, "no-slow-cooker", "borrow-slow-cooker", facts))  # fmt: skip
        elif step.kind == MICROWAVE:
            fault = (_power_fault(kitchen, one, step, facts, way) if kitchen.microwaves
                     else say_conflict(one, "no-microwave", way, facts))  # fmt: skip
        elif step.kind == "prep" and kitchen.cooks <= 0:
            fault = say_conflict(one, "no-hands", "more-hands", facts)
        elif step.kind == KEEP_WARM and not _held_on_heat(kitchen, steps, number):
            powered = kitchen.slow_cookers and _power_fault(kitchen, one, step, facts, way) is None
            fault = None if powered else say_conflict(one, "nothing-to-hold-in", "borrow-slow-cooker", facts)
        if fault is None and step.hands_min > 0 and kitchen.cooks <= 0:
            fault = say_conflict(one, "no-hands", "more-hands", facts)
        if fault is not None:
            seen.add(step.kind)
            yield fault


def _held_on_heat(kitchen: Kitchen, steps: Sequence[HeatStep], number: int) -> bool:
    """Whether an oven has room to keep it warm, or it may stay on the burner it was cooked on."""
    if any(o.racks * o.pans_per_rack >= steps[number].pans for o in kitchen.ovens):
        return True
    return kitchen.burners > 0 and last_heat(steps, number) == STOVE


def _power_fault(kitchen: Kitchen, one: tuple[str, ...], step: HeatStep, facts: dict[str, object],
                 way: str) -> Conflict | None:  # fmt: skip
    if step.own_appliance and step.kind not in (OVEN, STOVE, *SLOW, MICROWAVE, KEEP_WARM):
        return None
    if step.watts is not None and step.watts < 0:
        return say_conflict(one, "watts", "correct", facts, watts=step.watts)
    with_outlets = [c for c in kitchen.circuits if c.outlets > 0]
    if not with_outlets:
        return say_conflict(one, "no-outlet", "another-circuit", facts)
    watts, most = draw(kitchen, step), max(usable_watts(c.amps, c.volts) for c in with_outlets)
    if watts > most:
        return say_conflict(one, "too-much-power", way, facts, watts=watts, most=most)
    return None
