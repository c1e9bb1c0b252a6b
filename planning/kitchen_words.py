"""What a cook or host writes about heat and appliances, read into steps and a kitchen."""

from __future__ import annotations

import re
from dataclasses import replace

from planning.potluck import Circuit, HeatStep, Kitchen, Microwave, Oven, SlowCooker

LONGEST = 200


class Unread(Exception):
    """`words` is the part nobody could read."""

    def __init__(self, words: str) -> None:
        super().__init__(words)
        self.words = words[:60]


_NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "no": 0, "zero": 0}

_THINGS = {
    "oven": "ovens", "burner": "burners", "hob": "burners", "grill": "grills", "barbecue": "grills",
    "slow cooker": "slow_cookers", "rack": "racks", "microwave": "microwaves", "circuit": "circuits",
    "cook": "cooks", "pair of hands": "cooks", "helper": "cooks",
}  # fmt: skip

_PART = re.compile(r"^(?P<n>\d{1,2}|[a-z]+)\s+(?P<thing>[a-z][a-z ]*?)s?$")


def read_kitchen(text: str, before: Kitchen) -> Kitchen:
    """"1 oven, 2 slow cookers, 4 burners": what is not named stays as it was. Raises Unread."""
    kitchen = before
    parts = [p.strip() for p in re.split(r",|;|\band\b|\n", text[:LONGEST].casefold()) if p.strip()]
    if not parts:
        raise Unread(text)
    for part in parts:
        match = _PART.match(part)
        thing = next((field for word, field in _THINGS.items() if match and match["thing"].startswith(word)), None)
        if match is None or thing is None:
            raise Unread(part)
        n = int(match["n"]) if match["n"].isdigit() else _NUMBERS.get(match["n"], -1)
        if not 0 <= n <= 20:
            raise Unread(part)
        kitchen = _with(kitchen, thing, n)
    return kitchen


def _with(kitchen: Kitchen, thing: str, n: int) -> Kitchen:
    match thing:
        case "ovens":
            return replace(kitchen, ovens=(kitchen.ovens[:n] + (Oven(),) * n)[:n])
        case "racks":
            # Said of each oven: "one oven, two racks".
            return replace(kitchen, ovens=tuple(replace(o, racks=n) for o in kitchen.ovens))
        case "slow_cookers":
            return replace(kitchen, slow_cookers=(kitchen.slow_cookers[:n] + (SlowCooker(),) * n)[:n])
        case "microwaves":
            return replace(kitchen, microwaves=(kitchen.microwaves[:n] + (Microwave(),) * n)[:n])
        case "circuits":
            return replace(kitchen, circuits=(kitchen.circuits[:n] + (Circuit(),) * n)[:n])
        case "burners":
            return replace(kitchen, burners=n)
        case "grills":
            return replace(kitchen, grills=n)
        case _:
            return replace(kitchen, cooks=n)


_TIME = re.compile(
    r"(?P<h>\d{1,2}(?:\.\d)?|an?|one|two|three|four|five|six|seven|eight|nine|ten|half an)\s*(?:hours?|hrs?|h)\b"
    r"(?:\s*(?:and\s*)?(?P<hm>\d{1,2})\s*(?:minutes?|mins?|m)?\b)?(?P<half>\s*and a half)?"
    r"|(?P<m>\d{1,3})\s*(?:minutes?|mins?|m)\b"
)
_TEMP = re.compile(r"(?:\bat\s*)?(?P<t>\d{2,4})\s*(?P<deg>°|degrees?|deg)?\s*(?P<scale>[cf])?\b(?!\s*(?:min|h|m\b))")
_HOURS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
          "nine": 9, "ten": 10, "half an": 0.5}  # fmt: skip

_KINDS = (
    ("slow-cooker-high", ("slow cooker on high", "slow cooker high", "slow cooker, high", "high in the slow cooker")),
    ("slow-cooker-low", ("slow cooker",)),
    ("microwave", ("microwave",)),
    ("grill", ("grill", "barbecue")),
    ("stove", ("stove", "hob", "burner", "simmer", "boil")),
    ("rest", ("rest", "stand", "cool")),
    ("prep", ("prep", "chop", "assemble", "mix")),
    ("keep-warm", ("keep warm", "warm")),
    ("oven", ("oven", "bake", "roast", "reheat")),
)

OVEN_C_BELOW = 261
"""A bare oven figure of 110 to 260 can be either scale; without a letter it is taken as Fahrenheit only
from 200 up, and a plain figure below that is Celsius: common practice, no source."""


def read_steps(text: str) -> tuple[HeatStep, ...]:
    """"40 minutes at 375, covered, then rest 10 minutes" as steps in order. Raises Unread."""
    steps: list[HeatStep] = []
    for part in re.split(r"\bthen\b|;|\n", text[:LONGEST].casefold()):
        clean = part.strip(" ,.")
        if clean:
            steps.append(_step(clean))
    if not steps:
        raise Unread(text)
    return tuple(steps)


def _step(part: str) -> HeatStep:
    time = _TIME.search(part)
    if time is None:
        raise Unread(part)
    minutes = _minutes(time)
    rest = part[: time.start()] + " " + part[time.end() :]
    temp = _TEMP.search(rest)
    temp_f = _fahrenheit(temp) if temp else None
    kind = next((k for k, words in _KINDS if any(w in rest for w in words)), "oven" if temp_f is not None else None)
    if kind is None or not 0 < minutes <= 24 * 60:
        raise Unread(part)
    covered = "uncovered" not in rest and ("covered" in rest or "foil" in rest or "lid" in rest)
    at = "home" if "at home" in rest else "venue"
    hands = minutes if kind == "prep" else 0
    return HeatStep(kind, minutes, temp_f if kind == "oven" else None, covered=covered, at=at, hands_min=hands)


def _minutes(time: re.Match[str]) -> int:
    if time["m"]:
        return int(time["m"])
    hours = _HOURS.get(time["h"]) or float(time["h"])
    return round(hours * 60) + int(time["hm"] or 0) + (30 if time["half"] else 0)


def _fahrenheit(match: re.Match[str]) -> float:
    value = float(match["t"])
    if match["scale"] == "c" or (match["scale"] is None and value < 200):
        return round(value * 9 / 5 + 32)
    return value
