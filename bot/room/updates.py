"""The bot's queue of updates: emitted once, kept a day, gone when confirmed."""

from __future__ import annotations

import asyncio
import itertools
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

KINDS = (
    "message", "edited_message", "channel_post", "edited_channel_post", "business_connection",
    "business_message", "edited_business_message", "deleted_business_messages", "guest_message",
    "message_reaction", "message_reaction_count", "inline_query", "chosen_inline_result", "callback_query",
    "shipping_query", "pre_checkout_query", "purchased_paid_media", "poll", "poll_answer", "my_chat_member",
    "chat_member", "chat_join_request", "chat_boost", "removed_chat_boost", "managed_bot",
)  # fmt: skip
ON_REQUEST = ("chat_member", "message_reaction", "message_reaction_count")
"""Sent only to a bot that names them in allowed_updates."""
KEPT = timedelta(days=1)
FIRST_ID = 410_000_001


@dataclass(frozen=True)
class Queued:
    id: int
    body: dict[str, object]
    at: datetime
    lane: int
    """Updates of one lane (a chat) are delivered to a webhook one after the other."""


class UpdateQueue:
    """`changed` is set whenever something is put in or taken out; whoever waits clears it first."""

    def __init__(self, now: Callable[[], datetime], first_id: int = FIRST_ID) -> None:
        self._now = now
        self._ids = itertools.count(first_id)
        self.waiting: list[Queued] = []
        self.allowed: tuple[str, ...] | None = None
        self.arrived = asyncio.Event()
        self.on_change: list[Callable[[], None]] = []
        self.emitted: list[dict[str, object]] | None = None
        """A list here keeps a copy of everything ever emitted, for tests."""
        self.duplicates = 0
        """Test hook: how many of the next updates are put in twice, with the same id."""
        self.held: list[Queued] | None = None
        """Test hook: a list here holds updates back until `release`."""

    def allow(self, kinds: Iterable[str] | None) -> None:
        """Remember what the bot wants. An empty list means the defaults; unknown words are ignored."""
        if kinds is not None:
            wanted = tuple(k for k in kinds if k in KINDS)
            self.allowed = wanted or None

    def wants(self, kind: str) -> bool:
        return kind not in ON_REQUEST if self.allowed is None else kind in self.allowed

    def emit(self, kind: str, body: dict[str, object], lane: int) -> int | None:
        """Queue an update and return its id, or None where the bot did not ask for its kind."""
        if not self.wants(kind):
            return None
        queued = Queued(next(self._ids), {}, self._now(), lane)
        queued.body.update({"update_id": queued.id, kind: body})
        if self.emitted is not None:
            self.emitted.append(queued.body)
        into = self.waiting if self.held is None else self.held
        into.append(queued)
        if self.duplicates:
            self.duplicates -= 1
            into.append(queued)
        if self.held is None:
            self._wake()
        return queued.id

    def hold(self) -> None:
        self.held = []

    def release(self, order: Callable[[list[Queued]], list[Queued]] = lambda q: q[::-1]) -> None:
        """Deliver what was held back, by default in reverse order."""
        held, self.held = self.held or [], None
        self.waiting += order(held)
        self._wake()

    def repeat(self, update_id: int, body: dict[str, object], lane: int = 0) -> None:
        """Test hook: deliver an update again, though it was confirmed."""
        self.waiting.append(Queued(update_id, body, self._now(), lane))
        self._wake()

    def _wake(self) -> None:
        self.arrived.set()
        for tell in self.on_change:
            tell()

    def confirm_below(self, offset: int) -> None:
        before = len(self.waiting)
        self.waiting = [q for q in self.waiting if q.id >= offset]
        if len(self.waiting) != before:
            self._changed()

    def keep_last(self, count: int) -> None:
        self.waiting = self.waiting[-count:] if count else []
        self._changed()

    def drop_all(self) -> None:
        self.keep_last(0)

    def done(self, queued: Queued) -> None:
        """A webhook took it."""
        self.waiting = [q for q in self.waiting if q is not queued]
        self._changed()

    def forget_old(self) -> None:
        oldest = self._now() - KEPT
        if self.waiting and any(q.at < oldest for q in self.waiting):
            self.waiting = [q for q in self.waiting if q.at >= oldest]
            self._changed()

    def _changed(self) -> None:
        if not self.waiting:
            self.arrived.clear()
        for tell in self.on_change:
            tell()
