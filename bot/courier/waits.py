"""The clock as the courier uses it: it keeps account of who is waiting, so that idleness can be told."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

from bot.clock import Clock

SET_BACK = timedelta(seconds=30)
"""Less than that is a correction, and every wait bears it."""


class Waits:
    """A clock. `asleep()` counts the waits that have not run out: those whose time has come are
    counted as awake although their task did not get its turn yet, so nobody takes a bot for idle
    in the instant between."""

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._looked_at: datetime | None = None
        self._until: dict[object, tuple[datetime, asyncio.Event | None]] = {}

    def now(self) -> datetime:
        return self._clock.now()

    def set_back(self) -> timedelta | None:
        """By how much the wall clock went back since the last time this was asked; None when it did not."""
        now, last = self.now(), self._looked_at
        self._looked_at = now
        return last - now if last is not None and now <= last - SET_BACK else None

    async def sleep_until(self, when: datetime, *, schedule: bool = False) -> None:
        key = object()
        self._until[key] = (when, None)
        try:
            if schedule:
                await self._clock.sleep_until(when, schedule=True)
            else:
                # A span, so that a wall clock set back meanwhile does not lengthen it.
                await self._clock.sleep((when - self.now()).total_seconds())
        finally:
            del self._until[key]

    async def sleep(self, seconds: float) -> None:
        await self.sleep_until(self.now() + timedelta(seconds=seconds))

    async def sleep_or(self, event: asyncio.Event, until: datetime, *, count: bool = True) -> None:
        """Return when `event` is set or at `until`. `count=False`: who waits keeps account of itself."""
        if event.is_set() or until <= self.now():
            return
        key = object()
        if count:
            self._until[key] = (until, event)
        left_s = (until - self.now()).total_seconds()
        tasks = [asyncio.ensure_future(event.wait()), asyncio.ensure_future(self._clock.sleep(left_s))]
        try:
            await asyncio.wait(tasks, return_when=asyncio.FIRST_COMPLETED)
        finally:
            self._until.pop(key, None)
            # Not awaited: a cancellation of ours that came while we waited for theirs would be lost.
            for task in tasks:
                task.cancel()

    def asleep(self) -> int:
        return len(self._running())

    def first(self) -> datetime | None:
        """When the earliest wait runs out."""
        return min(self._running(), default=None)

    def _running(self) -> list[datetime]:
        now = self.now()
        return [u for u, event in self._until.values() if u > now and not (event is not None and event.is_set())]
