"""The solver of asks. The outside check is brute force over every answer of small cases."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.asks import Gap, Person, Problem, Profile, Template, greedy, measure, solve
from tests.bench.asks import after_one_drop_out, first_plan, with_highs
from tests.bench.potlucks import asking
from tests.planning.asks.builders import best_by_trying_all

CATEGORIES = ("main", "side", "dessert")


@st.composite
def problems(draw: st.DrawFn) -> Problem:
    """Up to five people and five templates: at most 6^5 answers to try."""
    profiles = tuple(
        Profile((f"need{p}",), draw(st.sampled_from(CATEGORIES)), draw(st.integers(1, 3)))
        for p in range(draw(st.integers(0, 2)))
    )
    templates = tuple(
        Template(
            category,
            draw(st.integers(4, 14)),
            draw(st.integers(1, 5)),
            (f"dish{t}",),
            frozenset(p for p in range(len(profiles)) if profiles[p].part == category and draw(st.booleans())),
            draw(st.integers(1, 3)),
        )
        for t, category in enumerate(draw(st.lists(st.sampled_from(CATEGORIES), min_size=1, max_size=5)))
    )
    people = tuple(
        Person(
            f"g{i}",
            draw(st.integers(0, 2)),
            {t: draw(st.integers(1, 10)) for t in range(len(templates)) if draw(st.booleans())},
        )
        for i in range(draw(st.integers(1, 5)))
    )
    gaps = tuple(
        Gap(category, draw(st.integers(0, 25)), draw(st.integers(0, 2)), draw(st.integers(1, 4)))
        for category in draw(st.sets(st.sampled_from(CATEGORIES), min_size=1))
    )
    asked = {
        person.id: draw(st.sampled_from(sorted(person.can))) for person in people if person.can and draw(st.booleans())
    }
    return Problem(people, templates, tuple(sorted(gaps, key=lambda gap: gap.category)), profiles, asked)


@settings(max_examples=60, deadline=None)
@given(problems())
def test_the_solver_equals_trying_everything(problem: Problem) -> None:
    solution = solve(problem, effort=5.0)

    assert solution.vector == best_by_trying_all(problem)
    assert all(solution.proved)


@pytest.mark.parametrize(("people", "tight"), [(12, False), (12, True), (30, False)])
def test_the_solver_agrees_with_another_on_larger_problems(people: int, tight: bool) -> None:
    # The outside check: SciPy's MILP solver (HiGHS) on the same levels, one variable a person and template.
    problem = asking(people, seed=5, tight=tight)

    solution = solve(problem, effort=5.0)

    assert all(solution.proved)
    assert first_plan(solution.vector) == with_highs(problem)


@settings(max_examples=150, deadline=None)
@given(problems())
def test_nobody_is_asked_twice_or_for_what_they_cannot_make(problem: Problem) -> None:
    chosen = greedy(problem)

    people = {person.id: person for person in problem.people}
    assert all(t in people[who].can for who, t in chosen.items())
    taken = Counter(chosen.values())
    assert all(n <= problem.templates[t].most for t, n in taken.items())


@settings(max_examples=60, deadline=None)
@given(problems())
def test_the_solver_is_never_worse_than_the_greedy_answer(problem: Problem) -> None:
    assert solve(problem, effort=0.2).vector <= measure(problem, greedy(problem))


@settings(max_examples=20, deadline=None)
@given(problems())
def test_the_same_problem_gives_the_same_answer(problem: Problem) -> None:
    assert solve(problem) == solve(problem)


@settings(max_examples=40, deadline=None)
@given(problems())
def test_one_more_person_never_makes_the_shortage_larger(problem: Problem) -> None:
    helper = Person("helper", 0, dict.fromkeys(range(len(problem.templates)), 5))
    more = replace(problem, people=(*problem.people, helper))

    assert solve(more).vector[0] <= solve(problem).vector[0]


PIE = Template("main", 8, 2, ("pie",), most=9)
STEW = Template("main", 12, 3, ("stew",), most=9)


def test_what_is_short_is_covered_before_anybody_is_spared() -> None:
    people = tuple(Person(f"g{i}", i, {0: 5}) for i in range(3))  # loads 0, 1, 2
    problem = Problem(people, (PIE,), (Gap("main", 24, 0, 4),))  # 3 pies of 8

    assert set(solve(problem).chosen) == {"g0", "g1", "g2"}


def test_the_one_who_brought_least_so_far_is_asked() -> None:
    people = (Person("busy", 3, {0: 10}), Person("rested", 0, {0: 1}))
    problem = Problem(people, (PIE,), (Gap("main", 8, 0, 4),))

    assert dict(solve(problem).chosen) == {"rested": 0}


def test_fewer_people_are_asked_when_burdens_are_equal() -> None:
    heavy = replace(STEW, effort=2)
    people = tuple(Person(f"g{i}", 0, {0: 5, 1: 5}) for i in range(4))
    problem = Problem(people, (PIE, heavy), (Gap("main", 24, 0, 4),))  # 2 stews of 12, or 3 pies of 8

    assert Counter(solve(problem).chosen.values()) == {1: 2}


def test_who_likes_a_category_is_asked_among_equals() -> None:
    people = (Person("a", 0, {0: 5}), Person("b", 0, {0: 8}))
    problem = Problem(people, (PIE,), (Gap("main", 8, 0, 4),))

    assert set(solve(problem).chosen) == {"b"}


def test_a_dish_that_also_suits_people_with_needs_wins() -> None:
    suits = replace(PIE, fits=frozenset({0}), dishes=("lentil pie",), effort=3)
    problem = Problem(
        (Person("a", 0, {0: 10, 1: 1}),), (PIE, suits), (Gap("main", 8, 0, 4),), (Profile(("vegan",), "main", 2),)
    )

    assert dict(solve(problem).chosen) == {"a": 1}


def test_who_was_asked_is_kept_although_another_would_be_fairer() -> None:
    people = (Person("asked", 3, {0: 1}), Person("rested", 0, {0: 10}))
    problem = Problem(people, (PIE,), (Gap("main", 8, 0, 4),), asked={"asked": 0})

    assert dict(solve(problem).chosen) == {"asked": 0}


@pytest.mark.parametrize("asked_before", [10, 20])
def test_after_one_drop_out_at_most_one_ask_in_ten_moves(asked_before: int) -> None:
    templates = (PIE, replace(STEW, dishes=("stew",), most=40))
    everybody = tuple(Person(f"g{i}", i % 3, {0: 5 + i % 4, 1: 4}) for i in range(2 * asked_before))
    gap = (Gap("main", 8 * asked_before, asked_before, 4),)
    templates = (replace(PIE, most=40), templates[1])
    first = solve(Problem(everybody, templates, gap)).chosen
    gone = sorted(first)[0]
    left = tuple(person for person in everybody if person.id != gone)

    then = solve(Problem(left, templates, gap, asked={who: t for who, t in first.items() if who != gone})).chosen

    moved = sum(then.get(who) != t for who, t in first.items() if who != gone)
    assert moved <= len(first) / 10


@pytest.mark.parametrize("seed", range(6))
def test_whoever_drops_out_of_a_mixed_crowd_at_most_one_ask_in_ten_moves(seed: int) -> None:
    problem = asking(24, seed, tight=seed % 2 == 1)
    first = solve(problem, effort=0.3)

    moved = [after_one_drop_out(problem, first, gone) for gone in sorted(first.chosen)[seed::6]]

    assert moved
    assert max(moved) <= 0.1


def test_people_who_are_alike_are_one_class() -> None:
    from planning.asks.model import classes

    people = tuple(Person(f"g{i}", 0, {0: 5}) for i in range(30))

    assert len(classes(Problem(people, (PIE,), (Gap("main", 80, 0, 4),)))) == 1


def test_with_nobody_to_ask_the_shortage_stands_and_is_proved() -> None:
    solution = solve(Problem((), (), (Gap("main", 7, 1, 2),)))

    assert solution.vector[0] == 2 * (7 + 1)  # weight 2, seven servings and one dish
    assert all(solution.proved)


def test_a_template_without_servings_is_refused() -> None:
    with pytest.raises(ValueError, match="needs servings"):
        Template("main", 0, 1, ("pie",))
