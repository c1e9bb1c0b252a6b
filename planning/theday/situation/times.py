"""Since when, until when and for how long, in the words of a hurry: "since half past 3", "like 40 min", "all night"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

MORNING, EVENING, AFTERNOON = 8, 20, 12
""" "This morning", "last night" and "all afternoon" begin at these hours (common practice, no source)."""
LONGEST_MIN = 2880
NIGHT_MIN = 720.0
HOURS_MIN = 180.0
""" "For hours" is taken as three (common practice, no source): more than any limit."""

_SMALL = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12, "fifteen": 15, "twenty": 20, "thirty": 30, "forty": 40, "forty five": 45,
    "fifty": 50, "sixty": 60, "ninety": 90,
    "una": 1, "un": 1, "dos": 2, "tres": 3, "cuatro": 4, "cinco": 5, "seis": 6, "siete": 7,
    "ocho": 8, "nueve": 9, "diez": 10, "once": 11, "doce": 12, "quince": 15, "veinte": 20, "treinta": 30,
    "cuarenta": 40, "a": 1, "an": 1, "couple": 2, "couple of": 2, "a couple": 2, "a couple of": 2, "few": 3,
    "a few": 3, "several": 3, "un par de": 2, "half an": 0.5, "half a": 0.5, "half": 0.5, "media": 0.5,
}  # fmt: skip
_WORDED = {"thirty": 30, "y media": 30, "fifteen": 15, "y cuarto": 15, "twenty": 20, "ten": 10, "fortyfive": 45}
_PARTS = {"morning": "a", "manana": "a", "afternoon": "p", "evening": "p", "tarde": "p", "noche": "p"}
_HOUR = (
    r"\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
    r"|una|dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez|once|doce"
)
_CLOCK = (
    r"(?:(?P<noon>noon|midday|lunch ?(?:time)?|mediodia)|(?P<midnight>midnight|medianoche)"
    r"|(?P<morning>this morning|breakfast|esta manana|la manana)|(?P<night>last night|anoche)"
    r"|(?P<yesterday>yesterday|ayer)"
    rf"|half (?:past )?(?P<half>{_HOUR})"
    rf"|(?:a )?quarter (?P<qw>past|after|to|til) (?P<qh>{_HOUR})"
    rf"|(?P<mins>five|ten|twenty|twenty five|\d{{1,2}}) (?:minutes )?(?P<mw>past|after|to|til) (?P<mh>{_HOUR})"
    rf"|(?P<h>{_HOUR})(?![\d])(?:(?:[:.h]| )(?P<m>[0-5]\d)(?![\d.])| (?P<words>thirty"
    r"|fifteen|forty ?five|twenty|ten"
    r"|y media|y cuarto|menos cuarto)|)(?:ish)?(?: ?(?P<p>[ap])\.? ?m\b)?"
    r"(?: (?:in the|de la|this) (?P<part>morning|afternoon|evening|manana|tarde|noche))?)"
    r"(?! ?(?:lbs?|pounds?|people|servings|minutes?|mins?|hours?|hrs?|h\b|horas?|minutos?"
    r"|degrees|grados|°|%|dozen|kids|of us))"
)
_LEAD = r"(?:(?:about|around|like|roughly|maybe|probably|las?|el|como|eso de|at|a|i think|the)\s+)*"
_SINCE = re.compile(rf"\b(?:since|from|desde|ever since)\s+{_LEAD}{_CLOCK}")
_AT = re.compile(rf"\b(?:at|around|a eso de|a)\s+{_LEAD}{_CLOCK}")
_UNTIL = re.compile(rf"\b(?:until|till|til|up to|hasta)\s+{_LEAD}{_CLOCK}")
_LENGTH = re.compile(
    r"(?<![\w.:])(?P<n>\d{1,3}(?:[.,]\d)?|\.5|(?:a )?couple(?: of)?|(?:a )?few|several|un par de|half an?|an?|media|"
    r"forty five|[a-z]+)"
    r"(?P<half> and a half)?[ -]?(?P<unit>hours?|hrs?|hr|h|minutes?|mins?|min|horas?|minutos?)\b"
    r"(?P<more> and a half| y media)?(?: ?(?:and |y )?(?P<m>\d{1,2}) ?(?:minutes?|mins?|m|minutos?)\b)?"
)
_HOURS = re.compile(r"\b(?:for|hace|por) (?:many |several |muchas |varias )?(?:hours|horas|ages)\b|\bhours ago\b")
_NIGHT = re.compile(r"\b(?:all night(?: long)?|overnight|over night|the whole night|toda la noche)\b")
_DAY = re.compile(r"\b(?:all day|the whole day|all morning|todo el dia|toda la manana)\b")
_NOON = re.compile(r"\b(?:all afternoon|the whole afternoon|toda la tarde)\b")


@dataclass(frozen=True)
class Said:
    """`kind`: since, at, until or for. `at` is an instant (UTC) that has passed, `minutes` a length."""

    kind: str
    start: int
    end: int
    at: datetime | None = None
    minutes: float | None = None


def times(text: str, now: datetime, zone: ZoneInfo) -> tuple[Said, ...]:
    """Everything a folded text says of when, in its order. An hour is the latest one that has passed."""
    return tuple(sorted(_times(text, now, zone), key=lambda said: said.start))


def _times(text: str, now: datetime, zone: ZoneInfo) -> Iterator[Said]:
    local = now.astimezone(zone)
    taken: list[tuple[int, int]] = []
    for kind, pattern in (("since", _SINCE), ("until", _UNTIL), ("at", _AT)):
        for match in pattern.finditer(text):
            at = _instant(match, local)
            if at is not None and not any(a < match.end() and match.start() < b for a, b in taken):
                taken.append(match.span())
                yield Said(kind, match.start(), match.end(), at.astimezone(now.tzinfo))
    for match in _LENGTH.finditer(text):
        length = _minutes(match)
        if (
            length is not None
            and 0 < length <= 2880
            and not any(a < match.end() and match.start() < b for a, b in taken)
        ):
            yield Said("for", match.start(), match.end(), None, length)
    for pattern, hour in ((_DAY, MORNING), (_NOON, AFTERNOON)):
        for match in pattern.finditer(text):
            begun = local.replace(hour=hour, minute=0, second=0, microsecond=0)
            yield Said("since", match.start(), match.end(), min(local, begun).astimezone(now.tzinfo))
    for match in _NIGHT.finditer(text):
        yield Said("for", match.start(), match.end(), None, NIGHT_MIN)
    for match in _HOURS.finditer(text):
        yield Said("for", match.start(), match.end(), None, HOURS_MIN)


def _number(word: str) -> float | None:
    if word in _SMALL:
        return float(_SMALL[word])
    try:
        return float(word.replace(",", "."))
    except ValueError:
        return None


def _minutes(match: re.Match[str]) -> float | None:
    n = _number(match["n"])
    if n is None:
        return None
    if match["half"] or match["more"]:
        n += 0.5
    hours = match["unit"].startswith("h")
    return n * 60 + float(match["m"] or 0) if hours else n


def _instant(match: re.Match[str], local: datetime) -> datetime | None:
    day = local.replace(minute=0, second=0, microsecond=0)
    if match["morning"]:
        return min(local, day.replace(hour=MORNING))
    if match["night"] or match["yesterday"]:
        return day.replace(hour=EVENING if match["night"] else AFTERNOON) - timedelta(days=1)
    if match["midnight"]:
        return day.replace(hour=0)
    if match["noon"]:
        return _latest(local, 12, 0, "p")
    if match["half"]:
        return _latest(local, int(_number(match["half"]) or 0), 30, "")
    for hour, way, minutes in (("qh", "qw", 15.0), ("mh", "mw", _number(match["mins"] or "0") or 0.0)):
        if match[hour]:
            h = int(_number(match[hour]) or 0)
            return (
                _latest(local, h, int(minutes), "") if match[way] in ("past", "after") else _before(local, h, minutes)
            )
    hour_said = int(_number(match["h"]) or 0)
    word = match["words"] or ""
    minute = int(match["m"] or 0) or _WORDED.get(word.replace("forty five", "fortyfive"), 0)
    half = match["p"] or _PARTS.get(match["part"] or "", "")
    if word == "menos cuarto":
        return _before(local, hour_said, 15.0)
    return _latest(local, hour_said, minute, half)


def _before(local: datetime, hour: int, minutes: float) -> datetime | None:
    whole = _latest(local + timedelta(minutes=minutes), hour, 0, "")
    return whole - timedelta(minutes=minutes) if whole is not None else None


def _latest(local: datetime, hour: int, minute: int, half: str) -> datetime | None:
    if not 0 <= hour <= 23 or (half and not 1 <= hour <= 12):
        return None
    hours = [hour] if hour > 12 or hour == 0 else [hour % 12, hour % 12 + 12]
    hours = [h for h in hours if not half or (h >= 12) == (half == "p")]
    past = [
        at
        for h in hours
        for days in (0, 1)
        if (at := local.replace(hour=h, minute=minute, second=0, microsecond=0) - timedelta(days=days)) <= local
    ]
    return max(past) if past else None
