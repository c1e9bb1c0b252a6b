"""What is frozen: how long it thaws by the rule, where a cook gave it less, and when it can no longer be done."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from planning.kitchen.result import Conflict, PlannedStep
from planning.kitchen.steps import Checked, say_conflict, span_said
from planning.kitchen.usual import HEAVIEST_LB
from planning.potluck import Answer, Potluck, Promise
from planning.safety.thaw import MOST_DAYS, cold_water_min, thaw_by, thaw_days
from planning.safety.wall_clock import plain_facts

DAY_MIN = 1440


def given_min(promise: Promise) -> float:
    """Minutes of thawing in the cook's own steps; 0 for none."""
    return sum(s.minutes for s in promise.heat or () if s.kind == "thaw" and s.minutes > 0)


def rule_min(promise: Promise) -> int:
    """Minutes the rule asks for (THAW-03); 0 for what is not frozen."""
    lb = promise.frozen_lb
    if lb is None or not math.isfinite(lb) or lb <= 0:
        return 0
    return min(thaw_days(lb), MOST_DAYS) * DAY_MIN


def longer_by(one: Checked) -> int:
    """Minutes by which a thaw among the steps is shorter than the rule; 0 where there is none."""
    given = given_min(one.promise)
    return max(0, math.ceil(rule_min(one.promise) - given)) if given > 0 else 0


def thaw_conflicts(potluck: Potluck, steps: Sequence[PlannedStep], now: datetime) -> Iterator[Conflict]:
    """One for each frozen dish with less time to thaw than the rule asks for, or none left for it.

    They warn and leave the timeline's status alone: by the plan it is moved to the refrigerator in time, or nobody
    knows whether it has been.
    """
    for promise in potluck.promises:
        guest = potluck.guest(promise.guest)
        by = thaw_by(potluck, promise, steps)
        lb = promise.frozen_lb
        # What is too heavy to be believed has a conflict of its own.
        if by is None or lb is None or lb > HEAVIEST_LB or (guest is not None and guest.answer is Answer.NO):
            continue
        given, days = given_min(promise), thaw_days(lb)
        facts: dict[str, object] = {
            "dish": promise.dish, "lb": lb, "days": days, "given": span_said(round(given)),
            "hours": math.ceil(cold_water_min(lb) / 30) / 2,
        }  # fmt: skip
        facts |= plain_facts(potluck, {"by": by})
        begun = any(s.promise == promise.id and s.kind == "thaw" and s.start <= now for s in steps)
        if by < now and not begun:
            water = by + timedelta(days=days) - timedelta(minutes=cold_water_min(lb))
            facts |= plain_facts(potluck, {"water": water})
            yield say_conflict((promise.id,), "thaw-late", "cold-water" if now <= water else "thawed", facts)
        elif 0 < given < rule_min(promise):
            yield say_conflict((promise.id,), "thaw-short", "thaw-longer", facts, fix_min=rule_min(promise))

