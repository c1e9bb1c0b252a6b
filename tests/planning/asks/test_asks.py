"""Asks of whole potlucks: who is asked for what, and the three ways for every gap."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.asks import asks, problem_of
from planning.diets import DietRow, diets, usually_fits
from planning.dishes import dish_named
from planning.potluck import (
    Answer,
    Declined,
    Guest,
    Party,
    PastAnswer,
    Potluck,
    Promise,
)
from tests.planning.asks.builders import CROWD, HOST, MAINS, NOW, START, Row, chosen, someone, supper


def asked(potluck: Potluck, rows: tuple[Row, ...] = MAINS, now: object = NOW, **facts: object) -> set[str]:
    return {ask.guest for ask in asks(potluck, rows, (), now, **facts) if ask.how == "ask"}  # type: ignore[arg-type]


def test_nothing_short_means_nobody_is_asked() -> None:
    assert asks(supper(HOST, someone("ravi")), (Row("main"),), (), NOW) == ()


@pytest.mark.parametrize(
    "guest",
    [
        someone("ravi", answer=Answer.NO),  # not coming
        someone("ravi", party=Party(0, 0, 2)),  # children only
        someone("ravi", added_by="mei"),  # has no account to be asked through
        someone("ravi", party=Party(1), has_oven=False, can_cook=False, travel_min=90),  # can make no main
    ],
)
def test_who_cannot_be_asked_is_not_asked(guest: object) -> None:
    assert asked(supper(guest)) == set()  # type: ignore[arg-type]


def test_the_host_is_an_ordinary_person_who_cooks_instead_of_being_asked() -> None:
    found = chosen(asks(supper(HOST), MAINS, (), NOW))

    assert [(ask.guest, ask.how) for ask in found] == [("host", "host-cooks")]


def test_a_dish_of_eight_hours_is_not_asked_for_five_hours_before() -> None:
    potluck = supper(*(someone(f"g{i}") for i in range(40)))

    found = asks(potluck, (Row("main", 300, 30),), (), START - timedelta(hours=5))

    made = [dish_named(ask.dish) for ask in found if ask.how == "ask"]
    assert made
    assert all(dish is not None and dish.minutes is not None and dish.minutes <= 5 * 60 for dish in made)


def test_the_way_there_counts_against_the_time_left() -> None:
    near, far = someone("near"), someone("far", travel_min=59)

    assert asked(supper(near, far), now=START - timedelta(minutes=175)) <= {"near"}


def test_without_an_oven_only_dishes_without_one_are_asked_for() -> None:
    potluck = supper(*(someone(f"g{i}", has_oven=False) for i in range(10)))

    found = [ask for ask in asks(potluck, (Row("main", 60, 5),), (), NOW) if ask.how == "ask"]

    assert found
    assert not any(dish.needs_oven for ask in found if (dish := dish_named(ask.dish)))


def test_who_declined_is_not_asked_again_for_the_same() -> None:
    potluck = supper(someone("ravi"), someone("mei"), declined=(Declined("ravi", "main"),))

    assert asked(potluck) == {"mei"}


def test_who_declined_one_category_may_be_asked_for_another() -> None:
    potluck = supper(someone("ravi"), declined=(Declined("ravi", "main"),))

    assert asked(potluck, (Row("dessert", 10, 1),)) == {"ravi"}


def test_the_past_makes_the_turns_fair() -> None:
    past = tuple(PastAnswer(f"2027-0{m}-01", "ravi", "dessert", "yes", True) for m in range(1, 5))
    potluck = supper(someone("ravi"), someone("mei"), history=past)

    assert asked(potluck) == {"mei"}


def test_who_brings_something_already_is_asked_after_who_brings_nothing() -> None:
    potluck = supper(someone("ravi"), someone("mei"), promises=(Promise("p1", "ravi", "slaw", "salad"),))

    assert asked(potluck) == {"mei"}


def test_who_brings_a_main_is_not_asked_for_another_main() -> None:
    potluck = supper(someone("ravi"), promises=(Promise("p1", "ravi", "chili", "main", 4),))

    assert asked(potluck) == set()
    assert asked(potluck, (Row("side", 10, 1),)) == {"ravi"}


def test_a_sure_answer_is_asked_before_an_unsure_one() -> None:
    potluck = supper(someone("maybe", answer=Answer.MAYBE), someone("none", answer=Answer.NONE), someone("yes"))

    assert asked(potluck) == {"yes"}


def test_a_guest_with_a_need_gets_a_dish_that_usually_suits_it() -> None:
    potluck = supper(HOST, someone("ravi", diets=("vegan",)), someone("mei"))

    found = chosen(asks(potluck, MAINS, diets(potluck), NOW))

    mains = [dish for ask in found if ask.category == "main" and (dish := dish_named(ask.dish))]
    assert any(usually_fits(dish, "vegan") for dish in mains)


def test_people_with_needs_are_counted_and_never_named() -> None:
    potluck = supper(HOST, someone("ravi", diets=("vegan",)), someone("mei"))

    for ask in asks(potluck, MAINS, diets(potluck), NOW):
        assert not {"ravi", "Ravi"} & {str(value) for value in ask.why.facts.values()}


def test_a_dish_to_ask_about_comes_before_another_dish() -> None:
    potluck = supper(HOST, someone("ravi"), someone("mei", diets=("vegan",)))
    row = DietRow("mei", "vegan", "main", (), ("p1",), True)  # p1 may suit them

    assert asks(potluck, (), (row,), NOW) == ()


def test_an_ask_that_stands_is_kept() -> None:
    potluck = supper(someone("ravi"), someone("mei"))
    before = {"asks": [{"guest": "mei", "how": "ask", "category": "main", "dish": "chili"}]}
    past = (PastAnswer("2027-01-01", "mei", "side", "yes", True),)  # by fairness it would be ravi's turn

    found = chosen(asks(replace(potluck, previous=before, history=past), MAINS, (), NOW))

    assert [(ask.guest, ask.dish) for ask in found] == [("mei", "chili")]


def test_a_fulfilled_ask_is_not_asked_again() -> None:
    before = {"asks": [{"guest": "mei", "how": "ask", "category": "main", "dish": "chili"}]}
    potluck = supper(
        someone("ravi"), someone("mei"), previous=before, promises=(Promise("p", "mei", "chili", "main", 10),)
    )

    assert asked(potluck) == {"ravi"}


def test_dishes_promised_already_are_not_asked_for() -> None:
    promises = (
        Promise("p1", "host", "chocolate brownies", "dessert"),
        Promise("p2", "host", "choc chip cookies", "dessert"),
    )
    potluck = supper(*(someone(f"g{i}") for i in range(12)), promises=promises)

    found = asks(potluck, (Row("dessert", 100, 8),), (), NOW)

    assert not {"brownies", "chocolate chip cookies"} & {ask.dish for ask in found}


def test_nobody_is_asked_for_the_dish_of_another() -> None:
    potluck = supper(*(someone(f"g{i}") for i in range(12)))

    dishes = [ask.dish for ask in asks(potluck, (Row("dessert", 100, 8),), (), NOW) if ask.how == "ask"]

    assert len(dishes) == len(set(dishes)) >= 8


@settings(max_examples=25, deadline=None)
@given(
    st.lists(
        st.tuples(st.sampled_from(list(Answer)), st.integers(0, 3), st.integers(0, 120), st.booleans()), max_size=12
    ),
    st.integers(1, 60),
    st.integers(1, 2000),
)
def test_asks_keep_their_rules_whatever_the_crowd(
    crowd: list[tuple[Answer, int, int, bool]], short: int, minutes: int
) -> None:
    guests = tuple(
        someone(f"g{i}", answer=answer, party=Party(adults), travel_min=travel, has_oven=oven)
        for i, (answer, adults, travel, oven) in enumerate(crowd)
    )
    now = START - timedelta(minutes=minutes)

    found = asks(supper(*guests), (Row("main", short, 1), Row("dessert", short, 1)), (), now, effort=0)

    people = {guest.id: guest for guest in guests}
    mine = [ask.guest for ask in found if ask.how == "ask"]
    assert len(mine) == len(set(mine))
    for ask in found:
        if ask.how == "ask":
            guest, dish = people[ask.guest or ""], dish_named(ask.dish)
            assert guest.answer is not Answer.NO
            assert guest.party.adults > 0
            assert dish is not None
            assert dish.minutes is not None
            assert dish.minutes <= minutes - guest.travel_min
            assert guest.has_oven or not dish.needs_oven


def test_the_same_potluck_gives_the_same_asks() -> None:
    potluck = supper(HOST, *(someone(f"g{i}") for i in range(8)))
    rows = (Row("main", 30, 3), Row("side", 30, 3))

    assert asks(potluck, rows, (), NOW, seed=4) == asks(potluck, rows, (), NOW, seed=4)


def test_the_solver_is_loaded_only_when_needed() -> None:
    code = "import sys, planning.asks; sys.exit('ortools' in sys.modules)"

    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_after_one_drop_out_most_asks_stand() -> None:
    crowd = tuple(someone(f"g{i}", has_oven=i % 4 > 0, travel_min=10 * (i % 3)) for i in range(24))
    rows = (Row("main", 40, 4), Row("side", 40, 4), Row("dessert", 40, 4))
    first = {ask.guest: ask for ask in chosen(asks(supper(*crowd), rows, (), NOW))}
    gone = sorted(first)[0]
    left = tuple(replace(guest, answer=Answer.NO) if guest.id == gone else guest for guest in crowd)
    before = {
        "asks": [{"guest": a.guest, "how": a.how, "category": a.category, "dish": a.dish} for a in first.values()]
    }

    then = {ask.guest: ask for ask in chosen(asks(supper(*left, previous=before), rows, (), NOW))}

    moved = [who for who, ask in first.items() if who != gone and (who not in then or then[who].dish != ask.dish)]
    assert len(first) >= 12
    assert len(moved) <= len(first) // 10


def test_who_was_asked_for_a_side_is_not_asked_for_another_side() -> None:
    before = {"asks": [{"guest": "mei", "how": "ask", "category": "side", "dish": "rice"}]}
    potluck = supper(someone("mei"), previous=before)

    found = chosen(asks(potluck, (Row("side", 14, 1),), (), NOW))  # rice is for 12, other sides for 14

    assert [ask.dish for ask in found if ask.guest == "mei"] == ["rice"]


def test_next_to_nothing_short_is_asked_of_nobody() -> None:
    assert asks(supper(someone("ravi")), (Row("side", 1, 0, 26),), (), NOW) == ()


def test_few_kinds_are_asked_for_even_when_servings_are_nearly_enough() -> None:
    assert [ask.how for ask in chosen(asks(supper(someone("ravi")), (Row("side", 1, 1, 26),), (), NOW))] == ["ask"]


def test_who_brings_something_is_not_told_to_bring_nothing() -> None:
    pie = Promise("p1", "ravi", "apple pie", "dessert")
    found = chosen(asks(supper(someone("ravi"), promises=(pie,)), (Row("side", 10, 1),), (), NOW))

    assert [ask.why.facts["because"] for ask in found] == ["free"]


def test_an_absurd_crowd_is_answered() -> None:
    assert asks(supper(someone("ravi")), (Row("main", 1e30, 10),), (), NOW)


def test_hot_dishes_are_not_asked_of_people_from_far_away() -> None:
    far = supper(*(someone(f"g{i}", travel_min=90) for i in range(6)))

    found = [ask for ask in asks(far, (Row("main", 40, 4), Row("side", 40, 4)), (), NOW) if ask.how == "ask"]

    assert found
    assert not any(dish.serve == "hot" for ask in found if (dish := dish_named(ask.dish)))


@pytest.mark.parametrize(
    "guest",
    [
        someone("ravi", travel_min=90),  # brings nothing hot
        someone("ravi", has_oven=False),
        someone("ravi", can_cook=False),
    ],
)
def test_who_can_make_little_is_asked_for_something_they_can_make(guest: Guest) -> None:
    # The host alone could make all the dishes thought of first.
    for category in ("salad", "dessert", "bread", "drink"):
        found = asks(supper(HOST, guest), (Row(category, 40, 4),), (), NOW)
        assert "ravi" in {ask.guest for ask in found if ask.how == "ask"}


def test_shortly_before_the_start_quick_things_are_asked_for() -> None:
    found = chosen(asks(supper(*CROWD), (Row("salad", 20, 2),), (), START - timedelta(minutes=100)))

    assert "ask" in {ask.how for ask in found}


def test_dishes_alike_in_every_way_that_matters_are_one_template() -> None:
    built = problem_of(supper(HOST, *CROWD), (Row("main", 60, 6), Row("dessert", 60, 6)), (), NOW)

    names = [name for template in built.problem.templates for name in template.dishes]
    kinds = [(t.category, t.servings, t.effort, t.fits) for t in built.problem.templates]
    who = [frozenset(p.id for p in built.problem.people if t in p.can) for t in range(len(kinds))]
    assert len(names) == len(set(names)) > len(kinds)
    assert len(set(zip(kinds, who, strict=True))) == len(kinds)
