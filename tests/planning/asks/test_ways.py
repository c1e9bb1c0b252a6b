"""The three ways for every gap, their reasons and what they cost."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.texts.catalogue import catalogue as texts
from planning.asks import asks, problem_of
from planning.diets import diets
from planning.potluck import CATEGORIES, Declined, Money, Party, Price, Promise
from tests.planning.asks.builders import CROWD, HOST, MAINS, NOW, START, Row, chosen, someone, supper


def test_every_gap_has_the_three_ways() -> None:
    found = asks(supper(HOST, *CROWD), (Row("main", 10, 1), Row("side", 20, 2)), (), NOW)

    for category in ("main", "side"):
        assert {ask.how for ask in found if ask.category == category} == {"ask", "host-cooks", "buy"}


def test_what_nobody_can_be_asked_for_is_bought_within_the_budget() -> None:
    rich = supper(budget=Money(Decimal(500)))
    poor = supper(budget=Money(Decimal(1)))

    assert [ask.how for ask in chosen(asks(rich, MAINS, (), NOW))] == ["buy"]
    assert chosen(asks(poor, MAINS, (), NOW)) == []
    assert [ask.why.facts["over"] for ask in asks(poor, MAINS, (), NOW) if ask.how == "buy"] == ["yes"]


def test_other_ways_are_asked_of_nobody() -> None:
    # The other ways of one plan come back as the asks made before: only who was really asked is kept.
    potluck = supper(HOST, someone("ravi"), someone("mei"))
    offered = [ask for ask in asks(potluck, (Row("main", 10, 1), Row("side", 10, 1)), (), NOW) if ask.alternative]
    before = [
        {"guest": a.guest, "how": a.how, "category": a.category, "dish": a.dish, "key": a.why.key} for a in offered
    ]

    built = problem_of(replace(potluck, previous={"asks": before}), (Row("main", 10, 1), Row("side", 10, 1)), (), NOW)

    assert offered
    assert built.problem.asked == {}


def test_what_somebody_is_asked_for_is_not_bought_as_well() -> None:
    found = asks(supper(someone("ravi")), (Row("supplies", 30, 3),), (), NOW)

    assert len({ask.dish for ask in found}) == len(found)


def test_in_a_currency_without_prices_no_cost_is_guessed() -> None:
    found = asks(supper(budget=Money(Decimal(50), "EUR")), MAINS, (), NOW)

    assert {ask.cost for ask in found if ask.how == "buy"} == {None}


def test_a_metric_group_which_named_no_currency_hears_no_dollars() -> None:
    metric = supper(units="metric")

    assert {ask.cost for ask in asks(metric, MAINS, (), NOW)} == {None}
    assert all(ask.cost for ask in asks(replace(metric, units="us"), MAINS, (), NOW))


def test_the_hosts_own_price_is_in_the_hosts_currency() -> None:
    found = asks(supper(units="metric"), MAINS, (), NOW)
    prices = {ask.dish: Price(Money(Decimal("2.50"), "EUR"), "serving") for ask in found}

    (bought,) = asks(supper(units="metric", prices=prices), MAINS, (), NOW)

    assert bought.cost == Money(Decimal("2.50") * Decimal(bought.servings), "EUR")


def test_every_reason_has_words() -> None:
    potluck = supper(HOST, someone("ravi", diets=("vegan",)), someone("mei"), budget=Money(Decimal(20)))
    english = texts("en")

    for ask in asks(potluck, (Row("main", 30, 3), Row("drink", 90, 2)), diets(potluck), NOW):
        assert english.format(ask.why.key, dict(ask.why.facts))
    assert english.format("asks-why-instead", {"servings": 3})


def test_the_host_cooks_and_buys_no_single_portion() -> None:
    found = asks(supper(someone("host")), (Row("main", 2, 1),), (), NOW)

    assert found
    assert all(ask.servings >= 4 for ask in found)


@pytest.mark.parametrize("category", CATEGORIES)
def test_a_gap_of_any_category_can_be_asked_for_cooked_or_bought(category: str) -> None:
    found = asks(supper(HOST, *CROWD), (Row(category, 10, 1),), (), NOW)

    # Nobody cooks napkins: the host may be asked for them like anybody.
    assert {ask.how for ask in found} | {"host-cooks"} == {"ask", "buy", "host-cooks"}
    assert category == "supplies" or "host-cooks" in {ask.how for ask in found}


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 4), st.integers(1, 120), st.integers(1, 60), st.integers(0, 90))
def test_what_is_chosen_never_costs_more_than_the_budget(people: int, main: int, dessert: int, budget: int) -> None:
    crowd = tuple(someone(f"g{i}") for i in range(people))
    potluck = supper(*crowd, budget=Money(Decimal(budget)))

    found = asks(potluck, (Row("main", main, 2), Row("dessert", dessert, 1)), (), NOW, effort=0)

    assert sum(ask.cost.amount for ask in found if not ask.alternative and ask.cost) <= budget


def test_what_the_host_cooks_for_people_with_needs_counts_against_the_budget() -> None:
    # Nobody but the host is there to be asked, and the host brings something else already.
    crowd = (someone("host", party=Party(1)), someone("mei", diets=("vegan",), added_by="host"))
    pie = Promise("p1", "host", "pork pie", "main", ingredients=("pork", "flour"))
    rich, poor = (supper(*crowd, promises=(pie,), budget=Money(Decimal(amount))) for amount in (500, 1))

    for potluck, within in ((rich, True), (poor, False)):
        found = [ask for ask in asks(potluck, (), diets(potluck), NOW) if "vegan" in ask.needs]
        assert found
        assert {ask.alternative for ask in found} == {not within}


def test_one_dish_that_suits_several_needs_is_cooked_once() -> None:
    crowd = (
        someone("host", party=Party(1)),
        someone("mei", diets=("vegan",), added_by="host"),
        someone("ravi", diets=("vegetarian",), added_by="host"),
    )
    pie = Promise("p1", "host", "pork pie", "main", ingredients=("pork", "flour"))
    potluck = supper(*crowd, promises=(pie,))

    found = [ask for ask in asks(potluck, (), diets(potluck), NOW) if ask.category == "main" and ask.needs]

    assert [set(ask.needs) for ask in found] == [{"vegan", "vegetarian"}]


def test_every_reason_is_one_short_line() -> None:
    potluck = supper(HOST, someone("ravi", diets=("vegan",)), *CROWD, budget=Money(Decimal(20)))
    english = texts("en")

    rows = tuple(Row(category, 30, 3) for category in CATEGORIES)
    for ask in asks(potluck, rows, diets(potluck), NOW):
        said = english.format(ask.why.key, dict(ask.why.facts))
        assert "\n" not in said
        assert len(said) <= 120


def test_after_a_no_somebody_else_is_asked_and_the_others_stay() -> None:
    potluck = supper(HOST, *CROWD)
    rows = (Row("main", 20, 2), Row("dessert", 20, 2))
    first = {ask.guest: ask for ask in chosen(asks(potluck, rows, (), NOW)) if ask.how == "ask"}
    gone, ask = next(iter(first.items()))
    before = [{"guest": a.guest, "how": a.how, "category": a.category, "dish": a.dish} for a in first.values()]

    declined = replace(potluck, declined=(Declined(gone or "", ask.category),), previous={"asks": before})
    then = {a.guest: a for a in chosen(asks(declined, rows, (), NOW)) if a.how == "ask"}

    assert gone not in then or then[gone].category != ask.category
    assert {(who, a.dish) for who, a in first.items() if who != gone} <= {(who, a.dish) for who, a in then.items()}


def test_the_host_without_an_oven_and_short_of_time_still_has_a_way_of_their_own() -> None:
    host = someone("host", has_oven=False)

    found = asks(supper(host, *CROWD), (Row("main", 20, 2),), (), START - timedelta(minutes=150))

    assert "host-cooks" in {ask.how for ask in found}
