"""Problem in, schedule out: list schedule at once, then local search and the constraint solver in turns.

One worker, a fixed seed and deterministic limits: the same input gives the same schedule on any
machine with the same solver version. A wall-clock limit is only a backstop.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from planning.kitchen import guide
from planning.kitchen import model as rules
from planning.kitchen.around import Around
from planning.kitchen.budget import Budget
from planning.kitchen.core import Cost, Problem, Schedule, cost, keeps_rules
from planning.kitchen.fallback import first_layout, list_schedule
from planning.kitchen.search import Search
from planning.kitchen.serial import Serial

EFFORT = 2.0
"""Deterministic units of the solver; about one to four seconds each on a common machine."""

NEAT_EFFORT = 0.05
"""The most that second wishes are given."""

FEW = 50
"""Up to so many dishes the whole kitchen is worth the solver's time: it often proves the best there is."""

ROUNDS = 200
"""Rounds of the search over orders in a project's turn."""

TURN = 2
"""Rounds of local search for each dish in a kitchen's turn: beside the solver's parts they find little."""

STARTS, ROUNDS_A_DISH = 3, 12
"""In a large kitchen: how many times local search starts over, and its rounds for each dish."""

PLACING, ORDERING = 1e-5, 1.5e-6
"""Effort for placing a task in a kitchen and in a project; measured once, so that effort means time."""


@dataclass(frozen=True)
class Solution:
    """`bound` is never above the best possible objective; `proved` when they meet."""

    schedule: Schedule
    cost: Cost
    bound: int
    proved: bool


class _Best:
    """The best schedule so far, told to whoever wants to hear."""

    def __init__(self, problem: Problem, on_found: Callable[[Schedule, Cost], None] | None) -> None:
        self.problem, self.on_found = problem, on_found
        self.rank: tuple[bool, int] | None = None
        self.schedule: Schedule
        self.cost: Cost

    def hear(self, schedule: Schedule) -> None:
        found = cost(self.problem, schedule)
        if self.rank is not None and not self.rank[0] and found.objective >= self.rank[1]:
            return
        rank = (not keeps_rules(self.problem, schedule), found.objective)
        if self.rank is None or rank < self.rank:
            self.rank, self.schedule, self.cost = rank, schedule, found
            if self.on_found is not None:
                self.on_found(schedule, found)

    @property
    def valid(self) -> bool:
        return self.rank is not None and not self.rank[0]


def solve(
    problem: Problem,
    *,
    effort: float = EFFORT,
    seed: int = 0,
    seconds: float | None = None,
    neat: bool = True,
    lists: int | None = None,
    on_found: Callable[[Schedule, Cost], None] | None = None,
    clock: Callable[[], float] | None = None,
) -> Solution:
    """The best schedule found within the effort. Always answers; `effort` 0 is the list schedule alone.

    `neat` spends part of the effort on the second wishes (few set-points, few hands, known times
    kept), at no cost to the objective. `lists` bounds the work without effort. `on_found` hears of
    every better schedule. `clock` lets `seconds` be kept exactly.
    """
    best = _Best(problem, on_found)
    if effort <= 0:
        best.hear(list_schedule(problem, lists)[0])
        return Solution(best.schedule, best.cost, 0, best.valid and best.cost.objective == 0)
    budget = Budget(effort, seconds, clock, seed)
    search = first_layout(problem, seed, best.hear)
    bound = _project(problem, budget, best) if search is None else _kitchen(problem, search, budget, best)
    bound = min(bound, best.cost.objective)
    proved = best.valid and bound >= best.cost.objective
    if neat and best.valid and search is not None:
        _neat(problem, budget, best, search)
    return Solution(best.schedule, best.cost, bound, proved)


def _kitchen(problem: Problem, search: Search, budget: Budget, best: _Best) -> int:
    """Local search, the whole kitchen and parts of it in turns, each longer than before; the bound reached."""
    budget.watch(search, PLACING)
    best.hear(search.schedule())
    few = len(search.chains) <= FEW
    rounds = TURN * len(search.chains)
    if few:
        search.improve(rounds, budget.over, best.hear)
    else:
        _from_several(search, budget, best)
    bound = search.floor
    if (best.valid and best.cost.objective <= bound) or budget.over():
        return bound
    from ortools.sat.python import cp_model

    whole = _Whole(cp_model, problem, budget, best)
    around = Around(cp_model, whole.model, search, budget)
    most, tries, linear = 0.05, 6 if few else 24, True
    while not budget.over():
        if few or not best.valid:
            bound = max(bound, whole.improve(most, linear=linear))
            if not best.valid:
                return bound
            if best.cost.objective < search.total():
                search.load(best.schedule)
        if best.cost.objective <= bound:
            return bound
        around.improve(tries, best.hear)
        search.improve(rounds, budget.over, best.hear)
        if best.cost.objective <= bound:
            return bound
        # What the linear relaxation proves it proves at once; what is left wants one long search without.
        most, tries, linear = most * 10, tries * 2 if few else tries, False
    return bound


