"""Our categories against WordNet's: the hyponyms of dessert, bread, salad and beverage.

Source: Princeton WordNet 3.0, as packaged in Debian's wordnet-base. Words neither side can be expected to share
(brands, vineyards, obsolete names) drop out because our lookup is not sure of them.
"""

from __future__ import annotations

import pytest

from planning.dishes import lookup
from tests.planning.wordnet import hyponyms

pytestmark = pytest.mark.wordnet
"""deploy/test.sh leaves these out, and says so, where wordnet-base can't be installed."""

ROOTS = {"dessert": "07609840", "bread": "07679356", "salad": "07806221", "drink": "07881800"}

DISAGREEMENTS = {
    "dessert": {"ambrosia", "dumpling", "ice", "ice milk"},
    "bread": {
        "ash cake", "ashcake", "bear claw", "cinnamon bun", "cinnamon roll", "danish", "danish pastry", "fish loaf",
        "griddlecake", "honey bun", "journey cake", "meat loaf", "meatloaf", "pretzel", "salmon loaf",
        "scotch pancake", "shawnee cake", "shortcake", "soft pretzel", "sticky bun", "sweet roll", "yorkshire pudding",
    },
    "salad": set(),
    "drink": {
        "chocolate", "cobbler", "cold duck", "cooler", "corn", "cup", "grasshopper", "john barleycorn", "love-potion",
        "maconnais", "mixer", "rye", "sour mash",
    },
}  # fmt: skip
"""Where we stand by our own: a meat loaf feeds as a main, sweet buns are eaten as dessert, "ice" is for the cooler."""


@pytest.fixture(scope="module")
def compared() -> dict[str, tuple[set[str], set[str]]]:
    """category -> (entries both know, those of them we put elsewhere)"""
    found = {}
    for category, words in hyponyms(ROOTS).items():
        known = {word for word in words if lookup(word).confidence >= 0.5}
        found[category] = (known, {word for word in known if lookup(word).category != category})
    return found


def test_at_least_ninety_of_a_hundred_shared_entries_agree(compared: dict[str, tuple[set[str], set[str]]]) -> None:
    known = sum(len(shared) for shared, _ in compared.values())
    other = sum(len(differ) for _, differ in compared.values())

    assert known >= 150
    assert (known - other) / known >= 0.90, compared


@pytest.mark.parametrize("category", ROOTS)
def test_every_disagreement_is_listed(category: str, compared: dict[str, tuple[set[str], set[str]]]) -> None:
    assert compared[category][1] <= DISAGREEMENTS[category]
