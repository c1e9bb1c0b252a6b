"""The phrases of a language that has a table and no rules of its own: `data/sentences_<code>.csv`.

A row says what a phrase is to us (`role`), and where one role has several meanings, which (`means`). "#" in a phrase
stands for a number. What is compared is plain: lower case, without accents, cut into words as a message is.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping
from functools import cache

from planning.replies.text import Message, cut
from planning.tables import in_languages, rows

TABLE = "sentences"
NUMBER = r"([0-9]{1,4})"
ROLES = frozenset(
    (
        "expand", "neutral", "yes", "no", "maybe", "party", "more", "group", "kin", "with", "age", "and", "article",
        "bring", "drop", "not", "for", "for-all", "vague", "unit", "stop", "none", "allergic", "severe", "allergen",
        "need", "member", "joke", "past", "wish", "reported", "others", "ask", "asking", "late", "undo",
    )
)  # fmt: skip
"""What a phrase may be: `planning/replies/worded/read.py` and its neighbours say what becomes of each."""


def languages() -> tuple[str, ...]:
    """The codes of the languages with a table of phrases."""
    return in_languages(TABLE)


def folded(text: str) -> str:
    """`text` without accents, letter for letter, so that places in it stay."""
    return "".join(unicodedata.normalize("NFD", c)[0] if c.isalpha() else c for c in text)


class Words:
    """One language's phrases by role."""

    def __init__(self, language: str, told: Iterable[Mapping[str, str]]) -> None:
        self.language = language
        told = tuple(told)
        self._expand = {folded(r["said"].casefold()): r["means"] for r in told if r["role"] == "expand"}
        self._neutral = frozenset(self._plain(r["said"]) for r in told if r["role"] == "neutral")
        self._means: dict[str, dict[str, str]] = {}
        for row in told:
            self._means.setdefault(row["role"], {})[self._plain(row["said"])] = row["means"]
        self._patterns: dict[str, re.Pattern[str] | None] = {}

    def _plain(self, phrase: str) -> str:
        made = cut(folded(phrase.replace("#", "987")), self._expand, frozenset())
        return " ".join(s.text.strip() for s in made.sentences).replace("987", "#")

    def message_of(self, text: str) -> Message:
        """The message in plain words, each knowing the letters it was typed with."""
        made = cut(folded(text), self._expand, self._neutral)
        for sentence in made.sentences:
            for i, token in enumerate(sentence.tokens):
                sentence.tokens[i] = type(token)(token.plain, text[token.start : token.end], token.start, token.end)
        return made

    def any_of(self, role: str) -> str:
        """A pattern for any phrase of a role, longest first; one that matches nothing if there is none."""
        said = sorted(self._means.get(role, ()), key=lambda p: (-len(p), p))
        return "|".join(re.escape(p).replace(r"\#", NUMBER).replace(r"\ ", " ") for p in said) or r"(?!)"

    def find(self, role: str, text: str) -> re.Match[str] | None:
        """The first phrase of a role in a sentence's plain text (which begins and ends with a space)."""
        if role not in self._patterns:
            self._patterns[role] = re.compile(rf"(?<= )(?:{self.any_of(role)})(?= )")
        pattern = self._patterns[role]
        return pattern.search(text) if pattern is not None else None

    def means(self, role: str, said: str) -> str:
        """What a phrase found by `find` stands for ("" if its role has one meaning only)."""
        return self._means[role].get(re.sub(r"[0-9]+", "#", said) if "#" not in said else said, "")

    def number_in(self, found: re.Match[str]) -> int | None:
        """The number that a phrase of the table held."""
        return next((int(g) for g in found.groups() if g is not None), None)


@cache
def words_of(language: str) -> Words:
    """The phrases of a language. Raises FileNotFoundError when it has none."""
    return Words(language, rows(f"{TABLE}_{language}"))
