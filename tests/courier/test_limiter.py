"""The flood limits hold for any pattern of sending.

Figures: the platform's bot FAQ (one a second in a chat, 20 a minute in a group, about 30 a second in all).
"""

import asyncio
from datetime import datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.clock import SimulatedClock
from bot.courier.limiter import Limiter, Window
from bot.courier.waits import Waits
from tests.courier.rig import START

GROUPS = st.sampled_from([-1, -2, -3, 11, 12])


async def drive(clock: SimulatedClock, work: list[asyncio.Task[None]]) -> None:
    while not all(t.done() for t in work):
        for _ in range(10):
            await asyncio.sleep(0)
        if (at := clock.next_wake()) is not None:
            clock.set(at)
    await asyncio.gather(*work)


async def leave(wishes: list[tuple[int, float, bool]], *, on: bool = True) -> list[tuple[int, bool, datetime]]:
    """Each (chat, seconds to think before it, edit) in its chat's order; when each left."""
    clock = SimulatedClock(START)
    limiter = Limiter(Waits(clock), on=on)
    left: list[tuple[int, bool, datetime]] = []

    async def chat(mine: list[tuple[int, float, bool]]) -> None:
        for chat_id, think_s, edit in mine:
            await clock.sleep(think_s)
            await limiter.turn(chat_id, edit=edit)
            left.append((chat_id, edit, clock.now()))

    chats = sorted({w[0] for w in wishes})
    await drive(clock, [asyncio.create_task(chat([w for w in wishes if w[0] == c])) for c in chats])
    return left


def most_in(times: list[datetime], seconds: float) -> int:
    span = timedelta(seconds=seconds)
    return max((sum(1 for t in times if start <= t < start + span) for start in times), default=0)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(GROUPS, st.sampled_from([0.0, 0.0, 0.1, 1.0, 20.0]), st.booleans()), max_size=80))
def test_no_window_ever_holds_more_than_its_limit(wishes: list[tuple[int, float, bool]]) -> None:
    left = asyncio.run(leave(wishes))

    assert len(left) == len(wishes)
    assert most_in([t for _, _, t in left], 1.0) <= 30
    for chat in {c for c, _, _ in left}:
        times = [t for c, _, t in left if c == chat]
        assert most_in(times, 3.0) <= 3
        if chat < 0:
            assert most_in(times, 60.0) <= 20


def test_edits_leave_places_for_messages() -> None:
    left = asyncio.run(leave([(-1, 0.0, True)] * 40))

    assert most_in([t for _, _, t in left], 60.0) <= 14


def test_many_chats_share_thirty_a_second() -> None:
    left = asyncio.run(leave([(chat, 0.0, False) for chat in range(1, 121)]))

    assert most_in([t for _, _, t in left], 1.0) == 30
    assert max(t for _, _, t in left) - START < timedelta(seconds=4)


def test_without_limits_everything_leaves_at_once() -> None:
    left = asyncio.run(leave([(-1, 0.0, False)] * 100, on=False))

    assert {t for _, _, t in left} == {START}


@pytest.mark.parametrize("on", [True, False])
async def test_a_stopped_chat_waits_and_others_do_not(on: bool) -> None:
    clock = SimulatedClock(START)
    limiter = Limiter(Waits(clock), on=on)
    limiter.stop(-1, 30)

    assert limiter.free_at(-1) == START + timedelta(seconds=30)
    assert limiter.free_at(-2) == START


def test_a_clock_set_back_does_not_shut_a_window() -> None:
    window = Window(2, 60.0)
    for minutes in (100, 101):
        window.take(START + timedelta(minutes=minutes))
    window.take(START)

    assert window.free_at(START) <= START + timedelta(seconds=60)


def test_an_upgraded_group_takes_its_count_along() -> None:
    clock = SimulatedClock(START)
    limiter = Limiter(Waits(clock))
    limiter.stop(-1, 10)
    limiter.moved(-1, -100)

    assert limiter.free_at(-100) == START + timedelta(seconds=10)
