"""Dates and times in words, as people write them in a chat: "Sat 18 Sep 5pm", "tomorrow at six".

Our own patterns read English and figures; names in other languages are left to dateparser, on short text only.
How an open wording is taken:

- A bare hour from 1 to 8 is in the evening ("at 5" is 17:00), as people set the time of a meal; 12 is noon;
  9, 10 and 11 are asked about. "05:00", "17:00", "am", "pm", "morning" or "brunch" decide it.
- "next Friday" is the Friday of next week (weeks begin on Monday); "Friday" and "this Friday" are the nearest one.
- A date without a year is the next one to come; if it has passed in the last three months, we ask.
- In the hour skipped when clocks go forward, the time is moved on by an hour and a note says so; in the hour
  that comes twice the first one is meant.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import cache
from zoneinfo import ZoneInfo

from planning.amounts import read_number
from planning.potluck import Say
from planning.tables import rows

LONGEST = 400
"""Characters looked at; dates further on are not found."""

FARTHEST_DAYS = 3 * 366
"""A potluck farther away than about three years is taken for a slip (common practice, no source)."""

RECENT_DAYS = 92
"""A date without a year that passed within so many days was meant as past; we ask."""

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
def _words(*roles: str) -> dict[str, str]:
    return {row["word"]: row["value"] for row in rows("words_days") if row["role"] in roles}


def _any(*roles: str) -> str:
    return "|".join(sorted((re.escape(w) for w in _words(*roles)), key=len, reverse=True))


@dataclass(frozen=True)
class _Clock:
    """A time of day as written: `half` is "am", "pm" or "" when nobody said."""

    hour: int
    minute: int
    half: str = ""
    sure: bool = False


class _Text:
    """The text with what was understood taken out, and where that was."""

    def __init__(self, text: str) -> None:
        self.all = text
        self.left = text
        self.spans: list[tuple[int, int]] = []

    def take(self, match: re.Match[str], group: int | str = 0) -> None:
        start, end = match.span(group)
        self.spans.append((start, end))
        self.left = self.left[:start] + "\x00" * (end - start) + self.left[end:]

    def rest(self) -> str:
        pieces = re.split(r"\x00+", self.left)
        kept = [re.sub(r"^[\s,;.@]+|(?:[\s,;@]+|\b(?:on|at|from|for|by)\b)+$", "", p, flags=re.I) for p in pieces]
        return ", ".join(p for p in kept if p.strip(" ,.;()-"))

    def words(self) -> str:
        return " ".join(self.all[a:b].strip() for a, b in sorted(self.spans))


@cache
def _patterns() -> dict[str, re.Pattern[str]]:
    month = f"(?P<month>{_any('month')})\\b\\.?"
    nth = r"(?P<day>[0-9]{1,2})(?:st|nd|rd|th)?"
    ordinal = f"(?P<ordinal>{_any('ordinal')})"
    year = r"(?:,? ?(?:(?P<year>(?:19|2[0-9])[0-9]{2})(?![0-9:])|[’'](?P<short>[0-9]{2})\b))?"
    weekday = f"(?P<weekday>{_any('weekday')}|(?:{_any('weekday-short')})\\b)"
    sources = {
        "iso": r"\b(?P<year>[0-9]{4})-(?P<month>[0-9]{1,2})-(?P<day>[0-9]{1,2})(?![0-9])(?:T(?=[0-9]))?",
        "dotted": r"\b(?P<day>[0-9]{1,2})\. ?(?P<month>[0-9]{1,2})\.(?: ?(?P<year>[0-9]{4}|[0-9]{2})(?![0-9:.h]))?",
        "slashed": r"(?<![0-9/])(?P<a>[0-9]{1,2})(?P<sep>[/-])(?P<b>[0-9]{1,2})(?:(?P=sep)(?P<year>[0-9]{4}|[0-9]{2}))(?![0-9/])",
        "short": r"(?<![0-9/])(?P<a>[0-9]{1,2})/(?P<b>[0-9]{1,2})(?![0-9/])",
        "day-month": rf"\b(?:the )?(?:{nth}|{ordinal})(?: of)?[ -]?{month}{year}",
        "month-day": rf"\b{month} ?(?:the )?(?:{nth}(?![0-9:]| ?[ap]\.?m)|{ordinal}\b){year}",
        "nth": rf"\b(?:on )?(?:the (?:{nth}(?=(?<=[a-z])|\b)|{ordinal}\b)|(?P<day2>[0-9]{{1,2}})(?:st|nd|rd|th)\b)",
        "weekday-after": rf"\b(?P<n>a|one|two|three|[1-9]) weeks? (?:on|from|after) (?:this |next )?{weekday}",
        "weekday-week": rf"\b(?:on )?{weekday} week\b",
        "weekday": rf"\b(?:on )?(?:(?P<which>this coming|this|next|coming|the coming) )?{weekday}(?:'s)?(?![a-z])",
        "in-days": r"\bin (?P<n>a|an|one|two|three|four|five|six|seven|eight|nine|ten|[0-9]{1,3}) (?P<unit>days?|weeks?|months?|fortnights?|hours?|hrs?|minutes?|mins?)(?:'s? time|' time)?\b",
        "from-now": r"\b(?P<n>a|one|two|three|four|[0-9]{1,3}) (?P<unit>days?|weeks?|months?) (?:from (?:now|today|(?P<tomorrow>tomorrow)))\b",
        "day": rf"\b(?P<word>{_any('day')})\b",
        "holiday": rf"\b(?:on )?(?P<word>{_any('holiday')})\b",
        "vague": r"\b(?P<word>(?:this|next|the) (?:weekend|week|month)|at the weekend|some ?time|some day|soon)\b",
    }
    return {name: re.compile(source, re.IGNORECASE) for name, source in sources.items()}


_ONES = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_HALF = r"(?P<{0}>[ap])\.?m\b\.?"
_AFTER = r"(?=\s*(?:$|[,;.!?)\-–\x00]|(?:on|sharp|tomorrow|today|till|til|until|to|in the|tonight|for|and|o'?clock|ish|please|this|next|we|bring)\b))"
_CLOCK = (
    r"(?P<h{0}>[0-9]{{1,2}})(?:(?:[:.]|h)(?P<m{0}>[0-5][0-9])(?![0-9]))?(?:ish)?(?: ?(?P<p{0}>[ap])\.?m\b\.?)?"
)
_TIMES = {
    "range": re.compile(
        r"\b(?P<lead>from|at|between|@)? ?" + _CLOCK.format(1) + r" ?(?:-|–|—|\bto\b|\btill?\b|\buntil\b|\band\b) ?"
        + _CLOCK.format(2) + r"(?![0-9/.]|st\b|nd\b|rd\b|th\b)",
        re.IGNORECASE,
    ),
    "half": re.compile(
        rf"\b(?:(?:at|from|around|about|@) )?(?P<h>[0-9]{{1,2}}|{_ONES})(?:[:.](?P<m>[0-5][0-9]))?(?:ish)? ?(?P<p>[ap])\.?(?:m\b\.?|(?<=\.)m\b)",
        re.IGNORECASE,
    ),
    "colon": re.compile(
        r"(?<![0-9:.])(?:(?:at|from|around|about|@) ?)?(?P<h>[01]?[0-9]|2[0-3])(?:[:h](?P<m>[0-5][0-9])|(?P<hour>h|hrs))(?![0-9])(?: ?uhr)?", re.IGNORECASE
    ),
    "military": re.compile(r"\b(?:at |@)?(?P<h>[01][0-9]|2[0-3])(?P<m>[0-5][0-9])(?: ?h(?:ou)?rs?|h)?\b(?! ?[/.-]?[0-9])", re.IGNORECASE),
    "past": re.compile(
        rf"\b(?:at |around |about )?(?P<part>half|quarter|ten|twenty|five|[0-9]{{1,2}})(?: (?P<way>past|to|after|before|of|til|till))? (?P<h>[0-9]{{1,2}}|{_ONES})\b(?: (?P<p>[ap])\.?m\b\.?)?",
        re.IGNORECASE,
    ),
    "dotted": re.compile(r"(?:\b(?:at|from|around|um) |@ ?)(?P<h>[01]?[0-9]|2[0-3])[.](?P<m>[0-5][0-9])(?![0-9.])|\b(?P<h2>[01]?[0-9]|2[0-3])(?:[.](?P<m2>[0-5][0-9]))? ?uhr\b", re.IGNORECASE),
    "clock": re.compile(rf"\b(?:(?:at|from) )?(?P<h>[0-9]{{1,2}}|{_ONES}) ?o['’]? ?clock\b", re.IGNORECASE),
    "thirty": re.compile(rf"\b(?:at|from|around|about|@) ?(?P<h>{_ONES})[ -](?P<mw>fifteen|thirty|forty-?five)\b", re.IGNORECASE),
    "at": re.compile(rf"(?:\b(?:at|from|around|about) ?|@ ?)(?P<h>[0-9]{{1,2}}|{_ONES})(?:ish)?(?![0-9:./])" + _AFTER, re.IGNORECASE),
    "word": re.compile(r"\b(?:at )?(?P<word>noon|midday|midnight)\b", re.IGNORECASE),
}  # fmt: skip
_BARE = re.compile(rf"(?<=\x00)[ ,]*(?:at )?(?P<h>[0-9]{{1,2}}|{_ONES})(?:ish)?(?=\s*(?:$|[,;.!)]))", re.IGNORECASE)
_UNTIL = re.compile(r"\b(?:till|til|until|ending(?: at)?|ends(?: at)?) " + _CLOCK.format(1) + r"(?![0-9])", re.IGNORECASE)
_MORNING = re.compile(r"\b(?:(?:in the|this|tomorrow)? ?morning|breakfast|brunch)\b", re.IGNORECASE)
_EVENING = re.compile(
    r"\b(?:evening|tonight|night|afternoon|dinner|supper|lunch|lunchtime|tea|cena)\b", re.IGNORECASE
)
_PERIOD = re.compile(r"\b(?:in the|at|this) (?:morning|evening|afternoon|night)\b|\b(?:morning|evening|afternoon|night)\b", re.IGNORECASE)


def _hour(word: str) -> int:
    if word.isdigit():
        return int(word)
    read = read_number([word.lower()])
    return int(read[0]) if read else 0


def _clock(hour: str, minute: str | None, half: str | None, *, exact: bool = False) -> _Clock | None:
    h, m = _hour(hour), int(minute or 0)
    if half:
        if not 1 <= h <= 12:
            return _Clock(h, m, "", True) if 12 < h < 24 and half.lower() == "p" else None
        return _Clock(h, m, half.lower() + "m", True)
    if h > 23 or (h == 0 and minute is None and not exact):
        return None
    return _Clock(h, m, "", exact or h > 12 or h == 0 or (hour.isdigit() and hour.startswith("0")))


def _day_time(clock: _Clock, text: str) -> tuple[time, bool]:
    """The time of day, and whether it belongs to the next day (midnight). Raises Unclear for 9, 10, 11."""
    hour = clock.hour
    if clock.half:
        return time(hour % 12 + (12 if clock.half == "pm" else 0), clock.minute), False
    if clock.sure:
        return time(hour, clock.minute), False
    if _MORNING.search(text):
        return time(hour % 12, clock.minute), False
    if hour in (9, 10, 11) and not _EVENING.search(text):
        shown = f"{hour}:{clock.minute:02d}"
        raise Unclear(Say("when-am-or-pm", {"time": shown}))
    return time(12 if hour == 12 else hour + 12, clock.minute), False


def _take_time(text: _Text, had_date: bool) -> tuple[_Clock | None, _Clock | None, bool]:
    """(start, end, midnight) taken out of the text."""
    start = end = None
    if (match := _TIMES["range"].search(text.left)) is not None:
        one, two = match["p1"], match["p2"]
        if match["lead"] or one or two or match["m1"] or match["m2"]:
            end = _clock(match["h2"], match["m2"], two)
            start = _clock(match["h1"], match["m1"], one)
            if start and end:
                if two and not one and not start.sure:
                    # "11-2pm" begins in the morning, "5-9pm" in the evening.
                    late = start.hour % 12 + 12 < end.hour % 12 + 12 if two.lower() == "p" else True
                    start = _Clock(start.hour, start.minute, f"{two.lower()}m" if late else "am", True)
                text.take(match)
                return start, end, False
            start = end = None
    if (match := _UNTIL.search(text.left)) is not None and (end := _clock(match["h1"], match["m1"], match["p1"])):
        text.take(match)
    if (match := _TIMES["word"].search(text.left)) is not None:
        text.take(match)
        if match["word"].lower() == "midnight":
            return _Clock(0, 0, "", True), end, True
        return _Clock(12, 0, "pm", True), end, False
    readers: tuple[tuple[str, Callable[[re.Match[str]], _Clock | None]], ...] = (
        ("half", lambda m: _clock(m["h"], m["m"], m["p"])),
        ("colon", lambda m: _clock(m["h"], m["m"], None, exact=bool(m["hour"]))),
        ("clock", lambda m: _clock(m["h"], None, None)),
        ("past", _past),
        ("thirty", lambda m: _clock(m["h"], {"fi": "15", "th": "30", "fo": "45"}[m["mw"][:2].lower()], None)),
        ("dotted", lambda m: _clock(m["h"] or m["h2"], m["m"] or m["m2"] or "00", None, exact=bool(m["h2"]))),
        ("military", lambda m: _clock(m["h"], m["m"], None, exact=True)),
        ("at", lambda m: _clock(m["h"], None, None)),
    )
    for name, reader in readers:
        match = _TIMES[name].search(text.left)
        if match is not None and (start := reader(match)) is not None:
            text.take(match)
            return start, end, False
    if had_date and (match := _BARE.search(text.left)) is not None and (start := _clock(match["h"], None, None)):
        text.take(match)
        return start, end, False
    return None, end, False


def _past(match: re.Match[str]) -> _Clock | None:
    """"half past five", "quarter to six", "half five" (half past)."""
    part, way, hour = match["part"].lower(), (match["way"] or "").lower(), _hour(match["h"])
    if not 1 <= hour <= 12 or (not way and part != "half"):
        return None
    minutes = {"half": 30, "quarter": 15}.get(part) or _hour(part)
    if not 0 < minutes < 60:
        return None
    if way in ("to", "before", "of", "til", "till"):
        hour, minutes = (hour - 2) % 12 + 1, 60 - minutes
    half = f"{match['p'].lower()}m" if match["p"] else ""
    return _Clock(hour, minutes, half, bool(half))


def _valid(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _full_year(text: str | None, short: str | None = None) -> int | None:
    digits = text or short
    if not digits:
        return None
    return 2000 + int(digits) if len(digits) == 2 else int(digits)


def _on(month: int, day: int, year: int | None, today: date) -> date:
    """That day of that year, or of the year that makes it the next to come."""
    if not 1 <= month <= 12 or not 1 <= day <= 31 or _valid(2028, month, day) is None:
        raise Unclear(Say("when-no-such-day", {"day": day, "month": month}))
    if year is None:
        found = _valid(today.year, month, day)
        if found is not None and found >= today:
            return found
        if found is not None and (today - found).days <= RECENT_DAYS:
            return found  # told as past further on
        year = today.year if found is None and (month, day) > (today.month, today.day) else today.year + 1
    found = _valid(year, month, day)
    if found is None:
        leap = next(y for y in range(year, year + 9) if _valid(y, 2, 29))
        raise Unclear(Say("when-29-february", {"year": year, "year_text": str(year), "leap": leap, "leap_text": str(leap)}))
    return found


def _take_date(text: _Text, now: datetime) -> tuple[date | datetime | None, int | None, list[Say]]:
    """(the day, or an instant for "in 2 hours"; the weekday named beside it; notes)."""
    patterns, today, notes = _patterns(), now.date(), []
    found: date | datetime | None = None
    weekday: int | None = None
    names = {**_words("weekday"), **_words("weekday-short")}

    def day_of(match: re.Match[str]) -> int:
        word = match.groupdict().get("ordinal")
        return int(_words("ordinal")[word.lower()]) if word else int(match["day"])

    for name in ("iso", "dotted", "day-month", "month-day", "slashed", "short", "holiday"):
        match = patterns[name].search(text.left)
        if match is None:
            continue
        got = match.groupdict()
        if name in ("slashed", "short"):
            found = _slashed(match, text, today)
            text.take(match)
            break
        if name == "dotted" and not (1 <= int(got["month"]) <= 12 and 1 <= int(got["day"]) <= 31):
            continue
        if name == "holiday":
            found = _holiday(_words("holiday")[match["word"].lower()], today)
        else:
            word = got["month"].lower()
            month = int(word) if word.isdigit() else int(_words("month")[word])
            found = _on(month, day_of(match), _full_year(got.get("year"), got.get("short")), today)
        text.take(match)
        break
    for name in ("weekday-after", "weekday-week"):
        if found is None and (match := patterns[name].search(text.left)) is not None:
            n = (match.groupdict().get("n") or "a").lower()
            ahead = (int(names[match["weekday"].lower()]) - today.weekday()) % 7
            text.take(match)
            return today + timedelta(days=ahead, weeks=1 if n == "a" else _hour(n)), None, notes
    for match in patterns["weekday"].finditer(text.left):
        word = match["weekday"].lower()
        if word in _words("weekday-short") and not _is_weekday_here(match, text.left):
            continue
        weekday = int(names[word])
        which = (match["which"] or "").lower()
        text.take(match)
        if found is None and (near := patterns["nth"].search(text.left)) is not None:
            number = int(near["day2"] or 0) or day_of(near)
            found = _nth(number, today)
            text.take(near)
        if found is None:
            ahead = (weekday - today.weekday()) % 7
            if which == "next":
                found = today - timedelta(days=today.weekday()) + timedelta(days=7 + weekday)
                if ahead and found != today + timedelta(days=ahead):
                    notes.append(Say("when-next-weekday", day_facts(found)))
            else:
                found = today + timedelta(days=ahead)
            return found, None, notes
        return found, weekday, notes
    if found is not None:
        return found, None, notes
    for name in ("in-days", "from-now"):
        if (match := patterns[name].search(text.left)) is not None:
            text.take(match)
            return _ahead(match, now), None, notes
    if (match := patterns["day"].search(text.left)) is not None:
        text.take(match)
        word = match["word"].lower()
        return today + timedelta(days=int(_words("day")[word])), None, notes
    if (match := patterns["nth"].search(text.left)) is not None:
        number = int(match["day2"] or 0) or day_of(match)
        text.take(match)
        return _nth(number, today), None, notes
    return None, None, notes


def _is_weekday_here(match: re.Match[str], text: str) -> bool:
    """A short weekday ("sat", "sun") stands beside something of a date, so that "sat in the sun" is none."""
    before, after = text[: match.start()].rstrip(" ,(").lower(), text[match.end() :]
    alone = not before or before.endswith(("on", "this", "next", "\x00", ",", "to", "potluck", "for"))
    return bool(
        match["which"] or re.match(r"\.?,? ?(?:\x00|[0-9]|the [0-9]|at [0-9]|@|noon|$)", after)
        or (alone and re.match(r"\.?(?:,| (?:at|evening|night|morning|afternoon|noon)\b)", after))
    )  # fmt: skip


def _nth(number: int, today: date) -> date:
    """The next such day of a month."""
    if not 1 <= number <= 31:
        raise Unclear(Say("when-no-such-day-number", {"day": number}))
    year, month = today.year, today.month
    for _ in range(3):
        day = _valid(year, month, number)
        if day is not None and day >= today:
            return day
        year, month = (year + 1, 1) if month == 12 else (year, month + 1)
    raise Unclear(Say("when-no-such-day-number", {"day": number}))


def _ahead(match: re.Match[str], now: datetime) -> date | datetime:
    n = 1 if match["n"].lower() in ("a", "an") else _hour(match["n"])
    unit = match["unit"].lower()
    if unit.startswith(("hour", "hr")):
        return now + timedelta(hours=n)
    if unit.startswith("min"):
        return now + timedelta(minutes=n)
    day = now.date()
    if "tomorrow" in match.groupdict() and match["tomorrow"]:
        day += timedelta(days=1)
    if unit.startswith("month"):
        month0 = day.month - 1 + n
        year, month = day.year + month0 // 12, month0 % 12 + 1
        return next(d for k in range(4) if (d := _valid(year, month, day.day - k)) is not None)
    return day + timedelta(days=n * (14 if unit.startswith("fort") else 7 if unit.startswith("week") else 1))


def _holiday(value: str, today: date) -> date:
    """"12-24", or "11-thu-4": the fourth Thursday of November (US: 5 U.S.C. 6103)."""
    month, day, *which = value.split("-")
    if not which:
        return _on(int(month), int(day), None, today)
    weekday = int(_words("weekday-short")[day])
    for year in (today.year, today.year + 1):
        all_of = [d for n in range(1, 32) if (d := _valid(year, int(month), n)) and d.weekday() == weekday]
        found = all_of[-1 if which[0] == "last" else int(which[0]) - 1]
        if found >= today:
            return found
    return found


def _slashed(match: re.Match[str], text: _Text, today: date) -> date:
    """"18/9" or "9/18"; "5/6" only if a weekday beside it or the sameness of both decides."""
    a, b = int(match["a"]), int(match["b"])
    year = _full_year(match.groupdict().get("year"))
    if a > 12 or a == b:
        return _on(b, a, year, today)
    if b > 12:
        return _on(a, b, year, today)
    day_first, month_first = _on(b, a, year, today), _on(a, b, year, today)
    beside = _patterns()["weekday"].search(text.left)
    if beside is not None:
        names = {**_words("weekday"), **_words("weekday-short")}
        fitting = [d for d in (day_first, month_first) if d.weekday() == int(names[beside["weekday"].lower()])]
        if len(fitting) == 1:
            return fitting[0]
    facts = day_facts(month_first) | day_facts(day_first, "other_")
    raise Unclear(Say("when-day-or-month", {"written": match[0], **facts}))


def _instant(day: date, at: time, zone: ZoneInfo, notes: list[Say]) -> datetime:
    """The instant of that wall time; a skipped hour moves on, a doubled one is the first."""
    wall = datetime.combine(day, at)
    instant = wall.replace(tzinfo=zone).astimezone(UTC)
    back = instant.astimezone(zone).replace(tzinfo=None)
    if back != wall:
        notes.append(Say("when-skipped-hour", {"said": f"{at:%H:%M}", "shown": f"{back:%H:%M}", **day_facts(day)}))
    elif wall.replace(tzinfo=zone).utcoffset() != wall.replace(tzinfo=zone, fold=1).utcoffset():
        notes.append(Say("when-doubled-hour", {"said": f"{at:%H:%M}", **day_facts(day)}))
    return instant


def parse_when(text: str, now: datetime, timezone: str) -> When:
    """The date and time the text names, seen from `now` in `timezone` (an IANA name).

    Raises Unclear (a sentence to show) when there is none, or one that can't be acted on.
    """
    zone = ZoneInfo(timezone)
    local = now.astimezone(zone).replace(tzinfo=None)
    scan = _Text(re.sub(r"\s", " ", text[:LONGEST]).replace("\x00", " "))
    found, weekday, notes = _take_date(scan, local)
    if isinstance(found, datetime):
        at = (now.astimezone(UTC) + (found - local)).replace(second=0, microsecond=0)
        return When(at, True, None, scan.rest(), scan.words(), True, tuple(notes))
    clock, end, midnight = _take_time(scan, found is not None)
    if found is None and clock is None:
        vague = _patterns()["vague"].search(scan.left)
        if vague is not None:
            raise Unclear(Say("when-which-day", {"words": vague[0]}))
        found = _foreign(scan.left, local)
        if found is None:
            raise Unclear(Say("when-not-understood", {"text": text.strip()[:60]}))
        if isinstance(found, datetime):
            clock = _Clock(found.hour, found.minute, "", True)
            found = found.date()
        scan.spans.append((0, len(scan.left)))
        scan.left = ""
    if (period := _PERIOD.search(scan.left)) is not None and (found or clock):
        scan.take(period)
    if found is not None and weekday is not None and found.weekday() != weekday:
        other = found + timedelta(days=min(range(-3, 4), key=lambda k: ((found.weekday() + k - weekday) % 7, k)))
        facts = day_facts(found) | day_facts(other, "other_") | {"said": WEEKDAYS[weekday]}
        raise Unclear(Say("when-weekday-disagrees", facts))
    return _settled(scan, found, clock, end, midnight, local, zone, notes)


def _settled(
    scan: _Text, found: date | None, clock: _Clock | None, end: _Clock | None, midnight: bool,
    local: datetime, zone: ZoneInfo, notes: list[Say],
) -> When:  # fmt: skip
    """Day and clock together, checked against now."""
    today = local.date()
    day = found or today
    if clock is None:
        if day < today:
            raise _past_date(day, None, local)
        _check_far(day, today)
        starts = _instant(day, time(0), zone, [])
        return When(starts, False, None, scan.rest(), scan.words(), True, tuple(notes))
    at, _ = _day_time(clock, scan.all)
    if midnight:
        day += timedelta(days=1)
        notes.append(Say("when-midnight", day_facts(day - timedelta(days=1))))
    if found is None and datetime.combine(day, at) <= local:
        day += timedelta(days=1)
    if datetime.combine(day, at) <= local:
        raise _past_date(day, at, local)
    _check_far(day, today)
    starts = _instant(day, at, zone, notes)
    ends = None
    if end is not None:
        ends_at = _end_time(end, at, scan.all)
        ends_day = day if ends_at > at else day + timedelta(days=1)
        ends = _instant(ends_day, ends_at, zone, notes)
    return When(starts, True, ends, scan.rest(), scan.words(), found is not None, tuple(notes))


def _end_time(end: _Clock, start: time, text: str) -> time:
    """When it ends: a bare hour is the first such hour after the start."""
    if end.half or end.sure:
        return _day_time(end, text)[0]
    morning, evening = time(end.hour % 12, end.minute), time(end.hour % 12 + 12, end.minute)
    return morning if start < morning else evening if start < evening else morning


def _past_date(day: date, at: time | None, local: datetime) -> Unclear:
    """Says that it has passed, and offers the next such date."""
    today = local.date()
    if (today - day).days < 7 and at is not None and (today - day).days == 0:
        offer = day + timedelta(days=1)
    elif (today - day).days == 1 and at is None:
        offer = today
    else:
        offer = next(
            d for y in range(today.year, today.year + 9) if (d := _valid(y, day.month, day.day)) and d >= today
        )
    facts = day_facts(day) | day_facts(offer, "other_") | {"time": f"{at:%H:%M}" if at else "none"}
    return Unclear(Say("when-past", facts))


def _check_far(day: date, today: date) -> None:
    if (day - today).days > FARTHEST_DAYS:
        raise Unclear(Say("when-too-far", day_facts(day)))


def _foreign(text: str, local: datetime) -> date | datetime | None:
    """A short date in another language, by dateparser; a time only if the text has figures for one."""
    text = text.strip(" ,.!?\x00")
    if not 4 <= len(text) <= 40 or not re.search(r"[^\W\d_]{3}", text) or len(text.split()) > 6:
        return None
    import dateparser  # here, because loading it takes longer than most commands

    settings = {
        "RELATIVE_BASE": local,
        "PREFER_DATES_FROM": "future",
        "RETURN_AS_TIMEZONE_AWARE": False,
        "REQUIRE_PARTS": ["day"],
        "NORMALIZE": True,
    }
    try:
        got = dateparser.parse(text, languages=list(_FOREIGN), settings=settings)  # type: ignore[arg-type]
    except Exception:  # its own parsers raise several kinds on odd text; no date then
        return None
    if got is None or got.tzinfo is not None:
        return None
    return got.replace(second=0, microsecond=0) if re.search(r"[0-9]{1,2}[:h.][0-9]{2}|[0-9] ?uhr", text) else got.date()


_FOREIGN = ("es", "fr", "de", "it", "pt", "nl", "sv", "da", "pl")


_DURATION = re.compile(
    r"(?P<n>[0-9]{1,4}(?:[.,][0-9])?|half an?|an?|quarter of an|three quarters of an|[a-z]+(?:-[a-z]+)?|½|1½)"
    r"[ -]?(?:and a half )?(?P<unit>hours?|hrs?|h|minutes?|mins?|min|m|days?|weeks?)\b(?P<more> and a half)?"
    r"(?: ?(?:and )?(?P<n2>[0-9]{1,2}) ?(?:minutes?|mins?|m)?\b)?",
    re.IGNORECASE,
)


def parse_duration(text: str) -> timedelta | None:
    """How long the first length of time in the text is: "20 minutes", "half an hour", "1h30"; None without one."""
    for match in _DURATION.finditer(text[:LONGEST]):
        word = match["n"].lower()
        if word.startswith("half"):
            n = 0.5
        elif "quarter" in word:
            n = 0.75 if word.startswith("three") else 0.25
        elif word in ("a", "an"):
            n = 1.0
        elif word[0].isdigit() and word[-1].isdigit():
            n = float(word.replace(",", "."))
        elif word in ("½", "1½"):
            n = 0.5 if word == "½" else 1.5
        elif (read := read_number([word])) is not None:
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


