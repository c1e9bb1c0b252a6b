"""Once a day: old potlucks with everything personal in them go, and what need not be kept.

A house rule of the chat, not a whim of the clock: it only ever forgets what is older than the set
number of days, so a run that is late, missed or doubled (several replicas) changes nothing.
"""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

from bot import log
from bot.clock import Clock
from bot.storage.errors import StorageError
from bot.storage.store import Store

_log = log.get("housekeeping")

KEEP_DAYS = 60
"""How long a potluck is kept after its start (common practice, no source)."""
EVERY = timedelta(days=1)
FIRST = timedelta(minutes=5)
"""After a start: the day's first minutes belong to what waited. A process restarted daily still cleans."""


class Housekeeping:
    def __init__(self, store: Store, clock: Clock, keep_days: int = KEEP_DAYS) -> None:
        """`keep_days`: 1 or more."""
        self._store = store
        self._clock = clock
        self._kept = timedelta(days=keep_days)
        self._task: asyncio.Task[None] | None = None

    def start(self) -> None:
        if self._task is None:
            self._task = asyncio.create_task(self._daily(), name="housekeeping")

    def cancel(self) -> None:
        if self._task is not None:
            self._task.cancel()
            self._task = None

    async def once(self) -> int:
        """Do it now; returns how many potlucks went. Raises StorageError."""
        now = self._clock.now()
        gone = await self._store.delete_potlucks_before(now - self._kept)
        await self._store.prune(now)
        return gone

    async def _daily(self) -> None:
        when: datetime = self._clock.now() + FIRST
        while True:
            # `schedule`: a bot that only waits for tomorrow is at rest.
            await self._clock.sleep_until(when, schedule=True)
            try:
                gone = await self.once()
                _log.info("old potlucks removed", potlucks=gone, kept_days=self._kept.days)
            except StorageError as fault:
                _log.warning("storage can't be used now", what=fault.key)
            except Exception:
                # Tomorrow is another day: one fault must not end the cleaning for good.
                _log.exception("housekeeping failed")
            when = self._clock.now() + EVERY
