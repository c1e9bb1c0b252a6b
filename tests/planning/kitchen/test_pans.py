"""What the cook at the oven is told: turn it on, put in, take out, swap; each pan once."""

from __future__ import annotations

from datetime import UTC, datetime

from hypothesis import given, settings

from planning.kitchen import PlannedStep, Timeline, timeline
from planning.kitchen.pans import visits
from planning.potluck import HeatStep, Potluck
from planning.reminders import reminders
from tests.planning.kitchen.builders import WEEK_BEFORE, at, dish, oven, potluck
from tests.planning.kitchen.strategies import kitchen_potlucks

PARTY = potluck(*(dish(name, oven(30)) for name in ("pie", "bake", "roast")), host="g")


def stay(promise: str, start: str, end: str, temp: float = 350.0, step: int = 0) -> PlannedStep:
    return PlannedStep(promise, "oven", "oven:0", None, at(start), at(end), temp, 1, step=step)


def told(*steps: PlannedStep) -> list[tuple[str, str]]:
    """(wall time, text key) of what the host hears about ovens."""
    found = reminders(PARTY, Timeline("optimal", 0, 0, steps), datetime(2000, 1, 1, tzinfo=UTC))
    return [(PARTY.local(r.due_at).strftime("%H:%M"), r.about.key) for r in found if r.kind in ("preheat", "swap")]


def test_a_pan_that_joins_another_is_put_in_at_its_time() -> None:
    assert told(stay("bake", "16:00", "16:50"), stay("pie", "16:25", "16:58")) == [
        ("15:45", "reminder-preheat"),
        ("16:25", "reminder-put-in"),
    ]


def test_pans_out_before_the_next_go_in_are_swapped() -> None:
    assert told(stay("bake", "15:00", "16:00"), stay("pie", "16:15", "16:55", 425)) == [
        ("14:45", "reminder-preheat"),
        ("16:00", "reminder-swap"),
    ]


def test_a_pan_nothing_follows_is_taken_out_and_one_served_at_once_is_not_mentioned() -> None:
    assert told(stay("bake", "14:00", "15:00"), stay("pie", "15:30", "16:30"), stay("roast", "15:30", "16:50")) == [
        ("13:45", "reminder-preheat"),
        ("15:00", "reminder-swap"),
        ("16:30", "reminder-take-out"),
    ]


def test_after_an_hour_of_rest_the_oven_is_turned_on_again() -> None:
    assert [k for _, k in told(stay("bake", "13:00", "14:00"), stay("pie", "16:00", "16:50"))] == [
        "reminder-preheat",
        "reminder-take-out",
        "reminder-preheat",
    ]


def test_a_dish_that_goes_on_covered_and_uncovered_stays_in() -> None:
    assert told(stay("bake", "16:00", "16:30"), stay("bake", "16:30", "16:50", step=1)) == [
        ("15:45", "reminder-preheat")
    ]


def test_a_change_of_setting_is_said_with_the_swap() -> None:
    steps = (stay("bake", "15:00", "16:00"), stay("pie", "16:15", "16:55", 425))
    found = reminders(PARTY, Timeline("optimal", 0, 0, steps), datetime(2000, 1, 1, tzinfo=UTC))

    (swap,) = [r for r in found if r.kind == "swap"]
    assert (swap.about.facts["change"], swap.about.facts["temp"]) == ("yes", 425)


@settings(max_examples=40, deadline=None, derandomize=True)
@given(kitchen_potlucks())
def test_every_pan_goes_in_once_and_comes_out_once(party: Potluck) -> None:
    steps = timeline(party, WEEK_BEFORE, effort=0, searched=0).steps
    every = [s for s in steps if (s.appliance or "").startswith("oven:")]
    found = list(visits(steps))

    into = [(s.promise, s.start) for v in found for s in v.into]
    out = [(s.promise, s.end) for v in found for s in v.out]
    assert len(into) == len(set(into)) == len(out) == len(set(out))
    assert {p for p, _ in into} == {p for p, _ in out} == {s.promise for s in every}
    assert all(s.end <= v.at for v in found for s in v.out)
    assert all(v.in_at is None or v.at <= v.in_at for v in found)


def test_nothing_in_an_oven_means_no_visits() -> None:
    party = potluck(dish("stew", HeatStep("stove", 40)))

    assert list(visits(timeline(party, WEEK_BEFORE, effort=0).steps)) == []
