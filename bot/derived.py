"""The reminders a potluck should have now, without losing those that are due but still wait to be sent."""

from __future__ import annotations

from datetime import datetime, timedelta

from bot.storage.store import Store
from planning.kitchen import Timeline
from planning.potluck import Potluck
from planning.reminders import Reminder, reminders

CATCH_UP = timedelta(hours=18)
"""How long after its time a waiting reminder is kept when the rest is derived anew (the bot was down)."""


async def derive(store: Store, potluck: Potluck, timeline: Timeline | None, now: datetime) -> tuple[Reminder, ...]:
    """Everything ahead, and of what is due already only what has not been sent yet."""
    derived = reminders(potluck, timeline, now - CATCH_UP)
    if any(r.due_at <= now for r in derived):
        rows = await store.reminders_of(potluck.id)
        waiting = {row.key for row in rows if row.state == "pending"}
        derived = tuple(r for r in derived if r.due_at > now or r.key in waiting)
    return derived
