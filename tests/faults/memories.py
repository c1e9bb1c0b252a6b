"""Two messages of which the second leans on the first: a restart, or another replica, between them changes nothing."""

from __future__ import annotations

import argparse
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from tests.faults import stage
from tests.faults.chat import Chat
from tests.faults.table import Row

GROUP, HOST, ONE, OTHER = -1001, 101, 102, 103
EVE = datetime(2027, 9, 18, 1, tzinfo=UTC)
DAY = datetime(2027, 9, 18, 20, tzinfo=UTC)
AFTER = datetime(2027, 9, 18, 23, 30, tzinfo=UTC)
"""The evening before, two hours before the start and an hour and a half into a meal at 5 PM on September 18."""
NAMES = {HOST: "Inés", ONE: "Ravi", OTHER: "Mei"}
BOT_SAID = 1
"""Any message of the bot: what is below it was said to it."""


@dataclass(frozen=True)
class Said:
    """`to_bot`: below a message of the bot. `edits`: it replaces the words before, in the same message."""

    who: int
    words: str
    to_bot: bool = True
    edits: bool = False


Answers = list[str]
Check = Callable[[Chat, Answers], Awaitable[bool]]


@dataclass(frozen=True)
class Leaning:
    """What was set up, said at `when`, and said then; `known` looks at the answers to that, and at what is stored."""

    kind: str
    before: tuple[Said, ...]
    when: datetime
    first: Said
    then: Said
    known: Check


def answered(*words: str) -> Check:
    async def look(_: Chat, answers: Answers) -> bool:
        return all(any(w in answer for answer in answers) for w in words)

    return look


async def silent(_: Chat, answers: Answers) -> bool:
    return not answers


async def other_is_host(chat: Chat, _: Answers) -> bool:
    return (await _potluck(chat)).host == str(OTHER)


async def dressing_is_known(chat: Chat, _: Answers) -> bool:
    return any("anchovies" in p.dish for p in (await _potluck(chat)).promises)


async def chili_is_off(chat: Chat, _: Answers) -> bool:
    return all(p.dish != "chili" for p in (await _potluck(chat)).promises)


async def _potluck(chat: Chat) -> Any:
    stored = await chat.current(GROUP)
    assert stored is not None
    return stored.potluck


CHILI = (Said(ONE, "coming, chili for 12"), Said(OTHER, "coming, plates for 20"))
LEANINGS = (
    Leaning(
        "urgent", (), DAY,
        Said(ONE, "help he can't breathe"), Said(ONE, "help he can't breathe!! hurry", edits=True), silent,
    ),
    Leaning(
        "ill", (Said(ONE, "coming, chili for 12"),), EVE,
        Said(ONE, "my little one has a stomach bug since this afternoon, threw up twice", to_bot=False),
        Said(ONE, "i already made it yesterday. should i still bring it?", to_bot=False), answered("Please don’t"),
    ),
    Leaning(
        "spoken", (*CHILI, Said(ONE, "rice for 12")), DAY,
        Said(ONE, "the chili was in the car for 5 hours", to_bot=False),
        Said(ONE, "is it still ok?", to_bot=False), answered("chili"),
    ),
    Leaning(
        "spoken by another", (*CHILI, Said(ONE, "rice for 12")), DAY,
        Said(ONE, "the chili was in the car for 5 hours, is it ok?"), Said(HOST, "we toss it"), chili_is_off,
    ),
    Leaning(
        "missed", CHILI, AFTER,
        Said(ONE, "someone took my white tray"), Said(OTHER, "i have a tray that isn't mine"),
        answered("Ravi", "white tray"),
    ),
    Leaning(
        "asked", (Said(ONE, "caesar salad for 12"), Said(ONE, "roast potatoes for 12")), DAY,
        Said(OTHER, "does the caesar have anchovies?"), Said(ONE, "yes in the dressing"), dressing_is_known,
    ),
    Leaning(
        "asked to host", CHILI, DAY,
        Said(HOST, "mei, can you take over?"), Said(OTHER, "i'll take over"), other_is_host,
    ),
    Leaning(
        "begun", (Said(ONE, "coming, turkey 15 lb, oven 4 hours"),), DAY,
        Said(ONE, "got the turkey in only now"), Said(OTHER, "what time do we eat then"), answered("turkey is ready"),
    ),
)  # fmt: skip


async def set_up(leaning: Leaning, chat: Chat) -> None:
    for said in (Said(HOST, "/potluck in 8 days 5pm, about 24 people, at the hut", to_bot=False), *leaning.before):
        await chat.take(_update(chat, said, None))
    chat.clock.set(leaning.when)


async def leaned_on(leaning: Leaning, between: Callable[[Chat], Awaitable[Chat]], chat: Chat) -> bool:
    """Whether the second message was understood; `between` gives the bot that takes the next message."""
    await set_up(leaning, chat)
    first = _update(chat, leaning.first, None)
    await chat.take(first)
    chat = await between(chat)
    told = await chat.store.pending_posts(100_000)
    await chat.take(_update(chat, leaning.then, first["message"]["message_id"]))
    posts = [p for p in await chat.store.pending_posts(100_000) if p.id > max(t.id for t in told)]
    assert chat.dispatcher.failed == []
    return await leaning.known(chat, [str(p.payload["text"]) for p in posts if p.method == "send"])


def _update(chat: Chat, said: Said, message: int | None) -> dict[str, Any]:
    update = chat.words(GROUP, said.who, said.words, reply_to=BOT_SAID if said.to_bot else None)
    update["message"]["from"]["first_name"] = NAMES[said.who]
    if not said.edits:
        return update
    edited = {**update["message"], "message_id": message, "edit_date": update["message"]["date"]}
    return {"update_id": update["update_id"], "edited_message": edited}


async def restarted(chat: Chat) -> Chat:
    await chat.restart()
    return chat


@asynccontextmanager
async def opened(url: str | None) -> AsyncIterator[Chat]:
    chat = await Chat.open(GROUP, url=url)
    try:
        yield chat
    finally:
        await chat.close()


async def by_another(leaning: Leaning, chat: Chat) -> bool:
    twin = await chat.twin()

    async def to_the_twin(_: Chat) -> Chat:
        return twin

    try:
        return await leaned_on(leaning, to_the_twin, chat)
    finally:
        await twin.close()


WAYS = {
    "the bot stopped and started between": lambda leaning, chat: leaned_on(leaning, restarted, chat),
    "each message to another replica": by_another,
}


async def rows(args: argparse.Namespace) -> list[Row]:
    found = []
    for database in stage.databases(args.database):
        for how, way in WAYS.items():
            lost = []
            async with stage.DATABASES[database]() as url:
                for number, leaning in enumerate(LEANINGS):
                    async with stage.another_database(url, f"memories{number}") as own, opened(own) as chat:
                        lost += [] if await way(leaning, chat) else [leaning.kind]
            did = f"{len(LEANINGS)} sorts of words that lean on the message before them, {how}"
            found.append(Row("memories", database, did, len(lost), 0, 0, tuple(f"not known: {kind}" for kind in lost)))
    return found
