"""Words that must not wait: an emergency, somebody ill, food that stood out, is raw or is still frozen.

The words stand in `data/words_urgent.csv`: a sentence must hold one of `first` and, soon after it, one of `then`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from zoneinfo import ZoneInfo

from planning.potluck import Potluck, Promise
from planning.safety.clocks import DAY_MIN, clock, more_minutes
from planning.safety.standing import US_ZONES
from planning.safety.standing_ill import lives_with, without_fallen_things
from planning.tables import rows
from planning.when.durations import parse_duration
from planning.when.values import hour_of
from planning.word_patterns import restored

LONGEST = 400
APART = 60
"""How many letters may stand between the two halves of what is looked for."""

_ENDS = re.compile(r"(?<=[.!?;\n])\s+|\n|\s+(?:but|pero)\s+")
_CLOCK = re.compile(
    r"\W*(?:(?:about|around|like|at|this|las?|eso de|el)\s+)*"
    r"(?:(?P<noon>noon|midday|lunch|mediod[ií]a)|(?P<half>half (?:past )?)?(?P<h>\d{1,2}|[^\W\d]+)"
    r"(?:[:.h](?P<m>[0-5]\d))?(?P<y> y media)?\s*(?P<p>[ap]\.?\s?m\b)?)",
    re.IGNORECASE,
)


_NO_CONDITION = re.compile(r"\b(?:as|what|know|sure) if\b")
BEFORE = 40
"""How many letters before a sign of illness may say who has it."""


@dataclass(frozen=True)
class Stood:
    """What was said about how long something has been out: since a moment (UTC), or so many minutes, or nothing."""

    since: datetime | None = None
    minutes: float | None = None


def emergency(words: str, language: str, *, told: bool, names: Iterable[str] = ()) -> bool:
    """Whether somebody is in danger now. `told`: said to the bot, so that less plain words are enough.

    >>> emergency("his lips are swelling!", "en", told=False)
    True
    """
    for text in sentences(without_fallen_things(_without_names(words, names))):
        if says(_NO_CONDITION.sub(" ", text), language, "emergency-unless"):
            continue
        # "Es alérgica al maní, se le cierra la garganta" tells what happens, unless it tells of now.
        if says(text, language, "emergency-habit") and not says(words.casefold(), language, "emergency-now"):
            continue
        if says(text, language, "emergency"):
            return True
        if not told or not says(text, language, "emergency-told") or says(text, language, "emergency-told-unless"):
            continue
        if not lives_with(text, words, language):
            return True
    return False


def illness(words: str, language: str) -> bool:
    """Whether somebody says of themselves or their household that they are, or just were, ill (ILL-01).

    >>> illness("my daughter has been throwing up, should I still make it?", "en"), illness("sick of slaw", "en")
    (True, False)
    """
    for text in sentences(words):
        sign = says(text, language, "ill")
        if sign is None or says(text, language, "ill-unless"):
            continue
        before = text[max(0, sign.start() - BEFORE) : sign.start()]
        if says(before, language, "ill-not"):
            continue
        if says(text[max(0, sign.start() - BEFORE) : sign.end()], language, "ill-who"):
            return True
        # "Stomach bug, sorry": who leaves out the subject tells of themselves; a question asks of somebody else.
        alone = says(text, language, "ill-alone")
        if alone is not None and alone.start() <= 3 and not text.endswith("?"):
            return True
    return False


def says_more(words: str, language: str) -> bool:
    """Whether a message about illness also says who comes, or what else is left to be read."""
    return any(says(text, language, "ill-more") for text in sentences(words))


def asks_after_illness(words: str, language: str) -> bool:
    """ "I already made the soup, should I still bring it?", from somebody who just told of illness."""
    asks = "?" in words or any(says(text, language, "asks") for text in sentences(words))
    return asks and any(says(text, language, "ill-follows") for text in sentences(words))


def asks_if_still_good(words: str, language: str) -> bool:
    """ "Can we still eat the egg salad?"; "is it ok, it was in the car for three hours"."""
    for text in sentences(words):
        asked = says(text, language, "still")
        if asked and ("?" in words or asked.start() <= 3) and not says(text, language, "ill"):
            word = asked.group().split()[0]
            if word in ("still", "todavía", "aún", "sigue", "siguen") or re.search(r"\b(?:still|todavía|aún)\b", text):
                return True
            if says(text, language, "stood") or re.search(r"\b(?:gone (?:off|bad)|safe)\b", text):
                return True
            if any(says(t, language, "stood") for t in sentences(words)):
                return True
    return False


def stood(words: str, language: str, now: datetime, zone: ZoneInfo) -> Stood | None:
    """How long something has been out by these words; None when they say nothing of that.

    An hour without a half of the day is the latest one that has passed, within a day of `now`.
    """
    for text in sentences(words):
        if not says(text, language, "stood"):
            continue
        since = says(text, language, "since")
        if since is not None and (at := passed(text[since.end() :], now, zone)) is not None:
            return Stood(since=at)
        length = parse_duration(in_english(text)) if re.search(r"\d|hour|minute|hora|minuto", text) else None
        if length is not None and timedelta() < length <= timedelta(days=1):
            return Stood(minutes=length.total_seconds() / 60)
        return Stood()
    return None


def undone(words: str, language: str) -> str | None:
    """ "raw" or "frozen": what somebody says of food that ought to be cooked or thawed."""
    for text in sentences(words):
        for kind in ("frozen", "raw"):
            if says(text, language, kind) and not re.search(r"\b(?:if|si|eggs? is|like it)\b", text):
                return kind
    return None


def out_since(potluck: Potluck, promise_id: str, at: datetime) -> Potluck:
    """The potluck with a running clock set back to `at`, where that is earlier: the minutes before count too."""
    promise = potluck.promise(promise_id)
    if promise is None or promise.out_since is None or promise.out_since <= at:
        return potluck
    return more_minutes(potluck, promise_id, (promise.out_since - at).total_seconds() / 60)


def out_so_far(potluck: Potluck, promise: Promise, now: datetime) -> float | None:
    """Minutes out in all as far as anybody said; None where nobody ever did."""
    if promise.out_since is None and promise.out_min <= 0:
        return None
    ticking = clock(potluck, promise)
    return min(float(DAY_MIN), max(0.0, ticking.limit_min - ticking.left_min(now)))


def country(timezone: str) -> str:
    """Whose emergency number: "us" or "other"."""
    return "us" if timezone.startswith(US_ZONES) else "other"


def passed(text: str, now: datetime, zone: ZoneInfo) -> datetime | None:
    said = _CLOCK.match(text)
    if said is None:
        return None
    half = (said["p"] or "")[:1].lower()
    if said["noon"]:
        hour, minute, half = 12, 0, "p"
    else:
        hour = hour_of(in_english(said["h"]))
        if hour == 0 and said["h"] not in ("0", "00"):
            return None
        minute = 30 if said["half"] or said["y"] else int(said["m"] or 0)
    if not 0 <= hour <= 23 or (half and not 1 <= hour <= 12):
        return None
    local = now.astimezone(zone)
    hours = [hour] if hour > 12 or hour == 0 else [hour % 12, hour % 12 + 12]
    hours = [h for h in hours if not half or (h >= 12) == (half == "p")]
    found = [
        (local - timedelta(days=days)).replace(hour=h, minute=minute, second=0, microsecond=0)
        for h in hours
        for days in (0, 1)
    ]
    past = [at for at in found if at <= local]
    return max(past).astimezone(now.tzinfo) if past else None


def in_english(text: str) -> str:
    for spanish, english in (
        (r"\bhoras?\b", "hours"), (r"\bminutos?\b", "minutes"), (r"\bmedia hours\b", "half an hour"),
        (r"\buna\b", "one"), (r"\bdos\b", "two"), (r"\btres\b", "three"), (r"\bcuatro\b", "four"),
        (r"\bcinco\b", "five"), (r"\bhours y media\b", "hours and a half"),
    ):  # fmt: skip
        text = re.sub(spanish, english, text)
    return text


def sentences(words: str) -> Iterator[str]:
    plain = restored(words[:LONGEST]).casefold()
    return (" ".join(text.split()) for text in _ENDS.split(plain) if text.strip())


def _without_names(words: str, names: Iterable[str]) -> str:
    for name in names:
        first = name.split()[0] if name.split() else ""
        if len(first) > 1:
            words = re.sub(rf"(?<!\w){re.escape(first)}(?!\w)", "somebody", words, flags=re.IGNORECASE)
    return words


def says(text: str, language: str, kind: str) -> re.Match[str] | None:
    return next((m for p in _patterns(language).get(kind, ()) if (m := p.search(text)) is not None), None)


@cache
def languages() -> tuple[str, ...]:
    """The languages in which we know what is urgent, English first."""
    return tuple(sorted({row["language"] for row in rows("words_urgent")}, key=lambda code: (code != "en", code)))


@cache
def _patterns(language: str) -> dict[str, tuple[re.Pattern[str], ...]]:
    found: dict[str, list[re.Pattern[str]]] = {}
    for row in rows("words_urgent"):
        if row["language"] == language:
            then = rf"[^?]{{0,{APART}}}?{_any_of(row['then'])}" if row["then"] else ""
            found.setdefault(row["kind"], []).append(re.compile(_any_of(row["first"]) + then))
    return {kind: tuple(patterns) for kind, patterns in found.items()}


def _any_of(cell: str) -> str:
    words = sorted(cell.split("|"), key=len, reverse=True)
    return r"(?<!\w)(?:" + "|".join(re.escape(w) for w in words) + r")(?!\w)"
