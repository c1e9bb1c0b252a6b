"""Short dates in languages we have no patterns for, by dateparser."""

from __future__ import annotations

import re
from datetime import date, datetime, timedelta
from functools import cache


def foreign_date(text: str, local: datetime) -> date | datetime | None:
    """A short date in another language, by dateparser; a time only if the text has figures for one."""
    text = text.strip(" ,.!?\x00")
    if not 4 <= len(text) <= 40 or not re.search(r"[^\W\d_]{3}", text) or len(text.split()) > 6:
        return None
    named = [_weekdays()[w] for w in text.casefold().split() if w in _weekdays()]
    if len(named) == 1 and not re.search(r"[0-9]", text):
        return local.date() + timedelta(days=(named[0] - local.weekday()) % 7)
    import dateparser  # here, because loading it takes longer than most commands

    settings = {
        "RELATIVE_BASE": local,
        "PREFER_DATES_FROM": "future",
        "RETURN_AS_TIMEZONE_AWARE": False,
        "REQUIRE_PARTS": ["day"],
        "NORMALIZE": True,
    }
    try:
        got = dateparser.parse(text, languages=list(_FOREIGN), settings=settings)
    except Exception:  # its own parsers raise several kinds on odd text; no date then
        return None
    if got is None or got.tzinfo is not None:
        return None
    found: datetime = got
    timed = re.search(r"[0-9]{1,2}[:h.][0-9]{2}|[0-9] ?uhr", text, re.IGNORECASE)
    return found.replace(second=0, microsecond=0) if timed else found.date()


_FOREIGN = ("es", "fr", "de", "it", "pt", "nl", "sv", "da", "pl")


@cache
def _weekdays() -> dict[str, int]:
    """Names of weekdays in the languages we pass on, from the Unicode locale data; Monday is 0."""
    from babel.dates import get_day_names

    return {
        name.casefold(): day for language in _FOREIGN for day, name in get_day_names("wide", locale=language).items()
    }
