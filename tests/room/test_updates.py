"""What the bot is told, checked by the client library that reads every update, and how it is delivered.

A second library reads them in test_second_client.py.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Iterator
from contextlib import asynccontextmanager
from datetime import timedelta
from typing import Any

import pytest
from aiohttp import web
from telegram import Bot, Update
from telegram.error import BadRequest, Conflict

from bot.room.errors import CannotDo
from bot.room.people import SENDABLE
from bot.room.updates import KINDS
from tests.room.world import Stage, client, stage


def unread_fields(value: object, path: str = "") -> Iterator[str]:
    """Fields an object of the first library put aside as unknown, at any depth."""
    if isinstance(value, (list, tuple)):
        for item in value:
            yield from unread_fields(item, path)
    elif hasattr(value, "api_kwargs"):
        yield from (f"{path}.{extra}" for extra in value.api_kwargs)
        for slot in (s for c in type(value).__mro__ for s in getattr(c, "__slots__", ())):
            if not slot.startswith("_") and slot != "api_kwargs":
                yield from unread_fields(getattr(value, slot, None), f"{path}.{slot}")


async def until(true: Callable[[], Any]) -> Any:
    """Give everybody else a turn until it is so; the test would hang, not pass, if it never were."""
    async with asyncio.timeout(10):
        while not (value := true()):  # noqa: ASYNC110 (what is waited for has no event)
            await asyncio.sleep(0.001)
        return value


def told(s: Stage) -> list[dict[str, Any]]:
    return [queued.body for queued in s.room.queue.waiting]


def kinds(s: Stage) -> list[str]:
    return [next(key for key in body if key != "update_id") for body in told(s)]


def a_busy_evening(s: Stage) -> None:
    """One of everything people can do, in front of an admin bot that asked for everything."""
    s.room.queue.allow(KINDS)
    bot_said = s.room.make(
        s.group, s.room.bot.id, keyboard={"inline_keyboard": [[{"text": "x", "callback_data": "y"}]]}
    )
    s.room.add_bot(s.group.id)
    s.room.make_admin(s.group.id, s.ines.id)
    s.room.say(s.ravi.id, s.group.id, "3 of us \U0001f954 /bring https://a.example", reply_to=bot_said.id)
    for kind in SENDABLE:
        s.room.send(s.mei.id, s.group.id, kind, caption="look" if kind in ("photo", "document") else "")
    said = s.room.say(s.mei.id, s.group.id, "/list@tureen_room_bot")
    s.room.edit(s.mei.id, s.group.id, said.id, "/list")
    s.room.react(s.mei.id, s.group.id, said.id, "\U0001f44d")
    s.room.react(s.mei.id, s.group.id, said.id, None)
    s.room.press(s.ravi.id, s.group.id, bot_said.id, 0, 0)
    s.room.press_data(s.ravi.id, s.group, s.room.make(s.ines_chat, s.room.bot.id), "forged")
    s.room.start(s.ines.id, "needs_7")
    s.room.block(s.ines.id)
    s.room.unblock(s.ines.id)
    guest = s.room.add_person("\U0001f955", username="carrot", language="es")
    s.room.join(guest.id, s.group.id)
    s.room.make_admin(s.group.id, s.ines.id, guest.id, anonymous=True)
    s.room.say(guest.id, s.group.id, "as the group")
    s.room.dismiss_admin(s.group.id, s.ines.id, guest.id)
    s.room.leave(guest.id, s.group.id)
    s.room.rename(s.ines.id, s.group.id, "Plot 9 and 10")
    new = s.room.upgrade_group(s.group.id, forum=True)
    topic = s.room.create_topic(s.ines.id, new.id, "Food")
    s.room.say(s.ravi.id, new.id, "in the topic", topic=topic.id)
    general = s.room.say(s.ravi.id, new.id, "in general")
    s.room.say(s.mei.id, new.id, "answering", reply_to=general.id)
    s.room.close_topic(s.ines.id, new.id, topic.id)
    s.room.remove_bot(new.id, s.ines.id)


def an_evening() -> Stage:
    s = stage(bot_in=False)
    s.ines_chat = s.room.chats[s.ines.id]  # type: ignore[attr-defined]
    a_busy_evening(s)
    return s


@pytest.fixture
def evening() -> Stage:
    return an_evening()


def test_the_first_client_library_knows_every_field_of_every_update(evening: Stage) -> None:
    for body in told(evening):
        update = Update.de_json(body, Bot("1:x"))
        assert list(unread_fields(update)) == [], body


async def test_every_answer_is_read_without_a_field_left_over() -> None:
    s = stage(forum=True, admin=True)
    async with client(s.room) as (_, bot):
        sent = await bot.send_message(s.group.id, "board")
        await bot.pin_chat_message(s.group.id, sent.message_id)
        answers: list[Any] = [
            sent, await bot.get_me(), await bot.get_chat(s.group.id), await bot.get_chat_administrators(s.group.id),
            await bot.get_chat_member(s.group.id, s.ines.id), await bot.get_chat_member(s.group.id, s.room.bot.id),
            await bot.get_webhook_info(), await bot.create_forum_topic(s.group.id, "Food"),
            await bot.send_location(s.group.id, 41.9, -87.6),
        ]  # fmt: skip

    assert list(unread_fields(answers)) == []


# --- privacy ---


@pytest.mark.parametrize(
    ("text", "heard"),
    [
        ("hello", False),
        ("/list", True),
        ("/list@tureen_room_bot", True),
        ("/list@TUREEN_ROOM_BOT now", True),
        ("/list@other_bot", False),
        ("well, /list", False),
        ("@tureen_room_bot hello", False),
    ],
)
def test_with_privacy_on_only_commands_to_the_bot_are_heard(text: str, heard: bool) -> None:
    s = stage()

    s.room.say(s.ravi.id, s.group.id, text)

    assert bool(told(s)) is heard


def test_replies_to_the_bot_are_heard_and_replies_to_others_are_not() -> None:
    s = stage()
    bots = s.room.make(s.group, s.room.bot.id)
    other = s.room.say(s.mei.id, s.group.id, "who brings plates?")

    s.room.say(s.ravi.id, s.group.id, "me", reply_to=other.id)
    s.room.say(s.ravi.id, s.group.id, "3 of us", reply_to=bots.id)

    assert [body["message"]["text"] for body in told(s)] == ["3 of us"]


@pytest.mark.parametrize("how", [{"sees_all": True}, {"admin": True}])
def test_a_bot_that_sees_all_or_is_an_admin_hears_everything(how: dict[str, bool]) -> None:
    s = stage(**how)

    s.room.say(s.ravi.id, s.group.id, "hello")

    assert kinds(s) == ["message"]


def test_other_peoples_membership_and_reactions_are_told_only_to_an_admin_that_asked() -> None:
    for admin, asked, expected in [(False, True, 0), (True, False, 0), (True, True, 2)]:
        s = stage(admin=admin)
        if asked:
            s.room.queue.allow(["message", "chat_member", "message_reaction"])
        said = s.room.say(s.ravi.id, s.group.id, "hello")
        s.room.react(s.mei.id, s.group.id, said.id, "\U0001f44d")
        s.room.leave(s.mei.id, s.group.id)

        assert len([k for k in kinds(s) if k in ("chat_member", "message_reaction")]) == expected


def test_a_person_who_left_can_neither_write_nor_press() -> None:
    s = stage()
    keyed = s.room.make(s.group, s.room.bot.id, keyboard={"inline_keyboard": [[{"text": "x", "callback_data": "y"}]]})
    s.room.leave(s.ravi.id, s.group.id)

    with pytest.raises(CannotDo):
        s.room.say(s.ravi.id, s.group.id, "hello")
    with pytest.raises(CannotDo):
        s.room.press(s.ravi.id, s.group.id, keyed.id, 0, 0)


# --- polling ---


async def test_an_update_is_given_again_until_a_higher_offset_confirms_it() -> None:
    s = stage()
    async with client(s.room) as (_, bot):
        for name in "abc":
            s.room.say(s.ravi.id, s.group.id, f"/{name}")

        first = await bot.get_updates(limit=2)
        again = await bot.get_updates(limit=2)
        rest = await bot.get_updates(offset=first[-1].update_id + 1)

    assert [u.update_id for u in first] == [u.update_id for u in again]
    assert [u.message.text for u in rest] == ["/c"]


async def test_a_negative_offset_keeps_only_the_last_ones() -> None:
    s = stage()
    async with client(s.room) as (_, bot):
        for name in "abc":
            s.room.say(s.ravi.id, s.group.id, f"/{name}")

        kept = await bot.get_updates(offset=-1)

    assert [u.message.text for u in kept] == ["/c"]
    assert len(s.room.queue.waiting) == 1


async def test_a_long_poll_returns_as_soon_as_something_happens() -> None:
    s = stage()
    async with client(s.room) as (_, bot):
        poll = asyncio.ensure_future(bot.get_updates(timeout=50))
        await until(s.room.polled)
        s.room.say(s.ravi.id, s.group.id, "/list")

        updates = await asyncio.wait_for(poll, 5)

    assert [u.message.text for u in updates] == ["/list"]


async def test_of_two_polls_the_older_ends_in_a_conflict() -> None:
    s = stage()
    async with client(s.room) as (_, bot):
        older = asyncio.ensure_future(bot.get_updates(timeout=50))
        await until(s.room.polled)
        await bot.get_updates(timeout=0)

        with pytest.raises(Conflict, match="terminated by other getUpdates request"):
            await older


async def test_a_client_that_hangs_up_leaves_no_poll_behind() -> None:
    s = stage()
    async with client(s.room) as (_, bot):
        poll = asyncio.ensure_future(bot.get_updates(timeout=50))
        await until(s.room.polled)
        poll.cancel()
        await until(lambda: not s.room.polled())

    assert not s.room.polled()


async def test_updates_older_than_a_day_are_forgotten() -> None:
    s = stage()
    async with client(s.room) as (_, bot):
        s.room.say(s.ravi.id, s.group.id, "/old")
        s.clock.set(s.clock.now() + timedelta(hours=25))
        s.room.say(s.ravi.id, s.group.id, "/new")

        assert [u.message.text for u in await bot.get_updates()] == ["/new"]


async def test_what_the_bot_wants_persists_until_it_says_otherwise() -> None:
    s = stage()
    async with client(s.room) as (_, bot):
        await bot.get_updates(allowed_updates=["callback_query"])
        s.room.say(s.ravi.id, s.group.id, "/unwanted")
        assert await bot.get_updates() == ()
        await bot.get_updates(allowed_updates=[])
        s.room.say(s.ravi.id, s.group.id, "/wanted")

        assert len(await bot.get_updates()) == 1


def test_updates_can_be_doubled_and_turned_round_for_tests() -> None:
    s = stage()
    s.room.queue.duplicates = 1
    s.room.say(s.ravi.id, s.group.id, "/a")
    s.room.queue.hold()
    s.room.say(s.ravi.id, s.group.id, "/b")
    s.room.say(s.ravi.id, s.group.id, "/c")
    s.room.queue.release()

    assert [body["message"]["text"] for body in told(s)] == ["/a", "/a", "/c", "/b"]
    assert told(s)[0]["update_id"] == told(s)[1]["update_id"]


# --- webhook ---


@asynccontextmanager
async def listener(statuses: list[int]) -> Any:
    """A bot's web server that answers with these statuses in turn, then 200."""
    got: list[tuple[str | None, dict[str, Any]]] = []

    async def take(request: web.Request) -> web.Response:
        got.append((request.headers.get("X-Telegram-Bot-Api-Secret-Token"), await request.json()))
        return web.Response(status=statuses.pop(0) if statuses else 200)

    app = web.Application()
    app.router.add_post("/hook", take)
    runner = web.AppRunner(app)
    await runner.setup()
    site = web.TCPSite(runner, "127.0.0.1", 0)
    await site.start()
    port = runner.addresses[0][1]
    try:
        yield f"http://127.0.0.1:{port}/hook", got
    finally:
        await runner.cleanup()


