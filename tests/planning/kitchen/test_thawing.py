"""What is frozen: the rule for thawing (THAW-03: a day in the refrigerator for every 4 lb, rounded up), in the plan,
in the reminder and in the conflict, which all tell the same."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from planning.kitchen import Timeline, timeline
from planning.kitchen.mend import mended
from planning.potluck import HeatStep, Potluck
from planning.reminders import reminders
from planning.safety import safety
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, dish, oven, potluck
from tests.planning.kitchen.verifier import faults

THAW = HeatStep("thaw", 2880)


def plan(party: Potluck, days: float = 7) -> Timeline:
    return timeline(party, SERVING - timedelta(days=days), effort=0.02)


def turkey(lb: float = 14, minutes: int = 2880) -> Potluck:
    return potluck(dish("turkey", HeatStep("thaw", minutes), oven(200, 325), frozen_lb=lb))


def test_less_time_to_thaw_than_the_rule_asks_for_is_one_conflict_with_the_figure_of_the_rule() -> None:
    (conflict,) = plan(turkey()).conflicts

    assert (conflict.rule, conflict.fix.kind, conflict.why.facts["days"]) == ("thaw-short", "thaw-longer", 4)


def test_the_step_the_reminder_and_the_caution_name_the_same_moment() -> None:
    party = turkey()
    made = plan(party)

    begins = next(s.start for s in made.steps if s.kind == "thaw")
    told = next(r for r in reminders(party, made, WEEK_BEFORE) if r.kind == "thaw")
    caution = next(n for n in safety(party, WEEK_BEFORE, made) if n.rule == "THAW-03")
    assert told.about.facts["by"] == party.local(begins).isoformat()
    assert caution.deadline == begins


def test_taken_out_as_early_as_the_rule_asks_nothing_is_wrong() -> None:
    assert plan(turkey(minutes=4 * 1440)).conflicts == ()


def test_the_way_out_gives_it_the_days_of_the_rule() -> None:
    party = turkey()
    (conflict,) = plan(party).conflicts

    after = mended(party, "turkey", conflict.fix.kind, conflict.fix.minutes)

    assert after is not None
    assert plan(after).conflicts == ()


def test_what_can_no_longer_thaw_in_the_refrigerator_goes_into_cold_water() -> None:
    (conflict,) = plan(turkey(), days=3).conflicts

    # THAW-05: 30 minutes a pound, so 7 hours.
    assert (conflict.rule, conflict.fix.kind, conflict.fix.text.facts["hours"]) == ("thaw-late", "cold-water", 7)


def test_what_not_even_cold_water_thaws_in_time_is_told_as_such() -> None:
    party = potluck(dish("turkey", oven(200, 325), frozen_lb=14))

    (conflict,) = [c for c in plan(party, days=5 / 24).conflicts if c.rule.startswith("thaw")]

    assert (conflict.rule, conflict.fix.kind) == ("thaw-late", "thawed")


def test_a_thaw_that_is_under_way_is_not_told_again() -> None:
    party = turkey(minutes=4 * 1440)
    made = plan(party)
    steps = [{"promise": s.promise, "kind": s.kind, "start": s.start.isoformat()} for s in made.steps]
    later = replace(party, previous={"steps": steps})

    assert plan(later, days=1).conflicts == ()


@settings(max_examples=40, deadline=None, derandomize=True)
@given(st.floats(0.5, 24), st.integers(60, 6000), st.integers(10, 240))
def test_whatever_is_given_it_leaves_the_freezer_as_early_as_the_rule_says(
    lb: float, given_min: int, bake: int
) -> None:
    party = potluck(dish("roast", HeatStep("thaw", given_min), oven(bake, 325), frozen_lb=lb))
    now = SERVING - timedelta(days=12)
    made = timeline(party, now, effort=0)

    thaw, heat = (next(s for s in made.steps if s.kind == kind) for kind in ("thaw", "oven"))
    days = -(-lb // 4)
    assert heat.start - thaw.start >= timedelta(days=days)
    assert faults(party, made, now) == []
