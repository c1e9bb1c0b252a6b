"""Nobody who writes as people do is held back; whoever floods is told once and gets no more than a share through."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any

import telegram
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.clock import SimulatedClock
from bot.floods import CHAT, PERSON, Allowed, Floods, Spent, Verdict

START = datetime(2027, 9, 10, 14, tzinfo=UTC)
GROUP = -1001


def says(person: int, at: datetime, chat: int = GROUP) -> telegram.Update:
    user = telegram.User(person, "Guest", False)
    where = telegram.Chat(chat, "group" if chat < 0 else "private")
    return telegram.Update(1, message=telegram.Message(1, at, where, from_user=user, text="hello"))


def presses(person: int, at: datetime, chat: int = GROUP) -> telegram.Update:
    """A board of days ago is pressed: the message's own date says nothing."""
    user = telegram.User(person, "Guest", False)
    board = telegram.Message(1, START - timedelta(days=3), telegram.Chat(chat, "group"))
    return telegram.Update(1, callback_query=telegram.CallbackQuery("1", user, "1", message=board, data="x"))


def looked(floods: Floods, clock: SimulatedClock, updates: list[tuple[float, Any]]) -> list[Verdict]:
    found = []
    for at_s, update in sorted(updates, key=lambda u: u[0]):
        clock.set(max(clock.now(), START + timedelta(seconds=at_s)))
        found.append(floods.look(update))
    return found


@given(st.lists(st.floats(0, 300), max_size=120))
def test_what_one_person_can_type_is_never_held_back(seconds: list[float]) -> None:
    clock = SimulatedClock(START)
    updates = [(s, says(7, START + timedelta(seconds=s))) for s in seconds]

    assert set(looked(Floods(clock), clock, updates)) <= {Verdict.FINE}


@given(st.lists(st.floats(0, 60), min_size=150, max_size=400), st.integers(1, 40), st.floats(0.2, 5))
def test_no_span_of_time_lets_more_through_than_is_allowed(seconds: list[float], at_once: int, per_s: float) -> None:
    clock = SimulatedClock(START)
    spent = Spent(clock, Allowed(at_once, per_s))
    taken = []
    for s in sorted(seconds):
        clock.set(START + timedelta(seconds=s))
        if spent.take("it"):
            taken.append(s)

    for first in range(0, len(taken), 7):
        for last in range(first, len(taken), 5):
            assert last - first + 1 <= at_once + per_s * (taken[last] - taken[first]) + 1.001


def test_whoever_floods_is_told_once_a_minute_and_then_passed_over() -> None:
    clock = SimulatedClock(START)
    floods = Floods(clock)
    found = looked(floods, clock, [(n / 100, presses(7, START)) for n in range(1000)])

    assert found[: PERSON.at_once] == [Verdict.FINE] * PERSON.at_once
    assert found.count(Verdict.TELL) == 1
    assert found.count(Verdict.FINE) <= PERSON.at_once + 10 * PERSON.per_s + 1


def test_a_flood_of_one_holds_nobody_else_back() -> None:
    clock = SimulatedClock(START)
    floods = Floods(clock)
    looked(floods, clock, [(n / 400, presses(7, START)) for n in range(400)])

    assert floods.look(says(8, clock.now())) is Verdict.FINE


def test_two_hundred_guests_three_times_within_ten_seconds_are_all_heard() -> None:
    clock = SimulatedClock(START)
    updates = [(n / 60, presses(100 + n % 200, START)) for n in range(600)]

    assert set(looked(Floods(clock), clock, updates)) == {Verdict.FINE}


def test_a_chat_of_many_that_floods_is_held_back_as_one() -> None:
    clock = SimulatedClock(START)
    updates = [(n / 5000, presses(100 + n, START)) for n in range(CHAT.at_once + 50)]
    found = looked(Floods(clock), clock, updates)

    assert found.count(Verdict.FINE) <= CHAT.at_once + CHAT.per_s
    assert found.count(Verdict.TELL) == 1


@settings(max_examples=25)
@given(st.lists(st.floats(31, 80_000), min_size=200, max_size=300))
def test_what_waited_while_nobody_read_counts_for_nobody(ages: list[float]) -> None:
    clock = SimulatedClock(START)
    floods = Floods(clock)

    assert {floods.look(says(7, START - timedelta(seconds=age))) for age in ages} == {Verdict.FINE}


@given(st.floats(0, 80_000), st.integers(1, 5))
def test_a_clock_set_back_makes_nobody_a_flood(back_s: float, already: int) -> None:
    spent = Spent(SimulatedClock(START), Allowed(20, 1.0))
    assert all(spent.take("it") for _ in range(already))
    spent.clock = SimulatedClock(START - timedelta(seconds=back_s))
    refused = sum(not spent.take("it") for _ in range(10))

    # Set back by less than the share lasts, the seconds that are lived twice count twice.
    assert refused <= (max(0.0, already + back_s + 10 - 20) if back_s <= 20 else 0) + 1
