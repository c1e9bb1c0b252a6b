"""Whoever can eat only some of the mains gets a whole portion of those."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.potluck import Potluck
from tests.planning.pantry import amounts, cookout, total

MEATS = ("pulled pork", "roast turkey", "baked ham", "vegetarian chili")


def with_vegetarians(people: int, vegetarians: int) -> Potluck:
    plain = cookout(people, *MEATS)
    first = tuple(replace(g, diets=("vegetarian",)) for g in plain.guests[:vegetarians])
    return replace(plain, guests=first + plain.guests[vegetarians:])


def test_who_can_eat_one_main_of_four_gets_a_whole_portion_of_it() -> None:
    # Four mains are taken at 0.375 each; the ten vegetarians take a whole cup of the one they can eat.
    chili = amounts(with_vegetarians(20, 10))["vegetarian chili"]

    assert chili.per_eater_value == pytest.approx((10 * 0.375 + 10 * 1.0) / 20)
    assert total(with_vegetarians(20, 10), "vegetarian chili", "cup") >= 10


def test_a_need_every_main_suits_or_none_does_changes_nothing() -> None:
    plain, kosher = cookout(20, "pulled pork", "baked ham"), cookout(20, "pulled pork", "baked ham")
    kosher = replace(kosher, guests=(replace(kosher.guests[0], diets=("kosher",)), *kosher.guests[1:]))

    assert [p.total for p in amounts(kosher).values()] == [p.total for p in amounts(plain).values()]


@settings(deadline=None)
@given(st.integers(1, 30), st.data())
def test_more_vegetarians_never_mean_less_of_any_main(people: int, data: st.DataObject) -> None:
    some = data.draw(st.integers(0, people - 1))
    fewer, more = amounts(with_vegetarians(people, some)), amounts(with_vegetarians(people, some + 1))

    assert all(more[item].per_eater_value >= fewer[item].per_eater_value for item in MEATS)
