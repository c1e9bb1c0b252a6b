"""The time of day: "5pm", "half past five", "17.30", "noon", "from 5 to 9"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import time

from planning.potluck import Say
from planning.when.values import Scan, Unclear, hour_of


@dataclass(frozen=True)
class Clock:
    """A time of day as written: `half` is "am", "pm" or "" when nobody said."""

    hour: int
    minute: int
    half: str = ""
    sure: bool = False


_ONES = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_HALF = r"(?P<{0}>[ap])\.?m\b\.?"
_AFTER = r"(?=\s*(?:$|[,;.!?)\-–\x00]|(?:on|sharp|tomorrow|today|till|til|until|to|in the|tonight|for|and|o'?clock|ish|please|this|next|we|bring)\b))"
_CLOCK = r"(?P<h{0}>[0-9]{{1,2}})(?:(?:[:.]|h)(?P<m{0}>[0-5][0-9])(?![0-9]))?(?:ish)?(?: ?(?P<p{0}>[ap])\.?m\b\.?)?"
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
    "named": re.compile(rf"(?<!the )\b(?:(?:at|from|around|about) )?(?P<h>[0-9]{{1,2}}|{_ONES})(?:ish)? (?=(?:in the (?P<part>morning|afternoon|evening|night)|at night)\b)", re.IGNORECASE),
    "thirty": re.compile(rf"\b(?:at|from|around|about|@) ?(?P<h>{_ONES})[ -](?P<mw>fifteen|thirty|forty-?five)\b", re.IGNORECASE),
    "at": re.compile(rf"(?:\b(?:at|from|around|about) ?|@ ?)(?P<h>[0-9]{{1,2}}|{_ONES})(?:ish)?(?![0-9:./])" + _AFTER, re.IGNORECASE),
    "word": re.compile(r"\b(?:at )?(?P<word>noon|midday|midnight)\b", re.IGNORECASE),
}  # fmt: skip
_BARE = re.compile(rf"(?<=\x00)[ ,]*(?:at )?(?P<h>[0-9]{{1,2}}|{_ONES})(?:ish)?(?=\s*(?:$|[,;.!)]))", re.IGNORECASE)
_ALONE = re.compile(rf"^[ ,]*(?P<h>[0-9]{{1,2}}|{_ONES})(?:ish)?(?: or so|,? please)?[ ,.!]*$", re.IGNORECASE)
_DOTTED_AFTER = re.compile(r"(?<=\x00)[ ,]*(?P<h>[01]?[0-9]|2[0-3])\.(?P<m>[0-5][0-9])(?![0-9.])")
NO_TIME = re.compile(
    r"(?<![0-9:.])(?:2[4-9]|[3-9][0-9]):[0-9]{2}(?![0-9])|(?<![0-9:.])[0-9]{1,2}:[6-9][0-9](?![0-9])|\b(?:1[3-9]|[2-9][0-9]) ?am\b|\b0 ?pm\b|\b(?:2[4-9]|[3-9][0-9]) ?pm\b",
    re.IGNORECASE,
)
_UNTIL = re.compile(
    r"\b(?:till|til|until|ending(?: at)?|ends(?: at)?) " + _CLOCK.format(1) + r"(?![0-9])", re.IGNORECASE
)
_MORNING = re.compile(r"\b(?:(?:in the|this|tomorrow)? ?morning|breakfast|brunch)\b", re.IGNORECASE)
_EVENING = re.compile(r"\b(?:evening|tonight|night|afternoon|dinner|supper|lunch|lunchtime|tea|cena)\b", re.IGNORECASE)
PERIOD = re.compile(
    r"\b(?:in the|at|this) (?:morning|evening|afternoon|night)\b"
    r"|(?:(?<=\x00) ?|(?:^|(?<=[,;\x00])) *)\b(?:morning|evening|afternoon|night)\b(?= *(?:$|[,;.!\x00]|(?:at|from|around|about|@) ))"
    r"|(?<=\x00) \b(?:morning|evening|afternoon|night)\b",
    re.IGNORECASE,
)
"""A time of day stands beside the day or the hour, or by itself between commas; else it is part of a name."""


def _clock(hour: str, minute: str | None, half: str | None, *, exact: bool = False) -> Clock | None:
    h, m = hour_of(hour), int(minute or 0)
    if half:
        if not 1 <= h <= 12:
            return Clock(h, m, "", True) if 12 < h < 24 and half.lower() == "p" else None
        return Clock(h, m, half.lower() + "m", True)
    if h > 23 or (h == 0 and minute is None and not exact):
        return None
    return Clock(h, m, "", exact or h > 12 or h == 0 or (hour.isdecimal() and hour.startswith("0")))


def day_time(clock: Clock, text: str) -> tuple[time, bool]:
    """The time of day, and whether it belongs to the next day (midnight). Raises Unclear for 9, 10, 11."""
    hour = clock.hour
    if clock.half:
        return time(hour % 12 + (12 if clock.half == "pm" else 0), clock.minute), False
    if clock.sure:
        return time(hour, clock.minute), False
    if _MORNING.search(text):
        return time(hour % 12, clock.minute), False
    if hour in (9, 10, 11) and not _EVENING.search(text):
        written = f"{hour}.{clock.minute:02d}" if clock.minute else str(hour)  # "10:30" would be shown as am
        raise Unclear(Say("when-am-or-pm", {"written": written}))
    return time(12 if hour == 12 else hour + 12, clock.minute), False


def take_time(text: Scan, had_date: bool) -> tuple[Clock | None, Clock | None, bool]:
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
                    start = Clock(start.hour, start.minute, f"{two.lower()}m" if late else "am", True)
                text.take(match)
                return start, end, False
            start = end = None
    if (match := _UNTIL.search(text.left)) is not None and (end := _clock(match["h1"], match["m1"], match["p1"])):
        text.take(match)
    if (match := _TIMES["word"].search(text.left)) is not None:
        text.take(match)
        if match["word"].lower() == "midnight":
            return Clock(0, 0, "", True), end, True
        return Clock(12, 0, "pm", True), end, False
    readers: tuple[tuple[str, Callable[[re.Match[str]], Clock | None]], ...] = (
        ("half", lambda m: _clock(m["h"], m["m"], m["p"])),
        ("colon", lambda m: _clock(m["h"], m["m"], None, exact=bool(m["hour"]))),
        ("clock", lambda m: _clock(m["h"], None, None)),
        ("named", lambda m: _clock(m["h"], None, "a" if (m["part"] or "").lower() == "morning" else "p")),
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
    if had_date and (match := _DOTTED_AFTER.search(text.left)) and (start := _clock(match["h"], match["m"], None)):
        text.take(match)
        return start, end, False
    if not had_date and (match := _ALONE.match(text.left)) and (start := _clock(match["h"], None, None)):
        text.take(match)
        return start, end, False
    if had_date and (match := _BARE.search(text.left)) is not None and (start := _clock(match["h"], None, None)):
        text.take(match)
        return start, end, False
    return None, end, False


def _past(match: re.Match[str]) -> Clock | None:
    """ "half past five", "quarter to six", "half five" (half past)."""
    part, way, hour = match["part"].lower(), (match["way"] or "").lower(), hour_of(match["h"])
    if not 1 <= hour <= 12 or (not way and part != "half"):
        return None
    minutes = {"half": 30, "quarter": 15}.get(part) or hour_of(part)
    if not 0 < minutes < 60:
        return None
    if way in ("to", "before", "of", "til", "till"):
        hour, minutes = (hour - 2) % 12 + 1, 60 - minutes
    half = f"{match['p'].lower()}m" if match["p"] else ""
    return Clock(hour, minutes, half, bool(half))
