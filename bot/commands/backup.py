"""`backup --from URL --to URL`: everything into an empty database, counted and compared."""

from __future__ import annotations

import argparse
import asyncio
import sys

from bot.commands.files import complain, database_url


def main(args: argparse.Namespace) -> int:
    return asyncio.run(_copy(database_url(args.source), database_url(args.target)))


async def _copy(source_url: str, target_url: str) -> int:
    from bot.storage.copying import copy_all
    from bot.storage.errors import StorageError
    from bot.storage.store import Store

    try:
        async with await Store.open(source_url) as source, await Store.open(target_url) as target:
            counts = await copy_all(source, target)
    except (StorageError, ValueError) as error:
        complain(f"nothing was copied: {error}")
        return 1
    for table, count in sorted(counts.items()):
        sys.stdout.write(f"{table}: {count}\n")
    return 0
