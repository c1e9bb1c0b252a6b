"""Words of a dish's name: folded, in the singular, spelt one way, and their kinds.

Pure text work; nothing here knows any dish. Kinds of words come from `data/dishes_words.csv`.
"""

from __future__ import annotations

import re
import unicodedata
from functools import cache, lru_cache

from rapidfuzz.distance import OSA

from planning import tables

LONGEST = 160
"""Characters of a name looked at; more is no dish's name."""

CUTS = frozenset(
    {"with", "w", "in", "on", "over", "topped", "served", "from", "for", "using", "plus", "without", "no", "alla"}
)
"""What follows one of these words describes the dish and is not its head."""

JOINS = frozenset({"and", "n", "or", "und", "y", "et"})

_WORD = re.compile(r"[a-z0-9]+(?:'[a-z]+)?|[,&]")
_TAIL = re.compile(
    r"\b(?:for|serves?|feeds?|enough for|to feed|to share)\s+"
    r"(?:about|around|approx\w*|maybe|like|up to|at least|all|the)?\s*"
    r"(?:\d+|a? ?dozen|a? ?couple|everyone|everybody|all|us|ten|twelve|twenty|eight|six|four|two|three|five).*$"
)
_PAREN = re.compile(r"\([^)]*\)?")
_AMOUNT = re.compile(r"^(?:\d+(?:[.,/x×-]\d+)*|[½¼¾⅓⅔]|one|two|three|four|five|six|eight|ten|twelve|half|dozen)$")

_ODD = {
    "leaves": "leaf", "loaves": "loaf", "knives": "knife", "halves": "half", "calves": "calf", "children": "child",
    "geese": "goose", "mice": "mouse", "people": "person", "men": "man", "women": "woman", "quiches": "quiche",
    "brioches": "brioche", "ceviches": "ceviche", "sauces": "sauce", "nachos": "nacho", "oats": "oat",
    "grits": "grit", "wives": "wife", "avocadoes": "avocado", "cookies": "cookie", "axes": "axe", "pho": "pho",
    "shoes": "shoe", "toes": "toe", "canoes": "canoe", "cheeses": "cheese", "matzos": "matzo",
    "galettes": "galette", "potstickers": "potsticker", "latkes": "latke",
}  # fmt: skip


def fold(text: str) -> str:
    """Lower case without accents, curly quotes straightened, at most LONGEST characters."""
    text = text[:LONGEST].replace("’", "'").replace("‘", "'").replace("ß", "ss").replace("ø", "o").replace("æ", "ae")
    split = unicodedata.normalize("NFKD", text)
    return "".join(c for c in split if not unicodedata.combining(c)).casefold()


@cache
def _listed(kind: str) -> frozenset[str]:
    return frozenset(row["word"] for row in tables.rows("dishes_words") if row["kind"] == kind)


@lru_cache(maxsize=16384)
def singular(word: str) -> str:
    """One word in the singular, well enough for the kitchen; the same for both sides of a comparison.

    >>> [singular(w) for w in ("potatoes", "cookies", "berries", "sandwiches", "hummus")]
    ['potato', 'cookie', 'berry', 'sandwich', 'hummus']
    """
    if word in _ODD:
        return _ODD[word]
    if len(word) < 4 or word in _listed("keep") or not word.endswith("s") or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies"):
        return word[:-1] if word[:-1] in _listed("ie") else word[:-3] + "y"
    if word.endswith("oes"):
        return word[:-2]
    if word.endswith(("ches", "shes", "sses", "xes", "zzes")):
        return word[:-2]
    return word[:-1]


@cache
def kinds() -> dict[str, frozenset[str]]:
    """What sorts of thing a word can be: meat, fruit, adj, container, person, supply, …"""
    found: dict[str, set[str]] = {}
    for row in tables.rows("dishes_words"):
        if row["kind"] != "spelling":
            for word in {row["word"], singular(row["word"])}:
                found.setdefault(word, set()).add(row["kind"])
    return {word: frozenset(sorts) for word, sorts in found.items()}


@cache
def spellings() -> dict[str, str]:
    """Other words for the same thing, and common misspellings."""
    return {row["word"]: row["means"] for row in tables.rows("dishes_words") if row["kind"] == "spelling"}


