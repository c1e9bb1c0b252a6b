"""Names of dishes. Categories and times are common practice (no source) unless a row names one."""

from __future__ import annotations

import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.texts.catalogue import catalogue as texts
from planning import tables
from planning.diets.ingredients import find
from planning.dishes import catalogue, dish_named, is_food, lookup, suggest
from planning.dishes.catalogue import INVENTED, read_heat
from planning.dishes.names import corrected, singular
from planning.potluck import CATEGORIES

NAMES = [dish.name for dish in catalogue()]


def dish_of(text: str) -> str | None:
    found = lookup(text).dish
    return found.name if found else None


def test_the_catalogue_has_at_least_six_hundred_dishes_of_every_category() -> None:
    assert len([dish for dish in catalogue() if not dish.like]) >= 600
    assert {dish.category for dish in catalogue()} == set(CATEGORIES)


def test_a_dish_planned_like_another_is_another_dish_with_ingredients_nobody_knows() -> None:
    guitar, speaker = lookup("a guitar").dish, lookup("a speaker").dish

    assert guitar is not None
    assert speaker is not None
    assert guitar != speaker
    assert (guitar.like, guitar.category, guitar.ingredients) == (speaker.name, speaker.category, ())


def test_a_dish_planned_like_another_may_hold_something_else() -> None:
    # Bakewell tart is baked and cut like any tart, and holds almonds.
    tart = lookup("bakewell tarts").dish

    assert tart is not None
    assert (tart.like, tart.category) == ("treacle tart", "dessert")
    assert "almond flour" in tart.ingredients


def test_minutes_a_publication_gives_for_one_dish_are_not_its_for_another() -> None:
    others = [dish for dish in catalogue() if dish.like and dish.ingredients]

    assert len(others) > 300
    assert all(dish.time_source in ("", "practice", INVENTED) for dish in others)


def test_no_dish_stands_in_the_catalogue_twice() -> None:
    assert len(NAMES) == len(set(NAMES))


def test_every_dish_is_found_by_all_of_its_names() -> None:
    # In one test: a test for each of the many would take longer than looking them up.
    wrong = [
        (dish.name, name, dish_of(name))
        for dish in catalogue()
        for name in (dish.name, *dish.aliases)
        if (dish_of(name), lookup(name).confidence) != (dish.name, 1.0)
    ]

    assert wrong == []


def test_at_least_120_dishes_carry_a_time_from_a_source_or_common_practice() -> None:
    timed = [dish for dish in catalogue() if dish.heat and dish.times_known]

    assert len(timed) >= 120
    assert all(dish.time_source in tables.sources() for dish in timed)


def test_an_invented_time_is_never_handed_out() -> None:
    invented = [dish for dish in catalogue() if dish.time_source == INVENTED]

    assert invented
    assert all(dish.known_heat == () and dish.minutes is None for dish in invented)


def test_every_source_of_a_row_is_known() -> None:
    for table in ("dishes", "dishes_heads", "dishes_words", "dishes_costs", "ingredients", "allergens", "diets"):
        assert {row["source"] for row in tables.rows(table)} <= set(tables.sources()), table


def test_every_usual_ingredient_stands_in_the_ingredient_table() -> None:
    unknown = {text for dish in catalogue() for text in dish.ingredients if find(text).unmatched or not find(text).rows}

    assert unknown == set()


# What a guest writes, and the category its head noun gives.
@pytest.mark.parametrize(
    ("text", "category"),
    [
        ("chicken noodle casserole", "main"),
        ("apple walnut salad", "salad"),
        ("potato salad", "salad"),
        ("salad potatoes", "side"),  # a sort of potato
        ("corn bread", "bread"),
        ("cream puffs", "dessert"),
        ("crawfish pie", "main"),  # meat and fish pies
        ("huckleberry pie", "dessert"),  # fruit pies
        ("walleye cakes", "dessert"),  # an unknown word before "cakes" stays with the usual cake
        ("turkey cranberry wraps", "main"),
        ("lettuce cups", "starter"),
        ("paper cups", "supplies"),
        ("salad bowls", "supplies"),
        ("cake stand", "supplies"),
        ("wine glasses", "supplies"),
        ("french loaf", "bread"),
        ("salmon loaf", "main"),
        ("lemon ice", "dessert"),
        ("soup with bread", "main"),
        ("bread with olives", "bread"),
        ("beans, baked", "side"),
        ("salad of roasted squash", "salad"),
        ("cream of asparagus soup", "main"),
        ("shrimp cocktail", "starter"),
        ("pear and ginger crumble", "dessert"),
        ("elderflower cordial", "drink"),
        ("onion gravy", "topping"),
        ("folding chairs", "supplies"),
        ("a speaker", "supplies"),
        ("charcoal", "supplies"),
        ("2 bags of ice", "supplies"),
        ("ice cream", "dessert"),
        ("something sweet", "dessert"),
        ("veggie platter with hummus", "starter"),
        ("kid's juice boxes", "drink"),
        ("apple pie with ice cream", "dessert"),
        ("drinks", "drink"),
        ("a main", "main"),
        ("mystery platter", "starter"),
        ("serving platters", "supplies"),
        ("soccer balls", "supplies"),
        ("devilled egg platter", "starter"),
        ("hummus wraps", "main"),
        ("penne alla vodka", "main"),
        ("tuna tartare", "starter"),
        ("jollof rice with chicken", "main"),
        ("toilet paper", "supplies"),
    ],
)
def test_the_head_noun_decides(text: str, category: str) -> None:
    assert lookup(text).category == category


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("tirimisu", "tiramisu"),
        ("guacomole", "guacamole"),
        ("bruscheta", "bruschetta"),
        ("mac n chese", "macaroni and cheese"),
        ("Zuccini bread", "zucchini bread"),
        ("potatosalad", "potato salad"),
        ("corn bread", "cornbread"),
        ("casserole green bean", "green bean casserole"),
        ("potatoes mashed", "mashed potatoes"),
        ("salad of lentils", "lentil salad"),
        ("my mom's FAMOUS cole slaw for 12!!", "coleslaw"),
        ("2 dozen deviled eggs", "deviled eggs"),
        ("a big bowl of pasta salad", "pasta salad"),
        ("aubergine parmigiana", "eggplant parmesan"),
        ("7-layer dip", "seven layer dip"),
        ("Jalapeño corn bread", "cornbread"),
        ("grandma's spicy potato salad", "potato salad"),
        ("gluten-free lemon bars", "lemon bars"),
        ("crème brûlée", "creme brulee"),
    ],
)
def test_spelling_order_and_words_around_do_not_hide_a_dish(text: str, name: str) -> None:
    assert dish_of(text) == name


