"""A power cut that is over, in words: how long it was, and what it left without heat."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from zoneinfo import ZoneInfo

import pytest

from planning.potluck import HeatStep
from planning.theday.outage import Outage, read_outage, without_heat
from tests.planning.test_safety import CHICAGO, at, dish, supper

ZONE = ZoneInfo(CHICAGO)
NOW = at("2027-09-18T10:05")


@pytest.mark.parametrize(
    ("words", "minutes"),
    [
        ("power went off in the staff room at 9, came back just now", 65),
        ("the power was out from 8:30 to 9:15", 45),
        ("power was out for an hour, it's back", 60),
        ("lights went at 8:10 and are back", 115),
        ("breaker blew about half an hour ago, its back", 30),
        ("se fue la luz a las 9 y ya volvió", 65),
        ("estuvimos sin luz 40 minutos, ya regresó", 40),
    ],
)
def test_how_long_the_power_was_away_is_read(words: str, minutes: int) -> None:
    found = read_outage(words, NOW, ZONE)

    assert found is not None
    assert found.minutes == minutes


@pytest.mark.parametrize(
    "words",
    [
        "power is out", "power's back", "if the power goes at 9 we come back", "I went back at 9 to get the lights",
        "did the power come back at 9?", "the power was out yesterday at 9 and came back",
        "be back at 9 with the lights",
    ],
)  # fmt: skip
def test_a_cut_that_goes_on_or_has_no_length_is_told_elsewhere(words: str) -> None:
    assert read_outage(words, NOW, ZONE) is None


def test_what_was_on_the_heat_or_in_a_slow_cooker_stood_without() -> None:
    slow = replace(dish("chili", HeatStep("slow-cooker-low", 480)), id="slow")
    begun = replace(dish("lamb"), id="begun", began_at=NOW - timedelta(hours=2))
    cold = replace(dish("potato salad", category="salad", serve="cold"), id="cold")
    table = supper(slow, begun, cold)

    assert [p.id for p in without_heat(table, Outage(NOW - timedelta(hours=1), NOW))] == ["slow", "begun"]
