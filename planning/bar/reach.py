"""Which further toppings open the most combinations: exact, small and large.

The number of combinations counts first, then fewer toppings (fewer people to ask), then what eaters like.
One topping at a time is the wrong way: on tables of 60 toppings and 200 combinations it reached as little as
13 % of the best. So this is branch and bound over "asked for" and "not asked for", a hundred cases at a time.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy
    from numpy.typing import NDArray

    Floats = NDArray[numpy.float64]
    Flags = NDArray[numpy.bool_]

MOST_NODES = 100_000
"""Cases looked at, some seconds of work. Bars of 60 toppings and 200 combinations need a few hundred, 20,000 when
no topping is commoner than another; beyond it the best found so far is the answer."""

AT_ONCE = 128
"""Cases handled in one go."""

ALONE = 250_000
"""Multiplications which OpenBLAS, numpy's usual library, still does in one thread."""

Wanted = Sequence[tuple[frozenset[str], float]]
"""(toppings still missing, liking 0..1) of each combination that is not possible yet."""


def best_set(
    wanted: Wanted, budget: int, liking: Mapping[str, float] | None = None, *, ties: bool = True
) -> frozenset[str]:
    """At most `budget` (0 or more) toppings that open the most combinations; among equals see above.

    `ties` false leaves it open which of the equals is found (a little quicker).
    """
    merged = _merged(wanted, budget)
    if not merged:
        return frozenset()
    names = sorted({topping for missing in merged for topping in missing})
    question = _Question.of(merged, names, min(budget, len(names)), liking or {}, ties)
    return frozenset(name for name, taken in zip(names, _search(question), strict=True) if taken)


def _merged(wanted: Wanted, budget: int) -> dict[frozenset[str], tuple[int, int]]:
    """Missing toppings -> (combinations which lack just these, a hundred times their liking together).

    Those that lack more than the budget are left out; in an order that does not depend on the bar's.
    """
    found: dict[frozenset[str], list[float]] = {}
    for missing, weight in wanted:
        if missing and len(missing) <= budget:
            found.setdefault(missing, []).append(weight)
    liked = {missing: round(100 * sum(sorted(weights))) for missing, weights in found.items()}
    return {missing: (len(found[missing]), liked[missing]) for missing in sorted(found, key=sorted)}


@dataclass(frozen=True)
class _Question:
    """max sum worth_k z_k - sum cost_t y_t over z_k <= y_t for each t that k lacks, sum y <= budget; y, z in {0, 1}.

    `lacks[k, t]` is 1 where combination k lacks topping t. All figures are whole numbers.
    """

    lacks: Floats
    worth: Floats
    cost: Floats
    budget: int

    @classmethod
    def of(
        cls,
        merged: Mapping[frozenset[str], tuple[int, int]],
        names: Sequence[str],
        budget: int,
        liking: Mapping[str, float],
        ties: bool,
    ) -> _Question:
        """Each level outweighs all below it: liking of toppings < of combinations < one topping < one combination."""
        import numpy as np

        lacks = np.array([[float(name in missing) for name in names] for missing in merged])
        count, liked = (np.array(column, dtype=float) for column in zip(*merged.values(), strict=True))
        if not ties:
            return cls(lacks, count, np.zeros(len(names)), budget)
        likes = np.array([round(100 * min(1.0, liking.get(name, 0.3))) for name in names], dtype=float)
        second = 1.0 + 100 * budget
        third = second + second * liked.sum()
        fourth = 1 + third * budget + second * liked.sum()
        return cls(lacks, fourth * count + second * liked, third - likes, budget)

    def value(self, taken: Floats) -> tuple[Floats, Floats]:
        """(the value of each row of toppings, the row without toppings that help no combination)."""
        whole = (_times(taken, self.lacks.T) > self.lacks.sum(1) - 0.5).astype(float)
        needed = taken * (_times(whole, self.lacks) > 0)
        return whole @ self.worth - needed @ self.cost, needed


