"""Spanish words and what they are to us, from `data/words_es.csv`; accents and upper case are gone before."""

from __future__ import annotations

import re
from functools import cache

from planning.tables import rows

PLAIN = str.maketrans("áéíóúüàèìòùÁÉÍÓÚÜ", "aeiouuaeiouAEIOUU")
"""One letter for one letter, so that places in the text stay; the ñ is a letter of its own and stays."""


@cache
def words(role: str) -> dict[str, str]:
    """Words of a role -> their value."""
    return {row["word"].translate(PLAIN): row["value"] for row in rows("words_es") if row["role"] == role}


@cache
def expand() -> dict[str, str]:
    return words("expand")


@cache
def neutral() -> frozenset[str]:
    return frozenset(words("neutral"))


@cache
def any_of(role: str) -> str:
    """A pattern for any word or phrase of a role, longest first; an ñ may be typed as n."""
    known = sorted(words(role), key=len, reverse=True)
    return "|".join(re.escape(w).replace("ñ", "[ñn]").replace("\\ ", " ") for w in known)


@cache
def _with_n(role: str) -> dict[str, str]:
    return {w.replace("ñ", "n"): w for w in words(role)}


def value_of(role: str, word: str) -> str:
    """The value of a word that `any_of` matched."""
    known = words(role)
    return known[word] if word in known else known[_with_n(role)[word.replace("ñ", "n")]]
