"""What cannot work is said once, with a way out that has been tried."""

from __future__ import annotations

from dataclasses import replace

import pytest

from bot.texts import Voice
from planning.kitchen import Timeline, timeline
from planning.kitchen.mend import mended
from planning.kitchen.steps import span_said
from planning.potluck import Answer, Circuit, Guest, HeatStep, Potluck, SlowCooker
from tests.planning.kitchen.builders import WEEK_BEFORE, at, dish, kitchen, oven, potluck
from tests.planning.kitchen.verifier import faults

GOOD = dish("good", HeatStep("prep", 20), oven(40))


def plan(party: Potluck) -> Timeline:
    found = timeline(party, WEEK_BEFORE, effort=0.2)
    assert faults(party, found, WEEK_BEFORE) == []
    return found


@pytest.mark.parametrize(
    ("steps", "rule"),
    [
        ((oven(40, 3500),), "temperature-typo"),  # a nought too many
        ((oven(40, 180),), "celsius"),  # 180 °C is 356 °F
        ((oven(40, 30),), "temperature"),  # colder than any oven
        ((oven(40, float("nan")),), "temperature"),  # not a number
        ((oven(-5),), "minutes"),  # no time at all
        ((oven(0),), "minutes"),  # no time at all
        ((oven(60 * 24 * 30),), "minutes"),  # a month in the oven
        ((HeatStep("sous-vide", 60, 140),), "unknown-kind"),  # nobody knows how
        ((HeatStep("oven", 40, 350, at="the moon"),), "unknown-place"),  # neither home nor venue
        ((oven(40), HeatStep("prep", 10, at="home")), "home-after-venue"),  # cannot go back
        ((oven(40), HeatStep("thaw", 600)), "thaw-after-heat"),  # contradictory
        ((oven(40, pans=9),), "too-many-pans"),  # nine pans, room for four
        ((HeatStep("keep-warm", 30, 110),), "hold-too-cool"),  # HOLD-06: 140 °F
        ((HeatStep("grill", 20),), "no-grill"),  # none there
        ((HeatStep("slow-cooker-low", 300, watts=1700, own_appliance=True),), "too-much-power"),  # 80 % of 15 A
        ((HeatStep("microwave", 10, watts=-3),), "watts"),  # less than nothing
    ],
)
def test_a_bad_value_is_one_clear_conflict_and_the_rest_of_the_plan_stands(
    steps: tuple[HeatStep, ...], rule: str
) -> None:
    found = plan(potluck(dish("bad", *steps), GOOD))

    assert [(c.rule, c.promises) for c in found.conflicts] == [(rule, ("bad",))]
    assert {s.promise for s in found.doable} == {"good"}


def test_a_temperature_in_celsius_comes_with_its_fahrenheit() -> None:
    conflict = plan(potluck(dish("bad", oven(40, 180)))).conflicts[0]

    assert conflict.why.facts["likely"] == 356  # 180 x 9 / 5 + 32


def test_a_typo_of_one_nought_is_guessed() -> None:
    assert plan(potluck(dish("bad", oven(40, 3500)))).conflicts[0].why.facts["likely"] == 350


def test_low_and_slow_is_not_taken_for_celsius() -> None:
    assert plan(potluck(dish("brisket", oven(480, 225)))).conflicts == ()


@pytest.mark.parametrize(
    ("facts", "step", "rule"),
    [
        ({"ovens": 0}, oven(40), "no-oven"),
        ({"burners": 0}, HeatStep("stove", 20), "no-burner"),
        ({"slow_cookers": ()}, HeatStep("slow-cooker-low", 240), "no-slow-cooker"),
        ({"microwaves": ()}, HeatStep("microwave", 5), "no-microwave"),
        ({"circuits": ()}, HeatStep("microwave", 5), "no-outlet"),
        ({"cooks": 0}, HeatStep("prep", 5), "no-hands"),
    ],
)
def test_what_the_kitchen_does_not_have_is_said(facts: dict[str, object], step: HeatStep, rule: str) -> None:
    found = plan(
        potluck(dish("bad", step), dish("cold", HeatStep("chill", 60), serve="cold"), kitchen=kitchen(**facts))
    )

    assert [c.rule for c in found.conflicts] == [rule]
    assert {s.promise for s in found.steps} == {"bad", "cold"}
    assert [(s.kind, s.appliance) for s in found.steps if s.promise == "bad"] == [(step.kind, None)]


