"""Small kitchens and dishes with defaults."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from planning.potluck import Answer, Circuit, Guest, HeatStep, Kitchen, Microwave, Oven, Potluck, Promise, SlowCooker

CHICAGO = "America/Chicago"
SERVING = datetime(2027, 9, 18, 17, tzinfo=ZoneInfo(CHICAGO)).astimezone(UTC)
WEEK_BEFORE = SERVING - timedelta(days=7)


def at(text: str) -> datetime:
    """A wall time on the day: "16:10"."""
    hour, minute = map(int, text.split(":"))
    return datetime(2027, 9, 18, hour, minute, tzinfo=ZoneInfo(CHICAGO)).astimezone(UTC)


def oven(minutes: int, temp_f: float | None = 350, **facts: object) -> HeatStep:
    return HeatStep("oven", minutes, temp_f, **facts)  # type: ignore[arg-type]


def dish(name: str, *steps: HeatStep, serve: str | None = "hot", category: str = "main", **facts: object) -> Promise:
    return Promise(name, "g", name, category, heat=steps, serve=serve, **facts)  # type: ignore[arg-type]


def kitchen(ovens: int = 1, **facts: object) -> Kitchen:
    usual: dict[str, object] = {
        "ovens": (Oven(2, 2),) * ovens, "burners": 4, "slow_cookers": (SlowCooker(),), "microwaves": (Microwave(),),
        "circuits": (Circuit(), Circuit()), "cooks": 2,
    }  # fmt: skip
    return Kitchen(**(usual | facts))  # type: ignore[arg-type]


def potluck(*promises: Promise, **facts: object) -> Potluck:
    usual: dict[str, object] = {
        "starts_at": SERVING, "guests": (Guest("g", "G", Answer.YES),), "kitchen": kitchen(), "promises": promises,
    }  # fmt: skip
    return Potluck("p", timezone=CHICAGO, **(usual | facts))  # type: ignore[arg-type]
