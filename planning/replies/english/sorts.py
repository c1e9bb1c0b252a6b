"""Sorts of one thing, and what it is filled with: "2 pies, pecan and apple", "dumplings, 60 pieces, pork"."""

from __future__ import annotations

from planning.replies.english.lexicon import words
from planning.replies.english.nouns import known_thing
from planning.replies.text import Sentence

_FILLED = frozenset(
    (
        "dumplings", "tacos", "empanadas", "buns", "bao", "wraps", "sliders", "sandwiches", "tamales", "skewers",
        "rolls", "samosas", "pierogi", "ravioli", "quesadillas", "enchiladas", "burritos", "gyoza", "potstickers",
        "kebabs", "croquettes", "pasties",
    )
)  # fmt: skip
_FILLINGS = frozenset(
    (
        "pork", "beef", "chicken", "lamb", "shrimp", "prawn", "prawns", "tofu", "fish", "turkey", "cheese", "ham",
        "veggie", "veg", "vegetable", "vegetables", "mushroom", "spinach", "tuna", "salmon", "bean", "beans",
    )
)  # fmt: skip
_SORTS = {
    "pies": "pie", "cakes": "cake", "salads": "salad", "breads": "bread", "quiches": "quiche", "soups": "soup",
    "pizzas": "pizza", "dips": "dip", "tarts": "tart", "lasagnas": "lasagna", "chilis": "chili", "curries": "curry",
    "loaves": "loaf", "casseroles": "casserole",
}  # fmt: skip


def fills(filling: str, dish: str) -> bool:
    """Whether the first is what the second is filled with, and no dish of its own."""
    last = dish.lower().rpartition(" ")[2]
    return last in _FILLED and {*filling.lower().split()} <= _FILLINGS


def sorts_at(sentence: Sentence, i: int, last: int) -> list[tuple[str, int, int]]:
    """(name, first token, end) of each of "2 pies, pecan and apple" at token `i`; empty where there are not so many."""
    tokens = sentence.tokens
    if i + 4 >= last or tokens[i].plain not in ("2", "two", "3", "three") or tokens[i + 1].plain not in _SORTS:
        return []
    wanted, sort = (2 if tokens[i].plain in ("2", "two") else 3), _SORTS[tokens[i + 1].plain]
    j = i + 2 + (tokens[i + 2].plain in (",", ":", "-", "–", "("))
    made: list[tuple[str, int, int]] = []
    while j < last and len(made) < wanted and sentence.free(j):
        while j < last and tokens[j].plain in ("a", "an", ",", "and", "&", "+", "one", "1", "other", "the"):
            j += 1
        if j >= last or not tokens[j].plain.isalpha() or tokens[j].plain in {**words("plain"), **words("filler")}:
            return []
        _, known, other = known_thing(f"{tokens[j].plain} {sort}")
        if other or known < 0.75 or (j + 1 < last and tokens[j + 1].plain == sort):
            return []
        end = j + 1 + (j + 1 < last and tokens[j + 1].plain == ")")
        made.append((f"{tokens[j].raw} {sort}", j, end))
        j = end
    return made if len(made) == wanted else []
