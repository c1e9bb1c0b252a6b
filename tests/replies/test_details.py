"""What stands behind a dish, a piece at a time, is told of it and makes no dish of its own."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import pytest

from planning.potluck import Party
from planning.replies import AddPromise, SetNeeds, SetParty, read
from planning.replies.intents import ReplyContext

BOARD = ReplyContext("u1", "Ana", "board")
TABLERO = ReplyContext("u1", "Ana", "board", language="es")


def dishes(text: str, context: ReplyContext = BOARD) -> list[tuple[str, float | None, str | None, str | None]]:
    reading = read(text, context)
    assert reading.sure
    return [(i.dish, i.servings, i.quantity, i.heat_text) for i in reading.intents if isinstance(i, AddPromise)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("I'm doing the stew, lamb, huge pot, call it done for 14 people", None),
        ("I'll bring my potato bake, feeds 14, needs 375 for 70 minutes", ("potato bake", 14.0, None, "needs 375 for 70 minutes")),
        ("ill make the chilli, pork, big pot, about 9 portions", ("pork chilli", 9.0, None, None)),
        ("I'll bring a ham, 8 lb bone in, fully cooked, warm it at 325 for an hour and a half", ("ham", None, "8 lb", "warm it at 325 for an hour and a half")),
        ("I am bringing a pasta bake for ten, made with tinned tomatoes.", ("pasta bake", 10.0, None, None)),
        ("sorry the flan is out then, i'll bring a carrot cake instead, cuts into 16", ("carrot cake", 16.0, None, None)),
        ("I'll get three packs of cookies, 12 each", ("cookies", None, "36", None)),
        ("garlic bread, 400 for 12 min", ("garlic bread", None, None, "400 for 12 min")),
        ("I'll do a lasagna, it needs to stay in the fridge, serves 8", ("lasagna", 8.0, None, None)),
    ],
)  # fmt: skip
def test_amount_heat_and_state_behind_a_dish_are_its_own(text, expected):
    if expected is None:
        assert "pot" not in [i.dish for i in read(text, BOARD).intents if isinstance(i, AddPromise)]
        return
    assert dishes(text) == [expected]


def test_what_is_said_of_both_goes_to_both():
    told = dishes("I'll make a tray of flapjacks and a tray of brownies, both 170 for 30 min")

    assert [(dish, heat) for dish, _, _, heat in told] == [("flapjacks", "170 for 30 min"), ("brownies", "170 for 30 min")]


def test_a_frozen_bird_is_frozen_with_its_weight():
    (dish,) = [i for i in read("Roast turkey, 14 lb bird, still frozen", BOARD).intents if isinstance(i, AddPromise)]

    assert (dish.quantity, dish.frozen_lb) == ("14 lb", 14.0)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("yo llevo el pozole mijita, como para 25, con pollo", [("pozole con pollo", 25.0, None)]),
        ("llevo arroz blanco y lentejas, de cada uno para 20", [("arroz blanco", 20.0, None), ("lentejas", 20.0, None)]),
        ("llevo una jarra de agua de limón de 8 litros", [("agua de limón", None, "8 litros")]),
        ("yo me aviento el pastel, de chocolate para 30, hay que meterlo en el refri", [("pastel de chocolate", 30.0, None)]),
    ],
)  # fmt: skip
def test_spanish_details_are_the_dishs_own(text, expected):
    assert [(dish, servings, quantity) for dish, servings, quantity, _ in dishes(text, TABLERO)] == expected


@pytest.mark.parametrize("text", ["we're coming, 4 people", "2 adults, no kids, 4 people in all", "me and my wife, for 2"])
def test_without_a_dish_before_them_such_words_mean_what_they_meant(text):
    assert not [i for i in read(text, BOARD).intents if isinstance(i, AddPromise)]


def test_a_party_behind_the_details_is_still_read():
    reading = read("Lasagna from me, 375 for 50 min. 2 adults 1 teen", BOARD)

    assert [i.party for i in reading.intents if isinstance(i, SetParty)] == [Party(2, teens=1)]


def test_room_in_the_oven_is_no_ingredient():
    reading = read("i could do a tray of cornbread if there's oven space", BOARD)

    assert not [i for i in reading.intents if isinstance(i, SetNeeds) or (isinstance(i, AddPromise) and i.contents)]
