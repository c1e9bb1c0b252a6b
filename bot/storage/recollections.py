"""What was said a little while ago: rows and back, and how they come and go.

They are kept by chat and person and not in any process, so that the next message is understood though another
process takes it.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from sqlalchemy import BigInteger, String, bindparam, delete, or_, select, update
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.base import Base
from bot.storage.codec import encode
from bot.storage.columns import Instant, Words
from bot.storage.sql import ask, put, run
from bot.storage.values import Batch, Recollection, RecollectionKey

CHATS_OWN = 0
"""Stands for the person where something is of a chat as a whole; nobody's id."""
MOST_READ = 200
"""Of one chat and person, the newest; far more than the kinds there are."""

_its = t.recollection.c
_in_chat = (_its.chat_id == bindparam("p_chat", type_=BigInteger), _its.until > bindparam("p_now", type_=Instant))
_mine = (
    select(t.recollection)
    .where(*_in_chat, or_(_its.person_id == bindparam("p_person", type_=BigInteger), _its.person_id == CHATS_OWN))
    .order_by(_its.at.desc(), _its.about)
    .limit(MOST_READ)
)
_everyones = (
    select(t.recollection)
    .where(*_in_chat, _its.kind == bindparam("p_kind", type_=String))
    .order_by(_its.at.desc(), _its.person_id, _its.about)
    .limit(bindparam("p_most", type_=BigInteger))
)
_gone = delete(t.recollection).where(
    _its.chat_id == bindparam("p_chat", type_=BigInteger),
    _its.person_id == bindparam("p_person", type_=BigInteger),
    _its.kind == bindparam("p_kind", type_=String),
    _its.about == bindparam("p_about", type_=Words),
)


def _row(r: Recollection) -> dict[str, Any]:
    return {
        "chat_id": r.chat_id,
        "person_id": r.person_id,
        "kind": r.kind,
        "about": r.about,
        "value": encode(r.value),
        "potluck_id": r.potluck_id,
        "at": r.at,
        "until": r.until,
    }


def _from(r: Any) -> Recollection:
    return Recollection(r.chat_id, r.person_id, r.kind, r.value, r.at, r.until, r.about, r.potluck_id)


class Recollections(Base):
    async def recollections(self, chat_id: int, person_id: int, now: datetime) -> tuple[Recollection, ...]:
        """What still counts of one person in a chat, and of the chat itself, newest first."""
        params = {"p_chat": chat_id, "p_now": now, "p_person": person_id}
        return tuple(_from(r) for r in await self._runner.glance(lambda conn: ask(conn, _mine, params)))

    async def recollections_of_all(self, chat_id: int, kind: str, now: datetime, most: int) -> tuple[Recollection, ...]:
        """What still counts of one kind, whoever's in a chat, newest first."""
        params = {"p_chat": chat_id, "p_now": now, "p_kind": kind, "p_most": most}
        return tuple(_from(r) for r in await self._runner.glance(lambda conn: ask(conn, _everyones, params)))


def write_recollections(conn: Connection, batches: Sequence[Batch]) -> None:
    """The last word of each batch counts; rows sorted, as in every table."""
    last: dict[RecollectionKey, Recollection | None] = {}
    for batch in batches:
        if batch.recollections or batch.let_go:
            last.update(dict.fromkeys(batch.let_go))
            last.update({r.key: r for r in batch.recollections})
    if last:
        put(conn, t.recollection, [_row(r) for key in sorted(last) if (r := last[key]) is not None])
        names = ("p_chat", "p_person", "p_kind", "p_about")
        run(conn, _gone, [dict(zip(names, key, strict=True)) for key in sorted(last) if last[key] is None])


def move_recollections(conn: Connection, old_id: int, new_id: int) -> None:
    """To the supergroup a group became; what is newer there stays."""
    there = {(r.person_id, r.kind, r.about) for r in conn.execute(select(t.recollection).where(_its.chat_id == new_id))}
    for r in list(conn.execute(select(t.recollection).where(_its.chat_id == old_id))):
        here = (_its.chat_id == old_id, _its.person_id == r.person_id, _its.kind == r.kind, _its.about == r.about)
        if (r.person_id, r.kind, r.about) in there:
            conn.execute(delete(t.recollection).where(*here))
        else:
            conn.execute(update(t.recollection).where(*here).values(chat_id=new_id))
