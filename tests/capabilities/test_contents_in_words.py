"""A cook says in passing what is in a dish: it counts for that dish, warns whom it concerns, and is no new dish."""

import pytest

from planning.diets.contents import contents_in
from tests.capabilities.conftest import board, say


@pytest.mark.parametrize(
    ("words", "what"),
    [
        ("I just found out there is peanut oil in my soup", ("peanut oil",)),
        ("the noodles have peanut sauce and sesame", ("peanut sauce", "sesame")),
        ("my stew is made with beer and flour", ("beer", "flour")),
        ("mi tarta tiene almendra molida", ("almendra molida",)),
        ("la paella lleva gambas y mejillones", ("gambas", "mejillones")),
    ],
)
def test_what_is_said_to_be_in_a_dish_is_read(words, what):
    assert contents_in(words)[1] == what


@pytest.mark.parametrize(
    "words",
    [
        "spring rolls have peanut too?", "no nuts in my cake", "the cake might have nuts", "the soup has gone cold",
        "my daughter has a nut allergy", "there is room in the car", "we have chairs in the garage",
    ],
)  # fmt: skip
def test_questions_denials_and_other_things_put_nothing_into_a_dish(words):
    assert contents_in(words) is None


async def test_an_allergen_said_in_passing_warns_and_adds_no_dish(play):
    played = await play(
        say("ravi", "/bring lentil soup for 10"),
        board("mei", "I have a severe peanut allergy"),
        board("ravi", "I just found out there is peanut oil in my soup"),
    )

    assert len(played.promises("ravi")) == 1
    assert "peanut" in played.texts()[-1] + played.texts()[-2]
    assert "severe allergy to peanut" in played.everything()


async def test_one_thing_told_does_not_count_as_a_whole_list(play):
    played = await play(say("ravi", "/bring lentil soup for 10"), board("ravi", "there is peanut oil in my soup"))

    assert not played.promises("ravi")[0]["ingredients"]
    assert "peanut oil" in played.promises("ravi")[0]["dish"]


async def test_a_list_there_is_gets_longer(play):
    played = await play(
        say("ravi", "/bring lentil soup for 10"),
        say("ravi", "/contains lentil soup: lentils, carrots"),
        board("ravi", "there is peanut oil in my soup"),
    )

    assert played.promises("ravi")[0]["ingredients"] == ["lentils", "carrots", "peanut oil"]


async def test_in_spanish_what_a_dish_holds_is_no_dish_of_its_own(play):
    played = await play(
        say("ines", "/settings language es"),
        say("ravi", "/bring paella for 10"),
        board("ravi", "la paella lleva gambas y mejillones"),
    )

    assert len(played.promises()) == 1
    assert "mejillones" in played.promises()[0]["dish"]
