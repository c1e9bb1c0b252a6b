"""What ingredients hold, from `data/ingredients.csv`: marks and the diets they break, each yes or perhaps.

A mark is an allergen ("milk"), a sort of meat ("pork", "poultry", "meat" where nobody says which), or another
thing a need asks about ("gelatin", "honey", "alcohol", "rennet"). In the table "milk" means it holds milk and
"milk?" that brands or recipes differ: to be treated as there until the cook says otherwise.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache, lru_cache

from planning import tables
from planning.dishes import names

CLAIM_WORDS = {
    "vegan": ("vegan",), "vegetarian": ("vegetarian",), "plantbased": ("vegan",), "meatless": ("vegetarian",),
    "halal": ("halal",), "kosher": ("kosher",), "gf": ("gluten-free",), "glutenfree": ("gluten-free",),
    "df": ("dairy-free",), "dairyfree": ("dairy-free",), "nutfree": ("nut-free",), "eggless": ("egg-free",),
    "virgin": ("alcohol-free",), "nonalcoholic": ("alcohol-free",), "mocktail": ("alcohol-free",),
}  # fmt: skip
FREE_WORDS = {
    "gluten": "gluten-free", "wheat": "wheat", "dairy": "dairy-free", "milk": "milk", "lactose": "dairy-free",
    "nut": "nut-free", "peanut": "peanut", "egg": "egg", "soy": "soy", "meat": "vegetarian", "alcohol": "alcohol-free",
    "sesame": "sesame", "fish": "fish", "shellfish": "shellfish", "pork": "pork-free",
}  # fmt: skip


_CLAIMING = frozenset(CLAIM_WORDS) | {"free", "non", "plant"}


@dataclass(frozen=True)
class Ingredient:
    """One row: `holds` and `may_hold` are marks, `breaks` and `may_break` diets."""

    name: str
    holds: frozenset[str]
    may_hold: frozenset[str]
    breaks: frozenset[str]
    may_break: frozenset[str]
    source: str


@dataclass(frozen=True)
class Found:
    """What the words of one ingredient or dish name matched. `claims` are needs the words promise to meet."""

    rows: tuple[Ingredient, ...]
    claims: frozenset[str]
    unmatched: tuple[str, ...]


def _marks(cell: str) -> tuple[frozenset[str], frozenset[str]]:
    parts = [part.strip() for part in cell.split(";") if part.strip()]
    sure = frozenset(part for part in parts if not part.endswith("?"))
    return sure, frozenset(part[:-1] for part in parts if part.endswith("?")) - sure


def key_of(text: str) -> tuple[str, ...]:
    return tuple(names.plain(word) for word in names.said_words(text) if word != ",")


Key = tuple[str, ...]
Words = frozenset[str]


@cache
def _index() -> tuple[dict[Key, Ingredient], dict[str, tuple[Words, ...]], dict[Words, Ingredient]]:
    exact: dict[tuple[str, ...], Ingredient] = {}
    for row in tables.rows("ingredients"):
        holds, may_hold = _marks(row["contains"])
        breaks, may_break = _marks(row["breaks"])
        item = Ingredient(row["name"], holds, may_hold, breaks, may_break, row["source"])
        for said in (row["name"], *row["aliases"].split(";")):
            if key := key_of(said):
                exact.setdefault(key, item)
    # Other languages' words mean the same rows: an allergen must be found in whatever words the cook lists it.
    for language in tables.in_languages("ingredients"):
        for row in tables.rows(f"ingredients_{language}"):
            exact.setdefault(key_of(row["name"]), exact[key_of(row["ingredient"])])
    by_set: dict[frozenset[str], Ingredient] = {}
    by_word: dict[str, list[frozenset[str]]] = {}
    for key, item in exact.items():
        words = frozenset(key)
        if words not in by_set:
            by_set[words] = item
            for word in words:
                by_word.setdefault(word, []).append(words)
    return exact, {word: tuple(sets) for word, sets in by_word.items()}, by_set


def ingredient_named(name: str) -> Ingredient | None:
    """The table's row of exactly this name or alias, spelling and plural apart."""
    return _index()[0].get(key_of(name))


