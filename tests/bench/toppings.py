"""The toppings that open most combinations, beside two solvers and the naive one-at-a-time."""

from __future__ import annotations

import statistics
from collections.abc import Sequence
from typing import Any

import numpy as np
import scipy.optimize
from ortools.sat.python import cp_model

from planning.bar import best_set
from tests.bench.potlucks import bar
from tests.bench.timing import line, quickest

Wanted = Sequence[tuple[frozenset[str], float]]
BUDGETS = (3, 5, 8)
SOLVER_S = 5.0
"""Seconds each solver gets for one bar."""


def opened(wanted: Wanted, have: frozenset[str]) -> int:
    return sum(missing <= have for missing, _ in wanted)


def one_at_a_time(wanted: Wanted, budget: int) -> int:
    """Always the topping that opens most now, then the one most combinations still lack."""
    names = sorted({name for missing, _ in wanted for name in missing})
    have: frozenset[str] = frozenset()
    for _ in range(budget):
        rest = [name for name in names if name not in have]
        best = max(rest, key=lambda n: (opened(wanted, have | {n}), sum(n in missing - have for missing, _ in wanted)))
        have |= {best}
    return opened(wanted, have)


def with_cp_sat(wanted: Wanted, budget: int) -> int:
    """z_k <= y_t, sum y <= budget with linearization_level 2."""
    model: Any = cp_model.CpModel()
    taken = {name: model.new_bool_var(name) for name in sorted({n for missing, _ in wanted for n in missing})}
    possible = []
    for k, (missing, _) in enumerate(wanted):
        possible.append(model.new_bool_var(f"z{k}"))
        for name in sorted(missing):
            model.add_implication(possible[-1], taken[name])
    model.add(sum(taken.values()) <= budget)
    model.maximize(sum(possible))
    solver: Any = cp_model.CpSolver()
    solver.parameters.linearization_level = 2
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = SOLVER_S
    solver.solve(model)
    return round(solver.objective_value)


def with_highs(wanted: Wanted, budget: int) -> int:
    """The same by SciPy's MILP solver, cold."""
    names = sorted({name for missing, _ in wanted for name in missing})
    y, z = len(names), len(wanted)
    rows = np.zeros((sum(len(missing) for missing, _ in wanted) + 1, y + z))
    rows[-1, :y] = 1
    pairs = ((k, t) for k, (missing, _) in enumerate(wanted) for t in sorted(missing))
    for row, (k, t) in enumerate(pairs):
        rows[row, y + k], rows[row, names.index(t)] = 1, -1
    limits = np.zeros(len(rows))
    limits[-1] = budget
    found = scipy.optimize.milp(
        np.concatenate((np.zeros(y), -np.ones(z))),
        constraints=scipy.optimize.LinearConstraint(rows, -np.inf, limits),
        integrality=np.ones(y + z),
        bounds=(0, 1),
        options={"time_limit": SOLVER_S},
    )
    return round(-found.fun)


async def run(rounds: int = 3) -> list[str]:
    """The lines to print."""
    lines = ["Toppings, 60 of them and 200 combinations, ties settled too (seconds; median and slowest of five bars)"]
    lines.append(line("bar, further toppings", "ours", "slowest", "CP-SAT", "HiGHS", "CP-SAT/ours", "naive finds"))
    for name, skew in (("some commoner", 0.6), ("all alike", 0.0)):
        for budget in BUDGETS:
            found, share = [], []
            for seed in range(5):
                wanted = bar(seed, skew=skew)
                calls = (
                    lambda w=wanted, b=budget: best_set(w, b),
                    lambda w=wanted, b=budget: with_cp_sat(w, b),
                    lambda w=wanted, b=budget: with_highs(w, b),
                )
                found.append(quickest(calls, 1))
                ours = opened(wanted, best_set(wanted, budget))
                share.append(one_at_a_time(wanted, budget) / ours)
            own, solver, highs = (statistics.median(column) for column in zip(*found, strict=True))
            slowest = max(row[0] for row in found)
            times = (f"{own:.3f}", f"{slowest:.3f}", f"{solver:.2f}", f"{highs:.2f}", f"{solver / own:.0f}x")
            lines.append(line(f"{name}, {budget}", *times, f"{100 * statistics.median(share):.0f} %"))
        curves = []
        for seed in range(5):
            wanted = bar(seed, skew=skew)
            calls = (lambda w=wanted: [best_set(w, n, ties=False) for n in range(9)],)
            curves += quickest(calls, rounds)
        lines.append(line(f"{name}, curve to 8", f"{statistics.median(curves):.3f}", f"{max(curves):.3f}"))
    lines.append(
        f"naive: one topping at a time, its share of the most combinations; solvers stop after {SOLVER_S:.0f} s"
    )
    return lines
