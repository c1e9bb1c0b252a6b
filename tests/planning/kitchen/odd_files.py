"""Potluck files of kitchens and dishes nobody has thought of, each from a number: the same number, the same file."""

from __future__ import annotations

from datetime import datetime, timedelta
from random import Random
from typing import Any

TEMPERATURES = (300, 325, 340, 350, 360, 375, 390, 400, 425, 450, 475)
WORDS = ("amber", "basil", "cedar", "dill", "elder", "fennel", "ginger", "hazel", "iris", "juniper", "kale", "laurel")


def odd_file(number: int) -> dict[str, Any]:
    """One potluck file of section 3 of the contract; every value in it is possible, few of them are usual."""
    draw = Random(number)
    hour, minute = draw.choice([(8, 0), (10, 30), (12, 0), (13, 15), (17, 0), (17, 0), (18, 40), (19, 0), (22, 30)])
    starts = datetime(2027, draw.choice([3, 7, 9, 11]), draw.randint(1, 28), hour, minute)  # noqa: DTZ001 - wall time, as in a file
    ahead = draw.choice(
        [timedelta(days=7), timedelta(days=5), timedelta(days=2), timedelta(hours=9), timedelta(hours=4)]
    )
    guests = [
        {
            "id": f"g{n}",
            "name": WORDS[n].title(),
            "answer": draw.choice(["yes"] * 6 + ["maybe", "no"]),
            "adults": draw.randint(1, 4),
            "travel_min": draw.choice([0, 0, 10, 25, 45, 90]),
            "can_cook": draw.random() < 0.9,
            "has_oven": draw.random() < 0.85,
        }
        for n in range(draw.randint(1, 6))
    ]
    document: dict[str, Any] = {
        "format": 1,
        "title": f"Odd {number}",
        "starts_at": starts.isoformat(),
        "timezone": draw.choice(["America/Chicago", "Europe/Madrid", "Asia/Kolkata", "Australia/Lord_Howe"]),
        "now": (starts - ahead).isoformat(),
        "guests": guests,
        "kitchen": _kitchen(draw),
        "setting": draw.choice(["indoor", "outdoor"]),
        "units": draw.choice(["us", "metric"]),
    }
    if draw.random() < 0.7:
        document["host"] = "g0"
    document["promises"] = [
        _promise(draw, n, draw.choice(guests), starts) for n in range(draw.choice([1, 2, 3, 4, 4, 5, 6, 9]))
    ]
    return document


def _kitchen(draw: Random) -> dict[str, Any]:
    some = draw.choice
    kitchen: dict[str, Any] = {
        "ovens": [
            {"racks": draw.randint(1, 3), "pans_per_rack": draw.randint(1, 3)}
            for _ in range(some([0, 1, 1, 1, 1, 1, 2, 3]))
        ],
        "burners": some([0, 1, 2, 2, 4, 4, 6]),
        "grills": some([0, 1, 1, 2]),
        "slow_cookers": [
            {"quarts": some([3, 4, 6, 8]), "watts": some([160, 250, 350])} for _ in range(some([0, 1, 2, 2, 4]))
        ],
        "circuits": [
            {"amps": some([15, 20, 10]), "volts": some([120, 120, 230]), "outlets": draw.randint(1, 4)}
            for _ in range(some([1, 1, 2, 3]))
        ],
        "cooks": some([1, 1, 2, 3]),
        "awake": some([["07:00", "22:00"], ["06:15", "21:30"], ["09:40", "23:50"]]),
    }
    kitchen["microwaves"] = some([0, 1, 2, [{"watts": 900}], [{"watts": 1400}, {"watts": 700}]])
    if draw.random() < 0.2:
        kitchen["fridge_l"] = some([20, 60, 200])
    return kitchen


