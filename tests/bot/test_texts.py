"""Sentences as data: escaped, isolated, on the reader's clock, never missing."""

import re
from datetime import UTC, datetime
from decimal import Decimal
from html import unescape
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bot.texts
from bot.texts import Html, TextFault, Voice, languages, visible
from bot.texts.catalogue import Catalogue
from planning.potluck import Money, Say

CHICAGO = Voice("en", ZoneInfo("America/Chicago"), "us")
FIVE = datetime(2027, 9, 18, 22, 0, tzinfo=UTC)


@pytest.mark.parametrize("language", languages())
def test_every_text_of_a_language_parses_and_no_id_stands_twice(language):
    assert len(Catalogue(language).keys) > 100


@given(st.text(max_size=200))
def test_whatever_people_type_comes_out_as_text_and_not_as_markup(typed):
    said = CHICAGO("board-title", title=typed)

    assert "<" not in said.removeprefix("<b>").removesuffix("</b>")
    assert unescape(said.removeprefix("<b>").removesuffix("</b>")) == (visible(typed, 300) if typed else "")


@given(st.text(max_size=300))
def test_what_is_shown_is_one_line_of_bounded_length_without_direction_marks(typed):
    shown = visible(typed, 40)

    assert "\n" not in shown
    assert shown.strip("\u2068\u2069")
    assert not set("\u202a\u202b\u202c\u202d\u202e\u2066\u2067") & set(shown)


def test_right_to_left_words_are_isolated_and_others_are_left_plain():
    assert visible("נועה") == "\u2068נועה\u2069"
    assert visible("Inés") == "Inés"


def test_a_family_emoji_is_one_letter_and_is_not_cut_in_two():
    family = "👩‍👩‍👧"

    assert visible(family * 3, 2) == family + "…"


def test_times_are_said_on_the_potlucks_clock_in_the_groups_way():
    metric = Voice("en", ZoneInfo("Europe/Berlin"), "metric")

    assert CHICAGO.time(FIVE) == "5:00 PM"
    assert metric.time(FIVE) == "00:00"
    assert metric.wall_time("17:05") == "17:05"
    assert CHICAGO.wall_time("17:05") == "5:05 PM"


def test_a_sentence_inside_a_sentence_is_said_in_the_same_voice():
    said = CHICAGO("told-in-group", name="Mei", what=Say("answer-when", {"when": FIVE}))

    assert said == "Mei: It is on Sat, Sep 18, 5:00 PM."


def test_markup_of_ours_is_kept_once():
    assert CHICAGO("told-in-group", name=Html("<b>Mei</b>"), what="a<b") == "<b>Mei</b>: a&lt;b"


def test_money_is_written_with_its_own_currency():
    # CLDR, through Babel: en_US writes the euro sign first.
    assert CHICAGO.plain("budget-set", money=Money(Decimal("120"), "EUR")) == "Budget: €120.00."


def test_a_missing_text_or_fact_is_a_fault_and_not_a_half_sentence():
    with pytest.raises(TextFault):
        CHICAGO("no-such-text")
    with pytest.raises(TextFault):
        CHICAGO("noted-people")


OF_ONE_UNIT = ("degrees-f", "degrees-c", "help-weather", "kitchen-celsius", "heat-taken-celsius")
"""Texts that are about a unit, or repeat the one somebody used; and a line of the platform's menu, one for all."""


@pytest.mark.parametrize("language", languages())
def test_a_temperature_is_told_in_the_readers_units_or_in_both(language):
    wrong = []
    for file in sorted((Path(bot.texts.__file__).parent / language).glob("*.ftl")):
        key = ""
        for line in file.read_text("utf-8").splitlines():
            key = line.split(" =")[0] if re.match(r"[a-z0-9-]+ =", line) else key
            said = re.sub("[«“][^»”]*[»”]", "", line)  # what one may type is an example
            chosen = re.match(r"\s+\*?\[(yes|no)\] [^.]*$", said)
            if ("°F" in said) != ("°C" in said) and not chosen and not line.startswith("#") and key not in OF_ONE_UNIT:
                wrong.append(key)

    assert wrong == []


def test_a_metric_group_reads_of_leftovers_in_celsius():
    said = Voice("en", units="metric")("left-how", source="x")

    assert "74 °C" in said
    assert "°F" not in said


@given(st.text("abcdefgh ,", min_size=1, max_size=80), st.sampled_from(["with nuts", "no nuts", ""]))
def test_a_long_name_leaves_a_buttons_action_on_it(name, more):
    label = CHICAGO.plain("button-take", dish=f"{name} {more}")

    assert len(label) <= 60
    assert label.endswith(CHICAGO.plain("button-take", dish="x")[1:])


def test_what_is_in_a_dish_goes_from_a_button_before_its_name():
    label = CHICAGO.plain("button-take", dish="vegetable lasagna with wheat, cheese, spinach, ground almonds")

    assert label.startswith("vegetable lasagna…")
