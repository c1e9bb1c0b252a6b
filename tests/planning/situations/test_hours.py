"""An hour behind "at" is an hour, and only what is measured is degrees."""

from dataclasses import replace
from datetime import UTC

import pytest

from planning.potluck import Promise
from planning.theday.situation import judge
from tests.planning.situations.corpus import scene


def heard(words, clock="18:45", language="en"):
    potluck = scene("hall")
    potluck = replace(potluck, units="metric", promises=(*potluck.promises, Promise("p9", "g7", "quiche", "main", 8)))
    hour, minute = map(int, clock.split(":"))
    now = potluck.local(potluck.starts_at).replace(hour=hour, minute=minute).astimezone(UTC)
    found = judge(words, potluck, "g7", now, language=language)
    return found.verdicts if found is not None else ()


@pytest.mark.parametrize(("words", "clock", "language", "minutes"), [
    ("half a quiche is left, it was put out at 3", "17:30", "en", 150),
    ("the quiche has been sitting there since we sat down at 2", "16:40", "en", 160),
    ("turned the chili off at 5", "18:45", "en", 105),
    ("chili is done, switched it off at 6", "18:45", "en", 45),
    ("took the lasagna out at 3.30, still ok?", "18:45", "en", 195),
    ("we laid the quiche out at 2, keep or bin?", "16:45", "en", 165),
    ("potato salad was served at 4, can people still have it?", "18:45", "en", 165),
    ("brought the quiche out of the fridge at 1 and it has stood in the hall", "16:45", "en", 225),
    ("saqué la ensalada de papa a las 3", "18:45", "es", 225),
    ("apagué el chili a las 5", "18:45", "es", 105),
    ("la lasaña la sirvieron a las 3 y media", "18:45", "es", 195),
])  # fmt: skip
def test_minutes_run_from_the_hour_that_was_told(words, clock, language, minutes):
    (one,) = heard(words, clock, language)

    assert (one.minutes, one.f) == (minutes, None)


@pytest.mark.parametrize(("words", "language", "degrees_c"), [
    ("the potato salad is at 8", "en", 8),
    ("thermometer in the potato salad says 9", "en", 9),
    ("cooler is at 12, potato salad inside", "en", 12),
    ("turkey breast at 68 inside", "en", 68),
    ("la ensalada de papa está a 8 grados", "es", 8),
])  # fmt: skip
def test_what_is_measured_stays_degrees(words, language, degrees_c):
    (one,) = heard(words, language=language)

    assert round((one.f - 32) / 1.8) == degrees_c


@pytest.mark.parametrize(("words", "language"), [
    ("put the potato salad out at 6 please", "en"), ("put the lasagna in the oven at 4", "en"),
    ("saqué la lasaña del congelador a las 9", "es"), ("pon la ensalada de papa en la mesa a las 7", "es"),
])  # fmt: skip
def test_what_is_planned_or_cooking_runs_no_clock(words, language):
    assert heard(words, language=language) == ()
