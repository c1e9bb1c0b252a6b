"""Somebody is hurt, or ill after eating, or would grill under a roof."""

import pytest

from planning.safety.told import HURT, grills_inside, hurt, ill_from_food
from tests.capabilities.conftest import board, say, until


@pytest.mark.parametrize(
    ("words", "language", "kind"),
    [
        ("someone got cut, is bleeding", "en", "wound"),
        ("Tom sliced his finger on the mandoline", "en", "wound"),
        ("a glass broke in the salad, broken glass in the bowl", "en", "wound"),
        ("she scalded herself", "en", "scald"),
        ("the oven is on fire!", "en", "fire"),
        ("it smells like gas in here", "en", "gas-smell"),
        ("Leo swallowed a button battery", "en", "poison"),
        ("me corté, no para de sangrar", "es", "wound"),
        ("huele a gas", "es", "gas-smell"),
        ("el niño bebió lejía", "es", "poison"),
    ],
)
def test_who_is_hurt_is_understood(words, language, kind):
    assert hurt(words, language) == kind


@pytest.mark.parametrize(
    "words",
    [
        "I burned the crumble",
        "cut the cake for me",
        "the fire pit is lit",
        "who brings the cleaner?",
        "rare and bloody",
    ],
)
def test_kitchen_talk_hurts_nobody(words):
    assert hurt(words, "en") is None


@pytest.mark.parametrize("kind", HURT)
async def test_each_has_an_answer_in_both_languages(play, kind):
    words = {
        "fire": "the pan is on fire", "gas-smell": "I smell gas", "poison": "he drank bleach",
        "wound": "she is bleeding", "scald": "he burned himself",
    }  # fmt: skip
    played = await play(board("tom", words[kind]))
    spanish = await play(say("ines", "/settings language es"), board("tom", words[kind]))

    assert played.last() != spanish.last()
    assert "911" in played.last()


@pytest.mark.parametrize(
    ("words", "language", "ill"),
    [
        ("Otto threw up after the chicken", "en", True),
        ("three people are throwing up", "en", True),
        ("varios están vomitando", "es", True),
        ("I'm sick of slaw", "en", False),
        ("is anybody sick?", "en", False),
    ],
)
def test_ill_after_eating_is_told_from_tired_of_eating(words, language, ill):
    assert ill_from_food(words, language) is ill


async def test_who_is_ill_after_a_dish_is_helped_first_and_the_dish_put_aside(play):
    played = await play(
        say("ravi", "/bring roast chicken for 12"),
        until("2027-09-18T19:00"),
        board("ines", "Tom threw up after the chicken"),
    )

    assert "Nobody eats any more of roast chicken" in played.last()
    assert "1-800-222-1222" in played.last()


async def test_before_the_meal_the_same_words_are_about_an_ill_cook(play):
    played = await play(
        say("ravi", "/bring roast chicken for 12"),
        until("2027-09-18T09:00"),
        board("ravi", "I threw up after breakfast"),
    )

    assert "Nobody eats any more" not in played.everything()
    assert "cooks for nobody until two days" in played.everything()


@pytest.mark.parametrize("words", ["can we grill inside?", "can we put the charcoal in the garage", "so no grill?"])
def test_a_grill_under_a_roof_is_noticed(words):
    assert grills_inside(words, "en")


async def test_no_grill_burns_under_a_roof(play):
    played = await play(board("tom", "can we move the grill into the garage?"))

    assert "Carbon monoxide" in played.last()


async def test_with_a_severe_allergy_at_the_table_the_injector_comes_before_the_call(play):
    played = await play(
        board("mei", "my daughter has a severe peanut allergy"),
        until("2027-09-18T17:30"),
        board("mei", "her lips are swelling"),
    )

    said = played.last()
    assert said.index("auto-injector") < said.index("Call 911")


async def test_without_one_the_call_comes_first_and_the_injector_is_named_all_the_same(play):
    played = await play(board("tom", "he can't breathe"))

    said = played.last()
    assert said.index("Call 911") < said.index("auto-injector")
