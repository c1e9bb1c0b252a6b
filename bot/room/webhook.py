"""Delivery to a webhook: POST, secret header, again until taken."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

import aiohttp

if TYPE_CHECKING:
    from .state import State
    from .updates import Queued

FIRST_WAIT = 1.0
LONGEST_WAIT = 60.0
GIVE_UP_GONE = timedelta(hours=23)
ANSWER_WITHIN = 30


class Hook:
    """One chat's updates go one after the other, different chats at the same time, as the platform does."""

    def __init__(self, room: State) -> None:
        self.room = room
        self.url = ""
        self.secret = ""
        self.connections = 40
        self.set_at: datetime | None = None
        self.last_error = ""
        self.last_error_at = 0
        self._gone_since: datetime | None = None
        self._busy: dict[int, asyncio.Task[None]] = {}
        self._client: aiohttp.ClientSession | None = None
        room.queue.on_change.append(self.push)

    def set(self, url: str, secret: str, connections: int, now: datetime | None) -> None:
        self.url, self.secret, self.connections, self.set_at = url, secret, connections, now
        self.last_error, self._gone_since = "", None
        if url:
            self.room.end_poll("conflict")
        self.push()

    def push(self) -> None:
        """Start a delivery for every chat that has something waiting and none under way."""
        if not self.url or not self.room.queue.waiting:
            return
        for queued in self.room.queue.waiting:
            if len(self._busy) >= self.connections:
                return
            if queued.lane not in self._busy:
                self._busy[queued.lane] = asyncio.ensure_future(self._lane(queued.lane))

    async def _lane(self, lane: int) -> None:
        wait = FIRST_WAIT
        try:
            while self.url:
                self.room.queue.forget_old()
                queued = next((q for q in self.room.queue.waiting if q.lane == lane), None)
                if queued is None:
                    return
                retry = await self._post(queued)
                if retry is None:
                    self.room.queue.done(queued)
                    wait = FIRST_WAIT
                else:
                    await self.room.clock.sleep(max(retry, wait))
                    wait = min(wait * 2, LONGEST_WAIT)
        finally:
            del self._busy[lane]
            self.push()

    async def _post(self, queued: Queued) -> float | None:
        """None when taken, else the least seconds to wait (what the bot's server asked for, or 0)."""
        if self._client is None:
            self._client = aiohttp.ClientSession(timeout=aiohttp.ClientTimeout(total=ANSWER_WITHIN))
        headers = {"X-Telegram-Bot-Api-Secret-Token": self.secret} if self.secret else {}
        try:
            async with self._client.post(self.url, json=queued.body, headers=headers) as answer:
                status, asked = answer.status, answer.headers.get("Retry-After", "")
        except (aiohttp.ClientError, TimeoutError) as error:
            self._failed(f"Connection failed: {type(error).__name__}")
            return 0.0
        if 200 <= status < 300:
            self._gone_since = None
            return None
        self._failed(f"Wrong response from the webhook: {status}")
        if status == 410:
            self._gone_since = self._gone_since or self.room.clock.now()
            if self.room.clock.now() - self._gone_since >= GIVE_UP_GONE:
                self.url = ""
        return min(float(asked), 3600.0) if asked.isdecimal() else 0.0

    def _failed(self, why: str) -> None:
        self.last_error, self.last_error_at = why, int(self.room.clock.now().timestamp())

    async def close(self) -> None:
        self.url = ""
        for task in list(self._busy.values()):
            task.cancel()
        await asyncio.gather(*self._busy.values(), return_exceptions=True)
        if self._client is not None:
            await self._client.close()
