"""Danger told in plain words: somebody is hurt, or something got at the food that makes it food no more.

The words stand in `data/words_hazards.csv`, as patterns over folded text. A row that wants "food" counts only where the
message names a food, a dish of the list or what food stands on; "<kind>-not" takes a kind back. None of these is a
matter of how long: what stood out is `situation`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

from planning.potluck import Promise
from planning.safety.standing_ill import without_fallen_things
from planning.theday.situation.foods import folded, foods_in
from planning.word_patterns import said_in

TABLE = "words_hazards"
LANGUAGES = ("en", "es")
LONGEST = 45
"""A message of more words tells a story (common practice, no source)."""

PEOPLE = ("reaction", "choking", "fire", "gas-smell", "co", "poison", "heat", "scald", "wound", "ate-raw")
"""Somebody is in danger: looked for first, and in this order."""
THINGS = (
    "pot-frozen", "chemical", "container", "juices", "marinade", "spit", "glass", "pests", "animal", "floor", "flood",
    "water", "recall", "can", "mold",
)  # fmt: skip
"""Something is on or in the food, or there is nothing to wash with."""
_ENDS = re.compile(r"(?<=[.!?;])\s+|\n")


def hazard(
    words: str, promises: Iterable[Promise] = (), kinds: Iterable[str] = (*PEOPLE, *THINGS), *, language: str = "en"
) -> str | None:
    """Which of `kinds` a message tells of or asks about, None for none. Every language we have words of is looked at.

    >>> hazard("something went down the wrong way and she can't talk"), hazard("the cake was to die for")
    ('choking', None)
    """
    if len(words.split()) > LONGEST:
        return None
    promised = tuple(promises)
    whole, parts = _heard(without_fallen_things(words))
    codes = tuple(dict.fromkeys((language if language in LANGUAGES else "en", *LANGUAGES)))
    for kind in kinds:
        if any(_tells(words, whole, parts, code, kind, promised) for code in codes):
            return kind
    return None


def ailing(words: str) -> bool:
    """Whether somebody tells that they, or who lives with them, have, or just had, what food passes on (ILL-01)."""
    whole, parts = _heard(words)
    return len(words.split()) <= LONGEST and any(_tells(words, whole, parts, c, "ill", ()) for c in LANGUAGES)


def hears(words: str, kind: str) -> bool:
    """Whether a message tells of a kind that says something only of what else is known: "pot-cold" of who has a dish
    in a slow cooker."""
    whole, parts = _heard(words)
    return any(_tells(words, whole, parts, code, kind, ()) for code in LANGUAGES)


def denied(words: str, kind: str) -> bool:
    """Whether other words of a message take this kind back: "smells of gas... the mower"."""
    whole = folded(words)
    return any(_found(whole, _all(code).get(f"{kind}-not", ())) for code in LANGUAGES)


def _heard(words: str) -> tuple[str, tuple[str, ...]]:
    """A message folded, as a whole and sentence by sentence."""
    return folded(words), tuple(text for said in _ENDS.split(words) if (text := folded(said)))


def _tells(
    words: str, whole: str, parts: tuple[str, ...], code: str, kind: str, promised: tuple[Promise, ...]
) -> bool:
    known = _all(code)
    told = [(text, wants) for text in parts for wants, pattern in known.get(kind, ()) if pattern.search(text)]
    if not told or _found(whole, known.get(f"{kind}-not", ())):
        return False
    if _found(whole, known.get(f"{kind}-habit", ())) and not _found(whole, known["now"]):
        return False
    for text, wants in told:
        if _found(text, known["talk"]) or _found(text, known["if"]):
            continue
        if not wants or _names(whole, kind, wants, known, promised, words):
            return True
    return False


def _names(
    text: str,
    kind: str,
    wants: str,
    known: dict[str, tuple[tuple[str, re.Pattern[str]], ...]],
    promised: tuple[Promise, ...],
    said: str,
) -> bool:
    if _found(text, known.get(wants, ())) or _found(text, known.get(f"{kind}-{wants}", ())):
        return True
    return wants == "food" and bool(foods_in(text, promised, said=said))


def _found(text: str, rows: Iterable[tuple[str, re.Pattern[str]]]) -> bool:
    return any(pattern.search(text) is not None for _, pattern in rows)


@cache
def _all(code: str) -> dict[str, tuple[tuple[str, re.Pattern[str]], ...]]:
    out: dict[str, list[tuple[str, re.Pattern[str]]]] = {}
    for row, pattern in said_in(TABLE, code):
        out.setdefault(row["kind"], []).append((row["wants"], pattern))
    return {kind: tuple(some) for kind, some in out.items()}
