"""What a date in words comes to, and the text it is cut out of."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, datetime
from functools import cache

from planning.amounts import read_number
from planning.potluck import Say
from planning.tables import rows

LONGEST = 400
"""Characters looked at; dates further on are not found."""

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


@dataclass(frozen=True)
class When:
    """`starts_at` and `ends_at` are instants in UTC.

    Without a time `has_time` is false and `starts_at` is the day's local midnight; without a date `has_date` is
    false and the day is today, or tomorrow when the time has passed. `rest` is the text less the date, `words`
    what was taken for it. `notes` are things to mention: a skipped hour, how "next Friday" was taken.
    """

    starts_at: datetime
    has_time: bool
    ends_at: datetime | None = None
    rest: str = ""
    words: str = ""
    has_date: bool = True
    notes: tuple[Say, ...] = ()
    by_weekday: bool = False
    """No more of the day was said than its weekday."""


class Unclear(Exception):
    """A date that can't be acted on; `say` tells what to do about it."""

    def __init__(self, say: Say) -> None:
        super().__init__(say.key)
        self.say = say


def day_facts(day: date, prefix: str = "") -> dict[str, object]:
    """A day as plain facts: date (ISO), weekday name, day, month number, year; keys may carry a prefix."""
    return {
        f"{prefix}date": day.isoformat(),
        f"{prefix}weekday": WEEKDAYS[day.weekday()],
        f"{prefix}day": day.day,
        f"{prefix}month": day.month,
        f"{prefix}year": day.year,
        f"{prefix}year_text": str(day.year),  # a number would be written with a thousands sign
    }


@cache
def day_words(*roles: str) -> dict[str, str]:
    return {row["word"]: row["value"] for row in rows("words_days") if row["role"] in roles}


def any_word(*roles: str) -> str:
    return "|".join(sorted((re.escape(w) for w in day_words(*roles)), key=len, reverse=True))


class Scan:
    """The text with what was understood taken out, and where that was."""

    def __init__(self, text: str) -> None:
        self.all = text
        self.left = text
        self.spans: list[tuple[int, int]] = []

    def take(self, match: re.Match[str], group: int | str = 0) -> None:
        start, end = match.span(group)
        self.spans.append((start, end))
        self.left = self.left[:start] + "\x00" * (end - start) + self.left[end:]

    def take_all(self) -> None:
        self.spans = [(0, len(self.all))]
        self.left = "\x00" * len(self.all)

    def rest(self) -> str:
        pieces = re.split(r"\x00+", self.left)
        kept = [re.sub(r"^[\s,;.@]+|(?:[\s,;@]+|\b(?:on|at|from|for|by)\b)+$", "", p, flags=re.I) for p in pieces]
        return ", ".join(p for p in kept if p.strip(" ,.;()-"))

    def words(self) -> str:
        return " ".join(self.all[a:b].strip() for a, b in sorted(self.spans))


def hour_of(word: str) -> int:
    """A small number in digits or words; 0 when it is none."""
    if word.isdecimal():
        return int(word)
    read = read_number([word.lower()])
    return int(read[0]) if read else 0
