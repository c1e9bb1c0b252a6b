"""Steps of no length, figures nobody can mean, and dishes cooked at home."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.texts import Voice
from planning.kitchen import Timeline, timeline
from planning.potluck import Answer, Guest, HeatStep, Money, Need, Party, Potluck, Price
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, at, dish, oven, potluck

GOOD = dish("good", oven(40))


def plan(party: Potluck) -> Timeline:
    return timeline(party, WEEK_BEFORE, effort=0)


@pytest.mark.parametrize("kind", ["serve", "rest", "transport", "prep"])
def test_a_step_of_no_minutes_that_needs_no_heat_is_left_away_and_the_dish_is_planned(kind: str) -> None:
    found = plan(potluck(dish("pie", oven(40), HeatStep(kind, 0))))

    assert (found.status, found.conflicts) == ("optimal", ())
    assert [(s.kind, s.step) for s in found.steps] == [("oven", 0)]


def test_steps_after_one_of_no_length_keep_the_numbers_of_the_cooks_own_list() -> None:
    found = plan(potluck(dish("pie", HeatStep("prep", 0), oven(40), HeatStep("rest", 10))))

    assert [(s.kind, s.step) for s in found.steps] == [("oven", 1), ("rest", 2)]


@pytest.mark.parametrize("step", [oven(0), HeatStep("stove", -5), HeatStep("rest", -1), HeatStep("thaw", 0)])
def test_no_minutes_of_heat_and_less_than_none_of_anything_are_a_conflict_of_that_dish_only(step: HeatStep) -> None:
    found = plan(potluck(dish("pie", step), GOOD))

    assert [(c.rule, c.promises) for c in found.conflicts] == [("minutes", ("pie",))]
    assert {s.promise for s in found.steps} == {"good"}


def test_a_dish_of_nothing_but_serving_has_no_timeline_and_no_conflict() -> None:
    assert plan(potluck(dish("cheese", HeatStep("serve", 0)))) == Timeline("optimal", 0, 0)


@given(st.lists(st.tuples(st.integers(0, 3), st.sampled_from(["serve", "rest", "transport", "prep"])), max_size=4))
@settings(deadline=None, max_examples=40)
def test_steps_of_no_length_change_no_time(extra: list[tuple[int, str]]) -> None:
    steps = [HeatStep("prep", 20), oven(40), HeatStep("rest", 10)]
    plain = plan(potluck(dish("pie", *steps)))
    for place, kind in extra:
        steps.insert(place, HeatStep(kind, 0))

    found = plan(potluck(dish("pie", *steps)))

    assert [(s.kind, s.start, s.end) for s in found.steps] == [(s.kind, s.start, s.end) for s in plain.steps]


HUGE = 10**12


@pytest.mark.parametrize(
    ("party", "rule", "about"),
    [
        (potluck(replace(GOOD, servings=float(HUGE))), "servings", ("good",)),
        (potluck(replace(GOOD, servings=0.0)), "servings", ("good",)),
        (potluck(replace(GOOD, servings=float("nan"))), "servings", ("good",)),
        (potluck(replace(GOOD, out_min=1e9)), "out-min", ("good",)),
        (potluck(GOOD, guests=(Guest("g", "G", Answer.YES, Party(HUGE)),)), "party", ()),
        (potluck(GOOD, guests=(Guest("g", "G", Answer.YES, travel_min=HUGE),)), "travel", ()),
        (potluck(GOOD, guests=(Guest("g", "G", Answer.YES, needs=(Need("vegan", HUGE),)),)), "need-count", ()),
        (potluck(GOOD, expected_people=HUGE), "expected", ()),
        (potluck(GOOD, prices={"butter": Price(Money(Decimal(-3)), "lb")}), "price", ()),
    ],
)
def test_a_figure_nobody_can_mean_is_a_conflict_and_the_dish_is_still_planned(
    party: Potluck, rule: str, about: tuple[str, ...]
) -> None:
    found = plan(party)

    assert [(c.rule, c.promises) for c in found.conflicts] == [(rule, about)]
    assert {s.promise for s in found.steps} == {"good"}
    assert all(Voice().say(s).endswith(".") for c in found.conflicts for s in (c.why, c.fix.text))


def test_a_figure_nobody_can_mean_is_told_where_nothing_is_cooked() -> None:
    assert [c.rule for c in plan(potluck(guests=(Guest("g", "G", Answer.YES, Party(HUGE)),))).conflicts] == ["party"]


@pytest.mark.parametrize(("travel", "off"), [(0, "16:45"), (10, "16:50"), (25, "16:35")])
def test_what_is_cooked_at_home_is_off_in_time_for_the_way(travel: int, off: str) -> None:
    chili = dish("chili", HeatStep("slow-cooker-low", 400, at="home"))

    party = potluck(chili, guests=(Guest("g", "G", Answer.YES, travel_min=travel),))

    found = timeline(party, WEEK_BEFORE, effort=0.1)
    assert (found.status, found.steps[-1].end) == ("optimal", at(off))


def test_the_hosts_home_is_the_venue() -> None:
    chili = dish("chili", HeatStep("slow-cooker-low", 400, at="home"))

    assert plan(potluck(chili, host="g")).steps[-1].end == SERVING


def test_a_way_the_cook_lists_is_not_reckoned_twice() -> None:
    stew = dish("stew", HeatStep("stove", 60, at="home"), HeatStep("transport", 20, at="home"))

    assert plan(potluck(stew)).steps[-1].end == SERVING


def test_a_dish_that_can_only_just_be_ready_at_home_is_not_called_late() -> None:
    chili = dish("chili", HeatStep("stove", 60, at="home"))

    found = timeline(potluck(chili), SERVING - timedelta(minutes=65), effort=0.05)

    assert [d.late_min for d in found.dishes] == [0]
