"""The balance of the table: targets, what is short, double and too much."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.headcount import headcount
from planning.menu import (
    MOST_SERVINGS,
    SETS,
    USUAL_YIELD,
    MenuRow,
    bar_category,
    doubles,
    kinds_in,
    kinds_missing,
    menu,
    most_needed,
    servings_in,
    servings_of,
    targets,
    tiny,
)
from planning.portions import items
from planning.potluck import CATEGORIES, Answer, Bar, Guest, Party, Potluck, Promise, Topping

SATURDAY = datetime(2027, 9, 18, 22, tzinfo=UTC)


def supper(people: int, *promises: Promise, **fields: object) -> Potluck:
    crowd = tuple(Guest(f"g{n}", "x", Answer.YES) for n in range(people))
    plain = Potluck("p1", SATURDAY, "UTC", guests=crowd, promises=promises, answer_odds={"yes": 1.0})
    return replace(plain, **fields)  # type: ignore[arg-type]


def promise(
    number: int, dish: str, category: str, servings: float | None = None, quantity: str | None = None
) -> Promise:
    return Promise(f"p{number}", "g1", dish, category, servings, quantity)


def rows(potluck: Potluck) -> dict[str, MenuRow]:
    return {row.category: row for row in menu(potluck, headcount(potluck))}


def test_every_category_has_a_row_in_the_order_of_the_table() -> None:
    assert tuple(row.category for row in menu(supper(10), headcount(supper(10)))) == CATEGORIES


def test_everybody_gets_one_main() -> None:
    # 24 eaters x 1; a dish to a dozen: 2.
    main = rows(supper(24))["main"]

    assert (main.target_servings, main.target_dishes) == (24, 2)


def test_what_is_promised_lessens_what_is_short() -> None:
    side = rows(supper(24, promise(1, "rice", "side", 10)))["side"]

    assert (side.promised_servings, side.promised_dishes) == (10, 1)
    assert (side.short_servings, side.short_dishes) == (14, 1)


def test_surplus_is_what_is_promised_beyond_the_target() -> None:
    salad = rows(supper(9, promise(1, "slaw", "salad", 12)))["salad"]

    assert (salad.target_servings, salad.surplus_servings, salad.too_much_servings) == (9, 3, 0)


def test_too_much_begins_beyond_the_published_range() -> None:
    # Dessert for 10: 12.5 wanted, up to 2 pieces each when several are offered (20); 32 promised.
    dessert = rows(supper(10, promise(1, "apple pie", "dessert", 32)))["dessert"]

    assert (dessert.surplus_servings, dessert.too_much_servings) == (19.5, 12)


def test_dishes_follow_the_expected_people_and_servings_the_service_level() -> None:
    unsure = replace(
        supper(0), guests=tuple(Guest(f"g{n}", "x", Answer.MAYBE) for n in range(24)), answer_odds={"maybe": 0.5}
    )
    main = rows(unsure)["main"]

    assert main.target_dishes == 1
    assert main.target_servings == headcount(unsure).eaters > 12


def test_hearty_eaters_ask_for_more_of_the_food_and_no_more_cups() -> None:
    plain, hearty = rows(supper(20)), rows(supper(20, hearty=1.0))

    assert hearty["main"].target_servings == 1.5 * plain["main"].target_servings
    assert hearty["supplies"].target_servings == plain["supplies"].target_servings


def test_children_ask_for_fewer_servings() -> None:
    children = replace(supper(0), guests=(Guest("g1", "x", Answer.YES, Party(0, 0, 8)),))

    assert rows(children)["main"].target_servings == 6


def test_between_meals_the_mains_are_smaller_and_the_bites_more() -> None:
    between, meal = rows(supper(20, mealtime="between-meals")), rows(supper(20))

    assert between["main"].target_servings < meal["main"].target_servings
    assert between["starter"].target_servings > meal["starter"].target_servings


def test_napkins_for_all_leave_the_plates_cups_and_cutlery_missing() -> None:
    supplies = rows(supper(26, promise(1, "napkins", "supplies", 40)))["supplies"]

    assert (supplies.promised_servings, supplies.short_servings, supplies.short_dishes) == (40, 0, 3)
    assert (supplies.covered_servings, supplies.lacking_servings) == (0, 26)
    assert supplies.too_much_servings == 0


def test_forty_napkins_are_for_forty() -> None:
    assert rows(supper(26, promise(1, "napkins", "supplies", None, "40")))["supplies"].promised_servings == 40


def test_who_says_plates_and_cups_brings_two_kinds() -> None:
    supplies = rows(supper(26, promise(1, "paper plates and cups", "supplies", 30)))["supplies"]

    assert (supplies.promised_dishes, supplies.short_dishes) == (2, 2)


def test_a_whole_set_is_enough_for_as_many_as_its_fewest_pieces() -> None:
    made = [promise(n, name, "supplies", 30 + n) for n, name in enumerate(("plates", "mugs", "serviettes", "forks"))]
    supplies = rows(supper(26, *made))["supplies"]

    assert (supplies.lacking_servings, supplies.short_dishes, supplies.covered_servings) == (0, 0, 30)


def test_things_for_the_table_without_a_number_are_for_everybody() -> None:
    made = [promise(n, name, "supplies") for n, name in enumerate(SETS)]

    assert rows(supper(70, *made))["supplies"].lacking_servings == 0


def test_ice_and_a_serving_spoon_lay_nobodys_place() -> None:
    assert kinds_in("2 bags of ice") == kinds_in("a serving spoon") == kinds_in("dish towels") == ()


def test_a_table_of_two_wants_a_starter_and_a_table_of_one_does_not() -> None:
    assert rows(supper(1))["starter"].target_dishes == 0
    assert rows(supper(2))["starter"].target_dishes == 1


def test_next_to_nothing_short_is_not_needed() -> None:
    # 26 mains wanted, 25 there.
    potluck = supper(26, *(promise(n, name, "main", s) for n, (name, s) in enumerate((("a", 9), ("b", 8), ("c", 8)))))

    assert "main" not in {n.category for n in most_needed(potluck, headcount(potluck))}


def test_one_short_of_one_is_needed() -> None:
    assert not tiny(1, 1)


def test_three_of_forty_are_tiny_and_three_of_twenty_six_are_not() -> None:
    assert (tiny(3, 40), tiny(3, 26)) == (True, False)


def test_toppings_are_wanted_only_at_a_bar() -> None:
    assert rows(supper(20))["topping"].target_servings == 0
    assert rows(supper(20, bar=Bar("taco")))["topping"].target_servings > 0


def test_a_bar_stands_for_the_main() -> None:
    main = rows(supper(20, bar=Bar("baked potato")))["main"]

    assert (main.short_servings, main.short_dishes) == (0, 0)


def test_a_sundae_bar_stands_for_the_dessert() -> None:
    assert bar_category("ice-cream sundae") == "dessert"
    assert rows(supper(20, bar=Bar("ice-cream sundae")))["main"].short_servings == 20


def test_a_promised_base_counts_for_what_it_holds() -> None:
    # Somebody brings the potatoes, for eight only.
    main = rows(supper(20, promise(1, "baked potatoes", "main", 8), bar=Bar("baked potato")))["main"]

    assert main.promised_servings == 8


def test_a_taken_topping_is_a_promise() -> None:
    bar = Bar("taco", (Topping("salsa", "g1"), Topping("guacamole")))

    assert rows(supper(20, bar=bar))["topping"].promised_dishes == 1


def test_toppings_want_one_serving_an_eater_and_each_is_its_part() -> None:
    # 20 people: five kinds at four people to a kind; one of them taken is a fifth of everybody's toppings.
    bar = Bar("taco", (Topping("salsa", "g1"), Topping("guacamole")))
    topping = rows(supper(20, bar=bar))["topping"]

    assert (topping.target_servings, topping.target_dishes) == (20, 5)
    assert (topping.promised_servings, topping.short_servings, topping.short_dishes) == (4, 16, 4)


def test_a_topping_asked_for_is_for_everybody() -> None:
    potluck = supper(20, bar=Bar("taco"))

    assert next(n for n in most_needed(potluck, headcount(potluck)) if n.category == "topping").servings == 20


@pytest.mark.parametrize(
    ("dish", "category", "quantity", "servings"),
    [
        ("hot dogs", "main", "2 dozen", 12),  # 24 at 2 each
        ("potato salad", "salad", "1 gallon", 16 / 0.56),
        ("pulled pork", "main", "9 lb", 9 * 16 * 0.449 / 3),  # as bought: 0.449 is left (Q220), 3 oz each
        ("casserole", "main", "a 9x13 pan", 12),  # 12 cups at one cup each
        ("rolls", "bread", "30", 20),  # 1.5 each
        ("lasagna", "main", "serves 15", 15),
        ("casserole", "main", "half pan", 12 * 10 * 2.5 * 0.75 / (231 / 16)),
        ("baked beans", "side", "No. 10 can", 12 / 0.51),  # 12-13 cups (Q367)
        ("brownies", "dessert", "12x16 pan", 36),  # 36 pieces (Q147)
        ("apple pie", "dessert", "2", 16),  # two whole pies of eight
        ("pizza", "main", "12 slices", 12 / (140 / 105)),
        ("soda", "drink", "12 cans", 12 * 12 / 12.17),  # 360 mL
        ("ice", "supplies", "2 bags", 20 / 1.5),
        ("soup", "main", "a 6 qt slow cooker", 24),
        ("coleslaw", "salad", "2", 20),  # two bowls of ten
        ("coleslaw", "salad", "8-10 cups", 16),
        ("butter", "topping", "2 sticks", 16),  # a stick is 8 tbsp
    ],
)
def test_a_quantity_is_read_by_the_items_own_portion(dish: str, category: str, quantity: str, servings: float) -> None:
    pytest.importorskip("planning.amounts")

    assert servings_of(promise(1, dish, category, None, quantity)) == pytest.approx(servings, rel=0.02)


def test_a_quantity_that_says_nothing_falls_back_to_the_usual_yield() -> None:
    assert servings_in("lots and lots", items()["coleslaw"]) is None
    assert servings_of(promise(1, "qwxyz", "salad", None, "lots")) == USUAL_YIELD["salad"]


def test_what_the_guest_said_goes_before_everything() -> None:
    assert servings_of(promise(1, "hot dogs", "main", 7, "10 lb")) == 7


@pytest.mark.parametrize(("said", "counted"), [(1e12, MOST_SERVINGS), (-4, 0)])
def test_absurd_servings_are_kept_within_sense(said: float, counted: float) -> None:
    assert servings_of(promise(1, "soup", "main", said)) == counted


def test_the_same_dish_in_other_words_is_double() -> None:
    potluck = supper(
        10, promise(1, "potato salad", "salad"), promise(2, "Potato Salads", "salad"), promise(3, "rolls", "bread")
    )

    assert doubles(potluck) == (("potato salad", ("p1", "p2")),)


def test_slaw_and_coleslaw_are_one_dish() -> None:
    potluck = supper(10, promise(1, "slaw", "salad"), promise(2, "Coleslaw", "salad"))

    assert [ids for _, ids in doubles(potluck)] == [("p1", "p2")]


def test_two_unlike_pies_are_not_double() -> None:
    potluck = supper(10, promise(1, "apple pie", "dessert"), promise(2, "pumpkin pie", "dessert"))

    assert doubles(potluck) == ()


def test_two_alike_dishes_are_one_dish_on_the_menu() -> None:
    potluck = supper(30, promise(1, "potato salad", "salad", 10), promise(2, "potato salad", "salad", 10))

    salad = rows(potluck)["salad"]
    assert (salad.promised_dishes, salad.promised_servings) == (1, 20)


def test_the_emptiest_table_needs_a_main_first() -> None:
    needed = most_needed(supper(24), headcount(supper(24)))

    assert needed[0].category == "main"
    assert needed[0].servings == 12


def test_nothing_is_needed_when_everything_is_there() -> None:
    foods = [c for c in CATEGORIES if c not in ("topping", "supplies")]
    sets = (promise(n, name, "supplies") for n, name in enumerate(SETS))
    full = supper(8, *(promise(n, f"dish {n}{c}", c, 200) for c in foods for n in range(4)), *sets)

    assert most_needed(full, headcount(full)) == ()


def test_every_target_lies_within_its_published_range() -> None:
    assert all(t.low <= t.servings <= t.high for t in targets().values())


promises = st.lists(
    st.tuples(st.sampled_from(["slaw", "soup", "pie", "rolls"]), st.sampled_from(CATEGORIES), st.floats(0, 60)),
    max_size=8,
).map(lambda made: tuple(promise(n, d, c, s) for n, (d, c, s) in enumerate(made)))


@settings(deadline=None)
@given(promises, st.integers(0, 60), st.integers(0, 20))
def test_more_guests_never_leave_less_short(made: tuple[Promise, ...], fewer: int, more: int) -> None:
    small, large = rows(supper(fewer, *made)), rows(supper(fewer + more, *made))

    for category in CATEGORIES:
        assert large[category].target_servings >= small[category].target_servings
        assert large[category].short_servings >= small[category].short_servings
        assert large[category].target_dishes >= small[category].target_dishes


@settings(deadline=None)
@given(promises, st.integers(1, 60))
def test_another_promise_never_leaves_more_short(made: tuple[Promise, ...], people: int) -> None:
    before, after = rows(supper(people, *made)), rows(supper(people, *made, promise(99, "stew", "main", 5)))

    assert all(after[c].short_servings <= before[c].short_servings for c in CATEGORIES)
    assert all(after[c].lacking_servings <= before[c].lacking_servings for c in CATEGORIES)
    assert all(after[c].short_dishes <= before[c].short_dishes for c in CATEGORIES)


@settings(deadline=None)
@given(promises, st.integers(1, 60))
def test_a_row_adds_up(made: tuple[Promise, ...], people: int) -> None:
    for row in rows(supper(people, *made)).values():
        if row.category != "supplies":
            assert row.covered_servings == row.promised_servings
        assert row.short_servings == pytest.approx(max(0, row.target_servings - row.promised_servings), abs=0.02)
        assert row.surplus_servings == pytest.approx(max(0, row.promised_servings - row.target_servings), abs=0.02)
        assert row.lacking_servings == pytest.approx(max(0, row.target_servings - row.covered_servings), abs=0.02)
        assert row.covered_servings <= row.promised_servings
        assert row.too_much_servings <= row.surplus_servings
        assert row.short_dishes == max(0, row.target_dishes - row.promised_dishes)
        assert row.low <= row.target_servings <= row.high or row.high == 0


@settings(deadline=None)
@given(promises)
def test_the_order_of_promises_never_matters(made: tuple[Promise, ...]) -> None:
    assert rows(supper(12, *made)) == rows(supper(12, *reversed(made)))


def test_the_kinds_nobody_brings_are_what_is_left_of_a_whole_set():
    assert kinds_missing([promise(1, "paper plates and cups", "supplies")]) == ("napkins", "cutlery")
    assert kinds_missing([promise(1, "a tablecloth", "supplies")]) == tuple(SETS)
    assert kinds_missing([promise(1, "tableware", "supplies")]) == ()
