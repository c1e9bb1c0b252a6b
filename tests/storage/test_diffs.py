"""What a change did can be told, taken back, and is not taken back over somebody else's change."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from hypothesis import given, settings

from bot.storage import Conflict, EntityChange, apply_diff, diff
from planning.potluck import Answer, Bar, Potluck, Promise, Topping
from tests import strategies as given_
from tests.storage.helpers import potluck, with_guest, with_promise

several = settings(max_examples=25, deadline=None)
SLAW = Promise("d1", "1", "slaw", "side", 12.0)
PIE = Promise("d2", "2", "pie", "dessert", 8.0)


def as_bookkept(p: Potluck, like: Potluck) -> Potluck:
    """`p` with the two fields that undo leaves alone."""
    return replace(p, previous=like.previous, last_number=like.last_number)


@several
@given(given_.pairs())
def test_taking_a_change_back_gives_what_was_before(pair: tuple[Potluck, Potluck]) -> None:
    before, after = pair

    assert apply_diff(after, diff(before, after)) == as_bookkept(before, after)


@several
@given(given_.pairs())
def test_making_a_change_again_gives_what_came_after(pair: tuple[Potluck, Potluck]) -> None:
    before, after = pair

    assert apply_diff(before, diff(before, after), reverse=False) == as_bookkept(after, before)


@several
@given(given_.pairs())
def test_a_diff_survives_json(pair: tuple[Potluck, Potluck]) -> None:
    changes = diff(*pair)

    again = tuple(EntityChange(**c) for c in json.loads(json.dumps([vars(c) for c in changes])))

    assert apply_diff(pair[1], again) == apply_diff(pair[1], changes)


@several
@given(given_.potlucks())
def test_nothing_changed_is_no_diff(p: Potluck) -> None:
    assert diff(p, p) == diff(p, replace(p)) == ()


def test_what_others_did_since_stays() -> None:
    start = potluck()
    mine = with_promise(start, SLAW)
    theirs = with_guest(with_promise(mine, PIE), "3", answer=Answer.NO)

    undone = apply_diff(theirs, diff(start, mine))

    assert undone.promises == (PIE,)
    assert undone.guest("3") == theirs.guest("3")


def test_a_thing_somebody_changed_since_is_not_taken_back() -> None:
    start = potluck()
    mine = with_promise(start, SLAW)
    theirs = replace(mine, promises=(replace(SLAW, servings=20.0),))

    with pytest.raises(Conflict) as refused:
        apply_diff(theirs, diff(start, mine))

    assert refused.value.facts == {"kind": "promise", "what": "d1"}


def test_a_thing_already_taken_back_is_not_taken_back_again() -> None:
    start = potluck()
    mine = with_promise(start, SLAW)

    with pytest.raises(Conflict):
        apply_diff(start, diff(start, mine))


def test_a_dropped_dish_comes_back_in_its_place() -> None:
    start = potluck(promises=(SLAW, PIE))
    dropped = replace(start, promises=(PIE,))

    assert apply_diff(dropped, diff(start, dropped)).promises == (SLAW, PIE)


def test_a_bar_at_which_somebody_took_a_topping_since_is_not_taken_away() -> None:
    start = potluck()
    mine = replace(start, bar=Bar("baked potato", (Topping("chives"),)))
    theirs = replace(start, bar=Bar("baked potato", (Topping("chives"), Topping("butter", "2"))))

    with pytest.raises(Conflict):
        apply_diff(theirs, diff(start, mine))


def test_the_last_number_is_never_taken_back() -> None:
    start = potluck(last_number=4)
    mine = with_promise(replace(start, last_number=5), SLAW)

    assert apply_diff(mine, diff(start, mine)).last_number == 5


def test_a_diff_names_only_what_changed() -> None:
    start = potluck(guests=40)

    assert [(c.kind, c.key) for c in diff(start, with_guest(start, "7", travel_min=9))] == [("guest", "7")]
