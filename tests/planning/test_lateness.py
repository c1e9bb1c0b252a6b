"""When somebody comes who says so many minutes late."""

from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from planning.theday.lateness import later_by

START = datetime(2027, 9, 18, 22, tzinfo=UTC)
NEEDED = START - timedelta(minutes=90)


def at(minutes_from_start):
    return START + timedelta(minutes=minutes_from_start)


def test_before_the_dish_is_needed_it_counts_from_then():
    assert later_by(20, NEEDED, START, at(-120)) == at(-70)


def test_when_that_time_is_over_it_counts_from_the_start():
    assert later_by(20, NEEDED, START, at(-20)) == at(20)


def test_just_after_the_start_it_still_counts_from_the_start():
    assert later_by(20, START, START, at(10)) == at(20)


def test_long_after_the_start_it_counts_from_now():
    assert later_by(20, START, START, at(60)) == at(80)


@given(st.integers(1, 600), st.integers(-300, 0), st.integers(-600, 600))
def test_it_is_always_ahead_and_never_later_than_so_long_after_now_or_the_start(minutes, due, now):
    found = later_by(minutes, at(due), START, at(now))

    assert at(now) < found <= max(at(now), START) + timedelta(minutes=minutes)
