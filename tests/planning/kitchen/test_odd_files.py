"""Files of odd kitchens, planned and checked against the outside contract's own sentences."""

from __future__ import annotations

import json
from typing import Any

import pytest

from bot.plan_json import Writer, kitchen_section
from bot.texts import Voice
from planning import potluck_file
from planning.kitchen import timeline
from tests.planning.kitchen.contract_rules import broken
from tests.planning.kitchen.odd_days import odd_day
from tests.planning.kitchen.odd_files import odd_file


def planned(document: dict[str, Any], effort: float) -> dict[str, Any]:
    """The kitchen section as the plan's file has it; the ways out searched for the worst dish, the rest is alike."""
    party, now, _ = potluck_file.read(document)
    found = timeline(party, now, effort, searched=1)
    written = kitchen_section(found, Writer(party, Voice(zone=party.zone, units=party.units)))
    return dict(json.loads(json.dumps(written)))


@pytest.mark.parametrize("number", range(40))
def test_any_file_gets_a_timeline_that_keeps_every_rule_or_says_which_it_breaks(number: int) -> None:
    document = odd_file(number)

    assert broken(document, planned(document, 0.03)) == []


@pytest.mark.parametrize("number", range(40))
def test_any_day_gets_a_timeline_that_keeps_every_rule_or_says_which_it_breaks(number: int) -> None:
    document = odd_day(number)

    assert broken(document, planned(document, 0.01)) == []


def test_what_breaks_a_rule_is_seen() -> None:
    pie = {"id": "pie", "guest": "a", "serve": "hot", "heat": [{"kind": "oven", "minutes": 40, "temp_f": 350}]}
    document = {"starts_at": "2027-09-18T17:00", "timezone": "America/Chicago", "guests": [{"id": "a"}]}
    document["promises"] = [pie]
    step = {"promise": "pie", "kind": "oven", "appliance": "oven:0", "circuit": None, "at": "venue", "step": 0,
            "start": "2027-09-18T15:00", "end": "2027-09-18T15:40", "temp_f": 390, "pans": 1, "watts": 0}  # fmt: skip
    dish = {"promise": "pie", "ready_at": step["end"], "serve_at": "", "late_min": 0, "unsafe_min": 0}
    plan = {"status": "optimal", "objective": 0, "bound": 0, "steps": [step], "dishes": [dish], "conflicts": []}

    found = broken(document, plan)

    assert [f.partition(": ")[2] for f in found] == [
        "oven at 18 15:00: 40.0 minutes, not 35.8974358974359",  # 40 x 350 / 390
        "oven at 18 15:00: set to 390, wanted 350",
        "80.0 minutes off heat, told 0 too many",
    ]
