"""Things for the table: everybody needs a set of a plate, a cup, a napkin and something to eat with."""

from __future__ import annotations

from collections.abc import Iterable

from planning.menu.servings import pieces_for_the_table
from planning.portions.names import words
from planning.potluck import Promise

SETS: dict[str, frozenset[str]] = {
    "plates": frozenset(("plate", "dish", "crockery", "dishware")),
    "cups": frozenset(("cup", "mug", "tumbler", "beaker", "glass", "glassware")),
    "napkins": frozenset(("napkin", "serviette", "towel", "tissue")),
    "cutlery": frozenset(("cutlery", "silverware", "plasticware", "utensil", "fork", "knife", "spoon", "spork")),
}
"""The kinds of a set, by the words which mean them (in the singular): common practice, no source."""

WHOLE_SETS = frozenset(("tableware", "setting", "partyware", "picnicware"))
"""Words which mean a whole set."""

NOT_FOR_ONE = frozenset((
    "serving", "cake", "tea", "washing", "kitchen", "soap", "measuring", "chafing", "baking", "carving", "warmer",
))  # fmt: skip
"""A serving spoon or a dish towel lays nobody's place."""


def kinds_in(dish: str) -> tuple[str, ...]:
    """The kinds of a set which a promise of these words brings, none for a tablecloth or ice.

    >>> kinds_in("paper plates and cups")
    ('plates', 'cups')
    """
    said = set(words(dish))
    if said & WHOLE_SETS or {"paper", "good"} <= said:
        return tuple(SETS)
    if said & NOT_FOR_ONE or {"dish", "towel"} <= said or {"hot", "plate"} <= said:
        return ()
    return tuple(name for name, meant in SETS.items() if said & meant)


def kinds_missing(promised: Iterable[Promise]) -> tuple[str, ...]:
    """The kinds of a set which nobody brings: what "short by 25" means beside promised plates."""
    brought = {name for promise in promised for name in kinds_in(promise.dish)}
    return tuple(name for name in SETS if name not in brought)


def covered_by_supplies(promised: Iterable[Promise], people: float) -> tuple[float, int]:
    """(people who get one of every kind, kinds somebody brings). What is promised without a number is for all."""
    have: dict[str, float] = {}
    for promise in promised:
        pieces = pieces_for_the_table(promise)
        for name in kinds_in(promise.dish):
            have[name] = have.get(name, 0.0) + (people if pieces is None else pieces)
    return min((have.get(name, 0.0) for name in SETS), default=0.0), len(have)
