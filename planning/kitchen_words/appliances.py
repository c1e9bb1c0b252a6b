"""What there is to cook with, in the host's words: "1 oven, 2 slow cookers, fridge 60 l"."""

from __future__ import annotations

import re
from dataclasses import replace

from planning.kitchen_words.unread import LONGEST, Unread
from planning.potluck import Circuit, Kitchen, Microwave, Oven, SlowCooker

_NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "no": 0, "zero": 0}

_THINGS = {
    "oven": "ovens", "burner": "burners", "hob": "burners", "grill": "grills", "barbecue": "grills",
    "slow cooker": "slow_cookers", "rack": "racks", "microwave": "microwaves", "circuit": "circuits",
    "outlet": "outlets", "socket": "outlets", "cook": "cooks", "pair of hands": "cooks", "pairs of hands": "cooks",
    "helper": "cooks",
}  # fmt: skip

_PART = re.compile(r"^(?P<n>\d{1,2}|[a-z]+)\s+(?P<facts>(?:\d+(?:\.\d+)?[ -]?(?:qts?|quarts?|l|lit(?:er|re)s?|w|watts?"
                   r"|a|amps?)\s+)*)(?P<thing>[a-z][a-z ]*?)s?(?P<after>(?:\s+(?:of|with|at))?\s+\d+(?:\.\d+)?[ -]?"
                   r"(?:qts?|quarts?|l|w|watts?|a|amps?)(?:\s+each)?)?$")  # fmt: skip
_FACT = re.compile(r"(?P<n>\d+(?:\.\d+)?)[ -]?(?P<unit>qts?|quarts?|l|lit(?:er|re)s?|w|watts?|a|amps?)\b")
_FRIDGE = re.compile(r"^(?:(?:a|the|our|my)\s+)?(?:(?:fridge|refrigerator)(?: (?:space|room))?(?: (?:of|has|with))?"
                     r"\s+(?P<n>\d+(?:\.\d+)?)\s*(?P<unit>l|lit(?:er|re)s?|cu(?:bic)?\.? ?f(?:oo|ee)?t|cu\.? ?ft)"
                     r"|(?P<n2>\d+(?:\.\d+)?)[ -]?(?P<unit2>l|lit(?:er|re)s?|cu(?:bic)?\.? ?f(?:oo|ee)?t)"
                     r"(?: of)?(?: free)? (?:fridge|refrigerator)(?: (?:space|room))?)(?: free)?$")  # fmt: skip
_AWAKE = re.compile(
    r"^(?:awake|up)(?: from| at)? (?P<a>\d{1,2}(?::\d\d)?)(?:\s*(?:-|–|to|until)\s*(?P<b>\d{1,2}:\d\d))?$"
)
L_PER_CU_FT, L_PER_QT = 28.316846592, 0.946352946
"""Exact by definition (NIST Handbook 44): 1728 and 57.75 cubic inches of 16.387064 ml."""


def read_kitchen(text: str, before: Kitchen) -> Kitchen:
    """ "1 oven, 2 slow cookers, 4 burners, fridge 60 l": what is not named stays as it was. Raises Unread."""
    kitchen = before
    parts = [p.strip() for p in re.split(r",|;|\band\b|\n", text[:LONGEST].casefold()) if p.strip()]
    if not parts:
        raise Unread(text)
    for part in parts:
        if (cold := _FRIDGE.match(part)) is not None:
            litres = float(cold["n"] or cold["n2"]) * (L_PER_CU_FT if "f" in (cold["unit"] or cold["unit2"]) else 1)
            if litres > MOST_FRIDGE_L:
                raise Unread(part)
            kitchen = replace(kitchen, fridge_l=round(litres, 1))
            continue
        if (day := _AWAKE.match(part)) is not None:
            kitchen = replace(kitchen, awake=_awake(part, day, kitchen.awake))
            continue
        match = _PART.match(part)
        thing = next((field for word, field in _THINGS.items() if match and match["thing"].startswith(word)), None)
        if match is None or thing is None:
            raise Unread(part)
        n = int(match["n"]) if match["n"].isdecimal() else _NUMBERS.get(match["n"], -1)
        if not 0 <= n <= 20:
            raise Unread(part)
        kitchen = _with(kitchen, thing, n, _facts(f"{match['facts']} {match['after'] or ''}"))
    return kitchen


MOST_FRIDGE_L = 5000.0
"""Only catches a slip of the pen; common practice, no source."""


def _awake(part: str, day: re.Match[str], before: tuple[str, str]) -> tuple[str, str]:
    hours = [t if ":" in t else f"{t}:00" for t in (day["a"], day["b"] or before[1])]
    if any(int(t.partition(":")[0]) > 23 or int(t.partition(":")[2]) > 59 for t in hours):
        raise Unread(part)
    return hours[0].zfill(5), hours[1].zfill(5)


def _facts(text: str) -> dict[str, float]:
    """ "6 qt" and "250 watts" by what they measure."""
    found: dict[str, float] = {}
    for fact in _FACT.finditer(text):
        unit, n = fact["unit"], float(fact["n"])
        if unit.startswith("q"):
            found["quarts"] = n
        elif unit.startswith("l"):
            found["quarts"] = round(n / L_PER_QT, 1)
        else:
            found["watts" if unit.startswith("w") else "amps"] = n
    return found


def _with(kitchen: Kitchen, thing: str, n: int, facts: dict[str, float]) -> Kitchen:
    match thing:
        case "ovens":
            return replace(kitchen, ovens=(kitchen.ovens[:n] + (Oven(),) * n)[:n])
        case "racks":
            # Said of each oven: "one oven, two racks".
            return replace(kitchen, ovens=tuple(replace(o, racks=n) for o in kitchen.ovens))
        case "slow_cookers":
            one = SlowCooker(facts.get("quarts", SlowCooker().quarts), round(facts.get("watts", SlowCooker().watts)))
            kept = () if facts else kitchen.slow_cookers[:n]
            return replace(kitchen, slow_cookers=(kept + (one,) * n)[:n])
        case "microwaves":
            other = Microwave(round(facts.get("watts", Microwave().watts)))
            return replace(kitchen, microwaves=((() if facts else kitchen.microwaves[:n]) + (other,) * n)[:n])
        case "circuits":
            line = Circuit(facts.get("amps", Circuit().amps))
            return replace(kitchen, circuits=((() if facts else kitchen.circuits[:n]) + (line,) * n)[:n])
        case "outlets":
            # Said of each circuit, as racks are of each oven.
            return replace(kitchen, circuits=tuple(replace(c, outlets=n) for c in kitchen.circuits))
        case "burners":
            return replace(kitchen, burners=n)
        case "grills":
            return replace(kitchen, grills=n)
        case _:
            return replace(kitchen, cooks=n)
