"""A dish's steps as a chain, made ready for the grid; where a chain stands, and what that costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from planning.kitchen.core import Dish, Lag, Problem, Task
from planning.kitchen.grid import Grid, Way


@dataclass(frozen=True)
class Stand:
    """Where a dish stands: a way and a start for each of its tasks, and how it is held, if it is."""

    ways: tuple[Way, ...]
    starts: tuple[int, ...]
    end: int
    spare_min: int
    off_slots: int
    """Slots from the end of its heat to the end of its last task."""
    hold: int | None = None


@dataclass(frozen=True)
class Chain:
    """A dish's tasks in order, made ready. `dish` is None for tasks nobody waits for."""

    dish: Dish | None
    tasks: tuple[Task, ...]
    ways: tuple[tuple[Way, ...], ...]
    allowed: tuple[tuple[int, ...], ...]
    lags: tuple[Lag, ...]
    heat: int
    """The number of the task that ends its heat."""
    holds: tuple[tuple[Way, int | None], ...]
    must: bool
    apart: tuple[tuple[tuple[int, ...], ...], ...]
    """For each lag, the slots it needs at least between each mode before and each mode after."""
    tangled: bool
    """Whether tasks that do not follow each other directly may need time between them in an oven."""


def chains_of(problem: Problem) -> list[list[str]] | None:
    """The tasks as chains; None where some task waits for two, or two for it."""
    if any(len(problem.after[t.id]) > 1 or len(problem.before[t.id]) > 1 for t in problem.tasks):
        return None
    found = []
    for task in problem.tasks:
        if problem.before[task.id]:
            continue
        chain = [task.id]
        while problem.after[chain[-1]]:
            chain.append(problem.after[chain[-1]][0].after)
        found.append(chain)
    in_chains = sum(map(len, found)) == len(problem.tasks)
    ends = {chain[-1] for chain in found}
    return found if in_chains and all(d.last in ends for d in problem.dishes) else None


def make_ready(grid: Grid, names: Sequence[str]) -> Chain:
    """A chain with its modes compiled for the grid."""
    problem = grid.problem
    tasks = tuple(problem.task[n] for n in names)
    ways = tuple(grid.ways(t) for t in tasks)
    lags = tuple(problem.after[n][0] for n in names[:-1])
    allowed = []
    for task, some in zip(tasks, ways, strict=True):
        whole = grid.starts(task)
        until = task.latest_end
        allowed.append(tuple(whole if until is None else whole & grid.span(0, until - w.mode.duration) for w in some))
    apart = tuple(
        tuple(tuple(max(lag.least, problem.gap(a.mode, b.mode)) for b in ways[k + 1]) for a in ways[k])
        for k, lag in enumerate(lags)
    )
    tangled = any(
        problem.gap(a.mode, b.mode)
        for k in range(len(tasks)) for j in range(k + 2, len(tasks)) for a in ways[k] for b in ways[j]
    )  # fmt: skip
    dish = problem.dish_of.get(names[-1])
    holds: tuple[tuple[Way, int | None], ...] = ()
    must = False
    heat = len(names) - 1
    if dish is not None:
        heat = names.index(dish.off_heat) if dish.off_heat in names else heat
        if dish.hold is not None and dish.hold.after == names[-1]:
            holds = tuple((grid.way(m, n, length=1), goes) for n, (m, goes) in enumerate(dish.hold.modes))
            must = dish.hold.must
    return Chain(dish, tasks, ways, tuple(allowed), lags, heat, holds, must, apart, tangled)


def minutes_unsafe(dish: Dish, stand: Stand, served: int, slot: int) -> int:
    """Minutes off heat beyond the limit that counts, held or not."""
    limit = dish.limit_min
    if dish.hold is not None and (dish.hold.must or stand.hold is not None):
        limit = dish.hold.limit_min if stand.hold is not None else limit
    if limit is None:
        return 0
    return max(0, (served - stand.end + stand.off_slots) * slot + stand.spare_min - limit)


def worth(dish: Dish, stand: Stand, served: int, slot: int) -> int:
    """What the dish itself costs where it stands: minutes waited and unsafe, weighted."""
    waited = (served - stand.end) * slot * dish.wait_weight
    return waited + minutes_unsafe(dish, stand, served, slot) * dish.unsafe_weight


def least_worth(chain: Chain, ready: int, served: int, slot: int) -> int:
    """The dish costs no less when it is ready at `ready` or before and served at `served`."""
    dish = chain.dish
    if dish is None:
        return 0
    waiting = (served - ready) * slot
    limits = [dish.limit_min] if dish.hold is None else [dish.limit_min, dish.hold.limit_min]
    over = 0 if None in limits else max(0, waiting - max(limit for limit in limits if limit is not None))
    return waiting * dish.wait_weight + over * dish.unsafe_weight
