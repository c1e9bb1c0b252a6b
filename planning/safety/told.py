"""What people say of food and of each other while they eat: it is on the table, it was never hot, somebody is hurt.

The words stand in `data/words_urgent.csv`, as those of `urgent.py` do. Nothing here decides what a dish is worth:
the clocks (`clocks.py`) and the rows of `data/safety.csv` do.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from planning.potluck import Potluck, Promise
from planning.safety.clocks import clock
from planning.safety.urgent import in_english, passed, says, sentences
from planning.safety.words import perishable
from planning.when.durations import parse_duration

HURT = ("fire", "gas-smell", "poison", "wound", "scald")
"""In the order they are looked for: what spreads comes first."""

LONGEST_TOLD = 25
"""A sentence of more words tells a story (common practice, no source)."""


MORNING_HOUR = 8
""" "All day" begins here (common practice, no source)."""


@dataclass(frozen=True)
class PutOut:
    """Food is on the table: since a moment (UTC) or since now (None); `everything` when the whole table is meant."""

    since: datetime | None
    everything: bool


def put_out_words(words: str, language: str, now: datetime, zone: ZoneInfo) -> PutOut | None:
    """ "The potato salad is on the table now", "eggs on the table since 11.45", "it's all out"; None for other words.

    Questions, plans and what is denied ("not out yet", "out of chicken") are none of it.
    """
    for text in sentences(words):
        if "?" in text or len(text.split()) > LONGEST_TOLD or says(text, language, "out-not"):
            continue
        lies = says(text, language, "out-now")
        since = says(text, language, "since")
        at = passed(text[since.end() :], now, zone) if since is not None else None
        length = parse_duration(in_english(text)) if re.search(r"\d|hour|minute|hora|minuto", text) else None
        lying = re.search(_LYING.get(language, r"(?!)"), text)
        if lies is None and not ((at is not None or length is not None) and lying):
            continue
        if at is None and (said := _at(text, language)) is not None:
            at = passed(said, now, zone)
        if at is None and length is not None and timedelta() < length <= timedelta(days=1):
            at = now - length
        everything = says(text, language, "all-food") is not None
        return PutOut(at, everything)
    return None


def said_since(words: str, language: str, now: datetime, zone: ZoneInfo) -> datetime | None:
    """The moment (UTC) named by "since 9 am", "for five hours", "all day" (from eight in the morning)."""
    for text in sentences(words):
        since = says(text, language, "since")
        if since is not None and (at := passed(text[since.end() :], now, zone)) is not None:
            return at
        length = parse_duration(in_english(text)) if re.search(r"\d|hour|minute|hora|minuto", text) else None
        if length is not None and timedelta() < length <= timedelta(days=1):
            return now - length
        if re.search(r"\b(?:all day|whole day|since (?:this )?morning|todo el d[ií]a|desde la mañana)\b", text):
            local = now.astimezone(zone)
            return min(now, local.replace(hour=MORNING_HOUR, minute=0, second=0, microsecond=0).astimezone(now.tzinfo))
        if re.search(r"\b(?:all night|overnight|since last night|toda la noche|desde anoche)\b", text):
            return now - timedelta(hours=12)
    return None


_LYING = {
    "en": r"\b(?:out|on the (?:table|buffet|counter)|outside|served)\b",
    "es": r"\b(?:fuera|afuera|(?:en|sobre) la mesa|servid[oa]s?)\b",
}
_CLOCK_SAID = {
    "en": r"\bat (?P<at>(?:about |around )?(?:noon|midday|half past \w+|\d{1,2}(?:[:.]\d\d)?\s*(?:[ap]\.?m\b)?))",
    "es": r"\ba (?P<at>las? \d{1,2}(?:[:.]\d\d)?|mediod[ií]a)",
}


def _at(text: str, language: str) -> str | None:
    found = re.search(_CLOCK_SAID.get(language, r"(?!)"), text)
    return found["at"] if found is not None else None


def asks_how_long(words: str, language: str) -> bool:
    """ "How long can the chicken stay out?"."""
    return any(
        says(text, language, "how-long") and not says(text, language, "how-long-not") for text in sentences(words)
    )


def asks_to_cook_on(words: str, language: str) -> bool:
    """ "Should we just cook it longer?", said of food that stood: an attempt to save it."""
    for text in sentences(words):
        if (
            ("?" in words or says(text, language, "asks"))
            and says(text, language, "recook")
            and says(text, language, "recook-late")
            and (says(text, language, "asks") or "?" in text)
        ):
            return True
    return False


def ill_from_food(words: str, language: str) -> bool:
    """Somebody is ill after eating, or several are: said once food has been served."""
    return any(
        "?" not in text and says(text, language, "sick-eater") and not says(text, language, "sick-not")
        for text in sentences(words)
    )


def hurt(words: str, language: str) -> str | None:
    """ "fire", "gas-smell", "poison", "wound" or "scald": somebody is hurt, or may be in a moment."""
    for text in sentences(words):
        for kind in HURT:
            if says(text, language, kind) and not (kind == "fire" and says(text, language, "fire-not")):
                if says(text, language, "emergency-unless") and "?" not in text:
                    continue
                return kind
    return None


_GRILLS_OUT = re.compile(
    r"\b(?:grills?|bbq|barbecue|smokers?|parrilla|asador|barbacoa)\b(?:(?! or | o )[^?]){0,25}"
    r"\b(?:outside|outdoors|afuera|fuera)\b"
)
"""What stands outside already: "grill and smoker outside, fridge inside"."""


def grills_inside(words: str, language: str) -> bool:
    """Whether a grill, or a fire, is thought of under a roof."""
    return any(
        (says(text, language, "grill-in") and not _GRILLS_OUT.search(text))
        or ("?" in text and says(text, language, "grill-asked"))
        for text in sentences(words)
    )


def over(potluck: Potluck, now: datetime) -> tuple[Promise, ...]:
    """The perishable dishes whose time out of temperature is spent, as far as anybody said."""
    return tuple(
        p for p in potluck.promises
        if perishable(p) and (p.out_since is not None or p.out_min > 0) and clock(potluck, p).left_min(now) <= 0
    )  # fmt: skip