def test_six_roasts_without_an_oven_are_one_conflict_of_all_six() -> None:
    found = plan(potluck(*(dish(f"roast {n}", oven(120)) for n in range(6)), kitchen=kitchen(ovens=0)))

    assert found.status == "impossible"
    assert [(c.rule, len(c.promises)) for c in found.conflicts] == [("no-oven", 6)]


def test_a_forty_pound_turkey_is_a_conflict_of_its_own() -> None:
    found = plan(potluck(dish("turkey", oven(300, 325), frozen_lb=40), GOOD))

    assert [c.rule for c in found.conflicts] == ["frozen-weight"]  # COOK-35: the timetable ends at 24 lb
    assert {s.promise for s in found.steps} == {"turkey", "good"}


def test_a_dish_longer_than_the_time_left_is_told_so_and_still_planned() -> None:
    late = dish("roast", oven(180), arrives_at=at("15:00"))

    found = plan(potluck(late))

    assert [c.rule for c in found.conflicts] == ["too-long"]  # 180 minutes, 120 left
    assert found.dishes[0].late_min == 60


def test_the_way_out_of_a_late_arrival_is_to_come_earlier_by_just_so_much() -> None:
    found = plan(potluck(dish("roast", oven(180), arrives_at=at("15:00"))))

    assert (found.conflicts[0].fix.kind, found.conflicts[0].fix.minutes) == ("arrive-earlier", 60)
    mended = potluck(dish("roast", oven(180), arrives_at=at("14:00")))
    assert plan(mended).status == "optimal"


def test_a_hot_dish_driven_for_an_hour_wants_a_cooler() -> None:
    far = dish("stew", HeatStep("stove", 60, at="home"), HeatStep("transport", 60, at="home"))

    conflict = plan(potluck(far)).conflicts[0]

    assert (conflict.rule, conflict.fix.kind, conflict.why.facts["minutes"]) == ("off-heat", "cooler", 60)


def test_two_stews_and_one_slow_cooker_want_another_borrowed() -> None:
    party = potluck(*(dish(f"stew {n}", HeatStep("slow-cooker-low", 400)) for n in range(2)))

    conflict = plan(party).conflicts[0]

    assert conflict.fix.kind == "borrow-slow-cooker"
    mended = replace(party, kitchen=kitchen(slow_cookers=(SlowCooker(), SlowCooker())))
    assert plan(mended).status == "optimal"


def test_the_host_is_told_to_cook_ahead_where_the_guest_cooks_at_home() -> None:
    def crowded(host: str | None) -> str:
        pies = (dish(f"pie {n}", oven(50, 350 + 75 * n, movable=False, pans=4)) for n in range(3))
        return plan(potluck(*pies, host=host)).conflicts[0].fix.kind

    assert crowded("g") in ("cook-ahead", "borrow-oven", "later")
    assert crowded(None) == "cook-at-home"


def test_a_guest_without_an_oven_is_not_told_to_bake_at_home() -> None:
    pies = (dish(f"pie {n}", oven(50, 350 + 75 * n, movable=False, pans=4)) for n in range(3))

    found = plan(potluck(*pies, guests=(Guest("g", "G", has_oven=False),)))

    assert "cook-at-home" not in {c.fix.kind for c in found.conflicts}


def crowd(count: int, **facts: object) -> Potluck:
    """Slow cookers of the guests' own on one circuit of 1440 W (ELEC-03): two of 500 W run at once."""
    step = HeatStep("slow-cooker-low", 360, watts=500, own_appliance=True)
    chilis = (dish(f"chili {n}", step, arrives_at=at("10:00")) for n in range(count))
    return potluck(*chilis, kitchen=kitchen(circuits=(Circuit(),)), **facts)


def test_every_late_dish_is_named_with_its_reason_and_a_way_to_have_it_hot() -> None:
    found = plan(crowd(6))

    late = {d.promise for d in found.dishes if d.late_min}
    assert {p for c in found.conflicts for p in c.promises} == late
    assert {c.why.facts["short"] for c in found.conflicts if c.rule != "asleep"} == {"power"}
    assert "leave-out" not in {c.fix.kind for c in found.conflicts}


def test_beyond_the_dishes_that_are_searched_the_usual_advice_is_given() -> None:
    found = plan(crowd(12))

    assert [c.rule for c in found.conflicts] == ["late"] * 10 + ["asleep"]
    assert "leave-out" not in {c.fix.kind for c in found.conflicts}


