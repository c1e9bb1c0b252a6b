"""Kept warm: near temperatures share an oven, a pot stays on its burner, and a free slow cooker takes what it can.

140 °F is the least (HOLD-06, USDA FSIS, Cooking for Groups), an oven at 200 °F the usual (HOLD-10).
"""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planning.kitchen import PlannedStep, Timeline, timeline
from planning.potluck import HeatStep, Potluck, SlowCooker
from tests.planning.kitchen.builders import WEEK_BEFORE, dish, kitchen, oven, potluck
from tests.planning.kitchen.verifier import faults

STOVE = HeatStep("stove", 30)


def warm(minutes: int = 40, temp_f: float | None = None, **facts: object) -> HeatStep:
    return HeatStep("keep-warm", minutes, temp_f, **facts)  # type: ignore[arg-type]


def plan(party: Potluck) -> Timeline:
    found = timeline(party, WEEK_BEFORE, effort=0.1)
    assert faults(party, found, WEEK_BEFORE) == []
    return found


def kept(found: Timeline, name: str) -> PlannedStep:
    return next(s for s in found.steps if s.promise == name and s.kind == "keep-warm")


def test_what_was_baked_is_kept_warm_in_the_oven_at_what_keeps_it_hot() -> None:
    step = kept(plan(potluck(dish("roast", oven(60, 350), warm()))), "roast")

    assert (step.appliance, step.temp_f) == ("oven:0", 200)


def test_two_dishes_kept_warm_within_twenty_five_degrees_share_the_oven() -> None:
    found = plan(potluck(dish("a", STOVE, warm(60, 180)), dish("b", STOVE, warm(60, 200)),
                         kitchen=kitchen(burners=2, slow_cookers=())))  # fmt: skip

    inside = [kept(found, name) for name in "ab"]
    shared = {(s.appliance, s.temp_f) for s in inside if s.appliance == "oven:0"}
    assert found.status == "optimal"
    assert len(shared) <= 1


def test_a_pot_stays_on_its_burner_while_the_oven_bakes_hotter() -> None:
    pot = dish("pot", STOVE, warm(60))
    bread = dish("bread", oven(100, 450, pans=4, movable=False))

    found = plan(potluck(pot, bread, kitchen=kitchen(burners=1, slow_cookers=())))

    assert (found.status, kept(found, "pot").appliance) == ("optimal", "burner:0")


def test_with_its_burner_wanted_by_another_a_pot_goes_into_a_free_slow_cooker() -> None:
    pot, soup = dish("pot", STOVE, warm(60)), dish("soup", HeatStep("stove", 55))
    bread = dish("bread", oven(100, 450, pans=4, movable=False))

    found = plan(potluck(pot, soup, bread, kitchen=kitchen(burners=1, slow_cookers=(SlowCooker(),))))

    assert (found.status, kept(found, "pot").appliance) == ("optimal", "slow-cooker:0")


def test_what_was_baked_never_goes_into_a_slow_cooker_to_keep_warm() -> None:
    pie, other = dish("pie", oven(30, 350, pans=4), warm(60)), dish("other", oven(60, 450, pans=4, movable=False))

    found = plan(potluck(pie, other, kitchen=kitchen(slow_cookers=(SlowCooker(),))))

    assert kept(found, "pie").appliance == "oven:0"


def test_a_slow_cooker_keeps_warm_what_it_cooked() -> None:
    found = plan(potluck(dish("chili", HeatStep("slow-cooker-low", 300), warm(60))))

    assert {s.appliance for s in found.steps} == {"slow-cooker:0"}


def test_below_140_it_is_no_keeping_warm() -> None:
    (conflict,) = plan(potluck(dish("roast", oven(60), warm(30, 120)))).conflicts

    assert (conflict.rule, conflict.why.facts["least"]) == ("hold-too-cool", 140)


def test_something_of_its_own_that_keeps_warm_is_plugged_in() -> None:
    step = kept(plan(potluck(dish("rice", STOVE, warm(60, watts=300)))), "rice")

    assert (step.appliance, step.watts, step.circuit is not None) == ("own:keep-warm", 300, True)


@pytest.mark.parametrize("heat", [STOVE, HeatStep("grill", 30), HeatStep("microwave", 10)])
def test_with_nothing_to_hold_it_in_it_is_told(heat: HeatStep) -> None:
    bare = kitchen(ovens=0, burners=0 if heat.kind != "stove" else 1, grills=1, slow_cookers=())
    found = timeline(potluck(dish("it", heat, warm()), kitchen=bare), WEEK_BEFORE, effort=0.02)

    assert {c.rule for c in found.conflicts} == (set() if heat.kind == "stove" else {"nothing-to-hold-in"})


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True)
@given(
    st.lists(
        st.tuples(
            st.sampled_from(["oven", "stove", "slow-cooker-low", "grill"]), st.integers(5, 90), st.integers(5, 90),
            st.sampled_from([None, 140, 165, 190, 215, 350]),
        ),
        min_size=1, max_size=5,
    ),
    st.integers(0, 2), st.integers(0, 2), st.integers(0, 2),
)  # fmt: skip
def test_whatever_is_kept_warm_is_kept_hot_or_told_and_every_rule_holds(
    dishes: list[tuple[str, int, int, int | None]], ovens: int, burners: int, cookers: int
) -> None:
    promises = [
        dish(f"d{n}", HeatStep(kind, heat, 350 if kind == "oven" else None), warm(hold, temp))
        for n, (kind, heat, hold, temp) in enumerate(dishes)
    ]
    party = potluck(
        *promises, kitchen=kitchen(ovens, burners=burners, grills=1, slow_cookers=(SlowCooker(),) * cookers)
    )

    found = timeline(party, WEEK_BEFORE, effort=0.02, searched=0)

    assert faults(party, found, WEEK_BEFORE) == []
    told = {p for c in found.conflicts for p in c.promises}
    assert all(s.appliance is not None or s.promise in told for s in found.steps if s.kind == "keep-warm")
