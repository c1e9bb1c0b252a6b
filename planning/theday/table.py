"""The table as it stands: whose dish, what it needs to be served, what its label still lacks."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from functools import cache

from planning.diets import Listed, listed
from planning.dishes import lookup
from planning.potluck import CATEGORIES, Potluck, Promise
from planning.tables import rows

SPOON = "spoon"
"""For what no row names (common practice, no source)."""
NO_TOOL = ("drink", "supplies")


@dataclass(frozen=True)
class Standing:
    """One dish. `tool`: a word of `serving_tools.csv`, "spoon", or "" where fingers do; `trivet` where it comes hot."""

    promise: Promise
    tool: str
    trivet: bool
    listed: Listed

    @property
    def label_missing(self) -> bool:
        """Nobody has said what is in it: neither its cook nor, of a dish that is known, the usual recipe."""
        return self.listed.basis != "cook"


def table(potluck: Potluck) -> tuple[Standing, ...]:
    """Every dish in the order of the table."""
    dishes = sorted(
        (p for p in potluck.promises if p.category not in NO_TOOL), key=lambda p: CATEGORIES.index(p.category)
    )
    return tuple(Standing(p, tool_of(p), is_hot(p), listed(p)) for p in dishes)


def tools(standing: tuple[Standing, ...]) -> tuple[tuple[str, int], ...]:
    """What the table needs in all, (tool, how many) by name: one for each dish, never shared (XCON-01)."""
    return tuple(sorted(Counter(s.tool for s in standing if s.tool).items()))


def tool_of(promise: Promise) -> str:
    """By the last word of the dish that a row knows, else a spoon; a topping is spooned too."""
    known = _tools()
    dish = lookup(promise.dish).dish
    names = (promise.dish, dish.name) if dish is not None else (promise.dish,)
    words = (w for name in names for w in reversed(name.casefold().replace("-", " ").split()))
    return next((known[word] for word in words if word in known), SPOON)


def is_hot(promise: Promise) -> bool:
    """As its cook says, else as the dish usually comes."""
    if promise.serve is not None:
        return promise.serve == "hot"
    if promise.heat:
        return True
    dish = lookup(promise.dish).dish
    return dish is not None and dish.serve == "hot"


@cache
def _tools() -> dict[str, str]:
    return {row["word"]: row["tool"] for row in rows("serving_tools")}
