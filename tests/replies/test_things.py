"""Dishes, amounts, swaps and questions in people's own words: one claim each, and laws over many dishes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.replies import AddPromise, Ask, ChangePromise, DropPromise, ReplyContext, SetAnswer, SetParty, read

GUESTS = (("ravi", "Ravi"), ("pat", "Pat"))
RAVI = ReplyContext("ravi", "Ravi", "board", guests=GUESTS)
WITH_SLAW = ReplyContext("ravi", "Ravi", "board", guests=GUESTS, own_promises=(("p1", "slaw"),))
DISHES = ("slaw", "potato salad", "lasagna", "chili", "cornbread", "garlic bread", "lentil soup", "quiche")


def dishes(text: str, context: ReplyContext = RAVI) -> list[tuple[str, float | None, str | None]]:
    return [(i.dish, i.servings, i.quantity) for i in read(text, context).intents if isinstance(i, AddPromise)]


@given(st.sampled_from(DISHES), st.integers(6, 200))
@pytest.mark.parametrize(
    "shape",
    [
        "{dish} for {n}", "{dish}, {n} servings", "{dish} ({n} people)", "{dish} that feeds {n}",
        "I'll bring {dish}, enough for {n}", "{dish} from me, should do for about {n}", "{dish}. Serves {n}.",
    ],
)  # fmt: skip
def test_however_the_eaters_are_said_they_are_the_servings(shape: str, dish: str, n: int) -> None:
    assert dishes(shape.format(dish=dish, n=n)) == [(dish, n, None)]


@given(st.sampled_from(DISHES), st.sampled_from(["3 kg", "2 bags", "4 litres", "2 dozen"]))
@pytest.mark.parametrize("shape", ["{q} of {dish}", "{dish}, {q}", "{dish} ({q})", "I'll do {dish}, about {q}"])
def test_an_amount_before_the_dish_or_behind_it_is_the_same(shape: str, dish: str, q: str) -> None:
    assert dishes(shape.format(dish=dish, q=q)) == [(dish, None, q)]


def test_the_kind_before_a_colon_is_no_dish() -> None:
    assert dishes("I'll take drinks: lemonade for 20, iced tea for 10") == [
        ("lemonade", 20, None),
        ("iced tea", 10, None),
    ]


def test_an_amount_for_each_is_that_of_all() -> None:
    assert [s for _, s, _ in dishes("will do pasta salad and garlic bread, both for 10")] == [10, 10]


def test_money_is_no_dish() -> None:
    assert [d for d, _, _ in dishes("we can contribute $20 and a potato salad")] == ["potato salad"]


@given(st.sampled_from(DISHES), st.sampled_from(["produce", "conjure", "wangle", "muster"]))
def test_a_dish_in_a_sentence_of_unknown_words_is_asked_about_and_never_noted_at_once(dish: str, verb: str) -> None:
    reading = read(f"we might {verb} some {dish}", RAVI)

    assert not reading.sure


def test_what_is_sure_need_not_wait_for_what_is_asked() -> None:
    reading = read("yes! alone. We might produce some baklava", RAVI)

    assert not reading.sure
    assert {type(i) for i in reading.now} == {SetAnswer, SetParty}


def test_nothing_is_done_about_a_party_while_its_coming_is_asked() -> None:
    reading = read("Ann can't come", RAVI)

    assert reading.now == ()


@given(st.sampled_from([d for d in DISHES if d != "slaw"]), st.integers(6, 40))
@pytest.mark.parametrize(
    "shape",
    [
        "swap my slaw for {dish} for {n}",
        "{dish} for {n} instead of slaw",
        "scratch the slaw, I'll do {dish} for {n} instead",
    ],
)  # fmt: skip
def test_however_a_swap_is_put_the_promise_changes_its_dish(shape: str, dish: str, n: int) -> None:
    found = [i for i in read(shape.format(dish=dish, n=n), WITH_SLAW).intents if isinstance(i, ChangePromise)]

    assert [(i.promise, i.dish, i.servings) for i in found] == [("p1", dish, n)]


@given(st.integers(2, 99))
@pytest.mark.parametrize(
    "shape", ["my slaw will be for {n}", "cut the slaw down to {n}", "the slaw serves {n}", "make my slaw for {n}"]
)
def test_however_a_new_size_is_put_it_is_the_servings(shape: str, n: int) -> None:
    found = [i for i in read(shape.format(n=n), WITH_SLAW).intents if isinstance(i, ChangePromise)]

    assert [(i.promise, i.servings) for i in found] == [("p1", n)]


def test_what_is_in_ones_dish_is_not_the_dish() -> None:
    assert not any(isinstance(i, DropPromise) for i in read("no mayo in the slaw", WITH_SLAW).intents)


def test_a_dish_is_handed_to_a_guest_by_name_after_a_question() -> None:
    reading = read("can Pat take over my slaw?", WITH_SLAW)

    assert not reading.sure
    assert [(i.promise, i.to) for i in reading.intents if isinstance(i, DropPromise)] == [("p1", "pat")]


def test_what_a_guest_lets_be_told_is_asked_about() -> None:
    reading = read("Pat says she'll bring rolls for 12", RAVI)

    assert not reading.sure
    assert [(i.dish, i.by) for i in reading.intents if isinstance(i, AddPromise)] == [("rolls", "pat")]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("what did Pat sign up for?", "who-brings"),
        ("is there parking for a van?", "host"),
        ("why did you do that?", "why"),
        ("which one was I doing again?", "my-list"),
        ("are we ok for drinks?", "missing"),
    ],
)
def test_what_a_question_is_after(text: str, topic: str) -> None:
    assert [i.topic for i in read(text, RAVI).intents if isinstance(i, Ask)] == [topic]


@pytest.mark.parametrize(
    "text",
    ["making lasagna for 6 tonight", "bringing soup for 2 to mum", "I'm making 30 cupcakes for the fete on Saturday"],
)
def test_in_the_open_chat_food_for_another_meal_is_left_alone(text: str) -> None:
    reading = read(text, ReplyContext("ravi", "Ravi", None, guests=GUESTS))

    assert (reading.intents, reading.question) == ((), None)
