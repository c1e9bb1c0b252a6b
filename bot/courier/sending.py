"""A chat's post on its way: its turn in the lane, its delivery, and the record of how that ended."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Awaitable, Callable
from datetime import datetime
from typing import Any

from bot import log
from bot.courier.delivery import Delivery, End, Outcome, reminder_of
from bot.courier.desk import Desk
from bot.courier.lane import Lane
from bot.courier.sorter import Sorter
from bot.courier.waits import Waits
from bot.storage.errors import StorageTrouble
from bot.storage.values import Post

_log = log.get("courier")

RECORD_WAIT_S = 1.0
"""Shorter than others take to claim what is not theirs after a trouble (`sorter.py`)."""
_KINDS_KNOWN = 20_000
_FAILED_KNOWN = 1000


class Sending:
    """`say_in_group`: another way for a reminder whose private chat is closed, True when there is one.
    `moved`: told of a group's old and new id."""

    def __init__(
        self,
        delivery: Delivery,
        desk: Desk,
        clock: Waits,
        lane: Lane,
        sorter: Sorter,
        say_in_group: Callable[[Post], Awaitable[bool]],
        moved: Callable[[int, int], Awaitable[None]],
    ) -> None:
        self._delivery = delivery
        self._desk = desk
        self._clock = clock
        self._lane = lane
        self._sorter = sorter
        self._say_in_group = say_in_group
        self._moved = moved
        self._kinds: OrderedDict[tuple[int, int], str] = OrderedDict()
        self._failed: list[tuple[int, str, str]] = []

    async def send(self, post: Post) -> None:
        """Make the call and record how it ended. Raises StorageTrouble only before the call."""
        if post.reminder_key is None:
            await self._send(post)
            return
        async with self._lane.turn():
            await self._send(post)
        # There is room for one more.
        self._sorter.look(posts=True)

    def reminder_kind(self, chat_id: int, message_id: int) -> str | None:
        return self._kinds.get((chat_id, message_id))

    def take_failed_reminders(self) -> list[tuple[int, str, str]]:
        failed, self._failed = self._failed, []
        return failed

    async def _send(self, post: Post) -> None:
        outcome = await self._delivery.deliver(post)
        if outcome.end is End.SENT:
            self._remember_kind(post, outcome)
            await self._patiently(lambda: self._desk.sent(post, outcome.message_id))
            self._sorter.look(posts=True)
        elif outcome.end in (End.LATER, End.NOT_YET):
            at = outcome.at or self._clock.now()
            await self._patiently(lambda: self._back(post, outcome, at))
            self._sorter.look_at(at)
        elif outcome.end is End.MOVED:
            assert outcome.new_chat_id is not None
            await self._desk.again(post, self._clock.now(), made=False)
            await self._moved(post.chat_id, outcome.new_chat_id)
        elif outcome.end is not End.FENCED:
            await self._patiently(lambda: self._lost(post, outcome))
            self._sorter.look(posts=True)

    async def _back(self, post: Post, outcome: Outcome, at: datetime) -> None:
        if outcome.end is End.LATER:
            await self._desk.again(post, at, made=outcome.made)
        else:
            await self._desk.give_back(post, at)

    def _remember_kind(self, post: Post, outcome: Outcome) -> None:
        about = reminder_of(post)
        if about is not None and outcome.message_id is not None:
            self._kinds[(post.chat_id, outcome.message_id)] = str(about["kind"])
            if len(self._kinds) > _KINDS_KNOWN:
                self._kinds.popitem(last=False)

    async def _patiently(self, record: Callable[[], Awaitable[Any]]) -> None:
        """How a call ended must be recorded, or it would be made again: no step back here."""
        while True:
            try:
                await record()
                return
            except StorageTrouble as trouble:
                _log.warning("how a message ended can't be recorded now", what=trouble.key, again_in_s=RECORD_WAIT_S)
                await self._clock.sleep(RECORD_WAIT_S)

    async def _lost(self, post: Post, outcome: Outcome) -> None:
        if outcome.end is End.BLOCKED:
            await self._desk.cannot_dm(post.chat_id)
            if await self._say_in_group(post):
                # It has another way now; nothing was lost.
                await self._desk.sent(post, None)
                return
        if (about := reminder_of(post)) is not None:
            self._failed = [*self._failed[1 - _FAILED_KNOWN :], (post.chat_id, str(about["kind"]), outcome.why)]
        await self._desk.given_up(post, outcome.why)
