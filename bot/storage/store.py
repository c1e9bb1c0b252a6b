"""`Store`: the one door to everything that is kept.

Durability: every `commit` that returned is on the disk and survives a power loss (SQLite: WAL with
synchronous=FULL; PostgreSQL: synchronous_commit=on, set by each of our connections, and
the server's own fsync). Updates that arrive while
one transaction is being written share the next one's fsync.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import Any, Self

from sqlalchemy import delete, text, update
from sqlalchemy.engine import URL, Connection

from bot.storage import schema as t
from bot.storage.base import PotluckCache
from bot.storage.boards import Boards
from bot.storage.chats import migrate_chat
from bot.storage.commits import write_batches
from bot.storage.copying import Copying
from bot.storage.engine import BUSY_MS, POOL, Runner, runner
from bot.storage.errors import Stale
from bot.storage.group import GroupWriter
from bot.storage.kitchen_plans import KitchenPlans
from bot.storage.migrate import migrate, revision_in
from bot.storage.outbox import Outbox
from bot.storage.privacy import delete_potlucks_before
from bot.storage.reads import Reads
from bot.storage.recollections import Recollections
from bot.storage.reminders import Reminders, ReminderSets
from bot.storage.turns import TurnReader
from bot.storage.values import Batch, CommitResult

UPDATES_KEPT = timedelta(days=2)
"""The platform keeps an update it could not deliver for a day."""


class Store(Reads, Recollections, Outbox, Boards, Reminders, KitchenPlans, Copying):
    def __init__(self, running: Runner, cache_size: int = 500) -> None:
        self._runner = running
        self._cache = PotluckCache(cache_size)
        self._sets = ReminderSets()
        self._turns = TurnReader(running)
        self._writer = GroupWriter(running, self._write_batches, self._sets.committed)

    @classmethod
    async def open(
        cls, url: str | URL, *, pool_size: int = POOL, cache_size: int = 500, busy_ms: int = BUSY_MS,
        durable: bool = True,
    ) -> Self:  # fmt: skip
        """Connect and bring the schema up to date. `url`: `sqlite+aiosqlite:///file.db` or any
        async URL, e.g. `postgresql+asyncpg://user@host/db`. Not `durable`: a file whose commits need not
        survive a power cut, as a rehearsal's. Raises StorageTrouble."""
        running = runner(url, pool_size, busy_ms=busy_ms, durable=durable)
        try:
            await migrate(running)
        except BaseException:
            await running.close()
            raise
        return cls(running, cache_size)

    async def close(self) -> None:
        """Write what waits, then let go."""
        await self._writer.drain()
        await self._runner.close()

    async def __aenter__(self) -> Self:
        return self

    async def __aexit__(self, *_: object) -> None:
        await self.close()

    async def commit(self, batch: Batch) -> CommitResult:
        """Write a turn's changes, whole or not at all; when it returns they are on the disk.

        Raises Stale (read again and try again), AlreadyTaken (do nothing), StorageTrouble.
        """
        result: CommitResult = await self._writer.batch(batch)
        if batch.forget_people:  # what is stored is less than what the batch held
            return result
        for before, after in batch.changed:
            self._cache.put(after, result.revisions[before.potluck.id])
        for potluck, _ in batch.new_potlucks:
            self._cache.put(potluck, result.revisions[potluck.id])
        return result

    def _write_batches(self, conn: Connection, batches: Sequence[Batch], careful: bool) -> list[Any]:
        self._sets.begin()
        return write_batches(conn, batches, careful, self._sets)

    async def migrate_chat(self, old_id: int, new_id: int) -> None:
        """Move everything of a group to the supergroup it became; again and again does no harm."""
        await self._writer.job(lambda conn: migrate_chat(conn, old_id, new_id))

    async def health(self) -> dict[str, str | bool]:
        """What database this is, its newest migration, and whether it is sound (SQLite looks through
        the whole file; PostgreSQL only answers)."""

        def look(conn: Connection) -> dict[str, str | bool]:
            sound = True
            if conn.dialect.name == "sqlite":
                sound = conn.scalar(text("PRAGMA quick_check")) == "ok"
                sound = sound and conn.execute(text("PRAGMA foreign_key_check")).first() is None
            revision = revision_in(conn) or ""
            return {"kind": conn.dialect.name, "revision": revision, "current": revision == t.HEAD, "sound": sound}

        return await self._runner.read(look, heavy=True)

    @property
    def written(self) -> tuple[int, int]:
        """(transactions, commits and jobs written in them) since the store was opened."""
        return self._writer.groups, self._writer.members

    async def prune(self, now: datetime, kept: timedelta = timedelta(days=30)) -> None:
        """Delete update ids the platform can't send again, questions and recollections whose time is over, actions
        older than `kept` (nobody undoes those), posts given up so long ago and messages six times as old."""

        def work(conn: Connection) -> None:
            conn.execute(delete(t.update_taken).where(t.update_taken.c.at < now - UPDATES_KEPT))
            conn.execute(delete(t.sent_message).where(t.sent_message.c.at < now - kept * 6))
            conn.execute(delete(t.action).where(t.action.c.at < now - kept))
            lost = t.post.c.state == "given-up"
            # When one was given up is not kept: one that never waited counts from the first cleaning that finds it.
            conn.execute(update(t.post).where(lost, t.post.c.not_before.is_(None)).values(not_before=now))
            conn.execute(delete(t.post).where(lost, t.post.c.not_before < now - kept))
            conn.execute(delete(t.pace).where(t.pace.c.at < now - timedelta(days=1)))
            conn.execute(delete(t.dialog).where(t.dialog.c.expires_at < now))
            conn.execute(delete(t.recollection).where(t.recollection.c.until <= now))

        await self._writer.job(work)

    async def delete_potlucks_before(self, when: datetime) -> int:
        """Retention: delete the potlucks that started before `when`, with all that belongs to them,
        and the people who were known from those only (not those who opened a private chat). Returns
        how many potlucks went."""
        return await self._writer.job(lambda conn: delete_potlucks_before(conn, when))


__all__ = ["Stale", "Store"]
