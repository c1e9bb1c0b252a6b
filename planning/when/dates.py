"""The day: "Sat 18 Sep", "the 18th", "next Friday", "in two weeks", "18.9."."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date, datetime, timedelta
from functools import cache

from planning.potluck import Say
from planning.when.values import Scan, Unclear, any_word, day_facts, day_words, hour_of

RECENT_DAYS = 92
"""A date without a year that passed within so many days was meant as past; we ask."""


@cache
def patterns() -> dict[str, re.Pattern[str]]:
    month = f"(?P<month>{any_word('month')})\\b\\.?"
    nth = r"(?P<day>[0-9]{1,2})(?:st|nd|rd|th)?"
    ordinal = f"(?P<ordinal>{any_word('ordinal')})"
    year = r"(?:,? ?(?:(?P<year>(?:19|2[0-9])[0-9]{2})(?![0-9:])|[’'](?P<short>[0-9]{2})\b))?"
    weekday = f"(?P<weekday>{any_word('weekday')}|(?:{any_word('weekday-short')})\\b)"
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
        "last-weekday": rf"\b(?:on )?(?:the )?(?:last(?: week(?:'s)?(?: on)?)?|this past|past|previous) {weekday}(?:'s)?(?![a-z])",
        "nth-weekday": rf"\b(?:on )?(?:the )?(?P<nth>first|second|third|fourth|fifth|last|1st|2nd|3rd|4th|5th) {weekday}(?:'s)?(?![a-z])(?P<of>,? (?:of |in )?(?:(?P<when>(?:the|this|next) month)|{month}{year}))?",
        "ago": r"\b(?P<n>a|an|one|two|three|four|five|six|seven|[0-9]{1,3}) (?P<unit>days?|weeks?|months?|years?) ago\b",
        "past-day": r"\b(?P<word>(?:the )?day before yesterday|yesterday|last (?:night|week|weekend|month|year|summer|winter|autumn|fall|spring))\b",
        "weekday": rf"\b(?:on )?(?:(?P<which>this coming|this|next|coming|the coming) )?{weekday}(?:'s)?(?![a-z])",
        "in-days": r"\bin (?P<n>a|an|one|two|three|four|five|six|seven|eight|nine|ten|[0-9]{1,3}) (?P<unit>days?|weeks?|months?|fortnights?|hours?|hrs?|minutes?|mins?)(?:'s? time|' time)?\b",
        "from-now": r"\b(?P<n>a|one|two|three|four|[0-9]{1,3}) (?P<unit>days?|weeks?|months?) (?:from (?:now|today|(?P<tomorrow>tomorrow)))\b",
        "day": rf"\b(?P<word>{any_word('day')})\b",
        "holiday": rf"\b(?:on )?(?P<word>{any_word('holiday')})\b",
        "vague": r"\b(?P<word>(?:this|next|the) (?:weekend|week|month)|at the weekend|some ?time|some day|soon)\b",
    }
    return {name: re.compile(source, re.IGNORECASE) for name, source in sources.items()}


def valid(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def full_year(text: str | None, short: str | None = None) -> int | None:
    digits = text or short
    if not digits:
        return None
    return 2000 + int(digits) if len(digits) == 2 else int(digits)


def _on(month: int, day: int, year: int | None, today: date) -> date:
    """That day of that year, or of the year that makes it the next to come."""
    if not 1 <= month <= 12 or not 1 <= day <= 31 or valid(2028, month, day) is None:
        raise Unclear(Say("when-no-such-day", {"day": day, "month": month}))
    if year is None:
        found = valid(today.year, month, day)
        if found is not None and found >= today:
            return found
        if found is not None and (today - found).days <= RECENT_DAYS:
            return found  # told as past further on
        year = today.year if found is None and (month, day) > (today.month, today.day) else today.year + 1
    found = valid(year, month, day)
    if found is None:
        leap = next(y for y in range(year, year + 9) if valid(y, 2, 29))
        raise Unclear(
            Say("when-29-february", {"year": year, "year_text": str(year), "leap": leap, "leap_text": str(leap)})
        )
    return found


def take_date(text: Scan, now: datetime) -> tuple[date | datetime | None, int | None, list[Say], bool]:
    """(the day, or an instant for "in 2 hours"; the weekday named beside it; notes; only a weekday was named)."""
    shapes, today = patterns(), now.date()
    notes: list[Say] = []
    found: date | datetime | None = None
    weekday: int | None = None
    names = {**day_words("weekday"), **day_words("weekday-short")}

    def day_of(match: re.Match[str]) -> int:
        word = match.groupdict().get("ordinal")
        return int(day_words("ordinal")[word.lower()]) if word else int(match["day"])

    if (counted := _counted(text, today, names, alone=False)) is not None:
        return counted, None, notes, False
    for name in ("iso", "dotted", "day-month", "month-day", "slashed", "short", "holiday"):
        match = shapes[name].search(text.left)
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
            found = _holiday(day_words("holiday")[match["word"].lower()], today)
        else:
            word = got["month"].lower()
            month = int(word) if word.isdecimal() else int(day_words("month")[word])
            found = _on(month, day_of(match), full_year(got.get("year"), got.get("short")), today)
        text.take(match)
        break
    if found is None and (counted := _counted(text, today, names, alone=True)) is not None:
        return counted, None, notes, False
    for name in ("weekday-after", "weekday-week"):
        if found is None and (match := shapes[name].search(text.left)) is not None:
            n = (match.groupdict().get("n") or "a").lower()
            ahead = (int(names[match["weekday"].lower()]) - today.weekday()) % 7
            text.take(match)
            return today + timedelta(days=ahead, weeks=1 if n == "a" else hour_of(n)), None, notes, False
    for match in shapes["weekday"].finditer(text.left):
        word = match["weekday"].lower()
        if word in day_words("weekday-short") and not _is_weekday_here(match, text.left):
            continue
        weekday = int(names[word])
        which = (match["which"] or "").lower()
        text.take(match)
        if found is None and (near := shapes["nth"].search(text.left)) is not None:
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
            return found, None, notes, not which
        return found, weekday, notes, False
    if found is not None:
        return found, None, notes, False
    for name in ("in-days", "from-now"):
        if (match := shapes[name].search(text.left)) is not None:
            text.take(match)
            return _ahead(match, now), None, notes, False
    if (gone := _gone(text, today)) is not None:
        return gone, None, notes, False
    if (match := shapes["day"].search(text.left)) is not None:
        text.take(match)
        word = match["word"].lower()
        return today + timedelta(days=int(day_words("day")[word])), None, notes, False
    if (match := shapes["nth"].search(text.left)) is not None:
        number = int(match["day2"] or 0) or day_of(match)
        text.take(match)
        return _nth(number, today), None, notes, False
    return None, None, notes, False


def _gone(text: Scan, today: date) -> date | None:
    """A day that has passed by its own words ("last night", "two days ago"); refused further on."""
    shapes = patterns()
    if (match := shapes["ago"].search(text.left)) is not None:
        text.take(match)
        n = 1 if match["n"].lower() in ("a", "an") else hour_of(match["n"])
        return today - timedelta(days=max(1, n * {"d": 1, "w": 7, "m": 30, "y": 365}[match["unit"][0].lower()]))
    if (match := shapes["past-day"].search(text.left)) is not None:
        text.take(match)
        word = match["word"].lower()
        return today - timedelta(days=2 if "before" in word else 1 if word.endswith(("day", "night")) else 7)
    return None


def _counted(text: Scan, today: date, names: Mapping[str, str], *, alone: bool) -> date | None:
    """ "The second Friday of October", next to come; `alone`: of this month or a later one, and "last Friday" is past."""
    if alone and (match := patterns()["last-weekday"].search(text.left)) is not None:
        text.take(match)
        return today - timedelta(days=(today.weekday() - int(names[match["weekday"].lower()])) % 7 or 7)
    match = patterns()["nth-weekday"].search(text.left)
    if match is None or bool(match["of"]) is alone:
        return None
    text.take(match)
    weekday, nth = int(names[match["weekday"].lower()]), match["nth"].lower()
    n = 0 if nth == "last" else int(nth[0]) if nth[0].isdecimal() else int(day_words("ordinal")[nth])
    year, month, step = today.year, today.month, 1
    if match["month"]:
        month, step = int(day_words("month")[match["month"].lower()]), 12
        said = full_year(match["year"], match["short"])
        if said is not None or n == 5:
            year, step = said or (year if month >= today.month else year + 1), 0
    elif (match["when"] or "").lower().startswith("next"):
        year, month, step = (year + 1, 1, 0) if month == 12 else (year, month + 1, 0)
    for _ in range(12):
        if (found := _nth_weekday(year, month, weekday, n)) is not None and (found >= today or not step):
            return found
        if not step:
            break
        year, month = (year + (month + step - 1) // 12, (month + step - 1) % 12 + 1)
    raise Unclear(Say("when-no-fifth"))


def _nth_weekday(year: int, month: int, weekday: int, n: int) -> date | None:
    """The n-th such day of the month; 0 is the last; None when there is no fifth."""
    days = [d for k in range(1, 32) if (d := valid(year, month, k)) and d.weekday() == weekday]
    return days[n - 1] if n <= len(days) else None


def _is_weekday_here(match: re.Match[str], text: str) -> bool:
    """A short weekday ("sat", "sun") stands beside something of a date, so that "sat in the sun" is none."""
    before, after = text[: match.start()].rstrip(" ,(").lower(), text[match.end() :]
    alone = not before or before.endswith(("on", "this", "next", "\x00", ",", "to", "potluck", "for"))
    return bool(
        match["which"] or re.match(r"\.?,? ?(?:\x00|[0-9]|the [0-9]|at [0-9]|@|noon|midday|(?:quarter|half|ten|twenty|five) )", after)
        or (not after.strip(" ,.!?") and (alone or re.search(r"(?:[0-9]|[ap]\.?m\.?)$", before)))
        or (alone and re.match(r"\.?(?:,| (?:at|evening|night|morning|afternoon|noon)\b)", after))
    )  # fmt: skip


def _nth(number: int, today: date) -> date:
    """The next such day of a month."""
    if not 1 <= number <= 31:
        raise Unclear(Say("when-no-such-day-number", {"day": number}))
    year, month = today.year, today.month
    for _ in range(3):
        day = valid(year, month, number)
        if day is not None and day >= today:
            return day
        year, month = (year + 1, 1) if month == 12 else (year, month + 1)
    raise Unclear(Say("when-no-such-day-number", {"day": number}))


def _ahead(match: re.Match[str], now: datetime) -> date | datetime:
    n = 1 if match["n"].lower() in ("a", "an") else hour_of(match["n"])
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
        return next(d for k in range(4) if (d := valid(year, month, day.day - k)) is not None)
    return day + timedelta(days=n * (14 if unit.startswith("fort") else 7 if unit.startswith("week") else 1))


def _holiday(value: str, today: date) -> date:
    """ "12-24", or "11-thu-4": the fourth Thursday of November (US: 5 U.S.C. 6103)."""
    month, day, *which = value.split("-")
    if not which:
        return _on(int(month), int(day), None, today)
    weekday = int(day_words("weekday-short")[day])
    for year in (today.year, today.year + 1):
        found = _nth_weekday(year, int(month), weekday, 0 if which[0] == "last" else int(which[0]))
        if found is not None and found >= today:
            break
    assert found is not None  # no holiday is a fifth weekday
    return found


def _slashed(match: re.Match[str], text: Scan, today: date) -> date:
    """ "18/9" or "9/18"; "5/6" only if a weekday beside it or the sameness of both decides."""
    a, b = int(match["a"]), int(match["b"])
    year = full_year(match.groupdict().get("year"))
    if a > 12 or a == b:
        return _on(b, a, year, today)
    if b > 12:
        return _on(a, b, year, today)
    day_first, month_first = _on(b, a, year, today), _on(a, b, year, today)
    beside = patterns()["weekday"].search(text.left)
    if beside is not None:
        names = {**day_words("weekday"), **day_words("weekday-short")}
        fitting = [d for d in (day_first, month_first) if d.weekday() == int(names[beside["weekday"].lower()])]
        if len(fitting) == 1:
            return fitting[0]
    facts = day_facts(month_first) | day_facts(day_first, "other_")
    raise Unclear(Say("when-day-or-month", {"written": match[0], **facts}))
