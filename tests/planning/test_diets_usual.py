"""What dishes usually hold, by their everyday names: a missed allergen is the worst fault there is."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.diets import listed
from planning.diets.ingredients import rows_without
from planning.diets.listed import _is_recipe
from planning.dishes.catalogue import catalogue
from planning.potluck import Promise


def dish(name: str, *ingredients: str) -> Promise:
    return Promise("p1", "ravi", name, "main", ingredients=ingredients or None)


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("walnutt brownies", "tree-nut"),
        ("penut butter cookies", "peanut"),
        ("buckeyes", "peanut"),
        ("bakewell tart", "tree-nut"),
        ("nasi lemak", "peanut"),
        ("tortilla española", "egg"),
        ("raita", "milk"),
        ("aguachile", "shellfish"),
        ("mole", "peanut"),
        ("turrón", "tree-nut"),
        ("dukkah", "sesame"),
        ("tapenade", "fish"),
        ("takoyaki", "mollusc"),
        ("green beans almondine", "tree-nut"),
        ("miso soup", "fish"),
        ("agedashi tofu", "fish"),
        ("gado gado", "shellfish"),
        ("papaya salad", "shellfish"),
        ("opera cake", "tree-nut"),
        ("alfajores", "egg"),
        ("osso buco", "wheat"),
        ("har gow", "wheat"),
        ("peach melba", "milk"),
        ("vegetable sushi", "soy"),
        ("reuben dip", "egg"),
        ("tembleque", "coconut"),
        ("ensaladilla rusa", "fish"),
        ("llapingachos", "milk"),
    ],
)
def test_what_a_dish_usually_holds_is_listed_by_its_everyday_name(name: str, mark: str) -> None:
    # Common practice, no source: what recipes under these names hold.
    assert mark in listed(dish(name)).contains


@pytest.mark.parametrize(
    ("ingredient", "mark"),
    [
        ("nuts", "peanut"),
        ("seeds", "sesame"),
        ("buffalo sauce", "milk"),
        ("seasoning", "celery"),
        ("curry sauce", "shellfish"),
        ("cookies", "tree-nut"),
        ("galletas", "egg"),
        ("gelato", "peanut"),
        ("stir fry sauce", "mollusc"),
    ],
)
def test_a_word_that_leaves_open_which_sort_is_meant_may_hold_what_any_sort_does(ingredient: str, mark: str) -> None:
    # Common practice, no source.
    what = listed(dish("supper", ingredient))

    assert mark in what.contains | what.may_contain


def test_a_dish_nobody_knows_may_hold_what_its_sort_holds() -> None:
    # An unheard-of pie has a pie's crust.
    assert "wheat" in listed(dish("duck pie")).may_contain


@pytest.mark.parametrize("name", ["veggie wraps", "mushroom stroganoff", "shrimp tacos", "tempeh tacos"])
def test_another_filling_in_the_name_makes_the_usual_meat_a_question(name: str) -> None:
    what = listed(dish(name))

    assert not {"beef", "meat", "pork"} & what.holds
    assert {"beef", "meat", "pork"} & what.may_hold or name == "shrimp tacos"


def test_a_named_meat_stays_although_another_stands_in_the_usual_recipe() -> None:
    what = listed(dish("lamb tagine"))

    assert ("meat" in what.holds, "poultry" in what.may_hold) == (True, True)


def test_a_claim_counts_also_where_its_words_are_an_ingredients_name() -> None:
    # "dairy free cheese" is an ingredient; in "dairy free mac and cheese" the words are a claim as well.
    what = listed(dish("dairy free mac and cheese"))

    assert ("milk" in what.holds, "milk" in what.may_hold) == (False, True)


def test_a_misspelt_ingredient_warns_and_is_still_asked_about() -> None:
    what = listed(dish("sauce", "tomatoes", "penut butter"))

    assert "peanut" in what.contains
    assert what.unknown_ingredients == ("penut butter",)


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("tuna pasta salad", "fish"),
        ("ham pasta salad", "pork"),
        ("chicken caesar pasta salad", "poultry"),
        ("crab pasta dip", "shellfish"),
        ("peanut chicken salad", "peanut"),
    ],
)
def test_a_food_named_apart_from_its_salad_is_not_lost_in_the_salads_recipe(name: str, mark: str) -> None:
    # "tuna ... salad" has the words of tuna salad, whose recipe does not count; the tuna does.
    assert mark in listed(dish(name)).holds


def test_a_dish_named_beside_another_may_bring_what_it_holds() -> None:
    assert "fish" in listed(dish("ceviche tostadas")).may_contain
    assert "egg" not in listed(dish("german potato salad")).may_contain | listed(dish("german potato salad")).contains


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("chicken cordon bleu", "pork"),
        ("lamb korma", "tree-nut"),
        ("dal makhani", "milk"),
        ("egg drop soup", "egg"),
        ("italian wedding soup", "egg"),
    ],
)
def test_a_dish_that_stood_for_another_has_its_own_usual_recipe(name: str, mark: str) -> None:
    what = listed(dish(name))

    assert mark in what.holds | what.may_hold | what.contains | what.may_contain


def test_a_foreign_word_is_not_corrected_into_ham() -> None:
    assert "pork" not in listed(dish("gulab jamun")).holds


@pytest.mark.parametrize("name", ["tortilla de patatas", "spanish tortilla", "cabbage rolls", "pan sin gluten"])
def test_a_word_of_a_known_dishs_whole_name_is_no_other_food_for_sure(name: str) -> None:
    what = listed(dish(name))

    assert "wheat" not in what.contains
    assert "wheat" in what.may_contain, "the cook is asked all the same"


@pytest.mark.parametrize(("name", "mark"), [("pan", "wheat"), ("maní", "peanut"), ("peanut noodle salad", "peanut")])
def test_a_dishs_name_warns_in_whatever_language_it_is_a_dish(name: str, mark: str) -> None:
    assert mark in listed(dish(name)).contains


@given(st.sampled_from(sorted(known.name for known in catalogue())))
def test_a_known_name_takes_no_allergen_off_what_its_words_say(name: str) -> None:
    what = listed(dish(name))
    rows = rows_without(name, _is_recipe)

    assert frozenset().union(*(row.holds for row in rows)) <= what.holds | what.may_hold
