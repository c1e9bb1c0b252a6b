"""Updates of the Bot API's shape with anything in them, for the real handlers.

Whatever comes, nothing crashes, and nothing of one group is seen or changed from another. What strangers
are told is looked through for the other group's own words.
"""

from __future__ import annotations

import argparse
import asyncio
from typing import Any

import telegram
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot.courier.metrics import Metrics
from bot.intake import ALLOWED_UPDATES, Intake
from bot.per_chat import PerChat
from bot.storage import Stored
from bot.unpacking import unpacked
from tests.faults.chat import Chat, registry
from tests.faults.platform import someone
from tests.faults.stage import DATABASES, databases
from tests.faults.table import Row

HERE, THERE, UNKNOWN = -1001, -1002, -1003
HOST_HERE, HOST_THERE, STRANGER = 101, 102, 1003
SECRETS = ("Quillfeather", "saltmarsh lane", "persimmon clafoutis")
"""Of the group THERE; said nowhere else."""
SLOW = frozenset({"picture", "print"})
"""Commands that draw: their own tests feed them any words."""

any_text = st.text(st.characters(codec="utf-8"), max_size=60) | st.sampled_from(
    [
        "",
        " ",
        "\u202e\u2066",
        "\x00",
        "￼",
        "👩‍👩‍👧‍👦" * 20,
        "<b>&amp;</i>",
        "{ $name }",
        "-1",
        "١٢٣",
        "'; DROP TABLE potluck;--",
        "a" * 5000,
    ]
)
commands = st.sampled_from(sorted(registry().commands.keys() - SLOW)).flatmap(
    lambda name: st.tuples(st.just(f"/{name}"), any_text).map(" ".join)
)
numbers = st.integers(-(2**53), 2**53)
chats = st.sampled_from([HERE, UNKNOWN, STRANGER, HOST_HERE]) | numbers.filter(
    lambda n: n not in (THERE, HOST_THERE, 0)
)
people = st.sampled_from([HOST_HERE, STRANGER]) | st.integers(200, 2**52)
kinds = st.sampled_from(["group", "supergroup", "private", "channel"])
buttons = st.builds(
    lambda parts, sign: ".".join(parts) + sign,
    st.tuples(
        st.sampled_from(["1", "2", ""]),
        st.sampled_from(sorted(registry().buttons)) | any_text,
        st.sampled_from(["p1", "@there", ""]) | any_text,
        st.lists(st.sampled_from(["yes", "-1", "0", "p1", "g1", "1e9"]) | any_text, max_size=3).map(",".join),
        st.sampled_from(["", "2t", "-"]) | any_text,
    ),
    any_text,
)


@st.composite
def users(draw: Any) -> dict[str, Any]:
    user = someone(draw(people))
    user["first_name"] = draw(any_text)
    if draw(st.booleans()):
        user |= {"last_name": draw(any_text), "username": draw(any_text), "language_code": draw(any_text)}
    return user | {"is_bot": draw(st.integers(0, 9)) == 0}


@st.composite
def chats_of(draw: Any) -> dict[str, Any]:
    chat_id = draw(chats)
    kind = "private" if chat_id > 0 else draw(kinds)
    chat = {"id": chat_id, "type": kind, "title": draw(any_text), "first_name": draw(any_text)}
    return chat | ({"is_forum": True} if draw(st.booleans()) else {})


@st.composite
def messages(draw: Any, *, deep: bool = True) -> dict[str, Any]:
    said: dict[str, Any] = {"message_id": draw(st.integers(1, 2**31)), "date": draw(st.integers(0, 2**31)),
                            "chat": draw(chats_of()), "from": draw(users())}  # fmt: skip
    if draw(st.integers(0, 3)):
        said["text"] = draw(commands | any_text)
    for name, value in EXTRAS.items():
        if draw(st.integers(0, 14)) == 0:
            said[name] = draw(value)
    if draw(st.integers(0, 5)) == 0:
        said |= {"message_thread_id": draw(st.integers(1, 99)), "is_topic_message": draw(st.booleans())}
    if deep and draw(st.integers(0, 3)) == 0:
        said["reply_to_message"] = draw(messages(deep=False))
    return said


