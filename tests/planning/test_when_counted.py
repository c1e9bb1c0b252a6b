"""Days counted within a month, and times of day that are part of a name.

Outside: the calendar itself, through `calendar.monthcalendar`.
"""

from __future__ import annotations

import calendar
from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.when import Unclear, as_read_here, parse_potluck_line, parse_when

ZONE = "America/Chicago"
NOW = datetime(2027, 9, 8, 14, 0, tzinfo=UTC)
ORDINALS = ("first", "second", "third", "fourth")


def day(text: str) -> str:
    return f"{parse_when(text, NOW, ZONE).starts_at.astimezone(ZoneInfo(ZONE)):%Y-%m-%d}"


@given(st.integers(0, 3), st.integers(0, 6), st.integers(1, 12))
def test_a_counted_weekday_of_a_month_is_the_calendars(nth: int, weekday: int, month: int) -> None:
    said = f"the {ORDINALS[nth]} {calendar.day_name[weekday]} of {calendar.month_name[month]} 2028"
    counted = [week[weekday] for week in calendar.monthcalendar(2028, month) if week[weekday]][nth]

    assert day(said) == f"2028-{month:02d}-{counted:02d}"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("second Friday of October", "2027-10-08"),
        ("the 2nd Sat of October 5pm", "2027-10-09"),
        ("first Sunday of next month 4pm", "2027-10-03"),
        ("last Friday of the month 6pm", "2027-09-24"),
        ("the third Saturday", "2027-09-18"),
        ("first Saturday", "2027-10-02"),
        ("fourth Sunday in June", "2028-06-25"),
    ],
)
def test_without_a_year_or_a_month_it_is_the_next_one_to_come(text: str, expected: str) -> None:
    assert day(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("el segundo viernes de julio", "2028-07-14"),
        ("primer sábado de octubre a las 5 de la tarde", "2027-10-02"),
        ("el último domingo del mes", "2027-09-26"),
        ("el tercer sábado", "2027-09-18"),
        ("cuarto jueves de noviembre 20:00", "2027-11-25"),
    ],
)
def test_they_are_counted_in_spanish_too(text: str, expected: str) -> None:
    assert day(as_read_here(text, "es")) == expected


def test_a_fifth_friday_is_refused_in_a_month_of_four() -> None:
    with pytest.raises(Unclear) as told:
        parse_when("fifth Friday of November", NOW, ZONE)

    assert told.value.say.key == "when-no-fifth"


@pytest.mark.parametrize(
    ("line", "title"),
    [
        ("Potato night, Sat 18 Sep 5pm", "Potato night"),
        ("Night shift breakfast Sat 18 Sep 8am", "Night shift breakfast"),
        ("Movie night Saturday 7pm, 20 people", "Movie night"),
        ("Sat 18 Sep 5pm, evening of soup", "evening of soup"),
        ("Saturday evening at 7, soup", "soup"),
        ("Friday night 8pm, soup", "soup"),
    ],
)
def test_a_time_of_day_inside_a_name_stays_there(line: str, title: str) -> None:
    assert parse_potluck_line(line, NOW, ZONE).title == title
