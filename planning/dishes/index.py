"""The index of all names of dishes, built once when the first name is looked up."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from planning import tables
from planning.dishes import names
from planning.dishes.catalogue import Dish, catalogue


@dataclass(frozen=True)
class Index:
    """`exact`: names as plain words to dishes; `joined` the same without spaces; `sorted_words` in any order;
    `by_word`: what ends in a word, longest first; `heads`: (usual, sweet, meat, vegetable) category of head nouns."""

    exact: dict[str, Dish]
    joined: dict[str, str]
    sorted_words: dict[tuple[str, ...], str]
    by_word: dict[str, tuple[tuple[frozenset[str], str], ...]]
    vocabulary: frozenset[str]
    heads: dict[str, tuple[str, str, str, str]]
    keys: tuple[str, ...]


def _key(text: str) -> tuple[str, ...]:
    return tuple(names.plain(word) for word in names.said_words(text) if word != ",")


@cache
def index_of_names() -> Index:
    exact: dict[str, Dish] = {}
    own: set[str] = set()
    for aliases in (False, True):
        for dish in catalogue():
            for said in dish.aliases if aliases else (dish.name,):
                key = " ".join(_key(said))
                exact.setdefault(key, dish)
                if not aliases:
                    own.add(key)
    heads = {
        " ".join(_key(row["word"])): (row["category"], row["if_sweet"], row["if_meat"], row["if_vegetable"])
        for row in tables.rows("dishes_heads")
    }
    by_word: dict[str, list[tuple[frozenset[str], str]]] = {}
    sorted_words: dict[tuple[str, ...], str] = {}
    vocabulary: set[str] = set(names.kinds()) | {word for head in heads for word in head.split()}
    for key in exact:
        words = key.split()
        vocabulary.update(words)
        if len(words) > 1:
            sorted_words.setdefault(tuple(sorted(words)), key)
        if len(words) > 1 or key in own:
            by_word.setdefault(words[-1], []).append((frozenset(words), key))
    for entries in by_word.values():
        entries.sort(key=lambda entry: (-len(entry[0]), entry[1] not in own, entry[1]))
    keys, joined = tuple(exact), _joined(exact)
    # Names in other languages are looked up whole; their words take no part in guesses about English ones.
    for language in tables.in_languages("dishes"):
        for name, dish in dishes_in(language).items():
            if name not in ENGLISH_WORDS:
                exact.setdefault(name, dish)
    return Index(
        exact=exact,
        joined=joined,
        sorted_words=sorted_words,
        by_word={word: tuple(entries) for word, entries in by_word.items()},
        vocabulary=frozenset(vocabulary),
        heads=heads,
        keys=keys,
    )


ENGLISH_WORDS = frozenset(
    (
        "pan", "te", "mate", "mesa", "mesas", "mole", "carbon", "pate", "nieve", "cocido", "pastel", "tinto", "asador",
        "carpa", "ron", "mani", "migas", "mermelada", "copa", "pinchos",
    )
)  # fmt: skip
"""Names in another language that are words of English, too: only who reads that language takes them for dishes."""


@cache
def dishes_in(language: str) -> dict[str, Dish]:
    """The names of dishes in another language, as plain words."""
    known = {dish.name: dish for dish in catalogue()}
    return {" ".join(_key(row["name"])): known[row["dish"]] for row in tables.rows(f"dishes_{language}")}


def dishes_known_as(text: str) -> tuple[Dish, ...]:
    """The dishes of exactly this name, in any language: by their own name, never by a name told beside it."""
    key = " ".join(_key(text))
    own = _own_names().get(key)
    abroad = (dishes_in(language).get(key) for language in tables.in_languages("dishes"))
    return tuple(dict.fromkeys(dish for dish in (own, *abroad) if dish is not None))


@cache
def _own_names() -> dict[str, Dish]:
    return {" ".join(_key(dish.name)): dish for dish in catalogue()}


def dish_in(language: str, text: str) -> Dish | None:
    """The dish of exactly this name in a language other than English, accents and plurals apart."""
    return dishes_in(language).get(" ".join(_key(text)))


def _joined(exact: dict[str, Dish]) -> dict[str, str]:
    """Names written as one word, "and" also as its n: "macncheese"."""
    found: dict[str, str] = {}
    for key in exact:
        found.setdefault(key.replace(" ", ""), key)
    for key in exact:
        if " and " in key:
            found.setdefault(key.replace(" and ", "n").replace(" ", ""), key)
    return found
