"""Staying home is a no, and dismay over somebody else's news is none."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.potluck import Answer
from planning.replies import SetAnswer, read
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