@pytest.mark.parametrize(
    "text", ["my dog", "the kids", "my husband", "a friend", "good vibes", "myself", "", "  ", "!!", "see you there"]
)
def test_what_is_no_dish_has_no_category_and_no_confidence(text: str) -> None:
    match = lookup(text)

    assert (match.dish, match.category, match.confidence) == (None, None, 0.0)


def test_an_unknown_dish_is_guessed_with_little_confidence() -> None:
    assert lookup("venison casserole with juniper").category == "main"
    assert 0.5 <= lookup("mushroom leek casserole").confidence <= 0.75
    assert lookup("blorf").confidence <= 0.1


def test_the_name_is_kept_as_said() -> None:
    assert lookup("my famous Potato-Leek Bake for 12").name == "Potato-Leek Bake"


def test_an_everyday_word_is_not_corrected_into_food() -> None:
    vocabulary = frozenset({"bacon", "bread", "beer", "lasagna"})

    assert corrected("macon", vocabulary) is None  # the first letter is wrong
    assert corrected("bee", vocabulary) is None  # three letters are never touched
    assert corrected("lasgna", vocabulary) == "lasagna"


@pytest.mark.parametrize(("text", "food"), [("slaw", True), ("lemonade", True), ("napkins", False), ("my dog", False)])
def test_food_and_drink_are_told_from_the_rest(text: str, food: bool) -> None:
    assert is_food(text) is food


@given(st.text(alphabet=string.printable + "éñ½🥧", max_size=200))
def test_any_text_gets_an_answer_in_range(text: str) -> None:
    match = lookup(text)

    assert 0.0 <= match.confidence <= 1.0
    assert match.category is None or match.category in CATEGORIES
    assert (match.category is None) == (match.confidence == 0.0)


@given(st.sampled_from(NAMES), st.sampled_from(["", "my ", "some ", "2 ", "a bowl of ", "homemade "]), st.booleans())
def test_words_around_a_known_name_never_change_its_category(name: str, before: str, shout: bool) -> None:
    text = before + (name.upper() if shout else name)

    assert lookup(text).category == lookup(name).category


@given(st.sampled_from([dish for dish in catalogue() if len(dish.name) >= 12 and " " not in dish.name]), st.data())
def test_one_letter_left_out_of_a_long_word_still_finds_the_dish(dish: object, data: st.DataObject) -> None:
    name = dish.name  # type: ignore[attr-defined]
    at = data.draw(st.integers(1, len(name) - 2))

    assert lookup(name[:at] + name[at + 1 :]).category == dish.category  # type: ignore[attr-defined]


def test_words_in_the_singular_are_the_same_for_both_numbers() -> None:
    for one, many in (("potato", "potatoes"), ("cookie", "cookies"), ("berry", "berries"), ("radish", "radishes")):
        assert singular(one) == singular(many) == one


def test_offers_are_common_dishes_in_season_first_and_never_those_promised() -> None:
    summer = suggest("salad", 5, "summer", frozenset({"potato salad"}))

    assert len(summer) == 5
    assert "potato salad" not in {dish.name for dish in summer}
    assert all(dish.in_season("summer") and dish.travels for dish in summer)


def test_the_heat_notation_is_read_and_nonsense_refused() -> None:
    prep, oven = read_heat("prep:20 oven:45@350")

    assert (prep.kind, prep.hands_min, oven.minutes, oven.temp_f, oven.at) == ("prep", 20, 45, 350.0, "home")
    with pytest.raises(ValueError, match="heat link"):
        read_heat("oven 45")


def test_slow_cookers_take_the_hours_their_source_gives() -> None:
    # SLOW-14 (USDA FSIS, Safe Cooking with Slow Cookers, 2008): 8-12 h on low, 480-720 min.
    low = [
        step.minutes
        for dish in catalogue()
        if dish.time_source == "SLOW-14"
        for step in dish.heat
        if step.kind == "slow-cooker-low"
    ]

    assert len(low) >= 10
    assert all(480 <= minutes <= 720 for minutes in low)


def test_a_whole_turkey_takes_the_longer_time_of_its_table() -> None:
    # COOK-31 (USDA): 14-18 lb unstuffed at 325 F, 3.75-4.25 h; the longer end is 4.25 x 60 = 255 min.
    turkey = dish_named("roast turkey")
    assert turkey is not None

    assert [(step.minutes, step.temp_f) for step in turkey.heat if step.kind == "oven"] == [(255, 325.0)]


def test_the_words_about_a_dish_are_there() -> None:
    english = texts("en")

    for key in ("dishes-sure", "dishes-guess", "dishes-unknown", "dishes-no-dish", "dishes-time-estimate"):
        assert english.format(key, {"name": "slaw", "category": "salad", "minutes": 20})
