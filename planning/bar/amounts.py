"""How much of each topping: who takes it, how much, and for how many."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist

from planning.bar.table import ToppingRow, base_named, base_rows, canonical, combo_weights, topping_anywhere
from planning.headcount import Headcount
from planning.portions.catalogue import Size, best_packages, find
from planning.portions.measures import convert, kind, readable, rounded, text
from planning.portions.rules import Package
from planning.potluck import Combo, Potluck
from planning.tables import source_text

HALVES = 2
"""People build two half portions to try two kinds: common practice, no source."""

HALVES_EAT_MORE = 1.2
"""Two different halves are eaten like 1.2 wholes: three distinct yogurts raised intake by a fifth (Q357, from
memory)."""

MOST_UNITS = 1.5
"""A portion of topping is for one occasion: with two tacos nobody takes twice as much, but half as much again.
Common practice, no source."""

MARGIN = 0.1
"""Bought above what is reckoned: common practice, no source."""

UNKNOWN_TBSP, UNKNOWN_UPTAKE = 2.0, 0.5
"""A topping of the hosts' own: two tablespoons (Q183) for every second eater (common practice, no source)."""


@dataclass(frozen=True)
class ToppingAmount:
    """How much of a topping this potluck wants.

    `per_eater` is the average over all eaters as text, `share` the part of them who take it (0..1). `total` is as
    served, `buy` with the margin, `packages` hold at least `buy`. `warm` needs an outlet or a burner. `source`
    is the portion's source id or "common practice, no source"; `ingredient` its name (or names) in the allergen tables.
    """

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
    share: float = 0.0
    left_over: float = 0.0


def amounts_of(
    potluck: Potluck, headcount: Headcount, possible: Sequence[Combo], *, everybody: bool = False
) -> tuple[ToppingAmount, ...]:
    """Every topping of the bar, taken or not, in the bar's order.

    Takers of a topping are its uptake, or more where the possible combinations ask for it (`combo_share`). For
    the service level they are the normal quantile of takers among uncertain eaters. `everybody` counts every
    topping for every eater, one portion each, as the Armed Forces card does.
    """
    if potluck.bar is None:
        return ()
    base = potluck.bar.base
    found = []
    for topping in potluck.bar.toppings:
        row = topping_anywhere(base, topping.name) or _unknown(base, topping.name)
        share = 1.0 if everybody else max(row.uptake, combo_share(base, topping.name, possible))
        per_taker = row.amount * (1.0 if everybody else HALVES_EAT_MORE * _units(base))
        carrier = topping.guest if potluck.brings_topping(topping) else None
        found.append(_amount(potluck, headcount, row, topping.name, carrier, share, per_taker))
    return tuple(found)


def combo_share(base: str, topping: str, possible: Sequence[Combo]) -> float:
    """The part of the eaters' portions which holds the topping if everybody builds `HALVES` halves, 0..1.

    Each picks two different combinations, one after the other, by what eaters like (Plackett-Luce); the chance
    that a combination is among the two is summed exactly, not sampled.
    """
    weights = combo_weights(base)
    likes = [max(0.05, weights.get(combo.name, 0.3)) for combo in possible]
    picked = picked_twice(likes)
    name = canonical(base, topping)
    return min(
        1.0,
        math.fsum(
            chance / HALVES
            for chance, combo in zip(picked, possible, strict=True)
            if name in {canonical(base, t) for t in combo.toppings}
        ),
    )


def picked_twice(weights: Sequence[float]) -> list[float]:
    """The chance of each of being among two picks without putting back, by weight (each above 0).

    For i: p_i + sum over j != i of p_j p_i / (1 - p_j).
    """
    total = math.fsum(weights)
    p = [w / total for w in weights]
    if len(p) <= HALVES:
        return [1.0] * len(p)
    after = [x / (1 - x) for x in p]
    every = math.fsum(after)
    return [x * (1 + every - a) for x, a in zip(p, after, strict=True)]


def takers(headcount: Headcount, share: float, service_level: float) -> float:
    """How many portions are enough with the service level: E[N] s + z sqrt(E[N] s (1-s) + Var[N] s^2).

    N is the number of eaters; its variance is taken from the people's, which is never smaller.
    """
    mean = headcount.expected
    variance = math.fsum(p * (n - mean) ** 2 for n, p in headcount.pmf)
    z = max(0.0, NormalDist().inv_cdf(min(0.999, max(0.5, service_level))))
    expected = headcount.expected_eaters
    return expected * share + z * math.sqrt(expected * share * (1 - share) + variance * share**2)


def _units(base: str) -> float:
    known = base_rows().get(base_named(base) or "")
    return min(MOST_UNITS, known.units) if known else 1.0


def _unknown(base: str, name: str) -> ToppingRow:
    item = find(name)
    grams = item.grams_per_cup if item else None
    buy_unit, sold = "cup", tuple[Size, ...]()
    if item is not None and (grams or kind(item.buy_unit) == "volume") and kind(item.buy_unit) != "count":
        buy_unit, sold = item.buy_unit, item.sizes
    return ToppingRow(
        base, name, (), UNKNOWN_TBSP, "tbsp", UNKNOWN_UPTAKE, False, (name,), sold, buy_unit, grams, None, "practice"
    )


def _amount(
    potluck: Potluck, headcount: Headcount, row: ToppingRow, name: str, guest: str | None, share: float, taken: float
) -> ToppingAmount:
    served = taken * takers(headcount, share, potluck.service_level)
    own = {"grams_per_cup": row.grams_per_cup, "grams_each": row.grams_each}
    bought = convert(served, row.unit, row.buy_unit, **own) * (1 + MARGIN)
    chosen = best_packages(bought, row.buy_unit, (size.in_system(potluck.units) for size in row.sizes))
    total, total_unit = readable(served, row.unit, potluck.units)
    buy, buy_unit = readable(bought, row.buy_unit, potluck.units)
    if row.buy_unit == "each":
        buy = float(math.ceil(buy - 1e-9))
    held = sum(n * convert(size.amount, size.unit, buy_unit) for size, n in chosen)
    shown, unit = taken * share, row.unit
    if potluck.units == "metric":
        shown, unit = readable(shown, unit, "metric")
    elif unit == "g":
        shown, unit = convert(shown, "g", "oz"), "oz"
    return ToppingAmount(
        topping=name,
        per_eater=text(shown, unit),
        total=rounded(total),
        total_unit=total_unit,
        buy=rounded(buy),
        buy_unit=buy_unit,
        packages=tuple(Package(size.size, n, size.amount, size.unit) for size, n in chosen),
        warm=row.warm,
        source=source_text(row.source),
        guest=guest,
        ingredient="; ".join(row.ingredients),
        share=round(share, 3),
        left_over=rounded(max(0.0, held - buy)) if chosen else 0.0,
    )
