"""The asks as a CP-SAT model: one function for each rule.

People who are alike (same templates, same gladness, same load, asked for the same before) are one class, with a
whole number of its members asked for each template: three hundred guests become a few dozen classes, and the
optimum is the same, as no rule tells two members of a class apart.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from planning.asks.problem import Person, Problem

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import CpModel


@dataclass(frozen=True)
class PeopleClass:
    """Interchangeable people: `first` stands for all; `ids` in the guests' order."""

    first: Person
    ids: tuple[str, ...]
    asked: int | None


def classes(problem: Problem) -> tuple[PeopleClass, ...]:
    groups: dict[object, list[Person]] = {}
    for person in problem.people:
        if person.can:
            asked = problem.asked.get(person.id)
            key = (tuple(sorted(person.can.items())), person.load, asked)
            groups.setdefault(key, []).append(person)
    return tuple(
        PeopleClass(members[0], tuple(p.id for p in members), problem.asked.get(members[0].id))
        for members in groups.values()
    )


@dataclass(frozen=True)
class Model:
    """The built model: `asked[c, t]` counts members of class c asked for template t; `levels` in LEVELS' order."""

    cp: CpModel
    classes: tuple[PeopleClass, ...]
    asked: dict[tuple[int, int], Any]
    levels: tuple[Any, ...]


def build(problem: Problem, cp: CpModel) -> Model:
    groups = classes(problem)
    asked = {
        (c, t): cp.new_int_var(0, len(group.ids), f"asked_{c}_{t}")
        for c, group in enumerate(groups)
        for t in sorted(group.first.can)
    }
    one_ask_each(cp, groups, asked)
    not_too_alike(problem, cp, asked)
    levels = (
        shortage(problem, cp, asked),
        diets(problem, cp, asked),
        moves(groups, asked),
        heaviest(problem, cp, groups, asked),
        history(problem, groups, asked),
        sum(asked.values()),
        reluctance(groups, asked),
    )
    return Model(cp, groups, asked, levels)


def one_ask_each(cp: CpModel, groups: tuple[PeopleClass, ...], asked: dict[tuple[int, int], Any]) -> None:
    """sum_t asked[c,t] <= members of c"""
    for c, group in enumerate(groups):
        cp.add(sum(asked[c, t] for t in group.first.can) <= len(group.ids))


def not_too_alike(problem: Problem, cp: CpModel, asked: dict[tuple[int, int], Any]) -> None:
    """sum_c asked[c,t] <= most_t"""
    for t, template in enumerate(problem.templates):
        cp.add(sum(x for (_, other), x in asked.items() if other == t) <= template.most)


def shortage(problem: Problem, cp: CpModel, asked: dict[tuple[int, int], Any]) -> Any:
    """sum_g weight_g (s_g + d_g), s_g >= servings_g - sum servings_t asked, d_g >= dishes_g - sum asked; s, d >= 0"""
    total: Any = 0
    for gap in problem.gaps:
        mine = [(t, x) for (_, t), x in asked.items() if problem.templates[t].category == gap.category]
        servings = cp.new_int_var(0, gap.servings, f"short_{gap.category}")
        cp.add(servings >= gap.servings - sum(problem.templates[t].servings * x for t, x in mine))
        dishes = cp.new_int_var(0, gap.dishes, f"few_{gap.category}")
        cp.add(dishes >= gap.dishes - sum(x for _, x in mine))
        total += gap.weight * (servings + dishes)
    return total


def diets(problem: Problem, cp: CpModel, asked: dict[tuple[int, int], Any]) -> Any:
    """sum_p people_p u_p, u_p >= 1 - sum of asked over templates that fit p; u in {0, 1}"""
    total: Any = 0
    for p, profile in enumerate(problem.profiles):
        without = cp.new_bool_var(f"without_{p}")
        cp.add(without >= 1 - sum(x for (_, t), x in asked.items() if p in problem.templates[t].fits))
        total += profile.people * without
    return total


def moves(groups: tuple[PeopleClass, ...], asked: dict[tuple[int, int], Any]) -> Any:
    """members of c asked before and not kept: |c| - asked[c, what they were asked for]"""
    total: Any = 0
    for c, group in enumerate(groups):
        if group.asked is not None and (c, group.asked) in asked:
            total += len(group.ids) - asked[c, group.asked]
    return total


def heaviest(problem: Problem, cp: CpModel, groups: tuple[PeopleClass, ...], asked: dict[tuple[int, int], Any]) -> Any:
    """F = the largest burden among those asked: asked[c,t] <= |c| [F >= burden(c,t)], in steps of burdens there are"""
    burdens = {(c, t): problem.burden(groups[c].first, t) for c, t in asked}
    steps = sorted(set(burdens.values()))
    allowed = {step: cp.new_bool_var(f"allowed_{step}") for step in steps}
    for lower, higher in pairwise(steps):
        cp.add_implication(allowed[higher], allowed[lower])
    for (c, t), x in asked.items():
        cp.add(x <= len(groups[c].ids) * allowed[burdens[c, t]])
    rises = [step - before for before, step in zip([0, *steps], steps, strict=False)]
    return sum(rise * allowed[step] for rise, step in zip(rises, steps, strict=True))


def history(problem: Problem, groups: tuple[PeopleClass, ...], asked: dict[tuple[int, int], Any]) -> Any:
    """sum effort_t load_c asked[c,t]"""
    return sum(problem.templates[t].effort * groups[c].first.load * x for (c, t), x in asked.items())


def reluctance(groups: tuple[PeopleClass, ...], asked: dict[tuple[int, int], Any]) -> Any:
    """sum (10 - gladness) asked[c,t]"""
    return sum((10 - groups[c].first.can[t]) * x for (c, t), x in asked.items())
