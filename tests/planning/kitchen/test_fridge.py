"""Room in the refrigerator. Litres are common practice, no source: they warn and never make a plan impossible."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.texts import Voice
from planning.kitchen import timeline
from planning.kitchen.fridge import chilled, fridge_conflicts, is_cold, litres
from planning.potluck import Answer, Guest, HeatStep, Potluck, Promise
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, at, dish, kitchen, oven, potluck

TURKEY = dish("turkey", oven(240, 325), frozen_lb=14)
SLAW = Promise("slaw", "g", "slaw", "salad", servings=20, serve="cold")


def party(*promises: Promise, room: float | None, **facts: object) -> Potluck:
    return potluck(*promises, kitchen=kitchen(fridge_l=room), host="g", **facts)


def test_a_thawing_turkey_takes_its_room_for_its_days() -> None:
    (one,) = chilled(party(TURKEY, room=None))

    assert one.litres == 21  # 14 lb x 1.5 l
    assert one.end - one.start == timedelta(days=4)  # THAW-03: a day for every 4 lb, rounded up


@pytest.mark.parametrize(
    ("promise", "room"),
    [
        (Promise("a", "g", "slaw", "salad", servings=20), 6.0),  # 20 x 0.3 l
        (Promise("a", "g", "punch", "salad", quantity="4 qt"), 4 * 0.946352946 * 1.25),  # NIST HB 44: 57.75 in3 a quart
        (Promise("a", "g", "slaw", "salad", quantity="4 kg"), 5.0),  # 4 l and a bowl
        (Promise("a", "g", "slaw", "salad"), 3.0),  # ten servings
        (Promise("a", "g", "slaw", "salad", servings=float("nan")), 3.0),
    ],
)
def test_a_dish_takes_room_by_volume_weight_or_servings(promise: Promise, room: float) -> None:
    assert litres(promise) == pytest.approx(room)


def test_what_is_served_cold_is_said_or_known() -> None:
    assert is_cold(Promise("a", "g", "potato salad", "side"))
    assert not is_cold(Promise("a", "g", "lasagna", "main"))
    assert not is_cold(Promise("a", "g", "something of Ada's", "side"))


def test_what_fits_is_no_conflict() -> None:
    assert fridge_conflicts(party(TURKEY, SLAW, room=30)) == ()  # 21 + 6


def test_without_a_size_nothing_is_said() -> None:
    assert fridge_conflicts(party(TURKEY, SLAW, room=None)) == ()


def test_a_cold_dish_too_many_goes_to_a_cooler_with_ice() -> None:
    (conflict,) = fridge_conflicts(party(TURKEY, SLAW, room=25))

    assert (conflict.rule, conflict.fix.kind, conflict.fix.text.facts["out"]) == (
        "fridge-full",
        "cooler-cold",
        ["slaw"],
    )


def test_a_bird_too_large_for_the_refrigerator_wants_another_one() -> None:
    (conflict,) = fridge_conflicts(party(TURKEY, SLAW, room=15))

    assert (conflict.fix.kind, conflict.fix.text.facts["out"]) == ("second-fridge", ["turkey"])


def test_a_guests_turkey_thaws_at_the_guests() -> None:
    assert chilled(potluck(TURKEY, host="somebody")) == ()


def test_a_guests_cold_dish_that_comes_at_the_start_needs_no_room_and_one_that_comes_early_does() -> None:
    early = replace(SLAW, arrives_at=at("15:00"))

    assert chilled(potluck(SLAW, host=None)) == ()
    assert [(c.start, c.end) for c in chilled(potluck(early, host=None))] == [(at("15:00"), SERVING)]


def test_whoever_cannot_come_brings_nothing_to_keep_cold() -> None:
    assert chilled(party(SLAW, room=1, guests=(Guest("g", "G", Answer.NO),))) == ()


def test_what_the_plan_chills_stands_there_from_then_on() -> None:
    trifle = dish("trifle", HeatStep("prep", 20), HeatStep("chill", 180), serve="cold", servings=20)

    found = timeline(potluck(trifle, kitchen=kitchen(fridge_l=5)), WEEK_BEFORE, effort=0)

    assert [c.rule for c in found.conflicts] == ["fridge-full"]


def test_a_full_refrigerator_warns_and_the_plan_stands() -> None:
    found = timeline(party(TURKEY, SLAW, room=25), WEEK_BEFORE, effort=0.1)

    assert (found.status, [c.rule for c in found.conflicts]) == ("optimal", ["fridge-full"])
    assert {s.promise for s in found.steps} == {"turkey"}


@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize("room", [15, 25])
def test_it_is_said_in_whole_sentences(units: str, room: float) -> None:
    (conflict,) = timeline(party(TURKEY, SLAW, room=room, units=units), WEEK_BEFORE, effort=0).conflicts

    said = [Voice(units=units).say(s) for s in (conflict.why, conflict.fix.text)]
    assert all(s.endswith(".") for s in said)
    assert (" l " in said[0]) is (units == "metric")
    assert (" cu ft" in said[0]) is (units == "us")


things = st.builds(
    Promise, st.just(""), st.just("g"), st.sampled_from(["slaw", "turkey"]), st.just("salad"),
    servings=st.none() | st.floats(1, 60), frozen_lb=st.none() | st.floats(0.5, 30), serve=st.just("cold"),
)  # fmt: skip


@settings(deadline=None, max_examples=80, derandomize=True)
@given(st.lists(things, max_size=6), st.floats(0, 60))
def test_with_what_is_told_taken_out_the_rest_fits_at_that_moment(promises: list[Promise], room: float) -> None:
    full = party(*(replace(p, id=f"p{n}", dish=f"{p.dish} {n}") for n, p in enumerate(promises)), room=room)

    for conflict in fridge_conflicts(full):
        out, moment = conflict.fix.text.facts["out"], datetime.fromisoformat(str(conflict.why.facts["at"]))
        assert isinstance(out, list)
        there = [c for c in chilled(full) if c.start <= moment < c.end]
        assert sum(c.litres for c in there) > room
        assert sum(c.litres for c in there if c.promise.dish not in out) <= room + 1e-6
