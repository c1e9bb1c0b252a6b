"""Another start for something that has one: "Sunday", "6", "an hour later", "the week after"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from planning.when.durations import parse_duration
from planning.when.reading import parse_when
from planning.when.values import LONGEST, When

_LATER = re.compile(r"\b(?:later|after(?:wards)?|following|back|out)\b", re.IGNORECASE)
_EARLIER = re.compile(r"\b(?:earlier|sooner|before|forward|previous)\b", re.IGNORECASE)
_AGAIN = re.compile(r"^(?:the )?(?:(?P<unit>day|week|month) (?:after|later|before|earlier)|(?:following|next|previous) (?P<unit2>day|week))"
                    r"(?:,? (?:at )?(?:the )?same (?:time|hour|day).*)?$", re.IGNORECASE)  # fmt: skip
_SAME = re.compile(r",? ?\b(?:at )?(?:the )?same (?:time|hour|day)(?: as before)?\b", re.IGNORECASE)
_DURATION_ONLY = re.compile(
    r"^(?:by |for |about |around )*(?P<much>[^,;]{1,30}?) (?:later|earlier|sooner|back|forward|after|before)(?: than planned)?$",
    re.IGNORECASE,
)
_BARE_HOUR = re.compile(r"^(?:at |to |for )?(?P<h>\d{1,2})(?:[:.](?P<m>[0-5]\d))?(?:ish| or so)?$", re.IGNORECASE)


def moved(words: str, starts_at: datetime, now: datetime, timezone: str) -> When:
    """The new start these words name for what was to start at `starts_at` (UTC). Raises Unclear.

    An hour alone keeps the day and a day alone keeps the hour, both by the wall clock of `timezone`; a weekday is
    the one nearest to the old day that is still to come ("Sunday" for a Saturday is the day after); "an hour later",
    "a week earlier", "the week after" count from the old start.
    """
    zone = ZoneInfo(timezone)
    words = " ".join(words[:LONGEST].split()).strip(" .,!")
    local = starts_at.astimezone(zone).replace(tzinfo=None)
    by = shift(words)
    if by is not None:
        return _at(local + by, zone, words)
    words = _SAME.sub("", words).strip(" ,") or words
    if (bare := _BARE_HOUR.match(words)) is not None:
        if (near := _nearer_half(int(bare["h"]), int(bare["m"] or 0), local)) is not None:
            return _at(near, zone, words)
        words = f"at {bare['h']}:{bare['m']}" if bare["m"] else f"at {bare['h']}"
    said = parse_when(words, now, timezone)
    if not said.has_date:
        clock = said.starts_at.astimezone(zone).time()
        return replace(_at(datetime.combine(local.date(), clock), zone, said.words), ends_at=None, rest=said.rest)
    clock = said.starts_at.astimezone(zone).time() if said.has_time else local.time()
    day = said.starts_at.astimezone(zone).date()
    if said.by_weekday:
        day = _nearest(day, local.date(), clock, now.astimezone(zone).replace(tzinfo=None))
    elif said.has_time:
        return said
    notes = tuple(n for n in said.notes if n.key != "when-next-weekday") if said.by_weekday else said.notes
    return replace(_at(datetime.combine(day, clock), zone, said.words), rest=said.rest, notes=notes)


MEALS_FROM = 7
"""Nobody moves a meal to an earlier hour unless it was as early (common practice, no source)."""
NEARER_BY = timedelta(hours=1)


def _nearer_half(hour: int, minute: int, old: datetime) -> datetime | None:
    """That hour of the old day in the half of it which is nearer to the old start; None where neither is plainly."""
    if not 1 <= hour <= 12:
        return None
    wall = old.replace(minute=minute, second=0, microsecond=0)
    both = [wall.replace(hour=h) for h in (hour % 12, hour % 12 + 12)]
    meant = [b for b in both if b.hour >= min(MEALS_FROM, old.hour)] or both
    away = sorted((abs(b - old), b) for b in meant)
    return away[0][1] if len(away) == 1 or away[1][0] - away[0][0] > NEARER_BY else None


def shift(words: str) -> timedelta | None:
    """ "An hour later", "by a week earlier", "the day after": how far, or None. Days are days of the calendar.

    >>> shift("half an hour later"), shift("the week before"), shift("Sunday")
    (datetime.timedelta(seconds=1800), datetime.timedelta(days=-7), None)
    """
    words = words.casefold().strip(" .,!")
    sign = -1 if _EARLIER.search(words) else 1
    if (again := _AGAIN.match(words)) is not None:
        unit = again["unit"] or again["unit2"]
        return None if unit == "month" else sign * timedelta(days=7 if unit == "week" else 1)
    only = _DURATION_ONLY.match(words)
    if only is None or not (_LATER.search(words) or _EARLIER.search(words)):
        return None
    length = parse_duration(only["much"])
    return None if length is None or not timedelta() < length <= timedelta(days=366) else sign * length


def _at(wall: datetime, zone: ZoneInfo, words: str) -> When:
    return When(wall.replace(tzinfo=zone).astimezone(UTC), True, words=words)


def _nearest(day: date, old: date, clock: time, now: datetime) -> date:
    """Of the days with that weekday from now on the one nearest to the old day."""
    weeks = range(-1, 1 + max(0, (old - day).days // 7 + 2))
    ahead = [d for k in weeks if datetime.combine(d := day + timedelta(weeks=k), clock) > now]
    return min(ahead, key=lambda d: (abs((d - old).days), d))
