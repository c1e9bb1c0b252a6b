"""What the next words lean on is known whichever process takes them; one that was never told does not know it."""

from typing import Any

import pytest

from tests.faults.chat import Chat
from tests.faults.memories import GROUP, LEANINGS, ONE, Leaning, by_another, leaned_on, opened, restarted, set_up

each = pytest.mark.parametrize("leaning", LEANINGS, ids=lambda one: one.kind.replace(" ", "-"))


@each
async def test_words_that_lean_on_the_message_before_are_understood_after_a_restart(url: str, leaning: Leaning) -> None:
    async with opened(url) as chat:
        assert await leaned_on(leaning, restarted, chat)


@each
async def test_words_that_lean_on_a_message_another_replica_took_are_understood(url: str, leaning: Leaning) -> None:
    async with opened(url) as chat:
        assert await by_another(leaning, chat)


@each
async def test_without_the_message_before_the_same_words_are_understood_otherwise(leaning: Leaning) -> None:
    async def never_told(_: Chat) -> Chat:
        return other

    async with opened(None) as chat, opened(None) as other:
        await set_up(leaning, other)
        assert not await leaned_on(leaning, never_told, chat)


async def test_a_press_reads_nothing_of_what_was_said_and_words_read_it_once() -> None:
    async with opened(None) as chat:
        await set_up(LEANINGS[2], chat)
        (coming, *_) = [data for data in await chat.buttons(GROUP) if data.split(".")[1] == "ans"]

        assert await _reads(chat, chat.press(GROUP, ONE, coming)) == 0
        assert await _reads(chat, chat.words(GROUP, ONE, "is it still ok?")) == 1


async def _reads(chat: Chat, update: dict[str, Any]) -> int:
    """How many statements that ask for recollections the update takes."""
    said: list[str] = []
    database = chat.store._runner._reading().connection.driver_connection  # type: ignore[attr-defined]
    database.set_trace_callback(said.append)
    await chat.take(update)
    database.set_trace_callback(None)
    assert said
    return sum("FROM recollection" in statement for statement in said)