def _times(many: Floats, by: Floats) -> Floats:
    """The matrix product, a few rows at a time: of larger ones numpy makes threads, which wait for each other for
    longer than the product takes when the machine has other work."""
    import numpy as np

    step = max(1, ALONE // by.size)
    if len(many) <= step:
        return many @ by
    made = np.empty((len(many), by.shape[1]))
    for at in range(0, len(many), step):
        np.matmul(many[at : at + step], by, out=made[at : at + step])
    return made


@dataclass(frozen=True)
class _Nodes:
    """Open cases, one a row: toppings `asked` for and ruled `out`, and an upper `bound` on the value."""

    asked: Flags
    out: Flags
    bound: Floats

    def rows(self, which: Flags | slice | NDArray[numpy.intp]) -> _Nodes:
        return _Nodes(self.asked[which], self.out[which], self.bound[which])

    def and_then(self, more: _Nodes) -> _Nodes:
        import numpy as np

        return _Nodes(
            np.concatenate((self.asked, more.asked)),
            np.concatenate((self.out, more.out)),
            np.concatenate((self.bound, more.bound)),
        )


def _search(question: _Question) -> list[bool]:
    """The best toppings, as a flag for each."""
    import numpy as np

    toppings = len(question.cost)
    none = np.zeros((1, toppings), dtype=bool)
    best, chosen = 0.0, none[0]
    waiting = _Nodes(none, none, np.array([np.inf]))
    looked = 0
    while len(waiting.bound) and looked < MOST_NODES:
        # Deepest first, which keeps few waiting.
        nodes, waiting = waiting.rows(slice(-AT_ONCE, None)), waiting.rows(slice(None, -AT_ONCE))
        nodes = nodes.rows(nodes.bound > best + 0.75)  # values are whole numbers
        looked += len(nodes.bound)
        if not len(nodes.bound):
            continue
        bound, gains, hopeless = _bounds(question, nodes, best)
        # The toppings that gain most are a good answer, and the first of them is what to decide next.
        order = np.argsort(-gains, axis=1, kind="stable")
        left = question.budget - nodes.asked.sum(1)
        values, needed = question.value(_with_first(nodes.asked, order, left))
        if values.max() > best + 0.5:
            best, chosen = float(values.max()), needed[int(values.argmax())] > 0
        rows = np.arange(len(bound))
        going_on = (bound > best + 0.75) & (left > 0) & (gains[rows, order[:, 0]] > 0)
        waiting = waiting.and_then(
            _branch(_Nodes(nodes.asked, nodes.out | hopeless, bound).rows(going_on), order[going_on, 0])
        )
    return [bool(flag) for flag in chosen]


def _with_first(asked: Flags, order: NDArray[numpy.intp], left: NDArray[numpy.intp]) -> Floats:
    """The toppings asked for and the first `left` in each row's order."""
    import numpy as np

    taken = asked.astype(float)
    row, place = np.nonzero(np.arange(order.shape[1])[None, :] < left[:, None])
    taken[row, order[row, place]] = 1
    return taken


def _branch(nodes: _Nodes, on: NDArray[numpy.intp]) -> _Nodes:
    """Each case twice: without the topping and, to be looked at first, with it; higher bounds later, so first."""
    import numpy as np

    by_bound = np.argsort(nodes.bound, kind="stable")
    nodes, on = nodes.rows(by_bound), on[by_bound]
    rows = np.arange(len(on))
    asked, out = nodes.asked.copy(), nodes.out.copy()
    asked[rows, on] = out[rows, on] = True
    return _Nodes(nodes.asked, out, nodes.bound).and_then(_Nodes(asked, nodes.out, nodes.bound))


def _bounds(question: _Question, nodes: _Nodes, best: float) -> tuple[Floats, Floats, Flags]:
    """(an upper bound on each case's value, what each topping gains in it, those with which it cannot beat `best`).

    Each combination's worth is split among the toppings it still lacks; however it is split, r more toppings gain
    no more than the r largest sums (weak duality of the linear programme). First in equal parts; then twice more
    with less for those that have much already, which evens the sums out and lowers the bound.
    """
    import numpy as np

    asked, out = nodes.asked.astype(float), nodes.out.astype(float)
    left = question.budget - nodes.asked.sum(1)
    missing = question.lacks.sum(1) - _times(asked, question.lacks.T)
    within = (_times(out, question.lacks.T) < 0.5) & (missing < left[:, None] + 0.5)
    opened = within & (missing < 0.5)
    value = opened @ question.worth - asked @ question.cost
    still = np.where(within & ~opened, question.worth, 0.0)
    free = 1 - asked - out
    share = free
    bound, gains, hopeless = nodes.bound, free, np.zeros_like(nodes.out)
    rows, last = np.arange(len(left)), np.maximum(left - 1, 0)
    for _ in range(3):
        parts = still / np.maximum(_times(share, question.lacks.T), 1e-9)
        gains = np.maximum(share * _times(parts, question.lacks) - question.cost, 0.0)
        largest = -np.sort(-gains, axis=1)
        bound = np.minimum(bound, value + np.where(left > 0, largest.cumsum(1)[rows, last], 0.0))
        others = value + np.where(left > 1, largest.cumsum(1)[rows, np.maximum(left - 2, 0)], 0.0)
        hopeless |= (others[:, None] + gains <= best + 0.75) & (free > 0)
        edge = (largest[rows, last] + largest[rows, np.minimum(left, largest.shape[1] - 1)]) / 2
        share = free * np.clip((edge[:, None] + 1e-3) / (gains + 1e-3), 0.2, 5.0)
    return bound, gains, hopeless
