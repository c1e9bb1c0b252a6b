"""Builders for the tests of amounts."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

from planning.headcount import headcount
from planning.portions import Portion, items, portions
from planning.portions.measures import convert
from planning.potluck import Answer, Guest, Potluck

SATURDAY = datetime(2027, 7, 17, 22, tzinfo=UTC)


def cookout(people: int, *wanted: str, **fields: object) -> Potluck:
    """So many adults who will certainly come, with nothing promised."""
    crowd = tuple(Guest(f"g{n}", "x", Answer.YES) for n in range(people))
    plain = Potluck("p1", SATURDAY, "America/Chicago", guests=crowd, items=wanted, answer_odds={"yes": 1.0})
    return replace(plain, **fields)  # type: ignore[arg-type]


def amounts(potluck: Potluck) -> dict[str, Portion]:
    return {p.item: p for p in portions(potluck, headcount(potluck))}


def total(potluck: Potluck, item: str, unit: str) -> float:
    """What is served of an item, in a unit."""
    portion = amounts(potluck)[item]
    row = items()[item]
    return convert(portion.total, portion.total_unit, unit, grams_per_cup=row.grams_per_cup, grams_each=row.grams_each)


def bought(potluck: Potluck, item: str, unit: str) -> float:
    """What is bought of an item, without the margin, in a unit."""
    portion, row = amounts(potluck)[item], items()[item]
    served = convert(
        portion.total, portion.total_unit, row.unit, grams_per_cup=row.grams_per_cup, grams_each=row.grams_each
    )
    return convert(row.to_buy(served), row.buy_unit, unit, grams_per_cup=row.grams_per_cup, grams_each=row.grams_each)
