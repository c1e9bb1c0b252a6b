"""The whole plan for 60 guests and 40 promises, with the solvers and without their time."""

from __future__ import annotations

import statistics

from planning.plan import EFFORT, plan
from tests.bench.potlucks import NOW, supper
from tests.bench.timing import line, quickest


async def run(rounds: int = 3) -> list[str]:
    """The lines to print. At effort 0 the solvers are left out: greedy asks, a greedy kitchen."""
    lines = ["The whole plan (milliseconds; median and slowest of five potlucks)"]
    lines.append(line("guests, promises", "no solvers", "slowest", "with them", "slowest"))
    for guests, promises in ((24, 12), (60, 40), (200, 100)):
        found = []
        for seed in range(5):
            potluck = supper(guests, promises, seed)
            plan(potluck, NOW, effort=0)
            (without,) = quickest((lambda p=potluck: plan(p, NOW, effort=0),), max(3, rounds))
            (whole,) = quickest((lambda p=potluck: plan(p, NOW, effort=EFFORT),), 1)
            found.append((without * 1000, whole * 1000))
        bare, whole_ms = zip(*found, strict=True)
        figures = (statistics.median(bare), max(bare), statistics.median(whole_ms), max(whole_ms))
        lines.append(line(f"{guests}, {promises}", *(f"{figure:.0f}" for figure in figures)))
    return lines
