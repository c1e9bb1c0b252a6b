"""Another start in words, seen from the old one."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.when import Unclear, moved, read_size, shift

CHICAGO = "America/Chicago"
NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)
SATURDAY_5PM = datetime(2027, 9, 18, 22, tzinfo=UTC)


def to(words, start=SATURDAY_5PM, now=NOW):
    return moved(words, start, now, CHICAGO).starts_at.astimezone(ZoneInfo(CHICAGO)).strftime("%d %H:%M")


@pytest.mark.parametrize(
    ("words", "day"),
    [
        ("Sunday", "19 17:00"),
        ("Friday", "17 17:00"),
        ("Monday 11am", "20 11:00"),
        ("this Sunday", "12 17:00"),
        ("Saturday at 7", "18 19:00"),
        ("Sunday same time", "19 17:00"),
    ],
)
def test_a_weekday_is_the_one_nearest_to_the_old_day(words, day):
    assert to(words) == day


def test_a_weekday_that_has_passed_is_the_next_one():
    assert to("Friday", now=datetime(2027, 9, 18, 12, tzinfo=UTC)) == "24 17:00"


@pytest.mark.parametrize(
    ("words", "day"),
    [("6", "18 18:00"), ("half past six", "18 18:30"), ("noon", "18 12:00"), ("7 in the evening", "18 19:00")],
)
def test_an_hour_alone_keeps_the_day(words, day):
    assert to(words) == day


@pytest.mark.parametrize(
    ("words", "day"),
    [
        ("an hour later", "18 18:00"),
        ("half an hour earlier", "18 16:30"),
        ("two days later", "20 17:00"),
        ("the week after", "25 17:00"),
        ("the day before", "17 17:00"),
    ],
)
def test_later_and_earlier_count_from_the_old_start(words, day):
    assert to(words) == day


def test_a_week_later_is_the_same_hour_on_the_clock_though_the_clocks_change_between():
    before = datetime(2027, 11, 6, 22, tzinfo=UTC)  # 5 PM CDT, clocks go back on 7 November 2027

    after = moved("a week later", before, NOW, CHICAGO).starts_at

    assert after - before == timedelta(days=7, hours=1)


@given(
    st.sampled_from(("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")), st.integers(1, 60)
)
def test_a_weekday_is_never_past_and_within_four_days_of_the_old_day_when_that_is_far_off(weekday, ahead):
    start = SATURDAY_5PM + timedelta(days=ahead)

    found = moved(weekday, start, NOW, CHICAGO).starts_at

    assert found > NOW
    assert abs(found - start) <= timedelta(days=4)
    assert found.astimezone(ZoneInfo(CHICAGO)).strftime("%A").lower() == weekday


@given(st.text(max_size=120))
def test_any_words_are_a_start_or_unclear(words):
    try:
        starts_at = moved(words, SATURDAY_5PM, NOW, CHICAGO).starts_at
    except Unclear:
        return
    assert starts_at.tzinfo is UTC


def test_a_day_by_itself_is_no_shift():
    assert shift("Sunday") is None


@pytest.mark.parametrize(
    ("words", "people"),
    [
        ("30", 30),
        ("about thirty", 30),
        ("20-25", 25),
        ("between 20 and 25 I think", 25),
        ("a couple of dozen", 24),
        ("30 or so", 30),
        ("maybe 40 people", 40),
        ("25, at the hall", 25),
        ("moved to 6", None),
        ("-5", None),
        ("4000", None),
        ("the hall", None),
    ],
)
def test_how_many_people_are_read_from_an_answer(words, people):
    assert read_size(words) == people


def test_a_bare_hour_is_in_the_half_of_the_day_nearer_to_the_old_one() -> None:
    brunch = datetime(2027, 11, 7, 16, tzinfo=UTC)  # 11 AM in New York

    later = moved("11:30", brunch, datetime(2027, 11, 5, tzinfo=UTC), "America/New_York").starts_at

    assert later - brunch == timedelta(minutes=30)
