"""Dates and times in words.

Outside: wall clocks against the IANA database through zoneinfo, forms that are open to one reading only against
dateparser's own answers, and the nights when clocks change in America/Chicago and Europe/Berlin.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from zoneinfo import ZoneInfo

import dateparser
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Money
from planning.when import Unclear, parse_duration, parse_potluck_line, parse_when

ZONE = "America/Chicago"
NOW = datetime(2027, 9, 8, 14, 0, tzinfo=UTC)  # Wednesday, 9 in the morning in Chicago


def wall(text: str, now: datetime = NOW, zone: str = ZONE) -> str:
    return f"{parse_when(text, now, zone).starts_at.astimezone(ZoneInfo(zone)):%Y-%m-%d %H:%M}"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Sat 18 Sep 5pm", "2027-09-18 17:00"),
        ("Saturday, September 18th at 5:30 p.m.", "2027-09-18 17:30"),
        ("tomorrow at six", "2027-09-09 18:00"),
        ("tonight at 7", "2027-09-08 19:00"),
        ("Friday 7:30pm", "2027-09-10 19:30"),
        ("next Friday 7:30pm", "2027-09-17 19:30"),
        ("18.9. 17:00", "2027-09-18 17:00"),
        ("18.09.2027 17.30", "2027-09-18 17:30"),
        ("September 18th, 2027 at 5", "2027-09-18 17:00"),
        ("eighteenth of September at noon", "2027-09-18 12:00"),
        ("half past five on Saturday", "2027-09-11 17:30"),
        ("Sat quarter to six", "2027-09-11 17:45"),
        ("brunch Sunday at 11", "2027-09-12 11:00"),
        ("Saturday morning at 9", "2027-09-11 09:00"),
        ("2027-09-18T17:00", "2027-09-18 17:00"),
        ("Fri the 17th at 6pm", "2027-09-17 18:00"),
        ("a week on Saturday at 5", "2027-09-18 17:00"),
        ("Saturday week 5pm", "2027-09-18 17:00"),
        ("Christmas Eve 6pm", "2027-12-24 18:00"),
        ("Sat 9/18 5pm", "2027-09-18 17:00"),
        ("18/9 17h", "2027-09-18 17:00"),
        ("Sat 18 Sep 1700", "2027-09-18 17:00"),
        ("18 Sep 05:00", "2027-09-18 05:00"),
        ("in 2 hours", "2027-09-08 11:00"),
        ("at 5", "2027-09-08 17:00"),
        ("5", "2027-09-08 17:00"),
        ("18 septembre 17h30", "2027-09-18 17:30"),
        ("sábado 18 de septiembre 17:00", "2027-09-18 17:00"),
    ],
)
def test_a_date_with_a_time_is_that_wall_time(text: str, expected: str) -> None:
    assert parse_when(text, NOW, ZONE).has_time
    assert wall(text) == expected


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("Saturday", "2027-09-11"),
        ("in two weeks", "2027-09-22"),
        ("the 18th", "2027-09-18"),
        ("the 5th", "2027-10-05"),
        ("the 31st", "2027-10-31"),
        ("day after tomorrow", "2027-09-10"),
        ("29 February", "2028-02-29"),
        ("1 March", "2028-03-01"),
        ("Thanksgiving", "2027-11-25"),  # the fourth Thursday of November, 5 U.S.C. 6103
        ("Labor Day", "2028-09-04"),  # the first Monday of September; that of 2027 was two days ago
        ("mañana", "2027-09-09"),
        ("Samstag", "2027-09-11"),
    ],
)
def test_a_day_without_a_time_says_so(text: str, day: str) -> None:
    when = parse_when(text, NOW, ZONE)

    assert (when.has_time, f"{when.starts_at.astimezone(ZoneInfo(ZONE)):%Y-%m-%d}") == (False, day)


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("18 Sep 2020", "when-past"),
        ("today 8am", "when-past"),
        ("28 August", "when-past"),
        ("Sat 19 Sep", "when-weekday-disagrees"),
        ("Fri the 18th", "when-weekday-disagrees"),
        ("29 Feb 2027", "when-29-february"),
        ("31 April", "when-no-such-day"),
        ("0 September", "when-no-such-day"),
        ("5/6", "when-day-or-month"),
        ("18 Sep 2072", "when-too-far"),
        ("at 10", "when-am-or-pm"),
        ("10 Sep 25:00", "when-no-such-time"),
        ("this weekend", "when-which-day"),
        ("next week", "when-which-day"),
        ("banana", "when-not-understood"),
        ("", "when-not-understood"),
    ],
)
def test_what_cannot_be_acted_on_says_why(text: str, key: str) -> None:
    with pytest.raises(Unclear) as caught:
        parse_when(text, NOW, ZONE)

    assert caught.value.say.key == key


def test_a_past_date_offers_the_next_such_date() -> None:
    with pytest.raises(Unclear) as caught:
        parse_when("4th of July", NOW, ZONE)

    assert caught.value.say.facts["other_date"] == "2028-07-04"


def test_a_weekday_that_disagrees_names_the_day_it_is() -> None:
    with pytest.raises(Unclear) as caught:
        parse_when("Sat 19 Sep", NOW, ZONE)

    facts = caught.value.say.facts
    assert (facts["weekday"], facts["said"], facts["other_date"]) == ("sunday", "saturday", "2027-09-18")


@pytest.mark.parametrize(
    ("text", "start", "end"),
    [
        ("Sat 18 Sep 5-9pm", "18 17:00", "18 21:00"),
        ("Saturday 18 Sep from 5 to 9", "18 17:00", "18 21:00"),
        ("Sat 18 Sep 11-2pm", "18 11:00", "18 14:00"),
        ("Sat 18 Sep 8pm to 1am", "18 20:00", "19 01:00"),
        ("Sat 18 Sep 17:00-21:30", "18 17:00", "18 21:30"),
    ],
)
def test_a_range_of_hours_has_a_start_and_an_end(text: str, start: str, end: str) -> None:
    when = parse_when(text, NOW, ZONE)

    zone = ZoneInfo(ZONE)
    assert when.ends_at is not None
    assert (f"{when.starts_at.astimezone(zone):%d %H:%M}", f"{when.ends_at.astimezone(zone):%d %H:%M}") == (start, end)


@pytest.mark.parametrize(
    ("text", "zone", "expected", "note"),
    [
        ("12 March 2028 2:30 am", "America/Chicago", "2028-03-12 03:30", "when-skipped-hour"),
        ("26 March 2028 2:30 am", "Europe/Berlin", "2028-03-26 03:30", "when-skipped-hour"),
        ("7 Nov 2027 1:30 am", "America/Chicago", "2027-11-07 01:30", "when-doubled-hour"),
        ("31 Oct 2027 2:15 am", "Europe/Berlin", "2027-10-31 02:15", "when-doubled-hour"),
    ],
)
def test_an_hour_skipped_or_doubled_by_the_clocks_is_noted(text: str, zone: str, expected: str, note: str) -> None:
    when = parse_when(text, NOW, zone)

    assert (wall(text, zone=zone), [n.key for n in when.notes]) == (expected, [note])


def test_the_doubled_hour_is_the_first_one() -> None:
    when = parse_when("7 Nov 2027 1:30 am", NOW, "America/Chicago")

    assert when.starts_at == datetime(2027, 11, 7, 6, 30, tzinfo=UTC)


def test_what_is_no_part_of_the_date_is_left() -> None:
    when = parse_when("Sat 18 Sep 5pm at 12 Elm Street", NOW, ZONE)

    assert when.rest == "at 12 Elm Street"


def test_people_sitting_in_the_sun_are_no_weekday() -> None:
    with pytest.raises(Unclear):
        parse_when("we sat in the sun", NOW, ZONE)


@given(
    st.dates(date(2027, 9, 9), date(2029, 9, 1)),
    st.times(),
    st.sampled_from(["%Y-%m-%d %H:%M", "%d %B %Y %H:%M", "%B %d, %Y %H:%M", "%a %d %b %Y %H:%M", "%d.%m.%Y %H:%M"]),
    st.sampled_from(["America/Chicago", "Europe/Berlin", "Asia/Kolkata", "Australia/Lord_Howe", "Pacific/Apia"]),
)
def test_full_dates_are_what_dateparser_and_zoneinfo_say(day: date, at: object, shape: str, zone: str) -> None:
    text = datetime.combine(day, at).strftime(shape)  # type: ignore[arg-type]
    order = {"DATE_ORDER": "DMY"} if "." in shape else {}
    theirs = dateparser.parse(text, languages=["en"], settings=order)
    if theirs is None or not (1 <= theirs.hour <= 8 or theirs.hour >= 12) or (theirs.hour < 9 and text[-5] != "0"):
        return

    ours = parse_when(text, NOW, zone).starts_at

    assert ours == theirs.replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)


@pytest.mark.parametrize(
    "text", ["tomorrow", "in 3 days", "in two weeks", "in 1 month", "today at 17:00", "tomorrow at 18:30"]
)
def test_relative_days_are_what_dateparser_says(text: str) -> None:
    local = NOW.astimezone(ZoneInfo(ZONE)).replace(tzinfo=None)
    theirs = dateparser.parse(text, languages=["en"], settings={"RELATIVE_BASE": local})

    assert theirs is not None
    assert wall(text)[:10] == f"{theirs:%Y-%m-%d}"


@given(st.text(max_size=500))
def test_any_text_gives_a_date_or_a_reason(text: str) -> None:
    try:
        starts_at = parse_when(text, NOW, ZONE, foreign=False).starts_at
    except Unclear:
        starts_at = NOW

    assert NOW - timedelta(days=1) <= starts_at <= NOW + timedelta(days=4 * 366)


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("20 minutes", 20), ("half an hour", 30), ("an hour and a half", 90), ("1h30", 90),
        ("running 20 mins late", 20),
        ("a quarter of an hour", 15), ("two hours", 120), ("1.5 hours", 90), ("2 days", 2880), ("banana", None),
    ],
)  # fmt: skip
def test_a_length_of_time_is_read(text: str, minutes: int | None) -> None:
    length = parse_duration(text)

    assert (length and length.total_seconds() / 60) == minutes


def test_one_line_opens_a_potluck() -> None:
    line = "Sat 18 Sep 5pm, about 24 people, outdoors, at the allotment hut, potato bar, budget $120"

    opening = parse_potluck_line(line, NOW, ZONE)

    assert opening.when is not None
    assert opening.when.starts_at == datetime(2027, 9, 18, 22, 0, tzinfo=UTC)
    assert (opening.people, opening.setting, opening.place) == (24, "outdoor", "the allotment hut")
    assert (opening.bar_base, opening.budget, opening.unclear) == ("potato", Money(Decimal("120.00"), "USD"), ())


@pytest.mark.parametrize(
    ("line", "facts"),
    [
        ("Harvest supper, Sat 18 Sep 5-9pm, 20-30 people, at 12 Elm Street",
         {"title": "Harvest supper", "people": 30, "place": "12 Elm Street", "mealtime": "meal"}),
        ("a dozen people Friday 6pm in the church hall", {"people": 12, "place": "the church hall"}),
        ("Sat 18 Sep 5pm ~24 people outdoors", {"people": 24, "setting": "outdoor"}),
        ("next Friday 7:30pm for 16, taco bar, £50",
         {"people": 16, "bar_base": "taco", "budget": Money(Decimal("50.00"), "GBP")}),
        ("Sun 3pm afternoon tea at the hut for twelve",
         {"people": 12, "mealtime": "between-meals", "place": "the hut"}),
        ("samstag 18:00, 20 people", {"people": 20}),
    ],
)  # fmt: skip
def test_the_pieces_of_the_line_come_in_any_order(line: str, facts: dict[str, object]) -> None:
    opening = parse_potluck_line(line, NOW, ZONE)

    assert opening.when is not None
    assert {name: getattr(opening, name) for name in facts} == facts


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ("Sat 19 Sep 5pm, 24 people", "when-weekday-disagrees"),
        ("5pm, 20 people", "when-no-date"),
        ("Sat 18 Sep 5pm, 9999999 people", "when-people-number"),
        ("18 Sep 2020, 20 people", "when-past"),
    ],
)
def test_an_unclear_piece_of_the_line_is_told(line: str, key: str) -> None:
    assert [say.key for say in parse_potluck_line(line, NOW, ZONE).unclear] == [key]


@given(st.text(max_size=600))
def test_no_line_breaks_the_opening(line: str) -> None:
    opening = parse_potluck_line(line, NOW, ZONE)

    assert opening.people is None or 1 <= opening.people <= 1000


GONE = ("last Saturday 5pm", "yesterday", "last night at 6", "two days ago", "last week Tuesday")


@pytest.mark.parametrize("text", GONE)
def test_a_day_gone_by_its_own_words_is_refused_and_never_taken_as_one_to_come(text: str) -> None:
    with pytest.raises(Unclear) as told:
        parse_when(text, NOW, ZONE)
    opened = parse_potluck_line(f"{text}, about 20 people", NOW, ZONE)

    assert told.value.say.key == "when-past"
    assert (opened.when, opened.title, opened.unclear[0].key) == (None, None, "when-past")


def test_the_last_saturday_of_a_month_is_a_day_to_come() -> None:
    assert wall("last Saturday of September 5pm") == "2027-09-25 17:00"


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("Sat 16 Oct 7pm, the club hut, 16 people", "the club hut"),
        ("Sat 16 Oct 7pm, my backyard, 16 people", "my backyard"),
        ("end of season supper, mine 14 Elm Row, fri 8 oct 6pm", "14 Elm Row"),
        ("Fri 8 Oct 6pm, flat 12", "flat 12"),
        ("Sat 18 Sep 5pm, Lakeside Park, 40 people", "Lakeside Park"),
        ("Sat 18 Sep 5pm, Ines's place", "Ines's place"),
    ],
)
def test_a_piece_that_can_only_be_a_place_is_the_place_without_a_word_before_it(line: str, place: str) -> None:
    assert parse_potluck_line(line, datetime(2027, 9, 1, tzinfo=UTC), "UTC").place == place


@pytest.mark.parametrize("title", ["Garden party", "Church picnic", "Park Street reunion", "grandma's 80th"])
def test_what_is_held_is_the_title_though_it_names_a_place_or_a_number(title: str) -> None:
    opening = parse_potluck_line(f"Sat 18 Sep 5pm, {title}, 30 people", datetime(2027, 9, 1, tzinfo=UTC), "UTC")

    assert (opening.title, opening.place, opening.unclear) == (title, None, ())


@pytest.mark.parametrize(
    ("line", "setting"),
    [
        ("street party, Sat 18 Sep 5pm, out on the street", "outdoor"),
        ("Sat 18 Sep 5pm, in the street", "outdoor"),
        ("Sat 18 Sep 5pm, at 12 Elm Street", None),
        ("Sat 18 Sep 5pm, the Main Street church hall", None),
    ],
)
def test_the_street_is_outdoors_and_an_address_is_not(line: str, setting: str | None) -> None:
    assert parse_potluck_line(line, NOW, ZONE).setting == setting
