"""The courier: one worker for each chat that has something to send, gone when it is idle.

Everything to send is in the database. The sorter claims what may leave - of each chat only the oldest
post, so that order is kept - and hands it to the chat's worker; between posts a worker refreshes its
chat's boards. Nothing is lost when any of them dies.
"""

from __future__ import annotations

import asyncio
import secrets
from collections import OrderedDict
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

import telegram

from bot import log
from bot.clock import Clock, RealClock
from bot.courier.board import Boards
from bot.courier.delivery import Delivery
from bot.courier.desk import Desk
from bot.courier.lane import Lane
from bot.courier.limiter import Limiter
from bot.courier.metrics import Metrics
from bot.courier.reminders import Ticker
from bot.courier.render import Renderer
from bot.courier.sending import Sending
from bot.courier.sorter import Sorter
from bot.courier.waits import Waits
from bot.storage.errors import StorageTrouble
from bot.storage.store import Store
from bot.storage.values import CommitResult, Post

_log = log.get("courier")

TROUBLE_WAIT_S = 5.0
_HOMES_KNOWN = 20_000


@dataclass
class _Chat:
    """What is known, in memory, about a chat with work."""

    news: asyncio.Event = field(default_factory=asyncio.Event)
    hand: list[Post] = field(default_factory=list)
    """Claimed and to be sent, oldest first; more than one only after a lease ran out."""
    boards: dict[str, datetime] = field(default_factory=dict)
    """Potluck id -> when its dirty board may be looked at."""
    task: asyncio.Task[None] | None = None


