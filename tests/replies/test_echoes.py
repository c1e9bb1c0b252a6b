""" "Same here" repeats what somebody else said of themselves: their coming and what they can't eat, not how many."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.potluck import Answer
from planning.replies import AddPromise, SetAnswer, SetNeeds, SetParty, echo, read
from tests.replies.corpus import context_of

BOARD = context_of("board")
SPANISH = replace(BOARD, language="es")
SAME = ("same here", "me too!", "Us too", "ditto", "same for me please", "so am I", "likewise 😊", "me as well")
NEITHER = ("me neither", "neither can I", "nor me, sorry", "we can't either")
IGUAL = ("yo también", "nosotros igual", "lo mismo aquí", "ídem")


def below(words: str, language: str = "en"):
    return replace(BOARD, replying_to="person", replied_text=words, language=language)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(SAME), st.sampled_from(("I'm coming", "count me in", "we'll be there", "yes!")))
def test_a_yes_is_repeated(words: str, said: str) -> None:
    reading = read(words, below(said))

    assert reading.sure, (words, said)
    assert [i.answer for i in reading.intents if isinstance(i, SetAnswer)] == [Answer.YES]


@settings(max_examples=60, deadline=None)
@given(st.sampled_from((*SAME, *NEITHER)), st.sampled_from(("can't make it", "I can't come, sorry", "count me out")))
def test_a_no_is_repeated(words: str, said: str) -> None:
    assert [i.answer for i in read(words, below(said)).intents if isinstance(i, SetAnswer)] == [Answer.NO]


@pytest.mark.parametrize("words", SAME)
def test_what_somebody_cannot_eat_is_repeated_for_one(words: str) -> None:
    found = read(words, below("3 of us, 2 allergic to peanuts")).intents

    assert [(n.need, n.count) for i in found if isinstance(i, SetNeeds) for n in i.needs] == [("peanut", 1)]
    assert not any(isinstance(i, SetParty) for i in found)


@pytest.mark.parametrize("words", NEITHER)
def test_neither_repeats_no_yes(words: str) -> None:
    found = read(words, below("I'm coming, can't eat nuts")).intents

    assert not any(isinstance(i, SetAnswer) for i in found)
    assert any(isinstance(i, SetNeeds) for i in found)


def test_a_dish_is_asked_about_and_the_coming_is_noted() -> None:
    reading = read("me too", below("I'll bring lemonade for 12"))

    assert [i.answer for i in reading.now if isinstance(i, SetAnswer)] == [Answer.YES]
    assert not any(isinstance(i, AddPromise) for i in reading.now)
    assert reading.question is not None


@pytest.mark.parametrize("said", ["my son is vegetarian", "slaw is great", "", "who is coming?"])
def test_what_is_not_of_the_other_themselves_is_repeated_by_nobody(said: str) -> None:
    assert not read("same here", below(said)).intents


def test_below_the_board_itself_it_is_a_yes_and_below_other_words_of_ours_it_is_asked() -> None:
    assert read("me too", BOARD).sure
    assert read("me too", replace(BOARD, replying_to="bot")).question is not None


@pytest.mark.parametrize("words", IGUAL)
def test_the_same_holds_in_spanish(words: str) -> None:
    found = read(words, below("vengo, soy alérgica al maní", "es")).intents

    assert [n.need for i in found if isinstance(i, SetNeeds) for n in i.needs] == ["peanut"]
    assert any(isinstance(i, SetAnswer) for i in found)


@pytest.mark.parametrize(
    "words", ["same time as last year?", "me too late", "same again please", "the same dish for 12", ""]
)
def test_other_words_are_no_echo(words: str) -> None:
    assert echo(words, "en") is None
