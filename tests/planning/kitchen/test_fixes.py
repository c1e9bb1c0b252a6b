"""What a conflict tells people to do really helps."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from planning.kitchen import Conflict, Timeline, timeline
from planning.kitchen.mend import carried_hot, mended, reheated
from planning.potluck import Answer, Circuit, Guest, HeatStep, Microwave, Potluck, SlowCooker
from tests.planning.kitchen.builders import WEEK_BEFORE, at, dish, kitchen, oven, potluck
from tests.planning.kitchen.strategies import kitchen_potlucks
from tests.planning.kitchen.verifier import faults

SEARCHED = {"off-heat", "late", "too-long", "arrives-late"}
BY_HAND = {"keep-hot", "split", "correct", "figure", "smaller", "fewer", "cold-water", "thawed"}
"""Ways out that only people can take: there is nothing to change in the potluck before they said how."""

some = settings(
    max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True,
    # Each example is planned several times: a failing one is shown as it is, without minutes of shrinking.
    phases=(Phase.explicit, Phase.generate),
)  # fmt: skip


def plan(party: Potluck) -> Timeline:
    return timeline(party, WEEK_BEFORE, effort=0.1)


def fixed(party: Potluck, conflict: Conflict) -> Potluck:
    promise = conflict.promises[0] if conflict.promises else ""
    after = mended(party, promise, conflict.fix.kind, conflict.fix.minutes)
    assert after is not None, conflict.fix.kind
    return after


def broken(found: Timeline, promise: str) -> int:
    """Minutes late and unsafe of one dish."""
    return sum(d.late_min + d.unsafe_min for d in found.dishes if d.promise == promise)


@some
@given(kitchen_potlucks())
def test_a_late_or_cold_dish_is_better_off_once_its_way_out_is_taken(party: Potluck) -> None:
    before = plan(party)

    for conflict in before.conflicts:
        if conflict.rule not in SEARCHED or conflict.fix.kind in BY_HAND:
            continue
        # Where no single way out mends a dish, the usual advice is given: it helps, and the rest is told next.
        after = plan(fixed(party, conflict))
        assert broken(after, conflict.promises[0]) < broken(before, conflict.promises[0])


@some
@given(kitchen_potlucks(most=5))
def test_what_a_way_out_leads_to_keeps_every_rule(party: Potluck) -> None:
    for conflict in plan(party).conflicts[:2]:
        if conflict.fix.kind not in BY_HAND:
            after = fixed(party, conflict)
            assert faults(after, plan(after), WEEK_BEFORE) == []


@pytest.mark.parametrize(
    ("facts", "step"),
    [
        ({"ovens": 0}, oven(40)),
        ({"burners": 0}, HeatStep("stove", 20)),
        ({"slow_cookers": ()}, HeatStep("slow-cooker-low", 240)),
        ({"microwaves": ()}, HeatStep("microwave", 5)),
        ({"circuits": ()}, HeatStep("microwave", 5)),
        ({"cooks": 0}, HeatStep("prep", 5)),
        ({}, HeatStep("grill", 20)),
        ({}, HeatStep("slow-cooker-low", 300, watts=1700, own_appliance=True)),
    ],
)
@pytest.mark.parametrize("host", ["g", None])
def test_what_the_kitchen_lacks_is_got_round(facts: dict[str, object], step: HeatStep, host: str | None) -> None:
    party = potluck(dish("a", step), kitchen=kitchen(**facts), host=host)
    (conflict,) = plan(party).conflicts

    assert plan(fixed(party, conflict)).conflicts == ()


def test_the_host_without_an_oven_reheats_on_the_stove() -> None:
    assert [s.kind for s in reheated(kitchen(ovens=0), (oven(60),))] == ["stove"]


def test_a_slow_cooker_never_reheats() -> None:
    # REHEAT-05 (USDA FSIS): not recommended, too long in the danger zone.
    nothing_else = kitchen(ovens=0, burners=0, microwaves=(), slow_cookers=(SlowCooker(),))

    assert reheated(nothing_else, (oven(60),)) == ()
    assert [s.kind for s in reheated(replace(nothing_else, microwaves=(Microwave(),)), (oven(60),))] == ["microwave"]


def test_a_dish_in_a_cooler_is_hot_until_it_is_served() -> None:
    stew = dish("stew", HeatStep("stove", 60, at="home"), HeatStep("transport", 50, at="home"))
    steps = carried_hot(potluck(stew), stew, stew.heat or ())

    assert [(s.kind, s.minutes, s.temp_f) for s in steps][1] == ("keep-warm", 50, 140)  # TRANS-02: 140 °F in transit
    assert plan(potluck(dish("stew", *steps))).dishes[0].off_heat_min == 0


@pytest.mark.parametrize("travel", [0, 20, 200])
def test_a_cooler_helps_however_far_it_is(travel: int) -> None:
    stew = dish("stew", HeatStep("stove", 60, at="home"), HeatStep("rest", 25, at="home"))
    party = potluck(stew, guests=(Guest("g", "G", Answer.YES, travel_min=travel),))

    after = mended(party, "stew", "cooler")

    assert after is not None
    assert plan(after).conflicts == ()


def test_sixty_guests_and_one_oven_get_a_reason_and_a_way_out_for_every_dish_and_the_ways_end_in_a_plan() -> None:
    # Eight bakes of an hour and one oven for four pans, two chilis and one slow cooker, one circuit of 1440 W.
    pies = (dish(f"bake {n}", oven(60, 350), arrives_at=at("15:30")) for n in range(8))
    chilis = (dish(f"chili {n}", HeatStep("slow-cooker-low", 360), arrives_at=at("09:00")) for n in range(2))
    party = potluck(*pies, *chilis, kitchen=kitchen(circuits=(Circuit(),)))
    found = timeline(party, WEEK_BEFORE, effort=0.03)

    assert found.status == "impossible"
    assert {d.promise for d in found.dishes if d.late_min or d.unsafe_min} == {
        p for c in found.conflicts for p in c.promises
    }
    taken = 0
    while found.conflicts and taken < 10:
        party, taken = fixed(party, found.conflicts[0]), taken + 1
        found = timeline(party, WEEK_BEFORE, effort=0.03)
    assert found.conflicts == ()


def test_serving_later_is_offered_beside_what_asks_less_of_people_and_mends_it_too() -> None:
    # An hour and a half in the oven, there an hour before serving: half an hour is missing.
    party = potluck(dish("roast", oven(90), arrives_at=at("16:00")))

    (conflict,) = plan(party).conflicts

    assert (conflict.fix.kind, conflict.fix.saves_min) == ("arrive-earlier", 30)
    assert [(f.kind, f.minutes, f.saves_min) for f in conflict.others] == [("later", 30, 30)]
    after = mended(party, "roast", "later", 30)
    assert after is not None
    assert plan(after).conflicts == ()


@some
@given(kitchen_potlucks(most=4))
def test_minutes_saved_are_those_the_plan_has_less_once_it_is_taken(party: Potluck) -> None:
    before = plan(party)
    total = sum(d.late_min + d.unsafe_min for d in before.dishes)
    for conflict in before.conflicts[:1]:
        for fix in (conflict.fix, *conflict.others):
            after = mended(party, conflict.promises[0], fix.kind, fix.minutes) if conflict.promises else None
            if fix.saves_min is not None and after is not None:
                # More effort may save more than the try did.
                assert total - sum(d.late_min + d.unsafe_min for d in plan(after).dishes) >= fix.saves_min