class Courier:
    """`limits=False` lifts the flood limits (only for measuring). `owner` names this process in leases.
    `replica`: the name this process shares with its earlier lives, of several that work side by side; None
    where there is only one at a time.

    `render` may be set after construction, before `start()`.
    """

    def __init__(
        self,
        bot: telegram.Bot,
        store: Store,
        clock: Clock,
        *,
        limits: bool = True,
        render: Renderer | None = None,
        metrics: Metrics | None = None,
        owner: str | None = None,
        replica: str | None = None,
    ) -> None:
        self._replica = f"{replica}/" if replica else None
        self.owner = owner or f"{self._replica or ''}{secrets.token_hex(6)}"
        self.render = render
        self.people_wait: Callable[[], bool] = lambda: False
        """Whether an update is in work now; may be set after construction."""
        self.metrics = metrics or Metrics()
        self._real = isinstance(clock, RealClock)
        self._clock = Waits(clock)
        self._limiter = Limiter(self._clock, on=limits)
        self._desk = Desk(store, clock, self.owner)
        self._lane = Lane()
        self._boards = Boards(self, bot, self._clock, self._limiter, self._desk, self.metrics)
        self._ticker = Ticker(self, clock, self._desk, self.metrics)
        self._sorter = Sorter(self._desk, self._clock, self._hand_over, self._board_is_dirty, self._limiter, self._lane)
        delivery = Delivery(bot, self._clock, self._limiter, self._desk, self.metrics)
        self._sending = Sending(
            delivery, self._desk, self._clock, self._lane, self._sorter, self._ticker.say_in_group, self.moved
        )
        self._chats: dict[int, _Chat] = {}
        self._homes: OrderedDict[str, int] = OrderedDict()
        self._alive = False

    # --- life ---

    async def start(self) -> None:
        """Take up what an earlier process left, and begin to watch for reminders."""
        self._alive = True
        await self._release_the_dead()
        self._sorter.start()
        self._sorter.look(everything=True)
        if not self._real:
            self._ticker.start()

    async def _release_the_dead(self) -> None:
        try:
            freed = await self._desk.release_the_dead(self._replica)
        except StorageTrouble as trouble:
            # Their leases run out by themselves.
            _log.warning("storage can't be used now", what=trouble.key)
            return
        if freed:
            _log.info("an earlier process had died; what it held is free", claims=freed)

    async def stop(self) -> None:
        """Finish the calls that are being made; what waits stays in the outbox."""
        self._alive = False
        await self._ticker.stop()
        await self._sorter.stop()
        for chat in self._chats.values():
            chat.news.set()
        busy = [t for t in self._workers() if not t.done()]
        if busy:
            # A call is over within its time-outs; a wait for a limit is not worth staying for.
            _, late = await asyncio.wait(busy, timeout=5.0 if self._real else 0.2)
            for task in late:
                task.cancel()
            await asyncio.gather(*late, return_exceptions=True)
        await self._give_back()

    def kill(self) -> list[asyncio.Task[Any]]:
        """The tasks to cancel, as a dying process would."""
        self._alive = False
        doomed = self._workers() + self._ticker.tasks() + self._sorter.tasks()
        self._chats.clear()
        return doomed

    # --- news ---

    def wake(self, result: CommitResult | None = None, *, potlucks: Iterable[str] = ()) -> None:
        """Something was committed: posts, dirty boards, moved reminders. `potlucks`: whose boards may be dirty."""
        if not self._alive:
            return
        touched = {*potlucks, *(result.revisions if result is not None else ())}
        if touched:
            self._ticker.changed()
        homeless = [p for p in touched if p not in self._homes]
        for potluck_id in touched:
            if (chat_id := self._homes.get(potluck_id)) is not None:
                self._board_is_dirty(potluck_id, chat_id)
        self._sorter.look(posts=result is None or bool(result.posts), boards=bool(homeless) or not touched)

    async def tick(self) -> None:
        """Now and then in real time: due reminders, and whatever another process left behind."""
        if not self._alive:
            return
        try:
            await self._look_at_the_clock()
            await self._ticker.tick()
        except StorageTrouble as trouble:
            _log.warning("storage can't be used now", what=trouble.key)
        self._sorter.look(everything=True)

    async def _look_at_the_clock(self) -> None:
        """A wall clock that was set back: what was to wait or be held "until then" would be so for too long."""
        now = self._clock.now()
        if (by := self._clock.set_back()) is None:
            return
        _log.warning("the clock was set back; waits are cut short", by_s=round(by.total_seconds()))
        await self._desk.clock_set_back()
        self._limiter.forget()
        for chat in self._chats.values():
            chat.boards = dict.fromkeys(chat.boards, now)
            chat.news.set()
        # The look that follows finds out anew.
        self._sorter.next_at = None

    async def measure(self) -> None:
        self.metrics.outbox.set(await self._desk.queue_length())
        self.metrics.chats.set(len(self._chats))
        due = await self._desk.next_due()
        late = (self._clock.now() - due).total_seconds() if due is not None else 0.0
        self.metrics.late_s.set(max(0.0, late))

    # --- what the rehearsal player asks ---

    def quiet(self) -> bool:
        """Only waits on the clock are left (or nothing)."""
        working = sum(1 for t in self._workers() if not t.done())
        working -= self._clock.asleep() + self._limiter.in_line + self._lane.in_line
        return working <= 0 and not self._ticker.busy and not self._sorter.busy

    def next_send_at(self) -> datetime | None:
        return min((t for t in (self._clock.first(), self._sorter.next_at) if t is not None), default=None)

    def next_due_at(self) -> datetime | None:
        return self._ticker.next_at

    def reminder_kind(self, chat_id: int, message_id: int) -> str | None:
        return self._sending.reminder_kind(chat_id, message_id)

    def take_failed_reminders(self) -> list[tuple[int, str, str]]:
        return self._sending.take_failed_reminders()

    # --- what others in the courier say ---

    async def moved(self, old: int, new: int) -> None:
        """A group was upgraded: all its rows go with it."""
        _log.info("a group was upgraded", chat=old, new_chat=new)
        await self._desk.move_chat(old, new)
        self._limiter.moved(old, new)
        self._homes = OrderedDict((p, c) for p, c in self._homes.items() if c != old)
        if (left := self._chats.get(old)) is not None:
            left.boards.clear()
        self._sorter.look(everything=True)

    # --- inside ---

    def _workers(self) -> list[asyncio.Task[Any]]:
        return [c.task for c in self._chats.values() if c.task is not None]

    def _hand_over(self, post: Post) -> None:
        chat = self._chat(post.chat_id)
        chat.hand.append(post)
        chat.news.set()

    def _board_is_dirty(self, potluck_id: str, chat_id: int) -> None:
        if not self._alive:
            return
        self._homes[potluck_id] = chat_id
        self._homes.move_to_end(potluck_id)
        if len(self._homes) > _HOMES_KNOWN:
            self._homes.popitem(last=False)
        chat = self._chat(chat_id)
        if potluck_id not in chat.boards:
            chat.boards[potluck_id] = self._boards.next_look(potluck_id)
            chat.news.set()

    def _chat(self, chat_id: int) -> _Chat:
        chat = self._chats.get(chat_id)
        if chat is None:
            chat = self._chats[chat_id] = _Chat()
            chat.task = asyncio.create_task(self._work(chat_id, chat), name=f"courier:{chat_id}")
        return chat

    async def _work(self, chat_id: int, chat: _Chat) -> None:
        try:
            while self._alive and await self._step(chat):
                pass
        except asyncio.CancelledError:
            raise
        except Exception:
            # One chat's trouble stays its own; its rows are still there for the next look.
            _log.exception("a chat's worker failed", chat=chat_id)
        finally:
            if self._alive and self._chats.get(chat_id) is chat:
                del self._chats[chat_id]

    async def _step(self, chat: _Chat) -> bool:
        """Do the next thing or wait for it. False: nothing left."""
        chat.news.clear()
        now = self._clock.now()
        board = min(chat.boards, key=lambda p: (chat.boards[p], p), default=None)
        # A new board appears before what is said about it; later on people's answers come first.
        new_board = board is not None and chat.boards[board] <= now and self._boards.never_shown(board)
        try:
            if chat.hand and not new_board:
                await self._sending.send(chat.hand[0])
                chat.hand.pop(0)
            elif board is not None and chat.boards[board] <= now:
                later = await self._boards.refresh(board)
                chat.boards.pop(board, None)
                if later is not None:
                    chat.boards[board] = later
            elif board is not None:
                await self._clock.sleep_or(chat.news, chat.boards[board])
            else:
                return False
        except StorageTrouble as trouble:
            _log.warning("storage can't be used now", what=trouble.key, again_in_s=TROUBLE_WAIT_S)
            await self._clock.sleep(TROUBLE_WAIT_S)
        return True

    async def _give_back(self) -> None:
        """Claimed, but not begun: the next process need not wait for the claim to run out."""
        now = self._clock.now()
        for chat in self._chats.values():
            for post in chat.hand:
                try:
                    await self._desk.give_back(post, now)
                except StorageTrouble:
                    return
        self._chats.clear()
