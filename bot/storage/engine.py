"""How statements reach the database: one way to write SQL, two ways to run it.

All SQL of the project is written as plain functions of a SQLAlchemy `Connection`.

* PostgreSQL: the function runs in a greenlet on a connection of SQLAlchemy's pool; the statements of a
  turn are run on asyncpg itself (see `prepared.py`), everything else through SQLAlchemy.
* SQLite: a hop to a driver thread costs several times the statement itself (a statement on cached
  pages takes some 10 µs), and a busy event loop makes the thread wait for the interpreter at each
  one. So statements run where they are called, and only what waits for the disk - COMMIT with its
  fsync, waiting for another process's lock, big jobs - runs in a thread of its own. Measured side by
  side, one guest's press in groups of 20: 0.35 ms of CPU this way, 2.0 ms with every statement
  through aiosqlite's thread. `sqlite+aiosqlite:` URLs are taken all the same.

SQLite settings: WAL, foreign_keys=ON, busy_timeout, synchronous=FULL. FULL is the one that
survives power loss in WAL mode: each commit is on the disk before it is answered. It cost 0.2 ms a
lone commit over NORMAL where it was measured; many commits share one fsync (see `group.py`). What the
log holds is carried into the file beside the commits, not within one of them (`_carry_over`).
"""

from __future__ import annotations

import asyncio
import sqlite3
import tempfile
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any, Protocol, TypeVar

from sqlalchemy import create_engine, event
from sqlalchemy.engine import URL, Connection, make_url
from sqlalchemy.exc import SQLAlchemyError
from sqlalchemy.pool import NullPool

from bot.storage.errors import trouble
from bot.storage.postgres import POOL, AsyncRunner

__all__ = ["BUSY_MS", "POOL", "AsyncRunner", "Runner", "SqliteRunner", "runner", "sqlite_engine", "sqlite_path"]

T = TypeVar("T")
BUSY_MS = 10_000
"""How long another process's write lock is waited for before it is a trouble."""
CARRIED_EVERY = 100
"""After so many commits the write-ahead log is carried over into the file."""
LONGEST_LOG_PAGES = 8000
"""Some 32 MB: from here on whoever commits carries it over first, so that it does not grow without end."""


class Runner(Protocol):
    is_sqlite: bool

    async def glance(self, work: Callable[[Connection], T]) -> T:
        """Run one reading statement."""
        ...

    async def read(self, work: Callable[[Connection], T], *, heavy: bool = False) -> T:
        """Run reading statements on one unchanging picture of the database."""
        ...

    async def write(self, work: Callable[[Connection], T], *, heavy: bool = False, lasting: bool = True) -> T:
        """Run statements in one transaction and commit; all or nothing. When it returns they survive a
        power loss; not `lasting`, only the death of the process."""
        ...

    async def close(self) -> None: ...


def sqlite_path(url: str | URL) -> str | None:
    """The file of a SQLite URL, "" for none given, None for another database."""
    parsed = make_url(url)
    if parsed.get_backend_name() != "sqlite":
        return None
    return "" if parsed.database in (None, "", ":memory:") else str(parsed.database)


def _on_connect(dbapi: sqlite3.Connection, _record: object) -> None:
    dbapi.isolation_level = None
    cursor = dbapi.cursor()
    cursor.execute("PRAGMA foreign_keys=ON")
    cursor.execute("PRAGMA journal_mode=WAL")
    cursor.execute("PRAGMA synchronous=FULL")
    cursor.execute(f"PRAGMA wal_autocheckpoint={LONGEST_LOG_PAGES}")
    cursor.execute("PRAGMA temp_store=MEMORY")
    cursor.execute("PRAGMA cache_size=-16000")
    cursor.close()


def sqlite_engine(path: str, busy_ms: int = BUSY_MS) -> Any:
    engine = create_engine(
        URL.create("sqlite", database=path),
        poolclass=NullPool,
        hide_parameters=True,  # errors are logged, and people's words are in the parameters
        connect_args={"check_same_thread": False, "timeout": busy_ms / 1000, "cached_statements": 512},
    )
    event.listen(engine, "connect", _on_connect)
    return engine


