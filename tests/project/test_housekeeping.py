"""Old potlucks go by themselves, once a day, and a bot that waits for that is at rest."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from datetime import timedelta
from pathlib import Path

import pytest

from bot.clock import SimulatedClock
from bot.housekeeping import FIRST, Housekeeping
from bot.storage import Store
from bot.storage.errors import StorageTrouble
from tests.storage.helpers import NOW, potluck, stored


@pytest.fixture
async def store(tmp_path: Path) -> AsyncIterator[Store]:
    async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'kept.db'}") as opened:
        yield opened


class Counting(Store):
    """A store that says when it was cleaned and can be out of order."""

    broken = 0

    async def delete_potlucks_before(self, when):  # type: ignore[no-untyped-def]
        self.asked.append(when)
        if self.broken:
            self.broken -= 1
            raise StorageTrouble("storage-locked")
        return await super().delete_potlucks_before(when)


@pytest.fixture
async def counting(tmp_path: Path) -> AsyncIterator[Counting]:
    async with await Counting.open(f"sqlite+aiosqlite:///{tmp_path / 'counted.db'}") as opened:
        opened.asked = []
        yield opened


async def passes(clock: SimulatedClock, span: timedelta, keeping: Housekeeping) -> None:
    """Let `span` pass; everything due on the way is finished at its time."""
    end = clock.now() + span
    while True:
        # At rest: the housekeeper sleeps until something planned.
        while clock.next_wake(schedule=True) is None:  # noqa: ASYNC110 - the clock tells nobody who sleeps
            await asyncio.sleep(0.001)
        due = clock.next_wake()
        assert due is not None
        if due > end:
            break
        clock.set(due)
    clock.set(end)


async def test_a_potluck_goes_when_its_days_are_over_and_not_before(store: Store) -> None:
    day = timedelta(days=1)
    await stored(store, potluck("old", starts_at=NOW - 59 * day))
    clock = SimulatedClock(NOW)
    keeping = Housekeeping(store, clock, keep_days=60)
    keeping.start()

    await passes(clock, timedelta(hours=20), keeping)
    assert list(await store.potluck_ids()) == ["old"]
    await passes(clock, 2 * day, keeping)
    keeping.cancel()

    assert list(await store.potluck_ids()) == []
    assert await store.potluck("old") is None


async def test_a_younger_potluck_and_a_coming_one_stay(store: Store) -> None:
    await stored(store, potluck("young", starts_at=NOW - timedelta(days=3)))
    await stored(store, potluck("coming", starts_at=NOW + timedelta(days=300)))
    clock = SimulatedClock(NOW)

    gone = await Housekeeping(store, clock, keep_days=4).once()

    assert gone == 0
    assert sorted(await store.potluck_ids()) == ["coming", "young"]


async def test_it_runs_once_a_day_and_first_soon_after_the_start(counting: Counting) -> None:
    clock = SimulatedClock(NOW)
    keeping = Housekeeping(counting, clock, keep_days=10)
    keeping.start()

    await passes(clock, timedelta(days=5), keeping)
    keeping.cancel()

    asked = [when + timedelta(days=10) for when in counting.asked]
    assert asked == [NOW + FIRST + timedelta(days=n) for n in range(5)]


async def test_a_trouble_of_one_day_does_not_end_it(counting: Counting) -> None:
    await stored(counting, potluck("old", starts_at=NOW - timedelta(days=100)))
    counting.broken = 2
    clock = SimulatedClock(NOW)
    keeping = Housekeeping(counting, clock)
    keeping.start()

    await passes(clock, timedelta(days=3), keeping)
    keeping.cancel()

    assert list(await counting.potluck_ids()) == []


async def test_waiting_for_tomorrow_is_no_wait_that_keeps_the_bot_busy(store: Store) -> None:
    clock = SimulatedClock(NOW)
    keeping = Housekeeping(store, clock)
    keeping.start()
    await asyncio.sleep(0)

    assert clock.next_wake(schedule=True) == NOW + FIRST
    assert clock.next_wake(schedule=False) is None
    keeping.cancel()
    await asyncio.sleep(0)
    assert clock.next_wake() is None
