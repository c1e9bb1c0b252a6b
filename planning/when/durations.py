"""Lengths of time: "20 minutes", "half an hour", "1h30"."""

from __future__ import annotations

import re
from datetime import timedelta

from planning.amounts import read_number
from planning.when.values import LONGEST

_DURATION = re.compile(
    r"(?P<n>[0-9]{1,4}(?:[.,][0-9])?|half an?|an?|quarter of an|three quarters of an|(?:twenty|thirty|forty|fifty)[ -]"
    r"(?:one|two|three|four|five|six|seven|eight|nine)|[a-z]+(?:-[a-z]+)?|½|1½)"
    r"[ -]?(?:and a half )?(?P<unit>hours?|hrs?|h|minutes?|mins?|min|m|days?|weeks?)\b(?P<more> and a half)?"
    r"(?: ?(?:and )?(?P<n2>[0-9]{1,2}) ?(?:minutes?|mins?|m)?\b)?",
    re.IGNORECASE,
)
_SHORT = re.compile(r"(?<![0-9])([0-9]{1,2}) ?h(?:rs?)? ?([0-5]?[0-9])(?: ?m(?:in)?s?)?(?![0-9])", re.IGNORECASE)


def parse_duration(text: str) -> timedelta | None:
    """How long the first length of time in the text is: "20 minutes", "half an hour", "1h30"; None without one."""
    if (match := _SHORT.search(text[:LONGEST])) is not None:
        return timedelta(hours=int(match[1]), minutes=int(match[2]))
    for match in _DURATION.finditer(text[:LONGEST]):
        word = match["n"].lower()
        if word.startswith("half"):
            n = 0.5
        elif "quarter" in word:
            n = 0.75 if word.startswith("three") else 0.25
        elif word in ("a", "an"):
            n = 1.0
        elif word[0].isdecimal() and word[-1].isdecimal():
            n = float(word.replace(",", "."))
        elif word in ("½", "1½"):
            n = 0.5 if word == "½" else 1.5
        elif (read := read_number(word.split())) is not None:
            n = float(read[0])
        else:
            continue
        unit = match["unit"].lower()
        if match["more"] or "and a half" in match[0].lower():
            n += 0.5
        extra = timedelta(minutes=int(match["n2"])) if match["n2"] and unit.startswith("h") else timedelta()
        if unit.startswith("h"):
            return timedelta(hours=n) + extra
        if unit.startswith("m"):
            return timedelta(minutes=n)
        return timedelta(days=n * (7 if unit.startswith("w") else 1))
    return None
