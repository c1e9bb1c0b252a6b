"""The toppings bar: a base, toppings people take one by one, and combinations which their toppings open."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import combinations

from planning.headcount import Headcount
from planning.portions.catalogue import Size, best_packages, find, sizes
from planning.portions.measures import convert, readable, rounded, text
from planning.portions.names import best, words
from planning.portions.rules import Package
from planning.potluck import Combo, Potluck
from planning.tables import rows, source_text

HALF_PORTIONS = 1.25
"""People build half portions to try more kinds, and take a quarter more of all toppings together: common
practice, no source."""


@dataclass(frozen=True)
class Base:
    name: str
    aliases: tuple[str, ...]
    counts_as: str
    item: str
    units: float
    warm: bool
    source: str


@dataclass(frozen=True)
class ToppingRow:
    """One topping of a base (`toppings.csv`): `amount` of `unit` for one who takes it; `uptake` is the share who do."""

    base: str
    name: str
    aliases: tuple[str, ...]
    amount: float
    unit: str
    uptake: float
    warm: bool
    ingredient: str
    sizes: tuple[Size, ...]
    buy_unit: str
    grams_per_cup: float | None
    source: str


@dataclass(frozen=True)
class ComboState:
    """A combination: possible once somebody has taken each of its toppings; `missing` are those nobody has."""

    name: str
    possible: bool
    missing: tuple[str, ...]
    toppings: tuple[str, ...] = ()


@dataclass(frozen=True)
class NextTopping:
    """A topping worth asking for; `opens` are the combinations possible once the suggestion up to here is taken."""

    topping: str
    opens: tuple[str, ...]


@dataclass(frozen=True)
class ToppingAmount:
    """How much of a topping this potluck wants. `warm` needs an outlet or burner. `source` as in a Portion."""

    topping: str
    per_eater: str
    total: float
    total_unit: str
    buy: float
    buy_unit: str
    packages: tuple[Package, ...]
    warm: bool
    source: str
    guest: str | None = None
    ingredient: str = ""


@cache
def _bases() -> dict[str, Base]:
    return {
        row["base"]: Base(
            row["base"],
            tuple(a for a in row["aliases"].split(";") if a),
            row["counts_as"],
            row["item"],
            float(row["units"]),
            row["warm"] == "yes",
            row["source"],
        )
        for row in rows("bases")
    }


@cache
def _toppings(base: str) -> dict[str, ToppingRow]:
    return {
        row["topping"]: ToppingRow(
            base,
            row["topping"],
            tuple(a for a in row["aliases"].split(";") if a),
            float(row["amount"]),
            row["unit"],
            float(row["uptake"]),
            row["warm"] == "yes",
            row["ingredient"],
            tuple(sizes()[s] for s in row["packages"].split(";") if s),
            row["buy_unit"],
            float(row["grams_per_cup"]) if row["grams_per_cup"] else None,
            row["source"],
        )
        for row in rows("toppings")
        if row["base"] == base
    }


def bases() -> tuple[str, ...]:
    """The bases we have tables for; a host may name any other."""
    return tuple(_bases())


def base_named(text: str) -> str | None:
    """The base which free words mean ("jacket spuds"), or None."""
    index = {words(b.name): b.name for b in _bases().values()}
    for b in _bases().values():
        for alias in b.aliases:
            index.setdefault(words(alias), b.name)
    return best(text, index)


def toppings_for(base: str) -> tuple[str, ...]:
    """The base's toppings, the most taken first; none for a base without a table."""
    known = _toppings(base_named(base) or base)
    return tuple(sorted(known, key=lambda name: (-known[name].uptake, name)))


def combos_for(base: str) -> tuple[Combo, ...]:
    """The base's named combinations from the table, in its order."""
    known = base_named(base) or base
    return tuple(
        Combo(row["combo"], tuple(row["toppings"].split(";"))) for row in rows("combos") if row["base"] == known
    )


def topping_row(base: str, topping: str) -> ToppingRow | None:
    """The table's row for a topping of a base, or None for one of the hosts' own."""
    matched = match_topping(base, topping)
    return _toppings(base_named(base) or base).get(matched) if matched else None


def match_topping(base: str, text: str) -> str | None:
    """The base's topping which free words mean ("some grated cheese"), or None."""
    return best(text, _topping_index(base_named(base) or base))


@cache
def _topping_index(base: str) -> dict[tuple[str, ...], str]:
    found = {words(name): name for name in _toppings(base)}
    for row in _toppings(base).values():
        for alias in row.aliases:
            found.setdefault(words(alias), row.name)
    return found


def _canonical(base: str, name: str) -> str:
    return match_topping(base, name) or " ".join(words(name)) or name


def combos(potluck: Potluck) -> tuple[ComboState, ...]:
    """Every combination of the bar with what it still lacks: the possible ones first, then by how little is missing."""
    if potluck.bar is None:
        return ()
    bar = potluck.bar
    here = {_canonical(bar.base, t.name) for t in bar.toppings if t.guest is not None}
    found = []
    for combo in _list_of(potluck):
        missing = tuple(t for t in combo.toppings if _canonical(bar.base, t) not in here)
        found.append(ComboState(combo.name, not missing, missing, combo.toppings))
    return tuple(sorted(found, key=lambda c: len(c.missing)))


