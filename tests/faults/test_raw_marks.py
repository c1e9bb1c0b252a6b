"""Whatever people call themselves, their dishes and their places is text wherever it is shown, and never markup."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator, Iterable
from dataclasses import replace
from typing import Any

import pytest

from bot.courier import ReminderCase
from bot.outgoing import mention
from bot.planner import Planner
from bot.storage.values import ReminderRow
from planning.kitchen import timeline
from planning.potluck import Guest
from planning.reminders import reminders
from tests.faults.chat import START, Chat
from tests.faults.fuzz import SLOW

GROUP, HOST, GUEST = -1001, 101, 102
NAME, DISH, PLACE = '<b>x</b>&"', "<i>pie</i>", "<u>hut</u> & shed"
RAW = re.compile(r"<b>x</b>|<i>pie</i>|<u>hut</u>|<(?:/?[biu])>(?:x|pie|hut)<|&(?!amp;|lt;|gt;|quot;|#)", re.IGNORECASE)
TWICE = re.compile(r"&amp;(?:lt|gt|amp|quot);")


def faulty(texts: Iterable[str]) -> list[str]:
    return [text for text in texts if RAW.search(text) or TWICE.search(text)]


def named(update: dict[str, Any]) -> dict[str, Any]:
    for part in update.values():
        if isinstance(part, dict):
            part["from"] |= {"first_name": NAME}
    return update


class Still(Planner):
    """Plans when it is asked, not beside."""

    def changed(self, *_: Any) -> None: ...


@pytest.fixture
async def chat() -> AsyncIterator[Chat]:
    opened = await Chat.open(GROUP)
    planner = Still(opened.store, opened.clock, lambda *_, **__: None)
    opened.dispatcher.services = replace(opened.dispatcher.services, planner=planner)
    words = opened.words
    for said in (
        words(GROUP, HOST, f"/potluck in 8 days 5pm, about 24 people, at {PLACE}"),
        words(GROUP, HOST, f"/title {DISH}"),
        words(GROUP, GUEST, f"/bring {DISH} for 12"),
        words(GROUP, GUEST, "/bring lasagna for 12"),
        words(GROUP, GUEST, f"/needs no {DISH}"),
        words(GUEST, GUEST, "/start"),
        words(HOST, HOST, "/start"),
    ):
        await opened.take(named(said))
    yield opened
    await opened.close()


def said_by(posts: Iterable[Any]) -> list[str]:
    return [str(p.payload.get(part, "")) for p in posts for part in ("text", "caption")]


async def test_no_command_shows_a_name_or_a_dish_as_markup(chat: Chat) -> None:
    for name in sorted(chat.registry.commands.keys() - SLOW):
        for place, person in ((GROUP, HOST), (GUEST, GUEST)):
            for words in (f"/{name}", f"/{name} {DISH} {NAME} {PLACE}"):
                await chat.take(named(chat.words(place, person, words)))
    texts = said_by(await chat.store.pending_posts(100_000))

    assert chat.dispatcher.failed == []
    assert len(texts) > 200
    assert faulty(texts) == []
    assert sum("&lt;b&gt;x" in t or "&lt;i&gt;pie" in t for t in texts) > 30


async def test_no_button_and_no_board_shows_them_as_markup(chat: Chat) -> None:
    boards = [await chat.board(GROUP)]
    for _ in range(2):
        first = {data.split(".")[1]: data for data in await chat.buttons(GROUP)}
        for data in first.values():
            for person in (HOST, GUEST):
                await chat.take(named(chat.press(GROUP, person, data)))
            if await chat.current(GROUP) is not None:
                boards.append(await chat.board(GROUP))

    assert chat.dispatcher.failed == []
    assert faulty([*boards, *said_by(await chat.store.pending_posts(100_000))]) == []
    assert "&lt;" in boards[0]


async def test_no_reminder_shows_them_as_markup(chat: Chat) -> None:
    await chat.take(named(chat.words(GROUP, GUEST, f"/bring slow cooker {DISH} for 12")))
    await chat.take(named(chat.words(GROUP, GUEST, "I'm coming, my way is 25 minutes")))
    stored = await chat.current(GROUP)
    assert stored is not None
    potluck = stored.potluck
    record = await chat.store.chat(GROUP)
    people = {p: r for p in (HOST, GUEST) if (r := await chat.store.person(p)) is not None}
    shown, kinds = [], set()
    for found in reminders(potluck, timeline(potluck, START), START):
        row = ReminderRow(potluck.id, found.key, found.kind, found.to, found.due_at, found.expires_at, found.about)
        for reader in (None, HOST, GUEST):
            case = ReminderCase(
                stored, row.kind, (row,), record, reader, {str(p): r for p, r in people.items()}, row.due_at
            )
            if (post := await chat.renderer.reminder(case)) is not None:
                shown.append(str(post.payload["text"]))
                kinds.add(row.kind)

    assert faulty(shown) == []
    assert {"bring", "start", "collect"} <= kinds
    assert any("&lt;" in text for text in shown)


@pytest.mark.parametrize("guest", ["102", "n1"])
def test_a_name_that_rings_its_owners_phone_is_text(guest: str) -> None:
    rung = mention(Guest(guest, NAME))

    assert faulty([rung]) == []
    assert "&lt;b&gt;x&lt;/b&gt;&amp;" in rung
    assert ("tg://user?id=102" in rung) is guest.isdecimal()