EXTRAS: dict[str, st.SearchStrategy[Any]] = {
    "caption": any_text,
    "photo": st.just([{"file_id": "a", "file_unique_id": "b", "width": 1, "height": 1}]),
    "location": st.fixed_dictionaries({"latitude": st.floats(-90, 90), "longitude": st.floats(-180, 180)}),
    "dice": st.just({"emoji": "🎲", "value": 3}),
    "new_chat_title": any_text,
    "new_chat_members": st.lists(users(), max_size=3),
    "left_chat_member": users(),
    "migrate_to_chat_id": st.integers(-(2**52), -(10**12)),
    "entities": st.lists(
        st.fixed_dictionaries(
            {
                "type": st.sampled_from(["bot_command", "mention", "bold"]),
                "offset": st.integers(0, 70),
                "length": st.integers(1, 70),
            }
        ),
        max_size=3,
    ),
    "sender_chat": chats_of(),
}
statuses = st.sampled_from(["member", "left", "kicked", "administrator", "restricted"])

RIGHTS = {
    right
    for kind in (telegram.ChatMemberAdministrator, telegram.ChatMemberRestricted)
    for right in kind.__slots__
    if right.startswith(("can_", "is_"))
}


@st.composite
def members(draw: Any) -> dict[str, Any]:
    told = {"user": draw(users()), "status": draw(statuses), "is_member": True, "until_date": 0}
    return told | dict.fromkeys(RIGHTS, False)


@st.composite
def updates(draw: Any) -> dict[str, Any]:
    match draw(st.sampled_from(["message", *ALLOWED_UPDATES])):
        case "message_reaction":
            reactions = st.lists(st.fixed_dictionaries({"type": st.just("emoji"), "emoji": any_text}), max_size=2)
            change = {"chat": draw(chats_of()), "message_id": draw(st.integers(1, 2**31)), "user": draw(users()),
                      "date": 5, "old_reaction": draw(reactions), "new_reaction": draw(reactions)}  # fmt: skip
            return {"message_reaction": change}
        case "callback_query":
            data = draw(buttons | st.integers(0, 99).map("@real {}".format))
            query = {"id": draw(any_text), "from": draw(users()), "chat_instance": "1", "data": data}
            return {"callback_query": query | ({"message": draw(messages())} if draw(st.booleans()) else {})}
        case ("my_chat_member" | "chat_member") as kind:
            change = {"chat": draw(chats_of()), "from": draw(users()), "date": draw(st.integers(0, 2**31)),
                      "old_chat_member": draw(members()), "new_chat_member": draw(members())}  # fmt: skip
            return {kind: change}
        case kind:
            return {kind: draw(messages())}


any_json = st.recursive(
    st.none() | st.booleans() | st.sampled_from([0, -1, 1.5, 2**40, 2**63, 2**80]) | any_text | st.just("\ud83d"),
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(st.sampled_from(["id", "x"]), inner, max_size=2),
    max_leaves=4,
)


@st.composite
def spoiled(draw: Any) -> dict[str, Any]:
    """An update with one thing, somewhere in it, taken out or become anything at all."""
    body: dict[str, Any] = draw(updates())
    at: Any = body
    while True:
        name = draw(st.sampled_from(sorted(at)) if isinstance(at, dict) else st.integers(0, len(at) - 1))
        if isinstance(at[name], dict | list) and at[name] and draw(st.integers(0, 4)):
            at = at[name]
            continue
        if draw(st.booleans()):
            at[name] = draw(any_json)
        else:
            del at[name]
        return body


