"""Who is asked for what: level by level, beside HiGHS cold on the same levels and the greedy answer.

The last table lets one of those asked drop out, many times over, and counts how many of the other asks move.
"""

from __future__ import annotations

import random
import statistics
import time
from dataclasses import replace

import numpy as np
import scipy.optimize
import scipy.sparse
from ortools.sat.python import cp_model  # noqa: F401 - loaded here, so that its loading is not measured

from planning.asks import Problem, Solution, greedy, measure, solve
from planning.asks.problem import LEVELS
from tests.bench.potlucks import asking
from tests.bench.timing import line

HIGHS_S = 4.0
"""Seconds HiGHS gets for each level."""

NAMED = ("shortage", "diets", "heaviest", "history", "count", "reluctance")
"""The levels of a first plan, in which nobody can move."""


def with_highs(problem: Problem) -> tuple[int, ...]:
    """The vector by SciPy's MILP solver, cold on every level; a level without an answer in time ends it early.

    Columns: x for each person and template, shortages of servings and dishes, people left without, the heaviest burden.
    """
    pairs = [(person, t) for person in problem.people for t in sorted(person.can)]
    short, dishes, without = len(pairs), len(pairs) + len(problem.gaps), len(pairs) + 2 * len(problem.gaps)
    heaviest = without + len(problem.profiles)
    rows: list[tuple[dict[int, float], float]] = []  # each: sum of columns <= limit
    for n, gap in enumerate(problem.gaps):
        mine = [(k, problem.templates[t].servings) for k, (_, t) in enumerate(pairs)
                if problem.templates[t].category == gap.category]  # fmt: skip
        rows.append(({short + n: -1.0, **{k: -float(servings) for k, servings in mine}}, -gap.servings))
        rows.append(({dishes + n: -1.0, **{k: -1.0 for k, _ in mine}}, -gap.dishes))
    for p in range(len(problem.profiles)):
        fits = {k: -1.0 for k, (_, t) in enumerate(pairs) if p in problem.templates[t].fits}
        rows.append(({without + p: -1.0, **fits}, -1.0))
    rows += [({heaviest: -1.0, k: float(problem.burden(person, t))}, 0.0) for k, (person, t) in enumerate(pairs)]
    for person in problem.people:
        rows.append(({k: 1.0 for k, (who, _) in enumerate(pairs) if who is person}, 1.0))
    for t, template in enumerate(problem.templates):
        rows.append(({k: 1.0 for k, (_, other) in enumerate(pairs) if other == t}, template.most))
    levels: tuple[dict[int, float], ...] = (
        {at + n: float(gap.weight) for n, gap in enumerate(problem.gaps) for at in (short, dishes)},
        {without + p: float(profile.people) for p, profile in enumerate(problem.profiles)},
        {heaviest: 1.0},
        {k: float(problem.templates[t].effort * person.load) for k, (person, t) in enumerate(pairs)},
        dict.fromkeys(range(len(pairs)), 1.0),
        {k: float(10 - person.can[t]) for k, (person, t) in enumerate(pairs)},
    )
    highest = np.concatenate((np.ones(len(pairs)), np.full(2 * len(problem.gaps), np.inf),
                              np.ones(len(problem.profiles)), [np.inf]))  # fmt: skip
    values: list[int] = []
    for level in levels:
        matrix = scipy.sparse.lil_array((len(rows), heaviest + 1))
        for at, (columns, _) in enumerate(rows):
            for column, factor in columns.items():
                matrix[at, column] = factor
        cost = np.zeros(heaviest + 1)
        cost[list(level)] = list(level.values())
        found = scipy.optimize.milp(
            cost,
            constraints=scipy.optimize.LinearConstraint(matrix.tocsr(), -np.inf, [limit for _, limit in rows]),
            integrality=np.ones(heaviest + 1),
            bounds=scipy.optimize.Bounds(0, highest),
            options={"time_limit": HIGHS_S, "mip_rel_gap": 0},
        )
        if found.x is None:
            break
        values.append(round(found.fun))
        rows.append((level, values[-1]))
    return tuple(values)


def first_plan(vector: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(value for name, value in zip(LEVELS, vector, strict=True) if name in NAMED)


def shown(vector: tuple[int, ...]) -> str:
    return " ".join(map(str, vector)) or "-"


def after_one_drop_out(problem: Problem, first: Solution, gone: str) -> float:
    """The share of the other asks which move when one person leaves and everything is worked out again."""
    others = {who: t for who, t in first.chosen.items() if who != gone}
    left = replace(problem, people=tuple(p for p in problem.people if p.id != gone), asked=others)
    then = solve(left, effort=0.3).chosen
    return sum(then.get(who) != t for who, t in others.items()) / max(1, len(others))


def drop_outs(people: int, cases: int) -> list[float]:
    found = []
    for seed in range(cases):
        problem = asking(people, 1000 + seed, tight=seed % 2 == 1)
        first = solve(problem, effort=0.3)
        found.append(after_one_drop_out(problem, first, random.Random(seed).choice(sorted(first.chosen))))
    return found


async def run(rounds: int = 3) -> list[str]:
    """The lines to print."""
    lines = [f"Asks, all levels ({', '.join(NAMED)}), seconds; HiGHS gets {HIGHS_S:.0f} s a level"]
    lines.append(line("people", "pairs", "ours", "proved", "HiGHS", "greedy"))
    for people, tight in ((30, False), (100, False), (300, False), (300, True)):
        for seed in range(1, rounds + 1 if people < 300 else 2):
            problem = asking(people, seed, tight)
            began = time.perf_counter()
            ours = solve(problem)
            ours_s = time.perf_counter() - began
            began = time.perf_counter()
            theirs = with_highs(problem)
            highs_s = time.perf_counter() - began
            began = time.perf_counter()
            quick = greedy(problem)
            greedy_s = time.perf_counter() - began
            proved = next((name for name, good in zip(LEVELS, ours.proved, strict=True) if not good), "all")
            pairs = sum(len(person.can) for person in problem.people)
            name = f"{people}{' tight' if tight else ''}, seed {seed}"
            to = proved if proved == "all" else f"to {proved}"
            lines.append(line(name, f"{pairs}", f"{ours_s:.2f}", to, f"{highs_s:.1f}", f"{greedy_s:.3f}"))
            vectors = (first_plan(ours.vector), theirs, first_plan(measure(problem, quick)))
            lines.append("  ours {} | HiGHS {} | greedy {}".format(*map(shown, vectors)))
    for people, cases in ((30, 20 * rounds), (100, 4 * rounds)):
        moved = drop_outs(people, cases)
        lines.append(
            f"One drop-out of {people}, {cases} cases, half of them tight: {100 * statistics.mean(moved):.1f} % of the"
            f" other asks move, {100 * max(moved):.1f} % at most; {sum(share > 0.1 for share in moved)} cases above"
            " one in ten"
        )
    return lines
