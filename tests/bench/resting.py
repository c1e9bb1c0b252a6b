"""What one board costs when many potlucks lie in the database, and what the bot costs when nobody writes.

A refresh as the courier makes it, without the platform: which boards are behind, the potluck with its place
and chat, the drawing, the mark that it was shown. The potluck changes before each, so nothing is cached whole.
"""

from __future__ import annotations

import asyncio
import statistics
import tempfile
import time
from contextlib import AsyncExitStack
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from bot.buttons import Signer
from bot.registry import load
from bot.renderer import BotRenderer
from bot.storage import Batch, PotluckPlace, Store
from planning.potluck import Answer, Guest, Potluck
from tests.bench.platform import TOKEN, Platform
from tests.bench.press import Bot

NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)
FEW, MANY = 10, 10_000
REFRESHES = 200
GUESTS = 20
IDLE_S = 20.0


async def _filled(store: Store, potlucks: int) -> None:
    for first in range(0, potlucks, 500):
        some = range(first, min(first + 500, potlucks))
        new = tuple((_potluck(n), PotluckPlace(f"p{n}", -1000 - n, board_message_id=n + 1)) for n in some)
        await store.commit(Batch(now=NOW, new_potlucks=new))


def _potluck(n: int) -> Potluck:
    guests = tuple(Guest(str(i), f"Guest {i}") for i in range(GUESTS))
    return Potluck(f"p{n}", NOW + timedelta(days=n % 30 + 1), "America/Chicago", host="0", guests=guests)


async def refreshes_s(store: Store, renderer: BotRenderer) -> list[float]:
    """Seconds of each refresh, after a change of one guest's answer."""
    found = []
    for n in range(REFRESHES):
        before = await store.potluck(f"p{n % FEW}")
        assert before is not None
        guest = replace(before.potluck.guests[n % GUESTS], answer=Answer.YES if n // GUESTS % 2 else Answer.MAYBE)
        at = n % GUESTS
        after = replace(before.potluck, guests=(*before.potluck.guests[:at], guest, *before.potluck.guests[at + 1 :]))
        await store.commit(Batch(now=NOW, changed=((before, after),), dirty_boards=((after.id, NOW),)))
        began = time.perf_counter()
        (place,) = await store.dirty_boards(100)
        stored = await store.potluck(place.potluck_id)
        assert stored is not None
        await renderer.board(stored, await store.chat(place.chat_id), NOW)
        await store.board_sent(place.potluck_id, place.board_message_id, False, stored.place.board_dirty_since)
        found.append(time.perf_counter() - began)
    return found


async def idle_percent(folder: Path) -> float:
    """CPU of the whole bot, polling, while nothing happens, in percent of one core."""
    async with Platform() as platform, Bot("tureen", platform, folder) as bot:
        await asyncio.sleep(2.0)
        before = bot.cpu_s()
        await asyncio.sleep(IDLE_S)
        return (bot.cpu_s() - before) / IDLE_S * 100


async def run(rounds: int) -> list[str]:
    renderer = BotRenderer(load(), Signer(TOKEN), "bench_bot")
    medians: dict[int, list[float]] = {FEW: [], MANY: []}
    with tempfile.TemporaryDirectory() as name:
        async with AsyncExitStack() as open_:
            stores = {}
            for n in medians:
                url = f"sqlite+aiosqlite:///{Path(name) / f'{n}.db'}"
                stores[n] = await open_.enter_async_context(await Store.open(url))
                await _filled(stores[n], n)
                await refreshes_s(stores[n], renderer)
            for _ in range(rounds):
                for n, store in stores.items():
                    medians[n].append(statistics.median(await refreshes_s(store, renderer)))
        idle = await idle_percent(Path(name))
    few, many = min(medians[FEW]), min(medians[MANY])
    return [
        f"One board refresh (without the platform), {GUESTS} guests, median, best of {rounds} rounds in turns:",
        f"  {FEW:>6} potlucks in the database: {few * 1000:.2f} ms",
        f"  {MANY:>6} potlucks in the database: {many * 1000:.2f} ms ({many / few:.2f} times)",
        f"The bot at rest, polling: {idle:.2f} % of one core over {IDLE_S:.0f} s",
    ]
