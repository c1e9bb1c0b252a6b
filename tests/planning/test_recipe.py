"""A cook who lists what is in their dish, and what only looks like such a list."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.diets import can_eat
from planning.diets.recipe import ingredients_listed, recipe_told
from tests.planning.test_safety import dish

TIKKA = replace(dish("chicken tikka"), id="tikka")
CAKE = replace(dish("carrot cake", category="dessert"), id="cake")


@pytest.mark.parametrize(
    ("words", "last"),
    [
        ("chicken, yoghurt, tomatoes, onions, cream, ground almonds, spices", "spices"),
        ("just mince, onion, tinned toms, kidney beans and a can of stout", "stout"),
        ("lo de siempre: chile ancho, cacahuate, ajonjolí, almendra", "almendra"),
        ("it's flour, butter, eggs, sugar and pecans", "pecans"),
        ("Lleva harina, huevo, mantequilla, nuez y azúcar.", "azúcar"),
    ],
)
def test_a_list_of_ingredients_is_read_to_its_last(words: str, last: str) -> None:
    found = ingredients_listed(words)

    assert found is not None
    assert found[0][-1] == last


@pytest.mark.parametrize(
    "words",
    [
        "I'll bring chips, salsa, beans and rice",
        "we still need flour, butter, eggs and sugar",
        "got milk, eggs, bread, butter from the shop",
        "does it have flour, butter, eggs, sugar?",
        "rice, beans, chicken, tortillas left",
        "plates, cups, napkins, forks",
        "faltan arroz, frijoles, pollo y queso",
        "flour, butter",
        "pavlova collapsed in the heat, doing one big trifle instead, custard and cream",
        "onions, milk, eggs, bread at 5pm",
        "the lasagna has wheat, cheese, spinach and ground almonds",
        "la lasaña lleva harina, queso, espinacas y almendra",
    ],
)
def test_what_is_brought_bought_asked_or_left_is_no_recipe(words: str) -> None:
    assert ingredients_listed(words) is None


def test_a_recipe_is_of_the_dish_it_shares_most_with() -> None:
    told = recipe_told("carrots, flour, eggs, sugar, walnuts", (TIKKA, CAKE))

    assert told is not None
    assert told.dish is CAKE


def test_a_recipe_that_fits_no_dish_of_the_cook_is_nobodys() -> None:
    assert recipe_told("cucumber, dill, vinegar, radish", (TIKKA,)) is None


def test_what_the_cook_lists_last_counts_for_who_must_not_eat_it() -> None:
    told = recipe_told("chicken, yoghurt, tomatoes, ground almonds, spices", (TIKKA,))

    assert told is not None
    assert can_eat(replace(TIKKA, ingredients=told.holds), "tree-nut") == "contains"


def test_what_is_said_not_to_be_in_it_is_no_ingredient() -> None:
    told = recipe_told("no almonds, just chicken, yoghurt, tomatoes, onions", (TIKKA,))

    assert told is not None
    assert (told.without, "almonds" in told.holds) == (("almonds",), False)
