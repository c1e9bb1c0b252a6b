"""How statements reach PostgreSQL: a function in a greenlet, on a connection of SQLAlchemy's pool."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

from sqlalchemy.engine import URL, Connection
from sqlalchemy.ext.asyncio import create_async_engine
from sqlalchemy.util import await_only, greenlet_spawn

from bot.storage.errors import RETRY_SQLSTATES, STALE_STATEMENT, StorageTrouble, sqlstate, trouble

T = TypeVar("T")
POOL = 8
"""Connections to a database server, each opened when it is first needed and kept."""

IDLE_S = 10.0
"""So long a transaction may stand still before the server ends it: a frozen process, or one whose machine is
gone, must not keep its locks from the others."""
_PATIENTLY = "; SET LOCAL idle_in_transaction_session_timeout = 0"
"""For what reads one database while it writes another."""
_TRIES = 5


@dataclass
class _Progress:
    """How far a try came: what may be tried again depends on it."""

    committing: bool = False
    broken: bool = False


class AsyncRunner:
    """`url`: PostgreSQL with asyncpg. Every commit waits until it is on the server's disk, whatever the
    server's or the database's default is; the server's `fsync` must be on for that to be true."""

    is_sqlite = False

    def __init__(self, url: str | URL, pool_size: int = POOL, idle_s: float = IDLE_S) -> None:
        settings = {
            "synchronous_commit": "on",
            "application_name": "tureen",
            "idle_in_transaction_session_timeout": f"{round(idle_s * 1000)}ms",
        }
        self.engine = create_async_engine(
            url,
            # No connections beyond the pool: a new one costs more than waiting for one that knows the statements.
            pool_size=pool_size,
            max_overflow=0,
            # The one used last: it knows the statements, and so does the process behind it.
            pool_use_lifo=True,
            pool_pre_ping=False,
            pool_timeout=30,
            hide_parameters=True,
            # As with SQLite: we say where a transaction begins and ends.
            isolation_level="AUTOCOMMIT",
            connect_args={"server_settings": settings},
        )

    async def _run(self, work: Callable[[Connection], T], begin: str | None = None, *, commit: bool = False) -> T:
        """Run `work`; again when the database asks for it or an idle connection had died."""
        for left in reversed(range(_TRIES)):
            done = _Progress()
            try:
                return await greenlet_spawn(self._run_in, work, begin, commit, done)
            except Exception as error:  # asyncpg's own are of no common class with SQLAlchemy's
                again = sqlstate(error) in RETRY_SQLSTATES
                # A connection lost at COMMIT may have committed: saying so again could double it.
                again |= done.broken and not done.committing
                if again and left:
                    continue
                said = trouble(error)
                if said is None and done.broken:
                    said = StorageTrouble("storage-gone")
                if said is None:
                    raise
                raise said from error
        raise AssertionError("unreachable")

    def _run_in(self, work: Callable[[Connection], T], begin: str | None, commit: bool, done: _Progress) -> T:
        with self._connected() as conn:
            raw: Any = conn.connection.driver_connection
            try:
                if begin is None:
                    return work(conn)
                await_only(raw.execute(begin))
                result = work(conn)
                done.committing = commit
                await_only(raw.execute("COMMIT"))
                return result
            except BaseException as error:
                if raw.is_closed() or sqlstate(error) in STALE_STATEMENT or not isinstance(error, Exception):
                    # Also when we are cancelled: what stands half way on it is of no use to anybody.
                    done.broken = True
                    conn.invalidate()
                elif begin is not None:
                    self._roll_back(conn, raw)
                raise

    def _connected(self) -> Connection:
        """A connection that is not known to be dead: after a server's restart the whole pool is."""
        while True:
            conn = self.engine.sync_engine.connect()
            if not conn.connection.driver_connection.is_closed():  # type: ignore[union-attr]
                return conn
            conn.invalidate()
            conn.close()

    @staticmethod
    def _roll_back(conn: Connection, raw: Any) -> None:
        try:
            await_only(raw.execute("ROLLBACK"))
        except Exception:
            conn.invalidate()

    async def glance(self, work: Callable[[Connection], T]) -> T:
        return await self._run(work)

    async def read(self, work: Callable[[Connection], T], *, heavy: bool = False) -> T:
        return await self._run(work, "BEGIN ISOLATION LEVEL REPEATABLE READ" + _PATIENTLY * heavy)

    async def write(self, work: Callable[[Connection], T], *, heavy: bool = False, lasting: bool = True) -> T:
        begin = ("BEGIN" if lasting else "BEGIN; SET LOCAL synchronous_commit = off") + _PATIENTLY * heavy
        return await self._run(work, begin, commit=True)

    async def close(self) -> None:
        await self.engine.dispose()
