"""The sorter: one task that looks what may leave and tells the chats' workers."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

from bot import log
from bot.courier.desk import Desk
from bot.courier.lane import Lane
from bot.courier.limiter import Limiter
from bot.courier.waits import Waits
from bot.storage.errors import StorageTrouble
from bot.storage.values import Post

_log = log.get("courier")

LOOKED_THROUGH = 1000
AFTER_TROUBLE = timedelta(seconds=10)
"""So long after a database came back nobody takes over what others' leases ran out of meanwhile: whoever made
those calls writes down first how they ended."""
_NEVER = timedelta(days=1)


class Sorter:
    def __init__(
        self,
        desk: Desk,
        clock: Waits,
        hand_over: Callable[[Post], None],
        board_is_dirty: Callable[[str, int], None],
        limiter: Limiter,
        lane: Lane,
    ) -> None:
        self._desk = desk
        self._clock = clock
        self._hand_over = hand_over
        self._board_is_dirty = board_is_dirty
        self._limiter = limiter
        self._lane = lane
        self._trouble = False
        self._others_from: datetime | None = None
        """From when on others' leases that ran out are believed again."""
        self._news = asyncio.Event()
        self._posts = self._boards = self._waiting = False
        self._resting = False
        self._task: asyncio.Task[None] | None = None
        self.next_at: datetime | None = None
        """When a post that waits may be tried again, as far as known."""

    def start(self) -> None:
        self._task = asyncio.create_task(self._sort(), name="courier:sorter")

    async def stop(self) -> None:
        if self._task is not None:
            self._task.cancel()
            await asyncio.gather(self._task, return_exceptions=True)

    def tasks(self) -> list[asyncio.Task[Any]]:
        return [self._task] if self._task is not None else []

    def look(self, *, posts: bool = False, boards: bool = False, everything: bool = False) -> None:
        """Look soon. `everything`: also when posts that wait, or are held by others, come free."""
        self._posts |= posts or everything
        self._boards |= boards or everything
        self._waiting |= everything
        if self._posts or self._boards:
            self._news.set()

    def look_at(self, when: datetime) -> None:
        """Look for posts at this instant."""
        if self.next_at is None or when < self.next_at:
            self.next_at = when
            self._news.set()

    @property
    def busy(self) -> bool:
        if self._task is None or self._task.done():
            return False
        due = self.next_at is not None and self.next_at <= self._clock.now()
        return not self._resting or self._news.is_set() or due

    async def _sort(self) -> None:
        while True:
            self._news.clear()
            now = self._clock.now()
            if self.next_at is not None and self.next_at <= now:
                self.next_at, self._posts = None, True
                # Others may wait as well, for later.
                self._waiting = True
            try:
                await self._look()
                self._trouble = False
            except StorageTrouble as trouble:
                _log.warning("storage can't be used now", what=trouble.key)
                self._trouble = self._posts = self._boards = self._waiting = True
                self.look_at(now + timedelta(seconds=5))
            except Exception:
                # One fault must not end the sending; the next look comes with the next news or tick.
                _log.exception("the sorter failed")
            if self._news.is_set():
                continue
            self._resting = True
            try:
                if self.next_at is None:
                    await self._news.wait()
                else:
                    await self._clock.sleep_or(self._news, self.next_at, count=False)
            finally:
                self._resting = False

    async def _look(self) -> None:
        if self._posts:
            self._posts = False
            # Only what can leave at once is claimed: what is claimed when a process dies is in doubt.
            places = self._limiter.places()
            reminders, lapsed = self._lane.has_room, self._lapsed()
            posts = await self._desk.claim_posts(places, reminders=reminders, lapsed=lapsed) if places > 0 else ()
            for post in posts:
                self._hand_over(post)
            if len(posts) >= places:
                self.look_at(max(self._limiter.next_place_at(), self._clock.now() + timedelta(milliseconds=20)))
        if self._boards:
            self._boards = False
            for place in await self._desk.dirty_boards():
                self._board_is_dirty(place.potluck_id, place.chat_id)
        if self._waiting:
            self._waiting = False
            now = self._clock.now()
            for post in await self._desk.waiting_posts(LOOKED_THROUGH):
                held = post.state != "pending"
                if held and self._desk.holds(post):
                    # In our own hands: its worker says how it ends.
                    continue
                free = post.lease_until if held else post.not_before
                if free is not None and free > now:
                    self.look_at(free)

    def _lapsed(self) -> datetime:
        """Whose lease ended by then has no post any more."""
        now = self._clock.now()
        if self._trouble:
            self._others_from = now + AFTER_TROUBLE
        if self._others_from is None or self._others_from <= now:
            self._others_from = None
            return now
        self.look_at(self._others_from)
        return now - _NEVER
