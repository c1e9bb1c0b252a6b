"""What guests write on the day that no command covers: here, forgotten, run out, taken home, not done.

The sentences stand in `data/words_evening.csv` as patterns over one sentence; a row's `macro-` kinds are pieces of the
others. A sentence must be one of them from its first word to its last: half of one is talk.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from functools import cache
from zoneinfo import ZoneInfo

from planning.diets.ingredients import find
from planning.dishes import lookup
from planning.tables import rows, table_names
from planning.word_patterns import restored, said_in

KINDS = ("here", "late", "eta", "forgot", "ran-out", "own-back", "take-home", "may-i", "rest", "left", "away", "hard")
CUT = ("forgot", "late", "eta", "ran-out")
"""Kinds that one clause tells in full; what stands beside it is the reason, or is read by itself."""
LONGEST, MOST_WORDS = 400, 22
KNOWN = 0.75
"""From this confidence of the catalogue on a word is the name of something for a table."""
_ENDS = re.compile(r"(?<=[.!?…\n])\s+|\n+|\s+(?=[\U0001f000-\U0001faff])")
_SIGNS = re.compile(r"[\U0001f000-\U0001faff\u2600-\u27bf\ufe0f\u200d]+|(?<!\w)[:;]-?[()DpP](?!\w)")


@dataclass(frozen=True)
class Said:
    """`thing` is what it is about as said ("" for none), `rest` the other sentences of the message, as typed;
    `minutes` and `at` what was said of how long or since when."""

    kind: str
    thing: str = ""
    rest: str = ""
    minutes: int | None = None
    at: str = ""


def read_evening(words: str, language: str = "en") -> Said | None:
    """What the first such sentence says, or None. Pure; any text, of which 400 characters are looked at.

    >>> read_evening("I forgot the dip at home, sorry!")
    Said(kind='forgot', thing='dip', rest='')
    """
    sentences = [s for s in _ENDS.split(words[:LONGEST]) if s.strip()]
    for n, sentence in enumerate(sentences):
        plain = " ".join(restored(_SIGNS.sub(" ", sentence)).casefold().split()).strip(" .!?…,")
        if not plain or len(plain.split()) > MOST_WORDS:
            continue
        pieces = [piece.strip() for piece in plain.split(",")]
        for kind, pattern in _patterns(language):
            match, beside = pattern.fullmatch(plain), ""
            if match is None and kind in CUT and len(pieces) > 1:
                match = next((m for piece in pieces if (m := pattern.fullmatch(piece)) is not None), None)
                beside = ", ".join(piece for piece in pieces if match is not None and piece != match.string)
            if match is None:
                continue
            thing = (match.groupdict().get("thing") or "").strip()
            rest = " ".join(s.strip() for k, s in enumerate(sentences) if k != n and _SIGNS.sub("", s).strip(" .!?"))
            rest = " ".join(p for p in (beside, rest) if p)
            said = match.groupdict()
            return Said(
                kind, thing, rest, int(said["min"]) if said.get("min") else None, (said.get("at") or "").strip()
            )
    return None


_HOUR = re.compile(r"(?P<h>\d{1,2})(?:[:.](?P<m>[0-5]\d))?\s*(?P<half>[ap])?|(?P<noon>noon)")


def next_hour(said: str, now: datetime, zone: ZoneInfo) -> datetime | None:
    """The next moment (UTC) within twelve hours at which a clock reads what was said; None for no hour.

    >>> next_hour("5.45", datetime(2027, 9, 18, 21, 0, tzinfo=UTC), ZoneInfo("America/Chicago"))
    datetime.datetime(2027, 9, 18, 22, 45, tzinfo=datetime.timezone.utc)
    """
    found = _HOUR.search(said)
    if found is None:
        return None
    hour, half = (12, "p") if found["noon"] else (int(found["h"]), found["half"])
    if hour > 23 or (half and not 1 <= hour <= 12):
        return None
    local = now.astimezone(zone)
    hours = [hour] if hour > 12 or hour == 0 else [hour % 12, hour % 12 + 12]
    hours = [h for h in hours if not half or (h >= 12) == (half == "p")]
    at = [local.replace(hour=h, minute=int(found["m"] or 0), second=0, microsecond=0) for h in hours]
    ahead = [(a if a > local else a + timedelta(days=1)).astimezone(UTC) for a in at]
    soon = [a for a in ahead if a - now <= timedelta(hours=12)]
    return min(soon, default=None)


KINDS_OF_GOODS = frozenset(
    ("drinks", "drink", "food", "groceries", "meat", "plates", "cups", "napkins", "charcoal", "snacks", "decorations")
)
"""What is bought for a table and no table of ours names."""


def of_a_table(thing: str, language: str = "en") -> bool:
    """Whether the words name something to eat, drink or eat from ("out of time" does not)."""
    if language != "en" and thing.casefold() in _names(language):
        return True
    if lookup(thing).confidence >= KNOWN and lookup(thing).category is not None:
        return True
    named = find(thing)
    return thing.casefold() in KINDS_OF_GOODS or (bool(named.rows) and not named.unmatched)


@cache
def _names(language: str) -> frozenset[str]:
    tables = [(f"dishes_{language}", "name"), (f"ingredients_{language}", "name"), (f"goods_{language}", "said")]
    return frozenset(row[cell] for name, cell in tables if name in table_names() for row in rows(name))


@cache
def _patterns(language: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    return tuple((row["kind"], said) for row, said in said_in("words_evening", language))
