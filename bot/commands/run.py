"""`run`: the bot on the platform, by polling or behind a webhook."""

from __future__ import annotations

import argparse
import asyncio

from bot.commands.files import complain


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
    return asyncio.run(_run(settings))


async def _run(settings) -> int:  # type: ignore[no-untyped-def]
    from telegram.error import InvalidToken

    from bot.assembly import Tureen
    from bot.clock import RealClock
    from bot.storage.errors import StorageError
    from bot.storage.store import Store

    try:
        store = await Store.open(settings.database_url.get_secret_value())
    except StorageError as error:
        complain(f"the database can't be opened ({error.key}); check TUREEN_DATABASE_URL")
        return 1
    try:
        bot = Tureen.from_settings(settings, store=store, clock=RealClock(), keep_days=settings.keep_days)
        await bot.run_until_signalled()
    except InvalidToken:
        complain("the platform refuses TUREEN_TOKEN; copy it again from where you got it")
        return 2
    finally:
        await store.close()
    return 0
