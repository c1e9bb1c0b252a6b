"""Figures and lists of the pictures that have to agree with each other, whatever the potluck."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.prints.bar import bar_menu_data
from bot.prints.say import Writer
from bot.prints.table import table_data
from bot.prints.timeline import timeline_data
from bot.texts import Voice
from planning.potluck import CATEGORIES, Answer, Potluck
from tests.prints.builders import START, a_plan, a_potluck, a_promise, with_bar, with_kitchen


def _writer(potluck: Potluck) -> Writer:
    return Writer(potluck, Voice("en", potluck.zone, potluck.units).plain, "en")


def _table(potluck: Potluck, **plan):
    return table_data(potluck, a_plan(potluck, **plan), _writer(potluck))


@given(st.lists(st.floats(0, 400), min_size=1, max_size=8))
def test_the_bars_reach_as_far_as_the_largest_surplus_within_bounds(promised: list[float]) -> None:
    menu = [
        {"category": c, "target_servings": 20.0, "promised_servings": p, "short_servings": max(0.0, 20 - p)}
        for c, p in zip(CATEGORIES, promised, strict=False)
    ]
    data = _table(a_potluck(0), menu=menu)
    surplus = max(0.0, max(promised[: len(menu)]) / 20 - 1)

    assert 0.28 <= data["reach"] <= 0.6
    assert data["reach"] >= min(surplus, 0.6) - 1e-9
    assert max(b["extra"] for column in data["columns"] for b in column) == pytest.approx(surplus), "its own size"


def _main(target: float, promised: float) -> dict:
    short = max(0.0, round(target - promised, 2))
    return {
        "category": "main",
        "target_servings": target,
        "promised_servings": promised,
        "lacking_servings": short,
        "surplus_servings": max(0.0, promised - target),
    }


@given(st.floats(0.25, 200), st.floats(0, 400))
def test_promised_and_missing_make_what_is_wanted_in_the_figures_people_read(target: float, promised: float) -> None:
    data = _table(a_potluck(1), menu=[_main(round(target, 2), round(promised, 2))])
    (block,) = [b for c in data["columns"] for b in c]
    have, _, wanted, _ = block["score"].split()
    state = block["state"].split()

    assert int(wanted) == math.ceil(round(target, 2))
    if block["short"]:
        assert int(have) + int(state[0]) == int(wanted)
    elif state != ["enough"]:
        assert int(have) - int(state[0]) == int(wanted)


def test_a_half_serving_is_not_counted_on_both_sides() -> None:
    data = _table(a_potluck(1), menu=[_main(24.5, 12.25)])
    (block,) = [b for c in data["columns"] for b in c]

    assert (block["score"], block["state"]) == ("12 of 25 servings", "13 missing")


def _away(potluck: Potluck, *guests: str) -> Potluck:
    gone = tuple(replace(g, answer=Answer.NO) if g.id in guests else g for g in potluck.guests)
    return replace(potluck, guests=gone)


def test_what_only_somebody_who_stays_away_promised_is_among_what_is_missing() -> None:
    data = _table(_away(with_bar(a_potluck(3)), "g1"))

    assert data["carriers"] == ["Ravi can't come, so somebody has to bring it: Roast squash, grated cheddar"]


def test_a_dish_shared_with_somebody_who_comes_has_its_carrier() -> None:
    potluck = a_potluck(3, promises=(a_promise(1, sharers=("g2",)),))

    assert _table(_away(potluck, "g1"))["carriers"] == []


def test_with_everything_promised_a_missing_carrier_still_counts_as_missing() -> None:
    data = _table(_away(a_potluck(3), "g1"), menu=[])

    assert data["missing_title"] == "Still missing"


def test_the_bars_base_has_the_amount_the_plan_reckons_with() -> None:
    potluck = with_bar(a_potluck(3))
    data = _table(potluck)
    lines = [line for c in data["columns"] for b in c for line in b["lines"]]

    assert [(x["who"], x["amount"]) for x in lines if "baked potato" in x["dish"]] == [("Inés Łukasiewicz", "24")]


def test_the_host_brings_no_base_that_somebody_else_promised() -> None:
    potluck = with_bar(a_potluck(3))
    potluck = replace(potluck, promises=(*potluck.promises, a_promise(0, id="p9", dish="baked potatoes")))
    lines = [line["dish"] for c in _table(potluck)["columns"] for b in c for line in b["lines"]]

    assert [d for d in lines if "potato" in d] == ["baked potatoes"]


def test_a_combinations_name_stands_with_what_is_in_it() -> None:
    bar = _table(with_bar(a_potluck(5)))["bar"]

    assert bar["possible"] == ["The Plotholder (grated cheddar, chives)"]
    assert bar["next"] == ["With sour cream also: Chilli Night (bean chilli, sour cream)"]


def test_the_menu_of_the_bar_says_how_much_of_each_goes_on_one() -> None:
    potluck = with_bar(a_potluck(5))
    (combo,) = bar_menu_data(potluck, a_plan(potluck), _writer(potluck))["combos"]

    assert combo["toppings"].replace("\u00a0", " ") == "grated cheddar ¼ cup, chives 1 tbsp"


def test_a_combination_whose_topping_has_no_carrier_says_so_on_the_menu() -> None:
    potluck = _away(with_bar(a_potluck(5)), "g2")
    data = bar_menu_data(potluck, a_plan(potluck), _writer(potluck))

    assert data["combos"][0]["unsure"] == "who brings it can't come: chives"
    assert [r["who"] for r in data["toppings"] if r["name"] == "chives"] == ["Ελένη Παπαδοπούλου (can't come)"]


def _kitchen():
    potluck, plan = with_kitchen(a_potluck(9))
    return timeline_data(potluck, plan, _writer(potluck), START)


def test_each_turn_of_the_dial_says_what_goes_in_and_when_it_comes_out() -> None:
    inside = [d["inside"].replace("\u00a0", " ") for d in _kitchen()["dials"]]

    assert inside == [
        "In the oven: Roast squash (in 3:00 PM, out 3:40 PM), Cabbage slaw (in 3:10 PM, out 3:35 PM)",
        "In the oven: Soda bread (in 3:50 PM, out 4:40 PM)",
        "",
    ]


def test_the_list_of_the_kitchen_says_when_the_oven_is_turned_off_and_what_comes_out() -> None:
    texts = [e["text"] for column in _kitchen()["events"] for e in column]

    assert texts.count("Oven: turn off") == 1
    assert "Soda bread: done, take it out (Oven)" in texts


def test_bars_with_room_carry_their_times() -> None:
    steps = {s["dish"]: s["times"].replace("\u00a0", " ") for r in _kitchen()["rows"] for s in r["steps"]}

    assert steps["Soda bread"] == "3:50 PM to 4:40 PM"


def test_dishes_that_come_at_one_time_share_a_mark() -> None:
    potluck, plan = with_kitchen(a_potluck(9))
    together = [0, 1, 2, 3, 5]
    promises = [replace(p, arrives_at=START if n in together else None) for n, p in enumerate(potluck.promises)]
    potluck = replace(potluck, promises=tuple(promises))

    data = timeline_data(potluck, plan, _writer(potluck))
    numbers = {e["number"] for c in data["events"] for e in c if e["kind"] == "arrive"}

    (mark,) = data["arrivals"]["points"]
    told = [part.split("–") for part in mark["label"].split(", ")]
    assert {str(n) for ends in told for n in range(int(ends[0]), int(ends[-1]) + 1)} == numbers


@given(st.lists(st.integers(0, 90), min_size=1, max_size=12))
def test_marks_of_arrivals_never_cover_each_other(minutes: list[int]) -> None:
    potluck, plan = with_kitchen(a_potluck(12))
    times = dict(enumerate(minutes))
    promises = [
        replace(p, arrives_at=START - timedelta(minutes=times[n]) if n in times else None)
        for n, p in enumerate(potluck.promises)
    ]
    points = timeline_data(replace(potluck, promises=tuple(promises)), plan, _writer(potluck))["arrivals"]["points"]

    width = 20 / (390 - 28)  # of a badge of one number, as a part of a phone's width
    for lane in {p["lane"] for p in points}:
        at = sorted(p["x"] for p in points if p["lane"] == lane)
        assert all(b - a >= width - 1e-9 for a, b in pairwise(at))
