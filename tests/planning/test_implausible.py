"""A figure nobody can mean is told, and feeds nobody."""

import math
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from planning.kitchen.implausible import believable
from planning.plan import plan
from planning.potluck import Answer, Guest, Need, Party, Potluck, Promise

FIGURES = {"kitchen-servings", "kitchen-party"}
START = datetime(2027, 9, 18, 22, tzinfo=UTC)


def supper(**more: object) -> Potluck:
    guests = (Guest("ines", "Inés", Answer.YES), Guest("ravi", "Ravi", Answer.YES, Party(3)))
    stew = Promise("p1", "ravi", "lasagna", "main", servings=12)
    plain = Potluck("a", START, "America/Chicago", "ines", guests=guests, promises=(stew,))
    return replace(plain, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize("servings", [1e12, math.inf, -3, 0])
def test_servings_nobody_can_mean_count_as_the_usual_ones(servings: float) -> None:
    whole = supper()
    odd = supper(promises=(replace(whole.promises[0], servings=servings),))

    made = plan(odd, START - timedelta(days=3))

    assert {c.why.key for c in made.kitchen.conflicts} & FIGURES
    main = next(row for row in made.menu if row.category == "main")
    assert 0 < main.promised_servings < 100


def test_a_party_nobody_can_mean_is_one_person_of_each_age_it_names() -> None:
    guests = (*supper().guests, Guest("mei", "Mei", Answer.YES, Party(1_000_000, 0, 500)))

    made = plan(supper(guests=guests), START - timedelta(days=3))

    assert {c.why.key for c in made.kitchen.conflicts} & FIGURES
    assert made.headcount.expected < 10


def test_a_need_of_a_million_is_one_person_s() -> None:
    guest = Guest("mei", "Mei", Answer.YES, needs=(Need("vegan", 10**6, "diet"),))

    assert believable(supper(guests=(guest,))).guests[0].needs[0].count == 1


def test_what_can_be_meant_stays_as_it_is() -> None:
    assert believable(supper()) == supper()
