"""What is said to nobody in the open group, and is for us all the same."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.replies import AddPromise, Ask, ReplyContext, SetAnswer, SetParty, read
from planning.replies.english import listening
from planning.tables import rows

NEAR = ReplyContext("ravi", "Ravi", None, guests=(("ravi", "Ravi"), ("pat", "Pat")), near_board=True)
FAR = ReplyContext("ravi", "Ravi", None, guests=(("ravi", "Ravi"), ("pat", "Pat")))


@pytest.mark.parametrize("dish", ["leek gratin for 10", "a tray of flapjacks", "green beans for 12", "two big salads"])
@pytest.mark.parametrize("party", ["the three of us", "me and the kids, 6 and 8", "2 adults and a baby"])
def test_right_below_the_board_a_party_with_a_dish_is_for_us(party: str, dish: str) -> None:
    reading = read(f"{party}. {dish}", NEAR)

    kinds = {type(i) for i in reading.intents}
    assert reading.overheard
    assert {SetAnswer, SetParty, AddPromise} <= kinds


@pytest.mark.parametrize(
    "talk",
    [
        "did anybody see the moon last night",
        "my sister made soup for 40 once, never again",
        "the bus was late, 20 minutes in the rain",
        "congratulations to the three of you!",
        "we had the gratin at Pat's, so good",
    ],
)
def test_talk_right_below_the_board_is_left_alone(talk: str) -> None:
    reading = read(talk, NEAR)

    assert not reading.intents
    assert reading.question is None


def test_a_bare_yes_far_from_the_board_may_answer_anybody() -> None:
    assert not read("yes", FAR).overheard


def test_a_question_of_the_table_is_answered_right_below_the_board() -> None:
    reading = read("what are we missing now", NEAR)

    assert [i.topic for i in reading.intents if isinstance(i, Ask)] == ["missing"]


def test_below_somebody_elses_message_nothing_is_overheard() -> None:
    below = ReplyContext("ravi", "Ravi", "person", near_board=True)

    assert not read("2 of us, slaw for 12", below).overheard


def test_a_joke_is_not_for_us() -> None:
    assert not read("10 of us and a whole cow, just kidding", NEAR).overheard


@given(st.frozensets(st.sampled_from(sorted(r["feature"] for r in rows("words_overheard")))))
def test_odds_are_probabilities_whatever_is_found(found: frozenset[str]) -> None:
    told, asked = listening.odds(found)

    assert 0 <= told <= 1
    assert 0 <= asked <= 1




@pytest.mark.parametrize("asked", ["who's actually coming now?", "who's bringing the bread?", "what time is it again?"])
def test_on_the_day_a_question_the_plan_answers_is_for_us_wherever_it_stands(asked: str) -> None:
    assert any(isinstance(i, Ask) for i in read(asked, replace(NEAR, near_board=True, today=True)).intents)


@pytest.mark.parametrize("asked", ["is the number 12 bus running?", "is the tap frozen?", "what time is the match?"])
def test_on_the_day_other_questions_are_left_alone(asked: str) -> None:
    assert not read(asked, replace(FAR, today=True)).intents


def test_a_host_who_asks_what_is_missing_is_answered_long_after_the_board() -> None:
    assert read("what is still missing?", replace(FAR, host=True)).intents


@pytest.mark.parametrize(
    "said", ["cant make it, dentist :(", "Maybe, depends on the auditors", "we can't, sorry, wedding"]
)
def test_a_short_no_or_perhaps_right_below_the_board_is_an_answer_with_its_reason(said: str) -> None:
    assert any(isinstance(i, SetAnswer) for i in read(said, NEAR).intents)


@pytest.mark.parametrize("said", ["can't believe it's October already", "can't come to the phone", "maybe it rains"])
def test_what_only_begins_like_one_is_talk(said: str) -> None:
    assert not read(said, NEAR).intents
