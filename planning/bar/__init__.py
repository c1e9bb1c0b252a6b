"""The toppings bar: a base, toppings people take one by one, and combinations which their toppings open.

At a bar everything is served with spoons that wander: a combination lists what is in it, never what touched it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from planning.bar.amounts import ToppingAmount, amounts_of, combo_share, picked_twice
from planning.bar.reach import Wanted, best_set
from planning.bar.table import (
    Base,
    ToppingRow,
    base_named,
    base_rows,
    bases,
    canonical,
    combo_weights,
    combos_for,
    match_topping,
    topping_anywhere,
    topping_row,
    topping_rows,
    toppings_for,
)
from planning.diets import can_eat
from planning.headcount import Headcount
from planning.potluck import Combo, Potluck, Promise


@dataclass(frozen=True)
class ComboState:
    """A combination: possible once somebody has taken each of its toppings; `missing` are those nobody has."""

    name: str
    possible: bool
    missing: tuple[str, ...]
    toppings: tuple[str, ...] = ()


@dataclass(frozen=True)
class NextTopping:
    """A topping worth asking for; `opens` are the combinations it opens with those before it in the suggestion."""

    topping: str
    opens: tuple[str, ...]


def combos(potluck: Potluck) -> tuple[ComboState, ...]:
    """Every combination of the bar with what it still lacks: the possible ones first, then by how little is missing."""
    if potluck.bar is None:
        return ()
    base = potluck.bar.base
    here = {canonical(base, t.name) for t in potluck.bar.toppings if potluck.brings_topping(t)}
    found = []
    for combo in _listed(potluck):
        missing = tuple(t for t in dict.fromkeys(combo.toppings) if canonical(base, t) not in here)
        found.append(ComboState(combo.name, not missing, missing, combo.toppings))
    return tuple(sorted(found, key=lambda c: len(c.missing)))


def next_toppings(potluck: Potluck, headcount: Headcount, k: int | None = None) -> tuple[NextTopping, ...]:
    """The `k` (default: the bar's `most_asks`) further toppings that open the most combinations, exactly.

    Among equal choices the combinations that more eaters like, and that more guests with a diet or allergy can
    eat by the table's ingredients, win. When `k` toppings open nothing yet, the ones which lead furthest on the
    shortest way are named, with nothing opened.
    """
    if potluck.bar is None:
        return ()
    base = potluck.bar.base
    budget = max(0, potluck.bar.most_asks if k is None else k)
    closed = [c for c in combos(potluck) if not c.possible]
    shown = {canonical(base, t): t for c in closed for t in c.missing}
    likes = _likes(potluck, closed)
    wanted = [(frozenset(canonical(base, t) for t in c.missing), likes[c.name]) for c in closed]
    chosen = set(best_set(wanted, budget, _uptakes(base)))
    if not chosen and closed and budget:
        way = min(zip(closed, wanted, strict=True), key=lambda pair: (len(pair[1][0]), -pair[1][1]))
        chosen = set(sorted(way[1][0], key=lambda t: (-_uptakes(base).get(t, 0.3), t))[:budget])
    have: set[str] = set()
    result = []
    while chosen:
        topping = min(chosen, key=lambda t: (-_opened(wanted, have | {t}), -_helps(wanted, have, t), t))
        chosen.remove(topping)
        before = {c.name for c, (missing, _) in zip(closed, wanted, strict=True) if missing <= have}
        have.add(topping)
        opens = tuple(
            c.name for c, (missing, _) in zip(closed, wanted, strict=True) if missing <= have and c.name not in before
        )
        result.append(NextTopping(shown.get(topping, topping), opens))
    return tuple(result)


def curve(potluck: Potluck, up_to: int = 8) -> tuple[tuple[int, int], ...]:
    """(further toppings, combinations then possible) for 0 to `up_to`: "two more toppings open six"."""
    if potluck.bar is None:
        return ()
    base = potluck.bar.base
    states = combos(potluck)
    now = sum(c.possible for c in states)
    wanted = [(frozenset(canonical(base, t) for t in c.missing), 1.0) for c in states if not c.possible]
    found = []
    for n in range(up_to + 1):
        chosen = best_set(wanted, n, ties=False)
        found.append((n, now + _opened(wanted, chosen)))
    return tuple(found)


def amounts(potluck: Potluck, headcount: Headcount, *, everybody: bool = False) -> tuple[ToppingAmount, ...]:
    """How much of each topping on the bar (taken or not); see `amounts_of`."""
    if potluck.bar is None:
        return ()
    possible = [Combo(c.name, c.toppings) for c in combos(potluck) if c.possible]
    return amounts_of(potluck, headcount, possible, everybody=everybody)


def warm_toppings(potluck: Potluck) -> tuple[str, ...]:
    """The bar's toppings which need an outlet or a burner to stay hot; they join the kitchen's list."""
    if potluck.bar is None:
        return ()
    rows = ((t.name, topping_anywhere(potluck.bar.base, t.name)) for t in potluck.bar.toppings)
    return tuple(name for name, row in rows if row is not None and row.warm)


def ingredients_of(base: str, toppings: Iterable[str]) -> tuple[str, ...]:
    """What the allergen tables call these toppings; one of the hosts' own goes by its own name."""
    found: list[str] = []
    for name in toppings:
        row = topping_row(base, name)
        found.extend(row.ingredients if row is not None else (name,))
    return tuple(dict.fromkeys(found))


def _listed(potluck: Potluck) -> tuple[Combo, ...]:
    assert potluck.bar is not None
    return combos_for(potluck.bar.base) if potluck.bar.combos is None else potluck.bar.combos


def _likes(potluck: Potluck, closed: Iterable[ComboState]) -> dict[str, float]:
    """What each combination is worth: the share who like it, and the share of needs it has nothing listed against."""
    assert potluck.bar is not None
    base = potluck.bar.base
    weights = combo_weights(base)
    needs = sorted({n.need for g in potluck.guests if g.answer != "no" for n in g.all_needs()})
    found = {}
    for combo in closed:
        fits = sum(_fits(ingredients_of(base, combo.toppings), need) for need in needs)
        found[combo.name] = weights.get(combo.name, 0.3) + (fits / len(needs) if needs else 0.0)
    return found


def _fits(ingredients: tuple[str, ...], need: str) -> bool:
    promise = Promise("bar", "", " and ".join(ingredients), "topping", ingredients=ingredients)
    return can_eat(promise, need) == "listed-free"


def _uptakes(base: str) -> dict[str, float]:
    return {row.name: row.uptake for row in topping_rows(base_named(base) or base).values()}


def _opened(wanted: Wanted, have: set[str] | frozenset[str]) -> int:
    return sum(missing <= have for missing, _ in wanted)


def _helps(wanted: Wanted, have: set[str], topping: str) -> int:
    return sum(topping in missing - have for missing, _ in wanted)


__all__ = [
    "Base",
    "ComboState",
    "NextTopping",
    "ToppingAmount",
    "ToppingRow",
    "amounts",
    "base_named",
    "base_rows",
    "bases",
    "best_set",
    "combo_share",
    "combos",
    "combos_for",
    "curve",
    "ingredients_of",
    "match_topping",
    "next_toppings",
    "picked_twice",
    "topping_anywhere",
    "topping_row",
    "toppings_for",
    "warm_toppings",
]
