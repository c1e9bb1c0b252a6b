"""The real handlers on a real SQLite store, without platform and courier: updates in, what is stored out.

Fast enough for thousands of random chats. What would be sent stays in the outbox, where it can be read.
"""

from __future__ import annotations

import asyncio
import copy
import itertools
import shutil
import tempfile
from collections import Counter
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import telegram

from bot.buttons import Signer
from bot.clock import SimulatedClock
from bot.dispatch import Dispatcher
from bot.events import Event
from bot.registry import Registry, load
from bot.renderer import BotRenderer
from bot.services import Services
from bot.storage import Batch, ChatRecord, Store, Stored
from tests.faults.platform import BOT, TOKEN, someone

START = datetime(2027, 9, 10, 14, tzinfo=UTC)


class MuteBot:
    """What the dispatcher asks of the client library's bot; everybody is a member, nobody an administrator."""

    id = int(str(BOT["id"]))
    username = str(BOT["username"])
    defaults = None

    def __init__(self) -> None:
        self.answers: Counter[str] = Counter()
        self.toasts: list[str] = []

    async def answer_callback_query(self, query_id: str, text: str | None = None, **_: Any) -> bool:
        self.answers[query_id] += 1
        self.toasts.append(text or "")
        return True

    async def get_chat_administrators(self, chat_id: int, **_: Any) -> tuple[Any, ...]:
        return ()

    async def get_chat_member(self, chat_id: int, user_id: int, **_: Any) -> telegram.ChatMember:
        user = telegram.User(user_id, f"Guest {user_id}", False)
        return telegram.ChatMemberMember(user) if user_id < 1000 else telegram.ChatMemberLeft(user)

    async def send_message(self, chat_id: int, text: str, **_: Any) -> None:
        self.toasts.append(text)


class Told(Dispatcher):
    """A dispatcher that keeps what it had to apologise for."""

    def __init__(self, *args: Any) -> None:
        super().__init__(*args)
        self.failed: list[Event] = []

    async def _apologise(self, event: Event) -> None:
        self.failed.append(event)


class NoCourier:
    def wake(self, result: Any = None, *, potlucks: Any = ()) -> None: ...


_loaded: list[Registry] = []
_empty: list[tuple[tempfile.TemporaryDirectory[str], Path]] = []


def registry() -> Registry:
    if not _loaded:
        _loaded.append(load())
    return _loaded[0]


async def _fresh(folder: Path) -> Path:
    """A database with the schema: built once, copied for each chat."""
    if not _empty:
        kept = tempfile.TemporaryDirectory(prefix="faults")
        file = Path(kept.name) / "empty.db"
        async with await Store.open(f"sqlite+aiosqlite:///{file}") as store:
            store._runner.one_file()  # type: ignore[attr-defined]
        _empty.append((kept, file))
    return Path(shutil.copy(_empty[0][1], folder / "tureen.db"))


class Chat:
    """Groups and people at one bot. `await Chat.open()`, then updates."""

    url: str
    store: Store
    dispatcher: Told

    def __init__(self, bot: MuteBot | None = None) -> None:
        self.clock = SimulatedClock(START)
        self.signer = Signer(TOKEN)
        self.bot = bot or MuteBot()
        self.registry = registry()
        self.renderer = BotRenderer(self.registry, self.signer, self.bot.username)
        self._folder = tempfile.TemporaryDirectory(prefix="faults")
        self._updates = itertools.count(1)
        self._messages = itertools.count(1000)

    @classmethod
    async def open(cls, *groups: int, url: str | None = None, bot: MuteBot | None = None) -> Chat:
        """`url`: a database with nothing in it; a SQLite file of its own without."""
        chat = cls(bot)
        chat.url = url or f"sqlite+aiosqlite:///{await _fresh(Path(chat._folder.name))}"
        await chat.start()
        records = tuple(ChatRecord(g, "group", f"Plot {-g}", timezone="America/Chicago") for g in groups)
        await chat.store.commit(Batch(now=START, chats=records))
        return chat

    async def start(self) -> None:
        """A bot that knows nothing but what the database holds."""
        self.store = await Store.open(self.url)

        async def is_member(chat_id: int, person_id: int) -> bool:
            return await self.dispatcher.admins.is_member(chat_id, person_id)

        async def has_left(chat_id: int, person_id: int) -> bool:
            return await self.dispatcher.admins.has_left(chat_id, person_id)

        services = Services(
            self.store, self.clock, self.signer, self.registry, self.bot.username, is_member, None, has_left
        )
        self.dispatcher = Told(services, self.bot, NoCourier())

    async def restart(self) -> None:
        await self.store.close()
        await self.start()

    async def twin(self) -> Chat:
        """Another replica at the same chats, on the same database."""
        twin = copy.copy(self)
        twin._folder = tempfile.TemporaryDirectory(prefix="faults")
        await twin.start()
        return twin

    async def close(self) -> None:
        await self.store.close()
        self._folder.cleanup()

    # --- updates ---

    def words(self, group: int, person: int, text: str, *, reply_to: int | None = None) -> dict[str, Any]:
        said: dict[str, Any] = {**self.message(group), "from": someone(person), "text": text}
        if reply_to is not None:
            said["reply_to_message"] = {**self.message(group), "message_id": reply_to, "from": BOT, "text": "board"}
        return {"update_id": next(self._updates), "message": said}

    def press(self, group: int, person: int, data: str) -> dict[str, Any]:
        number = next(self._updates)
        query = {
            "id": f"q{number}", "from": someone(person), "chat_instance": "1", "data": data,
            "message": {**self.message(group), "from": BOT, "text": "board"},
        }  # fmt: skip
        return {"update_id": number, "callback_query": query}

    def message(self, chat: int) -> dict[str, Any]:
        where: dict[str, Any] = {"id": chat, "type": "private", "first_name": f"Guest {chat}"}
        if chat < 0:
            where = {"id": chat, "type": "group", "title": f"Plot {-chat}"}
        return {"message_id": next(self._messages), "date": int(self.clock.now().timestamp()), "chat": where}

    async def take(self, *updates: dict[str, Any]) -> None:
        """All at the same time, as several chats' or replicas' updates are."""
        read = [telegram.Update.de_json(u, self.bot) for u in updates]  # type: ignore[arg-type]
        await asyncio.gather(*(self.dispatcher.handle(u) for u in read))

    # --- what is there ---

    async def current(self, group: int) -> Stored | None:
        return next((s for s in await self.store.potlucks_in(group) if s.place.current), None)

    async def board(self, group: int) -> str:
        stored = await self.current(group)
        assert stored is not None
        return (await self.renderer.board(stored, await self.store.chat(group), self.clock.now())).text

    async def buttons(self, group: int) -> list[str]:
        """Callback data of everything shown in this chat: the board's and the outbox's."""
        stored = await self.current(group)
        rows: list[Any] = []
        if stored is not None:
            drawn = await self.renderer.board(stored, await self.store.chat(group), self.clock.now())
            rows += drawn.buttons
        for post in await self.store.pending_posts(100_000):
            if post.chat_id == group:
                rows += list(post.payload.get("buttons") or ())  # type: ignore[arg-type]
        return [b["data"] for row in rows for b in row if "data" in b]
