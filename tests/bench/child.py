"""One bot in a process of its own: `python -m tests.bench.child WHICH API_URL DATABASE_URL [PROFILE_FILE]`.

bare          the client library with its defaults; every press is answered "ok"; nothing is kept
bare-aiohttp  the same on our transport
bare-16       the library's defaults with concurrent_updates(16)
tureen        the whole bot, polling
replica:PORT  the whole bot behind a webhook on PORT
"""

from __future__ import annotations

import asyncio
import cProfile
import signal
import sys
from typing import Any

from tests.bench.platform import TOKEN


async def bare(url: str, which: str) -> None:
    from telegram import Update
    from telegram.ext import Application, CallbackQueryHandler, ContextTypes

    from bot.transport import AiohttpRequest

    async def ok(update: Update, _: ContextTypes.DEFAULT_TYPE) -> None:
        assert update.callback_query is not None
        await update.callback_query.answer("ok")

    building = Application.builder().token(TOKEN).base_url(url)
    if which == "bare-aiohttp":
        building = building.request(AiohttpRequest(proxy_from_environment=False))
        building = building.get_updates_request(AiohttpRequest(proxy_from_environment=False))
    if which == "bare-16":
        building = building.concurrent_updates(16)
    app = building.build()
    app.add_handler(CallbackQueryHandler(ok))
    async with app:
        await app.start()
        assert app.updater is not None
        await app.updater.start_polling()
        await _until_told()
        await app.updater.stop()
        await app.stop()


async def tureen(url: str, database: str, port: int | None = None) -> None:
    """Polling, or with `port` behind a webhook there."""
    from bot import log
    from bot.assembly import Tureen
    from bot.clock import RealClock
    from bot.storage.store import Store

    log.set_up("error")
    store = await Store.open(database)
    more: dict[str, Any] = {}
    if port is not None:
        more = {"mode": "webhook", "webhook_url": "https://bench.invalid/hook", "webhook_listen": ("127.0.0.1", port)}
        more["webhook_secret"] = "bench-webhook-not-a-secret"
    bot = Tureen(token=TOKEN, base_url=url, base_file_url=url, store=store, clock=RealClock(), **more)
    _profiled_between_signals()
    await bot.run_until_signalled()
    await store.close()


PROFILE = cProfile.Profile()


def _profiled_between_signals() -> None:
    """From SIGUSR1 to SIGUSR2 the profiler runs: not over the start, not over the end."""
    loop = asyncio.get_running_loop()
    loop.add_signal_handler(signal.SIGUSR1, PROFILE.enable)
    loop.add_signal_handler(signal.SIGUSR2, PROFILE.disable)


async def _until_told() -> None:
    told = asyncio.Event()
    asyncio.get_running_loop().add_signal_handler(signal.SIGTERM, told.set)
    await told.wait()


def main() -> None:
    which, url, database, *rest = sys.argv[1:]
    name, _, port = which.partition(":")
    whole = name in ("tureen", "replica")
    asyncio.run(tureen(url, database, int(port) if port else None) if whole else bare(url, which))
    if rest:
        PROFILE.dump_stats(rest[0])


if __name__ == "__main__":
    main()
