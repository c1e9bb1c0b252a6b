"""Of reminders one at a time is on its way, so that a process that dies leaves one in doubt."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

from bot.clock import SimulatedClock
from bot.courier.delivery import End, Outcome
from bot.courier.lane import MOST_HANGING, SHORT, Lane
from bot.courier.limiter import Limiter
from bot.courier.sending import Sending
from bot.courier.sorter import AFTER_TROUBLE, Sorter
from bot.courier.waits import Waits
from bot.storage import Post
from bot.storage.errors import StorageTrouble

NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)


def reminder(n: int) -> Post:
    return Post(-n, "send", {"text": "soon"}, id=n, reminder_key=f"bring:{n}")


class Calls:
    """In place of the platform and the database: how many calls were made and not yet recorded."""

    def __init__(self, *, trouble: int = 0) -> None:
        self.open = self.most = self.trouble = 0
        self.told: list[tuple[str, int]] = []
        self.trouble = trouble

    async def deliver(self, post: Post) -> Outcome:
        self.open += 1
        self.most = max(self.most, self.open)
        self.told.append(("call", post.id))
        await asyncio.sleep(0)
        return Outcome(End.SENT, post.id)

    async def sent(self, post: Post, message_id: int | None) -> None:
        await asyncio.sleep(0)
        if self.trouble:
            self.trouble -= 1
            raise StorageTrouble("storage-gone")
        self.open -= 1
        self.told.append(("record", post.id))


class Looks:
    def look(self, **_: bool) -> None: ...

    def look_at(self, when: datetime) -> None: ...


def sending(calls: Calls) -> Sending:
    class Clock:
        def now(self) -> datetime:
            return NOW

        async def sleep(self, seconds: float) -> None:
            await asyncio.sleep(0)

    async def never(*_: Any) -> Any:
        raise AssertionError

    parts: list[Any] = [calls, calls, Clock(), Lane(), Looks(), never, never]
    return Sending(*parts)


async def test_a_reminders_call_is_made_when_the_one_before_is_recorded() -> None:
    calls = Calls()
    way = sending(calls)

    await asyncio.gather(*(way.send(reminder(n)) for n in range(1, 6)))

    assert calls.most == 1
    assert calls.told == [(what, n) for n in range(1, 6) for what in ("call", "record")]


async def test_while_the_database_is_away_no_other_reminder_leaves() -> None:
    calls = Calls(trouble=20)
    way = sending(calls)

    await asyncio.gather(*(way.send(reminder(n)) for n in range(1, 4)))

    assert calls.most == 1
    assert [n for what, n in calls.told if what == "call"] == [1, 2, 3]


async def test_peoples_answers_stand_in_no_line() -> None:
    calls = Calls()
    way = sending(calls)

    await asyncio.gather(*(way.send(Post(-n, "send", {"text": "noted"}, id=n)) for n in range(1, 6)))

    assert calls.most == 5


async def test_a_call_that_hangs_lets_the_next_one_go_and_not_endlessly_many() -> None:
    lane, hang = Lane(patience_s=0.0), asyncio.Event()
    began: list[int] = []

    async def one(n: int) -> None:
        async with lane.turn():
            began.append(n)
            await hang.wait()

    tasks = [asyncio.create_task(one(n)) for n in range(3 * MOST_HANGING)]
    for _ in range(200):
        await asyncio.sleep(0)
    hung = len(began)
    hang.set()
    await asyncio.gather(*tasks)

    assert hung == MOST_HANGING + 1
    assert began == list(range(3 * MOST_HANGING))
    async with lane.turn():
        assert lane.in_line == 0


class Shelf:
    """In place of the outbox: what the sorter asks of it."""

    def __init__(self) -> None:
        self.trouble = False
        self.asked: list[tuple[bool, datetime]] = []

    async def claim_posts(self, limit: int, *, reminders: bool, lapsed: datetime) -> tuple[Post, ...]:
        if self.trouble:
            raise StorageTrouble("storage-gone")
        self.asked.append((reminders, lapsed))
        return ()

    async def waiting_posts(self, limit: int) -> tuple[Post, ...]:
        return ()

    async def dirty_boards(self) -> tuple[()]:
        return ()


async def looked(shelf: Shelf, clock: SimulatedClock, lane: Lane, *steps: Callable[[], None]) -> None:
    """A sorter looks after each of the steps."""
    waits = Waits(clock)
    parts: list[Any] = [shelf, waits, None, None, Limiter(waits), lane]
    sorter = Sorter(*parts)
    sorter.start()
    for step in steps:
        step()
        sorter.look(posts=True)
        for _ in range(20):
            await asyncio.sleep(0)
    await sorter.stop()


async def test_after_a_database_was_away_others_are_given_time_to_write_down_what_they_sent() -> None:
    shelf, clock = Shelf(), SimulatedClock(NOW)

    def away() -> None:
        shelf.trouble = True

    def back() -> None:
        shelf.trouble = False

    def later() -> None:
        clock.set(clock.now() + AFTER_TROUBLE)

    await looked(shelf, clock, Lane(), away, back, later)

    first, *_, last = shelf.asked
    assert first[1] < NOW - timedelta(hours=1)
    assert last[1] == NOW + AFTER_TROUBLE


async def test_while_many_reminders_stand_in_line_only_answers_are_claimed() -> None:
    shelf, lane, hold = Shelf(), Lane(), asyncio.Event()

    async def stand() -> None:
        async with lane.turn():
            await hold.wait()

    async with asyncio.TaskGroup() as tasks:
        for _ in range(SHORT + 1):
            tasks.create_task(stand())
        await asyncio.sleep(0)
        await looked(shelf, SimulatedClock(NOW), lane, lambda: None)
        hold.set()
    await looked(shelf, SimulatedClock(NOW), lane, lambda: None)

    assert [reminders for reminders, _ in shelf.asked] == [False, True]
