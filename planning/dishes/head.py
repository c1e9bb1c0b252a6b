"""The head noun of a name, and the category it gives.

Where a noun stands in the name decides what it is: a chicken noodle *casserole*, a *bowl* for salad.
"""

from __future__ import annotations

from planning.dishes import names
from planning.dishes.index import Index

KIND_CATEGORY = (
    ("meat", "main"), ("fish", "main"), ("egg", "main"), ("fruit", "dessert"), ("vegetable", "side"),
    ("veg", "side"), ("starch", "side"), ("bean", "side"), ("dairy", "starter"), ("nut", "starter"),
    ("sweet", "dessert"),
)  # fmt: skip
"""Where a plain ingredient goes on the table when it is all that was named (common practice, no source)."""

FOOD_KINDS = frozenset(kind for kind, _ in KIND_CATEGORY) | {"flavour"}


_FOOD_OR_GEAR = frozenset(
    [
        "bowl",
        "cup",
        "ball",
        "stick",
        "tray",
        "platter",
        "board",
        "dish",
        "round",
        "stack",
        "slice",
        "order",
        "piece",
        "ice",
        "wrap",
    ]
)


_GEAR_SORTS = frozenset(
    (
        "serving", "plastic", "paper", "wooden", "wood", "cutting", "chopping", "large", "big", "small", "glass",
        "silver",
        "foil", "aluminum", "disposable", "melamine", "extra", "spare", "soccer", "beach", "tennis", "basket", "volley",
        "game", "dart", "chess", "bingo",
    )
)  # fmt: skip
"""What tells a platter, a board or a ball for the table from one to eat."""


def noun_phrase(index: Index, words: list[str]) -> tuple[list[str], list[str]]:
    """(the words up to and with the head, the words describing it afterwards)."""
    before: list[str] = []
    after: list[str] = []
    for at, word in enumerate(words):
        if word in names.CUTS and before:
            after = words[at + 1 :]
            break
        if word == "of" and before:
            rest = words[at + 1 :]
            ends_in_head = (
                bool(rest) and rest[-1] in index.heads and (before[-1] not in index.heads or before == ["cream"])
            )
            if ends_in_head:
                continue
            after = rest
            break
        if word in names.JOINS and before and not _joins_modifiers(index, before, words[at + 1 :]):
            after = words[at + 1 :]
            break
        if word not in names.JOINS:
            before.append(word)
    while len(before) > 1 and names.is_kind(before[-1], "adj", "filler") and not _can_be_head(index, before[-1]):
        before = [before[-1], *before[:-1]]
        if all(names.is_kind(word, "adj", "filler") for word in before):
            break
    return before, [word for word in after if word not in names.JOINS]


def _joins_modifiers(index: Index, before: list[str], rest: list[str]) -> bool:
    """Whether "and" stands inside a name ("apple and walnut salad") and not between two dishes."""
    if not rest:
        return False
    ends = [word for word in rest if word not in names.JOINS]
    return bool(ends) and ends[-1] in index.heads and before[-1] not in index.heads


def _can_be_head(index: Index, word: str) -> bool:
    return word in index.heads or names.is_kind(word, *FOOD_KINDS - {"flavour"}) or word in index.by_word


def is_gear(index: Index, head: str, before: list[str]) -> bool:
    """A thing for the table: "salad bowls", "paper cups", but not "fruit cups", "rice bowl" or "french loaf"."""
    vessel = names.is_kind(head, "container") and len(before) > 1 and head not in index.heads
    if not names.is_kind(head, "supply") and not vessel:
        return False
    if head in ("platter", "board", "ball"):
        return all(word in _GEAR_SORTS for word in before[:-1])
    if head in _FOOD_OR_GEAR:
        kinds = ("meat", "fish", "egg", "vegetable", "veg", "fruit", "starch", "bean", "dairy", "nut", "sweet")
        return not any(
            names.is_kind(word, *kinds) or ((dish := index.exact.get(word)) is not None and dish.category != "supplies")
            for word in before[:-1]
        )
    return True


def category_of_head(index: Index, before: list[str], everything: frozenset[str]) -> str | None:
    """The head noun's category; what is said about it decides where the head is open."""
    two = " ".join(before[-2:])
    rule = index.heads.get(two) if len(before) > 1 else None
    rule = rule or index.heads.get(before[-1])
    if rule is None:
        return None
    usual, if_sweet, if_meat, if_vegetable = rule
    described = everything - {before[-1]}
    if any(names.is_kind(word, "meat", "fish") for word in described):
        return if_meat
    if any(names.is_kind(word, "sweet", "fruit") for word in described):
        return if_sweet
    if any(names.is_kind(word, "veg", "vegetable", "bean", "starch", "dairy", "egg") for word in described):
        return if_vegetable
    return usual
