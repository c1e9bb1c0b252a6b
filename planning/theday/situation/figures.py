"""The temperatures a sentence tells: of food by a thermometer, of the weather, of an oven that is off the mark."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta

from planning.potluck import Potluck
from planning.theday.situation.patterns import found, patterns

WEATHER_F = (-20.0, 125.0)
FOOD_F = (25.0, 215.0)
OVEN_OFF = (5.0, 100.0)
_FIGURE = re.compile(
    r"(?<![\d$:/.,-])(?P<n>\d{1,3}(?:\.\d)?)(?![\d:/]|\.\d) ?(?P<deg>°|degrees?|deg\b|grados)? ?"
    r"(?P<u>f|c|fahrenheit|celsius|centigrados)?(?![a-z0-9])"
)
_NEXT = re.compile(
    r"^(?:$|[ )]*[,.!?;]|[\s:()-]*(?:$|for (?:the|my)\b|in\b|at\b|on\b|now\b|inside|near|by the|ok\b|okay|"
    r"is (?:it|that)|can\b|done|enough|and\b|but\b|already|still|after|when|right now|should|do\b|what|good|fine|"
    r"so\b|only|internal|core|center|the (?:thigh|breast|center|middle)|por\b|en\b|adentro|dentro|esta\b|ya\b|y\b|"
    r"pero|sirve|se puede|turkey|chicken|burgers?|lasagna|too|not|help|isnt|not sure))"
)
_WHERE = re.compile(
    r" ?(?:(?:in|at|near) the (?:thigh|breast|middle|center|centre|thickest)|inside|internal|por dentro|en el centro)\b"
)
_OVEN = re.compile(r"\b(?:oven|horno|bake|roast at|hornear)\b")
_PROBE = re.compile(r"\b(?:thermometer|probe|inside|internal|center|middle|reads|termometro|por dentro|centro|marca)\b")
_OVEN_BEFORE = re.compile(r"\b(?:ovens?|horno|grill|fryer|oil|smoker)(?: \w+)? ?(?:at|to|on|is|a|of|set to)? ?$")
_TIME_BEFORE = re.compile(
    r"\b(?:(?:since|from|until|till|til|desde|hasta|for|para)(?: about| around| like)?"
    r"|half(?: past)?|quarter (?:past|to)|a las?) $"
)
_CLOCK_BEFORE = re.compile(
    r"\b(?P<moved>(?:of|in|into|from|to|off) (?:the |my |our |a )?)?(?P<led>[a-z]+)? ?"
    r"(?:at|around|about|by|a eso de(?: las?)?)(?: about| around| like)? $"
)
_LED = frozenset(
    ("is", "are", "was", "were", "its", "theyre", "sits", "sitting", "holding", "stays", "staying", "still", "now",
     "only", "fridge", "refrigerator", "cooler", "freezer", "chest", "reads", "reading", "temp", "temperature",
     "thermometer", "probe", "middle", "center", "centre", "inside", "thickest", "thigh", "breast", "core",
     "steady", "measured")
)  # fmt: skip
"""Words before "at 5" that make it what is measured; behind any other ("put out at 5", "we ate at 8") it is an hour."""
LAST_HOUR = 24


@dataclass(frozen=True)
class Reading:
    """What a thermometer shows, in °F, and where it stands in the text."""

    f: float
    start: int
    end: int


def readings(text: str, language: str, *, metric: bool) -> tuple[Reading, ...]:
    """Figures with a degree sign, and those which words of measuring stand before, or where it was measured behind."""
    out = []
    for match in _FIGURE.finditer(text):
        before, after = text[max(0, match.start() - 22) : match.start()], text[match.end() :]
        if _OVEN_BEFORE.search(before) or (not match["deg"] and _TIME_BEFORE.search(before)):
            continue
        if not match["deg"] and not match["u"]:
            gauges = (rf"(?:{p.pattern})(?: \w+)?[ :=]*$" for p in patterns(language, "gauge"))
            led = _WHERE.match(after) is not None or any(re.search(one, before) for one in gauges)
            first = match.start() == 0 and after[:1] in ("!", ".", "") and float(match["n"]) >= 100
            if not (led or first) or not _NEXT.match(after) or _an_hour(match["n"], before):
                continue
        if _OVEN.search(text) and not _PROBE.search(text):
            continue
        f = fahrenheit(float(match["n"]), match["u"] or "", metric=metric or language == "es")
        if FOOD_F[0] <= f <= FOOD_F[1]:
            out.append(Reading(f, match.start(), match.end()))
    return tuple(out)


def _an_hour(figure: str, before: str) -> bool:
    """Whether a bare figure is a time of day: "turned it off at 5"."""
    clock = _CLOCK_BEFORE.search(before)
    if clock is None or float(figure) > LAST_HOUR:
        return False
    return clock["moved"] is not None or (clock["led"] or "") not in _LED


def fahrenheit(n: float, unit: str, *, metric: bool) -> float:
    """°F of a figure; without a unit °C where that is usual and the figure can be one."""
    celsius = unit[:1] == "c" or (unit == "" and metric and n <= 100)
    return n * 9 / 5 + 32 if celsius else n


@dataclass(frozen=True)
class Weather:
    f: float
    start: int
    end: int
    day: str


def weather(text: str, language: str, *, metric: bool) -> Weather | None:
    """How hot it is, or will be, outside; `day` the word for the day, "" for none."""
    for pattern in patterns(language, "weather"):
        match = pattern.search(text)
        if match is None:
            continue
        n = float(match["n"])
        f = fahrenheit(n, match["u"] or "", metric=(metric or language == "es") and n <= 52)
        if not WEATHER_F[0] <= f <= WEATHER_F[1]:
            continue
        day = found(text, language, "day")
        return Weather(f, match.start(), match.end(), day.group() if day is not None else "")
    return None


WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_SPANISH_DAYS = ("lunes", "martes", "miercoles", "jueves", "viernes", "sabado", "domingo")


def day_of(day: str, now: datetime, potluck: Potluck) -> bool | None:
    """Whether a word for a day means the day of the potluck; None where no day was named and it may be meant."""
    start, today = potluck.local(potluck.starts_at).date(), potluck.local(now).date()
    if day in ("tomorrow", "manana"):
        return today + timedelta(days=1) == start
    for names in (WEEKDAYS, _SPANISH_DAYS):
        number = next((n for n, name in enumerate(names) if day.startswith(name)), None)
        if number is not None:
            return start.weekday() == number
    if day:
        return today == start
    return None


def oven_off(text: str, language: str, *, metric: bool) -> float | None:
    """By how many °F an oven is hotter than it says; less than 0 where it is colder. None for other words."""
    if not found(text, language, "oven-hint"):
        return None
    for pattern in patterns(language, "oven-set"):
        match = pattern.search(text)
        if match is not None and 10 <= abs(off := float(match["got"]) - float(match["set"])) <= 150:
            return off * 1.8 if metric else off
    for pattern in patterns(language, "oven-off"):
        match = pattern.search(text)
        if match is None:
            continue
        degrees = float(match["n"])
        celsius = (match.groupdict().get("u") or "") == "c" or metric or language == "es"
        degrees = degrees * 1.8 if celsius else degrees
        if OVEN_OFF[0] <= degrees <= OVEN_OFF[1]:
            cold = re.match(r"cold|cool|low|under|below|menos|por debajo|fri|baj|abajo", match["way"]) is not None
            return -degrees if cold else degrees
    return None
