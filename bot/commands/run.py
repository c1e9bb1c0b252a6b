"""`run`: the bot on the platform, by polling or behind a webhook.

What may pass by itself (a database or a platform out of reach) is waited for, with a line each time;
what somebody must mend ends the command with one line that says so.
"""

from __future__ import annotations

import argparse
import asyncio
from typing import TYPE_CHECKING

from bot.commands.files import complain

if TYPE_CHECKING:
    from bot.clock import Clock
    from bot.settings import Settings
    from bot.storage.store import Store

PASSES = frozenset({"storage-gone", "storage-locked", "storage-busy"})
"""Troubles of a database server that end without anybody's help: it is being restarted, say."""
LONGEST_WAIT_S = 30.0


def main(args: argparse.Namespace) -> int:
    from bot import log
    from bot.settings import SettingsFault, load

    try:
        settings = load()
    except SettingsFault as faults:
        complain(*faults.faults)
        return 2
    if settings.token is None:
        complain("TUREEN_TOKEN is missing: set it to the token the platform gave your bot")
        return 2
    log.set_up(settings.log)
    return asyncio.run(run(settings))


async def run(settings: Settings) -> int:
    """Serve until told to stop; the exit code."""
    from telegram.error import InvalidToken

    from bot import log
    from bot.assembly import Tureen
    from bot.clock import RealClock
    from bot.storage.errors import StorageError

    clock = RealClock()
    try:
        store = await open_patiently(settings.database_url.get_secret_value(), clock)
    except StorageError as error:
        complain(f"the database can't be opened ({error.key}); check TUREEN_DATABASE_URL")
        return 1
    try:
        bot = Tureen.from_settings(settings, store=store, clock=clock, keep_days=settings.keep_days)
        await bot.run_until_signalled()
    except InvalidToken:
        complain("the platform refuses TUREEN_TOKEN; copy it again from where you got it")
        return 2
    except OSError as error:
        complain(log.redact(f"the bot can't start: {error}; check TUREEN_WEBHOOK_LISTEN and TUREEN_METRICS_LISTEN"))
        return 1
    except Exception as error:
        log.get("run").exception("the bot ended by a fault of its own")
        complain(log.redact(f"the bot can't go on: {type(error).__name__}; the lines above say where"))
        return 1
    finally:
        await store.close()
    return 0


async def open_patiently(url: str, clock: Clock) -> Store:
    """The store of `url`. A server that does not answer is asked again; a file that can't be opened is not.

    Raises StorageError for what does not pass by itself.
    """
    from bot import log
    from bot.storage.engine import sqlite_path
    from bot.storage.errors import StorageTrouble
    from bot.storage.store import Store

    wait_s = 1.0
    while True:
        try:
            return await Store.open(url)
        except StorageTrouble as trouble:
            if sqlite_path(url) is not None or trouble.key not in PASSES:
                raise
            log.get("run").warning("the database can't be reached", what=trouble.key, again_in_s=wait_s)
            await clock.sleep(wait_s)
            wait_s = min(LONGEST_WAIT_S, wait_s * 2)
