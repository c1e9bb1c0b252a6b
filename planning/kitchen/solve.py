"""Problem in, schedule out: list schedule at once, then the constraint solver from there.

One worker, a fixed seed and a deterministic limit: the same input gives the same schedule on any
machine with the same solver version. A wall-clock limit is only a backstop.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from planning.kitchen import model as rules
from planning.kitchen.core import Cost, Placed, Problem, Schedule, cost, keeps_rules
from planning.kitchen.fallback import list_schedule

EFFORT = 2.0
"""Deterministic units of the solver; about one to four seconds each on a common machine."""


NEAT_EFFORT = 0.05
"""The most that second wishes are given."""


@dataclass(frozen=True)
class Solution:
    """`bound` is never above the best possible objective; `proved` when they meet."""

    schedule: Schedule
    cost: Cost
    bound: int
    proved: bool


def solve(
    problem: Problem,
    *,
    effort: float = EFFORT,
    seed: int = 0,
    seconds: float | None = None,
    neat: bool = True,
    lists: int | None = None,
    on_found: Callable[[Schedule, Cost], None] | None = None,
) -> Solution:
    """The best schedule found within the effort. Always answers; `effort` 0 is the list schedule alone.

    `neat` spends part of the effort on the second wishes (few set-points, few hands, known times
    kept) once the objective is proved. At most `lists` list schedules are made first. `on_found`
    hears of every better schedule.
    """
    first, reached = list_schedule(problem, lists)
    if on_found is not None:
        on_found(first, reached)
    valid = keeps_rules(problem, first)
    if effort <= 0:
        return Solution(first, reached, 0, valid and reached.objective == 0)
    from ortools.sat.python import cp_model

    best, bound = first, 0
    if reached.objective > 0 or not valid:
        m = rules.build(cp_model, problem)
        rules.hint(m, first)
        found, at_least = _run(cp_model, m, effort, seed, seconds, on_found)
        bound = max(bound, at_least)
        if found is not None and (not valid or cost(problem, found).objective < reached.objective):
            best, reached, valid = found, cost(problem, found), True
    bound = min(bound, reached.objective)
    proved = valid and bound >= reached.objective
    if neat and proved and problem.late_ends:
        m = rules.build(cp_model, problem)
        rules.tidy(m, reached)
        rules.hint(m, best)
        found, _ = _run(cp_model, m, min(effort / 10, NEAT_EFFORT), seed, seconds, None)
        if found is not None and cost(problem, found).objective <= reached.objective:
            best = found
    return Solution(best, cost(problem, best), bound, proved)


def _run(
    cp_model: Any,
    m: rules.Model,
    effort: float,
    seed: int,
    seconds: float | None,
    on_found: Callable[[Schedule, Cost], None] | None,
) -> tuple[Schedule | None, int]:
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = seed
    solver.parameters.max_deterministic_time = effort
    if seconds is not None:
        solver.parameters.max_time_in_seconds = seconds
    callback: Any = None
    if on_found is not None:
        hear = on_found

        class Heard(cp_model.CpSolverSolutionCallback):  # type: ignore[misc]
            def on_solution_callback(self) -> None:
                schedule = _read(m, self.value)
                hear(schedule, cost(m.problem, schedule))

        callback = Heard()
    status = solver.solve(m.model, callback)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None, 0
    bound = round(solver.objective_value) if status == cp_model.OPTIMAL else int(solver.best_objective_bound - 1e-6)
    return _read(m, solver.value), max(0, bound)


def _read(m: rules.Model, value: Callable[[Any], int]) -> Schedule:
    placed = {
        name: Placed(value(start), next(n for n, literal in enumerate(m.chosen[name]) if value(literal)))
        for name, start in m.start.items()
    }
    served = {name: value(v) for name, v in m.served.items()}
    held = {
        dish: number for dish, literals in m.held.items() for number, literal in enumerate(literals) if value(literal)
    }
    # Serving no later than needed: the solver's own variable need not be tight when nothing is proved.
    schedule = Schedule(placed, served, held)
    tight = {c.id: c.due for c in m.problem.courses}
    for dish in m.problem.dishes:
        tight[dish.course] = max(tight[dish.course], schedule.end(m.problem, dish.last))
    return Schedule(placed, tight, held)