class SqliteRunner:
    is_sqlite = True

    def __init__(self, path: str, busy_ms: int = BUSY_MS, durable: bool = True) -> None:
        """Not `durable`: the disk is never waited for, so a commit outlives the process and no power cut."""
        self._busy_ms = busy_ms
        self._durable = durable
        self._tmp: tempfile.TemporaryDirectory[str] | None = None
        if not path:  # nothing to keep: a file all the same, so that there is one way of working
            self._tmp = tempfile.TemporaryDirectory()
            path = str(Path(self._tmp.name) / "tureen.db")
        self.path = path
        self.engine = sqlite_engine(path, busy_ms)
        self._thread = ThreadPoolExecutor(1, "tureen-disk")
        self._writing = asyncio.Lock()
        self._reader: Connection | None = None
        self._writer: Connection | None = None
        self._lasting = True
        self._commits = 0
        self._file = threading.Lock()
        self._carrying: asyncio.Future[None] | None = None

    def _open(self) -> Connection:
        # "AUTOCOMMIT" keeps SQLAlchemy from writing BEGIN and COMMIT; we say when.
        conn: Connection = self.engine.connect().execution_options(isolation_level="AUTOCOMMIT")
        if not self._durable:
            _raw(conn).execute("PRAGMA synchronous=OFF")
        return conn

    def _reading(self) -> Connection:
        if self._reader is None:
            self._reader = self._open()
        return self._reader

    async def glance(self, work: Callable[[Connection], T]) -> T:
        try:
            return work(self._reading())
        except (SQLAlchemyError, sqlite3.Error) as error:
            self._tell(error)
            raise

    async def read(self, work: Callable[[Connection], T], *, heavy: bool = False) -> T:
        if heavy:
            try:
                # Not in the thread that commits: people's answers don't wait for a backup.
                return await asyncio.to_thread(self._read_apart, work)
            except (SQLAlchemyError, sqlite3.Error) as error:
                self._tell(error)
            raise
        conn = self._reading()
        try:
            return self._reading_in(conn, work)
        except (SQLAlchemyError, sqlite3.Error) as error:
            self._tell(error)
            raise

    @staticmethod
    def _reading_in(conn: Connection, work: Callable[[Connection], T]) -> T:
        raw = _raw(conn)
        raw.execute("BEGIN")
        try:
            return work(conn)
        finally:
            raw.rollback()

    def _read_apart(self, work: Callable[[Connection], T]) -> T:
        with self._open() as conn:
            return self._reading_in(conn, work)

    async def write(self, work: Callable[[Connection], T], *, heavy: bool = False, lasting: bool = True) -> T:
        async with self._writing:
            try:
                if self._writer is None:
                    self._writer = self._open()
                    _raw(self._writer).execute("PRAGMA busy_timeout=0")
                    self._lasting = True
                conn, raw = self._writer, _raw(self._writer)
                if lasting is not self._lasting and self._durable:
                    # In WAL mode NORMAL leaves the flush to the next one that asks for it.
                    raw.execute(f"PRAGMA synchronous={'FULL' if lasting else 'NORMAL'}")
                    self._lasting = lasting
                await self._begin(raw)
                try:
                    result = await self._in_thread(work, conn) if heavy else work(conn)
                    # The commit can't be called back: wait for its end even when we are cancelled.
                    await self._in_thread(raw.commit)
                except BaseException:
                    if raw.in_transaction:
                        raw.rollback()
                    raise
                self._carry_over()
                return result
            except (SQLAlchemyError, sqlite3.Error, OSError) as error:
                said = trouble(error)
                if said is None:
                    raise
                self._drop_connections()
                raise said from error

    def _carry_over(self) -> None:
        """Now and then, in a thread of its own: nobody's commit stands behind the writing of all its pages."""
        self._commits += 1
        if self._commits < CARRIED_EVERY or (self._carrying is not None and not self._carrying.done()):
            return
        self._commits = 0
        self._carrying = asyncio.get_running_loop().run_in_executor(None, self._checkpoint)

    def _checkpoint(self) -> None:
        try:
            with self._file, self._open() as conn:
                _raw(conn).execute("PRAGMA wal_checkpoint(PASSIVE)")
        except (SQLAlchemyError, sqlite3.Error):
            pass  # the log stays as it is; whoever commits next is told what is wrong, if it still is

    async def _begin(self, raw: sqlite3.Connection) -> None:
        """Take the write lock: at once if it is free, else wait for it away from the event loop."""
        try:
            raw.execute("BEGIN IMMEDIATE")
        except sqlite3.OperationalError as error:
            if (error.sqlite_errorcode & 0xFF) != sqlite3.SQLITE_BUSY:
                raise
            raw.execute(f"PRAGMA busy_timeout={self._busy_ms}")
            await self._in_thread(raw.execute, "BEGIN IMMEDIATE")
            raw.execute("PRAGMA busy_timeout=0")

    async def _in_thread(self, work: Callable[..., T], *args: object) -> T:
        done = asyncio.get_running_loop().run_in_executor(self._thread, work, *args)
        try:
            return await asyncio.shield(done)
        except asyncio.CancelledError:
            await asyncio.wait([done])
            raise

    @staticmethod
    def _tell(error: BaseException) -> None:
        if (said := trouble(error)) is not None:
            raise said from error

    def _drop_connections(self) -> None:
        """After a trouble start with fresh connections; a broken one may stay broken."""
        for conn in (self._reader, self._writer):
            if conn is not None:
                try:
                    conn.close()
                except Exception:
                    pass
        self._reader = self._writer = None

    def one_file(self) -> None:
        """Fold the write-ahead log into the file, so that the file alone is the database."""
        self._drop_connections()
        with self._file, self._open() as conn:
            _raw(conn).execute("PRAGMA wal_checkpoint(TRUNCATE)")
            _raw(conn).execute("PRAGMA journal_mode=DELETE")

    async def close(self) -> None:
        async with self._writing:
            if self._carrying is not None:
                await asyncio.wait([self._carrying])
            self._drop_connections()
            self.engine.dispose()
            self._thread.shutdown()
            if self._tmp is not None:
                self._tmp.cleanup()


def _raw(conn: Connection) -> sqlite3.Connection:
    raw = conn.connection.driver_connection
    assert isinstance(raw, sqlite3.Connection)
    return raw


def runner(url: str | URL, pool_size: int = POOL, busy_ms: int = BUSY_MS, durable: bool = True) -> Runner:
    """`durable` is SQLite's: whether commits survive a power cut; a server is told by its own settings."""
    path = sqlite_path(url)
    if path is None:
        return AsyncRunner(url, pool_size)
    return SqliteRunner(path, busy_ms, durable)
