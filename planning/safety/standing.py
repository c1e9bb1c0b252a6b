"""What always stands under the plan, and the circuits."""

from __future__ import annotations

from collections.abc import Iterator

from planning.kitchen.result import Timeline
from planning.kitchen.steps import MICROWAVE, SLOW, usable_watts
from planning.potluck import Potluck
from planning.safety.notes import NOTE, WARN, SafetyNote, note

US_ZONES = ("America/New_York", "America/Chicago", "America/Denver", "America/Los_Angeles", "America/Phoenix",
            "America/Anchorage", "America/Detroit", "America/Indiana", "America/Kentucky", "America/Boise",
            "America/Juneau", "America/Nome", "America/Sitka", "America/Adak", "America/Menominee",
            "America/North_Dakota", "Pacific/Honolulu", "America/Puerto_Rico", "US/")  # fmt: skip


def units_usual_in(timezone: str) -> str:
    """ "us" where a kitchen measures in cups and °F, "metric" elsewhere (the United States and their territories keep
    customary units; NIST Special Publication 814, from memory)."""
    return "us" if timezone.startswith(US_ZONES) else "metric"


def standing_notes(potluck: Potluck) -> Iterator[SafetyNote]:
    """Planning aid, whom to ask, whom to call."""
    here = "us" if potluck.timezone.startswith(US_ZONES) else "other"
    yield note("LEGAL-07", NOTE, "planning-aid", {})
    yield note("EMER-04", NOTE, "when-in-doubt", {})
    yield note("ILL-01", NOTE, "ill-cook", {"hours": 48})
    yield note("LEGAL-01", NOTE, "health-department", {})
    yield note("EMER-01", NOTE, "poison-line", {"country": here})
    yield note("EMER-02", NOTE, "emergency", {"country": here})


def power_notes(potluck: Potluck, timeline: Timeline | None) -> Iterator[SafetyNote]:
    """Circuits that are nearly full at some moment, and no power strips."""
    electric = (*SLOW, MICROWAVE)
    if any(s.kind in electric or s.own_appliance for p in potluck.promises for s in p.heat or () if s.at == "venue"):
        yield note("ELEC-17", NOTE, "no-strips", {})
    if timeline is None:
        return
    for number, circuit in enumerate(potluck.kitchen.circuits):
        mine = [s for s in timeline.steps if s.circuit == number]
        peak = max((sum(s.watts for s in mine if s.start <= t.start < s.end) for t in mine), default=0)
        most = usable_watts(circuit.amps, circuit.volts)
        if peak and peak > most * 0.9:
            rule = "ELEC-04" if circuit.amps > 15 else "ELEC-03"
            yield note(rule, WARN, "circuit-full", {"number": number + 1, "watts": peak, "most": most})
