"""The board editor: however often a board is dirtied, it is drawn once, from the newest state.

One mark a potluck ("dirty since", growing) says that the board is behind. Edits of one board are at
least `GAP_S` apart; the first one after a quiet time leaves at once. A crash between the platform's
answer and the record means at worst the same edit once more, or a second board, of which the newer
one is kept: a board that is missing would be worse.
"""

from __future__ import annotations

import asyncio
import hashlib
import json
from collections import OrderedDict
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any

import telegram
from telegram.error import TelegramError

from bot import log
from bot.courier.calls import call
from bot.courier.delivery import RETRY_S
from bot.courier.desk import Desk
from bot.courier.faults import Fate, Kind, fate_of
from bot.courier.limiter import Limiter
from bot.courier.metrics import Metrics
from bot.courier.render import Drawn, Renderer
from bot.courier.waits import Waits
from bot.storage.errors import StorageError
from bot.storage.values import ChatRecord, Post, PotluckPlace, Stored

if TYPE_CHECKING:
    from bot.courier.courier import Courier

_log = log.get("board")

GAP_S = 3.0
PATIENCE_S = 0.02
"""In real time, so long at most a board waits to be drawn while somebody's update is in work."""
_REMEMBERED = 10_000


class Boards:
    def __init__(
        self, courier: Courier, bot: telegram.Bot, clock: Waits, limiter: Limiter, desk: Desk, metrics: Metrics
    ) -> None:
        self._courier = courier
        self._bot = bot
        self._clock = clock
        self._limiter = limiter
        self._desk = desk
        self._metrics = metrics
        self._edited_at: OrderedDict[str, datetime] = OrderedDict()
        self._shown: OrderedDict[str, tuple[int, str]] = OrderedDict()
        self._failures: dict[str, int] = {}
        self._asked_to_pin: set[int] = set()
        self._drawing = asyncio.Lock()

    def next_look(self, potluck_id: str) -> datetime:
        """When this board may be edited next: now or later."""
        now = self._clock.now()
        last = self._edited_at.get(potluck_id)
        if last is None or last > now:
            # The second: the wall clock was set back, which must not hold a board for as long as it jumped.
            return now
        return max(last + timedelta(seconds=GAP_S), now)

    def never_shown(self, potluck_id: str) -> bool:
        """Whether this process has not yet tried to show this board."""
        return potluck_id not in self._edited_at

    async def refresh(self, potluck_id: str) -> datetime | None:
        """Bring the board up to date. An instant: look again then; None: it is, or given up for now."""
        # The clock is read after the instant it is compared with: a real one moves on in between.
        if (due := self.next_look(potluck_id)) > self._clock.now():
            return due
        stored = await self._desk.stored(potluck_id)
        if stored is None or stored.place.board_dirty_since is None or self._courier.render is None:
            return None
        chat_id, edit = stored.place.chat_id, stored.place.board_message_id is not None
        # Not waited for here: the chat's messages must not stand behind its board.
        if (free := self._limiter.free_at(chat_id, edit=edit)) > self._clock.now():
            return free
        await self._limiter.turn(chat_id, edit=edit)
        place = self._limiter.place(chat_id, edit=edit)
        if (held := await self._desk.claim_board(potluck_id, place)) is not None:
            # Another replica is at it; a moment later it is either done or ours to do.
            return max(held, self._clock.now() + timedelta(seconds=GAP_S))
        return await self._draw(potluck_id, self._courier.render)

    async def _draw(self, potluck_id: str, render: Renderer) -> datetime | None:
        """Show the board that was claimed; how it ends also ends the claim."""
        async with self._drawing:
            await self._people_first()
            made = await self._make(potluck_id, render)
        if made is None:
            return None
        stored, chat, drawn = made
        place = stored.place
        try:
            message_id = await self._show(place, drawn)
        except (TelegramError, OSError) as fault:
            return await self._failed(stored, fate_of(fault, place.chat_id))
        self._failures.pop(potluck_id, None)
        pinned = place.board_pinned
        if message_id != place.board_message_id:
            # Stored before it is pinned: a crash in between must not make a second board.
            await self._desk.board_posted(place, message_id)
            pinned = await self._pin(stored, chat, message_id)
        await self._desk.board_shown(place, message_id, pinned=pinned)
        newest = await self._desk.stored(potluck_id)
        if newest is None or newest.place.board_dirty_since is None:
            return None
        return self.next_look(potluck_id)

    async def _make(self, potluck_id: str, render: Renderer) -> tuple[Stored, ChatRecord | None, Drawn] | None:
        """The claimed board as it should be now. None: nothing to show, and the claim is ended."""
        # Read after the place was taken, so that what is drawn is the newest.
        stored = await self._desk.stored(potluck_id)
        if stored is None or stored.place.board_dirty_since is None:
            await self._desk.leave_board(potluck_id)
            return None
        place = stored.place
        chat = await self._desk.chat(place.chat_id)
        self._remember(self._edited_at, potluck_id, self._clock.now())
        try:
            return stored, chat, await render.board(stored, chat, self._clock.now())
        except StorageError:
            raise
        except Exception:
            # Given up until the next change there; the chat's messages go on all the same.
            _log.exception("a board can't be drawn", chat=place.chat_id, potluck=potluck_id)
            self._metrics.boards.labels("failed").inc()
            await self._desk.board_shown(place, place.board_message_id, pinned=place.board_pinned)
            return None

    async def _people_first(self) -> None:
        """Drawing takes some milliseconds in which nobody is answered: boards are drawn one at a time, between
        people's updates where there are pauses."""
        now = asyncio.get_running_loop().time
        until = now() + PATIENCE_S
        while True:
            # At least once, so that what came while the last board was drawn is seen.
            await asyncio.sleep(0.001)
            if not self._courier.people_wait() or now() >= until:
                return

    async def _show(self, place: PotluckPlace, drawn: Drawn) -> int:
        """Edit the board, or post it where there is none that can be edited. Its message id."""
        payload: dict[str, Any] = {"text": drawn.text, "buttons": drawn.buttons, "silent": True}
        mark = hashlib.blake2b(json.dumps([drawn.text, drawn.buttons]).encode(), digest_size=16).hexdigest()
        message_id = place.board_message_id
        if message_id is not None:
            if self._shown.get(place.potluck_id) == (message_id, mark):
                self._metrics.boards.labels("unchanged").inc()
                return message_id
            try:
                await self._call("edit", place, {**payload, "message_id": message_id})
                self._metrics.boards.labels("edited").inc()
            except TelegramError as fault:
                fate = fate_of(fault, place.chat_id)
                if fate.kind is Kind.LOST:
                    _log.info("the board can't be edited any more; it is posted anew", chat=place.chat_id)
                    message_id = None
                    await self._limiter.turn(place.chat_id)
                elif fate.kind is not Kind.FINE:
                    raise
        if message_id is None:
            message_id = await self._call("send", place, payload)
            assert message_id is not None
            self._metrics.boards.labels("posted").inc()
        self._remember(self._shown, place.potluck_id, (message_id, mark))
        return message_id

    async def _call(self, method: str, place: PotluckPlace, payload: dict[str, Any]) -> int | None:
        thread_id, as_plain = place.thread_id, False
        while True:
            try:
                return await call(
                    self._bot, method, place.chat_id, payload, thread_id=thread_id, as_plain=as_plain
                )
            except TelegramError as fault:
                fate = fate_of(fault, place.chat_id)
                if fate.kind is Kind.NO_THREAD and thread_id is not None:
                    thread_id = None
                elif fate.kind is Kind.PLAIN and not as_plain:
                    _log.error("the board's markup was refused", why=fate.why)
                    as_plain = True
                else:
                    raise

    async def _failed(self, stored: Stored, fate: Fate) -> datetime | None:
        place, now = stored.place, self._clock.now()
        await self._desk.leave_board(place.potluck_id)
        self._metrics.boards.labels("failed").inc()
        self._metrics.api_errors.labels(fate.kind.value).inc()
        # Whatever was shown last is not certain any more.
        self._shown.pop(place.potluck_id, None)
        if fate.kind is Kind.WAIT:
            self._limiter.stop(place.chat_id, fate.seconds)
            return now + timedelta(seconds=fate.seconds)
        if fate.kind is Kind.MOVED and fate.new_chat_id is not None:
            await self._courier.moved(place.chat_id, fate.new_chat_id)
            return None
        tries = self._failures[place.potluck_id] = self._failures.get(place.potluck_id, 0) + 1
        if fate.kind in (Kind.LATER, Kind.DOUBT):
            return now + timedelta(seconds=fate.seconds or RETRY_S[min(tries, len(RETRY_S)) - 1])
        if fate.kind is Kind.REFUSED and tries <= 3:
            return now + timedelta(seconds=RETRY_S[tries - 1])
        # Given up until the next change there: the board is marked as if it were up to date.
        _log.warning("the board can't be shown", chat=place.chat_id, potluck=place.potluck_id, why=fate.why)
        self._failures.pop(place.potluck_id, None)
        await self._desk.board_shown(place, place.board_message_id, pinned=place.board_pinned)
        return None

    async def _pin(self, stored: Stored, chat: ChatRecord | None, message_id: int) -> bool:
        place = stored.place
        for wait_s in (*RETRY_S[:3], None):
            try:
                await call(self._bot, "pin", place.chat_id, {"message_id": message_id})
                return True
            except (TelegramError, OSError) as fault:
                fate = fate_of(fault, place.chat_id)
                if fate.kind in (Kind.LATER, Kind.DOUBT, Kind.WAIT) and wait_s is not None:
                    await self._clock.sleep(max(wait_s, fate.seconds))
                    continue
                _log.info("the board is not pinned", chat=place.chat_id, why=fate.why)
                if fate.kind is Kind.NO_RIGHT:
                    await self._ask_to_pin(stored, chat)
                return False
        return False

    async def _ask_to_pin(self, stored: Stored, chat: ChatRecord | None) -> None:
        """One plain sentence, once a chat."""
        chat_id = stored.place.chat_id
        if self._courier.render is None or chat_id in self._asked_to_pin:
            return
        self._asked_to_pin.add(chat_id)
        text = await self._courier.render.notice(stored, chat, "courier-pin-refused", {})
        if text and await self._desk.first_time(chat_id, "asked-to-pin"):
            post = Post(
                chat_id, "send", {"text": text, "silent": True}, thread_id=stored.place.thread_id,
                potluck_id=stored.potluck.id,
            )
            self._courier.wake(await self._desk.post(post))

    @staticmethod
    def _remember(memory: OrderedDict[str, Any], key: str, value: Any) -> None:
        memory[key] = value
        memory.move_to_end(key)
        while len(memory) > _REMEMBERED:
            memory.popitem(last=False)
