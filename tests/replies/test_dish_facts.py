"""What stands behind a dish goes with it: amounts, kinds, fillings, heat; a list with one amount is promised as one."""

import pytest

from planning.replies import AddPromise, ReplyContext, read


def promised(words: str) -> list[AddPromise]:
    reading = read(words, ReplyContext("me", replying_to="board"))
    assert reading.sure
    return [i for i in reading.intents if isinstance(i, AddPromise)]


@pytest.mark.parametrize(
    ("words", "dishes"),
    [
        ("coming, rolls 24", ["rolls"]),
        ("3 of us. burgers 30 and buns", ["burgers", "buns"]),
        ("2 of us, green salad for 20 and dressing", ["green salad", "dressing"]),
        ("coming! 2 pies, pecan and apple", ["pecan pie", "apple pie"]),
        ("I'll bring dumplings, 60 pieces, pork", ["dumplings with pork"]),
        ("in. mac and cheese for 20 in my slow cooker", ["mac and cheese"]),
    ],
)
def test_the_dishes_of_a_message_are_all_promised_at_once(words, dishes):
    assert [i.dish for i in promised(words)] == dishes


@pytest.mark.parametrize(
    ("words", "heat"),
    [
        ("lasagna, two 9x13 pans, needs 50 min at 375 at the hall", "needs 50 min at 375 at the hall"),
        ("green bean casserole, 9x13, 30 min 350", "30 min 350"),
        ("chicken soup for 12 i'll keep it warm in a slow cooker", "i'll keep it warm in a slow cooker"),
        ("clam chowder, 2 gallons, from home on the stove", "from home on the stove"),
    ],
)
def test_words_of_heat_are_kept_with_the_dish(words, heat):
    assert [i.heat_text for i in promised(words)] == [heat]


def test_a_dish_with_something_is_of_the_dishs_sort():
    assert promised("me+1. potato salad w/ mayo for 20")[0].category == "salad"


def test_what_an_appliance_draws_is_no_dish():
    assert [i.dish for i in promised("I'll bring the coffee urn, 1500 watts")] == ["coffee urn"]
