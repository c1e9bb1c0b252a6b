"""Instants on the potluck's wall clock."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

from planning.potluck import Potluck


def wall(zone: ZoneInfo, day: date, at: time) -> datetime:
    """The instant (UTC) at which the zone's clocks show `at` on `day`; the first of two, the shifted one of none."""
    return datetime.combine(day, at, zone).replace(fold=0).astimezone(UTC)


def plain_facts(potluck: Potluck, facts: Mapping[str, object]) -> dict[str, object]:
    """Facts as plain JSON values on the potluck's wall clock.

    An instant `at` becomes local ISO text, and is joined by `at_time` ("16:10") and `at_weekday`
    (0 Monday to 6 Sunday), so that whoever words it needs neither zone nor date arithmetic.
    """
    plain: dict[str, object] = {}
    for name, value in facts.items():
        if isinstance(value, datetime):
            local = potluck.local(value)
            plain[name] = local.isoformat()
            plain[f"{name}_time"] = local.strftime("%H:%M")
            plain[f"{name}_weekday"] = local.weekday()
        else:
            plain[name] = value
    return plain
