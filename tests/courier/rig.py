"""A small bot around the courier: the real client library over loopback HTTP, the real storage, and a
handler of a few lines in place of the capabilities, so that what is tested is taking and sending."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import telegram

from bot.app import TureenBot
from bot.clock import SimulatedClock
from bot.courier import Drawn, ReminderCase
from bot.room.room import Room
from bot.room.server import RoomServer
from bot.room.world import Seen
from bot.storage import Batch, ChatRecord, PersonRecord, Post, PotluckPlace, Store, Stored
from bot.storage.errors import AlreadyTaken
from planning.potluck import Guest, Potluck, Say

START = datetime(2027, 9, 10, 14, 0, tzinfo=UTC)  # 09:00 in Chicago
ZONE = "America/Chicago"


@dataclass(frozen=True)
class Due:
    """A reminder as planning derives them."""

    key: str
    due_at: datetime
    kind: str = "bring"
    to: str = "group"
    expires_at: datetime = START + timedelta(days=30)
    about: Say = field(default_factory=lambda: Say("about", {}))


@dataclass
class Words:
    """A renderer that says little but exactly."""

    boards: int = 0
    reminders: list[ReminderCase] = field(default_factory=list)

    async def board(self, stored: Stored, chat: ChatRecord | None, now: datetime) -> Drawn:
        self.boards += 1
        names = ", ".join(g.name for g in stored.potluck.guests)
        return Drawn(f"<b>Board</b> {stored.revision}: {names}", [[{"label": "Coming", "data": "c"}]])

    async def reminder(self, case: ReminderCase) -> Post | None:
        self.reminders.append(case)
        who = "group" if case.private_to is None else "you"
        return Post(0, "send", {"text": f"{case.kind} for {who}: {', '.join(r.key for r in case.rows)}"})

    async def notice(self, stored: Stored | None, chat: ChatRecord | None, key: str, facts: Any) -> str | None:
        return f"notice {key}"


class Rig:
    def __init__(self, folder: Path, clock: SimulatedClock | None = None) -> None:
        self.clock = clock or SimulatedClock(START)
        self.room = Room(self.clock, sees_all=True)
        self.server = RoomServer(self.room)
        self.folder = folder
        self.words = Words()
        self.seen: list[tuple[int, str]] = []
        self.during: Callable[[telegram.Update], Awaitable[None]] | None = None
        self.ines = self.room.add_person("Inés").id
        self.ravi = self.room.add_person("Ravi").id
        self.group = self.room.add_group("Plot 9", self.ines, (self.ravi,)).id
        self.room.add_bot(self.group, self.ines, quietly=True)
        self.store: Store
        self.bot: TureenBot

    async def __aenter__(self) -> Rig:
        await self.server.start()
        self.store = await Store.open(f"sqlite+aiosqlite:///{self.folder / 'rig.db'}", durable=False)
        self.make()
        await self.bot.start()
        return self

    async def __aexit__(self, *_: object) -> None:
        await self.bot.stop()
        await self.store.close()
        await self.server.stop()

    def make(self, **more: Any) -> TureenBot:
        """A fresh process on the same database."""
        self.bot = TureenBot(
            token=self.room.token,
            base_url=self.server.base_url,
            base_file_url=self.server.base_file_url,
            store=self.store,
            clock=self.clock,
            handle=self.handle,
            **more,
        )
        self.bot.courier.render = self.words
        return self.bot

    async def handle(self, update: telegram.Update) -> None:
        """Every update becomes one commit; a text beginning with "!" dirties the board, others are repeated."""
        text = update.effective_message.text if update.effective_message else None
        if update.callback_query is not None:
            text = "!press"
        if text is None or update.effective_chat is None:
            return
        if self.during is not None:
            await self.during(update)
        posts: tuple[Post, ...] = ()
        changed: tuple[tuple[Stored, Potluck], ...] = ()
        dirty: tuple[tuple[str, datetime], ...] = ()
        now = self.clock.now()
        if text.startswith("!"):
            stored = await self.store.potluck("p1")
            assert stored is not None
            guest = Guest(f"n{update.update_id}", text[1:])
            changed = ((stored, _with(stored.potluck, guest)),)
            dirty = (("p1", now),)
        else:
            posts = (Post(update.effective_chat.id, "send", {"text": text, "about": "echo"}),)
        batch = Batch(now=now, update_id=update.update_id, posts=posts, changed=changed, dirty_boards=dirty)
        try:
            result = await self.store.commit(batch)
        except AlreadyTaken:
            return
        self.seen.append((update.update_id, text))
        if update.callback_query is not None:
            await update.callback_query.answer("noted")
        self.bot.courier.wake(result)

    async def add_potluck(self, *due: Due, can_dm: tuple[int, ...] = (), **place: Any) -> None:
        potluck = Potluck(
            "p1",
            START + timedelta(days=8),
            ZONE,
            host=str(self.ines),
            guests=(Guest(str(self.ines), "Inés"), Guest(str(self.ravi), "Ravi")),
        )
        people = tuple(
            PersonRecord(i, self.room.user(i).first_name, can_dm=i in can_dm) for i in (self.ines, self.ravi)
        )
        batch = Batch(
            now=self.clock.now(),
            chats=(ChatRecord(self.group, "group", "Plot 9", timezone=ZONE),),
            people=people,
            new_potlucks=((potluck, PotluckPlace("p1", self.group, **place)),),
            reminders=(("p1", due),),
            dirty_boards=(("p1", self.clock.now()),),
        )
        self.bot.courier.wake(await self.store.commit(batch))

    async def change(self, name: str, *, lost: bool = False, wake: bool = True) -> None:
        """Somebody named `name` joins; `lost`: the board is to be posted anew."""
        stored = await self.store.potluck("p1")
        assert stored is not None
        after = _with(stored.potluck, Guest(f"n{len(stored.potluck.guests)}", name))
        now = self.clock.now()
        batch = Batch(
            now=now, changed=((stored, after),), dirty_boards=(("p1", now),), lost_boards=("p1",) if lost else ()
        )
        result = await self.store.commit(batch)
        if wake:
            self.bot.courier.wake(result)

    # --- time and idleness ---

    async def settle(self, *, waits: bool = True) -> None:
        """Until the bot is idle; waits for limits and retries run on the simulated clock when `waits`."""
        calm = 0
        while True:
            await asyncio.sleep(0.002)
            if self.room.updates_pending() or self.room.requests_in_flight() or not self.bot.quiet():
                calm = 0
                continue
            calm += 1
            if calm < 3:
                continue
            at = self.clock.next_wake(schedule=False) if waits else None
            if at is None:
                return
            self.clock.set(at)
            calm = 0

    @staticmethod
    async def until(true: Callable[[], object]) -> None:
        """Until something outside our reach (the platform's side, the library) has happened."""
        while not true():  # noqa: ASYNC110
            await asyncio.sleep(0.002)

    async def go_to(self, when: datetime) -> None:
        """Move time forward, with everything due on the way."""
        await self.settle()
        while (at := self.clock.next_wake()) is not None and at <= when:
            self.clock.set(at)
            await self.settle()
        self.clock.set(when)
        await self.settle()

    async def pass_s(self, seconds: float) -> None:
        await self.go_to(self.clock.now() + timedelta(seconds=seconds))

    # --- what is seen ---

    def shown(self, chat_id: int, *kinds: str) -> list[Seen]:
        """What the bot showed in a chat, of these kinds."""
        me = self.room.bot.id
        return [s for s in self.room.log if s.chat_id == chat_id and s.sender == me and s.kind in kinds]

    def texts(self, chat_id: int, *kinds: str) -> list[str]:
        return [s.text for s in self.shown(chat_id, *(kinds or ("message",)))]

    async def given_up(self, chat_id: int) -> list[str | None]:
        return [p.why for p in await self.store.given_up(chat_id)]


def _with(potluck: Potluck, guest: Guest) -> Potluck:
    return replace(potluck, guests=(*potluck.guests, guest))
