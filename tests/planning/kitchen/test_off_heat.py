"""Half an hour off heat is half an hour, whatever the grid."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.kitchen import Timeline, timeline
from planning.potluck import HeatStep, Potluck
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, dish, kitchen, oven, potluck
from tests.planning.kitchen.verifier import faults


def plan(*steps: HeatStep) -> Timeline:
    party = potluck(dish("roast", *steps))
    found = timeline(party, WEEK_BEFORE, effort=0.05)
    assert faults(party, found, WEEK_BEFORE) == []
    return found


@settings(deadline=None, max_examples=60, derandomize=True)
@given(st.integers(1, 200), st.integers(1, 30))
def test_a_rest_of_up_to_half_an_hour_is_never_called_too_long(baked: int, rest: int) -> None:
    found = plan(oven(baked), HeatStep("rest", rest))

    assert found.status == "optimal"
    assert found.dishes[0].off_heat_min <= 30


@settings(deadline=None, max_examples=30, derandomize=True)
@given(st.integers(1, 100), st.integers(31, 60))
def test_a_longer_rest_is_told_by_the_minutes_it_is_longer(baked: int, rest: int) -> None:
    found = plan(oven(baked), HeatStep("rest", rest))

    # The table is laid on the grid's five minutes: at most four of them are lost.
    assert rest - 30 <= found.dishes[0].unsafe_min <= rest - 30 + 4


@pytest.mark.parametrize(("baked", "rest", "way"), [(43, 11, 16), (41, 12, 18), (44, 1, 29), (60, 16, 11)])
def test_a_rest_and_the_way_count_as_long_as_they_take(baked: int, rest: int, way: int) -> None:
    steps = (HeatStep("oven", baked, 350, at="home"), HeatStep("rest", rest, at="home"))

    found = plan(*steps, HeatStep("transport", way, at="home"))

    assert found.status == "optimal"
    assert found.dishes[0].off_heat_min <= 30


@pytest.mark.parametrize("hands", [3, 10])
def test_hands_are_taken_for_a_dish_that_begins_between_two_slots(hands: int) -> None:
    # One cook, two roasts of 42 minutes, both rested for half an hour.
    roast = (oven(42, 350, movable=False, hands_min=hands), HeatStep("rest", 30))
    roasts = (dish(n, *roast) for n in "ab")
    party: Potluck = potluck(*roasts, kitchen=kitchen(cooks=1))
    found = timeline(party, WEEK_BEFORE, effort=0.1)

    assert faults(party, found, WEEK_BEFORE) == []


def test_an_oven_that_cools_longer_than_half_an_hour_to_keep_warm_is_waited_for() -> None:
    # From 475 to 170 °F: 5 minutes and one for each 10 °F, 35.5 in all.
    found = plan(oven(60, 475), HeatStep("keep-warm", 20, 170))

    assert found.status == "optimal"
    assert found.dishes[0].ready_at <= SERVING


def test_hands_in_the_middle_of_a_stay_in_the_oven_are_taken_when_they_are_needed() -> None:
    turned = (oven(7), oven(8, hands_min=5))
    party = potluck(*(dish(f"d{n}", *turned) for n in range(3)), kitchen=kitchen(cooks=1))
    found = timeline(party, WEEK_BEFORE, effort=0.1)

    assert faults(party, found, WEEK_BEFORE) == []
