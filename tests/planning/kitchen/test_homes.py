"""A cook who makes two dishes at home has one oven there, and one setting of it at a time."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest

from planning.kitchen import PlannedStep, Timeline, timeline
from planning.potluck import Answer, Guest, HeatStep, Promise
from tests.planning.kitchen.builders import WEEK_BEFORE, at, dish, oven, potluck
from tests.planning.kitchen.verifier import faults


def baked(name: str, temp_f: float | None, *, guest: str = "g", pans: int = 1, serve: str = "room",
          **facts: object) -> Promise:  # fmt: skip
    made = dish(name, oven(60, temp_f, at="home", pans=pans, **facts), serve=serve)
    return replace(made, guest=guest)


def plan(*promises: Promise, **facts: object) -> Timeline:
    party = potluck(*promises, **facts)
    found = timeline(party, WEEK_BEFORE, effort=0.1)
    assert faults(party, found, WEEK_BEFORE) == []
    return found


def baking(found: Timeline) -> list[PlannedStep]:
    return [s for s in found.steps if s.kind == "oven"]


def meet(found: Timeline) -> bool:
    return any(a.start < b.end and b.start < a.end for a, b in combinations(baking(found), 2))


def test_two_temperatures_are_never_in_one_homes_oven_at_once() -> None:
    found = plan(baked("tart", 350, movable=False), baked("bread", 425, movable=False))

    first, second = sorted(baking(found), key=lambda s: s.start)
    # 5 minutes and one for each 10 °F: 12.5 minutes from 350 to 425 °F.
    assert (second.start - first.end).total_seconds() / 60 >= 12.5
    assert found.status == "optimal"


def test_near_temperatures_share_a_homes_oven_at_one_setting_with_the_times_adjusted() -> None:
    found = plan(baked("tart", 350, serve="hot"), baked("bread", 375, serve="hot"))

    assert len({s.temp_f for s in baking(found)}) == 1
    assert meet(found)


def test_what_must_not_be_moved_is_baked_at_its_own_setting() -> None:
    found = plan(baked("tart", 350, movable=False), baked("bread", 375, movable=False))

    assert not meet(found)
    assert {s.promise: s.temp_f for s in baking(found)} == {"tart": 350, "bread": 375}


def test_two_hot_dishes_that_cannot_share_are_told_with_a_way_out() -> None:
    found = plan(baked("tart", 350, serve="hot"), baked("bread", 450, serve="hot"))

    (conflict,) = found.conflicts
    assert conflict.rule == "off-heat"
    assert conflict.fix.kind == "cook-ahead"


def test_two_cooks_have_two_ovens() -> None:
    guests = (Guest("g", "G", Answer.YES), Guest("h", "H", Answer.YES))

    found = plan(baked("tart", 350, serve="hot"), baked("bread", 450, guest="h", serve="hot"), guests=guests)

    assert meet(found)
    assert found.conflicts == ()


def test_a_homes_oven_holds_four_pans() -> None:
    found = plan(baked("tart", 350, pans=2), baked("bread", 350, pans=3))

    assert not meet(found)


def test_what_one_dish_alone_asks_for_is_taken_to_be_there() -> None:
    assert plan(baked("tart", 350, pans=9)).status == "optimal"


def test_a_homes_oven_is_preheated_once_the_cook_is_up() -> None:
    found = plan(baked("tart", 350, serve="hot"), baked("bread", 350, serve="hot"))

    assert all(s.start >= at("07:15") for s in baking(found))


def test_a_temperature_nobody_told_is_not_invented_for_a_dish_alone_at_home() -> None:
    assert [s.temp_f for s in baking(plan(baked("tart", None)))] == [None]


@pytest.mark.parametrize("count", [2, 6])
def test_one_pair_of_hands_at_home_never_makes_a_plan_fail(count: int) -> None:
    # Nobody has said that only one person cooks there.
    long = [dish(f"d{n}", HeatStep("prep", 500, at="home"), serve="cold") for n in range(count)]

    assert plan(*long).conflicts == ()
