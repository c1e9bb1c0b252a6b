"""Why a timeline breaks a rule, and the cheapest way out of it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from planning.kitchen.problem import KitchenProblem
from planning.kitchen.result import Conflict, DishTimes
from planning.kitchen.solve import Solution
from planning.kitchen.steps import Checked, say_conflict
from planning.potluck import Potluck


def explain(potluck: Potluck, checked: Sequence[Checked], now: datetime, made: KitchenProblem, solution: Solution,
            dishes: Sequence[DishTimes], *, effort: float, seed: int) -> tuple[Conflict, ...]:  # fmt: skip
    """One conflict for each dish that comes late or waits too long off heat."""
    found: list[Conflict] = []
    for dish in dishes:
        name = made.checked[dish.promise].promise.dish
        if dish.late_min:
            found.append(say_conflict((dish.promise,), "late", "later", dish=name, minutes=dish.late_min))
        elif dish.unsafe_min:
            found.append(say_conflict((dish.promise,), "off-heat", "cooler", dish=name, minutes=dish.off_heat_min))
    return tuple(found)
