"""Minutes out of temperature add up over counter, car and table; and who says so."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.texts import Voice
from planning import tables
from planning.kitchen import timeline
from planning.potluck import Answer, Guest, HeatStep, Potluck, Promise
from planning.safety import NOTE, WARN, safety
from planning.safety.clocks import clock, more_minutes, off_heat_min, on_the_table
from planning.safety.urgent import illness
from planning.safety.why import CONFLICT_ROWS, because
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, at, dish, oven, potluck

ROAST = dish("roast", oven(60), HeatStep("rest", 20))
PARTY = potluck(ROAST)
PLAN = timeline(PARTY, WEEK_BEFORE, effort=0.1)


def test_resting_before_serving_is_part_of_the_two_hours() -> None:
    # Out of the oven at 16:40: of 120 minutes (TIME-01) 20 are spent at five.
    found = clock(PARTY, ROAST, PLAN.steps)

    assert (found.limit_min, found.spent_min) == (120, 20)


def test_the_plan_says_until_when_it_may_stand_with_those_minutes() -> None:
    (said,) = [n for n in safety(PARTY, WEEK_BEFORE, PLAN) if n.say.key == "safety-out-plan"]

    assert (said.deadline, said.severity) == (SERVING + timedelta(minutes=100), NOTE)


def test_minutes_that_have_passed_already_are_a_warning() -> None:
    (said,) = [n for n in safety(potluck(replace(ROAST, out_min=30)), WEEK_BEFORE) if n.say.key == "safety-out-plan"]

    assert (said.deadline, said.severity) == (SERVING + timedelta(minutes=90), WARN)


def test_what_is_put_on_the_table_takes_its_minutes_along_once() -> None:
    first = on_the_table(PARTY, "roast", PLAN.steps, at("17:10"))
    assert first.promises[0].out_min == 30  # 16:40 to 17:10

    running = replace(first, promises=(replace(first.promises[0], out_since=at("17:10")),))
    assert on_the_table(running, "roast", PLAN.steps, at("17:30")) == running
    assert clock(running, running.promises[0], PLAN.steps).spent_min == 30
    assert on_the_table(first, "roast", PLAN.steps, at("18:00")) == first  # taken off and heated again meanwhile


def test_what_nobody_heats_was_not_off_heat() -> None:
    assert off_heat_min(PARTY, Promise("x", "g", "slaw", "salad"), PLAN.steps, SERVING) == 0


minutes = st.floats(0, 300)


@given(minutes, minutes)
def test_minutes_of_counter_and_car_add_up_and_only_bring_the_end_nearer(counter: float, car: float) -> None:
    out = replace(ROAST, out_since=SERVING)
    party = potluck(out)

    after_one = more_minutes(party, "roast", counter)
    one, both = (clock(p, p.promises[0]) for p in (after_one, more_minutes(after_one, "roast", car)))

    assert both.spent_min == pytest.approx(counter + car)
    assert one.deadline is not None
    assert both.deadline is not None
    assert both.deadline <= one.deadline


@pytest.mark.parametrize("odd", [float("nan"), -5.0, 1e12])
def test_figures_nobody_can_mean_never_lengthen_a_clock(odd: float) -> None:
    party = potluck(replace(ROAST, out_min=odd, out_since=SERVING))

    found = more_minutes(party, "roast", 10).promises[0]

    assert 10 <= found.out_min <= 1440


def test_food_that_is_brought_travels_cold_or_hot_by_the_published_figures() -> None:
    brought = potluck(Promise("s", "r", "slaw", "salad"), replace(ROAST, guest="r"), host="g")
    found = {n.rule: (n.value, n.unit) for n in safety(brought, WEEK_BEFORE)}

    assert found["TRANS-01"] == (40, "F")  # USDA FSIS, Cooking for Groups
    assert found["TRANS-02"] == (140, "F")
    assert "TRANS-01" not in {n.rule for n in safety(potluck(ROAST, host="g"), WEEK_BEFORE)}


def test_a_dish_cooked_ahead_is_in_the_refrigerator_within_two_hours() -> None:
    ahead = dish("stew", HeatStep("stove", 60, at="home"), HeatStep("chill", 600, at="home"), HeatStep("stove", 20))

    (said,) = [n for n in safety(potluck(ahead), WEEK_BEFORE) if n.rule == "COOL-08"]

    assert (said.value, said.unit, said.severity) == (2, "h", NOTE)  # USDA: within two hours of cooking


@pytest.mark.parametrize(
    ("name", "rule"), [("roast turkey", "COOK-01"), ("lasagna", "COOK-14"), ("meatloaf", "COOK-02")]
)
def test_a_dish_whose_heating_nobody_told_is_still_cooked_through(name: str, rule: str) -> None:
    assert rule in {n.rule for n in safety(potluck(Promise("a", "g", name, "main")), WEEK_BEFORE)}


def test_each_sentence_about_a_dish_leads_to_its_row() -> None:
    found = because(PARTY, WEEK_BEFORE, PLAN, "roast")

    assert {b.rule for b in found} >= {"TIME-01", "HOLD-06"}
    assert next(b for b in found if b.rule == "TIME-01").value == "2"


def test_in_reply_to_a_sentence_the_dish_it_names_is_meant() -> None:
    assert because(PARTY, WEEK_BEFORE, PLAN, "", "Turn on oven 1 now. In at 4 PM: roast.") == because(
        PARTY, WEEK_BEFORE, PLAN, "roast"
    )
    assert because(PARTY, WEEK_BEFORE, PLAN, "", "Good morning!") == ()


@pytest.mark.parametrize("rule", sorted({r["id"] for r in tables.rows("safety")}))
def test_every_rule_can_be_asked_for_by_its_id_and_has_a_source(rule: str) -> None:
    (found,) = because(PARTY, WEEK_BEFORE, None, rule.casefold())

    assert found.rule == rule
    assert found.text
    assert rule in tables.sources()


def test_a_conflict_that_rests_on_a_rule_leads_to_it() -> None:
    far = dish("stew", HeatStep("stove", 60, at="home"), HeatStep("transport", 60, at="home"))
    party = potluck(far)

    found = because(party, WEEK_BEFORE, timeline(party, WEEK_BEFORE, effort=0), "stew")

    assert CONFLICT_ROWS["off-heat"] in {b.rule for b in found if b.say and b.say.key == "kitchen-off-heat"}


things = st.builds(
    Promise, st.just("a"), st.just("g"), st.sampled_from(["slaw", "roast turkey", "rice salad", "brownies"]),
    st.sampled_from(["main", "salad", "dessert"]), frozen_lb=st.none() | st.floats(1, 30),
)  # fmt: skip


@settings(deadline=None)
@given(things, st.booleans(), st.integers(0, 1))
def test_every_safety_sentence_shows_its_source_on_demand(promise: Promise, pregnant: bool, infants: int) -> None:
    guest = Guest("g", "G", Answer.YES, pregnant=pregnant)
    party: Potluck = potluck(promise, guests=(replace(guest, party=replace(guest.party, infants=infants)),))

    for note in safety(party, WEEK_BEFORE):
        if note.promise is not None:
            assert note.rule in {b.rule for b in because(party, WEEK_BEFORE, None, promise.dish)}
        assert tables.sources()[note.rule].title
        assert Voice().say(note.say)


@pytest.mark.parametrize(
    ("text", "ill"),
    [
        ("I was throwing up last night", True),
        ("My kids have a stomach bug", True),
        ("I've had diarrhea since Thursday", True),
        ("we had norovirus, all of us", True),
        ("let's avoid food poisoning this time", False),
        ("that soup will not give us food poisoning", False),
        ("did anyone get food poisoning?", False),
        ("we had a stomach bug last year", False),
        ("I'm sick of potatoes", False),
        ("the dog threw up", False),
    ],
)
def test_whoever_says_that_they_are_ill_is_understood_and_others_are_not_taken_so(text: str, ill: bool) -> None:
    assert illness(text, "en") is ill


def test_the_clock_of_a_dish_that_comes_late_begins_when_it_is_there() -> None:
    slaw = Promise("s", "g", "coleslaw", "salad", arrives_at=at("18:30"))

    (said,) = [n for n in safety(potluck(slaw), WEEK_BEFORE) if n.say.key == "safety-out-plan"]

    assert said.deadline == at("20:30")  # TIME-01: two hours