@lru_cache(maxsize=8192)
def find(text: str) -> Found:
    """What the words of a name hold, by the table: the largest known names among them, all of them.

    "crunchy peanut butter" is peanut butter, not peanut and butter; "garlic butter mushrooms" is three things.
    Words that say what it is free of become claims and are not searched.
    """
    exact, by_word, by_set = _index()
    key = key_of(text)
    whole = exact.get(key)
    if whole is not None:
        return Found((whole,), frozenset(), ())
    # "organic gluten free oats": what the table knows by its claim is taken before claims are read off.
    by_claim = [words for words in _largest(frozenset(key)) if not words.isdisjoint(_CLAIMING)]
    taken: Words = frozenset().union(*by_claim)
    words, claims = _claims([word for word in key if word not in taken])
    claims |= _claims(list(key))[1]
    unknown = tuple(word for word in words if word not in by_word and not _is_noise(word))
    # "penut butter" is the peanut the cook meant, but what was misspelt stays to be asked about.
    words = [names.corrected(word, _vocabulary()) or word if word in unknown else word for word in words]
    whole = exact.get(tuple(words))
    largest = [*by_claim, frozenset(words)] if whole is not None else [*by_claim, *_largest(frozenset(words))]
    rows = {whole if whole is not None and found == frozenset(words) else by_set[found] for found in largest}
    covered: Words = frozenset().union(*largest)
    unmatched = tuple(word for word in words if word not in covered and not _is_noise(word))
    return Found(tuple(sorted(rows, key=lambda row: row.name)), claims, tuple(dict.fromkeys((*unknown, *unmatched))))


@cache
def _vocabulary() -> frozenset[str]:
    return frozenset(word for word in _index()[1] if len(word) > 4)


def rows_without(text: str, left_out: Callable[[Ingredient], bool]) -> tuple[Ingredient, ...]:
    """The rows the words of a name mean where some rows do not count: without "tuna salad", the tuna is found."""
    _, _, by_set = _index()
    words, _ = _claims([names.corrected(w, _vocabulary()) or w if w not in _index()[1] else w for w in key_of(text)])
    return tuple(dict.fromkeys(by_set[found] for found in _largest(frozenset(words), left_out)))


def _largest(have: Words, left_out: Callable[[Ingredient], bool] | None = None) -> list[Words]:
    """The names in the table made of these words only, without those that are part of a larger one."""
    _, by_word, by_set = _index()
    sets = {found for word in have for found in by_word.get(word, ()) if found <= have}
    if left_out is not None:
        sets = {found for found in sets if not left_out(by_set[found])}
    return sorted((found for found in sets if not any(found < other for other in sets)), key=sorted)


def _claims(words: list[str]) -> tuple[list[str], frozenset[str]]:
    kept: list[str] = []
    claims: set[str] = set()
    skip = False
    for at, word in enumerate(words):
        if skip:
            skip = False
            continue
        following = words[at + 1] if at + 1 < len(words) else ""
        if word == "free" and kept and kept[-1] in FREE_WORDS:
            claims.add(FREE_WORDS[kept.pop()])
        elif word in ("no", "without", "non") and following in FREE_WORDS:
            claims.add(FREE_WORDS[following])
            skip = True
        elif word == "plant" and following == "based":
            claims.add("vegan")
            skip = True
        elif word in CLAIM_WORDS:
            claims.update(CLAIM_WORDS[word])
        else:
            kept.append(word)
    return kept, frozenset(claims)


def _is_noise(word: str) -> bool:
    """Words that say how much or how it was cut, and nothing about what it is."""
    return (
        word.isdecimal()
        or word in names.CUTS
        or word in names.JOINS
        or word == "of"
        or names.is_kind(word, "adj", "filler", "container", "kitchen")
    )
