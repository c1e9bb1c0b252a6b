"""Starting and stopping: what is there first, what waits, what a restart finds."""

import asyncio
from datetime import timedelta
from typing import Any

import pytest
from telegram.error import InvalidToken

from bot.app import TureenBot
from bot.intake import ALLOWED_UPDATES
from bot.room.faults import Fault
from tests.courier.rig import START, Due, Rig


async def test_the_kinds_of_updates_are_asked_for_by_name(rig: Rig) -> None:
    await rig.settle()

    assert rig.room.queue.allowed == ALLOWED_UPDATES


async def test_a_platform_out_of_reach_at_the_start_is_waited_for(rig: Rig) -> None:
    await rig.bot.stop()
    rig.room.faults.add(Fault("500", method="getMe", count=3))
    starting = asyncio.create_task(rig.make().start())
    while not starting.done():
        await asyncio.sleep(0.002)
        if (at := rig.clock.next_wake()) is not None:
            rig.clock.set(at)
    rig.room.say(rig.ravi, rig.group, "hello")
    await rig.settle()

    assert rig.texts(rig.group) == ["hello"]


async def test_a_refused_token_ends_the_start(rig: Rig) -> None:
    await rig.bot.stop()
    rig.room.token += "changed"

    with pytest.raises(InvalidToken):
        await rig.bot.start()
    rig.room.token = rig.room.token.removesuffix("changed")
    await rig.make().start()


async def test_a_process_whose_token_is_refused_leaves_no_line_open(rig: Rig) -> None:
    await rig.bot.stop()
    rig.room.token += "changed"

    with pytest.raises(InvalidToken):
        await rig.bot.run_until_signalled()

    assert all(r._session is None or r._session.closed for r in rig.bot._requests)


async def test_words_are_there_before_anything_is_sent(rig: Rig) -> None:
    """What draws boards may be built only when the command menu is set: nothing due is lost by that."""
    await rig.add_potluck(Due("a", START + timedelta(hours=1)))
    await rig.settle()
    await rig.bot.kill()
    rig.clock.set(START + timedelta(hours=2))

    async def late_words() -> None:
        rig.bot.courier.render = rig.words

    fresh = rig.make(commands=late_words)
    fresh.courier.render = None
    await fresh.start()
    await rig.settle()

    assert "bring for group: a" in rig.texts(rig.group)


async def test_a_replica_keeps_its_name_when_it_is_started_again_and_shares_it_with_none_beside_it(rig: Rig) -> None:
    def owner(port: int) -> list[str]:
        bot = TureenBot(
            token=rig.room.token, store=rig.store, clock=rig.clock, mode="webhook",
            webhook_url="https://plots.example/hook", webhook_listen=("127.0.0.1", port), webhook_secret="s" * 20,
        )  # fmt: skip
        return bot.courier.owner.split("/")

    before, again, beside = owner(8443), owner(8443), owner(8444)

    assert before[0] == again[0] != beside[0]
    assert before[1] != again[1]


async def test_a_lost_reminder_is_reported_once(rig: Rig) -> None:
    await rig.add_potluck(Due("a", START + timedelta(hours=1)))
    await rig.settle()
    rig.room.faults.add(Fault("403", method="sendMessage"))
    await rig.go_to(START + timedelta(hours=2))

    assert rig.bot.take_failed_reminders() == [(rig.group, "bring", "courier-why-gone")]
    assert not rig.bot.take_failed_reminders()


async def test_killed_and_restarted_in_the_middle_of_much_nothing_is_lost(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()
    said: list[str] = []
    for life in range(4):
        for n in range(12):
            text = f"!{life}.{n}" if n % 3 else f"{life}.{n}"
            said.append(text)
            rig.room.say(rig.ravi, rig.group, text)
        for _ in range(7 * (life + 1)):
            await asyncio.sleep(0.001)
        await rig.bot.kill()
        await rig.make().start()
    await rig.settle()

    stored = await rig.store.potluck("p1")
    assert stored is not None
    joined = [g.name for g in stored.potluck.guests[2:]]
    assert joined == [t[1:] for t in said if t.startswith("!")]
    assert stored.place.board_dirty_since is None
    echoes = [t for t in said if not t.startswith("!")]
    doubtful: Any = await rig.given_up(rig.group)
    shown = [t for t in rig.texts(rig.group) if t in echoes]
    assert shown == [t for t in echoes if t in shown]
    # Only what was on the line at a kill may be missing, and each such one is on record.
    assert len(echoes) - len(set(shown)) <= len(doubtful) <= 4
