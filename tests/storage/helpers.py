"""Small builders for storage's tests."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from typing import Any

from bot.storage import Batch, CommitResult, PotluckPlace, Store, Stored
from planning.potluck import Answer, Guest, Potluck, Promise, Say

NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)
CHAT = -1009000000001


def later(**how: float) -> datetime:
    return NOW + timedelta(**how)


def potluck(potluck_id: str = "p1", guests: int = 3, **fields: Any) -> Potluck:
    people = tuple(Guest(str(i), f"Guest{i}", Answer.YES) for i in range(1, guests + 1))
    return replace(Potluck(potluck_id, later(days=8), "America/Chicago", host="1", guests=people), **fields)


def with_guest(p: Potluck, guest_id: str, **fields: Any) -> Potluck:
    return replace(p, guests=tuple(replace(g, **fields) if g.id == guest_id else g for g in p.guests))


def with_promise(p: Potluck, promise: Promise) -> Potluck:
    return replace(p, promises=(*p.promises, promise))


async def stored(store: Store, p: Potluck | None = None, chat_id: int = CHAT, **place: Any) -> Stored:
    p = p or potluck()
    await store.commit(Batch(NOW, new_potlucks=((p, PotluckPlace(p.id, chat_id, **place)),)))
    found = await store.potluck(p.id)
    assert found is not None
    return found


async def change(store: Store, before: Stored, after: Potluck, **batch: Any) -> CommitResult:
    return await store.commit(Batch(NOW, changed=((before, after),), **batch))


END = later(days=9)


@dataclass(frozen=True)
class Reminder:
    """What planning's reminders look like to storage."""

    key: str
    due_at: datetime = NOW
    to: str = "group"
    kind: str = "bring"
    expires_at: datetime = END
    about: Say = field(default_factory=lambda: Say("bring", {"n": 1}))