class Stage:
    """Two groups with a potluck each; what THERE has is secret to everybody used here."""

    def __init__(self) -> None:
        self.chat: Chat
        self.there: Stored
        self.number = 10_000
        self.fed = self.done = self.odd = self.failed = 0
        """Updates given, those that were finished with, and of these the ones that could not be read or handled."""

    async def open(self, url: str | None = None) -> None:
        self.chat = await Chat.open(HERE, THERE, url=url)
        self.intake = Intake(self.chat.dispatcher.handle, self.chat.clock, Metrics(), give_up=True)
        self.intake.storage_waits_s = (0.0,)
        self.lines = PerChat(done=self._done)
        words = self.chat.words
        opening = "/potluck in 8 days 5pm, about 24 people"
        await self.chat.take(words(HERE, HOST_HERE, opening), words(THERE, HOST_THERE, f"{opening}, at {SECRETS[1]}"))
        named = words(THERE, HOST_THERE, f"/bring {SECRETS[2]} for 8")
        named["message"]["from"]["first_name"] = SECRETS[0]
        await self.chat.take(named)
        stored = await self.chat.current(THERE)
        assert stored is not None
        self.there = stored

    def _done(self, _: object) -> None:
        self.done += 1

    def _unread(self) -> None:
        self.odd += 1

    async def take(self, body: dict[str, Any], *, sound: bool = True) -> None:
        """One update through the real intake; then look at the other group, and at what would be said elsewhere.
        What is not `sound` may fail to be read or handled, but no more than that."""
        chat, self.number, self.fed = self.chat, self.number + 1, self.fed + 1
        query = body.get("callback_query")
        if isinstance(query, dict) and isinstance(query.get("data"), str):
            query["data"] = query["data"].replace("@there", self.there.potluck.id)
            if query["data"].startswith("@real "):
                # A button of ours, pressed by whoever, wherever.
                real = await chat.buttons(HERE)
                query["data"] = real[int(query["data"].split(" ")[1]) % len(real)] if real else ""
        chat.bot.toasts.clear()
        before = {p.id for p in await chat.store.pending_posts(100_000)}
        update = unpacked({"update_id": self.number, **body}, chat.bot, self._unread)  # type: ignore[arg-type]
        assert update is not None
        await self.lines.do_process_update(update, self._handled(update, sound))
        failed, chat.dispatcher.failed = chat.dispatcher.failed, []
        assert not failed or not sound
        self.failed += len(failed)
        assert self.intake.stored(update)
        assert self.done == self.fed
        assert await chat.current(THERE) == self.there
        said = [str(p.payload) for p in await chat.store.pending_posts(100_000) if p.id not in before]
        assert not [w for w in SECRETS for text in (*said, *chat.bot.toasts) if w in text]

    async def _handled(self, update: telegram.Update, sound: bool) -> None:
        """As the client library calls it: what is raised is told to the error handler and goes no further."""
        context: Any = None
        try:
            await self.intake.on_update(update, context)
        except Exception:
            self.failed += 1
            if sound:
                raise


def fuzz(examples: int, url: str | None = None) -> Stage:
    """Feed so many random updates to one stage, and as many spoiled ones; what was counted there."""
    loop, stage = asyncio.new_event_loop(), Stage()
    loop.run_until_complete(stage.open(url))
    how = settings(max_examples=examples, deadline=None, database=None, suppress_health_check=list(HealthCheck))

    @how
    @given(updates())
    def feed(body: dict[str, Any]) -> None:
        loop.run_until_complete(stage.take(body))

    @how
    @given(spoiled())
    def feed_spoiled(body: dict[str, Any]) -> None:
        loop.run_until_complete(stage.take(body, sound=False))

    try:
        feed()
        feed_spoiled()
    finally:
        loop.run_until_complete(stage.chat.close())
        loop.close()
    return stage


async def rows(args: argparse.Namespace) -> list[Row]:
    found = []
    for name in databases(args.database):
        examples = args.examples if name == "SQLite" else max(1, args.examples // 10)
        async with DATABASES[name]() as url:
            fed = await asyncio.to_thread(fuzz, examples, url)
        notes = (f"{fed.odd} could not be read, {fed.failed} not handled: each was confirmed, the next one taken",)
        did = f"{fed.fed} random and spoiled updates of the Bot API's shape"
        found.append(Row("any update", name, did, fed.fed - fed.done, 0, 0, notes))
    return found
