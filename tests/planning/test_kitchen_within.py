"""Appliances named in a longer line become a kitchen, and the rest of the line stays what it was."""

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.kitchen_words import kitchen_within, read_kitchen
from planning.potluck import Kitchen
from planning.when import parse_potluck_line

NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)


def opened(line):
    return parse_potluck_line(line, NOW, "America/Chicago")


def kitchen(line):
    return read_kitchen(opened(line).kitchen, Kitchen())


@pytest.mark.parametrize(
    ("line", "ovens", "slow"),
    [
        ("Sat 6pm, 30 people, one oven, two slow cookers", 1, 2),
        ("one big oven and 2 slow-cookers, Sat 18 Sep 6pm", 1, 2),
        ("Sat 18 Sep 6pm in the hall with three ovens", 3, 0),
        ("Sunday noon, no oven, a slow cooker, 12 people", 0, 1),
        ("Sat 6pm; we have 2 electric ovens; 6 qt slow cooker", 2, 0),
    ],
)
def test_appliances_in_the_opening_line_are_counted(line, ovens, slow):
    found = kitchen(line)

    assert (len(found.ovens), len(found.slow_cookers)) == (ovens, slow)


def test_racks_belong_to_the_oven_they_stand_beside():
    assert [o.racks for o in kitchen("Sat 6pm, one oven with three racks, at the hut").ovens] == [3]


def test_a_grill_beside_an_oven_is_a_thing():
    assert kitchen("Sat 6pm, 1 oven and a barbecue").grills == 1


def test_a_barbecue_by_itself_is_the_feast():
    said = opened("Sat 18 Sep 6pm, a barbecue, 20 people")

    assert (said.kitchen, said.title) == ("", "a barbecue")


def test_what_stands_around_the_appliances_is_still_read():
    said = opened("Sat 18 Sep 6pm, one oven, two slow cookers, 30 people, at the mill, budget $120, bar: baked potato")

    assert (said.people, said.place, said.bar_base, said.title) == (30, "the mill", "baked potato", None)


def test_a_word_that_only_begins_like_a_preposition_is_no_place():
    assert opened("Sat 18 Sep 6pm, onion feast").place is None


@pytest.mark.parametrize(
    ("line", "hour"),
    [
        ("Sat 18 Sep, 7 in the evening, 20 people", 19),
        ("Sat 18 Sep at 11 in the morning", 11),
        ("Sunday 19 Sep, one in the afternoon", 13),
        ("Sat 18 Sep, 9 at night", 21),
    ],
)
def test_the_half_of_the_day_in_words_makes_the_hour(line, hour):
    when = opened(line).when

    assert when.has_time
    assert when.starts_at.astimezone(ZoneInfo("America/Chicago")).hour == hour


@given(st.text(max_size=200))
def test_any_line_leaves_only_words_the_kitchen_reader_reads(line):
    _, words = kitchen_within(line)

    if words:
        read_kitchen(words, Kitchen())


@given(st.text(alphabet="abcdefgh ,;", max_size=80))
def test_a_line_without_appliances_stays_as_it_was(line):
    assert kitchen_within(line) == (line, "")
