"""Where an allergy meets the table, and what of it is news."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.potluck import Answer, Bar, Guest, Need, Party, Potluck, Topping
from planning.safety.met import met, news
from tests.planning.test_safety import dish, supper

LISTED = dish("noodle salad", ingredients=("noodles", "peanuts"))
USUAL = replace(dish("carrot cake"), id="cake")


def table(*needs: Need, answer: Answer = Answer.YES) -> Potluck:
    base = supper(LISTED, USUAL)
    return replace(base, guests=(*base.guests, Guest("vera", "Vera", answer, Party(1), needs=needs)))


def dishes(*needs: Need) -> list[tuple[str, str]]:
    return [(m.dish, m.how) for m in met(table(*needs))]


def test_what_the_cook_listed_is_told_apart_from_what_is_usual() -> None:
    assert dishes(Need("peanut", 1, "allergy")) == [("noodle salad", "listed")]
    assert dishes(Need("tree-nut", 1, "allergy")) == [("carrot cake", "usual")]


@pytest.mark.parametrize("need", [Need("vegan", 1, "diet"), Need("milk", 1, "intolerance")])
def test_a_diet_and_an_intolerance_meet_nothing(need: Need) -> None:
    assert dishes(need) == []


def test_an_allergy_to_what_no_table_knows_is_met_where_its_word_stands() -> None:
    kiwi = replace(LISTED, ingredients=("kiwi", "melon"))
    potluck = replace(table(Need("kiwi", 1, "severe allergy")), promises=(kiwi, USUAL))

    assert [(m.dish, m.how) for m in met(potluck)] == [("noodle salad", "listed")]


def test_perhaps_counts_for_a_severe_allergy_only() -> None:
    brownies = replace(table(Need("tree-nut", 1, "allergy")), promises=(dish("brownies"),))
    severe = replace(table(Need("tree-nut", 1, "severe allergy")), promises=(dish("brownies"),))

    assert met(brownies) == ()
    assert [m.how for m in met(severe)] == ["perhaps"]


def test_the_owners_own_dish_is_left_out() -> None:
    potluck = table(Need("peanut", 1, "severe allergy"))

    assert met(replace(potluck, promises=(replace(LISTED, guest="vera"),))) == ()


def test_a_bowl_of_the_bar_counts_as_a_dish_of_whoever_brings_it() -> None:
    potluck = table(Need("peanut", 1, "allergy"))
    cook = potluck.guests[0].id
    bar = replace(potluck, promises=(), bar=Bar("noodles", (Topping("chopped peanuts", cook), Topping("peanuts"))))

    assert [(m.dish, m.cooks) for m in met(bar)] == [("chopped peanuts", (cook,))]


def test_an_allergy_that_turns_severe_is_news_again() -> None:
    found = news(table(Need("peanut", 1, "allergy")), table(Need("peanut", 1, "severe allergy")))

    assert [m.dish for m in found.by_need] == ["noodle salad"]
    assert found.severe == ("peanut",)


def test_a_guest_who_comes_after_all_brings_the_allergy_along() -> None:
    need = Need("peanut", 1, "allergy")

    assert [m.dish for m in news(table(need, answer=Answer.NO), table(need)).by_need] == ["noodle salad"]


def test_a_cook_who_confirms_what_was_usual_is_news_of_the_dish() -> None:
    before = table(Need("tree-nut", 1, "allergy"))
    after = replace(before, promises=(LISTED, replace(USUAL, ingredients=("carrots", "walnuts"))))

    assert [(m.dish, m.how) for m in news(before, after).by_dish] == [("carrot cake", "listed")]


def test_of_a_dish_nobody_listed_the_host_is_reminded_beside_a_new_severe_allergy() -> None:
    assert news(table(), table(Need("peanut", 1, "severe allergy"))).unlisted == ("carrot cake",)


NEEDS = st.lists(
    st.builds(
        Need,
        st.sampled_from(("peanut", "tree-nut", "milk", "egg", "vegan", "kiwi")),
        st.just(1),
        st.sampled_from(("allergy", "severe allergy", "intolerance", "diet", "")),
    ),
    max_size=3,
)


@given(NEEDS)
def test_what_has_not_changed_is_no_news(needs: list[Need]) -> None:
    found = news(table(*needs), table(*needs))

    assert (found.by_need, found.by_dish, found.severe, found.unlisted) == ((), (), (), ())


@given(NEEDS, NEEDS)
def test_a_need_taken_back_is_never_news(needs: list[Need], more: list[Need]) -> None:
    found = news(table(*needs, *more), table(*needs))

    assert not {m.need for m in found.by_need} - {n.need for n in needs}
    assert found.by_dish == ()


@given(NEEDS)
def test_whatever_was_not_there_before_is_told_of(needs: list[Need]) -> None:
    assert news(table(), table(*needs)).by_need == met(table(*needs))
