"""Whether a message is plainly in a language nobody here reads, by the small words each language is full of."""

from __future__ import annotations

import re
import unicodedata
from functools import cache

from planning.tables import rows

_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)?")
MOST_WORDS = 60
_LATIN = ("LATIN", "MODIFIER", "FEMININE", "MASCULINE")
OTHER_LETTERS = 0.6
"""From this part of other letters on a message is in another script (common practice, no source)."""


@cache
def _small_words() -> dict[str, frozenset[str]]:
    """Word -> the languages that use it."""
    found: dict[str, set[str]] = {}
    for row in rows("words_languages"):
        for word in row["words"].split():
            found.setdefault(word, set()).add(row["language"])
    return {word: frozenset(languages) for word, languages in found.items()}


def other_language(text: str, own: str) -> str | None:
    """The other language's code, "other" for another script, or None when it may well be in the language `own`."""
    words = [w.casefold().replace("’", "'") for w in _WORD.findall(text[:600])][:MOST_WORDS]
    if not words:
        return None
    letters = [c for c in text[:600] if c.isalpha()]
    strange = sum(not unicodedata.name(c, "LATIN").startswith(_LATIN) for c in letters)
    if len(letters) >= 2 and strange >= OTHER_LETTERS * len(letters):
        return "other"
    small = _small_words()
    score: dict[str, int] = {}
    seen: dict[str, set[str]] = {}
    for word in words:
        for language in small.get(word, ()):
            score[language] = score.get(language, 0) + 1
            seen.setdefault(language, set()).add(word)
    mine = score.pop(own, 0)
    if not score:
        return None
    best = max(score, key=lambda k: (score[k], k))
    # A letter by itself is short for many things ("1 y/o"): it shows no language.
    only = sum(own not in small[w] for w in seen[best] if len(w) > 1)
    if score[best] <= mine or not only:
        return None
    if len(words) <= 2:
        return best if score[best] == len(words) == only else None
    return best if len(seen[best]) >= 2 and score[best] >= 0.3 * len(words) and only >= 2 else None
