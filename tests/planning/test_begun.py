"""A dish on the heat since an hour that was told: when it is ready, and whether the meal waits for it."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.changes import Actor, Refusal, put_on_heat
from planning.potluck import Answer, Guest, HeatStep, Potluck, Promise
from planning.theday.begun import BEFORE, cooking, going_on, waits_for

STARTS = datetime(2027, 9, 18, 22, tzinfo=UTC)
ROAST = Promise("d1", "ravi", "roast", "main", 12, heat=(HeatStep("oven", 120, 325), HeatStep("rest", 20)))
SLAW = Promise("d2", "mei", "slaw", "side", 12)
RAVI = Actor("ravi", "Ravi")


def supper(*dishes: Promise) -> Potluck:
    guests = tuple(Guest(g, g.title(), Answer.YES) for g in ("ines", "ravi", "mei"))
    return Potluck("p1", STARTS, "America/Chicago", host="ines", guests=guests, promises=dishes)


def begun(minutes_before: float) -> Potluck:
    return put_on_heat(supper(ROAST, SLAW), RAVI, "d1", STARTS - timedelta(minutes=minutes_before))


@given(st.integers(-180, 900))
def test_the_meal_waits_for_what_is_ready_after_its_start_and_for_nothing_else(minutes_before: int) -> None:
    potluck = begun(minutes_before)
    told = waits_for(potluck)

    ready = STARTS - timedelta(minutes=minutes_before) + timedelta(minutes=120 + 20)  # as its cook told the steps
    assert told == ((potluck.promise("d1"), ready) if minutes_before < 140 else None)


def test_of_two_late_dishes_the_meal_waits_for_the_later_one() -> None:
    potluck = supper(ROAST, Promise("d3", "mei", "gratin", "side", 12, heat=(HeatStep("oven", 200, 325),)))
    for dish in ("d1", "d3"):
        potluck = put_on_heat(potluck, RAVI, dish, STARTS - timedelta(minutes=100))

    told = waits_for(potluck)

    assert told is not None
    assert told[0].id == "d3"


def test_an_hour_told_of_another_day_counts_for_nothing() -> None:
    potluck = supper(ROAST)
    before = put_on_heat(potluck, RAVI, "d1", STARTS - BEFORE - timedelta(minutes=1))
    after = put_on_heat(potluck, RAVI, "d1", potluck.ends + timedelta(minutes=1))

    assert [going_on(p, p.promises[0]) for p in (before, after)] == [None, None]


def test_what_is_not_heated_is_never_done() -> None:
    assert cooking(supper(SLAW), SLAW, STARTS) is None


def test_a_stranger_does_not_say_what_is_on_the_heat() -> None:
    with pytest.raises(Refusal) as refused:
        put_on_heat(supper(ROAST), Actor("zoe", "Zoe"), "d1", STARTS)

    assert refused.value.key == "refused-not-guest"
