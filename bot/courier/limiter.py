"""How fast the bot may talk.

Figures: about one message a second in one chat, 20 a minute in one group, 30 a second over all (the
platform's bot FAQ; "unspecified, may vary", so a 429 with its own delay overrules them). Only sends
and edits count. Windows slide: in *any* minute at most 20, not 20 a calendar minute. Time is read
from the clock that is handed in, so simulated time works.
"""

from __future__ import annotations

import asyncio
from collections import deque
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from bot.clock import Clock
from bot.storage.pace import Limit, Place

BURST = 3
"""Messages in one chat may come three together, if no three seconds hold more than three."""
BURST_S = 3.0
GROUP_PER_MINUTE = 20
GROUP_EDITS_PER_MINUTE = 14
"""Board edits leave six places a minute for what people asked for."""
ALL_PER_SECOND = 30


@dataclass
class Window:
    """At most `most` in any span of `per_s` seconds. Instants are taken in order."""

    most: int
    per_s: float
    taken: deque[datetime] = field(default_factory=deque)

    def free_at(self, now: datetime, most: int | None = None) -> datetime:
        """The earliest instant, not before `now`, at which one more keeps the rule (or the stricter `most`)."""
        allowed = min(most or self.most, self.most)
        if len(self.taken) < allowed:
            return now
        span = timedelta(seconds=self.per_s)
        # A wall clock set back must not shut the window for as long as it jumped.
        return min(max(now, self.taken[-allowed] + span), now + span)

    def take(self, at: datetime) -> None:
        # A wall clock set back must not shut the window for as long as it jumped.
        while self.taken and self.taken[-1] > at:
            self.taken.pop()
            self.taken.appendleft(at)
        self.taken.append(at)
        while len(self.taken) > self.most:
            self.taken.popleft()

    def idle(self, now: datetime) -> bool:
        return not self.taken or self.taken[-1] + timedelta(seconds=self.per_s) < now


@dataclass
class _Chat:
    burst: Window
    minute: Window | None
    stopped_until: datetime | None = None

    def idle(self, now: datetime) -> bool:
        return (
            self.burst.idle(now)
            and (self.minute is None or self.minute.idle(now))
            and (self.stopped_until is None or self.stopped_until <= now)
        )


class Limiter:
    """`on=False` (only for measuring) lets everything pass at once but the platform's own 429s."""

    def __init__(self, clock: Clock, *, on: bool = True) -> None:
        self._clock = clock
        self._on = on
        self._chats: dict[int, _Chat] = {}
        self._all = Window(ALL_PER_SECOND, 1.0)
        # One waits for the overall rate at a time, the others stand in line: with thousands of chats
        # waiting, each freed place must not wake them all.
        self._door = asyncio.Lock()
        self._since_sweep = 0
        self.in_line = 0
        """How many stand behind the one that waits for the overall rate."""

    async def turn(self, chat_id: int, *, edit: bool = False) -> None:
        """Return when one send or edit may leave for this chat; the place is taken.

        Only one caller per chat at a time.
        """
        while True:
            while (at := self.free_at(chat_id, edit=edit)) > self._clock.now():
                await self._clock.sleep_until(at)
            if not self._on:
                return
            self.in_line += 1
            try:
                await self._door.acquire()
            finally:
                self.in_line -= 1
            try:
                while (at := self._all.free_at(self._clock.now())) > self._clock.now():
                    await self._clock.sleep_until(at)
                # The platform may have stopped the chat while it stood in line.
                if self.free_at(chat_id, edit=edit) <= (now := self._clock.now()):
                    self._take(chat_id, now)
                    return
            finally:
                self._door.release()

    def places(self) -> int:
        """How many sends the overall rate allows right now."""
        if not self._on:
            return ALL_PER_SECOND
        second_ago = self._clock.now() - timedelta(seconds=1)
        return ALL_PER_SECOND - sum(1 for t in self._all.taken if t > second_ago) - self.in_line

    def next_place_at(self) -> datetime:
        """When the overall rate allows one more; now or later."""
        return self._all.free_at(self._clock.now())

    def free_at(self, chat_id: int, *, edit: bool = False) -> datetime:
        """When this chat may speak next, the overall rate aside; now or later."""
        now = self._clock.now()
        chat = self._chat(chat_id, now)
        at = max(now, chat.stopped_until or now)
        if not self._on:
            return at
        at = max(at, chat.burst.free_at(now))
        if chat.minute is not None:
            at = max(at, chat.minute.free_at(now, GROUP_EDITS_PER_MINUTE if edit else None))
        return at

    def place(self, chat_id: int, *, edit: bool = False) -> Place | None:
        """What several replicas together have to keep for one message; None where nothing is limited."""
        if not self._on:
            return None
        limits = [Limit(BURST, BURST_S)]
        if chat_id < 0:
            limits.append(Limit(GROUP_EDITS_PER_MINUTE if edit else GROUP_PER_MINUTE, 60.0))
        return Place(chat_id, tuple(limits), (Limit(ALL_PER_SECOND, 1.0),))

    def stop(self, chat_id: int, seconds: float) -> None:
        """The platform said 429 for this chat: nothing more in it for `seconds`. Other chats go on."""
        now = self._clock.now()
        chat = self._chat(chat_id, now)
        until = now + timedelta(seconds=seconds)
        chat.stopped_until = max(until, chat.stopped_until or until)

    def forget(self) -> None:
        """The clock was set back: nothing remembered says when anything may leave. The platform will."""
        self._chats.clear()
        self._all.taken.clear()

    def moved(self, old: int, new: int) -> None:
        """A group was upgraded: its count goes with it."""
        if (chat := self._chats.pop(old, None)) is not None:
            self._chats[new] = chat

    def _take(self, chat_id: int, now: datetime) -> None:
        chat = self._chat(chat_id, now)
        chat.burst.take(now)
        if chat.minute is not None:
            chat.minute.take(now)
        self._all.take(now)

    def _chat(self, chat_id: int, now: datetime) -> _Chat:
        self._since_sweep += 1
        if self._since_sweep > 1000:
            self._since_sweep = 0
            self._chats = {c: v for c, v in self._chats.items() if not v.idle(now)}
        found = self._chats.get(chat_id)
        if found is None:
            # Ids of groups, supergroups and channels are negative (Bot API, Chat.id as clients use it).
            minute = Window(GROUP_PER_MINUTE, 60.0) if chat_id < 0 else None
            found = self._chats[chat_id] = _Chat(Window(BURST, BURST_S), minute)
        return found
