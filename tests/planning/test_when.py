"""Dates and times in words. Wall clocks are checked against the IANA database through zoneinfo."""

from __future__ import annotations

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest

from planning.when import Unclear, parse_when

ZONE = "America/Chicago"
NOW = datetime(2027, 9, 8, 14, 0, tzinfo=UTC)  # Wednesday, 9 in the morning in Chicago


@pytest.mark.parametrize(
    ("text", "wall"),
    [
        ("Sat 18 Sep 5pm", "2027-09-18 17:00"),
        ("tomorrow at six", "2027-09-09 18:00"),
        ("next Friday 7:30pm", "2027-09-17 19:30"),
        ("18.9. 17:00", "2027-09-18 17:00"),
        ("September 18th, 2027 at 5", "2027-09-18 17:00"),
        ("eighteenth of September at noon", "2027-09-18 12:00"),
        ("half past five on Saturday", "2027-09-11 17:30"),
        ("brunch Sunday at 11", "2027-09-12 11:00"),
        ("2027-09-18T17:00", "2027-09-18 17:00"),
        ("Fri the 17th at 6pm", "2027-09-17 18:00"),
    ],
)
def test_a_date_with_a_time_is_that_wall_time(text: str, wall: str) -> None:
    when = parse_when(text, NOW, ZONE)

    assert when.has_time
    assert f"{when.starts_at.astimezone(ZoneInfo(ZONE)):%Y-%m-%d %H:%M}" == wall


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("18 Sep 2020", "when-past"),
        ("today 8am", "when-past"),
        ("Sat 19 Sep", "when-weekday-disagrees"),
        ("29 Feb 2027", "when-29-february"),
        ("31 April", "when-no-such-day"),
        ("5/6", "when-day-or-month"),
        ("18 Sep 2072", "when-too-far"),
        ("at 10", "when-am-or-pm"),
        ("this weekend", "when-which-day"),
        ("banana", "when-not-understood"),
    ],
)
def test_what_cannot_be_acted_on_says_why(text: str, key: str) -> None:
    with pytest.raises(Unclear) as caught:
        parse_when(text, NOW, ZONE)

    assert caught.value.say.key == key
