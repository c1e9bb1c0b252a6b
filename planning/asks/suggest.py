"""From a potluck to its asks: builds the problem, solves it, and puts the three ways beside each gap."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from planning.asks.build import MenuLine, problem_of
from planning.asks.solve import solve
from planning.asks.ways import Ask, chosen_asks, other_ways
from planning.diets import DietRow
from planning.potluck import Potluck


def asks(
    potluck: Potluck,
    menu_rows: Sequence[MenuLine],
    diet_rows: Sequence[DietRow],
    now: datetime,
    effort: float = 1.0,
    seed: int = 0,
    seconds: float | None = None,
) -> tuple[Ask, ...]:
    """Who to ask for what, then the other ways for each gap; empty when nothing is short.

    The same arguments give the same answer; `effort` 0 is the quick greedy one. A gap nobody can be asked for is
    bought, within the budget; the budget counts only what is bought or cooked by the host.
    """
    built = problem_of(potluck, menu_rows, diet_rows, now)
    solution = solve(built.problem, effort, seed, seconds)
    chosen = chosen_asks(potluck, built, solution)
    return (*chosen, *other_ways(potluck, built, chosen, now))
