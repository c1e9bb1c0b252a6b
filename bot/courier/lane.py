"""The lane: of what is said again when in doubt, one call at a time is on its way.

A process that dies, or is frozen, between the platform's answer and the record leaves every call that was on its
way in doubt, and each reminder among them is then said once more. With one at a time that is one reminder.
"""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import AsyncIterator

PATIENCE_S = 3.0
"""In real time: a call that hangs for so long no longer holds back the next one ..."""
MOST_HANGING = 8
"""... unless so many hang already."""
SHORT = 8
"""So many at most stand in line before more are claimed: they are others' to send, too, and people's answers are
claimed meanwhile."""


class Lane:
    def __init__(self, patience_s: float = PATIENCE_S) -> None:
        self._lock = asyncio.Lock()
        self._patience_s = patience_s
        self._hanging = 0
        self.in_line = 0
        """How many stand behind the one on its way."""

    @property
    def has_room(self) -> bool:
        return self.in_line < SHORT

    @contextlib.asynccontextmanager
    async def turn(self) -> AsyncIterator[None]:
        """Wait for one's turn; it lasts until the end of the block, or until patience with it is over."""
        self.in_line += 1
        try:
            await self._lock.acquire()
        finally:
            self.in_line -= 1
        hangs = False

        def give_way() -> None:
            nonlocal hangs
            if self._hanging < MOST_HANGING:
                hangs = True
                self._hanging += 1
                self._lock.release()

        timer = asyncio.get_running_loop().call_later(self._patience_s, give_way)
        try:
            yield
        finally:
            timer.cancel()
            if hangs:
                self._hanging -= 1
            else:
                self._lock.release()
