"""What a kitchen lacks: the plan says when it would be, in nothing, and nobody is told to do it."""

from __future__ import annotations

import pytest

from planning.kitchen import timeline
from planning.kitchen.usual import estimates, steps_of
from planning.potluck import Answer, Guest, HeatStep, Promise, SlowCooker
from planning.reminders import reminders
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, dish, kitchen, oven, potluck

STEW = dish("stew", HeatStep("prep", 20), HeatStep("slow-cooker-low", 300))


def test_a_dish_without_its_appliance_is_planned_in_nothing_and_ends_by_serving() -> None:
    found = timeline(potluck(STEW, kitchen=kitchen(slow_cookers=())), WEEK_BEFORE, effort=0.05)

    assert found.status == "impossible"
    assert [(s.kind, s.appliance, s.lacking) for s in found.steps] == [
        ("prep", None, False), ("slow-cooker-low", None, True)]  # fmt: skip
    assert max(s.end for s in found.steps) == SERVING
    assert found.doable == ()


def test_nobody_is_reminded_of_what_there_is_nothing_to_do_it_in() -> None:
    party = potluck(STEW, kitchen=kitchen(slow_cookers=()))

    kinds = {r.kind for r in reminders(party, timeline(party, WEEK_BEFORE, effort=0), WEEK_BEFORE)}

    assert "slow-cooker" not in kinds


def test_other_dishes_have_the_kitchen_as_if_it_were_not_there() -> None:
    pie = dish("pie", oven(60, 350, pans=4))
    big = dish("big", oven(60, 425, pans=9))

    found = timeline(potluck(pie, big), WEEK_BEFORE, effort=0.05)

    assert [c.rule for c in found.conflicts] == ["too-many-pans"]
    assert {s.promise for s in found.doable} == {"pie"}


def test_a_dish_that_lacks_something_and_is_late_besides_is_told_of_once() -> None:
    late = dish("late", HeatStep("slow-cooker-low", 600), arrives_at=SERVING)

    found = timeline(potluck(late, kitchen=kitchen(slow_cookers=())), WEEK_BEFORE, effort=0)

    assert [c.rule for c in found.conflicts] == ["no-slow-cooker"]


HOST = Guest("g", "G", Answer.YES)
CHILI = Promise("c", "g", "chili", "main", servings=8)


def test_an_assumed_slow_cooker_that_is_not_there_is_asked_about_and_never_planned() -> None:
    party = potluck(CHILI, host="g", kitchen=kitchen(slow_cookers=()))

    found = timeline(party, WEEK_BEFORE, effort=0)

    assert (found.status, found.steps, found.conflicts) == ("optimal", (), ())
    # A pot for three hours: common practice, no source.
    assert [(e.source, [(s.kind, s.minutes) for s in e.steps]) for e in estimates(party)] == [
        ("practice", [("stove", 180)])
    ]


def test_an_assumed_slow_cooker_that_is_there_is_planned() -> None:
    assert steps_of(potluck(CHILI, host="g"), CHILI)[1] == "SLOW-14"


@pytest.mark.parametrize("cookers", [1, 2])
def test_only_as_many_slow_cookers_are_assumed_as_are_left(cookers: int) -> None:
    told = dish("roast", HeatStep("slow-cooker-low", 400))
    party = potluck(told, CHILI, host="g", kitchen=kitchen(slow_cookers=(SlowCooker(),) * cookers))

    found = timeline(party, WEEK_BEFORE, effort=0.05)

    assert {s.promise for s in found.steps} == ({"roast", "c"} if cookers == 2 else {"roast"})
    assert found.conflicts == ()


def test_a_guest_without_an_oven_is_asked_how_their_turkey_is_roasted() -> None:
    bird = Promise("t", "h", "roast turkey", "main")
    party = potluck(bird, guests=(HOST, Guest("h", "H", Answer.YES, has_oven=False)), host="g")

    assert steps_of(party, bird) == ((), "")
    assert [e.promise for e in estimates(party)] == ["t"]
