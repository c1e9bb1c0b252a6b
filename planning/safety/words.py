"""What a dish's name and listed ingredients say about it, by the words of `data/safety_words.csv`."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

from planning import tables
from planning.potluck import Promise


@cache
def _patterns() -> dict[str, tuple[tuple[str, re.Pattern[str]], ...]]:
    found: dict[str, list[tuple[str, re.Pattern[str]]]] = {}
    for row in tables.rows("safety_words"):
        # A plural is the same food: grape, grapes; tomato, tomatoes; berry, berries.
        stem = re.escape(row["word"].removesuffix("y")) + ("(y|ies)" if row["word"].endswith("y") else "(s|es)?")
        found.setdefault(row["tag"], []).append((row["word"], re.compile(rf"(?<!\w){stem}(?!\w)")))
    return {tag: tuple(words) for tag, words in found.items()}


def text_of(promise: Promise) -> str:
    """The name and the ingredients in one lower-case line."""
    return " ; ".join([promise.dish, *(promise.ingredients or ())]).casefold()


def words(promise: Promise, tag: str) -> tuple[str, ...]:
    """The words of this tag that the dish has, in the table's order.

    >>> words(Promise("1", "g", "Fruit salad", "dessert", ingredients=("melon balls", "grapes")), "choke")
    ('grape', 'melon ball')
    """
    text = text_of(promise)
    return tuple(word for word, pattern in _patterns().get(tag, ()) if pattern.search(text))


@cache
def source_of(tag: str, word: str) -> str:
    """The rule that names this word under this tag; KeyError when none does."""
    return {(row["tag"], row["word"]): row["source"] for row in tables.rows("safety_words")}[tag, word]


def has(promise: Promise, tag: str) -> bool:
    return bool(words(promise, tag))


def perishable(promise: Promise) -> bool:
    """Whether the two-hour clock is for it. Only what the tables name as keeping is left out, and no drinks."""
    if promise.category in ("drink", "supplies"):
        return False
    # What keeps counts only as the dish itself: butter or bread among the ingredients makes nothing keep.
    return not has(replace(promise, ingredients=None), "stable") or has(promise, "perishable")
