"""Every request the bot makes in the demo, against a second library's models of the Bot API's methods (aiogram)."""

import inspect
import json
from pathlib import Path
from typing import Any

import pytest
from aiogram import methods

import bot.room
from bot.rehearsed import Rehearsed
from bot.room.rehearsal import Rehearsal
from bot.room.script import read_script

DEMO = Path(bot.room.__file__).parent / "demo" / "supper.jsonl"
MODELS = {
    name.lower(): model
    for name, model in inspect.getmembers(methods, inspect.isclass)
    if hasattr(model, "__api_method__")
}
FILES = ("photo", "document")
"""Uploads travel beside the form; what stands in the field is checked by the room's own tests."""


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
    import asyncio

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
        fields = set(MODELS[method].model_fields)

        assert set(values) <= fields, method


def test_every_request_has_values_that_the_second_library_takes(calls) -> None:
    for method, values in calls:
        file = {method.removeprefix("send"): "a-file-id"} if method.removeprefix("send") in FILES else {}
        MODELS[method].model_validate(typed(values) | file)


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
