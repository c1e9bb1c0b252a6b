"""Updates of one chat one after another, different chats side by side.

The library's `concurrent_updates` alone reorders two messages of one chat. Here each chat has its own
line; a press in the group and a press in a private chat stand in different lines. At most `at_once`
updates are worked on at the same time, and a crowd in one chat can't take all the places: who waits
for its chat's turn holds none. Whose change is stored lets the next of its chat go on (`stored`) while it
is still being acknowledged.
"""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from typing import Any

import telegram
from telegram.ext import BaseUpdateProcessor

AT_ONCE = 64
"""More than one transaction takes together; with the library's own transport more than 16 cost more than they gave,
with ours they don't."""


@dataclass
class _Line:
    lock: asyncio.Lock = field(default_factory=asyncio.Lock)
    people: int = 0


class PerChat(BaseUpdateProcessor):
    def __init__(
        self, at_once: int = AT_ONCE, waiting: int = 1024, done: Callable[[object], None] | None = None
    ) -> None:
        """`waiting`: how many updates may stand in lines before no more are taken from the queue.
        `done` is called with every update that was worked on, but not with one cut off by cancelling."""
        super().__init__(max_concurrent_updates=max(waiting, at_once))
        self._done = done
        self._places = asyncio.Semaphore(at_once)
        self._lines: dict[object, _Line] = {}
        self._held: dict[int, asyncio.Lock] = {}

    async def do_process_update(self, update: object, coroutine: Awaitable[Any]) -> None:
        key = chat_of(update)
        line = self._lines.setdefault(key, _Line())
        line.people += 1
        try:
            if key is not None:
                await line.lock.acquire()
                self._held[id(update)] = line.lock
            async with self._places:
                await coroutine
            if self._done is not None:
                self._done(update)
        finally:
            self.stored(update)
            # A cancelled waiter leaves a coroutine nobody awaited.
            getattr(coroutine, "close", lambda: None)()
            line.people -= 1
            if not line.people:
                self._lines.pop(key, None)

    def stored(self, update: object) -> None:
        """What is left to do for it hinders nobody: its chat's next one may begin."""
        lock = self._held.pop(id(update), None)
        if lock is not None:
            lock.release()

    @property
    def lines(self) -> int:
        """Chats with an update in work or waiting."""
        return len(self._lines)

    async def initialize(self) -> None: ...

    async def shutdown(self) -> None: ...


def chat_of(update: object) -> object:
    """Whose line an update stands in: its chat, else its person, else None (no order to keep)."""
    if not isinstance(update, telegram.Update):
        return None
    if (chat := update.effective_chat) is not None:
        return chat.id
    if (user := update.effective_user) is not None:
        return user.id
    return None
