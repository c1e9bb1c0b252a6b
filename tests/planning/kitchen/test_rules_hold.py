"""Any timeline, of any kitchen, keeps every rule or says by how many minutes it does not.

The search for ways out tries many kitchens more; it has properties of its own (test_fixes.py), and changes no step.
"""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import HealthCheck, given, settings

from planning.kitchen import timeline
from planning.potluck import Potluck
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE
from tests.planning.kitchen.strategies import kitchen_potlucks
from tests.planning.kitchen.verifier import faults

many = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True)


@many
@given(kitchen_potlucks())
def test_the_list_schedule_keeps_every_rule(potluck: Potluck) -> None:
    assert faults(potluck, timeline(potluck, WEEK_BEFORE, effort=0, searched=0), WEEK_BEFORE) == []


@many
@given(kitchen_potlucks())
def test_the_solver_keeps_every_rule(potluck: Potluck) -> None:
    assert faults(potluck, timeline(potluck, WEEK_BEFORE, effort=0.1, searched=0), WEEK_BEFORE) == []


@settings(many, max_examples=25)
@given(kitchen_potlucks(most=5))
def test_a_plan_made_two_hours_before_serving_begins_nothing_in_the_past(potluck: Potluck) -> None:
    now = SERVING - timedelta(hours=2)

    assert faults(potluck, timeline(potluck, now, effort=0.05, searched=0), now) == []


@settings(many, max_examples=25)
@given(kitchen_potlucks(most=5))
def test_the_solver_is_never_worse_than_the_list_schedule_and_never_below_its_bound(potluck: Potluck) -> None:
    greedy, solved = (timeline(potluck, WEEK_BEFORE, effort=e, searched=0) for e in (0, 0.1))

    assert solved.bound <= solved.objective <= greedy.objective


@settings(many, max_examples=25)
@given(kitchen_potlucks())
def test_the_search_for_ways_out_changes_neither_a_step_nor_which_dishes_are_told_of(potluck: Potluck) -> None:
    with_ways, without = (timeline(potluck, WEEK_BEFORE, effort=0, searched=n) for n in (6, 0))

    assert without.steps == with_ways.steps
    assert [(c.rule, c.promises) for c in without.conflicts] == [(c.rule, c.promises) for c in with_ways.conflicts]


@settings(many, max_examples=15)
@given(kitchen_potlucks())
def test_the_same_potluck_gets_the_same_timeline(potluck: Potluck) -> None:
    assert timeline(potluck, WEEK_BEFORE, effort=0.05) == timeline(potluck, WEEK_BEFORE, effort=0.05)


@settings(many, max_examples=25)
@given(kitchen_potlucks())
def test_a_timeline_breaks_a_rule_exactly_when_it_is_called_impossible(potluck: Potluck) -> None:
    found = timeline(potluck, WEEK_BEFORE, effort=0.05, searched=0)

    broken = any(d.late_min or d.unsafe_min for d in found.dishes) or any(s.lacking for s in found.steps)
    broken = broken or len(found.dishes) < len(potluck.promises)
    assert (found.status == "impossible") is broken
    assert bool(found.conflicts) is broken


@pytest.mark.parametrize("effort", [0, 0.1])
def test_nothing_to_cook_needs_no_timeline(effort: float) -> None:
    from tests.planning.kitchen.builders import potluck

    found = timeline(potluck(), WEEK_BEFORE, effort=effort)

    assert (found.status, found.steps, found.conflicts) == ("optimal", (), ())
