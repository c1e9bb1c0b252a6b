"""Questions about the food are answered from the list, by what suits and by what is in it."""

from tests.capabilities.conftest import board, say

DISHES = (say("ravi", "/bring slaw for 12"), say("tom", "/bring roast chicken for 10"))
LISTED = say("ravi", "/contains slaw: cabbage, carrots, mayonnaise")


async def test_a_diet_is_answered_by_what_suits_it_and_what_does_not(play):
    played = await play(*DISHES, LISTED, board("mei", "is there anything vegetarian?"))

    assert "cook’s own list: slaw" in played.last()
    assert "not for it: roast chicken" in played.last()
    assert "made with vegetarian" not in played.everything()


async def test_a_food_in_a_dish_is_told_by_who_said_it(play):
    played = await play(
        *DISHES, board("mei", "does the slaw have mayo in it?"), LISTED, board("mei", "does the slaw have mayo in it?")
    )

    answers = [t for t in played.texts() if t.startswith("• slaw")]
    assert "usually made with mayo" in answers[0]
    assert "Ravi" in answers[0]
    assert "with mayo, says the cook" in answers[1]


async def test_an_allergy_told_with_a_question_is_kept_and_answered_where_it_was_asked(play):
    played = await play(
        *DISHES, say("tom", "/bring pecan pie for 8"),
        board("mei", "my son carries an epipen for peanuts, is the table nut free?"),
        board("mei", "what can we eat?"),
    )  # fmt: skip

    assert played.guest("mei")["needs"][0]["need"] == "peanut"
    assert any("pecan pie: nuts by its name" in t for t in played.texts())
    assert "Going by what the cooks listed" in played.last()
    assert "Mei" not in played.last()


async def test_whether_a_dish_is_all_right_for_another_guest_is_answered_by_what_is_in_it(play):
    played = await play(
        board("ravi", "lasagna for 12"), board("mei", "coming, gluten free"), board("tom", "is the lasagna ok for mei?")
    )

    assert "What Mei can’t eat is Mei’s to say" in played.last()
    assert "lasagna" in played.last()


async def test_who_has_needs_asks_what_to_eat_in_the_open_and_is_answered_in_both_languages(play):
    played = await play(
        board("mei", "coming, gluten free"), board("ravi", "lasagna for 12"),
        say("mei", "so what can i eat?"), say("mei", "¿qué puedo comer yo?"), say("tom", "what can i eat?"),
        first={"bot_sees_all": True},
    )  # fmt: skip

    assert len([t for t in played.texts() if t.startswith("Going by what the cooks listed")]) == 2


async def test_who_brings_nuts_is_never_answered_with_nobody_while_dishes_are_untold(play):
    played = await play(
        say("ravi", "/bring slaw for 12"), say("tom", "/bring pecan pie for 8"),
        board("mei", "who is bringing something with nuts?"), board("mei", "is anybody bringing peanuts?"),
    )  # fmt: skip

    answers = [t for t in played.texts() if "pecan pie" in t and "slaw" in t]
    assert len(answers) >= 2
    assert "Nobody brings" not in played.everything()


async def test_a_food_spoken_of_that_is_on_no_list_is_not_kept_from_who_asks_for_it(play):
    played = await play(
        *DISHES, board("mei", "coming"), board("mei", "the dipping sauce has peanut and sesame oil in it"),
        {"down_for": "PT1H"},
        board("tom", "what has sesame in it?"), board("tom", "is there anything with mustard?"),
    )  # fmt: skip

    sesame, mustard = played.texts()[-2:]
    assert "Mei spoke of" in sesame
    assert "sesame oil" in sesame
    assert "spoke of" not in mustard
