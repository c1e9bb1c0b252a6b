"""One bot in a process of its own: `python -m tests.bench.child WHICH API_URL DATABASE_URL [PROFILE_FILE]`.

bare          the client library with its defaults; every press is answered "ok"; nothing is kept
bare-aiohttp  the same on our transport
bare-16       the library's defaults with concurrent_updates(16)
tureen        the whole bot
"""

from __future__ import annotations

import asyncio
import cProfile
import signal
import sys

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


async def tureen(url: str, database: str) -> None:
    from bot import log
    from bot.assembly import Tureen
    from bot.clock import RealClock
    from bot.storage.store import Store

    log.set_up("error")
    store = await Store.open(database)
    bot = Tureen(token=TOKEN, base_url=url, base_file_url=url, store=store, clock=RealClock())
    await bot.start()
    await _until_told()
    await bot.stop()
    await store.close()


PROFILE = cProfile.Profile()


async def _until_told() -> None:
    """Until SIGTERM. From SIGUSR1 to SIGUSR2 the profiler runs: not over the start, not over the end."""
    told = asyncio.Event()
    loop = asyncio.get_running_loop()
    loop.add_signal_handler(signal.SIGTERM, told.set)
    loop.add_signal_handler(signal.SIGUSR1, PROFILE.enable)
    loop.add_signal_handler(signal.SIGUSR2, PROFILE.disable)
    await told.wait()


def main() -> None:
    which, url, database, *rest = sys.argv[1:]
    asyncio.run(tureen(url, database) if which == "tureen" else bare(url, which))
    if rest:
        PROFILE.dump_stats(rest[0])


if __name__ == "__main__":
    main()
