"""Which foods a sentence names, and where: promised dishes first, then what the tables know as food."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from planning import tables
from planning.dishes import catalogue, names
from planning.potluck import Promise

LONGEST = 600
"""Letters of a message that are looked at."""
MOST_WORDS = 5
"""So many words a food's name has at most."""
FOOD_KINDS = ("meat", "fish", "fruit", "veg", "bean", "egg", "starch", "dairy")
FOOD_TAGS = ("perishable", "stable", "poultry", "ground", "fish", "casserole", "stuffing", "egg", "rice")
PARTS = frozenset(("breast", "thigh", "leg", "drumstick", "bird", "ave", "pechuga", "muslo", "pierna"))
"""Of a bird: named alone they mean one."""
ALL = frozenset(("everything", "all the food", "the food", "all of it", "todo", "toda la comida", "la comida"))
_DOES = frozenset(("to", "can", "could", "we", "i", "ill", "should", "will", "just", "and", "please"))
""" "Can we roast it" names no roast."""
_WORD = re.compile(r"[a-z0-9]+")


@dataclass(frozen=True)
class Food:
    """`label` as promised or as said; `promise` its id or ""; `english` what the safety tables know it by.

    `start` and `end` are letters of the folded text. `part`: only a part of a bird was named.
    """

    label: str
    promise: str = ""
    english: str = ""
    start: int = 0
    end: int = 0
    part: bool = False


def as_said(words: str) -> str:
    """What is looked at of a message: no apostrophes, one blank between words; letter for letter as `folded` has it."""
    text = words[:LONGEST].replace("º", "°").replace("½", ".5")
    plain = "".join(c for c in unicodedata.normalize("NFC", text) if c not in "'’´`" and len(_fold(c)) == 1)
    return " ".join(plain.split())


def folded(words: str) -> str:
    """Lower case, no accents, no apostrophes, one blank between words, at most 600 letters."""
    return "".join(_fold(c) for c in as_said(words))


def _fold(letter: str) -> str:
    split = unicodedata.normalize("NFKD", letter) if letter.isalpha() else letter
    return "".join(c for c in split if not unicodedata.combining(c)).lower()


def foods_in(text: str, promises: Iterable[Promise], me: str = "", said: str = "") -> tuple[Food, ...]:
    """The foods a folded text names, from left to right; what belongs together ("rice salad") is one.

    `said`: the same text with its accents and capitals, for the labels.
    """
    promised = tuple(promises)
    found: list[Food] = []
    spoken = [(m.group(), m.start(), m.end()) for m in _WORD.finditer(text)]
    at = 0
    own = _own_words(promised)
    while at < len(spoken):
        length = _longest(spoken, at, text, own)
        if length == 0 or (spoken[at][0] == "roast" and at and spoken[at - 1][0] in _DOES):
            at += 1
            continue
        start, end = spoken[at][1], spoken[at + length - 1][2]
        if found and text[found[-1].end : start] in (" ", " de "):
            start = found.pop().start
        found.append(Food(_label(text, said, start, end), start=start, end=end))
        at += length
    return tuple(_resolved(f, promised, me) for f in found if f.label.casefold() not in _no_food())


def as_promise(food: Food, promises: Iterable[Promise]) -> Promise:
    """The dish of the list, or one of that name; in words the safety tables know."""
    known = next((p for p in promises if p.id == food.promise), None)
    if known is not None:
        return known
    english = (food.english,) if food.english and food.english != food.label else ()
    return Promise("", "", food.english if english else food.label, "main")


def _label(text: str, said: str, start: int, end: int) -> str:
    """As it was written; a slip of the pen mended."""
    mended = [(w, _spelt(w)) for w in _WORD.findall(text[start:end])]
    if any(names.plain(w) != one for w, one in mended):
        return " ".join(one if names.plain(w) != one else w for w, one in mended)
    return (said or text)[start:end]


def _longest(spoken: list[tuple[str, int, int]], at: int, text: str, own: frozenset[str]) -> int:
    """How many words from there on are a food's name, 0 for none; a comma or a stop ends it."""
    best = 0
    key: list[str] = []
    for n in range(min(MOST_WORDS, len(spoken) - at)):
        word, start, _ = spoken[at + n]
        if n and not re.fullmatch(r" (?:& )?|-|/| ?n ", text[spoken[at + n - 1][2] : start]):
            break
        key.append("and" if word == "n" else _spelt(word))
        one = " ".join(key)
        if one in _vocabulary() or one in own or (n == 0 and word in PARTS):
            best = n + 1
    return 0 if best == 1 and spoken[at][0] in _no_food() else best


@cache
def _english_names() -> frozenset[str]:
    found: set[str] = set()
    for dish in catalogue():
        if dish.category in ("supplies", "drink"):
            continue
        found.update(_key(name) for name in (dish.name, *dish.aliases))
    for row in tables.rows("dishes_heads"):
        if row["category"] not in ("drink", "supplies"):
            found.add(_key(row["word"]))
    for row in tables.rows("dishes_words"):
        if row["kind"] in FOOD_KINDS:
            found.add(_key(row["word"]))
    for row in tables.rows("safety_words"):
        if row["tag"] in FOOD_TAGS:
            found.add(_key(row["word"]))
    for row in tables.rows("words_situation"):
        if row["kind"] == "food" and row["language"] == "en":
            found.add(_key(row["said"]))
    return frozenset(found - {""} - _no_food())


@cache
def _vocabulary() -> frozenset[str]:
    """The names of foods, in every language that has them."""
    found = set(_english_names())
    for language in tables.in_languages("dishes"):
        found.update(_translations(language))
    return frozenset(found - {""} - _no_food())


