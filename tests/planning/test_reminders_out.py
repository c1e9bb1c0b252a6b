"""What stands on the table has its end told, whoever said that it stands there (TIME-01, TIME-02); who lights what."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from planning.kitchen import timeline
from planning.potluck import Answer, Guest, HeatStep, Potluck
from planning.reminders import Reminder, reminders
from planning.safety import safety
from planning.safety.clocks import off_heat_min, on_the_table
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, at, dish, kitchen, oven, potluck

SLAW = dish("slaw", serve="cold", category="salad")


def told(party: Potluck, kind: str) -> list[Reminder]:
    made = timeline(party, WEEK_BEFORE, effort=0)
    return [r for r in reminders(party, made, WEEK_BEFORE) if r.kind == kind]


def outdoors(party: Potluck) -> Potluck:
    return replace(party, setting="outdoor", outdoor_temp_f=96)


def test_in_the_heat_the_host_is_told_before_the_hour_is_over() -> None:
    (one,) = told(outdoors(potluck(SLAW)), "out-limit")

    assert (one.to, one.due_at) == ("host", SERVING + timedelta(minutes=45))


def test_indoors_it_is_two_hours() -> None:
    (one,) = told(potluck(SLAW), "out-limit")

    assert one.about.facts["by"] == potluck().local(SERVING + timedelta(hours=2)).isoformat()


def test_a_clock_that_runs_takes_the_place_of_the_guess() -> None:
    (one,) = told(potluck(replace(SLAW, out_since=SERVING)), "out-limit")

    assert one.about.key == "reminder-out-limit"


def test_what_keeps_at_room_temperature_is_not_told_of() -> None:
    assert told(potluck(dish("bread", serve="room", category="bread")), "out-limit") == []


def test_what_comes_late_is_counted_from_then() -> None:
    late = replace(SLAW, arrives_at=SERVING + timedelta(minutes=50))
    said = next(n for n in safety(potluck(late), WEEK_BEFORE) if n.rule == "TIME-01")

    assert (said.deadline, said.say.facts["at_time"]) == (SERVING + timedelta(minutes=170), "17:50")


@settings(max_examples=50, deadline=None, derandomize=True)
@given(st.lists(st.tuples(st.integers(0, 119), st.integers(-60, 90)), min_size=1, max_size=6))
def test_no_dish_stands_longer_than_its_limit_before_somebody_is_told(dishes: list[tuple[int, int]]) -> None:
    promises = tuple(
        replace(dish(f"d{n}", serve="cold"), out_min=spent, arrives_at=SERVING + timedelta(minutes=late))
        for n, (spent, late) in enumerate(dishes)
    )
    found = told(potluck(*promises), "out-limit")

    for promise in promises:
        end = max(SERVING, promise.arrives_at or SERVING) + timedelta(minutes=120 - promise.out_min)
        mine = [r for r in found if promise.dish in r.about.facts["dishes"]]  # type: ignore[operator]
        assert [datetime.fromisoformat(str(r.about.facts["by"])) <= end for r in mine] == [True]


def test_the_grill_is_lit_before_what_goes_on_it() -> None:
    ribs = dish("ribs", HeatStep("grill", 120))
    corn = dish("corn", HeatStep("grill", 120))

    (one,) = told(potluck(ribs, corn, kitchen=kitchen(grills=2)), "preheat")

    assert (one.to, one.due_at, one.about.facts["dishes"]) == ("host", at("14:30"), ["corn", "ribs"])


def test_what_follows_on_a_hot_grill_is_put_on_without_lighting_it() -> None:
    party = potluck(dish("a", HeatStep("grill", 15)), dish("b", HeatStep("grill", 15)), kitchen=kitchen(grills=1))

    assert [len(told(party, kind)) for kind in ("preheat", "swap")] == [1, 1]


def test_who_brings_a_slow_cooker_is_told_to_start_it() -> None:
    chili = dish("chili", HeatStep("slow-cooker-low", 420, own_appliance=True))
    guests = (Guest("g", "G", Answer.YES), Guest("n7", "Named", Answer.YES), Guest("h", "H", Answer.YES))
    party = potluck(chili, replace(chili, id="2", guest="n7"), host="h", guests=guests)

    assert {r.to for r in told(party, "slow-cooker")} == {"g", "host"}  # no message reaches who is only a name


def test_what_is_chilled_after_its_heat_may_go_on_the_table() -> None:
    party = potluck(dish("pasta", HeatStep("stove", 15), HeatStep("chill", 180), serve="cold"))
    made = timeline(party, WEEK_BEFORE, effort=0)

    assert off_heat_min(party, party.promises[0], made.steps, SERVING) == 0
    assert {n.severity for n in safety(party, WEEK_BEFORE, made) if n.promise == "pasta"} == {"note"}


def test_a_cold_dish_cooked_in_the_morning_is_told_to_be_chilled_and_its_clock_begins_on_the_table() -> None:
    party = potluck(dish("pasta", oven(30, at="home"), serve="cold", arrives_at=at("10:00")))
    made = timeline(party, WEEK_BEFORE, effort=0)

    said = next(n for n in safety(party, WEEK_BEFORE, made) if n.say.key == "safety-out-between")
    assert (said.severity, said.deadline) == ("warn", made.steps[-1].end + timedelta(hours=2))
    assert on_the_table(party, "pasta", made.steps, SERVING).promises[0].out_min == 0


def test_the_minutes_on_the_way_count_after_the_refrigerator() -> None:
    steps = (oven(30, at="home"), HeatStep("chill", 60, at="home"), HeatStep("transport", 40, at="home"))
    party = potluck(dish("pasta", *steps, serve="cold"))
    made = timeline(party, WEEK_BEFORE, effort=0)

    assert off_heat_min(party, party.promises[0], made.steps, SERVING) == 40


def test_a_hot_dish_that_would_stand_too_long_is_kept_hot_or_stays_off_the_table() -> None:
    party = potluck(dish("roast", oven(30, at="home"), arrives_at=at("10:00")))
    made = timeline(party, WEEK_BEFORE, effort=0)

    said = next(n for n in safety(party, WEEK_BEFORE, made) if n.say.key == "safety-out-between")
    assert (said.severity, said.say.facts["hot"]) == ("block", "yes")
