"""Amounts: the rules and the laws every amount keeps, and kitchen measures beside NIST's."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import timedelta
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.headcount import Headcount, headcount
from planning.portions import Portion, best_packages, find, items, portions, sizes
from planning.portions.measures import MASS_G, VOLUME_ML, NoConversion, convert, kind, readable
from planning.portions.rules import variety
from planning.portions.wanted import STAPLES
from planning.potluck import Answer, Bar, Guest, Party, Promise, Topping
from tests.planning.pantry import SATURDAY, amounts, cookout, total


@pytest.mark.parametrize(
    ("value", "unit", "to", "exact"),
    [
        (1, "lb", "g", 453.59237),  # NIST Handbook 44, Appendix C; SP 811, Appendix B.9
        (1, "oz", "g", 28.349523125),  # SP 811: ounce (avoirdupois)
        (1, "gal", "L", 3.785411784),  # Handbook 44: 231 cubic inches
        (1, "qt", "mL", 946.352946),
        (1, "pt", "mL", 473.176473),
        (1, "cup", "mL", 236.5882365),
        (1, "fl oz", "mL", 29.5735295625),
        (1, "tbsp", "mL", 14.78676478125),
        (1, "tsp", "mL", 4.92892159375),
        (16, "oz", "lb", 1),
        (3, "tsp", "tbsp", 1),
        (16, "tbsp", "cup", 1),
    ],
)
def test_kitchen_measures_are_nists(value: float, unit: str, to: str, exact: float) -> None:
    assert convert(value, unit, to) == pytest.approx(exact, rel=1e-12)


def test_the_factors_are_exact_fractions() -> None:
    assert MASS_G["lb"] == Fraction(45359237, 100000)
    assert VOLUME_ML["gal"] == Fraction(231) * Fraction("16.387064")  # 231 in3, 1 in = 2.54 cm


@given(st.floats(1e-6, 1e9), st.sampled_from(sorted(MASS_G) + sorted(VOLUME_ML)), st.sampled_from(["us", "metric"]))
def test_a_readable_amount_is_the_same_amount(value: float, unit: str, system: str) -> None:
    shown, shown_unit = readable(value, unit, system)

    assert kind(shown_unit) == kind(unit)
    assert convert(shown, shown_unit, unit) == pytest.approx(value, rel=1e-9)


@given(st.floats(1e-3, 1e6), st.sampled_from(sorted(MASS_G)), st.sampled_from(sorted(VOLUME_ML)), st.floats(10, 500))
def test_weight_and_volume_go_there_and_back_by_the_foods_density(
    value: float, mass: str, volume: str, grams_per_cup: float
) -> None:
    there = convert(value, mass, volume, grams_per_cup=grams_per_cup)

    assert convert(there, volume, mass, grams_per_cup=grams_per_cup) == pytest.approx(value, rel=1e-9)


def test_weight_never_becomes_volume_without_a_density() -> None:
    with pytest.raises(NoConversion):
        convert(1, "lb", "cup")


def test_metric_groups_read_grams_and_litres() -> None:
    shown = amounts(replace(cookout(50, "hot dogs", "potato salad", "pulled pork"), units="metric"))

    assert shown["pulled pork"].buy_unit == "kg"
    assert shown["potato salad"].total_unit == "L"
    assert shown["potato salad"].per_eater.endswith(" mL")


def test_us_groups_read_ounces_where_the_source_has_grams() -> None:
    # FDA: 30 g of chips (Q036).
    assert amounts(cookout(10, "chips"))["chips"].per_eater == "1.06 oz"


def test_a_small_child_adds_less_than_a_grown_up() -> None:
    grown, child = cookout(10, "hot dogs"), cookout(10, "hot dogs")
    grown = replace(grown, guests=(*grown.guests, Guest("new", "x", Answer.YES, Party(adults=1))))
    child = replace(child, guests=(*child.guests, Guest("new", "x", Answer.YES, Party(adults=0, toddlers=1))))

    assert total(cookout(10, "hot dogs"), "hot dogs", "each") < total(child, "hot dogs", "each")
    assert total(child, "hot dogs", "each") < total(grown, "hot dogs", "each")


def test_beer_is_reckoned_for_grown_ups_only() -> None:
    family = replace(cookout(10, "beer"), guests=(*cookout(10).guests, Guest("f", "x", Answer.YES, Party(0, 3, 4))))

    assert total(family, "beer", "fl oz") == pytest.approx(total(cookout(10, "beer"), "beer", "fl oz"))


def test_two_mains_are_each_taken_by_fewer() -> None:
    # Two dishes: the total grows to the square root of two, each gets 0.71.
    assert variety("main", 1) == 1
    assert variety("main", 2) == pytest.approx(math.sqrt(2) / 2)
    assert variety("main", 9) * 9 == pytest.approx(1.5)


def test_two_unlike_dishes_of_one_item_are_two_dishes() -> None:
    one = replace(cookout(10), promises=(Promise("p1", "g1", "tuna casserole", "main"),))
    two = replace(one, promises=(*one.promises, Promise("p2", "g2", "chicken casserole", "main")))
    same = replace(one, promises=(*one.promises, Promise("p2", "g2", "casserole, tuna", "main")))

    # Square root of two times one.
    assert amounts(two)["casserole"].per_eater_value == pytest.approx(math.sqrt(2))
    assert amounts(same)["casserole"].per_eater_value == 1


def test_plates_are_as_many_whatever_else_lies_beside_them() -> None:
    laid = cookout(10, "plates", "cups", "napkins", "forks", "ice")

    assert {i: amounts(laid)[i].per_eater for i in ("plates", "cups", "ice")} == {
        "plates": "1.75 each",
        "cups": "3 each",
        "ice": "1.5 lb",
    }


def test_heat_outdoors_asks_for_more_drinks_and_twice_the_ice() -> None:
    mild = cookout(20, "cold drinks", "ice", setting="outdoor", outdoor_temp_f=70)
    hot = cookout(20, "cold drinks", "ice", setting="outdoor", outdoor_temp_f=95)

    # Ice: double outdoors in heat (Q295).
    assert total(hot, "ice", "lb") == pytest.approx(2 * total(mild, "ice", "lb"))
    assert total(hot, "cold drinks", "gal") > total(mild, "cold drinks", "gal")


def test_heat_outside_changes_nothing_indoors() -> None:
    hot = cookout(20, "ice", setting="indoor", outdoor_temp_f=95)

    assert total(hot, "ice", "lb") == total(cookout(20, "ice"), "ice", "lb")


def test_a_longer_evening_asks_for_a_drink_an_hour() -> None:
    # Two drinks in the first hour, one in each later one, 8 fl oz (Q270, Q271).
    five_hours = replace(cookout(10, "cold drinks"), ends_at=SATURDAY + timedelta(hours=5))

    assert total(five_hours, "cold drinks", "fl oz") == pytest.approx(10 * 6 * 8)


def test_between_meals_people_eat_less_of_the_mains() -> None:
    snack = cookout(20, "casserole", mealtime="between-meals")

    assert total(snack, "casserole", "cup") < total(cookout(20, "casserole"), "casserole", "cup")


def test_hearty_eaters_ask_for_up_to_half_as_much_again() -> None:
    hearty = amounts(cookout(20, "casserole", "soda", hearty=1.0))

    # 1.5 for a table of them (Q247); nobody drinks more for it.
    assert hearty["casserole"].per_eater_value == pytest.approx(1.5)
    assert hearty["soda"].total == amounts(cookout(20, "casserole", "soda"))["soda"].total


def test_half_a_crowd_of_hearty_eaters_asks_for_a_quarter_more() -> None:
    assert amounts(cookout(20, "stew", hearty=0.5))["stew"].per_eater_value == pytest.approx(1.25)


def test_what_the_group_learned_of_its_own_appetite_moves_the_portion() -> None:
    eaten = amounts(cookout(20, "casserole", "cake", corrections={"dessert": 0.8}))

    assert eaten["cake"].per_eater_value == pytest.approx(0.8)
    assert eaten["casserole"].per_eater_value == pytest.approx(1.0)


@pytest.mark.parametrize("kinds", [("beer",), ("beer", "wine"), ("beer", "wine", "sangria")])
def test_more_kinds_of_alcohol_are_not_more_alcohol(kinds: tuple[str, ...]) -> None:
    # An hour a drink for who drinks (NIAAA's standard drinks, Q303 and Q304); three hours, six in ten adults.
    drinks = math.fsum(amounts(cookout(20, *kinds))[kind].per_eater_value / items()[kind].amount for kind in kinds)

    assert drinks <= 3 * 0.6 + 1e-9


def test_nobody_is_planned_a_drink_an_hour_all_day_long() -> None:
    whole_day = cookout(20, "beer", ends_at=SATURDAY + timedelta(hours=12))

    assert amounts(whole_day)["beer"].per_eater_value == pytest.approx(6 * 12 * 0.6)


def test_what_is_needed_anyway_is_always_there() -> None:
    assert set(STAPLES) <= set(amounts(cookout(10)))


def test_a_promised_dish_and_a_bars_base_have_figures() -> None:
    potluck = replace(
        cookout(10),
        promises=(Promise("p1", "g1", "Ravi's creamy slaw", "salad", 12),),
        bar=Bar("taco", (Topping("salsa"),)),
    )

    assert {"coleslaw", "tacos"} <= set(amounts(potluck))


def test_an_unheard_of_dish_is_reckoned_like_its_category_and_says_so() -> None:
    potluck = replace(cookout(10), promises=(Promise("p1", "g1", "Zrblk surprise", "dessert", None),))

    found = amounts(potluck)["zrblk surprise"]

    assert found.category == "dessert"
    assert found.source == "common practice, no source"


@given(
    st.floats(0.01, 500),
    st.lists(st.sampled_from(["each1", "each8", "each12", "each50", "dogs10"]), min_size=1, max_size=3, unique=True),
)
def test_packages_hold_the_need_and_no_other_choice_leaves_less(need: float, offered: list[str]) -> None:
    choice = best_packages(need, "each", [sizes()[s] for s in offered])

    held = sum(size.amount * n for size, n in choice)
    assert held >= need - 1e-6
    smallest = min(sizes()[s].amount for s in offered)
    assert held - need < smallest + 1e-6


def test_buns_for_thirty_are_bought_with_the_least_left_over() -> None:
    # 30 = 1 x 12 + ... : 8 + 8 + 8 + 8 = 32 leaves 2; 12 + 12 + 8 = 32 leaves 2 in fewer packages.
    choice = best_packages(30, "each", [sizes()["each8"], sizes()["each12"]])

    assert {size.id: n for size, n in choice} == {"each8": 1, "each12": 2}


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.sampled_from(sorted(items())), max_size=6, unique=True),
    st.integers(0, 40),
    st.integers(0, 10),
    st.sampled_from(["us", "metric"]),
)
def test_more_guests_never_mean_less_of_anything(wanted: list[str], fewer: int, more: int, units: str) -> None:
    small, large = cookout(fewer, *wanted, units=units), cookout(fewer + more, *wanted, units=units)

    for item, portion in amounts(small).items():
        theirs, row = amounts(large)[item], items()[item]
        own = {"grams_per_cup": row.grams_per_cup, "grams_each": row.grams_each}
        assert convert(theirs.buy, theirs.buy_unit, row.buy_unit, **own) >= 0.995 * convert(
            portion.buy, portion.buy_unit, row.buy_unit, **own
        )
        assert _held(theirs) >= _held(portion) * (1 - 1e-9)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.sampled_from(sorted(items())), max_size=8, unique=True), st.integers(0, 60))
def test_packages_always_hold_what_is_to_be_bought(wanted: list[str], people: int) -> None:
    for portion in amounts(cookout(people, *wanted)).values():
        row = items()[portion.item]
        own = {"grams_per_cup": row.grams_per_cup, "grams_each": row.grams_each}
        held = sum(p.count * convert(p.amount, p.unit, portion.buy_unit, **own) for p in portion.packages)
        assert held >= portion.buy * 0.995
        assert portion.left_over >= 0


def test_nobody_coming_needs_nothing() -> None:
    found = amounts(cookout(0, "hot dogs", "ice"))

    assert all(p.total == 0 and p.packages == () for p in found.values())


def test_every_figure_names_its_source() -> None:
    potluck = cookout(20, *sorted(items()))

    assert all(p.source for p in amounts(potluck).values())
    assert find("hot dogs") is not None
    assert isinstance(headcount(potluck), Headcount)


@given(st.lists(st.sampled_from(sorted(items())), max_size=6, unique=True), st.integers(1, 80))
@settings(max_examples=40, deadline=None)
def test_metric_groups_buy_metric_packages_that_hold_enough(wanted: list[str], people: int) -> None:
    potluck = replace(cookout(people), items=tuple(wanted), units="metric")

    for portion in portions(potluck, headcount(potluck)):
        assert portion.buy_unit in {"g", "kg", "mL", "L"} or kind(portion.buy_unit) == "count"
        assert all(p.unit in {"g", "kg", "mL", "L"} or kind(p.unit) == "count" for p in portion.packages)
        if portion.packages:
            row = items()[portion.item]
            own = {"grams_per_cup": row.grams_per_cup, "grams_each": row.grams_each}
            needed = convert(portion.buy, portion.buy_unit, row.buy_unit, **own)
            assert _held(portion) >= needed * 0.995


def test_every_us_size_has_a_metric_one_near_it() -> None:
    for size in sizes().values():
        metric = size.in_system("metric")
        assert kind(metric.unit) == kind(size.unit)
        assert 0.5 <= convert(metric.amount, metric.unit, size.unit) / size.amount <= 1.25


def _held(portion: Portion) -> float:
    """What the packages hold together, in the item's buying unit."""
    row = items()[portion.item]
    own = {"grams_per_cup": row.grams_per_cup, "grams_each": row.grams_each}
    return sum(p.count * convert(p.amount, p.unit, row.buy_unit, **own) for p in portion.packages)
