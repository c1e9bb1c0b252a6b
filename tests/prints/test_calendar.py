"""Checked against RFC 5545 (section numbers beside each test) with icalendar as the reading side."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from icalendar import Calendar

from bot import prints
from planning.potluck import Say, Stage
from tests.prints.builders import START, a_potluck, with_bar, words_from_texts

WORDS = words_from_texts()
STAMP = START - timedelta(days=9)


SERVE = Say("prints-event-serve")


@dataclass(frozen=True)
class Due:
    to: str
    due_at: datetime
    about: Say = SERVE


def _calendar(potluck, reminders=(), guest=None, **options) -> Calendar:
    return Calendar.from_ical(prints.calendar(potluck, reminders, guest, WORDS, STAMP, **options))


def _event(calendar):
    (event,) = calendar.walk("VEVENT")
    return event


def test_lines_end_in_crlf_and_are_at_most_75_octets() -> None:  # 3.1
    potluck = a_potluck(9, title="Суп " * 60)

    raw = prints.calendar(potluck, (), potluck.guests[0], WORDS, STAMP)

    assert raw.endswith(b"END:VCALENDAR\r\n")
    assert b"\n" not in raw.replace(b"\r\n", b"")
    assert all(len(line) <= 75 for line in raw.split(b"\r\n"))


def test_what_every_calendar_and_event_must_have_is_there() -> None:  # 3.6, 3.6.1
    calendar = _calendar(a_potluck(3))

    assert calendar["version"] == "2.0"
    assert calendar["prodid"]
    event = _event(calendar)
    assert event["uid"]
    assert event["dtstamp"].dt == STAMP
    assert event["dtstart"].dt == START
    assert event["dtend"].dt == START + timedelta(hours=3)


def test_the_start_is_wall_time_with_a_zone_that_the_file_defines() -> None:  # 3.2.19
    calendar = _calendar(a_potluck(3))

    assert _event(calendar)["dtstart"].params["TZID"] == "America/Chicago"
    assert [z["tzid"] for z in calendar.walk("VTIMEZONE")] == ["America/Chicago"]


def test_new_york_changes_at_the_onsets_of_the_rfcs_own_example() -> None:
    # 3.6.5: DAYLIGHT from 20070311T020000, -0500 to -0400; STANDARD from 20071104T020000, -0400 to -0500.
    potluck = a_potluck(0, starts_at=datetime(2007, 7, 1, 20, tzinfo=UTC), timezone="America/New_York")

    parts = {
        (p.name, p["dtstart"].to_ical(), p["tzoffsetfrom"].to_ical(), p["tzoffsetto"].to_ical())
        for p in _calendar(potluck).walk("VTIMEZONE")[0].subcomponents
    }

    assert ("DAYLIGHT", b"20070311T020000", "-0500", "-0400") in parts
    assert ("STANDARD", b"20071104T020000", "-0400", "-0500") in parts


ZONES = [
    "America/Chicago",
    "Europe/London",
    "Asia/Kolkata",
    "Australia/Lord_Howe",
    "Africa/Casablanca",
    "Etc/UTC",
    "Pacific/Chatham",
    "America/St_Johns",
]


@settings(max_examples=60, deadline=None)
@given(st.integers(946_684_800, 2_114_380_800), st.sampled_from(ZONES))
def test_any_start_in_any_zone_reads_back_to_the_same_instant_by_the_files_own_rules(at: int, zone: str) -> None:
    starts = datetime.fromtimestamp(at - at % 60, UTC)  # 2000 to 2036
    calendar = _calendar(a_potluck(0, starts_at=starts, timezone=zone))

    wall = _event(calendar)["dtstart"].dt.replace(tzinfo=None)
    offsets = _offsets_by_the_file(calendar, wall)

    local = starts.astimezone(ZoneInfo(zone))
    assert wall == local.replace(tzinfo=None)
    assert local.utcoffset() in offsets


def _offsets_by_the_file(calendar: Calendar, wall: datetime) -> set[timedelta]:
    """The offset of the latest onset before the wall time; within a change, both sides of it."""
    parts = sorted(calendar.walk("VTIMEZONE")[0].subcomponents, key=lambda p: p["dtstart"].dt)
    before = [p for p in parts if p["dtstart"].dt <= wall]
    if not before:
        return {parts[0]["tzoffsetfrom"].td}
    near = {p["tzoffsetfrom"].td for p in before[-1:] if wall - p["dtstart"].dt < timedelta(hours=2)}
    near |= {p["tzoffsetto"].td for p in parts if timedelta() < p["dtstart"].dt - wall < timedelta(hours=2)}
    return {before[-1]["tzoffsetto"].td} | near


def test_a_guests_alarms_are_their_own_reminders_at_their_due_times() -> None:  # 3.6.6
    potluck = a_potluck(3)
    reminders = (Due("g1", START - timedelta(hours=20)), Due("g2", START), Due("host", START))

    alarms = _event(_calendar(potluck, reminders, potluck.guests[1])).walk("VALARM")

    assert [a["trigger"].dt for a in alarms] == [timedelta(hours=-20)]
    assert alarms[0]["action"] == "DISPLAY"
    assert alarms[0]["description"] == WORDS("prints-event-serve")


def test_the_hosts_file_carries_the_hosts_reminders_too() -> None:
    potluck = a_potluck(3)
    reminders = (Due("host", START - timedelta(days=2)), Due("g0", START + timedelta(hours=2)), Due("group", START))

    alarms = _event(_calendar(potluck, reminders, potluck.guests[0])).walk("VALARM")

    assert [a["trigger"].dt for a in alarms] == [timedelta(days=-2), timedelta(hours=2)]


def test_a_trigger_reads_as_the_rfc_writes_durations() -> None:  # 3.3.6, 3.8.6.3
    potluck = a_potluck(1)

    raw = prints.calendar(potluck, (Due("g0", START - timedelta(minutes=30)),), potluck.guests[0], WORDS, STAMP)

    assert b"TRIGGER:-PT30M\r\n" in raw


def test_commas_semicolons_backslashes_and_new_lines_are_escaped() -> None:  # 3.3.11
    potluck = a_potluck(1, title="Soup; bread, and\\or\nbutter")

    raw = prints.calendar(potluck, (), None, WORDS, STAMP)

    assert b"SUMMARY:Soup\\; bread\\, and\\\\or\\nbutter\r\n" in raw


def test_a_cancelled_potluck_cancels_the_event_and_rings_no_alarm() -> None:  # 3.8.1.11
    potluck = a_potluck(1, stage=Stage.CANCELLED)

    event = _event(_calendar(potluck, (Due("g0", START),), potluck.guests[0], sequence=4))

    assert event["status"] == "CANCELLED"
    assert event["sequence"] == 4
    assert not event.walk("VALARM")


def test_a_newer_file_replaces_the_older_event_because_the_id_stays() -> None:  # 3.8.4.7
    potluck = a_potluck(1)
    moved = replace(potluck, starts_at=START + timedelta(days=7), title="Moved")

    assert _event(_calendar(potluck))["uid"] == _event(_calendar(moved))["uid"]


def test_an_end_before_the_start_does_not_spoil_the_file() -> None:  # 3.8.2.2: DTEND is later than DTSTART
    potluck = a_potluck(1, ends_at=START - timedelta(hours=1))

    event = _event(_calendar(potluck))

    assert event["dtend"].dt > event["dtstart"].dt


def test_a_guest_reads_what_they_bring_toppings_too() -> None:
    potluck = with_bar(a_potluck(3))

    text = str(_event(_calendar(potluck, (), potluck.guests[1]))["description"])

    assert "Roast squash (9 servings)" in text
    assert "grated cheddar" in text


@pytest.mark.parametrize("guest", [None, 0])
def test_no_file_tells_anybodys_needs(guest: int | None) -> None:
    from tests.prints.builders import with_needs

    potluck = with_needs(a_potluck(12))

    raw = prints.calendar(potluck, (), None if guest is None else potluck.guests[guest], WORDS, STAMP)

    assert b"peanut" not in raw
    assert b"vegetarian" not in raw
