"""The asks as a CP-SAT model: one function for each rule.

People who are alike are one class, with a whole number of its members asked for each template. What "alike" means
depends on the level being solved: what is short only asks who can make what; burdens ask for the load, too; only
how gladly somebody does it needs everything. Three hundred guests become a dozen classes, then some more, and the
optimum is the same each time, as no rule of these levels tells two members of a class apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from planning.asks.problem import Person, Problem

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import CpModel

ABLE, LOADED, GLAD = 0, 1, 2
"""How finely people are told apart: by what they can make; also by their load; also by how gladly."""

DETAIL = (ABLE, ABLE, ABLE, LOADED, LOADED, LOADED, GLAD)
"""What each of LEVELS needs."""


@dataclass(frozen=True)
class PeopleClass:
    """Interchangeable people: `first` stands for all; `ids` with the least loaded first."""

    first: Person
    ids: tuple[str, ...]
    asked: int | None


def classes(problem: Problem, detail: int = GLAD) -> tuple[PeopleClass, ...]:
    groups: dict[object, list[Person]] = {}
    for person in problem.people:
        if person.can:
            able: object = frozenset(person.can.items()) if detail >= GLAD else frozenset(person.can)
            load = person.load if detail >= LOADED else 0
            groups.setdefault((able, load, problem.asked.get(person.id)), []).append(person)
    found = []
    for members in groups.values():
        members.sort(key=lambda person: person.load)
        found.append(PeopleClass(members[0], tuple(p.id for p in members), problem.asked.get(members[0].id)))
    return tuple(found)


@dataclass(frozen=True)
class Model:
    """The built model: `asked[c, t]` counts members of class c asked for template t; `levels` in LEVELS' order,
    None for those the classes are too coarse for, and for the heaviest burden, which is a limit on the model."""

    cp: CpModel
    classes: tuple[PeopleClass, ...]
    asked: dict[tuple[int, int], Any]
    levels: tuple[Any, ...]


def build(problem: Problem, cp: CpModel, detail: int = GLAD, heaviest: int | None = None) -> Model:
    """The model at one detail; with `heaviest` nobody can be asked for more than that burden (detail LOADED up)."""
    groups = classes(problem, detail)
    asked = {
        (c, t): cp.new_int_var(0, min(len(group.ids), problem.templates[t].most), f"asked_{c}_{t}")
        for c, group in enumerate(groups)
        for t in sorted(group.first.can)
        if not too_heavy(problem, group, t, heaviest)
    }
    one_ask_each(cp, groups, asked)
    not_too_alike(problem, cp, asked)
    levels = (
        shortage(problem, cp, asked),
        diets(problem, cp, asked),
        few_moves(problem, cp, moves(groups, asked)),
        None,
        history(problem, groups, asked) if detail >= LOADED else None,
        sum(asked.values()) if detail >= LOADED else None,
        reluctance(groups, asked) if detail >= GLAD else None,
    )
    return Model(cp, groups, asked, levels)


def few_moves(problem: Problem, cp: CpModel, moved: Any) -> Any:
    """moves <= one in ten of the open asks: nobody who was asked is toyed with, whatever it would gain"""
    if not isinstance(moved, int):
        cp.add(moved <= problem.most_moves)
    return moved


def too_heavy(problem: Problem, group: PeopleClass, t: int, heaviest: int | None) -> bool:
    """F = the largest burden among those asked: asked[c,t] = 0 where burden(c,t) > F"""
    return heaviest is not None and problem.burden(group.first, t) > heaviest


def one_ask_each(cp: CpModel, groups: Sequence[PeopleClass], asked: dict[tuple[int, int], Any]) -> None:
    """sum_t asked[c,t] <= members of c"""
    mine: dict[int, list[Any]] = {}
    for (c, _), x in asked.items():
        mine.setdefault(c, []).append(x)
    for c, variables in mine.items():
        cp.add(sum(variables) <= len(groups[c].ids))


def not_too_alike(problem: Problem, cp: CpModel, asked: dict[tuple[int, int], Any]) -> None:
    """sum_c asked[c,t] <= most_t"""
    for t, variables in by_template(asked).items():
        cp.add(sum(variables) <= problem.templates[t].most)


def by_template(asked: dict[tuple[int, int], Any]) -> dict[int, list[Any]]:
    found: dict[int, list[Any]] = {}
    for (_, t), x in asked.items():
        found.setdefault(t, []).append(x)
    return found


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
    mine = by_template(asked)
    for p, profile in enumerate(problem.profiles):
        without = cp.new_bool_var(f"without_{p}")
        cp.add(
            without >= 1 - sum(x for t, variables in mine.items() if p in problem.templates[t].fits for x in variables)
        )
        total += profile.people * without
    return total


def moves(groups: tuple[PeopleClass, ...], asked: dict[tuple[int, int], Any]) -> Any:
    """members of c asked before and not kept: |c| - asked[c, what they were asked for]"""
    total: Any = 0
    for c, group in enumerate(groups):
        if group.asked is not None and group.asked in group.first.can:
            total += len(group.ids) - asked.get((c, group.asked), 0)
    return total


def history(problem: Problem, groups: tuple[PeopleClass, ...], asked: dict[tuple[int, int], Any]) -> Any:
    """sum effort_t load_c asked[c,t]"""
    return sum(problem.templates[t].effort * groups[c].first.load * x for (c, t), x in asked.items())


def reluctance(groups: tuple[PeopleClass, ...], asked: dict[tuple[int, int], Any]) -> Any:
    """sum (10 - gladness) asked[c,t]"""
    return sum((10 - groups[c].first.can[t]) * x for (c, t), x in asked.items())
