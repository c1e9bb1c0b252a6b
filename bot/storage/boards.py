"""Boards that show less than is stored, and what became of them."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from sqlalchemy import bindparam, case, null, or_, select, update

from bot.storage import schema as t
from bot.storage.base import Base
from bot.storage.columns import Instant
from bot.storage.records import place_from
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
_any_ready = select(t.place.c.potluck_id).where(*_ready).limit(1)
_due = (
    select(t.place.c.potluck_id)
    .where(*_ready)
    .order_by(t.place.c.board_dirty_since, t.place.c.potluck_id)
    .limit(bindparam("p_limit"))
    .with_for_update(skip_locked=True)
    .cte("due")
)
_claim = (
    update(t.place)
    .where(t.place.c.potluck_id.in_(select(_due.c.potluck_id)))
    .values(board_owner=bindparam("p_owner"), board_lease_until=bindparam("p_until", type_=Instant))
    .returning(t.place)
)
_release = (
    update(t.place)
    .where(t.place.c.potluck_id == bindparam("p_id"), t.place.c.board_owner == bindparam("p_owner"))
    .values(board_owner=null(), board_lease_until=null())
)


def _by_dirt(place: PotluckPlace) -> tuple[datetime | None, str]:
    return place.board_dirty_since, place.potluck_id


class Boards(Base):
    async def dirty_boards(self, limit: int = 1000) -> tuple[PotluckPlace, ...]:
        """Boards that show less than is stored, longest waiting first."""
        rows = await self._runner.glance(lambda conn: list(conn.execute(_boards, {"p_limit": limit})))
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
        return await self._writer.job(lambda conn: bool(conn.execute(statement, params).rowcount))

    async def claim_boards(
        self, now: datetime, owner: str, lease_until: datetime, limit: int = 100
    ) -> tuple[PotluckPlace, ...]:
        """Take dirty boards to send, longest waiting first, so that of several processes only one
        edits a board. `board_sent` or `release_board` ends the claim, else its lease does."""
        if await self._runner.glance(lambda conn: conn.execute(_any_ready, {"p_now": now}).first()) is None:
            return ()
        params = {"p_now": now, "p_owner": owner, "p_until": lease_until, "p_limit": limit}
        rows = await self._writer.job(lambda conn: list(conn.execute(_claim, params)))
        return tuple(sorted((place_from(r) for r in rows), key=_by_dirt))

    async def release_board(self, potluck_id: str, owner: str) -> bool:
        """Give a claimed board back as dirty as it is."""
        params = {"p_id": potluck_id, "p_owner": owner}
        return await self._writer.job(lambda conn: bool(conn.execute(_release, params).rowcount))
