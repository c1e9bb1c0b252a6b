"""A diet of choice beside a dish that breaks it: told once to each cook, and never for an allergy."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Answer, Guest, Need, Party, Potluck, Promise
from planning.safety.chosen import broken, broken_news
from tests.planning.test_safety import dish, supper

HAM = replace(dish("ham"), id="ham")
PIE = replace(dish("cherry pie", category="dessert"), id="pie")


def table(*needs: Need, dishes: tuple[Promise, ...] = (HAM, PIE), answer: Answer = Answer.YES) -> Potluck:
    base = supper(*dishes)
    return replace(base, guests=(*base.guests, Guest("vera", "Vera", answer, Party(1), needs=needs)))


@pytest.mark.parametrize("need", ["halal", "kosher", "vegetarian", "vegan", "pork-free", "pescatarian"])
def test_a_dish_of_pork_breaks_what_keeps_from_pork(need: str) -> None:
    assert ("ham", need) in {(b.dish, b.need) for b in broken(table(Need(need, 1, "diet")))}


def test_an_allergy_is_told_elsewhere() -> None:
    assert broken(table(Need("milk", 1, "severe allergy"), dishes=(dish("cheese plate"),))) == ()


def test_who_does_not_come_breaks_nothing() -> None:
    assert broken(table(Need("halal", 1, "diet"), answer=Answer.NO)) == ()


def test_the_only_eater_of_that_diet_knows_their_own_dish() -> None:
    assert broken(table(Need("halal", 1, "diet"), dishes=(replace(HAM, guest="vera"),))) == ()


def test_a_new_dish_is_news_by_the_dish() -> None:
    halal = Need("halal", 1, "diet")

    assert [b.dish for b in broken_news(table(halal, dishes=(PIE,)), table(halal)).by_dish] == ["ham"]


def test_a_new_need_is_news_by_the_need() -> None:
    found = broken_news(table(), table(Need("halal", 1, "diet")))

    assert ([b.dish for b in found.by_need], found.by_dish) == (["ham"], ())


def test_a_cook_hears_of_a_vegetarian_once_and_of_a_halal_guest_with_each_dish() -> None:
    needs = (Need("halal", 1, "diet"), Need("vegetarian", 1, "diet"))
    more = replace(dish("pork ribs"), id="ribs")
    found = broken_news(table(*needs), table(*needs, dishes=(HAM, PIE, more)))

    assert [(b.dish, b.need) for b in found.by_dish] == [("pork ribs", "halal")]


NEEDS = st.lists(
    st.builds(
        Need,
        st.sampled_from(("halal", "vegetarian", "kosher", "peanut", "kiwi", "diabetic", "dairy-free")),
        st.just(1),
        st.sampled_from(("allergy", "severe allergy", "intolerance", "diet", "")),
    ),
    max_size=3,
)


@given(NEEDS, NEEDS)
def test_a_need_taken_back_or_unchanged_is_no_news(needs: list[Need], more: list[Need]) -> None:
    found = broken_news(table(*needs, *more), table(*needs))

    assert (found.by_dish, found.by_need) == ((), ())


@given(NEEDS)
def test_whatever_was_not_broken_before_is_told(needs: list[Need]) -> None:
    assert broken_news(table(), table(*needs)).by_need == broken(table(*needs))
