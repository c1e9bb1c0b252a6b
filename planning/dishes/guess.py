"""Which dish a text means: exact names first, then the head noun, then an honest guess.

A dish's category follows its head noun, the last noun before "with", "in", "on": a chicken noodle
*casserole* is a main, an apple walnut *salad* a salad. What stands before the head only decides where the head
itself is open: a fish *pie* is a main, a cherry *pie* a dessert.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz import fuzz, process

from planning.dishes import names
from planning.dishes.catalogue import Dish
from planning.dishes.head import FOOD_KINDS, KIND_CATEGORY, category_of_head, is_gear, noun_phrase
from planning.dishes.index import Index, index_of_names


@dataclass(frozen=True)
class DishMatch:
    """What a text means.

    `dish` is the catalogue's dish or None; `name` the text as said without what stands around the name;
    `category` None when it is no dish and no thing for the table; `confidence` 0 to 1.
    """

    dish: Dish | None
    name: str
    category: str | None
    confidence: float


@lru_cache(maxsize=8192)
def lookup(text: str) -> DishMatch:
    """The dish a text names, or the best guess at its category.

    Confidence: 1 a known name; 0.9 a known name misspelt or in another order; 0.75-0.9 a known dish with more
    words before it; 0.5-0.7 a guess from the head noun; 0.1 not known at all; 0 no dish.
    """
    index = index_of_names()
    said = names.said_words(text)
    core = names.without_fillers(said)
    name = _as_said(text, core)
    for words in (said, core):
        if dish := index.exact.get(" ".join(names.plain(word) for word in words if word != ",")):
            return DishMatch(dish, name, dish.category, 1.0)
    while len(core) > 1 and core[-1] in ("thing", "things", "stuff"):
        core = core[:-1]
    if not core or core[0] in names.CUTS:
        return DishMatch(None, name, None, 0.0)
    core = _uninverted(core)
    bare = _without_claims([names.plain(word) for word in core if word != ","])
    if not bare:
        return DishMatch(None, name, None, 0.0)
    if dish := _known(index, bare):
        return DishMatch(dish, name, dish.category, 0.95)
    spelt, slips = _spelt(index, bare)
    off = 0.05 * min(slips, 3)
    if slips and (dish := _known(index, spelt)):
        return DishMatch(dish, name, dish.category, round(0.95 - off, 2))
    if dish := _reordered(index, spelt):
        return DishMatch(dish, name, dish.category, round(0.9 - off, 2))
    if dish := _with_its_sort(index, spelt):
        return DishMatch(dish, name, dish.category, round(0.9 - off, 2))
    return _by_head(index, name, spelt, off)


def is_food(text: str) -> bool:
    """Whether the text names something to eat or drink, as far as we can tell."""
    match = lookup(text)
    return match.category not in (None, "supplies") and match.confidence >= 0.3


def _as_said(text: str, core: list[str]) -> str:
    """The name with the sender's own spelling: the stretch of the text which the core words cover."""
    words = [word for word in core if word not in (",", "and")]
    if not words:
        return text.strip()
    folded = names.fold(text)
    if len(folded) != len(text[: names.LONGEST]):
        return " ".join(core).replace(" ,", ",")
    start = folded.find(words[0])
    end = folded.rfind(words[-1])
    if start < 0 or end < start:
        return " ".join(core).replace(" ,", ",")
    return text[start : end + len(words[-1])]


def _uninverted(words: list[str]) -> list[str]:
    """ "beans, baked" is "baked beans"; a longer list keeps its order."""
    if words.count(",") == 1:
        at = words.index(",")
        after = words[at + 1 :]
        if 0 < len(after) <= 2 and all(names.is_kind(names.plain(word), "adj", *FOOD_KINDS) for word in after):
            return after + words[:at]
    return words


def _without_claims(words: list[str]) -> list[str]:
    """Words like "vegan" and "gluten free" say who can eat it, not which dish it is."""
    kept: list[str] = []
    for word in words:
        if word == "free" and kept and names.is_kind(kept[-1], "free"):
            kept.pop()
        elif not names.is_kind(word, "claim"):
            kept.append(word)
    return kept


def _known(index: Index, words: list[str]) -> Dish | None:
    key = " ".join(words)
    if dish := index.exact.get(key):
        return dish
    if joined := index.joined.get(key.replace(" ", "")):
        return index.exact[joined]
    trimmed = [word for word in words if not names.is_kind(word, "filler")]
    return index.exact.get(" ".join(trimmed)) if trimmed != words else None


def _spelt(index: Index, words: list[str]) -> tuple[list[str], int]:
    """Every word as the index spells it; how many had to be corrected."""
    spelt: list[str] = []
    slips = 0
    for word in words:
        if word in index.vocabulary or word in names.CUTS or word in names.JOINS or word == "of":
            spelt.append(word)
        elif parts := _parts(word, index.vocabulary):
            spelt.extend(parts)
        elif right := names.corrected(word, index.vocabulary) or names.corrected(f"{word}s", index.vocabulary):
            spelt.append(right)
            slips += 1
        else:
            spelt.append(word)
    return _merged(spelt, index), slips


@lru_cache(maxsize=4096)
def _parts(word: str, vocabulary: frozenset[str]) -> tuple[str, str] | None:
    """ "potatosalad" is two known words; both of three letters or more."""
    for at in range(3, len(word) - 2):
        left, right = word[:at], names.plain(word[at:])
        if left in vocabulary and right in vocabulary and not names.is_kind(left, "filler", "person"):
            return left, right
    return None


def _merged(words: list[str], index: Index) -> list[str]:
    """ "corn bread" is "cornbread" where the catalogue writes one word."""
    merged: list[str] = []
    for word in words:
        if merged and (both := merged[-1] + word) in index.vocabulary and both not in names.kinds():
            merged[-1] = both
        else:
            merged.append(word)
    return merged


