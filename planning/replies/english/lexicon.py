"""English words and what they are to us, from `data/words_en.csv`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

from planning.amounts import number_words, read_number
from planning.replies.text import Token
from planning.tables import rows


@cache
def words(role: str) -> dict[str, str]:
    """Words of a role -> their value ("" when the role is all there is to say)."""
    return {row["word"]: row["value"] for row in rows("words_en") if row["role"] == role}


@cache
def neutral() -> frozenset[str]:
    return frozenset(words("neutral"))


@cache
def longest(role: str) -> int:
    """How many words the longest phrase of a role has."""
    return max((len(w.split()) for w in words(role)), default=0)


def any_of(role: str) -> str:
    """A pattern for any phrase of a role, longest first."""
    return "|".join(sorted((re.escape(w) for w in words(role)), key=len, reverse=True))


def singulars(word: str) -> tuple[str, ...]:
    """The word and what it may be the plural of."""
    found = [word]
    if word.endswith("ies") and len(word) > 4:
        found.append(word[:-3] + "y")
    if word.endswith(("ches", "shes", "xes", "sses", "oes")):
        found.append(word[:-2])
    if word.endswith("s") and not word.endswith("ss"):
        found.append(word[:-1])
    return tuple(found)


def whole_number(tokens: Sequence[Token], i: int) -> tuple[int, int] | None:
    """A count of 0 to 9,999 at token `i`, in digits or words, and the position after it."""
    if i >= len(tokens):
        return None
    plain = tokens[i].plain
    if plain.isascii() and plain.isdecimal():
        return (int(plain), i + 1) if len(plain) <= 4 else None
    if plain not in number_words() and plain not in ("a", "an") and "-" not in plain:
        return None
    read = read_number([t.plain for t in tokens[i : i + 6]])
    if read is None or read[0].denominator != 1:
        return None
    return int(read[0]), i + read[1]


NUMBER = (
    r"(?:[0-9]{1,4}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|"
    r"sixteen|seventeen|eighteen|nineteen|"
    r"(?:twenty|thirty|forty|fifty)(?:[- ](?:one|two|three|four|five|six|seven|eight|nine)\b)?)"
)


def number_of(word: str) -> int:
    """The value of a word matched by NUMBER, or of "half a dozen" and its like."""
    if word.isdecimal():
        return int(word)
    read = read_number(word.split())
    return int(read[0]) if read else 0