def test_a_hot_dish_that_comes_a_little_late_is_waited_for() -> None:
    found = plan(potluck(dish("chili", HeatStep("stove", 20), arrives_at=at("17:30")), GOOD))

    conflict = found.conflicts[0]
    assert conflict.rule == "arrives-late"
    assert conflict.fix.kind in ("arrive-earlier", "later")


def test_hours_are_said_as_hours_and_earlier_is_a_time_on_the_clock() -> None:
    found = plan(potluck(dish("brisket", oven(540, 225), arrives_at=at("15:00"))))

    said = Voice().say(found.conflicts[0].fix.text)
    assert found.conflicts[0].fix.minutes == 420  # 540 minutes, 120 left
    assert said == "Have it there 7 hours earlier, by 8:00 AM."


@pytest.mark.parametrize(
    ("late", "words"), [(1, "1 minute"), (45, "45 minutes"), (60, "1 hour"), (405, "6 hours 45 min")]
)
def test_a_stretch_of_time_is_said_in_hours_and_minutes(late: int, words: str) -> None:
    assert Voice().say(span_said(late)) == words


def test_the_host_borrows_an_oven_and_guests_who_have_one_cook_at_home_each_named_once() -> None:
    mine = tuple(replace(dish(f"mine {n}", oven(60)), guest="h") for n in range(2))
    theirs = tuple(dish(f"theirs {n}", oven(60)) for n in range(3))
    guests = (Guest("h", "H", Answer.YES), Guest("g", "G", Answer.YES))

    (conflict,) = plan(potluck(*mine, *theirs, guests=guests, host="h", kitchen=kitchen(ovens=0))).conflicts

    fixes = (conflict.fix, *conflict.others)
    assert [(f.kind, len(f.promises)) for f in fixes] == [("cook-at-home", 3), ("borrow-oven", 2)]
    assert "theirs 0" in Voice().say(conflict.fix.text)


def test_too_many_pans_are_baked_in_as_many_rounds_as_it_takes() -> None:
    kitchens = [kitchen(), kitchen(ovens=2), kitchen(ovens=3)]

    found = [plan(potluck(dish("cakes", oven(30, pans=9)), kitchen=k)).conflicts[0].fix.text for k in kitchens]

    assert [said.facts["rounds"] for said in found] == [3, 2, 1]  # 4 pans an oven
    assert "3 rounds, 1 hour 30 min" in Voice().say(found[0])
    assert "3 ovens" in Voice().say(found[2])


@pytest.mark.parametrize(("has", "said"), [({"ovens": 1}, "in the oven"), ({"ovens": 0}, "on the stove"),
                                           ({"ovens": 0, "burners": 0}, "in the microwave")])  # fmt: skip
def test_what_is_cooked_ahead_is_reheated_on_what_there_is(has: dict[str, int], said: str) -> None:
    party = potluck(replace(dish("it", HeatStep("grill", 30)), guest="h"), host="h", kitchen=kitchen(**has, grills=0))

    (conflict,) = plan(party).conflicts

    assert Voice().say(conflict.fix.text).endswith(f"reheat it to 165 °F {said}.")


def test_a_figure_off_the_dial_is_set_to_what_was_meant() -> None:
    for figure, meant in ((3500, 350), (190, 374)):
        party = potluck(dish("pizza", oven(15, figure)))
        (conflict,) = plan(party).conflicts

        after = mended(party, "pizza", conflict.fix.kind)

        assert after is not None
        assert [s.temp_f for s in plan(after).steps] == [meant]


def test_what_begins_after_bed_time_is_told_once_for_all() -> None:
    found = plan(potluck(*(dish(f"roast {n}", oven(180, pans=4)) for n in range(6))))

    (night,) = [c for c in found.conflicts if c.rule == "asleep"]
    assert set(night.promises) == {s.promise for s in found.steps if s.start > at("22:00")}


def test_a_chain_at_home_longer_than_the_day_is_told_by_what_it_needs_and_what_is_left() -> None:
    pot = dish("pot", HeatStep("slow-cooker-low", 480, at="home"), HeatStep("transport", 30, at="home"))

    (conflict,) = plan(replace(potluck(pot), starts_at=at("10:00"))).conflicts

    assert (conflict.rule, conflict.why.facts["need"], conflict.why.facts["left"]) == ("too-long", 510, 180)
