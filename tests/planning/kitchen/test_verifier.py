"""The verifier itself: for every kitchen rule a timeline that breaks it, and only just, is seen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta

import pytest

from planning.kitchen import DishTimes, PlannedStep, Timeline, timeline
from planning.potluck import Circuit, HeatStep, Microwave, Potluck, SlowCooker
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, at, dish, kitchen, oven, potluck
from tests.planning.kitchen.verifier import faults

PIE = dish("pie", HeatStep("prep", 20), oven(40, pans=2), HeatStep("rest", 10), arrives_at=at("15:00"))
BAKE = dish("bake", oven(40, 350, movable=False))
STEW = dish("stew", HeatStep("slow-cooker-low", 300, watts=700, own_appliance=True))
CHILI = dish("chili", HeatStep("slow-cooker-low", 300, watts=700, own_appliance=True))
SOUP = dish("soup", HeatStep("stove", 30, hands_min=10))
PEAS = dish("peas", HeatStep("microwave", 10))
PARTY = potluck(
    PIE, BAKE, STEW, CHILI, SOUP, PEAS,
    kitchen=kitchen(burners=1, cooks=1, circuits=(Circuit(outlets=2), Circuit()), slow_cookers=(SlowCooker(),),
                    microwaves=(Microwave(900),)),
)  # fmt: skip
GOOD = timeline(PARTY, WEEK_BEFORE, effort=0.3)


def with_step(promise: str, change: Callable[[PlannedStep], PlannedStep], kind: str | None = None) -> Timeline:
    """The good timeline with the steps of one dish (of one kind) changed."""
    steps = tuple(change(s) if s.promise == promise and kind in (None, s.kind) else s for s in GOOD.steps)
    return replace(GOOD, steps=steps)


def moved(minutes: int) -> Callable[[PlannedStep], PlannedStep]:
    by = timedelta(minutes=minutes)
    return lambda s: replace(s, start=s.start + by, end=s.end + by)


def to(start: str, minutes: int) -> Callable[[PlannedStep], PlannedStep]:
    return lambda s: replace(s, start=at(start), end=at(start) + timedelta(minutes=minutes))


def test_the_good_one_breaks_nothing() -> None:
    assert GOOD.status == "optimal"
    assert faults(PARTY, GOOD, WEEK_BEFORE) == []


@pytest.mark.parametrize(
    ("broken", "said"),
    [
        (with_step("pie", moved(-300)), "before arrival"),
        (with_step("pie", to("16:30", 20), "prep"), "begins before step"),  # in order and not at once
        (with_step("soup", to("04:00", 30)), "sleeps"),
        (with_step("soup", moved(3)), "minutes late"),  # everything ends by serving
        (with_step("soup", lambda s: replace(s, end=s.end - timedelta(minutes=5))), "takes"),
        (with_step("bake", lambda s: replace(s, temp_f=375.0)), "too far"),  # 0 where it must not be moved
        (with_step("pie", lambda s: replace(s, temp_f=380.0), "oven"), "too far"),  # more than 25 °F
        (with_step("bake", lambda s: replace(s, temp_f=None)), "no set-point"),
        (with_step("pie", lambda s: replace(s, pans=3), "oven"), "pans told"),
        (with_step("bake", to("07:05", 40)), "preheat"),
        (with_step("pie", lambda s: replace(s, appliance=None), "oven"), "without an oven"),
        (with_step("soup", lambda s: replace(s, appliance="burner:1")), "there is no burner:1"),
        (with_step("peas", lambda s: replace(s, circuit=None)), "not plugged in"),
        (with_step("pie", moved(-1), "rest"), "begins before step"),
        (with_step("pie", moved(1), "rest"), "at once"),
    ],
)
def test_a_broken_rule_of_one_dish_is_seen(broken: Timeline, said: str) -> None:
    assert any(said in f for f in faults(PARTY, broken, WEEK_BEFORE)), faults(PARTY, broken, WEEK_BEFORE)


def planned(*steps: PlannedStep) -> Timeline:
    ends = {name: max(s.end for s in steps if s.promise == name) for name in {s.promise for s in steps}}
    times = tuple(DishTimes(name, end, max(end, SERVING)) for name, end in sorted(ends.items()))
    return Timeline("feasible", 0, 0, steps, times)


def baked(promise: str, start: str, end: str, temp: float = 350.0, pans: int = 1) -> PlannedStep:
    return PlannedStep(promise, "oven", "oven:0", None, at(start), at(end), temp, pans)


def of_ovens(kind: str) -> tuple[Potluck, Timeline]:
    a, b = dish("a", oven(60, 350, pans=3)), dish("b", oven(60, 375, pans=3))
    party = potluck(a, b)
    return party, {
        "pans": planned(baked("a", "15:00", "16:00", pans=3), baked("b", "15:30", "16:35", pans=3)),
        "set-points": planned(baked("a", "15:00", "16:00", 350, 3), baked("b", "15:30", "16:30", 375, 3)),
        "change": planned(baked("a", "14:00", "15:00", 350, 3), baked("b", "15:07", "16:07", 375, 3)),
    }[kind]


@pytest.mark.parametrize(
    ("kind", "said"), [("pans", "too many pans"), ("set-points", "two set-points"), ("change", "7.0 minutes from")]
)
def test_a_broken_rule_of_an_oven_is_seen(kind: str, said: str) -> None:
    # 350 to 375 °F takes 5 + 2.5 minutes; seven are too few.
    party, broken = of_ovens(kind)

    assert any(said in f for f in faults(party, broken, WEEK_BEFORE))


def test_one_watt_or_one_plug_too_many_is_seen() -> None:
    # 80 % of 15 A at 120 V is 1440 W (ELEC-03).
    step = HeatStep("slow-cooker-low", 60, watts=721, own_appliance=True)
    party = potluck(*(dish(n, step) for n in "ab"), kitchen=kitchen(circuits=(Circuit(outlets=1),)))
    on = [
        PlannedStep(n, "slow-cooker-low", "own:slow-cooker-low", 0, at("15:00"), at("16:00"), watts=721) for n in "ab"
    ]

    found = faults(party, planned(*on), WEEK_BEFORE)

    assert any("1442 W" in f for f in found)
    assert any("2 plugs" in f for f in found)


def test_two_dishes_at_one_burner_and_one_pair_of_hands_are_seen() -> None:
    step = HeatStep("stove", 30, hands_min=10)
    party = potluck(*(dish(n, step) for n in "ab"), kitchen=kitchen(cooks=1))
    on = [PlannedStep(n, "stove", "burner:0", None, at("16:00"), at("16:30"), hands_min=10) for n in "ab"]

    found = faults(party, planned(*on), WEEK_BEFORE)

    assert any("burner:0" in f for f in found)
    assert any("hands" in f for f in found)


def test_what_a_guest_brings_to_plug_in_must_be_plugged_in() -> None:
    party = potluck(dish("a", HeatStep("oven", 60, 350, own_appliance=True, watts=1200)))
    off = PlannedStep("a", "oven", "own:oven", None, at("16:00"), at("17:00"), 350)

    assert any("not plugged in" in f for f in faults(party, planned(off), WEEK_BEFORE))


def test_a_dish_off_heat_for_longer_than_is_told_is_seen() -> None:
    hot = dish("a", oven(60, 350))
    plan = timeline(potluck(hot), WEEK_BEFORE, effort=0)
    early = replace(plan, steps=tuple(moved(-45)(s) for s in plan.steps))

    assert any("off heat" in f for f in faults(potluck(hot), early, WEEK_BEFORE))


def test_a_hold_below_140_degrees_is_seen() -> None:
    hot = dish("a", oven(60, 350))
    plan = timeline(potluck(hot), WEEK_BEFORE, effort=0)
    (step,) = plan.steps
    cool = PlannedStep("a", "keep-warm", "oven:0", None, step.end, step.end, 120, 1, step=1)

    assert any(
        "does not keep it hot" in f for f in faults(potluck(hot), replace(plan, steps=(step, cool)), WEEK_BEFORE)
    )
