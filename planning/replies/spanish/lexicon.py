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
    found = {row["word"].translate(PLAIN): row["value"] for row in rows("words_es") if row["role"] == role}
    return _with_forms(found) if role == "kin" else found


def _with_forms(kin: dict[str, str]) -> dict[str, str]:
    """Relatives of either sex, one or more: "patojo" gives "patoja", "patojos", "patojas"; not what is a dish, too."""
    dishes = {w for row in rows("dishes_es") for w in row["name"].translate(PLAIN).split()}
    made = dict(kin)
    for word, value in kin.items():
        if " " in word or value not in ("a", "t", "c") or len(word) < 4:
            continue
        stem = word[:-1]
        one = (word, stem + "a") if word.endswith("o") else (word,)
        many = [w + ("s" if w[-1] in "aeiou" else "es") for w in one]
        for form, worth in [*((w, value) for w in one), *((w, "A" if value == "a" else value) for w in many)]:
            if form not in dishes:
                made.setdefault(form, worth)
    return made


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