def _from_several(search: Search, budget: Budget, best: _Best) -> None:
    """Local search from the same layout several times, as chance decides a lot; on from the cheapest."""
    first = search.state()
    found: list[tuple[int, int, int, Any]] = []
    for _ in range(STARTS):
        search.restore(first)
        reached = search.improve(ROUNDS_A_DISH * len(search.chains), budget.over, best.hear)
        found.append((len(search.forced), reached, len(found), search.state()))
    search.restore(min(found)[3])


def _project(problem: Problem, budget: Budget, best: _Best) -> int:
    """Orders and the constraint solver in turns, each longer than before; the bound reached."""
    serial = Serial(problem, budget.seed)
    budget.watch(serial, ORDERING)
    serial.begin()
    assert serial.best is not None
    best.hear(serial.best[0])
    serial.improve(ROUNDS, budget.over)
    best.hear(serial.best[0])
    bound = serial.floor
    if (best.valid and best.cost.objective <= bound) or budget.over():
        return bound
    from ortools.sat.python import cp_model

    whole = _Whole(cp_model, problem, budget, best)
    most, rounds = 0.3, 4 * ROUNDS
    while not budget.over():
        bound = max(bound, whole.improve(most))
        if not best.valid or best.cost.objective <= bound:
            return bound
        serial.improve(rounds, budget.over)
        best.hear(serial.best[0])
        most, rounds = 2 * most, 2 * rounds
    return bound


class _Whole:
    """The model of the whole problem, solved again with more time whenever a better schedule cuts it."""

    def __init__(self, cp_model: Any, problem: Problem, budget: Budget, best: _Best) -> None:
        self.cp_model, self.budget, self.best = cp_model, budget, best
        self.model = rules.build(cp_model, problem)

    def improve(self, most: float, *, linear: bool = False) -> int:
        """A cheaper schedule than the best, or that there is none; the bound reached."""
        m, best = self.model, self.best
        model = m.model
        if best.valid and m.terms:
            guide.hint(m, best.schedule)
            model = m.model.clone()
            model.add(sum(m.terms) <= best.cost.objective - 1)
        heard = _callback(self.cp_model, m, best.hear)
        solver, status = self.budget.run(self.cp_model, model, most, heard, linear=linear)
        if status == self.cp_model.INFEASIBLE:
            return best.cost.objective if best.valid else 0
        if status == self.cp_model.OPTIMAL:
            best.hear(guide.read(m, solver.value))
            proven: int = round(solver.objective_value)
            return proven
        if status == self.cp_model.FEASIBLE:
            best.hear(guide.read(m, solver.value))
        return max(0, int(solver.best_objective_bound - 1e-6))


def _callback(cp_model: Any, m: rules.Model, hear: Callable[[Schedule], None]) -> Any:
    class Heard(cp_model.CpSolverSolutionCallback):  # type: ignore[misc]
        def on_solution_callback(self) -> None:
            hear(guide.read(m, self.value))

    return Heard()


def _neat(problem: Problem, budget: Budget, best: _Best, search: Search) -> None:
    """The second wishes, at the objective reached."""
    if search.total() == best.cost.objective and not search.forced:
        search.settle()
        if cost(problem, settled := search.schedule()).objective <= best.cost.objective:
            best.schedule = settled
    if len(search.chains) > FEW:
        return
    from ortools.sat.python import cp_model

    m = rules.build(cp_model, problem)
    guide.tidy(m, best.cost)
    guide.hint(m, best.schedule)
    own = Budget(min(budget.effort / 10, NEAT_EFFORT), budget.seconds, seed=budget.seed)
    solver, status = own.run(cp_model, m.model, own.effort)
    if status in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        found = guide.read(m, solver.value)
        if cost(problem, found).objective <= best.cost.objective:
            best.schedule, best.cost = found, cost(problem, found)
