"""A metric potluck is told degrees Celsius, kilograms and litres, never the other system's figures."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta

import pytest

from bot.texts import Voice
from planning.kitchen import timeline
from planning.kitchen.units import celsius
from planning.potluck import Guest, HeatStep, Party, Potluck, Promise, Say
from planning.reminders import reminders
from planning.safety import safety
from tests.planning.kitchen.builders import SERVING, WEEK_BEFORE, dish, kitchen, oven, potluck

US = re.compile(r"°F| lb\b| qt\b|inch")
METRIC = re.compile(r"°C| kg\b| l\b| cm\b")


@pytest.mark.parametrize(
    ("temp_f", "temp_c"),
    [(40, 4), (140, 60), (145, 63), (160, 71), (165, 74)],  # the pairs printed by USDA FSIS; from memory
)
def test_the_temperatures_of_the_rules_are_the_published_pairs(temp_f: float, temp_c: int) -> None:
    assert celsius(temp_f) == temp_c


@pytest.mark.parametrize(("temp_f", "dial"), [(325, 165), (350, 175), (375, 190), (400, 205), (425, 220), (450, 230)])
def test_an_ovens_dial_is_turned_to_fives(temp_f: float, dial: int) -> None:
    # (°F - 32) x 5 / 9, to the nearest 5: 350 gives 176.7.
    assert celsius(temp_f) == dial


def full_table(units: str) -> Potluck:
    promises = (
        dish("turkey", oven(240, 325), frozen_lb=14), dish("pie", oven(40, 425)),
        dish("big bird", oven(60), frozen_lb=60), dish("odd bake", oven(40, 3500)),
        dish("mild bake", oven(40, 180)), dish("cold bake", oven(200, 100)),
        dish("warm beans", HeatStep("keep-warm", 30, 110)), dish("rice", HeatStep("stove", 20)),
        dish("leftover stew", oven(40, 300)), dish("reheated chili", HeatStep("slow-cooker-low", 90), quantity="7 qt"),
        dish("soup", HeatStep("slow-cooker-low", 300), quantity="2 cups"), dish("fish", HeatStep("stove", 10)),
        dish("grapes", category="dessert"), dish("ham", HeatStep("stove", 60, at="home"), HeatStep("transport", 60)),
        Promise("salad", "g", "deli meat and potato salad", "salad", out_since=SERVING),
    )  # fmt: skip
    guests = (Guest("g", "G", party=Party(2, toddlers=1), pregnant=True),)
    return potluck(*promises, guests=guests, units=units, setting="outdoor", kitchen=kitchen())


def everything(party: Potluck) -> list[Say]:
    made = timeline(party, WEEK_BEFORE, effort=0)
    pies = tuple(dish(f"r{n}", oven(50, 350 + 75 * n, movable=False, pans=4), frozen_lb=3) for n in range(3))
    tight = timeline(replace(party, promises=pies), WEEK_BEFORE, effort=0)
    said = [s for plan in (made, tight) for c in plan.conflicts for s in (c.why, c.fix.text)]
    for now in (WEEK_BEFORE, SERVING - timedelta(days=1), SERVING - timedelta(hours=2)):
        said += [n.say for n in safety(party, now, made)]
    return said + [r.about for r in reminders(party, made, WEEK_BEFORE)]


def test_a_metric_table_hears_no_degrees_fahrenheit() -> None:
    voice = Voice(units="metric")
    sentences = [voice.say(s) for s in everything(full_table("metric")) if s.key != "kitchen-celsius"]

    assert [s for s in sentences if US.search(s)] == []
    assert sum(bool(METRIC.search(s)) for s in sentences) > 15


def test_an_american_table_hears_no_degrees_celsius() -> None:
    voice = Voice()
    sentences = [voice.say(s) for s in everything(full_table("us")) if s.key != "kitchen-celsius"]

    assert [s for s in sentences if METRIC.search(s)] == []


def test_the_oven_is_set_in_the_tables_own_degrees() -> None:
    party = potluck(dish("pie", oven(40, 425)), units="metric")
    found = reminders(party, timeline(party, WEEK_BEFORE, effort=0), WEEK_BEFORE)

    assert "220 °C" in Voice(units="metric").say(next(r.about for r in found if r.kind == "preheat"))
