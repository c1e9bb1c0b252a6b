"""Everyday dishes: what a name in a chat means, and what is usual for it.

`lookup("my mom's famous slaw for 12")` finds the coleslaw; a dish nobody wrote down is guessed from its head
noun and says how sure it is. Everything here is this project's own table of common practice.
"""

from planning.dishes.catalogue import Dish, catalogue, dish_named, suggest
from planning.dishes.guess import DishMatch, is_food, lookup

__all__ = ["Dish", "DishMatch", "catalogue", "dish_named", "is_food", "lookup", "suggest"]
