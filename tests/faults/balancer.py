"""The platform's webhook side with a balancer before the replicas: each update goes to one of them, in
turns, and again - to the next - until one says it is stored. One chat's updates one after the other."""

from __future__ import annotations

import asyncio
import itertools

import aiohttp

from tests.faults.child import SECRET
from tests.faults.platform import Platform, Update

ANSWER_WITHIN_S = 10.0
"""A frozen replica's connections hang: the balancer gives up on it then."""


class Balancer:
    def __init__(self, platform: Platform, urls: list[str]) -> None:
        self._platform = platform
        self._urls = itertools.cycle(urls)
        self._lanes: dict[int, asyncio.Task[None]] = {}
        self._pump: asyncio.Task[None] | None = None
        self.again = 0
        """Deliveries that had to be repeated."""

    async def __aenter__(self) -> Balancer:
        self._client = aiohttp.ClientSession(timeout=aiohttp.ClientTimeout(total=ANSWER_WITHIN_S))
        self._pump = asyncio.create_task(self._deliver())
        return self

    async def __aexit__(self, *_: object) -> None:
        tasks = [t for t in (self._pump, *self._lanes.values()) if t is not None]
        for task in tasks:
            task.cancel()
        await asyncio.gather(*tasks, return_exceptions=True)
        await self._client.close()

    async def _deliver(self) -> None:
        while True:
            self._platform.news.clear()
            for lane in {u.lane for u in self._platform.waiting} - self._lanes.keys():
                self._lanes[lane] = asyncio.create_task(self._lane(lane))
            await self._platform.news.wait()

    async def _lane(self, lane: int) -> None:
        try:
            while update := next((u for u in self._platform.waiting if u.lane == lane), None):
                while not await self._post(update):
                    self.again += 1
                    await asyncio.sleep(0.3)
                self._platform.waiting.remove(update)
        finally:
            del self._lanes[lane]
            self._platform.news.set()

    async def _post(self, update: Update) -> bool:
        self._platform.handed[update.id] += 1
        headers = {"X-Telegram-Bot-Api-Secret-Token": SECRET}
        body = {"update_id": update.id, **update.body}
        try:
            async with self._client.post(next(self._urls), json=body, headers=headers) as answer:
                return answer.status == 200
        except (aiohttp.ClientError, TimeoutError):
            return False
