"""Small problems and potlucks for the tests of asks; every default can be replaced."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from planning.asks import Ask, Problem, measure
from planning.potluck import Answer, Guest, Party, Potluck

START = datetime(2027, 9, 18, 22, tzinfo=UTC)
NOW = START - timedelta(days=3)


@dataclass(frozen=True)
class Row:
    """The numbers the asks read of a menu row; without a target no gap is too small to ask for."""

    category: str
    lacking_servings: float = 0.0
    short_dishes: int = 0
    target_servings: float = 0.0


def someone(id: str, **facts: object) -> Guest:
    base = Guest(id, id.title(), Answer.YES, Party(2))
    return replace(base, **facts)  # type: ignore[arg-type]


def supper(*guests: Guest, **facts: object) -> Potluck:
    base = Potluck("p", START, "America/Chicago", host="host", guests=guests)
    return replace(base, **facts)  # type: ignore[arg-type]


HOST = someone("host")
CROWD = tuple(someone(f"g{i}") for i in range(8))
MAINS = (Row("main", 10, 1),)


def chosen(found: tuple[Ask, ...]) -> list[Ask]:
    """Without the other ways."""
    return [ask for ask in found if not ask.alternative]


def all_answers(problem: Problem) -> Iterator[Mapping[str, int]]:
    """Every way to ask: for each person nothing or one template they can take, within each template's `most`
    and the asks that may be moved."""
    people = [person for person in problem.people if person.can]
    for picks in itertools.product(*[[None, *person.can] for person in people]):
        chosen = {person.id: t for person, t in zip(people, picks, strict=True) if t is not None}
        taken = list(chosen.values())
        moved = sum(chosen.get(who) != t for who, t in problem.open_asks.items())
        if all(taken.count(t) <= problem.templates[t].most for t in set(taken)) and moved <= problem.most_moves:
            yield chosen


def best_by_trying_all(problem: Problem) -> tuple[int, ...]:
    return min(measure(problem, chosen) for chosen in all_answers(problem))
