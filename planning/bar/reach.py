"""Which further toppings open the most combinations: exact, small and large.

The number of combinations counts first, then fewer toppings (fewer people to ask), then what eaters like.
One topping at a time is the wrong way: on tables of 60 toppings and 200 combinations it reached as little as
13 % of the best.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

MOST_UNIONS = 4000
"""The best set is always a union of combinations' missing toppings; up to so many unions are tried one by one,
beyond that the solver takes over."""

Wanted = Sequence[tuple[frozenset[str], float]]
"""(toppings still missing, liking 0..1) of each combination that is not possible yet."""

Masked = tuple[int, int, int]
"""(missing toppings as bits, combinations that lack just these, a hundred times their liking together)."""


def best_set(
    wanted: Wanted, budget: int, liking: Mapping[str, float] | None = None, *, ties: bool = True
) -> frozenset[str]:
    """At most `budget` (0 or more) toppings that open the most combinations; among equals see above.

    `ties` false leaves it open which of the equals is found (quicker on large bars).
    """
    sets, names = as_masks(wanted, budget)
    if not sets:
        return frozenset()
    likes = [round(100 * (liking or {}).get(name, 0.3)) for name in names]
    unions = _unions([mask for mask, _, _ in sets], budget)
    mask = _best_union(unions, sets, likes) if unions is not None else solved(sets, len(names), likes, budget, ties)
    return frozenset(names[i] for i in _bits(mask))


def as_masks(wanted: Wanted, budget: int) -> tuple[list[Masked], list[str]]:
    """Combinations with the same missing toppings as one, those beyond the budget left out; bit i is name i."""
    merged: dict[frozenset[str], list[float]] = {}
    for missing, weight in wanted:
        if missing and len(missing) <= budget:
            merged.setdefault(missing, []).append(weight)
    names = sorted({topping for missing in merged for topping in missing})
    bit = {name: 1 << i for i, name in enumerate(names)}
    found = [(sum(bit[t] for t in missing), len(w), round(100 * sum(w))) for missing, w in merged.items()]
    return sorted(found, key=lambda row: (-row[1], -row[2], row[0])), names


def _unions(masks: Sequence[int], budget: int) -> set[int] | None:
    """All unions of the masks with at most `budget` bits, or None when there are too many."""
    found = {0}
    for mask in masks:
        found |= {union for seen in found if (union := seen | mask).bit_count() <= budget}
        if len(found) > MOST_UNIONS:
            return None
    return found


def _bits(mask: int) -> Iterator[int]:
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low


def _best_union(unions: set[int], sets: Sequence[Masked], likes: Sequence[int]) -> int:
    def key(union: int) -> tuple[int, int, int, int, int]:
        opened = liked = 0
        for mask, count, weight in sets:
            if mask & ~union == 0:
                opened, liked = opened + count, liked + weight
        return opened, -union.bit_count(), liked, sum(likes[i] for i in _bits(union)), -union

    return max(unions, key=key)


def solved(sets: Sequence[Masked], toppings: int, likes: Sequence[int], budget: int, ties: bool) -> int:
    """The same by CP-SAT: z_k <= y_t for every missing topping t of combination k, sum y <= budget.

    First the number of combinations alone, proven; then, with that number fixed, the rest within a small effort,
    because a proof of the ties costs more than they are worth. `linearization_level` 2 is what makes it quick.
    """
    # Loaded here: the solver is large, and most bars never need it.
    from ortools.sat.python import cp_model

    model: Any = cp_model.CpModel()
    taken = [model.new_bool_var(f"y{t}") for t in range(toppings)]
    opened = [model.new_bool_var(f"z{k}") for k in range(len(sets))]
    for z, (mask, _, _) in zip(opened, sets, strict=True):
        for t in _bits(mask):
            model.add_implication(z, taken[t])
    model.add(sum(taken) <= budget)
    number = sum(count * z for z, (_, count, _) in zip(opened, sets, strict=True))

    def search(start: int, effort: float) -> int:
        model.clear_hints()
        for t, y in enumerate(taken):
            model.add_hint(y, start >> t & 1)
        solver: Any = cp_model.CpSolver()
        solver.parameters.linearization_level = 2
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 0
        solver.parameters.max_deterministic_time = effort
        if solver.solve(model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return start
        return sum(1 << t for t, y in enumerate(taken) if solver.boolean_value(y))

    model.maximize(number)
    best = search(_greedy(sets, budget), 4.0)
    # A topping may be taken for nothing here: only what a combination needs is kept.
    best = _needed(sets, best)
    if not ties:
        return best
    model.add(number >= sum(count for mask, count, _ in sets if mask & ~best == 0))
    # Each level outweighs all below it: liking of toppings < liking of combinations < one topping.
    second = 1 + 100 * budget
    third = 1 + 100 * budget + second * sum(weight for _, _, weight in sets)
    model.maximize(
        sum(weight * second * z for z, (_, _, weight) in zip(opened, sets, strict=True))
        - sum((third - like) * y for y, like in zip(taken, likes, strict=True))
    )
    return _needed(sets, search(best, 0.05))


def _needed(sets: Sequence[Masked], have: int) -> int:
    used = 0
    for mask, _, _ in sets:
        if mask & ~have == 0:
            used |= mask
    return used


def _greedy(sets: Sequence[Masked], budget: int) -> int:
    """Whole combinations, the most opened per missing topping first: a start and a fallback."""
    have = 0
    while True:
        best: tuple[float, int] | None = None
        for mask, _, _ in sets:
            union = have | mask
            added = (union ^ have).bit_count()
            if added == 0 or union.bit_count() > budget:
                continue
            gain = sum(count for other, count, _ in sets if other & ~union == 0 and other & ~have)
            if best is None or (gain / added, -union) > best:
                best = (gain / added, -union)
        if best is None:
            return have
        have = -best[1]
