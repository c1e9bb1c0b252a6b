"""Whom a message speaks to: "amigos, cuenten conmigo" calls them, "voy con dos amigos" brings them."""

from __future__ import annotations

# ruff: noqa: E501 - a list of words is easier to read on few lines
from collections.abc import Sequence
from functools import cache

from planning.replies.spanish.lexicon import neutral, words
from planning.replies.text import Token

_COUNTED = frozenset(
    ("mi", "mis", "su", "sus", "tu", "tus", "el", "la", "los", "las", "un", "una", "unos", "unas", "otro", "otra", "otros",
     "otras", "nuestro", "nuestra", "nuestros", "nuestras", "con", "de", "del", "a", "al", "para", "por", "somos", "son",
     "entre", "varios", "varias", "algunos", "algunas", "mas", "esos", "esas", "estos", "estas", "toda", "mucha", "muchos",
     "muchas", "menos", "mejor", "mejores", "buenos", "buenas", "poca", "tanta", "mas", "viejos", "y", "e", "o", "ni", "pocos", "pocas", "cuantos", "cuantas")
)  # fmt: skip
"""Behind these words persons are spoken of, not to."""
_ONE = frozenset(("mija", "mijo", "mijita", "mijito", "mijitos", "mijas", "mijos", "comadre", "compadre", "amor", "cielo", "tesoro", "rey", "reina", "corazon", "cariño", "guapo", "guapa"))
"""Nobody brings these along, but dishes are called so."""


@cache
def spoken_to() -> frozenset[str]:
    """What people are called that are also whom one comes with, or how many eat."""
    persons = {*words("kin"), *words("group"), *words("eaters"), "gente", "banda", "raza", "peña", *_ONE}
    return frozenset(w for w in neutral() if w in persons)


def without_vocatives(tokens: Sequence[Token]) -> list[Token]:
    """The words without those that only call somebody."""
    kept: list[Token] = []
    for token in tokens:
        before = kept[-1].plain if kept else ","
        if token.plain in spoken_to() and before not in _COUNTED and not _number(before):
            continue
        if token.plain == "," and not kept:
            continue
        kept.append(token)
    while kept and kept[-1].plain == ",":
        kept.pop()
    return kept


def _number(word: str) -> bool:
    return word.isdecimal() or (word in words("expand") and words("expand")[word].isdecimal())
