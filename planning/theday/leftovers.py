"""What is left: what keeps how long, what must go, and what this potluck teaches about the next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from planning.potluck import CATEGORIES, Potluck, Promise
from planning.safety.clocks import clock
from planning.safety.standing_out import leftover_days
from planning.safety.words import perishable

DRY_DAYS = 7
"""What needs no cold is worth eating within a week: common practice, no source."""

STEP = 0.15
LEAST, MOST = 0.7, 1.4
"""How far one evening moves the portions of a category, and how far all evenings together may
(common practice, no source)."""


@dataclass(frozen=True)
class Leftover:
    """`keep_until` the last day in the refrigerator; `must_go` when it stood out too long; `rule` the row behind it.

    `perhaps`: nobody said when it came out, and reckoned as out since the start of the meal its time is over.
    `chill_by` (UTC): until then it may still go into the refrigerator; None where it went there or needs no cold.
    """

    promise: Promise
    keep_until: date
    days: int
    must_go: bool
    out_min: int
    rule: str
    perhaps: bool = False
    chill_by: datetime | None = None
    limit_min: int = 120


def leftovers(potluck: Potluck, now: datetime) -> tuple[Leftover, ...]:
    """Each dish that could be left. Days count from the day of the potluck; the shorter of two sources holds.

    A perishable dish of whose time on the table nobody told is reckoned as out since the start: the careful reading.
    """
    day = potluck.local(potluck.starts_at).date()
    found = []
    for promise in potluck.promises:
        if promise.category in ("drink", "supplies"):
            continue
        spoils = perishable(promise)
        told = not spoils or promise.out_since is not None or promise.out_min > 0 or now <= potluck.starts_at
        reckoned = promise if told else replace(promise, out_since=potluck.starts_at)
        ticking = clock(potluck, reckoned)
        out = ticking.limit_min - ticking.left_min(now)
        days, rule = leftover_days(promise) if spoils else (DRY_DAYS, "practice")
        over = spoils and out >= ticking.limit_min
        gone = over and told
        why = ticking.rule if gone else rule
        by = ticking.deadline if spoils and not over else None
        found.append(
            Leftover(
                promise,
                day + timedelta(days=days),
                days,
                gone,
                max(0, round(out)),
                why,
                over and not told,
                by,
                ticking.limit_min,
            )
        )
    return tuple(found)


def learned(potluck: Potluck) -> Mapping[str, float]:
    """The corrections for the next potluck: a category whose dishes ran out grows, one that came back shrinks.

    Of the dishes of a category, the share that ran out adds up to 15 %, the share that came back takes as much
    off; together with what was learned before it stays within 0.7 and 1.4. Nothing said changes nothing.
    """
    found = dict(potluck.corrections)
    for category in CATEGORIES:
        dishes = [p for p in potluck.promises if p.category == category]
        ran_out = sum(p.outcome == "ran-out" for p in dishes)
        came_back = sum(p.outcome == "came-back" for p in dishes)
        if not ran_out and not came_back:
            continue
        factor = found.get(category, 1.0) * (1 + STEP * (ran_out - came_back) / len(dishes))
        found[category] = round(min(MOST, max(LEAST, factor)), 4)
    return {c: f for c, f in found.items() if f != 1.0}
