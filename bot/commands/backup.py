"""`backup --from URL --to URL`: everything into an empty database, counted and compared.

The target appears whole or not at all: a new SQLite file is written under another name first.
"""

from __future__ import annotations

import argparse
import asyncio
import os
import sys
from pathlib import Path

from bot.commands.files import Stop, complain, database_url
from bot.storage.engine import sqlite_path


def main(args: argparse.Namespace) -> int:
    from bot import log

    log.set_up("error")
    try:
        counts = asyncio.run(_copy(database_url(args.source), database_url(args.target)))
    except Stop as stop:
        complain(*(log.redact(line) for line in stop.lines))
        return stop.code
    for table, count in sorted(counts.items()):
        sys.stdout.write(f"{table}: {count}\n")
    sys.stdout.write(f"{sum(counts.values())} rows copied; both sides have the same counts and content.\n")
    return 0


async def _copy(source_url: str, target_url: str) -> dict[str, int]:
    from sqlalchemy.exc import ArgumentError, SQLAlchemyError

    from bot.storage.copying import copy_all
    from bot.storage.errors import StorageError
    from bot.storage.store import Store

    try:
        source_file, target_file = _file(source_url), _file(target_url)
    except ArgumentError:
        raise Stop("not a database: give a file's name, or one like postgresql+asyncpg://user@host/name") from None
    if source_file is not None and not source_file.is_file():
        raise Stop(f"{source_file}: there is no such database; check the name")
    if target_file is not None and target_file.exists():
        raise Stop(f"{target_file}: is there already; a copy never writes over anything, choose another name")
    if target_file is not None and not target_file.parent.is_dir():
        raise Stop(f"{target_file.parent}: there is no such folder; make it first")
    part = target_file.with_name(target_file.name + ".part") if target_file is not None else None
    try:
        _remove(part)
        async with await Store.open(source_url) as source:
            if part is not None:
                counts = await source.backup(part)
            else:
                async with await Store.open(target_url) as target:
                    counts = await copy_all(source, target)
        if part is not None and target_file is not None:
            _settle(part, target_file)
    except (StorageError, SQLAlchemyError, ImportError, ValueError, OSError) as error:
        _remove(part)
        raise Stop(f"nothing was copied: {_why(error)}", code=1) from None
    return counts


_WHY = {
    "copy-target-not-empty": "the target is not empty; a copy only goes into an empty database",
    "copy-differs": "the copy was not the same as the original; try again, and check the disk if it happens twice",
    "storage-corrupt": "the database is damaged or not one of Tureen's",
    "storage-full": "the disk is full",
    "storage-gone": "the database can't be reached; check its address and that it runs",
    "storage-locked": "another process keeps the database locked; try again in a moment",
    "storage-newer": "the database was written by a newer version; use that version",
    "storage-read-only": "the database or its folder is read-only",
    "storage-refused": "the database refuses the user or the password",
}


def _why(error: Exception) -> str:
    key = getattr(error, "key", None)
    # Other messages may hold parameters, and so what people wrote: only what kind of fault it was.
    return _WHY.get(key, str(key)) if key is not None else type(error).__name__


def _file(url: str) -> Path | None:
    path = sqlite_path(url)
    return Path(path).absolute() if path else None


def _remove(part: Path | None) -> None:
    if part is not None:
        for ending in ("", "-wal", "-shm", "-journal"):
            part.with_name(part.name + ending).unlink(missing_ok=True)


def _settle(part: Path, target: Path) -> None:
    """On the disk first, then under its name; for its owner only, since people's names are in it."""
    part.chmod(0o600)
    with part.open("rb") as written:
        os.fsync(written.fileno())
    part.rename(target)
