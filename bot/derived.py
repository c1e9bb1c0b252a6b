"""The reminders a potluck should have now, without losing those that are due but still wait to be sent."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from datetime import datetime, timedelta

from bot.storage.store import Store
from planning.kitchen import Timeline
from planning.potluck import Guest, Potluck
from planning.reminders import Reminder, ahead, cooks_out, personal, shared
from planning.reminders_told import told_again

CATCH_UP = timedelta(hours=18)
"""How long after its time a waiting reminder is kept when the rest is derived anew (the bot was down)."""

COOKING = timedelta(hours=36)
"""So long before the start the first cook may have been told to begin; what was told is looked up from then on."""

_BUT_GUESTS = tuple(f.name for f in fields(Potluck) if f.name != "guests")


@dataclass(frozen=True)
class _Known:
    """What was derived of a potluck; `each` by guest id."""

    potluck: Potluck
    timeline: Timeline | None
    shared: tuple[Reminder, ...]
    each: Mapping[str, tuple[Reminder, ...]]


class Derived:
    """Derives reminders and keeps the last ones of `most` potlucks: most changes are one guest's answer,
    and then only that guest's reminders are derived again."""

    def __init__(self, store: Store, most: int = 500) -> None:
        self._store = store
        self._most = most
        self._known: dict[str, _Known] = {}

    async def reminders(self, potluck: Potluck, timeline: Timeline | None, now: datetime) -> tuple[Reminder, ...]:
        """Everything ahead, and of what is due already only what has not been sent yet.

        What was sent comes again only when its time has moved later by more than half an hour.
        """
        found = ahead(self.whole(potluck, timeline), now - CATCH_UP)
        if found and (found[0].due_at <= now or potluck.starts_at - now < COOKING):
            rows = await self._store.reminders_of(potluck.id)
            found = told_again(found, {row.key: row.due_at for row in rows if row.state == "sent"})
            waiting = {row.key for row in rows if row.state == "pending"}
            found = tuple(r for r in found if r.due_at > now or r.key in waiting)
        return found

    def whole(self, potluck: Potluck, timeline: Timeline | None) -> list[Reminder]:
        """All of a potluck's reminders, past ones too, in no order."""
        known = self._known.pop(potluck.id, None)
        if known is not None and known.timeline is timeline and _only_what_guests_said(known.potluck, potluck):
            pairs = zip(known.potluck.guests, potluck.guests, strict=True)
            changed = [new for old, new in pairs if old is not new and old != new]
            found = _Known(potluck, timeline, known.shared, {**known.each, **_each(potluck, timeline, changed)})
        else:
            found = _Known(potluck, timeline, shared(potluck, timeline), _each(potluck, timeline, potluck.guests))
        self._known[potluck.id] = found
        if len(self._known) > self._most:
            del self._known[next(iter(self._known))]
        return [*found.shared, *(r for theirs in found.each.values() for r in theirs)]


def _only_what_guests_said(before: Potluck, after: Potluck) -> bool:
    """Nothing else differs, and they are the same people in the same order."""
    if [(g.id, g.name) for g in before.guests] != [(g.id, g.name) for g in after.guests]:
        return False
    if cooks_out(before) != cooks_out(after):
        return False
    return all((old := getattr(before, n)) is (new := getattr(after, n)) or old == new for n in _BUT_GUESTS)


def _each(potluck: Potluck, timeline: Timeline | None, guests: Sequence[Guest]) -> dict[str, tuple[Reminder, ...]]:
    each: dict[str, tuple[Reminder, ...]] = {g.id: () for g in guests}
    for reminder in personal(potluck, timeline, guests):
        # What the host is told of somebody belongs to whom it is about: the end of its key.
        about = reminder.to if reminder.to in each else reminder.key.partition(":")[2]
        each[about] += (reminder,)
    return each
