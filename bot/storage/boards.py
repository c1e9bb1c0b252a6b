"""Boards that show less than is stored, and what became of them."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from sqlalchemy import bindparam, case, null, or_, select, update
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.base import Base
from bot.storage.columns import Instant
from bot.storage.pace import Place, take_place
from bot.storage.records import place_from
from bot.storage.sql import ask, count
from bot.storage.values import PotluckPlace

_boards = (
    select(t.place)
    .where(t.place.c.board_dirty_since.is_not(None))
    .order_by(t.place.c.board_dirty_since)
    .limit(bindparam("p_limit"))
)
_seen_mark = bindparam("p_seen", type_=Instant)
_board_sent = (
    update(t.place)
    .where(t.place.c.potluck_id == bindparam("p_id"))
    .values(
        board_message_id=bindparam("p_message"),
        board_pinned=bindparam("p_pinned"),
        board_owner=null(),
        board_lease_until=null(),
        board_dirty_since=case((t.place.c.board_dirty_since == _seen_mark, null()), else_=t.place.c.board_dirty_since),
    )
)
_board_sent_there = _board_sent.where(t.place.c.chat_id == bindparam("p_chat"))
_now = bindparam("p_now", type_=Instant)
_ready = (
    t.place.c.board_dirty_since.is_not(None),
    or_(t.place.c.board_lease_until.is_(None), t.place.c.board_lease_until <= _now),
)
_claim = (
    update(t.place)
    .where(t.place.c.potluck_id == bindparam("p_id"), *_ready)
    .values(board_owner=bindparam("p_owner"), board_lease_until=bindparam("p_until", type_=Instant))
)
_free = select(t.place.c.board_lease_until).where(t.place.c.potluck_id == bindparam("p_id"))
_release = (
    update(t.place)
    .where(t.place.c.potluck_id == bindparam("p_id"), t.place.c.board_owner == bindparam("p_owner"))
    .values(board_owner=null(), board_lease_until=null())
)


class Boards(Base):
    async def dirty_boards(self, limit: int = 1000) -> tuple[PotluckPlace, ...]:
        """Boards that show less than is stored, longest waiting first."""
        rows = await self._runner.glance(lambda conn: ask(conn, _boards, {"p_limit": limit}))
        return tuple(place_from(r) for r in rows)

    async def board_sent(
        self,
        potluck_id: str,
        message_id: int | None,
        pinned: bool,
        seen_dirty_since: datetime | None,
        chat_id: int | None = None,
    ) -> bool:
        """The board shows what was stored when it was rendered. It stays dirty if it was dirtied
        again since `seen_dirty_since` was read. With `chat_id`, False and nothing written when the
        potluck has moved to another chat meanwhile."""
        params: dict[str, Any] = {
            "p_id": potluck_id,
            "p_message": message_id,
            "p_pinned": pinned,
            "p_seen": seen_dirty_since,
        }
        if chat_id is not None:
            params["p_chat"] = chat_id
        statement = _board_sent if chat_id is None else _board_sent_there
        # Undone by a power loss, the board is at worst edited once more. A new board's id must not be lost.
        known = seen_dirty_since is not None
        return await self._writer.aside(lambda conn: bool(count(conn, statement, params)), lasting=not known)

    async def claim_board(
        self, potluck_id: str, owner: str, now: datetime, lease_until: datetime, place: Place | None = None
    ) -> datetime | None:
        """Take a dirty board to send, so that of several processes only one edits it. None: it is ours, until
        `board_sent` or `release_board` ends the claim or its lease does. An instant: somebody else has it till
        then, or replicas share the limits and `place` is free then; when it is not dirty any more, `now`."""
        released = {"p_id": potluck_id, "p_owner": owner}
        params = {**released, "p_now": now, "p_until": lease_until}
        shared = not self._runner.is_sqlite

        def work(conn: Connection) -> datetime | None:
            if not count(conn, _claim, params):
                held = [r.board_lease_until for r in ask(conn, _free, {"p_id": potluck_id})]
                ends: list[datetime] = [until for until in held if until is not None]
                return max([now, *ends])
            if shared and place is not None and (free := take_place(conn, place, now)) is not None:
                count(conn, _release, released)
                return free
            return None

        return await self._writer.aside(work, lasting=False)

    async def release_board(self, potluck_id: str, owner: str) -> bool:
        """Give a claimed board back as dirty as it is."""
        params = {"p_id": potluck_id, "p_owner": owner}
        return await self._writer.aside(lambda conn: bool(count(conn, _release, params)), lasting=False)
