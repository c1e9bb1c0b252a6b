"""The balance of the menu, and what a promise brings to it."""

from planning.menu.balance import (
    MenuRow,
    Needed,
    Target,
    bar_category,
    doubles,
    menu,
    most_needed,
    targets,
    tiny,
)
from planning.menu.servings import MOST_SERVINGS, USUAL_YIELD, servings_in, servings_of
from planning.menu.supplies import SETS, kinds_in, kinds_missing

__all__ = [
    "MOST_SERVINGS",
    "SETS",
    "USUAL_YIELD",
    "MenuRow",
    "Needed",
    "Target",
    "bar_category",
    "doubles",
    "kinds_in",
    "kinds_missing",
    "menu",
    "most_needed",
    "servings_in",
    "servings_of",
    "targets",
    "tiny",
]
