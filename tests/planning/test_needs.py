"""Any way to name a need reaches the tables, or stays as it was written; none vanishes."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.diets import can_eat, diets, meant, need_of, need_words, needs_in, rule_of, say_of
from planning.diets.table import needs_of
from planning.potluck import Answer, Guest, Need, Potluck, Promise
from planning.safety.allergens import avoided

SATURDAY = datetime(2027, 9, 18, 22, tzinfo=UTC)


def one(*needs: Need, diets: tuple[str, ...] = (), allergies: tuple[str, ...] = ()) -> Guest:
    return Guest("mei", "Mei", Answer.YES, needs=needs, diets=diets, allergies=allergies)


def dish(name: str, *ingredients: str) -> Promise:
    return Promise("p1", "g1", name, "main", ingredients=ingredients or None)


@pytest.mark.parametrize(
    ("said", "need"),
    [
        ("pork", "pork-free"),
        ("no swine", "pork-free"),
        ("meat", "vegetarian"),
        ("no red meat", "red-meat-free"),
        ("chicken", "poultry-free"),
        ("cow's milk protein allergy", "milk"),
        ("cheese", "milk"),
        ("lactose-free", "dairy-free"),
        ("wheat-free", "wheat"),
        ("peanut-free", "peanut"),
        ("no peanuts", "peanut"),
        ("cashew nuts", "tree-nut"),
        ("pine nuts", "tree-nut"),
        ("nuts (all)", "nut-free"),
        ("prawn allergy", "shellfish"),
        ("crustacean", "shellfish"),
        ("tuna", "fish"),
        ("edamame", "soy"),
        ("sesame-free", "sesame"),
        ("rye", "gluten"),
        ("can't have gluten", "gluten-free"),
        ("must not have eggs", "egg"),
        ("type 1 diabetes", "diabetic"),
        ("tree_nut", "tree-nut"),
        ("MILK.", "milk"),
        ("Jain", "jain"),
        ("gelatine", "gelatin-free"),
    ],
)
def test_a_need_is_found_however_it_is_named(said: str, need: str) -> None:
    assert needs_in(said) == (need,)
    assert rule_of(said) is not None


@pytest.mark.parametrize(
    ("said", "needs"),
    [
        ("dairy free and gluten free", ("dairy-free", "gluten-free")),
        ("severe peanut & egg allergy", ("peanut", "egg")),
        ("gluten-free, kiwi", ("gluten-free", "kiwi")),
        ("cashews and pistachios", ("tree-nut",)),
    ],
)
def test_several_needs_in_one_are_each_a_need(said: str, needs: tuple[str, ...]) -> None:
    assert needs_in(said) == needs


@pytest.mark.parametrize("said", ["kiwi", "no mushrooms", "spicy", "vegetarian except fish", "vegan but eats honey",
                                  "can eat eggs", "not allergic to nuts", "allergic to bees"])  # fmt: skip
def test_what_no_table_knows_or_what_is_turned_about_stays_as_written(said: str) -> None:
    assert needs_in(said) == (said,)
    assert {row.need for row in diets(Potluck("p", SATURDAY, "UTC", guests=(one(Need(said)),)))} == {said}


@pytest.mark.parametrize("said", ["none", "n/a", "-", "no allergies", "no dietary requirements", "eats anything"])
def test_only_the_word_that_there_is_none_names_no_need(said: str) -> None:
    assert needs_in(said) == ()


@given(st.lists(st.sampled_from(need_words()), min_size=1, max_size=3).map(" and ".join))
def test_no_word_for_a_need_is_lost_in_company(said: str) -> None:
    assert all(rule_of(need) is not None for need in needs_in(said))


@given(st.text(min_size=1, max_size=30).filter(lambda text: any(c.isalpha() for c in text)))
def test_any_text_is_a_need_or_says_there_is_none(said: str) -> None:
    assert needs_in(said) or not rule_of(said)
    assert all(needs_in(said))


def test_a_named_food_is_contained_where_the_dish_or_its_cook_names_it() -> None:
    assert can_eat(dish("mushroom risotto"), "no mushrooms") == "contains"
    assert can_eat(dish("salad", "lettuce", "kiwi slices"), "kiwi") == "contains"
    assert say_of(dish("salad", "lettuce", "kiwi slices"), "kiwi").key == "diets-contains-cook"


def test_a_named_food_nobody_lists_is_asked_about() -> None:
    assert can_eat(dish("salad", "lettuce"), "kiwi") == "ask"


def test_how_bad_it_is_is_read_from_the_words_where_nobody_said() -> None:
    assert [n.severity for n in meant(Need("severe egg allergy"))] == ["severe allergy"]
    assert [n.severity for n in meant(Need("coeliac", 2, "diet"))] == ["intolerance"]
    assert meant(Need("coeliac", 2, "allergy")) == (Need("gluten-free", 2, "allergy"),)
    assert meant(Need("vegan", 1, "diet")) == (Need("vegan", 1, "diet"),)


def test_two_allergies_written_as_one_are_both_watched_for() -> None:
    potluck = Potluck("p", SATURDAY, "UTC", guests=(one(allergies=("peanut and egg",)),))

    assert {a.need for a in avoided(potluck)} == {"peanut", "egg"}


def test_words_for_one_need_are_one_row() -> None:
    assert needs_of(one(Need("no pork"), diets=("pork-free",), allergies=("pork",))) == ("pork-free",)


@pytest.mark.parametrize(
    ("said", "need", "kind"),
    [
        ("celiac", "gluten-free", "intolerance"),
        ("coeliac disease", "gluten-free", "intolerance"),
        ("GF", "gluten-free", "diet"),
        ("lactose intolerant", "dairy-free", "intolerance"),
        ("dairy", "milk", "allergy"),
        ("nuts", "nut-free", "diet"),
        ("nut allergy", "nut-free", "allergy"),
        ("allergic to peanuts", "peanut", "allergy"),
        ("tree nuts", "tree-nut", "allergy"),
        ("shellfish", "shellfish", "allergy"),
        ("severe egg allergy", "egg", "allergy"),
        ("two vegetarians", "vegetarian", "diet"),
        ("plant-based", "vegan", "diet"),
        ("no pork", "pork-free", "diet"),
        ("doesn't eat meat", "vegetarian", "diet"),
        ("keto", "low-carb", "diet"),
        ("soya", "soy", "allergy"),
    ],
)
def test_needs_are_understood_in_everyday_words(said: str, need: str, kind: str) -> None:
    assert need_of(said) == (need, kind)


def test_what_is_no_need_is_not_guessed() -> None:
    assert need_of("tall") is None
    assert need_of("") is None


def test_every_word_for_a_need_is_understood() -> None:
    assert all(need_of(word) is not None for word in need_words())
