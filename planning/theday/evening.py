"""What guests write on the day that no command covers: here, forgotten, run out, taken home, not done.

The sentences stand in `data/words_evening.csv` as patterns over one sentence; a row's `macro-` kinds are pieces of the
others. A sentence must be one of them from its first word to its last: half of one is talk.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from planning.dishes import lookup
from planning.tables import rows, table_names
from planning.word_patterns import restored, said_in

KINDS = ("here", "forgot", "ran-out", "own-back", "take-home", "may-i", "rest", "left", "away", "hard")
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
        for kind, pattern in _patterns(language):
            match = pattern.fullmatch(plain)
            if match is None:
                continue
            thing = (match.groupdict().get("thing") or "").strip()
            rest = " ".join(s.strip() for k, s in enumerate(sentences) if k != n and _SIGNS.sub("", s).strip(" .!?"))
            said = match.groupdict()
            return Said(
                kind, thing, rest, int(said["min"]) if said.get("min") else None, (said.get("at") or "").strip()
            )
    return None


def of_a_table(thing: str, language: str = "en") -> bool:
    """Whether the words name something to eat, drink or eat from ("out of time" does not)."""
    if language != "en" and thing.casefold() in _names(language):
        return True
    return lookup(thing).confidence >= KNOWN and lookup(thing).category is not None


@cache
def _names(language: str) -> frozenset[str]:
    tables = [(f"dishes_{language}", "name"), (f"ingredients_{language}", "name"), (f"goods_{language}", "said")]
    return frozenset(row[cell] for name, cell in tables if name in table_names() for row in rows(name))


@cache
def _patterns(language: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    return tuple((row["kind"], said) for row, said in said_in("words_evening", language))
