"""The platform's flood limits, kept by all replicas of one database together.

One row a chat holds when its latest messages left; the row of chat 0 (which is nobody's) those of all
chats. A place is taken in the same transaction that says a call is about to be made, so replicas can't
take the same one. A database with one process (SQLite) needs none of this: its limits are in memory.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import bindparam, or_, select, update
from sqlalchemy.dialects.postgresql import insert
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.columns import Instant, from_micros, to_micros
from bot.storage.sql import ask, run

EVERYBODY = 0


@dataclass(frozen=True)
class Limit:
    """At most `most` in any span of `per_s` seconds."""

    most: int
    per_s: float


@dataclass(frozen=True)
class Place:
    """Room for one message in a chat: its own limits, and those of all chats together."""

    chat_id: int
    limits: tuple[Limit, ...]
    all_limits: tuple[Limit, ...]


_add = insert(t.pace).on_conflict_do_nothing()
_lock = (
    select(t.pace.c.chat_id, t.pace.c.taken)
    .where(or_(t.pace.c.chat_id == EVERYBODY, t.pace.c.chat_id == bindparam("p_chat")))
    # Everybody's row (0) first: groups are below it, private chats above, so replicas could meet crosswise.
    .order_by((t.pace.c.chat_id != EVERYBODY), t.pace.c.chat_id)
    .with_for_update()
)
_take = (
    update(t.pace)
    .where(t.pace.c.chat_id == bindparam("p_chat"))
    .values(taken=bindparam("p_taken"), at=bindparam("p_at", type_=Instant))
)


def free_at(taken: list[datetime], limits: Iterable[Limit], now: datetime) -> datetime:
    """The earliest instant, not before `now`, at which one more keeps every limit; `taken` rises."""
    at = now
    for limit in limits:
        if len(taken) >= limit.most:
            at = max(at, taken[-limit.most] + timedelta(seconds=limit.per_s))
    # A clock that was ahead of ours must not shut a chat for longer than the limit itself.
    return min(at, now + timedelta(seconds=max((limit.per_s for limit in limits), default=0.0)))


def take_place(conn: Connection, place: Place, now: datetime) -> datetime | None:
    """Take the place, or say when it is free (and take nothing)."""
    ids = (EVERYBODY, place.chat_id)
    found = _taken(conn, place.chat_id)
    if len(found) < len(ids):
        run(conn, _add, [{"chat_id": chat_id, "taken": [], "at": now} for chat_id in ids])
        found = _taken(conn, place.chat_id)
    limits = {EVERYBODY: place.all_limits, place.chat_id: place.limits}
    at = max(free_at(found[i], limits[i], now) for i in ids)
    if at > now:
        return at
    rows = []
    for chat_id in ids:
        kept = max(limit.most for limit in limits[chat_id])
        taken = sorted([*found[chat_id], now])[-kept:]
        rows.append({"p_chat": chat_id, "p_taken": [to_micros(x) for x in taken], "p_at": now})
    run(conn, _take, rows)
    return None


def _taken(conn: Connection, chat_id: int) -> dict[int, list[datetime]]:
    """When messages left, in this chat and in all; the rows are ours until the transaction ends."""
    return {row[0]: [from_micros(m) for m in row[1]] for row in ask(conn, _lock, {"p_chat": chat_id})}
