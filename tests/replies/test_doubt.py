"""Words that nobody read make what was read beside them doubtful: a question below the bot, silence in the open."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.replies import Reading, SetNeeds, read
from tests.replies.corpus import context_of

BOARD = context_of("board")


def asked(reading: Reading) -> bool:
    return not reading.sure and reading.question is not None


@pytest.mark.parametrize(
    "text",
    [
        "sorry can't come, 3 of us",  # a no beside a party
        "we're three plus a vegetarian au pair",  # somebody unknown joined to the number
        "coming, except Thursday people know why",  # a word that turns the sense
        "we're 4, or 7 with the neighbours",  # another number
    ],
)
def test_a_party_beside_words_that_speak_against_it_is_asked_about(text: str) -> None:
    assert asked(read(text, BOARD))


@pytest.mark.parametrize(
    "text",
    [
        "We're 5: me, the missus, two teenagers and the baby",  # the number told is the number listed
        "I'll be there, can't wait",
        "coming but not bringing anything",
        "grandma's coming too, so that makes 5 of us",
    ],
)
def test_words_that_agree_with_the_reading_make_no_question(text: str) -> None:
    assert read(text, BOARD).question is None


def test_a_dish_given_up_beside_a_number_is_no_party() -> None:
    reading = read("can't do slaw for 12, only 8", context_of("board+slaw"))

    assert [i.kind for i in reading.intents] == ["change"]


def test_a_crowd_joining_is_confirmed_first() -> None:
    assert not read("apparently 50 people are coming", BOARD).sure


@settings(max_examples=60, deadline=None)
@given(st.integers(2, 9), st.integers(10, 30))
def test_an_unread_second_number_is_never_passed_over_in_silence(n: int, other: int) -> None:
    reading = read(f"{n} of us coming, {other} blibbers", BOARD)

    assert not reading.sure


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(("peanuts", "eggs", "milk", "sesame")), st.sampled_from(("but 3 blibbers", "or not", "plus a zork"))
)
def test_an_allergy_is_noted_at_once_whatever_else_is_doubtful(food: str, rest: str) -> None:
    reading = read(f"I'm allergic to {food}. 4 of us, {rest}", BOARD)
    noted = reading.intents if reading.sure else reading.now

    assert any(isinstance(i, SetNeeds) for i in noted)
