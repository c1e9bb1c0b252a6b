"""Steps begin while people are up: on days before, over midnight, and where one step runs on from another."""

from __future__ import annotations

from datetime import time, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from planning.kitchen import timeline
from planning.kitchen.waking import bed_time
from planning.potluck import HeatStep
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, at, dish, kitchen, oven, potluck
from tests.planning.kitchen.verifier import faults

BRUNCH = at("09:00")


def test_a_slow_cooker_is_not_turned_to_warm_in_the_middle_of_the_night() -> None:
    pot = dish("pot", HeatStep("slow-cooker-high", 332), HeatStep("keep-warm", 41), serve="cold")
    party = potluck(pot, starts_at=BRUNCH)

    made = timeline(party, BRUNCH - timedelta(days=4), effort=0.02)

    assert {time(7) <= party.local(s.start).time() <= time(22) for s in made.steps} == {True}
    assert not made.conflicts


def test_what_is_served_cold_and_does_not_fit_into_the_day_is_baked_on_the_day_before() -> None:
    pie = dish("pie", oven(60), HeatStep("chill", 600), serve="cold", category="dessert")
    party = potluck(pie)
    made = timeline(party, WEEK_BEFORE, effort=0.02)

    assert (made.status, [d.late_min for d in made.dishes]) == ("optimal", [0])
    assert made.steps[0].start < at("07:00")
    assert faults(party, made, WEEK_BEFORE) == []


def test_who_is_up_until_two_can_put_something_on_at_one() -> None:
    pot = dish("pot", HeatStep("slow-cooker-low", 540), serve="cold")
    party = potluck(pot, starts_at=at("14:00"), kitchen=kitchen(awake=("12:00", "02:00")))

    made = timeline(party, SERVING - timedelta(days=3), effort=0.02)

    begins = party.local(made.steps[0].start)
    assert made.conflicts == ()
    assert begins.time() >= time(12) or begins.time() <= time(2)


def test_who_serves_after_bed_time_is_up_until_then() -> None:
    assert bed_time(potluck(starts_at=at("22:30"))) == at("22:30")
    assert bed_time(potluck(starts_at=at("17:00"))) == at("22:00")
    assert bed_time(potluck(kitchen=kitchen(awake=("10:00", "02:00")))) == at("02:00") + timedelta(days=1)


@settings(max_examples=40, deadline=None, derandomize=True)
@given(
    st.sampled_from([("07:00", "22:00"), ("10:00", "02:00"), ("06:15", "21:30"), ("00:00", "23:59")]),
    st.integers(7, 23),
    st.lists(st.tuples(st.sampled_from(["oven", "slow-cooker-low", "stove"]), st.integers(20, 700)), max_size=3),
    st.integers(0, 900),
)
def test_nothing_cold_begins_while_people_sleep(
    awake: tuple[str, str], hour: int, heats: list[tuple[str, int]], chill: int
) -> None:
    steps = [HeatStep(kind, minutes, 350 if kind == "oven" else None) for kind, minutes in heats]
    party = potluck(
        dish("it", *steps, HeatStep("chill", chill + 5), serve="cold"), starts_at=at(f"{hour}:00"),
        kitchen=kitchen(awake=awake),
    )  # fmt: skip
    up, down = (time.fromisoformat(t) for t in awake)

    made = timeline(party, WEEK_BEFORE, effort=0)

    # Who serves after bed time is up until then.
    early = [party.local(s.start).time() for s in made.steps if s.start < at("00:00")]
    assert all(up <= t <= down if up < down else (t >= up or t <= down) for t in early)
