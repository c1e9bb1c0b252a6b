"""The wall clock is set back by an hour, polling stops without a word, words can't be made: it goes on all the same."""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import AsyncIterator
from datetime import datetime, timedelta
from pathlib import Path

import pytest_asyncio

from bot.clock import SimulatedClock
from bot.courier import Drawn, ReminderCase
from bot.courier.desk import LEASE
from bot.polling import WATCHDOG
from bot.room.faults import Fault, Floods
from bot.storage import Batch, ChatRecord, Post, Stored
from tests.courier.rig import START, Due, Rig, Words

HOUR = timedelta(hours=1)


class WallClock(SimulatedClock):
    """A clock somebody can set: what it shows jumps, but spans that are being waited for stay as long."""

    ahead = timedelta(0)

    def now(self) -> datetime:
        return super().now() + self.ahead

    async def sleep_until(self, when: datetime, *, schedule: bool = False) -> None:
        await super().sleep_until(when - self.ahead, schedule=schedule)

    async def sleep(self, seconds: float) -> None:
        await super().sleep_until(super().now() + timedelta(seconds=seconds))

    def set(self, when: datetime) -> None:
        super().set(when - self.ahead)

    def next_wake(self, *, schedule: bool | None = None) -> datetime | None:
        at = super().next_wake(schedule=schedule)
        return None if at is None else at + self.ahead


class SetBackRig(Rig):
    def __init__(self, folder: Path) -> None:
        self.wall = WallClock(START)
        super().__init__(folder, self.wall)

    async def set_back(self) -> None:
        """An hour, as the first look after it (in real time, every few seconds) finds it."""
        await self.bot.courier.tick()
        self.wall.ahead -= HOUR
        # The platform's own clock is right: its count must not be an hour in the future.
        self.room.floods = Floods()
        await self.bot.courier.tick()


@pytest_asyncio.fixture
async def wall(tmp_path: Path) -> AsyncIterator[SetBackRig]:
    async with SetBackRig(tmp_path) as rig:
        yield rig


async def post(rig: Rig, *texts: str) -> None:
    posts = tuple(Post(rig.group, "send", {"text": text}) for text in texts)
    rig.bot.courier.wake(await rig.store.commit(Batch(now=rig.clock.now(), posts=posts)))


async def test_a_message_that_waits_for_another_try_does_not_wait_an_hour(wall: SetBackRig) -> None:
    wall.room.faults.add(Fault("500", method="sendMessage"))
    await post(wall, "late")
    await wall.settle(waits=False)
    before = wall.clock.now()
    await wall.set_back()
    await wall.settle()

    assert wall.texts(wall.group) == ["late"]
    assert wall.clock.now() < before - HOUR + timedelta(minutes=1)


async def test_a_group_whose_minute_was_full_is_not_silent_for_an_hour(wall: SetBackRig) -> None:
    await post(wall, *(f"n{n}" for n in range(30)))
    await wall.settle(waits=False)
    before = wall.clock.now()
    await wall.set_back()
    await wall.settle()

    assert wall.texts(wall.group) == [f"n{n}" for n in range(30)]
    assert wall.clock.now() < before - HOUR + timedelta(minutes=3)


async def test_a_board_that_keeps_its_distance_does_not_keep_it_for_an_hour(wall: SetBackRig) -> None:
    await wall.add_potluck()
    await wall.settle()
    await wall.change("one")
    await wall.settle(waits=False)
    await wall.set_back()
    before = wall.clock.now()
    await wall.settle()

    assert wall.texts(wall.group, "edit")[-1].endswith("one")
    assert wall.clock.now() < before + timedelta(minutes=1)


async def test_what_a_dead_process_held_comes_free_after_its_lease_and_no_hour_later(wall: SetBackRig) -> None:
    until = wall.clock.now() + LEASE
    held = Post(wall.group, "send", {"text": "held"}, state="claimed", owner="dead", lease_until=until)
    await wall.store.commit(Batch(now=wall.clock.now(), posts=(held,)))
    before = wall.clock.now()
    await wall.set_back()
    await wall.settle()

    assert wall.texts(wall.group) == ["held"]
    assert wall.clock.now() <= before - HOUR + LEASE + timedelta(minutes=1)


async def test_a_reminder_keeps_to_the_time_the_clock_shows(wall: SetBackRig) -> None:
    await wall.add_potluck(Due("a", START + timedelta(minutes=10)))
    await wall.settle()
    await wall.set_back()
    await wall.go_to(START - timedelta(minutes=1))
    early = wall.texts(wall.group)
    await wall.go_to(START + timedelta(minutes=11))

    assert not [t for t in early if "bring" in t]
    assert [t for t in wall.texts(wall.group) if "bring" in t] == ["bring for group: a"]


class Tongueless(Words):
    """Words that fail for one potluck."""

    async def board(self, stored: Stored, chat: ChatRecord | None, now: datetime) -> Drawn:
        raise KeyError("a fact of another version")

    async def reminder(self, case: ReminderCase) -> Post | None:
        if case.kind == "thaw":
            raise KeyError("a fact of another version")
        return await super().reminder(case)


async def test_a_reminder_without_words_does_not_hold_up_the_others(rig: Rig) -> None:
    rig.bot.courier.render = Tongueless()
    await rig.add_potluck(Due("a", START + HOUR, "thaw"), Due("b", START + HOUR), Due("c", START + 2 * HOUR))
    await rig.go_to(START + 3 * HOUR)

    assert rig.texts(rig.group)[-2:] == ["bring for group: b", "bring for group: c"]
    assert {r.key: r.state for r in await rig.store.reminders_of("p1")} == {"a": "failed", "b": "sent", "c": "sent"}


async def test_a_board_that_can_not_be_drawn_does_not_hold_up_messages(rig: Rig) -> None:
    rig.bot.courier.render = Tongueless()
    await rig.add_potluck()
    rig.room.say(rig.ravi, rig.group, "hello")
    await rig.settle(waits=False)

    assert rig.texts(rig.group) == ["hello"]


async def test_polling_that_stopped_without_a_word_is_begun_anew(rig: Rig) -> None:
    await rig.settle()
    stopped = rig.bot._app.updater
    assert stopped is not None
    task = stopped._Updater__polling_task  # type: ignore[attr-defined]
    task.cancel()
    with contextlib.suppress(asyncio.CancelledError):
        await task
    stopped._Updater__polling_task_stop_event.set()  # type: ignore[attr-defined]
    watching = asyncio.create_task(rig.bot._poller.watch())
    rig.room.say(rig.ravi, rig.group, "is anybody there?")
    await asyncio.sleep(0)
    rig.clock.set(rig.clock.now() + WATCHDOG * 2)
    await rig.until(lambda: rig.texts(rig.group))
    watching.cancel()

    assert rig.texts(rig.group) == ["is anybody there?"]