def _reordered(index: Index, words: list[str]) -> Dish | None:
    """The same words in another order, where the order does not change the meaning.

    "salad of potatoes" and "casserole green bean" are the dishes; "salad potatoes" is a sort of potato, so two
    bare nouns the wrong way round do not count.
    """
    content = [word for word in words if word != "of" and word not in names.CUTS]
    key = index.sorted_words.get(tuple(sorted(content)))
    if key is None:
        return None
    linked = len(content) < len(words)
    starts_with_head = bool(content) and content[0] == key.split()[-1]
    same_head = content[-1] == key.split()[-1]
    loose_end = names.is_kind(content[-1], "adj") and content[-1] not in index.heads
    if linked or same_head or loose_end or (starts_with_head and len(content) > 2):
        return index.exact[key]
    return None


SORTS = frozenset(("curry", "stew", "soup", "salad", "dip", "dessert", "drink", "rice", "noodle"))
"""Words which may follow a dish's own name and only say what sort of thing it is ("massaman curry")."""

SERVED_ON = frozenset(("platter", "tray", "board", "dish", "skewer", "bite", "cup", "plate"))
"""Words which may follow a name and say how it is served ("devilled egg platter")."""


def _with_its_sort(index: Index, words: list[str]) -> Dish | None:
    """A dish's whole name with a word after it that changes nothing."""
    dish = index.exact.get(" ".join(words[:-1])) if len(words) > 1 else None
    if dish is None or dish.category == "supplies":
        return None
    alike = words[-1] in SORTS and category_of_head(index, words, frozenset(words)) == dish.category
    return dish if alike or (words[-1] in SERVED_ON and not _holds_it(dish, words[-1])) else None


def _holds_it(dish: Dish, word: str) -> bool:
    """A "coffee cup" holds the drink, and is no coffee."""
    return dish.category in ("drink", "topping", "bread") or (word in ("cup", "plate", "dish") and len(dish.name) < 5)


def _by_head(index: Index, name: str, words: list[str], off: float) -> DishMatch:
    before, after = noun_phrase(index, words)
    if not before:
        return DishMatch(None, name, None, 0.0)
    head = before[-1]
    everything = frozenset(before) | frozenset(after)
    known = index.by_word.get(head, ())
    first = frozenset(before)
    for wanted, key in (*(k for k in known if k[0] <= first), *(k for k in known if not k[0] <= first)):
        if wanted <= everything and (len(wanted) > 1 or not is_gear(index, head, before)):
            dish = index.exact[key]
            extra = everything - wanted
            unknown = sum(word not in index.vocabulary for word in extra)
            weaker = 0.05 if any(names.is_kind(word, *FOOD_KINDS) for word in extra) else 0.0
            category = category_of_head(index, before, everything)
            if category is not None and category != dish.category and weaker and not first <= wanted:
                break
            return DishMatch(dish, name, dish.category, round(0.9 - weaker - 0.05 * min(unknown, 2) - off, 2))
    if is_gear(index, head, before):
        return DishMatch(None, name, "supplies", round(0.7 - off, 2))
    if names.is_kind(head, "person") and not (head == "dog" and _food_in(before[:-1])):
        return DishMatch(None, name, None, 0.0)
    category = category_of_head(index, before, everything)
    if category is not None:
        understood = sum(word in index.vocabulary for word in before[:-1])
        bonus = 0.1 if understood == len(before) - 1 and understood else 0.05 if understood else 0.0
        return DishMatch(None, name, category, round(0.6 + bonus - off, 2))
    if head == "dog":
        return DishMatch(None, name, "main", 0.6)
    for kind, usual in KIND_CATEGORY:
        if names.is_kind(head, kind):
            return DishMatch(None, name, usual, round(0.55 - off, 2))
    return _unknown(index, name, words)


def _food_in(words: list[str]) -> bool:
    return any(names.is_kind(word, *FOOD_KINDS) for word in words)


def _unknown(index: Index, name: str, words: list[str]) -> DishMatch:
    """Nothing known: perhaps the whole is spelt strangely; else a weak guess, or no dish at all."""
    phrase = " ".join(words)
    if len(phrase) >= 5 and len(words) <= 4:
        near = process.extractOne(phrase, index.keys, scorer=fuzz.ratio, score_cutoff=84.0)
        if near is not None:
            dish = index.exact[near[0]]
            return DishMatch(dish, name, dish.category, 0.6)
    if any(names.is_kind(word, "person", "chatter") for word in words):
        return DishMatch(None, name, None, 0.0)
    if len(words) <= 5 and (known := _inside(index, words)) is not None:
        return DishMatch(known, name, known.category, 0.55)
    inside = [word for word in words if word in index.heads or names.is_kind(word, *FOOD_KINDS)]
    if inside:
        category = category_of_head(index, inside, frozenset(inside))
        for kind, usual in KIND_CATEGORY:
            category = category or (usual if names.is_kind(inside[-1], kind) else None)
        return DishMatch(None, name, category or "main", 0.4)
    if len(words) > 4 or not any(word.isalpha() and len(word) > 2 for word in words):
        return DishMatch(None, name, None, 0.0)
    return DishMatch(None, name, "main", 0.1)


def _inside(index: Index, words: list[str]) -> Dish | None:
    """The longest whole name of a dish, of one long word or of several, among words nobody knows."""
    for length in range(len(words) - 1, 0, -1):
        for start in range(len(words) - length + 1):
            part = words[start : start + length]
            dish = index.exact.get(" ".join(part))
            if dish is not None and dish.category != "supplies" and (length > 1 or len(part[0]) > 6):
                return dish
    return None