@cache
def _translations(language: str) -> dict[str, str]:
    """Plain words of another language to the English of our tables."""
    supplies = {d.name for d in catalogue() if d.category in ("supplies", "drink")}
    found: dict[str, str] = {}
    for table, cell in (("ingredients", "ingredient"), ("dishes", "dish")):
        for row in tables.rows(f"{table}_{language}") if f"{table}_{language}" in tables.table_names() else ():
            if row[cell] not in supplies:
                found[_key(row["name"])] = row[cell]
    for row in tables.rows("words_situation"):
        if row["kind"] == "food" and row["language"] == language:
            found[_key(row["said"])] = row["means"]
    return found


def english(label: str) -> str:
    """What the safety tables know a food by: each of its words that another language has, put into English."""
    words = [names.plain(w) for w in _WORD.findall(folded(label))]
    for language in tables.in_languages("dishes"):
        known = _translations(language)
        said: list[str] = []
        at = 0
        hit = False
        while at < len(words):
            for length in range(min(MOST_WORDS, len(words) - at), 0, -1):
                one = " ".join(words[at : at + length])
                if one in known and one not in _english_words():
                    said.append(known[one])
                    hit = True
                    at += length
                    break
            else:
                said.append(words[at])
                at += 1
        if hit:
            return " ".join(said)
    return label


@cache
def _english_words() -> frozenset[str]:
    return frozenset(_key(row["word"]) for row in tables.rows("dishes_heads")) | frozenset(
        _key(row["word"]) for row in tables.rows("safety_words")
    )


@cache
def _no_food() -> frozenset[str]:
    return frozenset(
        word for row in tables.rows("words_situation") if row["kind"] == "no-food" for word in row["said"].split("|")
    )


@cache
def _spelling_words() -> frozenset[str]:
    return frozenset(w for name in _english_names() for w in name.split() if len(w) >= 5)


@cache
def _real_words() -> frozenset[str]:
    found = {row["word"] for row in tables.rows("words_en")}
    found |= {w for t in ("words_real_en", "words_core_en") for row in tables.rows(t) for w in row["words"].split()}
    state = (row["said"] for row in tables.rows("words_situation"))
    return frozenset(found) | frozenset(w for said in state for w in _WORD.findall(said))


@cache
def _common_words() -> frozenset[str]:
    """Words of talk, and what food is done to or looks like ("smoked", "chicken"): alone they name no one dish."""
    found = {w for t in ("words_real_en", "words_core_en") for row in tables.rows(t) for w in row["words"].split()}
    found |= {row["word"] for row in tables.rows("words_en") if row.get("role") not in ("dish", "food")}
    return frozenset(found)


@cache
def _spelt(word: str) -> str:
    """A word as the tables write it, a slip mended; what is a word of its own is let be."""
    one = names.plain(word)
    if (
        len(word) < 6
        or one in _spelling_words()
        or word in _real_words()
        or one in _real_words()
        or one in _vocabulary()
    ):
        return one
    return names.corrected(one, _spelling_words()) or one


def _key(text: str) -> str:
    return " ".join(names.plain(w) for w in _WORD.findall(folded(text)))


@cache
def _own_words(promised: tuple[Promise, ...]) -> frozenset[str]:
    """Names of dishes on the list, and words of them that no table has: "ajiaco", "grandma's surprise"."""
    found: set[str] = set()
    for promise in promised:
        if promise.category in ("supplies", "drink"):
            continue
        words = _key(promise.dish).split()
        found.add(" ".join(words))
        known = any(
            " ".join(words[a:b]) in _vocabulary() for a in range(len(words)) for b in range(a + 1, len(words) + 1)
        )
        # Of a dish the tables know only what stands before its head: "caesar" for the caesar salad.
        some = words[:-1] if known else words
        real = _common_words() if known else _real_words()
        some = [w for w in some if not (known and w.endswith(("ed", "ing")))]
        found.update(w for w in some if len(w) > (5 if known else 3) and w not in real and w not in _no_food())
    return frozenset(found)


_LITTLE = frozenset(("and", "n", "the", "with", "con", "y", "de"))


def _resolved(food: Food, promised: tuple[Promise, ...], me: str) -> Food:
    """The dish of the list that is meant: all words of one stand in the other; one's own goes first."""
    said = [_spelt(w) for w in _WORD.findall(folded(food.label)) if w not in _LITTLE]
    part = all(w in PARTS for w in _WORD.findall(folded(food.label)))
    near = []
    for promise in promised:
        if promise.category in ("supplies", "drink"):
            continue
        words = [w for w in _key(promise.dish).split() if w not in ("and", "with", "con", "y", "de")]
        if not words:
            continue
        if set(said) == set(words):
            near.append((0, promise.guest != me, promise))
        elif set(words) <= set(said) or (set(said) <= set(words) and (said[-1] in (words[-1], words[0]))) or (
            len(said) > 1 and said == words[: len(said)]  # "potato salad" of "potato salad with mayo"
        ):
            near.append((1, promise.guest != me, promise))
    near.sort(key=lambda row: row[:2])
    if near and (len(near) == 1 or near[0][:2] != near[1][:2]):
        dish = near[0][2]
        return Food(dish.dish, dish.id, english(dish.dish), food.start, food.end, part)
    return Food(food.label, "", english(food.label), food.start, food.end, part)


def all_foods(text: str) -> bool:
    return any(re.search(rf"\b{re.escape(w)}\b", text) for w in ALL)
