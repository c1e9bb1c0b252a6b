"""The exact headcount beside sampling it 20,000 times, and with parties one by one."""

from __future__ import annotations

import statistics

import numpy as np

from planning.headcount import Headcount, headcount, odds
from planning.potluck import Potluck
from tests.bench.potlucks import START, crowd
from tests.bench.timing import line, quickest

DRAWS = 20_000


def sampled(potluck: Potluck, seed: int) -> int:
    """The 90 % quantile of the people in so many draws, numpy throughout."""
    now = odds(potluck)
    chances = np.array([now.of(guest.answer) for guest in potluck.guests])
    sizes = np.array([guest.party.total for guest in potluck.guests])
    draws = np.random.default_rng(seed).random((DRAWS, len(sizes))) < chances
    return int(np.quantile(draws @ sizes, 0.9, method="inverted_cdf"))


def one_by_one(potluck: Potluck) -> Headcount | int:
    """The 90 % quantile by one convolution a party, in the order of the list."""
    now = odds(potluck)
    pmf = np.ones(1)
    for guest in potluck.guests:
        chance, size = now.of(guest.answer), guest.party.total
        step = np.zeros(size + 1)
        step[0] = 1 - chance
        step[-1] += chance
        pmf = np.convolve(pmf, step)
    return int(np.searchsorted(np.cumsum(pmf), 0.9))


async def run(rounds: int = 3) -> list[str]:
    """The lines to print."""
    lines = ["Headcount, exact, people and eaters (milliseconds; quickest, median of five crowds)"]
    lines.append(line("parties", "ours", "20,000 draws", "one by one", "draws/ours", "90 % apart"))
    for parties in (30, 100, 500, 3000):
        found = []
        apart = 0
        for seed in range(5):
            potluck = Potluck("p", START, "America/Chicago", guests=crowd(parties, seed))
            calls = (
                lambda p=potluck: headcount(p),
                lambda p=potluck, s=seed: sampled(p, s),
                lambda p=potluck: one_by_one(p),
            )
            found.append(quickest(calls, max(5, rounds)))
            apart = max(apart, abs(headcount(potluck).high - sampled(potluck, seed)))
        ours, draws, single = (statistics.median(column) * 1000 for column in zip(*found, strict=True))
        lines.append(
            line(f"{parties}", f"{ours:.2f}", f"{draws:.1f}", f"{single:.2f}", f"{draws / ours:.0f}x", f"{apart}")
        )
    lines.append(
        "one by one: people only; 90 % apart: people between the exact 90 % quantile and the sampled one, at most"
    )
    return lines
