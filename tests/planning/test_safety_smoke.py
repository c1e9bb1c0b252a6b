"""A first look at the whole of the safety notes."""

from __future__ import annotations

from datetime import UTC, datetime

from planning.potluck import Guest, Potluck, Promise
from planning.safety import safety


def test_every_potluck_has_its_standing_notices() -> None:
    potluck = Potluck("p", datetime(2027, 9, 18, 22, tzinfo=UTC), "America/Chicago", guests=(Guest("g", "G"),),
                      promises=(Promise("1", "g", "potato salad", "salad"),))  # fmt: skip

    rules = {n.rule for n in safety(potluck, datetime(2027, 9, 1, tzinfo=UTC))}

    assert {"LEGAL-07", "LEGAL-01", "EMER-01", "EMER-02", "TIME-01"} <= rules
