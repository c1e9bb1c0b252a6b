"""Solves a problem of asks: greedily at once, or level by level with CP-SAT, started from the greedy answer.

One worker and a deterministic time limit: the same problem and effort give the same answer. The solver is only
imported when it is needed. A level which could not be proved within its time is held at the value found.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from planning.asks.model import PeopleClass, build
from planning.asks.problem import LEVELS, Chosen, Person, Problem


@dataclass(frozen=True)
class Solution:
    """Who is asked for which template; the value of each level, and whether it was proved the least possible."""

    chosen: Chosen
    vector: tuple[int, ...]
    proved: tuple[bool, ...]


def measure(problem: Problem, chosen: Chosen) -> tuple[int, ...]:
    """The value of every level of LEVELS, straight from the rules; smaller is better, the first counts most."""
    people = {person.id: person for person in problem.people}
    picked = [(people[who], t) for who, t in chosen.items()]
    short = 0
    for gap in problem.gaps:
        mine = [problem.templates[t] for _, t in picked if problem.templates[t].category == gap.category]
        servings = max(0, gap.servings - sum(template.servings for template in mine))
        short += gap.weight * (servings + max(0, gap.dishes - len(mine)))
    without = sum(
        profile.people
        for p, profile in enumerate(problem.profiles)
        if not any(p in problem.templates[t].fits for _, t in picked)
    )
    moved = sum(chosen.get(who) != t for who, t in problem.asked.items() if who in people and t in people[who].can)
    return (
        short,
        without,
        moved,
        max((problem.burden(person, t) for person, t in picked), default=0),
        sum(problem.templates[t].effort * person.load for person, t in picked),
        len(picked),
        sum(10 - person.can[t] for person, t in picked),
    )


def greedy(problem: Problem) -> dict[str, int]:
    """A good answer at once: keep what was asked, then again and again the ask that closes most for least burden."""
    people = {person.id: person for person in problem.people}
    chosen: dict[str, int] = {}
    state = _State(problem)
    for who, t in problem.asked.items():
        if who in people and t in people[who].can and state.taken[t] < problem.templates[t].most:
            chosen[who] = t
            state.take(t)
    free = [person for person in problem.people if person.id not in chosen]
    while free:
        gains = {t: state.gain(t) for t in range(len(problem.templates))}
        best: tuple[tuple[int, int, int, int, int], Person, int] | None = None
        for at, person in enumerate(free):
            for t, glad in person.can.items():
                if gains[t][0] <= 0 and gains[t][1] <= 0:
                    continue
                rank = (-gains[t][0], -gains[t][1], problem.burden(person, t), -glad, at)
                if best is None or rank < best[0]:
                    best = (rank, person, t)
        if best is None:
            break
        _, person, t = best
        chosen[person.id] = t
        state.take(t)
        free.remove(person)
    return chosen


class _State:
    """What is still short while asks are added one after another."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.servings = {gap.category: gap.servings for gap in problem.gaps}
        self.dishes = {gap.category: gap.dishes for gap in problem.gaps}
        self.weight = {gap.category: gap.weight for gap in problem.gaps}
        self.taken: Counter[int] = Counter()
        self.without = set(range(len(problem.profiles)))

    def gain(self, t: int) -> tuple[int, int]:
        """(weighted shortage, people with needs) one more of a template would close."""
        template = self.problem.templates[t]
        closed = min(template.servings, max(0, self.servings.get(template.category, 0)))
        if self.taken[t] >= template.most:
            return 0, 0
        closed += 1 if self.dishes.get(template.category, 0) > 0 else 0
        fed = sum(self.problem.profiles[p].people for p in template.fits & self.without)
        return closed * self.weight.get(template.category, 0), fed

    def take(self, t: int) -> None:
        template = self.problem.templates[t]
        if template.category in self.servings:
            self.servings[template.category] -= template.servings
            self.dishes[template.category] -= 1
        self.taken[t] += 1
        self.without -= template.fits


def solve(problem: Problem, effort: float = 1.0, seed: int = 0, seconds: float | None = None) -> Solution:
    """The best answer the effort allows; `effort` 0 is the greedy answer.

    `effort` is deterministic time for each level (about a few seconds of work for 1.0), `seconds` a wall-clock
    backstop for each level which is only there for emergencies, as it makes answers depend on the machine.
    """
    start = greedy(problem)
    value = measure(problem, start)
    if effort <= 0 or not any(person.can for person in problem.people):
        exact = not any(person.can for person in problem.people)
        return Solution(start, value, tuple(exact or (v == 0 and i == 0) for i, v in enumerate(value)))
    try:
        from ortools.sat.python import cp_model
    except ImportError:
        return Solution(start, value, tuple(False for _ in LEVELS))
    cp = cp_model.CpModel()
    model = build(problem, cp)
    best = _counts(model.classes, start)
    chosen: Chosen = start
    proved: list[bool] = []
    for level, expression in enumerate(model.levels):
        value = measure(problem, chosen)
        if isinstance(expression, int) or value[level] == 0:
            proved.append(True)
            if not isinstance(expression, int):
                cp.add(expression <= value[level])
            continue
        cp.clear_hints()  # type: ignore[no-untyped-call]
        for key, variable in model.asked.items():
            cp.add_hint(variable, best.get(key, 0))
        cp.minimize(expression)
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = seed
        solver.parameters.linearization_level = 2
        solver.parameters.max_deterministic_time = effort
        if seconds is not None:
            solver.parameters.max_time_in_seconds = seconds
        status = solver.status_name(solver.solve(cp))
        if status in ("OPTIMAL", "FEASIBLE"):
            counts = {key: int(solver.value(variable)) for key, variable in model.asked.items()}
            found = _people(model.classes, counts)
            if measure(problem, found) <= measure(problem, chosen):
                best, chosen = counts, found
        proved.append(status == "OPTIMAL")
        cp.add(expression <= measure(problem, chosen)[level])
    return Solution(chosen, measure(problem, chosen), tuple(proved))


def _counts(groups: tuple[PeopleClass, ...], chosen: Chosen) -> dict[tuple[int, int], int]:
    counts: dict[tuple[int, int], int] = {}
    for c, group in enumerate(groups):
        for who in group.ids:
            if who in chosen:
                counts[c, chosen[who]] = counts.get((c, chosen[who]), 0) + 1
    return counts


def _people(groups: tuple[PeopleClass, ...], counts: Mapping[tuple[int, int], int]) -> dict[str, int]:
    """Counts of classes back to people, in the guests' order."""
    chosen: dict[str, int] = {}
    for c, group in enumerate(groups):
        left = list(group.ids)
        for (k, t), n in sorted(counts.items()):
            if k == c:
                for _ in range(n):
                    chosen[left.pop(0)] = t
    return chosen
