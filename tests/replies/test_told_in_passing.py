"""What is told in passing: staying home is a no, dismay is none, a weight behind a dish is the dish's."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.potluck import Answer
from planning.replies import AddPromise, SetAnswer, read
from tests.replies.corpus import context_of

BOARD = context_of("board")


def answers(text: str, language: str = "en") -> list[Answer]:
    found = read(text, replace(BOARD, language=language)).intents
    return [i.answer for i in found if isinstance(i, SetAnswer)]


@pytest.mark.parametrize(
    "text",
    ["ok we stay home then. sorry everyone", "we're staying home", "we'd better stay away", "we'll give it a miss",
     "I'll stay home with the kids", "oh no! I can't make it then"],
)  # fmt: skip
def test_who_stays_home_does_not_come(text: str) -> None:
    assert answers(text) == [Answer.NO]


@pytest.mark.parametrize(
    "text", ["oh no. please don't bring the soup then", "aww no!! so sad", "Oh no... poor you", "my wife stays home"]
)
def test_dismay_and_others_staying_home_are_no_answer(text: str) -> None:
    assert answers(text) == []


def test_dismay_in_spanish_is_no_answer() -> None:
    assert answers("ay no. no traigas la sopa entonces", "es") == []


@pytest.mark.parametrize(
    ("text", "pounds"),
    [("I'll do the turkey! 16 lb frozen one, roasting at mels", 16.0), ("I'll bring turkey. It's 6 kg, frozen", 13.23)],
)
def test_the_weight_told_behind_a_dish_is_its_own_and_frozen_is_kept(text: str, pounds: float) -> None:
    (dish,) = [i for i in read(text, BOARD).intents if isinstance(i, AddPromise)]

    assert (dish.dish, dish.frozen_lb) == ("turkey", pounds)


def test_people_counted_behind_a_dish_are_no_weight() -> None:
    (dish,) = [i for i in read("I'll do the turkey. 12 people are coming", BOARD).intents if isinstance(i, AddPromise)]

    assert dish.quantity is None
