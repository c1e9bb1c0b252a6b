"""The room's bookkeeping: who is here, what was said, what the bot is told, what people saw."""

from __future__ import annotations

import asyncio
import itertools
from collections.abc import Callable, Mapping
from datetime import datetime

from bot import doors
from bot.clock import Clock

from . import shown
from .entities import utf16_slice
from .errors import CannotDo
from .faults import Faults, Floods
from .files import Files
from .links import start_payload
from .profile import Profile
from .updates import FIRST_ID, UpdateQueue
from .webhook import Hook
from .world import Chat, Member, Message, Seen, User

BOT_ID = 7_000_000_001
FIRST_PERSON_ID = 1_000_001
FIRST_GROUP_ID = -4_000_001
FIRST_SUPERGROUP_ID = -1_002_000_000_001


class State:
    """One bot, any number of people and groups. Not safe across threads; one event loop.

    `sees_all` is the platform's privacy mode switched off. `flood_limits` answers 429 as the platform
    would. `clock` gives every date and the age of everything.
    """

    def __init__(
        self,
        clock: Clock,
        *,
        bot_username: str = "tureen_room_bot",
        bot_name: str = "Tureen",
        sees_all: bool = False,
        flood_limits: bool = True,
        first_update_id: int = FIRST_ID,
    ) -> None:
        self.clock = clock
        self.sees_all = sees_all
        self.flood_limits = flood_limits
        self.bot = User(BOT_ID, bot_name, username=bot_username, is_bot=True)
        self.token = f"{BOT_ID}:loopback-room-not-a-secret-000000000"
        self.users: dict[int, User] = {BOT_ID: self.bot}
        self.chats: dict[int, Chat] = {}
        self.queue = UpdateQueue(clock.now, first_update_id)
        self.faults = Faults()
        self.floods = Floods()
        self.files = Files()
        self.profile = Profile(bot_name)
        self.log: list[Seen] = []
        self.keep_log = True
        self.listeners: list[Callable[[Seen], None]] = []
        self.hearers: list[Callable[[str, Mapping[str, object]], None]] = []
        """Told of every call of the bot's before it is answered: method and parameters as sent."""
        self.queries: dict[str, tuple[datetime, int, int]] = {}
        """Callback query id -> when, who pressed, in which chat; gone when answered."""
        self.links: list[tuple[int, int | None, str]] = []
        """Deep links shown: (chat, the one who saw it or None for all in the chat, payload)."""
        self.calls: dict[str, int] = {}
        self.in_flight = 0
        self._quiet: asyncio.Event = asyncio.Event()
        self._query_ids = itertools.count(900_000_000_000_001, 7919)
        self._message_ids = itertools.count(1)
        self._people_ids = itertools.count(FIRST_PERSON_ID)
        self._group_ids = itertools.count(FIRST_GROUP_ID, -1)
        self._supergroup_ids = itertools.count(FIRST_SUPERGROUP_ID, -1)
        self._poll: asyncio.Future[str] | None = None
        self.hook = Hook(self)
        self.queue.on_change += [self._look_whether_quiet, self._wake_poll]
        self._look_whether_quiet()

    # --- who and where -------------------------------------------------------------------------

    def add_person(self, name: str, *, username: str = "", language: str = "", user_id: int | None = None) -> User:
        user = User(user_id or next(self._people_ids), name, username=username, language_code=language)
        self.users[user.id] = user
        self.chats[user.id] = Chat(user.id, "private")
        return user

    def add_group(self, title: str, owner: int, members: tuple[int, ...] = (), *, forum: bool = False) -> Chat:
        """A group without the bot. A forum can only be a supergroup."""
        new_id = next(self._supergroup_ids if forum else self._group_ids)
        chat = Chat(new_id, "supergroup" if forum else "group", title, forum=forum)
        chat.members = {member: Member() for member in members}
        chat.members[owner] = Member("creator")
        self.chats[new_id] = chat
        return chat

    @staticmethod
    def seat(chat: Chat, person: int) -> None:
        """Make somebody a plain member without anybody being told."""
        chat.members[person] = Member()

    def user(self, user_id: int) -> User:
        try:
            return self.users[user_id]
        except KeyError:
            raise CannotDo(f"nobody here has the id {user_id}") from None

    def chat(self, chat_id: int) -> Chat:
        """Follows an upgraded group to where it is now."""
        try:
            chat = self.chats[chat_id]
        except KeyError:
            raise CannotDo(f"there is no chat {chat_id}") from None
        return self.chat(chat.migrated_to) if chat.migrated_to is not None else chat

    def bot_in(self, chat: Chat) -> bool:
        return chat.kind == "private" or chat.member(self.bot.id).present

    def bot_is_admin(self, chat: Chat) -> bool:
        return chat.kind != "private" and chat.member(self.bot.id).admin

    # --- messages ------------------------------------------------------------------------------

    def new_message_id(self, chat: Chat) -> int:
        """Private chats and basic groups share the bot's one sequence; a supergroup counts its own."""
        if chat.kind == "supergroup":
            chat.next_id += 1
            return chat.next_id
        return next(self._message_ids)

    def put(self, message: Message) -> Message:
        self.chats[message.chat_id].messages[message.id] = message
        return message

    def make(self, chat: Chat, sender: int, kind: str = "text", **fields: object) -> Message:
        message = Message(self.new_message_id(chat), chat.id, sender, self.clock.now(), kind, **fields)  # type: ignore[arg-type]
        return self.put(message)

    def service(self, chat: Chat, sender: int, text: str, content: dict[str, object], **fields: object) -> Message:
        """A service message: seen by people, and by the bot whatever its privacy."""
        message = self.make(chat, sender, "service", content=content, **fields)
        self.show("service", chat, sender, text=text, message=message.id, thread=message.thread)
        self.tell_bot(message)
        return message

    def bot_sees(self, message: Message) -> bool:
        """Privacy mode: commands, replies to the bot, service messages; everything for an admin bot."""
        chat = self.chats[message.chat_id]
        if chat.kind == "private" or self.sees_all or self.bot_is_admin(chat) or message.kind == "service":
            return True
        replied = chat.messages.get(message.reply_to or 0)
        if replied is not None and replied.sender == self.bot.id and replied.kind != "service":
            return True
        for entity in message.say.entities:
            if entity.type == "bot_command" and entity.offset == 0:
                _, _, to = utf16_slice(message.say.text, 0, entity.length).partition("@")
                return to.lower() in ("", self.bot.username.lower())
        return False

    def tell_bot(self, message: Message, kind: str = "message") -> int | None:
        chat = self.chats[message.chat_id]
        if not self.bot_in(chat) or not self.bot_sees(message):
            return None
        return self.queue.emit(kind, shown.message(self, message), chat.id)

    # --- what is seen --------------------------------------------------------------------------

    def show(self, kind: str, chat: Chat, sender: int | None, **what: object) -> Seen:
        seen = Seen(self.clock.now(), kind, chat.id, sender, **what)  # type: ignore[arg-type]
        if self.keep_log:
            self.log.append(seen)
        for tell in self.listeners:
            tell(seen)
        return seen

    def show_message(self, message: Message, kind: str | None = None, file: str | None = None) -> Seen:
        rows = tuple(tuple((b["label"], b.get("url")) for b in row) for row in message.labels())
        if kind is None:
            kind = message.kind if message.kind in ("photo", "document") else "message"
        self._note_links(message)
        return self.show(
            kind, self.chats[message.chat_id], message.sender, text=self.plain(message), buttons=rows,
            message=message.id, reply_to=message.reply_to, file=file, thread=message.thread,
        )  # fmt: skip

    @staticmethod
    def plain(message: Message) -> str:
        if message.say.text or message.kind in ("text", "photo", "document"):
            return message.say.text
        match message.kind:
            case "location":
                where = message.content["location"]
                assert isinstance(where, dict)
                return f"(location {where['latitude']}, {where['longitude']})"
            case "poll":
                poll = message.content["poll"]
                assert isinstance(poll, dict)
                return f"(poll) {poll['question']}"
            case "voice":
                return "(voice message)"
        return f"({message.kind})"

    def _note_links(self, message: Message) -> None:
        if message.sender != self.bot.id:
            return
        addresses = [str(button["url"]) for _, _, button in message.buttons() if "url" in button]
        for entity in message.say.entities:
            if entity.type == "text_link":
                addresses.append(str(dict(entity.extra)["url"]))
            elif entity.type == "url":
                addresses.append(utf16_slice(message.say.text, entity.offset, entity.length))
        for address in addresses:
            if (payload := start_payload(address, self.bot.username)) is not None:
                self.links.append((message.chat_id, doors.owner(payload), payload))

    # --- long polls ----------------------------------------------------------------------------

    async def wait_for_update(self, seconds: float) -> str:
        """Wait as the one long poll there may be: "arrived", "late", "conflict" or "gone"."""
        poll = self._poll = asyncio.get_running_loop().create_future()
        try:
            return await asyncio.wait_for(poll, seconds)
        except TimeoutError:
            return "late"
        finally:
            if self._poll is poll:
                self._poll = None

    def end_poll(self, why: str) -> None:
        if self._poll is not None and not self._poll.done():
            self._poll.set_result(why)
        self._poll = None

    def polled(self) -> bool:
        """Whether a bot is waiting for updates just now."""
        return self._poll is not None

    def _wake_poll(self) -> None:
        if self.queue.waiting:
            self.end_poll("arrived")

    # --- quiet ---------------------------------------------------------------------------------

    def updates_pending(self) -> bool:
        """Whether the bot has not taken or not confirmed something yet."""
        return bool(self.queue.waiting)

    def requests_in_flight(self) -> int:
        """Calls being answered now, long polls not counted."""
        return self.in_flight

    def request_began(self) -> None:
        self.in_flight += 1
        self._quiet.clear()

    def request_ended(self) -> None:
        self.in_flight -= 1
        self._look_whether_quiet()

    def _look_whether_quiet(self) -> None:
        if self.in_flight == 0 and not self.queue.waiting:
            self._quiet.set()
        else:
            self._quiet.clear()

    async def settled(self) -> None:
        """Return when everything emitted is confirmed and no call is being answered."""
        await self._quiet.wait()
