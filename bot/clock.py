"""The only file that reads the clock.

Everything else is told the time. `RealClock` is the wall clock; `SimulatedClock` stands still until
somebody moves it, and wakes the sleepers it passes in order of their times.
"""

from __future__ import annotations

import asyncio
import heapq
import itertools
from datetime import UTC, datetime, timedelta
from typing import Protocol


class Clock(Protocol):
    def now(self) -> datetime:
        """Now, aware, in UTC."""
        ...

    async def sleep_until(self, when: datetime, *, schedule: bool = False) -> None:
        """Return at `when` or at once if it has passed.

        `schedule` marks a wait for something planned ahead (a reminder), in contrast to a wait that
        stands between the bot and being idle (a rate limit, a retry).
        """
        ...

    async def sleep(self, seconds: float) -> None: ...


class RealClock:
    def now(self) -> datetime:
        return datetime.now(UTC)

    async def sleep_until(self, when: datetime, *, schedule: bool = False) -> None:
        # In steps, because a wall clock set back or forward tells nobody: it is noticed within a minute.
        while (left := (when - self.now()).total_seconds()) > 0:  # noqa: ASYNC110
            await asyncio.sleep(min(left, 60.0))

    async def sleep(self, seconds: float) -> None:
        await asyncio.sleep(seconds)


class SimulatedClock:
    def __init__(self, start: datetime) -> None:
        self._now = start.astimezone(UTC)
        self._order = itertools.count()
        self._sleepers: list[tuple[datetime, int, bool, asyncio.Future[None]]] = []

    def now(self) -> datetime:
        return self._now

    async def sleep_until(self, when: datetime, *, schedule: bool = False) -> None:
        when = when.astimezone(UTC)
        if when <= self._now:
            await asyncio.sleep(0)
            return
        woken: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        heapq.heappush(self._sleepers, (when, next(self._order), schedule, woken))
        await woken

    async def sleep(self, seconds: float) -> None:
        await self.sleep_until(self._now + timedelta(seconds=seconds))

    def next_wake(self, *, schedule: bool | None = None) -> datetime | None:
        """The earliest time anybody sleeps until; `schedule` narrows it to one sort of wait."""
        self._sleepers = [s for s in self._sleepers if not s[3].done()]
        heapq.heapify(self._sleepers)
        times = [s[0] for s in self._sleepers if schedule is None or s[2] is schedule]
        return min(times, default=None)

    def set(self, when: datetime) -> None:
        """Move forward to `when` (never back) and wake everybody whose time has come, in order."""
        self._now = max(self._now, when.astimezone(UTC))
        while self._sleepers and self._sleepers[0][0] <= self._now:
            woken = heapq.heappop(self._sleepers)[3]
            if not woken.done():
                woken.set_result(None)