@lru_cache(maxsize=16384)
def plain(word: str) -> str:
    """A word as the index spells it: possessive off, singular, one spelling."""
    word = word.removesuffix("'s").replace("'", "")
    known = spellings()
    if word in known:
        return known[word]
    one = singular(word)
    return known.get(one, one)


def is_kind(word: str, *wanted: str) -> bool:
    return not kinds().get(word, frozenset()).isdisjoint(wanted)


def said_words(text: str) -> list[str]:
    """The words of a text, folded, still as said; commas stay, to mark "beans, baked"."""
    folded = _PAREN.sub(" ", fold(text)).replace("-", " ").replace("/", " ").replace("w/ ", "with ")
    tail = _TAIL.search(folded)
    if tail and folded[: tail.start()].strip():
        folded = folded[: tail.start()]
    return ["and" if word in ("&", "n", "'n") else word for word in _WORD.findall(folded)]


def without_fillers(words: list[str]) -> list[str]:
    """Take off what is said around a name: amounts, vessels with "of", "my famous", "some"."""
    words = list(words)
    while words:
        first = words[0]
        if first == "," or (
            len(words) > 1 and (_AMOUNT.match(first) or is_kind(first, "filler")) and not _starts_a_name(words)
        ):
            words = words[1:]
        elif len(words) > 2 and words[1] == "of" and is_kind(plain(first), "container"):
            words = words[2:]
        elif len(words) > 3 and words[2] == "of" and is_kind(plain(words[1]), "container", "adj"):
            words = words[3:]
        elif len(words) > 1 and is_kind(first, "container") and _AMOUNT.match(words[1]) is None and first in _UNITS:
            words = words[1:]
        else:
            break
    while len(words) > 1 and (words[-1] == "," or _AMOUNT.match(words[-1]) or words[-1] in ("please", "again", "too")):
        words = words[:-1]
    return words


_UNITS = frozenset(
    ["lb", "lbs", "pound", "pounds", "oz", "ounce", "ounces", "kg", "kilo", "kilos", "g", "gram", "grams", "dozen"]
)


def _starts_a_name(words: list[str]) -> bool:
    """ "7 layer dip", "three bean salad", "half moon cookies": the number belongs to the name."""
    return len(words) > 1 and singular(words[1]) in ("layer", "bean", "cheese", "milk", "meat", "spice", "moon")


@cache
def _by_length(vocabulary: frozenset[str]) -> dict[int, tuple[str, ...]]:
    found: dict[int, list[str]] = {}
    for word in sorted(vocabulary):
        found.setdefault(len(word), []).append(word)
    return {length: tuple(words) for length, words in found.items()}


def _squeezed(word: str) -> str:
    """Doubled letters written once."""
    return re.sub(r"(.)\1", r"\1", word)


@lru_cache(maxsize=8192)
def corrected(word: str, vocabulary: frozenset[str]) -> str | None:
    """The known word this one misspells, or None.

    One slip (a letter missing, doubled, wrong, or two swapped) for five letters or more, two slips for eight or
    more, only a swap or a doubling for four; shorter words are never corrected, as too many are other words. The
    first letter is nearly always right.
    """
    length = len(word)
    if length < 4 or not word.isalpha():
        return None
    most = 2 if length >= 8 else 1
    best: tuple[int, bool, bool, str] | None = None
    lengths = _by_length(vocabulary)
    for near in range(length - most, length + most + 1):
        for known in lengths.get(near, ()):
            slips = OSA.distance(word, known, score_cutoff=most)
            if slips > most:
                continue
            doubled = _squeezed(word) == _squeezed(known)
            if word[0] != known[0] and (slips > 1 or (length < 7 and word[:2] != known[1::-1])):
                continue  # a wrong first letter is mostly another word: "macon" is no bacon
            if slips == 2 and length == 8 and OSA.distance(_squeezed(word), _squeezed(known)) > 1:
                continue
            if length == 4 and not doubled and sorted(word) != sorted(known):
                continue
            rank = (slips, not doubled, word[0] != known[0], known)
            if best is None or rank < best:
                best = rank
    return best[3] if best else None
