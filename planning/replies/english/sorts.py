"""Sorts of one thing, and what it is filled with: "2 pies, pecan and apple", "dumplings, 60 pieces, pork"."""

# ruff: noqa: E501 - a table of words is easier to read on one line

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


_BAKED = frozenset(
    (
        "cake", "cakes", "cupcakes", "muffins", "cookies", "pie", "pies", "brownies", "tart", "tarts", "cheesecake", "bars", "pudding",
        "crumble", "mousse", "fudge", "donuts", "doughnuts", "scones", "sorbet", "cream", "gelato", "biscuits", "cobbler", "crisp", "loaf",
    )
)  # fmt: skip
_FLAVOURS = frozenset(
    (
        "chocolate", "vanilla", "lemon", "lime", "strawberry", "apple", "cherry", "pecan", "pumpkin", "blueberry", "peach", "caramel",
        "coconut", "carrot", "banana", "raspberry", "rhubarb", "ginger", "cinnamon", "walnut", "almond", "orange", "plum", "pear",
        "coffee", "pistachio", "mango", "dark", "white", "double", "choc", "chip", "and", "key", "oatmeal", "raisin", "mixed",
    )
)  # fmt: skip


def fills(filling: str, dish: str) -> bool:
    """Whether the first is what the second is filled with or tastes of, and no dish of its own."""
    last = dish.lower().rpartition(" ")[2]
    if last in _BAKED and {*filling.lower().split()} <= _FLAVOURS:
        return True
    return last in _FILLED and {*filling.lower().split()} <= _FILLINGS


def filled(filling: str, dish: str) -> str:
    """The name of both: "dumplings with pork", "lemon sheet cake"."""
    return f"{filling} {dish}" if dish.lower().rpartition(" ")[2] in _BAKED else f"{dish} with {filling}"


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
