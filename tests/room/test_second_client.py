"""A second client library (aiogram): its Bot polls the room and sends into it, its models read every update the room
makes and every request the bot makes in the demo.

It takes seconds to import, so whoever only looks for tests does without, and its tests stand in one file.
"""

from __future__ import annotations

import asyncio
import functools
import inspect
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from pydantic import BaseModel

import bot.room
from bot.rehearsed import Rehearsed
from bot.room.faults import Fault
from bot.room.people import TINY_PNG
from bot.room.rehearsal import Rehearsal
from bot.room.script import read_script
from bot.room.server import RoomServer
from tests.room.test_updates import an_evening, kinds, told
from tests.room.world import stage

DEMO = Path(bot.room.__file__).parent / "demo" / "supper.jsonl"
FILES = ("photo", "document")
"""Uploads travel beside the form; what stands in the field is checked by the room's own tests."""


@functools.cache
def models() -> dict[str, Any]:
    """The second library's models of the Bot API's methods, by the method's name in small letters."""
    from aiogram import methods

    classes = inspect.getmembers(methods, inspect.isclass)
    return {name.lower(): model for name, model in classes if hasattr(model, "__api_method__")}


def typed(values: dict[str, Any]) -> dict[str, Any]:
    """Form values as the models take them: nested ones are JSON text."""
    found = {}
    for name, value in values.items():
        if isinstance(value, str) and value[:1] in "[{":
            try:
                value = json.loads(value)
            except ValueError:
                pass
        found[name] = value
    return found


@pytest.fixture(scope="module")
def calls(tmp_path_factory: pytest.TempPathFactory) -> list[tuple[str, dict[str, Any]]]:
    heard: list[tuple[str, dict[str, Any]]] = []

    async def play() -> None:
        rehearsal = Rehearsal(read_script(DEMO), tmp_path_factory.mktemp("demo"), Rehearsed, lambda _: None)
        rehearsal.room.hearers.append(lambda method, values: heard.append((method, dict(values))))
        await rehearsal.run()

    asyncio.run(play())
    return heard


def test_the_demo_makes_many_kinds_of_requests(calls) -> None:
    assert len(calls) > 200
    assert {"getupdates", "sendmessage", "editmessagetext", "answercallbackquery", "pinchatmessage",
            "setmessagereaction", "setmycommands", "getme"} <= {method for method, _ in calls}  # fmt: skip


def test_every_request_names_a_method_and_parameters_that_the_second_library_knows(calls) -> None:
    for method, values in calls:
        fields = set(models()[method].model_fields)

        assert set(values) <= fields, method


def test_every_request_has_values_that_the_second_library_takes(calls) -> None:
    for method, values in calls:
        file = {method.removeprefix("send"): "a-file-id"} if method.removeprefix("send") in FILES else {}
        models()[method].model_validate(typed(values) | file)


def test_every_button_keeps_within_the_platforms_64_bytes(calls) -> None:
    # Bot API, InlineKeyboardButton: callback_data of 1-64 bytes.
    sizes = [
        len(button["callback_data"].encode())
        for _, values in calls
        for row in typed(values).get("reply_markup", {}).get("inline_keyboard", [])
        for button in row
        if "callback_data" in button
    ]

    assert sizes
    assert all(1 <= size <= 64 for size in sizes)


# --- updates ---


def unknown_fields(value: object, path: str = "") -> Iterator[str]:
    """Fields a model of the second library did not know, at any depth."""
    if isinstance(value, BaseModel):
        yield from (f"{path}.{extra}" for extra in value.model_extra or {})
        for name in type(value).model_fields:
            yield from unknown_fields(getattr(value, name), f"{path}.{name}")
    elif isinstance(value, list):
        for item in value:
            yield from unknown_fields(item, path)


def with_newer_rights(value: Any) -> Any:
    """The second library reads a later version of the Bot API, in which an admin has one more right. The room
    speaks the version of the first library, which would not know it."""
    if isinstance(value, list):
        return [with_newer_rights(item) for item in value]
    if not isinstance(value, dict):
        return value
    newer = {"can_send_welcome_messages": False} if value.get("status") == "administrator" else {}
    return {key: with_newer_rights(item) for key, item in value.items()} | newer


def test_the_second_client_library_knows_every_field_of_every_update() -> None:
    from aiogram import types

    evening = an_evening()
    assert {"message", "edited_message", "callback_query", "my_chat_member", "chat_member", "message_reaction"} <= set(
        kinds(evening)
    )
    for body in told(evening):
        update = types.Update.model_validate(with_newer_rights(body))
        assert list(unknown_fields(update)) == [], body


# --- its Bot ---


async def test_another_client_library_polls_sends_edits_and_fetches_files() -> None:
    from aiogram import Bot
    from aiogram.client.session.aiohttp import AiohttpSession
    from aiogram.client.telegram import TelegramAPIServer
    from aiogram.exceptions import TelegramBadRequest, TelegramRetryAfter
    from aiogram.types import BufferedInputFile, InlineKeyboardButton, InlineKeyboardMarkup

    s = stage()
    async with RoomServer(s.room) as server:
        api = TelegramAPIServer(
            base=server.base_url + "{token}/{method}", file=server.base_file_url + "{token}/{path}", is_local=False
        )
        async with Bot(s.room.token, session=AiohttpSession(api=api)) as bot:
            s.room.say(s.ravi.id, s.group.id, "/list")
            (update,) = await bot.get_updates(timeout=1)
            keys = InlineKeyboardMarkup(inline_keyboard=[[InlineKeyboardButton(text="Coming", callback_data="yes")]])
            sent = await bot.send_message(s.group.id, "<b>x</b>", parse_mode="HTML", reply_markup=keys)
            s.room.press(s.ravi.id, s.group.id, sent.message_id, 0, 0)
            _, press = await bot.get_updates()
            await bot.answer_callback_query(press.callback_query.id, "noted", show_alert=True)
            edited = await sent.edit_text("y")
            picture = await bot.send_photo(s.group.id, BufferedInputFile(TINY_PNG, "x.png"), caption="p")
            fetched = await bot.download(picture.photo[-1])

            assert update.message is not None
            assert update.message.text == "/list"
            assert press.callback_query.data == "yes"
            assert edited.text == "y"
            assert fetched.read() == TINY_PNG
            with pytest.raises(TelegramBadRequest, match="message is not modified"):
                await sent.edit_text("y")
            s.room.faults.add(Fault("429", retry_after=3))
            with pytest.raises(TelegramRetryAfter):
                await bot.get_me()