async def test_a_webhook_gets_each_chats_updates_in_order_with_the_secret() -> None:
    s = stage()
    async with client(s.room) as (_, bot), listener([]) as (url, got):
        await bot.set_webhook(url, secret_token="s3cret")
        for name in "abc":
            s.room.say(s.ravi.id, s.group.id, f"/{name}")
        await asyncio.wait_for(s.room.settled(), 5)

        with pytest.raises(Conflict, match="can't use getUpdates method while webhook is active"):
            await bot.get_updates()
        assert [(secret, body["message"]["text"]) for secret, body in got] == [
            ("s3cret", "/a"), ("s3cret", "/b"), ("s3cret", "/c"),
        ]  # fmt: skip
        await bot.delete_webhook()


async def test_a_webhook_that_fails_is_asked_again_after_a_growing_wait() -> None:
    s = stage()
    async with client(s.room) as (_, bot), listener([500, 500]) as (url, got):
        await bot.set_webhook(url)
        s.room.say(s.ravi.id, s.group.id, "/a")
        waits = []
        for _ in range(2):
            wake = await until(s.clock.next_wake)
            waits.append((wake - s.clock.now()).total_seconds())
            s.clock.set(wake)
        await asyncio.wait_for(s.room.settled(), 5)

        assert waits == [1, 2]
        assert len(got) == 3
        assert (await bot.get_webhook_info()).last_error_message == "Wrong response from the webhook: 500"


async def test_an_address_or_secret_the_platform_would_refuse_is_refused() -> None:
    s = stage()
    async with client(s.room) as (_, bot):
        for url, secret in [("http://a.example/hook", None), ("https://a.example/hook", "not allowed!")]:
            with pytest.raises(BadRequest):
                await bot.set_webhook(url, secret_token=secret)
