"""Reminders derived from what changed are those derived from nothing."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.derived import Derived
from planning.potluck import Answer, Guest, Potluck
from planning.reminders import ahead, reminders
from tests.strategies import guests, pairs, potlucks

LONG_AGO = datetime(1900, 1, 1, tzinfo=UTC)
START = datetime(2027, 9, 18, 22, tzinfo=UTC)
NO_STORE: Any = None
"""Deriving alone asks no database."""


@st.composite
def stories(draw: st.DrawFn) -> list[Potluck]:
    """A potluck and what becomes of it: mostly guests who say something else, sometimes anything else."""
    before, after = draw(pairs())
    story = [before, after]
    for _ in range(draw(st.integers(1, 5))):
        now = story[-1]
        if now.guests and draw(st.integers(0, 3)):
            at = draw(st.integers(0, len(now.guests) - 1))
            said = replace(draw(guests(now.guests[at].id)), name=now.guests[at].name)
            story.append(replace(now, guests=(*now.guests[:at], said, *now.guests[at + 1 :])))
        else:
            story.append(draw(st.sampled_from([before, after])))
    return story


@settings(deadline=None, max_examples=50)
@given(story=stories())
def test_what_is_derived_after_a_change_is_what_is_derived_from_nothing(story) -> None:
    derived = Derived(NO_STORE)

    for potluck in story:
        assert ahead(derived.whole(potluck, None), LONG_AGO) == reminders(potluck, None, LONG_AGO)


@settings(deadline=None, max_examples=20)
@given(many=st.lists(potlucks(), min_size=3, max_size=4))
def test_no_more_potlucks_are_kept_than_were_allowed(many) -> None:
    derived = Derived(NO_STORE, most=2)

    for n, potluck in enumerate(many):
        derived.whole(replace(potluck, id=f"p{n}"), None)

    assert len(derived._known) == 2


def test_only_the_guest_who_answered_gets_new_reminders() -> None:
    table = Potluck("p", START, "UTC", guests=(Guest("1", "Ines"), Guest("2", "Ravi")))
    derived = Derived(NO_STORE)
    before = {r.key: r for r in derived.whole(table, None)}
    settled = replace(table.guests[0], answer=Answer.YES)

    after = {r.key: r for r in derived.whole(replace(table, guests=(settled, *table.guests[1:])), None)}

    assert before.keys() - after.keys() == {f"answer-by:{settled.id}"}
    assert all(after[key] is before[key] for key in after)
