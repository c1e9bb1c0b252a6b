"""A real clock moves between two looks at it; a simulated one doesn't, so this needs tests of its own.

Nothing here measures time: each test ends when the thing has happened, and hangs (to be cut off) when it never does.
"""

import asyncio
from datetime import UTC, datetime, timedelta
from itertools import count, pairwise

from bot.courier.limiter import Limiter
from bot.courier.waits import Waits
from tests.courier.rig import START, Rig


class Restless:
    """A clock on which every look is a microsecond later than the one before."""

    def __init__(self, start: datetime = START) -> None:
        self._looks = count()
        self._start = start.astimezone(UTC)

    def now(self) -> datetime:
        return self._start + timedelta(microseconds=next(self._looks))

    async def sleep_until(self, when: datetime, *, schedule: bool = False) -> None:
        self._start = max(self._start, when)
        await asyncio.sleep(0)

    async def sleep(self, seconds: float) -> None:
        await self.sleep_until(self._start + timedelta(seconds=seconds))


async def test_a_place_is_taken_though_time_goes_on() -> None:
    clock = Restless()
    limiter = Limiter(Waits(clock))
    looks = []

    for _ in range(40):
        await limiter.turn(-1)
        looks.append(next(clock._looks))

    assert max(b - a for a, b in pairwise(looks)) < 60


async def test_the_whole_way_works_on_a_restless_clock(rig: Rig) -> None:
    await rig.bot.stop()
    rig.clock = Restless(rig.clock.now())  # type: ignore[assignment]
    await rig.make().start()
    async with asyncio.timeout(20):
        await rig.add_potluck()
        rig.room.say(rig.ravi, rig.group, "hello")
        await rig.until(lambda: len(rig.texts(rig.group)) >= 2)
        rig.room.say(rig.ravi, rig.group, "!more")
        await rig.until(lambda: rig.texts(rig.group, "edit"))

    assert "hello" in rig.texts(rig.group)


async def test_a_wait_that_is_cancelled_while_it_ends_is_cancelled_all_the_same() -> None:
    for turns in range(6):
        waits, news = Waits(Restless()), asyncio.Event()

        async def work(waits: Waits = waits, news: asyncio.Event = news) -> None:
            while True:
                await waits.sleep_or(news, START + timedelta(days=1))
                news.clear()
                await asyncio.Event().wait()

        task = asyncio.create_task(work())
        await asyncio.sleep(0)
        news.set()
        for _ in range(turns):
            await asyncio.sleep(0)
        task.cancel()
        await asyncio.wait({task}, timeout=5)

        assert task.cancelled()
