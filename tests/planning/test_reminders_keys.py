"""A reminder that was sent keeps its meaning: its key names what goes in, not how many came before it."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given, settings

from planning.kitchen import timeline
from planning.kitchen.result import PlannedStep, Timeline
from planning.potluck import Potluck
from planning.reminders import Reminder, reminders
from planning.reminders_told import MOVED, told_again
from tests.planning.kitchen.builders import WEEK_BEFORE, at, dish, oven, potluck
from tests.planning.kitchen.strategies import kitchen_potlucks

LONG_AGO = datetime(2000, 1, 1, tzinfo=UTC)
PARTY = potluck(dish("pie", oven(40)), dish("roast", oven(60)), host="g")


def of_the_oven(party: Potluck, *steps: PlannedStep) -> list[Reminder]:
    found = reminders(party, Timeline("optimal", 0, 0, steps), LONG_AGO)
    return [r for r in found if r.kind in ("preheat", "swap")]


def baked(promise: str, start: str, end: str, temp: float = 350.0) -> PlannedStep:
    return PlannedStep(promise, "oven", "oven:0", None, at(start), at(end), temp, 1)


def test_a_dish_put_before_another_is_announced_though_the_others_preheating_was_sent() -> None:
    before = {r.key for r in of_the_oven(PARTY, baked("pie", "16:20", "17:00"))}

    after = of_the_oven(PARTY, baked("roast", "15:10", "16:10"), baked("pie", "16:20", "17:00"))

    preheat = next(r for r in after if r.kind == "preheat")
    assert preheat.about.facts["dishes"] == ["roast"]
    assert preheat.key not in before


def test_the_preheating_of_a_dish_is_the_same_reminder_when_its_time_moves() -> None:
    keys = [{r.key for r in of_the_oven(PARTY, baked("pie", start, "17:00"))} for start in ("16:20", "16:00")]

    assert keys[0] == keys[1]


@settings(max_examples=25, deadline=None, derandomize=True)
@given(kitchen_potlucks(most=6))
def test_no_two_reminders_of_one_potluck_share_a_key(party: Potluck) -> None:
    found = reminders(party, timeline(party, WEEK_BEFORE, effort=0), LONG_AGO)

    assert len({r.key for r in found}) == len(found)
    assert all(r.due_at < r.expires_at <= r.due_at + timedelta(days=7) for r in found)


def sent(reminder: Reminder) -> dict[str, datetime]:
    return {reminder.key: reminder.due_at}


@pytest.mark.parametrize(("minutes", "again"), [(-60, False), (0, False), (30, False), (35, True)])
def test_what_was_sent_comes_again_only_when_it_has_moved_later_by_more_than_half_an_hour(
    minutes: int, again: bool
) -> None:
    first, *_ = of_the_oven(PARTY, baked("pie", "15:30", "16:10"))
    moved = replace(first, due_at=first.due_at + timedelta(minutes=minutes))

    (found,) = told_again([moved], sent(first))

    assert (found.key != first.key) is again


def test_what_came_again_comes_once_and_is_measured_from_the_last_time_told() -> None:
    first, *_ = of_the_oven(PARTY, baked("pie", "15:00", "15:40"))
    (second,) = told_again([replace(first, due_at=first.due_at + MOVED * 2)], sent(first))
    told = sent(first) | sent(second)

    same, little, much = (
        told_again([replace(first, due_at=second.due_at + timedelta(minutes=n))], told)[0] for n in (0, 20, 40)
    )

    assert {same.key, little.key} <= {first.key, second.key}
    assert much.key not in told


def test_what_does_not_hang_on_the_timeline_never_comes_again() -> None:
    (start,) = [r for r in reminders(PARTY, None, LONG_AGO) if r.kind == "start"]
    moved = replace(start, due_at=start.due_at + timedelta(hours=3))

    assert told_again([moved], sent(start)) == (moved,)
