"""What a question about food is after, and what the list says to it."""

import pytest

from planning.diets import food_question, foods_asked, holds_food, questions_in
from planning.diets.asked import asks_what_to_eat
from planning.potluck import Promise
from planning.replies.asides import told_and_asked

NAMES = {"slaw": "salad", "roast chicken": "main", "apple pie": "dessert", "pecan pie": "dessert", "soup": "main"}
DISHES = tuple(Promise(str(n), "ravi", dish, kind) for n, (dish, kind) in enumerate(NAMES.items()))


@pytest.mark.parametrize(
    ("words", "sense", "need"),
    [
        ("is there anything vegetarian?", "diet", "vegetarian"),
        ("is the roast chicken halal?", "diet", "halal"),
        ("is the table nut free?", "allergen", "nut-free"),
        ("anything with eggs on the list?", "allergen", "egg"),
        ("does the slaw have mayo in it?", "food", "egg"),
        ("is there meat in the soup?", "food", ""),
        ("do the pies have butter?", "food", ""),
        ("hay algo vegano?", "diet", "vegan"),
    ],
)
def test_a_diet_an_allergen_and_a_food_are_told_apart(words, sense, need):
    found = food_question(words, DISHES)

    assert [(a.sense, a.need) for a in found.asked] == [(sense, need)]


@pytest.mark.parametrize(
    "words",
    [
        "is there any ice left", "who brings bread?", "should i bring nuts?", "does anyone have a nut allergy?",
        "is the soup hot?", "is the roast chicken done?", "do we have enough bread?", "my soup has egg",
    ],
)  # fmt: skip
def test_other_questions_and_statements_are_none(words):
    assert food_question(words, DISHES) is None


@pytest.mark.parametrize(
    "words",
    [
        "who is bringing something with nuts?", "does anybody bring anything with peanuts",
        "who's making a dish with egg?", "¿quién trae algo con frutos secos?", "is anyone bringing something vegan?",
    ],
)  # fmt: skip
def test_who_brings_something_with_a_food_in_it_is_after_the_list(words):
    found = food_question(words, DISHES)

    assert found is not None
    assert found.sure


@pytest.mark.parametrize(
    "words",
    ["can anyone bring something without nuts?", "who is bringing the salad with feta?", "who's bringing chips?"],
)
def test_a_wish_and_a_dish_by_its_name_are_not(words):
    assert food_question(words, DISHES) is None


def test_the_words_of_a_dish_are_no_food_asked_about():
    assert foods_asked("is the apple pie vegan", DISHES)[0][0].need == "vegan"
    assert len(foods_asked("is the apple pie vegan", DISHES)[0]) == 1


def test_a_message_is_cut_where_its_question_begins():
    words = "my son carries an epipen for peanuts, is the table nut free?"

    assert questions_in(words) == ("is the table nut free?",)
    assert told_and_asked(words) == words.replace(", is", ". is")


def test_without_a_need_told_nothing_is_cut():
    assert told_and_asked("we bring soup, is that ok?") == "we bring soup, is that ok?"


@pytest.mark.parametrize(
    ("ingredients", "how"), [(None, "usual"), (("cabbage", "mayonnaise"), "listed"), (("cabbage",), "without")]
)
def test_a_food_is_found_by_whoever_said_so(ingredients, how):
    slaw = Promise("1", "ravi", "slaw", "salad", ingredients=ingredients)
    mayo = foods_asked("mayo")[0][0]

    assert holds_food(slaw, mayo) == how


@pytest.mark.parametrize(
    "words",
    [
        "anything besides my chana?", "anything else I can eat besides my chana?", "anything left that I can eat?",
        "is there anything other than my chana I can have", "hay algo aparte de mi ensalada que pueda comer?",
    ],
)  # fmt: skip
def test_what_there_is_beside_ones_own_dish_is_after_the_table(words):
    assert asks_what_to_eat(words)


@pytest.mark.parametrize(
    "words", ["anything?", "anything else?", "what else is there", "anything besides the ham to bring?"]
)
def test_what_is_asked_in_general_is_not_after_food_to_eat(words):
    assert not asks_what_to_eat(words)
