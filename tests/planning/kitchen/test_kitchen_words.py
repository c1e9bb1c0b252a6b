"""What cooks and hosts write about heat and appliances. Sentences of our own; gas marks are common practice."""

from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.kitchen_words import Unread, cooking_words, read_kitchen, read_steps, taken_as_celsius
from planning.potluck import Circuit, Kitchen, SlowCooker


@pytest.mark.parametrize(
    ("words", "steps"),
    [
        ("40 minutes at 375", [("oven", 40, 375)]),
        ("375 for 40", [("oven", 40, 375)]),
        ("40 at 375", [("oven", 40, 375)]),
        ("an hour and a half at 350", [("oven", 90, 350)]),
        ("1 1/2 hours at 350", [("oven", 90, 350)]),
        ("1½ hours at 350", [("oven", 90, 350)]),
        ("1h30 at 350f", [("oven", 90, 350)]),
        ("45-50 minutes at 180 °C", [("oven", 50, 356)]),  # the longer end; 180 x 9 / 5 + 32
        ("half an hour at gas mark 4", [("oven", 30, 350)]),
        ("6 hours on low", [("slow-cooker-low", 360, None)]),
        ("six hours, on low", [("slow-cooker-low", 360, None)]),
        ("on high for 4 hours", [("slow-cooker-high", 240, None)]),
        ("8 hours on low or 4 hours on high", [("slow-cooker-low", 480, None)]),  # the first of two ways
        ("6 hours in the slow cooker", [("slow-cooker-low", 360, None)]),
        ("20 min on the stove", [("stove", 20, None)]),
        ("10 minutes in the microwave on high", [("microwave", 10, None)]),
        ("50 minutes at 375, then rest 10 minutes", [("oven", 50, 375), ("rest", 10, None)]),
        (
            "30 min prep, 40 minutes at 350 and 10 minutes rest",
            [("prep", 30, None), ("oven", 40, 350), ("rest", 10, None)],
        ),
        ("covered for 30 minutes at 350, then 10 more minutes uncovered", [("oven", 30, 350), ("oven", 10, 350)]),
        ("90 minutes at 3500", [("oven", 90, 3500)]),  # a slip that the plan asks about
    ],
)
def test_words_about_heat_are_read(words: str, steps: list[tuple[str, int, float | None]]) -> None:
    assert [(s.kind, s.minutes, s.temp_f) for s in read_steps(words)] == steps


@pytest.mark.parametrize("words", ["40 minutes", "5 minutes on high", "at 350", "", "0 minutes at 350", "soon"])
def test_words_that_leave_out_how_or_how_long_are_not_guessed(words: str) -> None:
    with pytest.raises(Unread):
        read_steps(words)


def test_what_is_said_to_be_at_home_stays_there_until_a_place_is_named() -> None:
    steps = read_steps("bake 1 hour at 350 at home, then rest 10 minutes, then 20 minutes at 325 in the oven there")

    assert [s.at for s in steps] == ["home", "home", "venue"]


def test_pans_lids_and_own_appliances_are_read() -> None:
    covered, own = read_steps("2 pans, 30 minutes at 350 covered; 3 hours in my own slow cooker")

    assert (covered.pans, covered.covered, own.own_appliance) == (2, True, True)


@pytest.mark.parametrize(("figure", "temp_f"), [("220", 428), ("350", 350), ("180", 356), ("220 f", 220)])
def test_at_a_metric_table_a_bare_figure_of_an_oven_is_celsius(figure: str, temp_f: float) -> None:
    assert read_steps(f"40 minutes at {figure}", metric=True)[0].temp_f == temp_f


@pytest.mark.parametrize(
    ("words", "dish"),
    [
        ("needs 40 minutes at 375", None),
        ("the lasagna needs 50 minutes at 375 and then 10 minutes rest", "lasagna"),
        ("my turkey takes 4 hours at 325", "roast turkey"),
        ("lasagna: an hour at 350, covered", "lasagna"),
        ("actually 45 min at 180 c", None),
    ],
)
def test_a_message_of_nothing_but_cooking_is_one(words: str, dish: str | None) -> None:
    found = cooking_words(words, ("lasagna", "roast turkey"))

    assert found is not None
    assert found[0] == dish


@pytest.mark.parametrize(
    "words",
    [
        "we will be there in 40 minutes at 375 Main Street",
        "I will be 40 minutes late",
        "does it need 40 minutes at 375?",
        "40 minutes at 375 for the quiche of my aunt",
        "the kids need 2 hours rest",
        "party of 40 at 200",
    ],
)
def test_a_message_of_something_else_is_left_to_others(words: str) -> None:
    assert cooking_words(words, ("lasagna",)) is None


@given(st.text(max_size=80) | st.text("0123456789 hmat½/.,-then", max_size=60))
def test_no_words_upset_the_readers(words: str) -> None:
    for read in (read_steps, lambda w: read_kitchen(w, Kitchen())):
        with suppress(Unread):
            assert read(words) is not None
    assert cooking_words(f"{words}?", ("lasagna",)) is None


@given(st.integers(1, 600), st.integers(200, 550))
def test_minutes_and_degrees_are_read_as_written(minutes: int, temp: int) -> None:
    (step,) = read_steps(f"{minutes} minutes at {temp}")

    assert (step.minutes, step.temp_f) == (minutes, temp)


@pytest.mark.parametrize(
    ("words", "field", "value"),
    [
        ("2 slow cookers", "slow_cookers", (SlowCooker(), SlowCooker())),
        ("1 4 qt slow cooker", "slow_cookers", (SlowCooker(4.0),)),
        ("one slow cooker 300 watts", "slow_cookers", (SlowCooker(watts=300),)),
        ("3 circuits 20 amps", "circuits", (Circuit(20.0),) * 3),
        ("2 outlets", "circuits", (Circuit(outlets=2),) * 2),
        ("no microwave", "microwaves", ()),
        ("60 l of fridge space", "fridge_l", 60.0),
        ("fridge 2 cu ft", "fridge_l", 56.6),  # 2 x 28.3168 l (NIST Handbook 44)
        ("up at 6:30", "awake", ("06:30", "22:00")),
        ("awake 6:30-23:00", "awake", ("06:30", "23:00")),
    ],
)
def test_what_a_kitchen_has_is_read_and_the_rest_stays(words: str, field: str, value: object) -> None:
    found = read_kitchen(words, Kitchen())

    assert {k: v for k, v in vars(found).items() if v != getattr(Kitchen(), k)} == {field: value}


@pytest.mark.parametrize("words", ["a sauna", "fridge 99999 l", "up 26:10", "99 ovens", ""])
def test_a_kitchen_nobody_can_have_is_not_read(words: str) -> None:
    with pytest.raises(Unread):
        read_kitchen(words, Kitchen())


@pytest.mark.parametrize(
    ("words", "figure"),
    [("it needs 40 min at 190", 190), ("40 min at 190 °C", None), ("40 min at 350", None), ("190 min at 350", None)],
)
def test_a_bare_figure_taken_as_celsius_is_known_as_such(words: str, figure: int | None) -> None:
    assert taken_as_celsius(words) == figure
    assert taken_as_celsius(words, metric=True) is None
