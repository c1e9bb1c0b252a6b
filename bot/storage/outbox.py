"""The courier's side: posts and what was sent.

pending -> claimed (by one process, for a while) -> sending (its call is being made) -> gone | given-up.
Posts of one chat leave in the order they were stored: only a chat's oldest waiting post can be
claimed, and one that must wait (`not_before`) holds up those behind it. Only what guards health goes before answers
that are ready but not begun: a talkative evening must not keep it waiting. Of what a process held when it
died only the posts whose call had begun are `doubtful`; the others are as good as new.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from functools import cache
from typing import Any

from sqlalchemy import String, and_, bindparam, delete, func, literal_column, or_, select, update
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.base import Base
from bot.storage.columns import Instant
from bot.storage.pace import Place, take_place
from bot.storage.records import message_row, post_from
from bot.storage.sql import ask, count, put, run
from bot.storage.values import Post, SentMessage

GUARD_HEALTH = ("out-limit", "thaw")

_p = t.post.c
_now = bindparam("p_now", type_=Instant)
_earlier = t.post.alias("earlier")
# Written into the statements' text, which is prepared once: a list of values would not be.
_HELD: list[Any] = [literal_column("'claimed'"), literal_column("'sending'")]
_WAITING: list[Any] = [literal_column("'pending'"), *_HELD]


def _ready_if(state: Any) -> Any:
    return or_(
        and_(state == "pending", or_(_p.not_before.is_(None), _p.not_before <= _now)),
        and_(state.in_(_HELD), _p.lease_until <= bindparam("p_lapsed", type_=Instant)),
    )


_ready = _ready_if(_p.state)
# The kinds a reminder's key begins with, see planning/reminders*.py.
_guards_health = or_(*(_p.reminder_key.like(literal_column(f"'{kind}:%'")) for kind in GUARD_HEALTH))
# The offset keeps PostgreSQL from joining all that wait with all that wait, which it does as long as it has not
# counted the table: it looks for an earlier one, by index, for each.
_first_of_chat = ~(
    select(_earlier.c.id)
    .where(_earlier.c.chat_id == _p.chat_id, _earlier.c.id < _p.id, _earlier.c.state.in_(_WAITING))
    .where(
        or_(
            _p.reminder_key.is_(None),
            ~_guards_health,
            _earlier.c.state != literal_column("'pending'"),
            _earlier.c.not_before > _now,
            _earlier.c.reminder_key.is_not(None),
        )
    )
    .limit(literal_column("1"))
    .offset(literal_column("0"))
    .exists()
)
_any_ready = select(_p.id).where(_ready).limit(1)


def _claim_of(ready: Any) -> Any:
    due = (
        select(_p.id)
        .where(ready, _first_of_chat)
        .order_by(_p.id)
        .limit(bindparam("p_limit"))
        .with_for_update(skip_locked=True)
        .cte("due")
    )
    return (
        update(t.post)
        .where(_p.id.in_(select(due.c.id)))
        .values(
            state="claimed",
            owner=bindparam("p_owner"),
            lease_until=bindparam("p_until", type_=Instant),
            doubtful=or_(_p.doubtful, _p.state == "sending"),
        )
        .returning(t.post)
    )


_READY = {
    "postgresql": _ready,
    # The plus keeps SQLite from collecting and sorting all that wait: it reads in the order of the ids and stops.
    "sqlite": _ready_if(literal_column("+post.state", String)),
}
_no_reminder = _p.reminder_key.is_(None)
_CLAIM = {
    **{(dialect, True): _claim_of(ready) for dialect, ready in _READY.items()},
    **{(dialect, False): _claim_of(and_(ready, _no_reminder)) for dialect, ready in _READY.items()},
}
"""By (dialect, whether reminders are asked for)."""
_waiting = select(t.post).where(_p.state.in_(_WAITING)).order_by(_p.id).limit(bindparam("p_limit"))
_next_pending = select(func.min(func.coalesce(_p.not_before, 0))).where(_p.state == "pending")
_count = select(_p.state, func.count()).group_by(_p.state)
_delete = delete(t.post).where(_p.id == bindparam("p_id"))
_requeue = (
    update(t.post)
    .where(_p.id == bindparam("p_id"), _p.state.in_(_WAITING))
    .values(
        state="pending",
        not_before=bindparam("p_before", type_=Instant),
        owner=None,
        lease_until=None,
        doubtful=False,
    )
)
_requeue_unmade = _requeue.values(tries=_p.tries - 1)
_give_back = (
    update(t.post)
    .where(_p.id == bindparam("p_id"), _p.owner == bindparam("p_owner"), _p.state == "claimed")
    .values(state="pending", not_before=bindparam("p_before", type_=Instant), owner=None, lease_until=None)
)


def _begin_of(*states: str) -> tuple[Any, Any]:
    """(whether it is ours to begin, locked; the beginning)."""
    held: list[Any] = [literal_column(f"'{s}'") for s in states]
    mine = (_p.id == bindparam("p_id"), _p.owner == bindparam("p_owner"), _p.state.in_(held))
    begin = (
        update(t.post)
        .where(*mine)
        .values(state="sending", tries=_p.tries + 1, lease_until=bindparam("p_until", type_=Instant))
        .returning(_p.tries)
    )
    return select(_p.id).where(*mine).with_for_update(), begin


_BEGIN = {False: _begin_of("claimed"), True: _begin_of("claimed", "sending")}
"""By whether an earlier beginning may have been written although that was not heard of."""
_release = (
    (update(t.post).where(_p.state == "claimed").values(state="pending", owner=None, lease_until=None), _p.owner),
    (update(t.post).where(_p.state == "sending").values(lease_until=_now), _p.owner),
    (update(t.reminder).where(t.reminder.c.state == "sending").values(lease_until=_now), t.reminder.c.owner),
    (
        update(t.place).where(t.place.c.board_owner.is_not(None)).values(board_owner=None, board_lease_until=None),
        t.place.c.board_owner,
    ),
)
_give_up = (
    update(t.post)
    .where(_p.id == bindparam("p_id"))
    .values(state="given-up", why=bindparam("p_why"), owner=None, lease_until=None)
)
_given_up = (
    select(t.post)
    .where(_p.chat_id == bindparam("p_chat"), _p.state == "given-up")
    .order_by(_p.id.desc())
    .limit(bindparam("p_limit"))
)


_given_up_of = (
    select(t.post)
    .where(_p.potluck_id == bindparam("p_potluck"), _p.state == "given-up")
    .order_by(_p.id.desc())
    .limit(bindparam("p_limit"))
)


class Outbox(Base):
    async def pending_posts(self, limit: int = 100) -> tuple[Post, ...]:
        """Posts that wait or are being sent, oldest first."""
        rows = await self._runner.glance(lambda conn: ask(conn, _waiting, {"p_limit": limit}))
        return tuple(post_from(r) for r in rows)

    async def claim_posts(
        self,
        now: datetime,
        owner: str,
        lease_until: datetime,
        limit: int = 50,
        *,
        reminders: bool = True,
        lapsed: datetime | None = None,
    ) -> tuple[Post, ...]:
        """Take posts that may leave now, at most one a chat (its oldest), oldest first. Without `reminders`
        chats whose oldest is one are passed over. `lapsed`: a lease that ended by then (default: now) binds
        nobody."""
        ready = {"p_now": now, "p_lapsed": lapsed or now}
        if not await self._runner.glance(lambda conn: ask(conn, _any_ready, ready)):
            return ()
        params = {**ready, "p_owner": owner, "p_until": lease_until, "p_limit": limit}
        rows = await self._writer.aside(
            lambda conn: ask(conn, _CLAIM[conn.dialect.name, reminders], params), lasting=False
        )
        return tuple(sorted((post_from(r) for r in rows), key=lambda p: p.id))

    async def mark_post_sent(self, post_id: int, message: SentMessage | None = None) -> None:
        """The post has arrived: forget it and, if given, remember the message it became."""
        await self.mark_posts_sent((post_id,), () if message is None else (message,))

    async def mark_posts_sent(self, post_ids: Iterable[int], messages: Iterable[SentMessage] = ()) -> None:
        ids, rows = [{"p_id": i} for i in post_ids], [message_row(m) for m in messages]

        def work(conn: Connection) -> None:
            run(conn, _delete, ids)
            put(conn, t.sent_message, rows)

        await self._writer.aside(work)

    async def requeue(
        self, post_id: int, not_before: datetime | None, owner: str | None = None, *, made: bool = True
    ) -> bool:
        """Give a post back, to leave at `not_before` or later. With `owner`, False and nothing
        written when the claim was lost meanwhile (another process may be sending it). Not `made`: its call was
        begun but surely not carried out, and does not count as a try."""
        params = {"p_id": post_id, "p_before": not_before}
        statement = _requeue if made else _requeue_unmade
        return await self._writer.aside(lambda conn: _as_owner(conn, statement, params, owner))

    async def give_back(self, post_id: int, owner: str, not_before: datetime | None) -> bool:
        """Let go of a claimed post whose call was not begun; what was doubtful before stays so."""
        params = {"p_id": post_id, "p_owner": owner, "p_before": not_before}
        return await self._writer.aside(lambda conn: bool(_run(conn, _give_back, params)), lasting=False)

    async def begin_post(
        self,
        post_id: int,
        owner: str,
        now: datetime,
        lease_until: datetime,
        place: Place | None = None,
        *,
        again: bool = False,
    ) -> int | datetime | None:
        """Write down that the call is made now. How often it has been begun; None when the claim was lost;
        an instant when replicas share the limits and `place` is not free before (nothing is written then).
        `again`: the last try ended in trouble, nobody knows whether it was written, and no call was made."""
        held = {"p_id": post_id, "p_owner": owner}
        params = {**held, "p_until": lease_until}
        shared = not self._runner.is_sqlite
        ours, begin = _BEGIN[again]

        def work(conn: Connection) -> int | datetime | None:
            if shared and place is not None:
                if not ask(conn, ours, held):
                    return None
                if (free := take_place(conn, place, now)) is not None:
                    return free
            return next((r.tries for r in ask(conn, begin, params)), None)

        return await self._writer.aside(work)

    async def give_up(self, post_id: int, why: str, owner: str | None = None) -> bool:
        """Stop trying; the post stays on record for the host. `why` is a text key. `owner` as above."""
        params = {"p_id": post_id, "p_why": why}
        return await self._writer.aside(lambda conn: _as_owner(conn, _give_up, params, owner))

    async def cut_waits(self, now: datetime, longest_lease: datetime) -> None:
        """After a wall clock was set back: nothing waits for an instant it had already reached. Posts may
        leave at once, leases end at `longest_lease` at the latest; reminders keep their due times."""

        def work(conn: Connection) -> None:
            conn.execute(update(t.post).where(_p.state == "pending", _p.not_before > now).values(not_before=now))
            for table, lease in ((t.post, "lease_until"), (t.reminder, "lease_until"), (t.place, "board_lease_until")):
                column = table.c[lease]
                conn.execute(update(table).where(column > longest_lease).values({lease: longest_lease}))

        await self._writer.job(work)

    async def release_claims(self, now: datetime, owner: str, of: str | None = None) -> int:
        """What processes that are dead held is free at once: posts, reminders and boards of every owner but
        `owner` (with `of`: only of those whose name begins so). A call that had begun stays in doubt; a
        holder that lives after all is fenced. How many claims that were."""

        def work(conn: Connection) -> int:
            freed = 0
            for statement, held in _release:
                others = [held != owner] if of is None else [held != owner, held.startswith(of, autoescape=True)]
                freed += int(conn.execute(statement.where(*others), {"p_now": now}).rowcount)
            return freed

        return await self._writer.job(work)

    async def given_up(self, chat_id: int, limit: int = 20) -> tuple[Post, ...]:
        """What could not be delivered to a chat, newest first."""
        params = {"p_chat": chat_id, "p_limit": limit}
        rows = await self._runner.glance(lambda conn: list(conn.execute(_given_up, params)))
        return tuple(post_from(r) for r in rows)

    async def given_up_of(self, potluck_id: str, limit: int = 20) -> tuple[Post, ...]:
        """What of a potluck could not be delivered, to whatever chat; newest first."""
        params = {"p_potluck": potluck_id, "p_limit": limit}
        rows = await self._runner.glance(lambda conn: list(conn.execute(_given_up_of, params)))
        return tuple(post_from(r) for r in rows)

    async def queue_length(self) -> dict[str, int]:
        """How many posts are in each state."""
        rows = await self._runner.glance(lambda conn: list(conn.execute(_count)))
        return {row[0]: row[1] for row in rows}

    async def remember_message(
        self,
        chat_id: int,
        message_id: int,
        kind: str,
        potluck_id: str | None = None,
        reminder_key: str | None = None,
        at: datetime | None = None,
    ) -> None:
        """Remember what a sent message is about; without `at` it is never pruned."""
        row = message_row(SentMessage(chat_id, message_id, kind, potluck_id, reminder_key, at))
        await self._writer.aside(lambda conn: put(conn, t.sent_message, [row]))


def _as_owner(conn: Connection, statement: Any, params: dict[str, Any], owner: str | None) -> bool:
    if owner is None:
        return bool(_run(conn, statement, params))
    return bool(_run(conn, _if_held(statement), params | {"p_owner": owner}))


@cache
def _if_held(statement: Any) -> Any:
    return statement.where(_p.owner == bindparam("p_owner"), _p.state.in_(_HELD))


def _run(conn: Connection, statement: Any, params: dict[str, Any]) -> int:
    return count(conn, statement, params)
