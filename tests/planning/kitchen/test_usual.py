"""What is planned of a dish whose cook said nothing, and what is only asked about."""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.dishes import catalogue
from planning.kitchen import timeline
from planning.kitchen.usual import estimates, heated_at, roast_turkey, steps_of
from planning.potluck import Answer, Guest, HeatStep, Promise, SlowCooker
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, dish, kitchen, oven, potluck


# Published USDA timetable for whole turkeys at 325 °F, hours (safety.csv COOK-27 to COOK-36, read at its source):
# 8-12 lb 2¾-3, 12-14 lb 3-3¾, 14-18 lb 3¾-4¼, 18-20 lb 4¼-4½, 20-24 lb 4½-5; stuffed 3-3½, 3½-4, 4-4¼, 4¼-4¾, 4¾-5¼.
@pytest.mark.parametrize(
    ("lb", "hours", "hours_stuffed"),
    [(10, 3, 3.5), (13, 3.75, 4), (16, 4.25, 4.25), (19, 4.5, 4.75), (22, 5, 5.25)],
)
def test_a_turkey_roasts_as_long_as_the_published_timetable_says(lb: float, hours: float, hours_stuffed: float) -> None:
    assert roast_turkey(lb, stuffed=False)[1] == hours * 60
    assert roast_turkey(lb, stuffed=True)[1] == hours_stuffed * 60


@pytest.mark.parametrize(("lb", "row"), [(12, "COOK-29"), (14, "COOK-31"), (18, "COOK-33"), (24, "COOK-35")])
def test_where_two_rows_meet_the_heavier_counts(lb: float, row: str) -> None:
    assert roast_turkey(lb, stuffed=False)[0] == row


@given(st.floats(0.5, 40), st.floats(0.5, 40), st.booleans())
def test_a_heavier_bird_never_roasts_for_less_and_stuffing_never_shortens_it(a: float, b: float, stuffed: bool) -> None:
    light, heavy = sorted((a, b))

    assert roast_turkey(light, stuffed=stuffed)[1] <= roast_turkey(heavy, stuffed=stuffed)[1]
    assert roast_turkey(a, stuffed=False)[1] <= roast_turkey(a, stuffed=True)[1]


@pytest.mark.parametrize(
    ("name", "facts", "minutes"),
    [
        ("roast turkey", {"frozen_lb": 10.0}, 180),
        ("roast turkey", {"quantity": "22 lb"}, 300),
        ("roast turkey", {"quantity": "6 kg"}, 225),  # 13.2 lb
        ("stuffed turkey", {"quantity": "13 lb"}, 240),
        ("turkey", {}, 255),  # nobody said: 14-18 lb
    ],
)
def test_a_turkey_nobody_gave_times_for_is_planned_by_its_weight(
    name: str, facts: dict[str, object], minutes: int
) -> None:
    bird = Promise("t", "g", name, "main", **facts)  # type: ignore[arg-type]

    found = timeline(potluck(bird, host="g"), WEEK_BEFORE, effort=0)

    assert [(s.end - s.start) for s in found.steps if s.kind == "oven"] == [timedelta(minutes=minutes)]


def test_the_cooks_own_minutes_count_before_any_table() -> None:
    bird = dish("roast turkey", oven(100, 325), quantity="22 lb")

    assert steps_of(potluck(bird), bird) == (bird.heat, "cook")


def test_the_hosts_usual_dish_takes_the_venues_oven_and_a_guests_their_own() -> None:
    bird = Promise("t", "g", "roast turkey", "main")

    places = [
        {s.appliance for s in timeline(potluck(bird, host=host), WEEK_BEFORE, effort=0).steps if s.kind == "oven"}
        for host in ("g", None)
    ]

    assert places == [{"oven:0"}, {"home"}]


def test_a_bird_heavier_than_the_timetable_is_said_and_still_planned() -> None:
    bird = Promise("t", "g", "roast turkey", "main", quantity="40 lb")

    found = timeline(potluck(bird, host="g"), WEEK_BEFORE, effort=0)

    assert [(c.rule, c.fix.kind) for c in found.conflicts] == [("too-heavy", "smaller")]
    assert {s.promise for s in found.steps} == {"t"}


def test_forty_pounds_of_potatoes_are_no_turkey() -> None:
    potatoes = dish("roast potatoes", oven(60, 400), quantity="40 lb")

    assert timeline(potluck(potatoes), WEEK_BEFORE, effort=0).conflicts == ()


def test_common_practice_minutes_plan_nothing_and_become_a_question() -> None:
    party = potluck(Promise("l", "g", "lasagna", "main"))

    assert timeline(party, WEEK_BEFORE, effort=0).steps == ()
    assert [(e.promise, e.source, [s.kind for s in e.steps]) for e in estimates(party)] == [
        ("l", "practice", ["oven", "rest"])
    ]


@pytest.mark.parametrize(
    "promise",
    [
        Promise("a", "g", "lasagna", "main", heat=()),  # its cook said that it needs none
        Promise("a", "g", "lasagna", "main", serve="cold"),
        Promise("a", "g", "potato salad", "side"),  # is not served hot
        Promise("a", "g", "roast turkey", "main"),  # has a sourced time, which is planned
        Promise("a", "g", "that thing of Ada's", "main"),  # nobody knows it
        Promise("a", "no", "lasagna", "main"),  # cannot come
    ],
)
def test_what_needs_no_heat_or_is_known_is_not_asked_about(promise: Promise) -> None:
    guests = (Guest("g", "G", Answer.YES), Guest("no", "N", Answer.NO))

    assert estimates(potluck(promise, guests=guests)) == ()


def test_an_estimate_its_cook_takes_over_is_planned() -> None:
    promise = Promise("l", "g", "lasagna", "main")
    (usual,) = estimates(potluck(promise))
    taken = dish("l", *heated_at(usual.steps, "venue"))

    found = timeline(potluck(taken), WEEK_BEFORE, effort=0)

    assert [(s.kind, s.appliance) for s in found.steps] == [("oven", "oven:0"), ("rest", None)]


def test_at_least_120_dishes_carry_a_time_from_a_source_or_common_practice() -> None:
    timed = {d.name for d in catalogue() if d.heat and d.times_known}

    assert len(timed) >= 120


@pytest.mark.parametrize(("quantity", "cooker"), [("4 qt", 1), ("2 qt", 0), ("9 qt", 0), (None, 0)])
def test_a_dish_goes_into_a_slow_cooker_it_fills_to_two_thirds_at_most(quantity: str | None, cooker: int) -> None:
    # SLOW-03: 4 qt are two thirds of 6 qt, and too much for 4 qt. What fits in none goes into any, with a warning.
    stew = dish("stew", HeatStep("slow-cooker-low", 300), quantity=quantity)
    cookers = (SlowCooker(4), SlowCooker(6))

    found = timeline(potluck(stew, kitchen=kitchen(slow_cookers=cookers)), WEEK_BEFORE, effort=0)

    assert found.steps[0].appliance == f"slow-cooker:{cooker}"
    assert found.conflicts == ()


def test_a_way_nobody_has_told_does_not_by_itself_keep_a_dish_off_heat_too_long() -> None:
    roast = dish("roast", oven(60, at="home"), HeatStep("rest", 20, at="home"))

    found = timeline(potluck(roast), WEEK_BEFORE, effort=0)

    assert (found.conflicts, found.dishes[0].off_heat_min) == ((), 30)
    assert found.steps[-1].end <= SERVING
