"""One of the family who is told of and comes in one breath is counted, and what they can't eat is theirs."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.potluck import Answer
from planning.replies import AddPerson, SetAnswer, SetNeeds, SetParty, SetPregnant, read
from tests.replies.corpus import context_of

BOARD = context_of("board")
SPANISH = replace(BOARD, language="es")
COMES = ("and coming", "and is coming too", "and he's joining us", "and comes along", ", but he's coming")


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(("vegan", "allergic to eggs", "gluten free")), st.sampled_from(COMES))
def test_a_brother_told_of_and_coming_is_one_more_and_has_his_need(told: str, comes: str) -> None:
    found = read(f"my brother is {told} {comes}", BOARD).intents

    assert [i for i in found if isinstance(i, AddPerson)], found
    assert [i.needs for i in found if isinstance(i, SetNeeds)], found


@pytest.mark.parametrize("text", ["my sister's pregnant and coming", "my sister is pregnant and will be joining"])
def test_a_pregnant_sister_who_comes_is_counted_and_the_rest_asked_about(text: str) -> None:
    reading = read(text, BOARD)

    assert any(isinstance(i, AddPerson) for i in reading.now)
    assert any(isinstance(i, SetPregnant) for i in reading.intents)
    assert not reading.sure


@pytest.mark.parametrize(
    "text",
    ["my wife comes too, no sesame for her", "bringing my wife, nothing with sesame for her please",
     "my wife is joining - and no sesame for her"],
)  # fmt: skip
def test_no_food_for_her_is_hers_who_was_named_before(text: str) -> None:
    found = read(text, BOARD).intents

    assert [i.party.adults for i in found if isinstance(i, SetParty)] == [1]
    assert [(i.member, i.needs[0].need) for i in found if isinstance(i, SetNeeds)] == [("wife", "sesame")]


def test_a_child_of_four_who_comes_along_is_a_child() -> None:
    found = read("my kid is 4 and coming along", BOARD).intents

    assert [i.party.children for i in found if isinstance(i, SetParty)] == [1]


@pytest.mark.parametrize("text", ["my husband is ill and not coming", "my wife is vegan and can't make it"])
def test_who_is_told_of_and_stays_away_takes_nobody_else_off_the_list(text: str) -> None:
    reading = read(text, BOARD)

    assert not any(isinstance(i, SetAnswer) and i.answer is Answer.NO for i in reading.intents)
    assert not any(isinstance(i, SetNeeds) for i in reading.intents)


@pytest.mark.parametrize("text", ["mi hermana está embarazada y viene", "mi hermano es vegano y se apunta"])
def test_the_same_in_spanish_counts_one_more(text: str) -> None:
    assert any(isinstance(i, AddPerson) for i in read(text, SPANISH).intents)


def test_no_food_for_her_in_spanish_is_hers_who_was_named_before() -> None:
    found = read("viene mi mujer, sin sésamo para ella", SPANISH).intents

    assert [(i.member, i.needs[0].need) for i in found if isinstance(i, SetNeeds)] == [("mujer", "sesame")]


@pytest.mark.parametrize(
    "text",
    ["I'm in with 2 kids, no peanuts please", "2 of us, no peanuts", "count us in - but no peanuts for us",
     "we're coming, can't have peanuts"],
)  # fmt: skip
def test_a_food_refused_beside_the_coming_is_noted_at_once(text: str) -> None:
    reading = read(text, BOARD)

    assert reading.sure
    assert [n.need for i in reading.intents if isinstance(i, SetNeeds) for n in i.needs] == ["peanut"]


@pytest.mark.parametrize("text", ["I'm in, bringing slaw, no nuts", "we're coming with brownies, no nuts"])
def test_a_food_refused_beside_a_dish_is_no_need(text: str) -> None:
    assert not any(isinstance(i, SetNeeds) for i in read(text, BOARD).intents)
