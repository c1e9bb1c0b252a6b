"""When a cook has to be there, and what stays the same whenever reminders are derived again."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.texts import Voice
from planning.kitchen import timeline
from planning.kitchen.result import PlannedStep, Timeline
from planning.potluck import Answer, Potluck, Promise
from planning.reminders import KINDS, Reminder, reminders
from tests.planning.kitchen.builders import WEEK_BEFORE
from tests.planning.kitchen.strategies import kitchen_potlucks
from tests.planning.test_reminders import LONG_AGO, at, kinds, local, potlucks, supper

TURKEY = Promise("t", "mei", "turkey", "main")


def into_the_oven(text: str, where: str = "venue") -> Timeline:
    start = at(text)
    return Timeline("optimal", 0, 0, (PlannedStep("t", "oven", "oven:0", None, start, start + timedelta(hours=4), 325,
                                                  1, at=where),))  # fmt: skip


def bring(found: dict[str, list[Reminder]], to: str) -> Reminder:
    return next(r for r in found["bring"] if r.to == to)


def coming() -> Potluck:
    party = supper(promises=(TURKEY,))
    return replace(party, guests=tuple(replace(g, answer=Answer.YES) for g in party.guests))


def test_a_cook_whose_dish_goes_into_the_oven_there_is_told_by_when_to_be_there() -> None:
    found = bring(kinds(coming(), into_the_oven("2027-09-18T13:15")), "mei")

    assert (local(found.due_at), found.about.facts["early"]) == ("2027-09-18T09:00", "yes")
    assert "be there by 1:00 PM" in Voice().say(found.about)  # 15 minutes to unpack: common practice, no source


def test_that_cook_is_told_when_to_set_out_though_nobody_said_how_far_it_is() -> None:
    found = [r for r in kinds(coming(), into_the_oven("2027-09-18T13:15"))["leave"] if r.to == "mei"]

    assert [local(r.due_at) for r in found] == ["2027-09-18T12:45"]
    assert "0 minutes" not in Voice().say(found[0].about)


def test_a_dish_cooked_at_home_is_brought_for_the_start() -> None:
    found = kinds(coming(), into_the_oven("2027-09-18T12:00", "home"))

    assert bring(found, "mei").about.facts["early"] == "no"
    assert "mei" not in {r.to for r in found["leave"]}


@pytest.mark.parametrize(
    ("oven", "due", "key"),
    [
        ("2027-09-18T10:00", "2027-09-17T18:00", "reminder-bring-tomorrow"),  # nine in the morning would be too late
        ("2027-09-17T20:00", "2027-09-17T09:00", "reminder-bring-before"),  # wanted the day before
        ("2027-09-17T09:00", "2027-09-16T18:00", "reminder-bring-before"),
    ],
)
def test_who_must_come_early_is_told_early_enough(oven: str, due: str, key: str) -> None:
    found = bring(kinds(coming(), into_the_oven(oven)), "mei")

    assert (local(found.due_at), found.about.key) == (due, f"{key}-hot")


def test_the_host_is_not_told_to_arrive() -> None:
    mine = Promise("t", "ines", "turkey", "main")

    found = kinds(replace(coming(), promises=(mine,)), into_the_oven("2027-09-18T13:15"))

    assert bring(found, "ines").about.facts["early"] == "no"
    assert "ines" not in {r.to for r in found["leave"]}


HOUR = timedelta(hours=1)
hours = st.integers(-400, 40).map(lambda h: timedelta(hours=h))


@settings(deadline=None, max_examples=60)
@given(potlucks(), hours, st.integers(-60, 30))
def test_deriving_at_another_time_changes_neither_keys_nor_times(party: Potluck, later: timedelta, h: int) -> None:
    start = party.starts_at + timedelta(hours=h)
    steps = tuple(
        PlannedStep(p.id, "oven", "oven:0", None, start + n * HOUR, start + n * HOUR + HOUR / 2, 350)
        for n, p in enumerate(party.promises)
    )
    made = Timeline("optimal", 0, 0, steps)
    everything = {r.key: r for r in reminders(party, made, LONG_AGO)}
    now: datetime = party.starts_at + later

    ahead = reminders(party, made, now)
    caught_up = reminders(party, made, now - timedelta(hours=18))

    assert all(everything[r.key] == r for r in (*ahead, *caught_up))
    assert {r.key for r in caught_up} == {k for k, r in everything.items() if r.due_at > now - timedelta(hours=18)}
    assert {r.key for r in ahead} <= {r.key for r in caught_up}


@settings(deadline=None, max_examples=25, derandomize=True)
@given(kitchen_potlucks(most=4))
def test_nobody_is_told_to_come_after_their_dish_is_wanted_or_after_it_is_due(party: Potluck) -> None:
    made = timeline(party, WEEK_BEFORE, effort=0)
    for reminder in reminders(party, made, WEEK_BEFORE):
        assert reminder.kind in KINDS
        assert Voice().say(reminder.about)
        if reminder.kind == "bring":
            there = datetime.fromisoformat(str(reminder.about.facts["at"]))
            said = {p.id for p in party.promises if p.arrives_at is not None}
            wanted = [s.start for s in made.doable if s.at == "venue" and s.promise not in said]
            assert reminder.due_at < there <= party.starts_at
            assert all(there < start for start in wanted)


@pytest.mark.parametrize(
    ("facts", "words"),
    [
        ({"covered": True}, "Bring turkey covered: into the oven at 325 °F from 1:15 PM to 5:15 PM."),
        ({}, "turkey: into the oven at 325 °F from 1:15 PM to 5:15 PM."),
        ({"kind": "slow-cooker-low"}, "turkey: into a slow cooker from 1:15 PM to 5:15 PM."),
    ],
)
def test_a_guest_hears_where_and_when_their_dish_is_heated(facts: dict[str, object], words: str) -> None:
    (step,) = into_the_oven("2027-09-18T13:15").steps
    plan = Timeline("optimal", 0, 0, (replace(step, **facts),))  # type: ignore[arg-type]

    assert Voice().say(bring(kinds(coming(), plan), "mei").about).endswith(words)


def test_a_guest_whose_dish_is_heated_at_home_hears_nothing_of_an_oven() -> None:
    found = bring(kinds(coming(), into_the_oven("2027-09-18T12:00", "home")), "mei")

    assert "oven" not in Voice().say(found.about)
