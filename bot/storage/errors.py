"""What storage can refuse or fail with; each carries a key for the words and its facts."""

from __future__ import annotations

import sqlite3
from collections.abc import Mapping

from sqlalchemy.exc import DBAPIError
from sqlalchemy.exc import TimeoutError as PoolTimeout


class StorageError(Exception):
    def __init__(self, key: str, facts: Mapping[str, object] | None = None) -> None:
        super().__init__(key, dict(facts or {}))
        self.key = key
        self.facts: dict[str, object] = dict(facts or {})


class Stale(StorageError):
    """Somebody else changed the potluck since it was read: run the handler again from the start."""

    def __init__(self, what: str = "") -> None:
        super().__init__("storage-stale", {"what": what})


class AlreadyTaken(StorageError):
    """The platform delivered this update before and its effects are stored: do nothing."""

    def __init__(self, update_id: int) -> None:
        super().__init__("storage-already-taken", {"update": update_id})


class Conflict(StorageError):
    """A change can't be undone: somebody changed the same thing afterwards."""

    def __init__(self, kind: str, key: str) -> None:
        super().__init__("undo-conflict", {"kind": kind, "what": key})


class StorageTrouble(StorageError):
    """The database can't be used now (locked, full, corrupt, gone). Nothing was half written."""


_SQLITE_TROUBLE = {
    sqlite3.SQLITE_BUSY: "storage-locked",
    sqlite3.SQLITE_LOCKED: "storage-locked",
    sqlite3.SQLITE_FULL: "storage-full",
    sqlite3.SQLITE_CORRUPT: "storage-corrupt",
    sqlite3.SQLITE_NOTADB: "storage-corrupt",
    sqlite3.SQLITE_READONLY: "storage-read-only",
    sqlite3.SQLITE_IOERR: "storage-disk",
    sqlite3.SQLITE_CANTOPEN: "storage-gone",
}

_PG_TROUBLE = {
    "53100": "storage-full",  # disk_full
    "53300": "storage-busy",  # too_many_connections
    "55P03": "storage-locked",  # lock_not_available
    "57014": "storage-locked",  # query_canceled (statement or lock time-out)
    "25006": "storage-read-only",
    "XX001": "storage-corrupt",
    "XX002": "storage-corrupt",
    "3D000": "storage-gone",
    "28P01": "storage-refused",
    "28000": "storage-refused",
}

STALE_STATEMENT = ("0A000", "26000")
"""feature_not_supported, which is what a statement prepared before a migration says; one that is not there any more.
A fresh connection knows neither."""
RETRY_SQLSTATES = ("40001", "40P01")  # serialization_failure, deadlock_detected: run it again


def sqlstate(error: BaseException) -> str | None:
    orig = getattr(error, "orig", None) or error
    return getattr(orig, "sqlstate", None) or getattr(orig, "pgcode", None)


def trouble(error: BaseException) -> StorageTrouble | None:
    """The trouble behind a driver's error, or None when it is a fault of the program."""
    orig = getattr(error, "orig", None) or error
    if isinstance(orig, sqlite3.Error):
        code = getattr(orig, "sqlite_errorcode", 0) or 0
        if code & 0xFF in _SQLITE_TROUBLE:
            return StorageTrouble(_SQLITE_TROUBLE[code & 0xFF])
        return None
    state = sqlstate(error)
    if state is not None:
        if state in RETRY_SQLSTATES:
            return StorageTrouble("storage-locked")
        if state in _PG_TROUBLE:
            return StorageTrouble(_PG_TROUBLE[state])
        if state.startswith(("08", "57P")):  # connection exceptions, shutdown
            return StorageTrouble("storage-gone")
        return None
    if isinstance(error, PoolTimeout):
        return StorageTrouble("storage-busy")
    if isinstance(error, OSError) or (isinstance(error, DBAPIError) and error.connection_invalidated):
        return StorageTrouble("storage-gone")
    return None
