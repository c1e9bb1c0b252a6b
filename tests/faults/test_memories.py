"""What the next words lean on is known whichever process takes them; one that was never told does not know it."""

import pytest

from tests.faults.chat import Chat
from tests.faults.memories import LEANINGS, Leaning, by_another, leaned_on, opened, restarted, set_up

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
