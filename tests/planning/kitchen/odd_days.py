"""Potluck files of odd days, each from a number: what `odd_files` does not draw.

Several dishes of one guest cooked at home and brought; steps under way from the last plan; own appliances; bakes that
must not be moved beside others; kitchens awake over midnight; nights on which the clocks change; serving in half an
hour from now, or at seven in the morning; things that come after the start; frozen things with a thaw of any length.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from random import Random
from typing import Any

from tests.planning.kitchen.odd_files import TEMPERATURES, WORDS

STARTS = (
    ("America/Chicago", "2027-03-14T09:00"),  # the clocks went forward at two
    ("America/Chicago", "2027-11-07T07:00"),  # and back
    ("Europe/Madrid", "2027-03-28T12:00"),
    ("Europe/Madrid", "2027-10-31T03:30"),
    ("Australia/Lord_Howe", "2027-10-03T11:00"),  # by half an hour
    ("America/Chicago", "2027-07-10T07:00"),
    ("America/Chicago", "2027-07-10T00:30"),
    ("Asia/Kolkata", "2027-07-10T18:00"),
    ("Europe/Madrid", "2027-07-10T21:30"),
)
AHEAD_MIN = (30, 30, 45, 90, 150, 300, 600, 1500, 4400, 10080)
AWAKE = (["07:00", "22:00"], ["05:00", "21:00"], ["10:00", "02:00"], ["08:30", "00:30"], ["06:00", "23:59"])


def odd_day(number: int) -> dict[str, Any]:
    """One potluck file; the same number, the same file."""
    draw = Random(f"day {number}")
    zone, start = draw.choice(STARTS)
    starts = datetime.fromisoformat(start)
    now = starts - timedelta(minutes=draw.choice(AHEAD_MIN))
    guests = [
        {"id": f"g{n}", "name": WORDS[n].title(), "answer": "yes", "travel_min": draw.choice([0, 5, 20, 60]),
         "has_oven": draw.random() < 0.8}
        for n in range(draw.randint(1, 3))
    ]  # fmt: skip
    document: dict[str, Any] = {
        "format": 1, "title": f"Odd day {number}", "starts_at": starts.isoformat(), "timezone": zone,
        "now": now.isoformat(), "guests": guests, "host": "g0", "kitchen": _kitchen(draw),
    }  # fmt: skip
    document["promises"] = [_promise(draw, n, draw.choice(guests), starts) for n in range(draw.choice([1, 2, 3, 4, 6]))]
    return document


def _kitchen(draw: Random) -> dict[str, Any]:
    waves = draw.choice([0, 1, 2, [{"watts": 1100}], [{"watts": 1000}, {"watts": 600}]])
    return {
        "ovens": [{"racks": n + 1, "pans_per_rack": draw.randint(1, 2)} for n in range(draw.choice([0, 1, 1, 2, 3]))],
        "burners": draw.choice([0, 1, 2, 4]),
        "grills": draw.choice([0, 1, 2]),
        "slow_cookers": [{"quarts": draw.choice([4, 6]), "watts": 250} for _ in range(draw.choice([0, 1, 2]))],
        "microwaves": waves,
        "circuits": [{"amps": draw.choice([10, 15]), "volts": 120, "outlets": draw.randint(1, 3)}
                     for _ in range(draw.choice([1, 2]))],
        "cooks": draw.choice([1, 1, 2]),
        "awake": draw.choice(AWAKE),
    }  # fmt: skip


def _promise(draw: Random, number: int, guest: dict[str, Any], starts: datetime) -> dict[str, Any]:
    promise: dict[str, Any] = {
        "id": f"p{number}", "guest": guest["id"], "dish": f"{WORDS[number]} thing", "servings": 8,
        "category": draw.choice(["main", "side", "dessert"]), "serve": draw.choice(["hot", "hot", "cold", "room"]),
    }  # fmt: skip
    home = guest["id"] != "g0" and draw.random() < 0.6
    promise["heat"] = _brought(draw) if home else _here(draw)
    if draw.random() < 0.25:
        promise["arrives_at"] = (starts + timedelta(minutes=draw.choice([-240, -90, -30, 10, 45, 180]))).isoformat()
    if draw.random() < 0.2:
        promise["frozen_lb"] = draw.choice([2, 4, 9, 14])
        if draw.random() < 0.6:
            thaw = {"kind": "thaw", "minutes": draw.choice([120, 1440, 2880, 7000]), "at": promise["heat"][0]["at"]}
            promise["heat"].insert(0, thaw)
    return promise


def _heat(draw: Random, at: str) -> dict[str, Any]:
    kind = draw.choice(["oven", "oven", "oven", "stove", "microwave", "grill", "slow-cooker-high", "slow-cooker-low"])
    least, most = (60, 420) if kind.startswith("slow") else (1, 20) if kind == "microwave" else (4, 90)
    step: dict[str, Any] = {"kind": kind, "minutes": draw.randint(least, most), "at": at}
    if kind == "oven":
        step |= {"temp_f": draw.choice(TEMPERATURES), "pans": draw.choice([1, 1, 2, 4]), "movable": draw.random() < 0.5}
    if draw.random() < 0.25:
        step["hands_min"] = draw.randint(1, 10)
    if kind != "grill" and draw.random() < 0.2:
        step |= {"own_appliance": True, "watts": draw.choice([150, 700, 1200])}
    return step


def _here(draw: Random) -> list[dict[str, Any]]:
    steps = [{"kind": "prep", "minutes": draw.randint(2, 30), "at": "venue"}] if draw.random() < 0.4 else []
    steps += [_heat(draw, "venue") for _ in range(draw.choice([1, 1, 1, 2]))]
    tail = draw.random()
    if tail < 0.25:
        steps.append({"kind": "keep-warm", "minutes": draw.randint(3, 80), "temp_f": draw.choice([None, 150, 200, 340]),
                      "at": "venue"})  # fmt: skip
    elif tail < 0.45:
        steps.append({"kind": "rest", "minutes": draw.randint(1, 30), "at": "venue"})
    elif tail < 0.6:
        steps.append({"kind": "chill", "minutes": draw.choice([20, 240, 800]), "at": "venue"})
    return steps


def _brought(draw: Random) -> list[dict[str, Any]]:
    steps = [{"kind": "prep", "minutes": draw.randint(2, 40), "at": "home"}] if draw.random() < 0.5 else []
    steps.append(_heat(draw, "home"))
    if draw.random() < 0.3:
        steps.append(
            {"kind": draw.choice(["rest", "chill", "keep-warm"]), "minutes": draw.randint(2, 60), "at": "home"}
        )
    if draw.random() < 0.7:
        steps.append({"kind": "transport", "minutes": draw.choice([0, 1, 15, 40]), "at": "home"})
    if draw.random() < 0.4:
        steps += _here(draw)[-2:]
    return steps
