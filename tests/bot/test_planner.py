"""The kitchen's timeline outlives the process that planned it, and no reminder hangs on one process's memory."""

from __future__ import annotations

from collections.abc import AsyncIterator
from dataclasses import replace
from datetime import timedelta

import pytest

from bot.planner import Planner
from bot.storage import Store
from tests.faults.chat import Chat

HERE = -1001
HOST, COOK, GUEST = 1, 100, 101
KITCHEN = {"preheat", "slow-cooker", "swap"}


@pytest.fixture
async def chat() -> AsyncIterator[Chat]:
    opened = await Chat.open(HERE)
    started(opened)
    await opened.take(opened.words(HERE, HOST, "/potluck in 12 days 5pm, about 40 people, at the allotment hut"))
    yield opened
    await opened.close()


def started(chat: Chat, store: Store | None = None) -> Planner:
    """A process that knows nothing yet but its database."""
    planner = Planner(store or chat.store, chat.clock)
    chat.dispatcher.services = replace(chat.dispatcher.services, planner=planner)
    return planner


async def planned(planner: Planner) -> None:
    for task in list(planner._wanted.values()):
        await task


async def due(chat: Chat) -> set[str]:
    stored = await chat.current(HERE)
    assert stored is not None
    return {
        r.key for r in await chat.store.reminders_of(stored.potluck.id) if r.kind in KITCHEN and r.state == "pending"
    }


async def lasagna(chat: Chat) -> Planner:
    """Somebody brings a dish for the oven; it is planned."""
    planner = started(chat)
    await chat.take(chat.words(HERE, COOK, "bringing lasagna for 12, 50 minutes at 375", reply_to=5))
    await planned(planner)
    return planner


async def test_an_answer_right_after_a_restart_withdraws_no_reminder_of_the_kitchen(chat: Chat) -> None:
    await lasagna(chat)
    before = await due(chat)

    restarted = started(chat)
    await chat.take(chat.words(HERE, GUEST, "/bring green salad for 8"))
    restarted.cancel()  # killed before it could plan

    assert before
    assert await due(chat) == before


async def test_what_a_process_died_over_is_planned_by_the_next_one(chat: Chat) -> None:
    planner = started(chat)
    await chat.take(chat.words(HERE, COOK, "bringing lasagna for 12, 50 minutes at 375", reply_to=5))
    planner.cancel()
    assert await due(chat) == set()

    restarted = started(chat)
    await restarted.catch_up()
    await planned(restarted)

    assert await due(chat)
    assert await chat.store.plans_due(chat.clock.now(), chat.clock.now()) == ()


async def test_a_replica_goes_on_with_the_timeline_another_one_made(chat: Chat) -> None:
    first = await lasagna(chat)
    stored = await chat.current(HERE)
    assert stored is not None
    second = started(chat)

    await second.look(stored)

    assert second.timeline(stored.potluck) == first.timeline(stored.potluck)
    assert second.settled(stored.potluck)


async def test_a_replica_whose_timeline_is_old_learns_of_the_newer_one_before_it_writes(chat: Chat) -> None:
    first = await lasagna(chat)
    await chat.take(
        chat.words(HERE, GUEST, "bringing rolls for 12, 20 minutes at 450", reply_to=5)
    )  # first has not planned it yet
    first.cancel()
    second = started(chat)
    await second.catch_up()
    await planned(second)
    newest = await due(chat)

    chat.dispatcher.services = replace(chat.dispatcher.services, planner=first)
    await chat.take(chat.words(HERE, HOST, "/bring paper plates"))
    first.cancel()

    assert await due(chat) == newest


async def test_what_asks_for_nothing_new_is_not_marked_as_waiting(chat: Chat) -> None:
    await lasagna(chat)

    late = chat.clock.now() + timedelta(hours=1)
    assert await chat.store.plans_due(late, chat.clock.now()) == ()


async def test_only_a_cooks_answer_asks_for_another_timeline(chat: Chat) -> None:
    planner = await lasagna(chat)
    await chat.take(chat.words(HERE, GUEST, "coming, 3 of us", reply_to=5))
    eaters = planner.busy
    await chat.take(chat.words(HERE, COOK, "sorry, I can't come", reply_to=5))
    cooks = planner.busy
    planner.cancel()

    assert (eaters, cooks) == (False, True)
