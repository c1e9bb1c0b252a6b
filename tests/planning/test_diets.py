"""Diets and allergies. Outside checks: the legal lists of allergens, and the wording of 21 CFR 101.91."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.texts.catalogue import catalogue as texts
from planning import tables
from planning.diets import can_eat, diets, listed, people_without, rule_of, say_of, usually_fits
from planning.diets.needs import eu_fourteen, us_nine
from planning.dishes import catalogue, dish_named
from planning.potluck import Answer, Guest, Need, Party, Potluck, Promise
from tests.planning.asks.builders import START

INGREDIENTS = [row["name"] for row in tables.rows("ingredients")]
NEEDS = [row["need"] for row in tables.rows("diets")] + [row["allergen"] for row in tables.rows("allergens")]


def dish(name: str, *ingredients: str, category: str = "main", id: str = "p") -> Promise:
    return Promise(id, "ravi", name, category, ingredients=ingredients or None)


def supper(guest: Guest, *promises: Promise) -> Potluck:
    return Potluck("p", START, "America/Chicago", guests=(guest,), promises=promises)


# The legal lists.


def test_the_us_allergens_are_the_nine_of_the_law() -> None:
    # 21 U.S.C. 321(qq), by FALCPA (2004): milk, eggs, fish, Crustacean shellfish, tree nuts, wheat, peanuts,
    # soybeans; by the FASTER Act (2021): sesame. From memory.
    assert us_nine() == {"milk", "egg", "fish", "shellfish", "tree-nut", "wheat", "peanut", "soy", "sesame"}


def test_the_eu_allergens_are_the_fourteen_of_annex_ii() -> None:
    # Regulation (EU) No 1169/2011, Annex II, items 1-14. From memory.
    annex = {
        "1": "gluten", "2": "shellfish", "3": "egg", "4": "fish", "5": "peanut", "6": "soy", "7": "milk",
        "8": "tree-nut", "9": "celery", "10": "mustard", "11": "sesame", "12": "sulphites", "13": "lupin",
        "14": "mollusc",
    }  # fmt: skip

    assert {row["eu"]: row["allergen"] for row in tables.rows("allergens") if row["eu"]} == annex
    assert len(eu_fourteen()) == 14


@pytest.mark.parametrize(
    "grain", ["wheat flour", "rye flour", "pearl barley", "spelt", "kamut", "durum", "semolina", "bulgur"]
)
def test_the_gluten_grains_of_the_rule_break_gluten_free(grain: str) -> None:
    # 21 CFR 101.91(a)(1): wheat including any Triticum species, rye, barley, and their crossbreeds.
    assert can_eat(dish("porridge", grain), "gluten-free") == "contains"


def test_oats_are_asked_about_and_not_counted_as_gluten() -> None:
    # 21 CFR 101.91 names no oats; the EU lists them: ask for a label.
    assert can_eat(dish("porridge", "rolled oats"), "gluten-free") == "ask"
    assert can_eat(dish("porridge", "gluten free oats"), "gluten-free") == "listed-free"


@pytest.mark.parametrize("need", NEEDS)
def test_no_sentence_claims_a_dish_is_safe_or_free_of_something(need: str) -> None:
    # 21 CFR 101.91(a)(3): "gluten-free", "no gluten", "free of gluten", "without gluten" claim under 20 ppm, which
    # no home kitchen can vouch for.
    say = say_of(dish("salad", "lettuce"), need)
    words = texts("en").format(say.key, dict(say.facts))

    assert not re.search(r"\bsafe\b|gluten-free|free of|without gluten|no gluten(?! ingredients listed)", words, re.I)


# What is in a dish.


@pytest.mark.parametrize(
    ("ingredient", "need", "answer"),
    [
        ("Worcestershire sauce", "vegetarian", "contains"),  # anchovy
        ("fish sauce", "vegan", "contains"),
        ("soy sauce", "gluten-free", "contains"),
        ("tamari", "gluten-free", "ask"),
        ("malt vinegar", "gluten-free", "contains"),  # barley, yet no US allergen
        ("malt vinegar", "wheat", "listed-free"),
        ("honey", "vegan", "contains"),
        ("honey", "vegetarian", "listed-free"),
        ("gelatin", "vegetarian", "contains"),
        ("gelatin", "halal", "ask"),
        ("marshmallows", "vegan", "contains"),
        ("wine", "halal", "contains"),
        ("pork", "kosher", "contains"),
        ("shrimp", "kosher", "contains"),
        ("chicken", "halal", "ask"),  # nobody said how it was slaughtered
        ("salmon", "pescatarian", "listed-free"),
        ("bacon", "pescatarian", "contains"),
        ("coconut milk", "nut-free", "ask"),  # coconut is asked apart
        ("coconut milk", "tree-nut", "ask"),
        ("clams", "shellfish", "ask"),  # molluscs are no crustaceans, yet people mean both
        ("almond milk", "milk", "listed-free"),
        ("almond milk", "tree-nut", "contains"),
        ("crunchy peanut butter", "peanut", "contains"),
        ("crunchy peanut butter", "milk", "listed-free"),
        ("butter beans", "milk", "listed-free"),
        ("cream of tartar", "milk", "listed-free"),
        ("eggplant", "egg", "listed-free"),
        ("nutmeg", "tree-nut", "listed-free"),
        ("buckwheat", "gluten-free", "listed-free"),
        ("low sodium soy sauce", "soy", "contains"),
        ("parmesan", "vegetarian", "contains"),  # calf rennet
        ("cheddar", "vegetarian", "ask"),  # rennet of some sort
        ("chicken broth", "vegetarian", "contains"),
        ("celery", "celery", "contains"),
        ("Dijon mustard", "mustard", "contains"),
    ],
)
def test_an_ingredient_answers_a_need(ingredient: str, need: str, answer: str) -> None:
    assert can_eat(dish("a dish", "salt", ingredient), need) == answer


def test_kosher_meat_with_milk_is_seen_only_in_the_whole_dish() -> None:
    assert can_eat(dish("pan", "ground beef"), "kosher") == "ask"
    assert can_eat(dish("pan", "butter"), "kosher") == "listed-free"
    assert can_eat(dish("pan", "ground beef", "butter"), "kosher") == "contains"


def test_an_ingredient_nobody_knows_has_to_be_asked() -> None:
    what = listed(dish("salad", "lettuce", "aunt jo's secret mix"))

    assert what.unknown_ingredients == ("aunt jo's secret mix",)
    assert can_eat(dish("salad", "lettuce", "aunt jo's secret mix"), "milk") == "ask"


def test_without_a_list_the_usual_recipe_can_warn_but_never_clear() -> None:
    assert can_eat(dish("brownies"), "gluten-free") == "contains"
    assert can_eat(dish("brownies"), "sesame") == "ask"
    assert listed(dish("brownies")).basis == "usual recipe"


def test_a_dish_nobody_knows_is_asked_about_except_for_what_its_name_says() -> None:
    assert listed(dish("peanut blorf")).basis == "unknown"
    assert can_eat(dish("peanut blorf"), "peanut") == "contains"
    assert can_eat(dish("peanut blorf"), "milk") == "ask"


def test_the_name_counts_although_the_cook_left_it_off_the_list() -> None:
    assert can_eat(dish("peanut noodles", "noodles", "soy sauce"), "peanut") == "contains"


def test_the_cooks_list_speaks_against_the_usual_recipe() -> None:
    assert can_eat(dish("potato salad", "potatoes", "vinegar", "olive oil"), "egg") == "listed-free"


def test_vegan_in_a_name_makes_the_usual_recipe_a_question_and_no_answer() -> None:
    assert can_eat(dish("lasagna"), "vegan") == "contains"
    assert can_eat(dish("vegan lasagna"), "vegan") == "ask"
    assert can_eat(dish("vegan lasagna"), "vegetarian") == "ask"
    assert can_eat(dish("vegan lasagna"), "gluten-free") == "contains"


@given(
    st.lists(st.sampled_from(INGREDIENTS), min_size=1, max_size=6), st.sampled_from(INGREDIENTS), st.sampled_from(NEEDS)
)
def test_adding_an_ingredient_never_takes_a_warning_away(some: list[str], more: str, need: str) -> None:
    order = ["listed-free", "ask", "contains"]

    before = can_eat(dish("a pan", *some), need)
    after = can_eat(dish("a pan", *some, more), need)

    assert order.index(after) >= order.index(before)


@given(st.lists(st.sampled_from(INGREDIENTS), min_size=1, max_size=6), st.randoms())
def test_the_order_of_ingredients_does_not_matter(some: list[str], random: object) -> None:
    mixed = some[:]
    random.shuffle(mixed)  # type: ignore[attr-defined]

    one, other = listed(dish("a pan", *some)), listed(dish("a pan", *mixed))

    assert (one.holds, one.may_hold, one.breaks) == (other.holds, other.may_hold, other.breaks)


@given(st.lists(st.sampled_from(INGREDIENTS), min_size=1, max_size=6))
def test_nothing_is_both_listed_and_perhaps_listed(some: list[str]) -> None:
    what = listed(dish("a pan", *some))

    assert not what.contains & what.may_contain
    assert not what.breaks & what.may_break


@given(st.sampled_from([one for one in catalogue() if one.ingredients]), st.sampled_from(NEEDS))
def test_a_dish_that_usually_fits_never_contains_what_it_must_not(one: object, need: str) -> None:
    if usually_fits(one, need):  # type: ignore[arg-type]
        assert can_eat(dish(one.name), need) == "ask"  # type: ignore[attr-defined]


def test_the_table_of_ingredients_is_followed_row_by_row() -> None:
    # Every allergen and diet which a row of the gathered table states is stated by `listed`.
    for row in tables.rows("ingredients"):
        what = listed(dish("a pan", row["name"]))
        for mark in filter(None, row["contains"].split(";")):
            assert mark.rstrip("?") in (what.may_hold | what.holds if mark.endswith("?") else what.holds), row["name"]
        for diet in filter(None, row["breaks"].split(";")):
            name = diet.rstrip("?")
            assert name in (what.breaks | what.may_break if diet.endswith("?") else what.breaks), (row["name"], diet)


def test_a_need_nobody_wrote_down_is_always_asked() -> None:
    assert rule_of("nightshade") is None
    assert can_eat(dish("salad", "lettuce"), "nightshade") == "ask"


def test_some_needs_no_list_can_answer() -> None:
    assert can_eat(dish("salad", "lettuce"), "low-salt") == "ask"


# The table for each guest.

VEGAN = Guest("mei", "Mei", Answer.YES, diets=("vegan",))


def test_each_need_gets_a_row_for_main_side_and_dessert() -> None:
    rows = diets(supper(VEGAN))

    assert [(row.guest, row.need, row.category, row.short) for row in rows] == [
        ("mei", "vegan", part, True) for part in ("main", "side", "dessert")
    ]


def test_a_listed_main_ends_the_shortage_of_mains() -> None:
    stew = dish("bean stew", "beans", "tomatoes")

    row = diets(supper(VEGAN, stew))[0]

    assert (row.safe_promises, row.ask_first, row.short) == (("p",), (), False)


def test_a_dish_without_a_list_is_asked_about_first() -> None:
    row = diets(supper(VEGAN, dish("black bean chili")))[0]

    assert (row.safe_promises, row.ask_first, row.short) == ((), ("p",), True)


def test_a_roll_is_no_side_for_a_whole_meal() -> None:
    rolls = dish("rolls", "flour", "yeast", category="bread")

    row = diets(supper(VEGAN, rolls))[1]

    assert (row.safe_promises, row.short) == (("p",), True)


def test_one_person_with_two_needs_finds_only_what_suits_both() -> None:
    guest = Guest("mei", "Mei", Answer.YES, diets=("vegan",), allergies=("soy",))
    tofu = dish("tofu bowl", "tofu", "rice")

    vegan, soy = diets(supper(guest, tofu))[0], diets(supper(guest, tofu))[3]

    assert (vegan.safe_promises, soy.safe_promises) == ((), ())


def test_in_a_larger_party_each_need_may_be_another_persons() -> None:
    guest = Guest("mei", "Mei", Answer.YES, Party(2), diets=("vegan",), allergies=("soy",))
    tofu = dish("tofu bowl", "tofu", "rice")

    assert diets(supper(guest, tofu))[0].safe_promises == ("p",)


def test_who_does_not_come_has_no_rows() -> None:
    assert diets(supper(Guest("mei", "Mei", Answer.NO, diets=("vegan",)))) == ()


def test_people_without_a_dish_are_counted_without_names() -> None:
    guest = Guest("mei", "Mei", Answer.YES, Party(3), needs=(Need("celiac", 2, "allergy"),))
    potluck = supper(guest)

    assert people_without(potluck, diets(potluck))["gluten-free", "main"] == 2


def test_every_sentence_about_a_dish_has_words() -> None:
    english = texts("en")
    promises = [dish("slaw"), dish("blorf"), dish("stew", "beans"), dish("pan", "cheddar", "xyz"), dish("pan", "xyz")]

    for promise in promises:
        for need in (*NEEDS, "nightshade"):
            say = say_of(promise, need)
            assert english.format(say.key, dict(say.facts))
    assert english.format("diets-shared-bar", {})


def test_common_vegan_and_gluten_free_offers_exist_for_every_part_of_a_meal() -> None:
    for part in ("main", "side", "salad", "dessert"):
        for need in ("vegan", "gluten-free", "dairy-free", "nut-free", "vegetarian", "egg"):
            assert [one for one in catalogue() if one.category == part and usually_fits(one, need)], (part, need)
    assert dish_named("vegan brownies") is not None


def test_a_strictly_kept_kosher_need_is_about_the_kitchen_too_so_every_other_cook_is_asked() -> None:
    strict = Guest("mei", "Mei", Answer.YES, needs=(Need("kosher", 1, "strict"),))
    theirs = dish("hummus", "chickpeas", "tahini", category="side", id="theirs")
    own = Promise("own", "mei", "potato kugel", "side", ingredients=("potato", "egg", "oil"))

    row = next(r for r in diets(supper(strict, theirs, own)) if r.category == "side")

    assert row.safe_promises == ("own",)
    assert row.ask_first == ("theirs",)