def _promise(draw: Random, number: int, guest: dict[str, Any], starts: datetime) -> dict[str, Any]:
    promise: dict[str, Any] = {
        "id": f"p{number}",
        "guest": guest["id"],
        "dish": f"{WORDS[number]} dish",
        "category": draw.choice(["main", "side"]),
        "servings": draw.choice([6, 8, 12, 30]),
        "serve": draw.choice(["hot", "hot", "hot", "room", "cold"]),
    }
    home = draw.random() < 0.35
    promise["heat"] = _at_home(draw) if home else _at_venue(draw)
    if draw.random() < 0.3:
        promise["arrives_at"] = (
            starts - timedelta(minutes=draw.choice([-20, 0, 40, 90, 150, 180, 240, 300, 400]))
        ).isoformat()
    if draw.random() < 0.1:
        promise["frozen_lb"] = draw.choice([1, 5, 13])
    if draw.random() < 0.3:
        promise["quantity"] = draw.choice(["3 qt", "1 gallon", "5 lb", "2 l"])
    return promise


def _at_venue(draw: Random) -> list[dict[str, Any]]:
    kind = draw.choice(
        ["oven"] * 5 + ["stove"] * 2 + ["slow-cooker-low", "slow-cooker-high", "microwave", "grill", "cold"]
    )
    steps: list[dict[str, Any]] = []
    if draw.random() < 0.15:
        steps.append({"kind": "thaw", "minutes": draw.choice([600, 1440, 2880])})
    if draw.random() < 0.5:
        steps.append({"kind": "prep", "minutes": draw.randint(3, 50)})
    if kind == "oven":
        for _ in range(draw.choice([1, 1, 1, 2])):
            steps.append(_baked(draw))
    elif kind.startswith("slow"):
        steps.append({"kind": kind, "minutes": draw.randint(90, 560), "hands_min": draw.choice([0, 0, 5])})
    elif kind == "cold":
        steps.append({"kind": "chill", "minutes": draw.choice([30, 120, 700])})
    else:
        steps.append({"kind": kind, "minutes": draw.randint(2, 70), "hands_min": draw.choice([0, 0, 4, 10])})
    last = steps[-1]
    if kind not in ("cold", "grill") and draw.random() < 0.2:
        last["own_appliance"] = True
        last["watts"] = draw.choice([300, 800, 1150, None])
    tail = draw.random()
    if kind != "cold" and tail < 0.2:
        steps.append({"kind": "rest", "minutes": draw.choice([5, 12, 20, 26, 27, 28, 29, 30])})
    elif kind != "cold" and tail < 0.35:
        steps.append(
            {"kind": "keep-warm", "minutes": draw.randint(5, 90), "temp_f": draw.choice([None, None, 145, 170, 200])}
        )
        if draw.random() < 0.3:
            steps.append({"kind": "rest", "minutes": draw.randint(3, 20)})
    if draw.random() < 0.2:
        steps.append({"kind": "serve", "minutes": draw.choice([0, 3, 5])})
    return steps


def _baked(draw: Random) -> dict[str, Any]:
    step: dict[str, Any] = {
        "kind": "oven",
        "minutes": draw.choice([draw.randint(5, 60), draw.randint(5, 130)]),
        "temp_f": draw.choice([*TEMPERATURES, None]),
        "pans": draw.choice([1, 1, 1, 1, 1, 2, 2, 3, 6]),
        "covered": draw.random() < 0.3,
        "hands_min": draw.choice([0, 0, 5, 12]),
        "movable": draw.random() < 0.7,
    }
    return {key: value for key, value in step.items() if value is not None}


def _at_home(draw: Random) -> list[dict[str, Any]]:
    steps: list[dict[str, Any]] = []
    if draw.random() < 0.4:
        steps.append({"kind": "prep", "minutes": draw.randint(5, 40), "at": "home"})
    kind = draw.choice(["oven", "oven", "oven", "stove", "microwave", "slow-cooker-low"])
    heat = (
        _baked(draw)
        if kind == "oven"
        else {"kind": kind, "minutes": draw.randint(10, 200), "hands_min": draw.choice([0, 6])}
    )
    steps.append({**heat, "at": "home"})
    if draw.random() < 0.2:
        steps.append({"kind": "rest", "minutes": draw.choice([8, 16, 25]), "at": "home"})
    way = draw.random()
    if way < 0.4:
        steps.append({"kind": "transport", "minutes": draw.choice([0, 7, 11, 20, 28, 50]), "at": "home"})
    if way < 0.2:
        steps.append({"kind": draw.choice(["oven", "stove", "keep-warm"]), "minutes": draw.randint(8, 25)})
        if steps[-1]["kind"] == "oven":
            steps[-1]["temp_f"] = 350
    return steps
