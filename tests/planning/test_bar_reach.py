"""Which toppings open the most combinations; the outside checks are trying every set, and SciPy's MILP solver."""

from __future__ import annotations

import itertools
import random
import subprocess
import sys

import numpy as np
import pytest
import scipy.optimize
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.bar import best_set

wanted = st.lists(
    st.tuples(st.frozensets(st.sampled_from("abcdefghij"), min_size=1, max_size=4), st.floats(0, 1)), max_size=14
)


def best_by_trying_all(
    made: list[tuple[frozenset[str], float]], budget: int, liking: dict[str, float]
) -> tuple[int, int, int, int]:
    """(combinations, minus toppings, liking of combinations, of toppings) of the best set, by trying every set."""
    every = itertools.chain.from_iterable(itertools.combinations(sorted(liking), k) for k in range(budget + 1))
    return max(worth(made, frozenset(some), liking) for some in every)


def worth(
    made: list[tuple[frozenset[str], float]], found: frozenset[str], liking: dict[str, float]
) -> tuple[int, int, int, int]:
    alike: dict[frozenset[str], list[float]] = {}
    for missing, weight in made:
        if missing and missing <= found:
            alike.setdefault(missing, []).append(weight)
    liked = sum(round(100 * sum(sorted(weights))) for weights in alike.values())
    return (
        sum(len(weights) for weights in alike.values()),
        -len(found),
        liked,
        sum(round(100 * liking[name]) for name in found),
    )


LETTERS = dict(zip("abcdefghij", (0.9, 0.9, 0.7, 0.5, 0.5, 0.3, 0.3, 0.2, 0.1, 0.1), strict=True))


@settings(max_examples=200, deadline=None)
@given(wanted, st.integers(0, 5))
def test_the_best_set_is_as_good_as_trying_every_set(made: list[tuple[frozenset[str], float]], budget: int) -> None:
    found = best_set(made, budget, LETTERS)

    assert len(found) <= budget
    assert worth(made, found, LETTERS) == best_by_trying_all(made, budget, LETTERS)


@settings(max_examples=50, deadline=None)
@given(wanted, st.integers(0, 5))
def test_without_ties_as_many_combinations_are_opened(made: list[tuple[frozenset[str], float]], budget: int) -> None:
    with_ties = worth(made, best_set(made, budget, LETTERS), LETTERS)

    assert worth(made, best_set(made, budget, ties=False), LETTERS)[0] == with_ties[0]


@settings(max_examples=50, deadline=None)
@given(wanted, st.integers(0, 5), st.randoms())
def test_the_order_of_combinations_never_matters(
    made: list[tuple[frozenset[str], float]], budget: int, chance: random.Random
) -> None:
    shuffled = made.copy()
    chance.shuffle(shuffled)

    assert best_set(shuffled, budget, LETTERS) == best_set(made, budget, LETTERS)


def large_bar(seed: int, toppings: int, combinations: int) -> list[tuple[frozenset[str], float]]:
    chance = random.Random(seed)
    names = [f"t{n:02}" for n in range(toppings)]
    weights = [1 / (n + 1) ** 0.6 for n in range(toppings)]
    return [
        (frozenset(chance.choices(names, weights, k=chance.randint(2, 5))), chance.random())
        for _ in range(combinations)
    ]


@pytest.mark.parametrize("seed", range(3))
def test_large_bars_agree_with_another_solver(seed: int) -> None:
    # The outside check: SciPy's MILP solver (HiGHS) on max sum z_k, z_k <= y_t, sum y <= budget.
    made, budget = large_bar(seed, 40, 120), 6
    names = sorted({t for missing, _ in made for t in missing})
    y, z = len(names), len(made)
    rows = np.zeros((sum(len(missing) for missing, _ in made) + 1, y + z))
    rows[-1, :y] = 1
    for row, (k, t) in enumerate((k, t) for k, (missing, _) in enumerate(made) for t in sorted(missing)):
        rows[row, y + k], rows[row, names.index(t)] = 1, -1
    limits = np.zeros(len(rows))
    limits[-1] = budget
    least = scipy.optimize.milp(
        np.concatenate((np.zeros(y), -np.ones(z))),
        constraints=scipy.optimize.LinearConstraint(rows, -np.inf, limits),
        integrality=np.ones(y + z),
        bounds=(0, 1),
    )

    found = best_set(made, budget)

    assert sum(missing <= found for missing, _ in made) == round(-least.fun)


def test_a_large_bar_is_solved_the_same_way_twice() -> None:
    made = large_bar(7, 60, 200)

    assert best_set(made, 8) == best_set(made, 8)


def test_opening_every_combination_takes_no_topping_more_than_needed() -> None:
    made = large_bar(3, 30, 40)

    assert best_set(made, 99) == frozenset().union(*(missing for missing, _ in made))


def test_the_bar_never_loads_the_solver() -> None:
    code = """if True:
        import sys
        from planning.bar import best_set
        best_set([(frozenset("ab"), 1.0)] * 3, 2)
        sys.exit("ortools" in sys.modules)"""

    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
