"""What is asked or told beside the food itself: whether something is enough, how much of it, a storm, the clocks, whose
tray went home with whom. The sentences stand in `data/words_asked.csv` as patterns over one sentence or clause.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from functools import cache

from planning.tables import rows
from planning.word_patterns import restored, said_in

LONGEST, MOST_WORDS = 400, 24
_ENDS = re.compile(r"(?<=[.!?…])\s+|\n+")
_CLAUSES = re.compile(r"\s*[,;]\s*|\s+(?:-|–|—)\s+")
_SIGNS = re.compile(r"[\U0001f000-\U0001faff\u2600-\u27bf\ufe0f\u200d]+|(?<!\w)[:;]-?[()DpP](?!\w)")


@dataclass(frozen=True)
class Asked:
    """`said` are the pieces named in the pattern ("thing", "name"); `rest` what else the message says, as typed;
    `question` whether it was asked."""

    kind: str
    said: Mapping[str, str] = field(default_factory=dict)
    rest: str = ""
    question: bool = False

    def __getitem__(self, name: str) -> str:
        return self.said.get(name, "")


def read_asked(words: str, language: str = "en", kinds: Collection[str] = ()) -> Asked | None:
    """The first sentence or clause that is of one of these kinds (of any without). Pure; 400 characters are read.

    >>> read_asked("Is there enough rice for everybody?")["thing"]
    'rice'
    """
    sentences = [s for s in _ENDS.split(words[:LONGEST]) if s.strip()]
    for n, sentence in enumerate(sentences):
        plain = _plain(sentence)
        if not plain or len(plain.split()) > MOST_WORDS:
            continue
        beside = [s.strip() for k, s in enumerate(sentences) if k != n]
        asks = "?" in sentence
        for part, left in _parts(plain):
            for kind, pattern in _patterns(language):
                if kinds and kind not in kinds:
                    continue
                match = pattern.fullmatch(part)
                if match is not None:
                    said = {name: value.strip() for name, value in match.groupdict().items() if value}
                    return Asked(kind, said, " ".join(p for p in (left, *beside) if p), asks)
    return None


def _parts(plain: str) -> list[tuple[str, str]]:
    """The whole, then each clause of it with what stands beside."""
    clauses = [c for c in _CLAUSES.split(plain) if c]
    parts = [(plain, "")]
    if len(clauses) > 1:
        parts += [(c, ", ".join(o for k, o in enumerate(clauses) if k != n)) for n, c in enumerate(clauses)]
    return parts


def _plain(sentence: str) -> str:
    return " ".join(restored(_SIGNS.sub(" ", sentence)).casefold().split()).strip(" .!?…,¿¡")


@cache
def _patterns(language: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    return tuple((row["kind"], said) for row, said in said_in("words_asked", language))


def languages() -> tuple[str, ...]:
    return tuple(dict.fromkeys(row["language"] for row in rows("words_asked")))
