"""Whether words name something for the table, and of which category."""

from __future__ import annotations

from functools import cache, lru_cache

from planning.dishes import lookup
from planning.replies.english.lexicon import singulars, words
from planning.tables import rows


@lru_cache(maxsize=4096)
def known_thing(name: str) -> tuple[str, float, bool]:
    """(category, how sure 0 to 1 that it is for the table, certainly something else)."""
    plain = name.lower().replace(" & ", " and ")
    tokens = plain.split()
    if not tokens:
        return "", 0.0, False
    if "of" in tokens[1:-1] and (whole := known_thing(plain.partition(" of ")[0]))[1] >= 0.9:
        return whole  # "a cake of carrots"
    for joint in _BESIDE & set(tokens[1:-1]):
        before = plain.partition(f" {joint} ")[0]
        whole = known_thing(before)
        if whole[1] >= 0.9 and not whole[2]:
            known = _catalogue(plain)
            return known[0] if known[1] >= 0.95 else whole[0], 0.9, False  # "potato salad with mayo" is a salad
    head = tokens[-1]
    table = words("dish")
    if plain in words("notdish"):
        return "", 0.0, True
    for form in singulars(plain):
        if form in table:
            return table[form], 0.95, False
    if head in words("notdish"):
        return "", 0.0, True
    category, sure = _catalogue(plain)
    if sure >= 0.95:
        return category, 0.95, False
    for n in range(min(3, len(tokens)), 0, -1):
        for form in singulars(" ".join(tokens[-n:])):
            if form in table:
                return (
                    table[form],
                    0.9 if table[form] != "supplies" or set(tokens[:-n]) <= words("plainword").keys() else 0.7,
                    False,
                )
    if sure < 0.5 and len(head) > 5 and head.endswith(_ABSTRACT) and not is_ingredient(head):
        return "", 0.0, True
    if sure < 0.5:
        return category if sure > 0.3 else "", sure, False
    if category == "supplies" or sure < 0.75:
        return category, 0.7, False
    # The catalogue forgives slips of the pen: good for "lasanga", bad for "a winning streak". A longer word, or a
    # head noun that is a dish to the letter, is believed; the rest is asked about.
    exact_head = _catalogue(head)[1] >= 0.95
    return category, 0.9 if exact_head or (len(tokens) == 1 and len(head) >= 7) else 0.7, False


_BESIDE = frozenset(("with", "w", "without", "in", "on"))
"""Behind these stands what goes with a dish, not the dish."""
_ABSTRACT = ("ment", "ments", "ity", "ness", "tion", "sion", "ship", "hood", "ance", "ence", "ism", "itude")
"""Endings of what can't be put on a table: "moral support" has none of them, "enthusiasm" and "commitment" do."""


def _catalogue(name: str) -> tuple[str, float]:
    """The catalogue's word on it; ("", 0) for what it does not know."""
    match = lookup(name)
    return match.category or "", float(match.confidence) if match.category else 0.0


@cache
def _ingredients() -> frozenset[str]:
    return frozenset(w for row in rows("ingredients") for w in (row["name"], *row["aliases"].split(";")) if w)


def is_ingredient(word: str) -> bool:
    """Whether the word names an ingredient ("cheese", "onions") and no dish of its own kind."""
    return any(form in _ingredients() for form in singulars(word))
