"""Who has which allergies is told of the table, without names; a host gets them in private."""

import pytest

from planning.diets.whohas import asks_who_has_needs
from tests.capabilities.conftest import board


@pytest.mark.parametrize(
    "words",
    ["who has what allergies again?", "who's allergic to what?", "any allergies?",
     "what dietary restrictions do we have?",
     "does anyone have any food allergies?", "¿quién es alérgico a qué?", "¿qué alergias hay?"],
)  # fmt: skip
def test_the_question_is_known_in_many_words(words: str) -> None:
    assert asks_who_has_needs(words)


@pytest.mark.parametrize(
    "words", ["who's allergic to cats?", "I have allergies", "any allergies are bad this spring", "who has the keys?"]
)
def test_other_questions_are_not_it(words: str) -> None:
    assert not asks_who_has_needs(words)


async def test_the_table_is_told_without_a_name_and_nobody_is_called_free_of_needs(play):
    played = await play(
        board("mei", "2 of us, I'm allergic to peanuts"), board("tom", "who has what allergies again?"),
    )  # fmt: skip

    assert "no peanuts" in played.last()
    assert "Mei" not in played.last()
    assert "may still have some" in played.last()


async def test_where_nobody_told_of_any_it_says_so_and_to_ask(play):
    played = await play(board("mei", "2 of us"), board("tom", "any allergies?"))

    assert "ask" in played.last()