def _list_of(potluck: Potluck) -> tuple[Combo, ...]:
    assert potluck.bar is not None
    return combos_for(potluck.bar.base) if potluck.bar.combos is None else potluck.bar.combos


@cache
def _weights(base: str) -> dict[str, float]:
    return {row["combo"]: float(row["weight"]) for row in rows("combos") if row["base"] == base}


def next_toppings(potluck: Potluck, headcount: Headcount, k: int | None = None) -> tuple[NextTopping, ...]:
    """The `k` (default: the bar's `most_asks`) further toppings that open the most combinations, exactly.

    Combinations weigh what they weigh in the table. Among equal choices the toppings more people take win.
    """
    if potluck.bar is None:
        return ()
    budget = potluck.bar.most_asks if k is None else k
    states = [c for c in combos(potluck) if not c.possible]
    base = potluck.bar.base
    known = _weights(base_named(base) or base)
    wanted = [(frozenset(_canonical(base, t) for t in c.missing), known.get(c.name, 1.0), c.name) for c in states]
    chosen = best_set([(missing, weight) for missing, weight, _ in wanted], max(0, budget), _uptakes(base))
    order = _greedy_order(chosen, [(m, w) for m, w, _ in wanted])
    have: set[str] = set()
    result = []
    for topping in order:
        before = {n for m, _, n in wanted if m <= have}
        have.add(topping)
        result.append(NextTopping(topping, tuple(n for m, _, n in wanted if m <= have and n not in before)))
    return tuple(result)


def _uptakes(base: str) -> dict[str, float]:
    return {row.name: row.uptake for row in _toppings(base_named(base) or base).values()}


def _greedy_order(chosen: frozenset[str], wanted: Sequence[tuple[frozenset[str], float]]) -> list[str]:
    left, have, order = set(chosen), set[str](), list[str]()
    while left:
        topping = min(left, key=lambda t: (-_gain(wanted, have | {t}), t))
        order.append(topping)
        have.add(topping)
        left.remove(topping)
    return order


def _gain(wanted: Sequence[tuple[frozenset[str], float]], have: set[str] | frozenset[str]) -> float:
    return math.fsum(weight for missing, weight in wanted if missing <= have)


def best_set(
    wanted: Sequence[tuple[frozenset[str], float]], budget: int, liking: Mapping[str, float]
) -> frozenset[str]:
    """The set of at most `budget` toppings with the greatest weight of combinations whose missing toppings it holds."""
    union = sorted({t for missing, _ in wanted if len(missing) <= budget for t in missing})
    size = min(budget, len(union))
    best_key: tuple[float, float] = (0.0, 0.0)
    chosen: frozenset[str] = frozenset()
    for r in range(1, size + 1):
        for some in combinations(union, r):
            have = frozenset(some)
            key = (_gain(wanted, have), math.fsum(liking.get(t, 0.3) for t in some) - r)
            if key[0] > best_key[0] or (key[0] == best_key[0] and key[1] > best_key[1] and key[0] > 0):
                best_key, chosen = key, have
    return chosen


def curve(potluck: Potluck, up_to: int = 8) -> tuple[tuple[int, int], ...]:
    """(further toppings, combinations then possible) for 0..`up_to`: "two more toppings open six"."""
    if potluck.bar is None:
        return ()
    states = combos(potluck)
    now = sum(c.possible for c in states)
    base = potluck.bar.base
    wanted = [(frozenset(_canonical(base, t) for t in c.missing), 1.0) for c in states if not c.possible]
    found = []
    for n in range(up_to + 1):
        chosen = best_set(wanted, n, _uptakes(base))
        found.append((n, now + sum(missing <= chosen for missing, _ in wanted)))
    return tuple(found)


def amounts(potluck: Potluck, headcount: Headcount) -> tuple[ToppingAmount, ...]:
    """How much of each topping on the bar (taken or not), for the eaters at the service level."""
    if potluck.bar is None:
        return ()
    base = potluck.bar.base
    found = []
    for topping in potluck.bar.toppings:
        row = topping_row(base, topping.name)
        if row is None:
            row = _unknown(base, topping.name)
        found.append(_amount(potluck, headcount, row, topping.name, topping.guest))
    return tuple(found)


def _unknown(base: str, name: str) -> ToppingRow:
    item = find(name)
    return ToppingRow(base, name, (), 2.0, "tbsp", 0.5, False, name, (), "cup", item.grams_per_cup if item else None, "practice")


def _amount(potluck: Potluck, headcount: Headcount, row: ToppingRow, name: str, guest: str | None) -> ToppingAmount:
    per_eater = row.amount * row.uptake * HALF_PORTIONS
    served = per_eater * headcount.eaters
    bought = convert(served, row.unit, row.buy_unit, grams_per_cup=row.grams_per_cup) if row.buy_unit != "each" else math.ceil(served / 8)
    chosen = best_packages(bought, row.buy_unit, row.sizes)
    total, total_unit = readable(served, row.unit, potluck.units)
    buy, buy_unit = readable(bought, row.buy_unit, potluck.units)
    shown, unit = readable(per_eater, row.unit, "metric") if potluck.units == "metric" else (per_eater, row.unit)
    return ToppingAmount(
        name,
        text(shown, unit),
        rounded(total),
        total_unit,
        rounded(buy),
        buy_unit,
        tuple(Package(s.size, n, s.amount, s.unit) for s, n in chosen),
        row.warm,
        source_text(row.source),
        guest,
        row.ingredient,
    )
