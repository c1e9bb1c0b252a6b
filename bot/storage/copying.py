"""Backup, and moving between databases, with a check that everything arrived.

Rows are compared as Python values, so SQLite and PostgreSQL can be compared with each other.
"""

from __future__ import annotations

import hashlib
import pickle
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from sqlalchemy import Table, func, insert, select, text
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.base import Base
from bot.storage.engine import SqliteRunner
from bot.storage.errors import StorageError
from bot.storage.migrate import migrate

CHUNK = 500


class CopyFailed(StorageError):
    """The copy is not the same as the original; the target must not be used."""


def _rows(conn: Connection, table: Table) -> Iterator[list[dict[str, Any]]]:
    """All rows in chunks, in the order of the primary key's values whatever the database's collation."""
    keys = list(table.primary_key.columns)
    result = conn.execution_options(yield_per=CHUNK).execute(select(table).order_by(*keys))
    for part in result.mappings().partitions(CHUNK):
        yield [dict(row) for row in part]


class _Sum:
    """Rows and a checksum of their content that doesn't depend on their order."""

    def __init__(self) -> None:
        self.count = self.total = 0

    def add(self, rows: list[dict[str, Any]]) -> None:
        for row in rows:
            digest = hashlib.sha256(repr(sorted(row.items())).encode("utf-8", "surrogatepass")).digest()
            self.total = (self.total + int.from_bytes(digest)) % (1 << 256)
        self.count += len(rows)


Fingerprint = dict[str, tuple[int, str]]


def _read_all(conn: Connection, use: Callable[[str, list[dict[str, Any]]], None]) -> Fingerprint:
    """Hand over every row in chunks, parents before children; returns the fingerprint."""
    found = {}
    for table in t.metadata.sorted_tables:
        content = _Sum()
        for rows in _rows(conn, table):
            content.add(rows)
            use(table.name, rows)
        found[table.name] = (content.count, f"{content.total:064x}")
    return found


def fingerprint(conn: Connection) -> Fingerprint:
    """(rows, checksum of their content) of every table."""
    return _read_all(conn, lambda _name, _rows: None)


def _insert(conn: Connection, table: Table, rows: list[dict[str, Any]]) -> None:
    conn.execute(insert(table), rows)


def _is_empty(conn: Connection) -> bool:
    return all(not conn.scalar(select(func.count()).select_from(table)) for table in t.metadata.sorted_tables)


def _set_counters(conn: Connection) -> None:
    """Let PostgreSQL count up from the highest id copied; SQLite does so by itself."""
    if conn.dialect.name != "postgresql":
        return
    for table in (t.action, t.post):
        conn.execute(
            text(
                f"SELECT setval(pg_get_serial_sequence('{table.name}', 'id'),"
                f" (SELECT coalesce(max(id), 0) + 1 FROM {table.name}), false)"
            )
        )


class Copying(Base):
    async def fingerprint(self) -> dict[str, tuple[int, str]]:
        """Rows and checksum of every table, the same on every database."""
        return await self._runner.read(fingerprint, heavy=True)

    async def backup(self, path: str | Path) -> dict[str, int]:
        """Write everything into a new SQLite file while the bot goes on; returns the rows of each
        table. Raises StorageError when the file exists, CopyFailed when it differs."""
        running = _new_file(Path(path))
        try:
            await migrate(running)
            return await copy_rows(self, _Target(running))
        finally:
            running.one_file()
            await running.close()


def _new_file(path: Path) -> SqliteRunner:
    if path.exists():
        raise StorageError("backup-exists", {"path": str(path)})
    return SqliteRunner(str(path))


class _Target(Copying):
    def __init__(self, running: Any) -> None:
        self._runner = running


async def copy_rows(source: Copying, target: Copying) -> dict[str, int]:
    """Copy every row into an empty database and compare; one picture of the source, one
    transaction on the target."""
    if not await target._runner.read(_is_empty):
        raise StorageError("copy-target-not-empty")
    # Through a file, so that memory stays flat and neither side waits for the other.
    with tempfile.TemporaryFile() as spool:

        def take(conn: Connection) -> Fingerprint:
            return _read_all(conn, lambda name, rows: pickle.dump((name, rows), spool))

        def fill(conn: Connection) -> Fingerprint:
            spool.seek(0)
            while True:
                try:
                    name, rows = pickle.load(spool)
                except EOFError:
                    break
                _insert(conn, t.metadata.tables[name], rows)
            _set_counters(conn)
            there = fingerprint(conn)
            if there != expected:
                wrong = sorted(name for name in expected if there[name] != expected[name])
                raise CopyFailed("copy-differs", {"tables": ", ".join(wrong)})
            return there

        expected = await source._runner.read(take, heavy=True)
        done = await target._runner.write(fill, heavy=True)
    return {name: count for name, (count, _) in done.items()}


async def copy_all(source: Copying, target: Copying) -> dict[str, int]:
    """Move everything from one store to an empty one; returns the rows of each table. Raises
    StorageError when the target isn't empty, CopyFailed (and writes nothing) when it differs."""
    return await copy_rows(source, target)
