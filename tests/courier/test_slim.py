"""What is taken away of an update before objects are made of it."""

from __future__ import annotations

from typing import Any

import telegram

from bot.events import read, slim

CHAT = {"id": -1001, "type": "supergroup", "title": "Plot 9", "is_forum": True}
BOT = {"id": 7, "is_bot": True, "first_name": "Tureen"}


def press(**below: Any) -> dict[str, Any]:
    message = {"message_id": 40, "date": 1820000000, "chat": CHAT, "from": BOT, "text": "board " * 50, **below}
    person = {"id": 11, "is_bot": False, "first_name": "Mei"}
    query = {"id": "5", "from": person, "chat_instance": "1", "data": "x", "message": message}
    return {"update_id": 3, "callback_query": query}


def event(data: dict[str, Any]) -> Any:
    update = telegram.Update.de_json(data, None)
    assert update.effective_chat is not None
    return read(update, 7)


def test_a_press_means_the_same_with_and_without_the_words_above_the_button() -> None:
    assert event(slim(press())) == event(press())


def test_a_press_in_a_topic_is_still_in_its_topic() -> None:
    found = event(slim(press(message_thread_id=9, is_topic_message=True)))

    assert found == event(press(message_thread_id=9, is_topic_message=True))
    assert found.thread_id == 9


def test_a_press_on_a_message_too_old_to_be_shown_is_still_a_press() -> None:
    old = press()
    old["callback_query"]["message"] = {"message_id": 40, "date": 0, "chat": CHAT}

    assert event(slim(old)).message_id == 40
