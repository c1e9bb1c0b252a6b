"""Food that stands out, and leftovers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from planning.kitchen.result import PlannedStep, Timeline
from planning.kitchen.usual import HEATING
from planning.potluck import Potluck, Promise
from planning.safety.clocks import HOT, Clock, clock, off_heat_min, stands_warm
from planning.safety.notes import BLOCK, NOTE, WARN, SafetyNote, note
from planning.safety.wall_clock import plain_facts
from planning.safety.words import perishable, source_of, words

LEFTOVER_DAYS = 3
"""LEFT-01 and STORE-01: three to four days; the shorter of the two."""


def out_notes(
    potluck: Potluck, promise: Promise, now: datetime, timeline: Timeline | None = None
) -> Iterator[SafetyNote]:
    """The clock of one dish: running, spent, or what it will be once it is on the table."""
    steps = timeline.doable if timeline is not None else ()
    ticking = clock(potluck, promise, steps)
    keeps = not perishable(promise)
    if promise.category in ("drink", "supplies") or (keeps and ticking.since is None):
        return
    spent = round(ticking.spent_min)
    facts: dict[str, object] = {"dish": promise.dish, "limit": ticking.limit_min, "spent": spent,
                                "assumed": "yes" if ticking.assumed_hot else "no"}  # fmt: skip
    if keeps:
        yield note(ticking.rule, NOTE, "out-keeps", facts, promise=promise.id)
    elif ticking.since is not None and ticking.deadline is not None:
        facts |= plain_facts(potluck, {"by": ticking.deadline})
        over = now >= ticking.deadline
        yield note(ticking.rule, BLOCK if over else WARN, "out-over" if over else "out-running", facts,
                   promise=promise.id, deadline=ticking.deadline)  # fmt: skip
    elif promise.out_min >= ticking.limit_min:
        yield note(ticking.rule, BLOCK, "out-spent", facts, promise=promise.id)
    elif off_heat_min(potluck, promise, steps, potluck.starts_at) + promise.out_min >= ticking.limit_min:
        yield _between(potluck, promise, steps, ticking, facts)
    else:
        at = table_at(potluck, promise, timeline)
        by = at + timedelta(minutes=ticking.limit_min - ticking.spent_min)
        facts |= plain_facts(potluck, {"by": by, "at": at})
        # Minutes that have passed ask for care now; those a plan foresees are only counted.
        yield note(
            ticking.rule, WARN if promise.out_min >= 1 else NOTE, "out-plan", facts, promise=promise.id, deadline=by
        )


def _between(
    potluck: Potluck, promise: Promise, steps: Sequence[PlannedStep], ticking: Clock, facts: dict[str, object]
) -> SafetyNote:
    """By the plan it would stand too long before it is served: kept hot, or chilled, until then."""
    ready = max(s.end for s in steps if s.promise == promise.id and s.kind in HOT)
    by = ready + timedelta(minutes=ticking.limit_min - max(0.0, promise.out_min))
    warm = promise.serve == "hot" or (promise.serve is None and stands_warm(promise))
    facts = facts | plain_facts(potluck, {"at": ready, "by": by}) | {"hot": "yes" if warm else "no"}
    return note(ticking.rule, BLOCK if warm else WARN, "out-between", facts, promise=promise.id, deadline=by)


def table_at(potluck: Potluck, promise: Promise, timeline: Timeline | None) -> datetime:
    """When a dish that is not out yet will be: at the start, or when it comes or is ready, if that is later."""
    ready = [d.serve_at for d in timeline.dishes if d.promise == promise.id] if timeline is not None else []
    came = [promise.arrives_at] if promise.arrives_at is not None else []
    return max([potluck.starts_at, *ready, *came])


def leftover_days(promise: Promise) -> tuple[int, str]:
    """(days in the refrigerator, rule): the shorter of the leftovers rule and the storage table."""
    for days, tag in ((1, "leftover-1"), (2, "leftover-2")):
        if found := words(promise, tag):
            return days, source_of(tag, found[0])
    return LEFTOVER_DAYS, "STORE-01"


def leftover_notes(potluck: Potluck) -> Iterator[SafetyNote]:
    """Into the refrigerator in time, in shallow containers, and for how long."""
    hours = clock(potluck, Promise("", "", "", "main")).limit_min // 60
    by = potluck.starts_at + timedelta(hours=hours)
    if any(perishable(p) for p in potluck.promises):
        facts = plain_facts(potluck, {"by": by, "hours": hours})
        yield note("LEFT-03", NOTE, "leftovers-chill", facts, deadline=by)
        yield note("COOL-06", NOTE, "leftovers-shallow", {"inches": 2})
        yield note("STORE-01", NOTE, "leftovers-days", {"days": LEFTOVER_DAYS})
    for promise in potluck.promises:
        days, rule = leftover_days(promise)
        if days < LEFTOVER_DAYS:
            yield note(rule, NOTE, "leftovers-short", {"dish": promise.dish, "days": days}, promise=promise.id)


def cooling_notes(potluck: Potluck, promise: Promise) -> Iterator[SafetyNote]:
    """A dish cooked ahead cools quickly: shallow, and in the refrigerator within two hours (COOL-08).

    The two stages of the Food Code (COOL-01, COOL-02) are slower; the consumer rule is the stricter one.
    """
    heats = [n for n, s in enumerate(promise.heat or ()) if s.kind in HEATING]
    if heats and any(s.kind == "chill" for s in (promise.heat or ())[heats[0] :]):
        yield note("COOL-08", NOTE, "cool-ahead", {"dish": promise.dish, "hours": 2, "inches": 2}, promise=promise.id)


def transport_notes(potluck: Potluck) -> Iterator[SafetyNote]:
    """Cold food travels cold and hot food hot; said once for all that is brought."""
    brought = [p for p in potluck.promises if p.guest != potluck.host and perishable(p)]
    if brought:
        yield note("TRANS-01", NOTE, "way-cold", {})
    if any(p.serve == "hot" for p in brought):
        yield note("TRANS-02", NOTE, "way-hot", {})


def cooling(hot_at: datetime) -> tuple[tuple[float, datetime], ...]:
    """(°F, by when) for food at 135 °F at `hot_at`: 70 °F in two hours, 41 °F in four more (COOL-01, COOL-02)."""
    return (70.0, hot_at + timedelta(hours=2)), (41.0, hot_at + timedelta(hours=6))
