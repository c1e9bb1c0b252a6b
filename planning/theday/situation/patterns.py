"""The table of words as patterns, by language and kind."""

from __future__ import annotations

import re
from functools import cache

from planning.word_patterns import said_in

TABLE = "words_situation"
LANGUAGES = ("en", "es")


@cache
def _all(language: str) -> dict[str, tuple[re.Pattern[str], ...]]:
    out: dict[str, list[re.Pattern[str]]] = {}
    for row, pattern in said_in(TABLE, language):
        if row["kind"] not in ("food", "no-food"):
            out.setdefault(row["kind"], []).append(pattern)
    return {kind: tuple(some) for kind, some in out.items()}


def patterns(language: str, kind: str) -> tuple[re.Pattern[str], ...]:
    return _all(language).get(kind, ())


def found(text: str, language: str, *kinds: str) -> re.Match[str] | None:
    """The first match of the first of these kinds that has one."""
    return next((m for kind in kinds for p in patterns(language, kind) if (m := p.search(text)) is not None), None)


def all_found(text: str, language: str, kind: str) -> list[re.Match[str]]:
    return [m for p in patterns(language, kind) for m in p.finditer(text)]
