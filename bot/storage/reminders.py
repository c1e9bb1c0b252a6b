"""Reminders: rows derived from the plan, claimed with a lease, finished by who holds the claim.

pending -> sending (claimed) -> sent | skipped | failed; pending <-> withdrawn as the plan changes.
A claim that ran out can be claimed again and is then `doubtful`: the platform has no idempotency
key, so whether to send it once more is the courier's policy.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from sqlalchemy import and_, bindparam, func, or_, select, tuple_, update
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.base import Base
from bot.storage.columns import Instant
from bot.storage.records import reminder_from, reminder_row
from bot.storage.sql import ask, count, run
from bot.storage.values import FinishedReminder, ReminderLike, ReminderRow

_r = t.reminder.c


class ReminderSets:
    """The set last written for a potluck, so that an unchanged one costs nothing to write again.

    Right only at the revision it was written at: whoever replaces the set raises the revision.
    """

    def __init__(self, most: int = 1000) -> None:
        self._most = most
        self._known: dict[str, tuple[int, tuple[ReminderLike, ...]]] = {}
        self._staged: dict[str, tuple[int, tuple[ReminderLike, ...]]] = {}

    def before(self, potluck_id: str, revision: int | None) -> tuple[ReminderLike, ...] | None:
        known = self._known.get(potluck_id)
        return known[1] if known and revision is not None and known[0] == revision - 1 else None

    def stage(self, potluck_id: str, revision: int | None, reminders: tuple[ReminderLike, ...]) -> None:
        if revision is not None:
            self._staged[potluck_id] = (revision, reminders)

    def begin(self) -> None:
        self._staged = {}

    def committed(self) -> None:
        for potluck_id, entry in self._staged.items():
            self._known.pop(potluck_id, None)
            self._known[potluck_id] = entry
        while len(self._known) > self._most:
            del self._known[next(iter(self._known))]
        self._staged = {}


def _put(dialect: str) -> Any:
    maker: Any = postgresql.insert if dialect == "postgresql" else sqlite.insert
    statement = maker(t.reminder)
    new = {c.name: statement.excluded[c.name] for c in t.reminder.columns if c.name not in ("potluck_id", "key")}
    return statement.on_conflict_do_update(
        index_elements=["potluck_id", "key"], set_=new, where=or_(_r.state == "pending", _r.state == "withdrawn")
    )


_PUT = {name: _put(name) for name in ("sqlite", "postgresql")}
_withdraw = (
    update(t.reminder)
    .where(_r.potluck_id == bindparam("p_id"), _r.key == bindparam("p_key"), _r.state == "pending")
    .values(state="withdrawn")
)
# By potluck alone: told the state as well, SQLite looks through everybody's pending ones.
_stored = select(t.reminder).where(_r.potluck_id == bindparam("p_id"))


class ReminderWrites:
    """The pending sets of several potlucks, written together: one way to the database and back for all."""

    def __init__(self, conn: Connection, sets: ReminderSets) -> None:
        self._conn = conn
        self._sets = sets
        self._potlucks: set[str] = set()
        self._rows: list[dict[str, Any]] = []
        self._gone: list[dict[str, Any]] = []

    def replace(self, potluck_id: str, reminders: Sequence[ReminderLike], revision: int | None) -> None:
        """Make `reminders` the pending set. Unchanged rows are untouched, moved ones moved, absent ones
        withdrawn; what was sent, skipped or failed, or is being sent, stays as it is."""
        if potluck_id in self._potlucks:  # its second set of this transaction knows what the first one wrote
            self.write()
        self._potlucks.add(potluck_id)
        now = tuple(reminders)
        before = self._sets.before(potluck_id, revision)
        self._sets.stage(potluck_id, revision, now)
        if before is not None and (before is reminders or before == now):
            return
        keys = {r.key for r in now}
        if before is not None:
            old = {r.key: r for r in before}
            rows = [reminder_row(potluck_id, r) for r in now if old.get(r.key) != r]
            gone = [k for k in old if k not in keys]
        else:
            found = ask(self._conn, _stored, {"p_id": potluck_id})
            stored = {r.key: r for r in found if r.state == "pending"}
            rows = [row for r in now if not _same(stored.get(r.key), row := reminder_row(potluck_id, r))]
            gone = [k for k in stored if k not in keys]
        self._rows += rows
        self._gone += [{"p_id": potluck_id, "p_key": k} for k in gone]

    def write(self) -> None:
        if self._rows:
            run(self._conn, _PUT[self._conn.dialect.name], self._rows)
        if self._gone:
            run(self._conn, _withdraw, self._gone)
        self._rows, self._gone, self._potlucks = [], [], set()


_CONTENT = ("kind", "to", "due_at", "expires_at", "about_key", "about_facts")


def _same(stored: Any, row: dict[str, Any]) -> bool:
    return stored is not None and all(getattr(stored, c) == row[c] for c in _CONTENT)


_finish = (
    update(t.reminder)
    .where(
        _r.potluck_id == bindparam("p_id"),
        _r.key == bindparam("p_key"),
        _r.owner == bindparam("p_owner"),
        _r.state == "sending",
    )
    .values(state=bindparam("p_state"), message_id=bindparam("p_message"), lease_until=None)
)
_finish_nth = _finish.where(_r.tries == bindparam("p_tries"))


def finish_reminder(conn: Connection, f: FinishedReminder) -> bool:
    """False when the claim was lost meanwhile: then somebody else answers for it."""
    params = {
        "p_id": f.potluck_id,
        "p_key": f.key,
        "p_owner": f.owner,
        "p_state": f.state,
        "p_message": f.message_id,
    }
    if f.tries is not None:
        return bool(count(conn, _finish_nth, params | {"p_tries": f.tries}))
    return bool(count(conn, _finish, params))


_pending_due = and_(_r.state == "pending", _r.due_at <= bindparam("p_now", type_=Instant))
_expired = and_(_r.state == "sending", _r.lease_until <= bindparam("p_now", type_=Instant))
_ready = or_(_pending_due, _expired)


def _claim(ready: Any, first: Any) -> Any:
    """Each in the order of its own index: with both in one question, all that are due are read to find a few."""
    due = (
        select(_r.potluck_id, _r.key)
        .where(ready)
        .order_by(first)
        .limit(bindparam("p_limit"))
        .with_for_update(skip_locked=True)
        .cte("due")
    )
    return (
        update(t.reminder)
        .where(tuple_(_r.potluck_id, _r.key).in_(select(due.c.potluck_id, due.c.key)))
        .values(
            state="sending",
            owner=bindparam("p_owner"),
            lease_until=bindparam("p_until", type_=Instant),
            tries=_r.tries + 1,
            doubtful=_r.state == "sending",
        )
        .returning(t.reminder)
    )


_claim_pending = _claim(_pending_due, _r.due_at)
_claim_expired = _claim(_expired, _r.lease_until)
_any_due = select(_r.key).where(_ready).limit(1)
_next_pending = select(func.min(_r.due_at)).where(_r.state == "pending")
_next_lease = select(func.min(_r.lease_until)).where(_r.state == "sending")
_requeue = (
    update(t.reminder)
    .where(
        _r.potluck_id == bindparam("p_id"),
        _r.key == bindparam("p_key"),
        _r.owner == bindparam("p_owner"),
        _r.state == "sending",
    )
    .values(state="pending", due_at=bindparam("p_due", type_=Instant), lease_until=None, owner=None)
)
_renew = (
    update(t.reminder)
    .where(
        _r.potluck_id == bindparam("p_id"),
        _r.key == bindparam("p_key"),
        _r.owner == bindparam("p_owner"),
        _r.state == "sending",
    )
    .values(lease_until=bindparam("p_until", type_=Instant))
)
_of = select(t.reminder).where(_r.potluck_id == bindparam("p_id")).order_by(_r.due_at, _r.key)


class Reminders(Base):
    async def claim_reminders(
        self, now: datetime, owner: str, lease_until: datetime, limit: int = 50
    ) -> tuple[ReminderRow, ...]:
        """Take due reminders, before them those whose holder let the lease run out; earliest first.

        A row is handed to one owner only. It is the owner's until `lease_until`; expired ones
        (`expires_at`) are handed out too, so that they are finished as skipped and logged.
        """
        params = {"p_now": now, "p_owner": owner, "p_until": lease_until}
        if not await self._runner.glance(lambda conn: ask(conn, _any_due, {"p_now": now})):
            return ()

        def work(conn: Connection) -> list[Any]:
            again = ask(conn, _claim_expired, {**params, "p_limit": limit})
            left = limit - len(again)
            return [*again, *(ask(conn, _claim_pending, {**params, "p_limit": left}) if left > 0 else ())]

        # Undone by a power loss, they are claimed again: nothing leaves before the commit that ends the claim.
        rows = await self._writer.aside(work, lasting=False)
        return tuple(sorted((reminder_from(r) for r in rows), key=lambda r: (r.due_at, r.potluck_id, r.key)))

    async def finish_reminder(
        self,
        potluck_id: str,
        key: str,
        owner: str,
        state: str,
        message_id: int | None = None,
        tries: int | None = None,
    ) -> bool:
        """End a claim as sent, skipped or failed. False: the claim was lost, nothing was written.

        `tries` (of the claimed row) also tells two claims of the same owner apart.
        """
        done = FinishedReminder(potluck_id, key, owner, state, message_id, tries)
        return await self._writer.aside(lambda conn: finish_reminder(conn, done))

    async def requeue_reminder(self, potluck_id: str, key: str, owner: str, due_at: datetime) -> bool:
        """Give a claim back, to be sent at `due_at` or later (after a 429)."""
        params = {"p_id": potluck_id, "p_key": key, "p_owner": owner, "p_due": due_at}
        return await self._writer.aside(lambda conn: bool(count(conn, _requeue, params)))

    async def renew_reminder(self, potluck_id: str, key: str, owner: str, lease_until: datetime) -> bool:
        """Hold a claim longer. False: it was lost."""
        params = {"p_id": potluck_id, "p_key": key, "p_owner": owner, "p_until": lease_until}
        return await self._writer.aside(lambda conn: bool(count(conn, _renew, params)))

    async def next_due(self, now: datetime) -> datetime | None:
        """When the next reminder is to be claimed; may be past. None: nothing is waiting."""

        def work(conn: Connection) -> datetime | None:
            times = [conn.scalar(_next_pending), conn.scalar(_next_lease)]
            return min((x for x in times if x is not None), default=None)

        return await self._runner.read(work)

    async def reminders_of(self, potluck_id: str) -> tuple[ReminderRow, ...]:
        """All of a potluck's reminders in every state, by due time."""
        rows = await self._runner.glance(lambda conn: ask(conn, _of, {"p_id": potluck_id}))
        return tuple(reminder_from(r) for r in rows)
