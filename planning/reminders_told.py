"""What people were told of already, told again only when it has moved far enough to matter."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from planning.reminders import Reminder

MOVED = timedelta(minutes=30)
"""Nobody is told a new time that is no further from the one they know; common practice, no source."""

MOVING = ("slow-cooker", "preheat", "swap", "leave", "thaw")
"""Kinds whose time follows the timeline."""


def told_again(derived: Iterable[Reminder], told: Mapping[str, datetime]) -> tuple[Reminder, ...]:
    """The reminders, where what was sent already comes again once it has moved later by more than `MOVED`.

    `told`: when each key that was sent was due. A second one has its time in its key, so that it comes once.
    """
    last: dict[str, datetime] = {}
    for key, due in told.items():
        first = key.partition("@")[0]
        last[first] = max(due, last.get(first, due))
    found: list[Reminder] = []
    for reminder in derived:
        before = last.get(reminder.key) if reminder.kind in MOVING else None
        if before is not None and reminder.due_at > before + MOVED:
            reminder = replace(reminder, key=f"{reminder.key}@{reminder.due_at.astimezone(UTC):%Y%m%dT%H%M}")
        found.append(reminder)
    return tuple(found)
