"""An update that can't be read stops nobody: it is counted, told by its id alone, confirmed, and the next is read."""

from __future__ import annotations

import json
import logging
from typing import Any

import pytest
import telegram
from telegram.error import TelegramError

from bot import log
from bot.unpacking import unpacked
from tests.courier.rig import Rig
from tests.courier.test_settings import lines_of
from tests.courier.test_web import WebRig, web  # noqa: F401 - a fixture

CHAT = {"id": -1001, "type": "group"}
ODD: tuple[dict[str, Any], ...] = (
    {"message": {"message_id": 1, "date": 5, "chat": CHAT, "from": {"id": 7}, "text": "walnuts"}},
    {"message": 5},
    {"message": {"text": "walnuts"}},
    {"callback_query": {"id": "1", "data": "walnuts"}},
    {"message_reaction": {"chat": {}, "user": 7}},
    {"chat_member": {"chat": CHAT, "date": "walnuts"}},
    {"message": {"message_id": 1, "date": "walnuts", "chat": CHAT}},
    {"message": {"message_id": 1, "date": 5, "chat": {"id": [], "type": "group"}, "text": "walnuts"}},
    {"message": {"message_id": 1, "date": 5, "chat": {"id": 2**70, "type": "group"}, "text": "walnuts"}},
)


def failures(rig: Rig) -> float:
    return rig.bot.metrics.registry.get_sample_value("tureen_update_failures_total") or 0.0


async def test_updates_that_cannot_be_read_are_counted_and_confirmed_and_the_one_after_them_is_answered(
    rig: Rig, caplog: pytest.LogCaptureFixture
) -> None:
    await rig.settle()
    for odd in ODD:
        ((kind, body),) = odd.items()
        rig.room.queue.emit(kind, body, rig.group)
    rig.room.say(rig.ravi, rig.group, "hello")
    await rig.settle()

    assert rig.texts(rig.group) == ["hello"]
    assert not rig.room.updates_pending()
    assert failures(rig) == len(ODD)
    assert "walnuts" not in caplog.text


async def test_an_answer_with_nothing_that_could_be_confirmed_is_a_fault_after_which_is_waited(rig: Rig) -> None:
    for found in ([{"message": 5}, "text"], {"no": "list"}, None):
        with pytest.raises(TelegramError):
            rig.bot.bot._unpacked(found)
    assert rig.bot.bot._unpacked([]) == ()


@pytest.mark.parametrize("odd", ODD)
def test_an_update_that_cannot_be_read_keeps_its_id_alone(odd: dict[str, Any]) -> None:
    heard: list[str] = []
    bot: Any = None

    assert unpacked({"update_id": 7, **odd}, bot, lambda: heard.append("failed")) == telegram.Update(7)
    assert heard == ["failed"]


async def test_the_webhook_takes_what_it_cannot_read_so_that_it_does_not_come_again(web: WebRig) -> None:  # noqa: F811
    found = [await web.deliver({"update_id": n, **odd}) for n, odd in enumerate(ODD, 100)]

    assert found == [200] * len(ODD)
    assert failures(web) == len(ODD)
    assert await web.deliver(web.update(200, "hello")) == 200
    assert [text for _, text in web.seen] == ["hello"]


def test_the_log_hears_the_id_and_the_kind_of_the_fault() -> None:
    bot: Any = None
    line = lines_of(lambda: unpacked({"update_id": 7, **ODD[0]}, bot, lambda: None), "info:json")

    said = json.loads(line)
    assert (said["update"], said["fault"]) == (7, "TypeError")
    assert "walnuts" not in line


def test_the_clients_line_about_what_it_received_shows_none_of_it() -> None:
    text = lines_of(
        lambda: logging.getLogger("telegram.Bot").critical("Error! Received data was %r", ["walnuts"]), "info"
    )

    assert "walnuts" not in text
    assert "parsing" in text
    assert "walnuts" in lines_of(lambda: log.get("x").info("walnuts"))
