"""What people call a rule by when they ask who says so: "thawing", "miel", "power cut"."""

from __future__ import annotations

import re
from functools import cache

from planning import tables


@cache
def _topics() -> tuple[tuple[re.Pattern[str], tuple[str, ...]], ...]:
    return tuple((_pattern(row), _rules(row)) for row in tables.rows("words_topics"))


def _pattern(row: dict[str, str]) -> re.Pattern[str]:
    """Its words and its names, the longest first."""
    words = sorted({*row["words"].split("|"), row["name_en"], row["name_es"]}, key=len, reverse=True)
    return re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, words))})(?!\w)")


def _rules(row: dict[str, str]) -> tuple[str, ...]:
    return tuple(row["rules"].split("|"))


def rules_about(words: str) -> tuple[str, ...]:
    """The ids of the rules these words ask about: of the topic named in the most words, each once; () for none.

    >>> rules_about("why is honey not for the baby")
    ('SPEC-09',)
    """
    text = " ".join(words.casefold().split())
    named = [(max(len(m) for m in found), rules) for of, rules in _topics() if (found := of.findall(text))]
    longest = max((size for size, _ in named), default=0)
    return tuple(dict.fromkeys(r for size, rules in named if size == longest for r in rules))


def names(language: str) -> tuple[str, ...]:
    """The topics by name, in the table's order; in English where the language has none."""
    rows = tables.rows("words_topics")
    return tuple(row.get(f"name_{language}") or row["name_en"] for row in rows)
