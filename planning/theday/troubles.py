"""What a host's words say went wrong: which kind, and the number in it. Words stand in `data/words_trouble.csv`."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from planning.tables import rows, table_names
from planning.word_patterns import restored

KINDS = (
    "dry", "power-back", "oven-back", "cooker-cold", "cooker-off", "cooker-sat", "fridge-out", "breaker", "power-out",
    "slow-cooker-out", "gas-out", "burner-out", "oven-out", "oven-found", "burnt", "no-show", "not-here", "more-people",
    "fewer-people", "rain", "back-on",
)  # fmt: skip
"""In the order they are tried: "the power is back" is not a power cut, and a slow cooker is no oven."""

_OTHER = re.compile(r"\b(?:slow[ -]?|rice |pressure |multi-?)cookers?\b|\bcamp(?:ing)? stoves?\b|\bolla\b")
"""Words that hold the name of an oven and mean something else."""

LONGEST = 300
MOST_NUMBER = 999


@dataclass(frozen=True)
class Trouble:
    """`about` are the words that are left: a dish, a person, which oven. `number` is the first number said."""

    kind: str
    about: str
    number: int | None = None


def read_trouble(words: str, language: str = "en", *, told: bool = False) -> Trouble | None:
    """The trouble these words tell of, or None. Pure; any text up to 4,096 characters.

    `told`: it was said to be trouble (a command), so that doubtful words ("it may rain") are not taken for chatter.
    """
    whole = _plain(words)
    if not whole or len(whole) > LONGEST:
        return None
    parts = [p.strip() for p in _ENDS.split(whole) if p.strip()]
    # What stands in one sentence and what happened may stand in the next; a question is about neither.
    for text in dict.fromkeys((whole, *parts)) if "?" not in whole or told else parts:
        found = None if text.endswith("?") and not told else _in(text, language, told)
        if found is not None:
            return found
    return None


_ABOUT = re.compile(r"\b(?:maybe|might be|could be|quiz[aá]s?|tal vez) (?=\d|an?\b|half|un[ao]?s?\b|media)")
"""Doubt about a number is none about what happened."""
_ENDS = re.compile(r"(?<=[.!?;])\s+|\n")


def _in(text: str, language: str, told: bool) -> Trouble | None:
    said = _ABOUT.sub(" ", text)
    doubt = not told and any(h is not None and h.search(said) for _, h in _patterns(language).get("unless", ()))
    for kind in KINDS:
        for thing, happened in _patterns(language).get(kind, ()):
            meant = _OTHER.sub(" ", text) if kind == "oven-out" else text
            if not all(p.search(meant) for p in (thing, happened) if p is not None):
                continue
            if doubt and kind != "dry":
                return None
            about = text
            for p in (thing, happened):
                about = p.sub(" ", about) if p is not None else about
            number = _number(text, language)
            if kind in ("more-people", "fewer-people") and number is None:
                continue
            return Trouble(kind, " ".join(about.split()).strip(" .,!"), number)
    return None


def _plain(words: str) -> str:
    return " ".join(restored(words).casefold().split())


def _number(text: str, language: str) -> int | None:
    digits = re.search(r"(?<![\d.,])\d{1,3}(?![\d.,:])", text)
    if digits is not None:
        return min(int(digits.group()), MOST_NUMBER)
    if language == "en" and re.search(r"\b(?:a )?dozen\b", text):
        return 12
    named = _numbers(language)
    return next((named[w] for w in re.findall(r"[^\W\d]+", text) if w in named), None)


@cache
def _numbers(language: str) -> dict[str, int]:
    """Number words from two on: "one" and "a" say too little."""
    found: dict[str, int] = {}
    for row in rows("words_numbers"):
        if row.get("language", "en") == language and row["value"].isdecimal() and 2 <= int(row["value"]) <= 99:
            found[row["word"]] = int(row["value"])
    own = f"words_{language}"
    for row in rows(own) if language != "en" and own in table_names() else ():
        if row["role"] == "expand" and row["value"].isdecimal() and int(row["value"]) >= 2:
            found[row["word"]] = int(row["value"])
    return found


@cache
def _patterns(language: str) -> dict[str, tuple[tuple[re.Pattern[str] | None, re.Pattern[str] | None], ...]]:
    found: dict[str, list[tuple[re.Pattern[str] | None, re.Pattern[str] | None]]] = {}
    for row in rows("words_trouble"):
        if row["language"] == language:
            found.setdefault(row["kind"], []).append((_any_of(row["thing"]), _any_of(row["happened"])))
    return {kind: tuple(pairs) for kind, pairs in found.items()}


def _any_of(cell: str) -> re.Pattern[str] | None:
    words = sorted((w for w in cell.split("|") if w), key=len, reverse=True)
    if not words:
        return None
    return re.compile(r"(?<!\w)(?:" + "|".join(re.escape(w) for w in words) + r")(?!\w)")
