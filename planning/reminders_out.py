"""When what stands on the table has stood for its two hours (one in heat): TIME-01 and TIME-02."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

from planning.kitchen.result import Timeline
from planning.potluck import Potluck, Promise, Say
from planning.reminders_value import Reminder, facts_of
from planning.safety.clocks import WARN_BEFORE_MIN, clock
from planning.safety.standing_out import table_at
from planning.safety.words import perishable

TOLD_TOGETHER = timedelta(minutes=30)
"""What ends so shortly after another is told of with it, by the earlier end; common practice, no source."""


def out_limits(potluck: Potluck, timeline: Timeline | None, cooks_out: frozenset[str]) -> Iterator[Reminder]:
    """A quarter of an hour before the end: of each dish whose clock runs, and of all that nobody has told about."""
    for promise in potluck.promises:
        ticking = clock(potluck, promise)
        if ticking.since is None or ticking.deadline is None or promise.category in ("drink", "supplies"):
            continue
        due = max(ticking.deadline - timedelta(minutes=WARN_BEFORE_MIN), ticking.since + timedelta(seconds=1))
        facts = facts_of(potluck, dish=promise.dish, by=ticking.deadline, limit=ticking.limit_min)
        since = _stamp(ticking.since)
        yield Reminder("out-limit", "host", due, max(ticking.deadline, due) + timedelta(minutes=30),
                       Say("reminder-out-limit", facts), f"out-limit:{promise.id}:{since}")  # fmt: skip
    yield from _unsaid(potluck, timeline, cooks_out)


def _unsaid(potluck: Potluck, timeline: Timeline | None, cooks_out: frozenset[str]) -> Iterator[Reminder]:
    """Of dishes of which nobody has said that they are on the table: as if they had been since they were to be."""
    steps = timeline.doable if timeline is not None else ()
    ends: list[tuple[datetime, datetime, Promise]] = []
    for promise in potluck.promises:
        if promise.out_since is not None or not perishable(promise):
            continue
        ticking = clock(potluck, promise, steps)
        left = ticking.limit_min - ticking.spent_min
        if left > 0 and not cooks_out.issuperset((promise.guest, *promise.sharers)):
            at = table_at(potluck, promise, timeline)
            ends.append((at + timedelta(minutes=left), at, promise))
    ends.sort(key=lambda e: (e[0], e[2].id))
    while ends:
        first = ends[0][0]
        told = [e for e in ends if e[0] - first <= TOLD_TOGETHER]
        ends = ends[len(told) :]
        facts = facts_of(potluck, dishes=[p.dish for _, _, p in told], count=len(told), by=first,
                         since=min(at for _, at, _ in told))  # fmt: skip
        yield Reminder("out-limit", "host", first - timedelta(minutes=WARN_BEFORE_MIN), first + timedelta(minutes=30),
                       Say("reminder-out-limit-unsaid", facts), f"out-limit:unsaid:{_stamp(first)}")  # fmt: skip


def _stamp(moment: datetime) -> str:
    return moment.astimezone(UTC).strftime("%Y%m%dT%H%M%S")
