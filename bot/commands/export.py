"""`export --db FILE`: a potluck out of a database, in the form `plan` reads."""

from __future__ import annotations

import argparse
import asyncio
from pathlib import Path

from bot.commands.files import Stop, complain, database_url, write_json


def main(args: argparse.Namespace) -> int:
    try:
        asyncio.run(_export(args))
    except Stop as stop:
        complain(*stop.lines)
        return stop.code
    return 0


async def _export(args: argparse.Namespace) -> None:
    from bot.clock import RealClock
    from bot.storage.errors import StorageError
    from bot.storage.store import Store
    from planning import potluck_file

    if "://" not in args.db and not Path(args.db).is_file():
        raise Stop(f"{args.db}: there is no such database; check the name")
    try:
        store = await Store.open(database_url(args.db))
    except StorageError as error:
        raise Stop(f"{args.db}: the database can't be opened ({error.key}); check that it is one of Tureen's") from None
    try:
        ids = [args.potluck] if args.potluck else await store.potluck_ids()
        if not ids:
            raise Stop(f"{args.db}: there is no potluck in it")
        stored = await store.potluck(ids[-1])
        if stored is None:
            raise Stop(f"{args.db}: there is no potluck {args.potluck!r}; leave --potluck out for the latest")
        write_json(potluck_file.write(stored.potluck, RealClock().now()), args.out)
    finally:
        await store.close()
