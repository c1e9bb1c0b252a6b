"""List scheduling: a timeline that always comes, at once, and where every search begins.

Dishes are placed one after the other where each is ready latest, in several orders; the cheapest
kitchen is then upset and mended for a few rounds. The same input gives the same schedule.
"""

from __future__ import annotations

from collections.abc import Callable

from planning.kitchen.chains import chains_of
from planning.kitchen.core import Cost, Problem, Schedule, cost
from planning.kitchen.search import Search
from planning.kitchen.serial import serial_schedule

ROUNDS_A_LIST = 8
"""Rounds of mending that take about as long as one more list."""

USUAL_LISTS = 30


def list_schedule(problem: Problem, most: int | None = None) -> tuple[Schedule, Cost]:
    """The cheapest of several list schedules that keep every rule.

    Always answers: where none keeps every rule (a step that fits nowhere), the cheapest of those that
    do not; `core.keeps_rules` tells. `most` bounds the work, counted in lists.
    """
    search = first_layout(problem)
    if search is None:
        return serial_schedule(problem)
    search.improve(ROUNDS_A_LIST * (USUAL_LISTS if most is None else most))
    search.settle()
    schedule = search.schedule()
    return schedule, cost(problem, schedule)


def first_layout(problem: Problem, seed: int = 0, heard: Callable[[Schedule], None] | None = None) -> Search | None:
    """The cheapest of a few orders, placed; None for what is not made of dishes. `heard` hears of the first."""
    chains = chains_of(problem) if problem.late_ends else None
    if chains is None:
        return None
    search = Search(problem, chains, seed)
    empty = search.state()
    best: tuple[int, int] | None = None
    kept = empty
    for order in _orders(search):
        search.restore(empty)
        search.place(order)
        rank = (len(search.forced), search.total())
        if best is None or rank < best:
            if best is None and heard is not None:
                heard(search.schedule())
            best, kept = rank, search.state()
        if rank <= (0, search.floor):
            break
    search.restore(kept)
    return search


def _orders(search: Search) -> list[list[int]]:
    """Orders worth trying: the least choice first, then by work, by how long a dish may wait, by arrival."""
    chains = search.chains
    names = range(len(chains))
    narrow = [min((a.bit_count() for some in c.allowed for a in some), default=0) for c in chains]
    begun = [any(t.only is not None for t in c.tasks) for c in chains]
    limit = [c.dish.limit_min if c.dish is not None and c.dish.limit_min is not None else 10_000 for c in chains]
    weight = [c.dish.wait_weight if c.dish is not None else 0 for c in chains]
    keys: list[Callable[[int], tuple[int, ...]]] = [
        lambda n: (-search.size(n),),
        lambda n: (limit[n], -search.size(n)),
        lambda n: (narrow[n], -search.size(n)),
        lambda n: (-weight[n], limit[n], -search.size(n)),
    ]
    return [sorted(names, key=lambda n, key=key: (not begun[n], key(n), n)) for key in keys]  # type: ignore[misc]
