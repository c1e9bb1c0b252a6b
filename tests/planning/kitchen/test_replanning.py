"""Planning again: what is under way stays, and nobody gets a new time without need."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from hypothesis import given, settings

from planning.kitchen import PlannedStep, Timeline, timeline
from planning.potluck import HeatStep, Potluck
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, at, dish, kitchen, oven, potluck
from tests.planning.kitchen.strategies import kitchen_potlucks


def kept(found: Timeline, started: list[object] | None = None) -> dict[str, object]:
    """A timeline as the file keeps it."""
    names = ("promise", "kind", "appliance", "circuit", "temp_f")
    steps = [{n: getattr(s, n) for n in names} | {"start": s.start.isoformat()} for s in found.steps]
    return {"steps": steps} if started is None else {"steps": steps, "started": started}


def starts(found: Timeline) -> dict[tuple[str, int], object]:
    return {(s.promise, s.step): s.start for s in found.steps}


def of(found: Timeline, promise: str) -> PlannedStep:
    return next(s for s in found.steps if s.promise == promise)


PARTY = potluck(dish("stew", HeatStep("slow-cooker-low", 400)), dish("pie", HeatStep("prep", 20), oven(60)))


def test_an_unchanged_potluck_keeps_every_time() -> None:
    first = timeline(PARTY, WEEK_BEFORE, effort=0.3)

    again = timeline(replace(PARTY, previous=kept(first)), WEEK_BEFORE, effort=0.3)

    assert starts(again) == starts(first)


def test_times_people_know_are_kept_though_others_would_do_as_well() -> None:
    cold = potluck(dish("salad", HeatStep("prep", 20), serve="cold"))
    known = {"steps": [{"promise": "salad", "kind": "prep", "start": at("11:15").isoformat()}]}

    found = timeline(replace(cold, previous=known), WEEK_BEFORE, effort=0.3)

    assert of(found, "salad").start == at("11:15")


def test_a_new_dish_does_not_move_what_need_not_move() -> None:
    first = timeline(PARTY, WEEK_BEFORE, effort=0.3)
    more = replace(PARTY, promises=(*PARTY.promises, dish("soup", HeatStep("stove", 30))), previous=kept(first))

    again = timeline(more, WEEK_BEFORE, effort=0.3)

    assert {k: v for k, v in starts(again).items() if k[0] != "soup"} == starts(first)


def test_a_slow_cooker_that_is_on_stays_on_though_it_began_in_the_past() -> None:
    first = timeline(PARTY, WEEK_BEFORE, effort=0.3)
    noon = at("12:00")

    again = timeline(replace(PARTY, previous=kept(first)), noon, effort=0.3)

    assert of(again, "stew") == of(first, "stew")
    assert again.status == "optimal"


def test_a_step_not_named_among_those_started_begins_now_or_later() -> None:
    first = timeline(PARTY, WEEK_BEFORE, effort=0.3)
    noon = at("12:00")

    again = timeline(replace(PARTY, previous=kept(first, started=["pie"])), noon, effort=0.3)

    assert of(again, "stew").start >= noon


def test_a_thaw_that_began_days_ago_is_kept() -> None:
    thawing = dish("ham", HeatStep("thaw", 2880, at="home"), oven(60))
    first = timeline(potluck(thawing), WEEK_BEFORE, effort=0.3)

    again = timeline(potluck(thawing, previous=kept(first)), SERVING - timedelta(hours=5), effort=0.3)

    assert of(again, "ham").start == of(first, "ham").start < SERVING - timedelta(days=2)


def test_what_cannot_be_read_of_the_last_plan_is_passed_over() -> None:
    odd = {"steps": [3, {"promise": "pie"}, {"promise": "pie", "kind": "oven", "start": "soon"}], "started": 7}

    assert timeline(replace(PARTY, previous=odd), WEEK_BEFORE, effort=0).status == "optimal"


def test_more_of_an_appliance_never_makes_it_worse() -> None:
    crowded = potluck(*(dish(f"pie {n}", oven(50, 350 + 50 * n, pans=2)) for n in range(4)))

    one, two = (timeline(replace(crowded, kitchen=kitchen(ovens=n)), WEEK_BEFORE, effort=1) for n in (1, 2))

    assert two.objective <= one.objective


@settings(max_examples=15, deadline=None, derandomize=True)
@given(kitchen_potlucks(most=4))
def test_half_way_through_what_has_begun_is_as_it_was(party: Potluck) -> None:
    first = timeline(party, WEEK_BEFORE, effort=0)
    now = SERVING - timedelta(minutes=90)

    again = starts(timeline(replace(party, previous=kept(first)), now, effort=0))

    # A rest runs on from the step before it, and an added hold has no step of its own to keep.
    begun = {
        (s.promise, s.step): s.start for s in first.steps if s.start <= now and s.kind not in ("rest", "keep-warm")
    }
    assert {key: again[key] for key in begun if key in again} == begun
