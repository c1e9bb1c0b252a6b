"""Which row of a table a few words mean: "Ravi's creamy slaw" is coleslaw."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping

_WORD = re.compile(r"[a-z0-9]+")
_KEPT = {"hummus", "couscous", "asparagus", "swiss", "molasses", "bus", "gas", "hibiscus", "citrus", "grass"}
_SMALL = {"a", "an", "the", "of", "and", "with", "in", "for", "some", "on", "to"}


def words(text: str) -> tuple[str, ...]:
    """The words in lower case without accents, each in the singular; "a", "of", "with" left out.

    >>> words("Baked Potatoes & chillies")
    ('baked', 'potato', 'chilli')
    """
    plain = unicodedata.normalize("NFKD", text.lower().replace("'s", "").replace("’s", ""))
    plain = "".join(c for c in plain if not unicodedata.combining(c))
    return tuple(singular(w) for w in _WORD.findall(plain) if w not in _SMALL)


def singular(word: str) -> str:
    """The singular of an English food word, by its ending."""
    if len(word) < 4 or word in _KEPT or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies"):
        # "cookies" and "pies" keep their e; "berries" does not.
        return (
            word[:-1]
            if word[:-3] in {"cook", "brown", "p", "smooth", "quick", "lent", "cal", "hogg"}
            else (word[:-3] + "y" if word != "chillies" else "chilli")
        )
    if word.endswith(("oes", "ches", "shes", "xes", "sses")):
        return word[:-2]
    if word.endswith("ves"):
        return {"loaves": "loaf", "halves": "half", "leaves": "leaf", "knives": "knife"}.get(word, word[:-1])
    return word[:-1] if word.endswith("s") else word


def best(text: str, index: Mapping[tuple[str, ...], str]) -> str | None:
    """The entry of `index` (words -> name) which `text` means, or None.

    The same words win; then the entry with the most words standing side by side in the text; among equals the
    one nearest the end before a "with", because the noun that counts stands last in English ("potato salad").
    """
    asked = words(text)
    if not asked:
        return None
    if (same := index.get(asked)) is not None:
        return same
    joined = {"".join(key): name for key, name in index.items() if len(key) > 1}
    head = words(re.split(r"\b(?:with|in|on|for|from|without|no|w/)\b", text.lower())[0])
    for span in (head, asked):
        for length in range(min(len(span), 5), 0, -1):
            for start in range(len(span) - length, -1, -1):
                part = span[start : start + length]
                # "hotdogs" and "cup cakes": words written together or apart.
                found = index.get(part) or (index.get(("".join(part),)) if length > 1 else joined.get(part[0]))
                if found is not None:
                    return found
    return None
