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
)
from planning.menu.servings import MOST_SERVINGS, USUAL_YIELD, servings_in, servings_of

__all__ = [
    "MOST_SERVINGS",
    "USUAL_YIELD",
    "MenuRow",
    "Needed",
    "Target",
    "bar_category",
    "doubles",
    "menu",
    "most_needed",
    "servings_in",
    "servings_of",
    "targets",
]
