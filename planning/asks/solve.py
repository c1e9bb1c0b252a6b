"""Solves a problem of asks: greedily at once, or level by level with CP-SAT, started from the greedy answer.

One worker and a deterministic time limit: the same problem and effort give the same answer. The solver is only
imported when it is needed. A level which could not be proved within its time is held at the value found.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from importlib.util import find_spec

from planning.asks.model import DETAIL, LOADED, Model, PeopleClass, build
from planning.asks.problem import LEVELS, Chosen, Problem

HEAVIEST = LEVELS.index("heaviest")

LEAST = 0.02
"""Deterministic time every step gets, even when others used everything up: enough for easy ones."""


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
    moved = sum(chosen.get(who) != t for who, t in problem.open_asks.items())
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
    chosen: dict[str, int] = {}
    state = _State(problem)
    for who, t in problem.open_asks.items():
        if state.taken[t] < problem.templates[t].most:
            chosen[who] = t
            state.take(t)
    waiting: list[list[tuple[int, int, int, str]]] = [[] for _ in problem.templates]
    for at, person in enumerate(problem.people):
        for t, glad in person.can.items():
            waiting[t].append((problem.burden(person, t), -glad, at, person.id))
    for line in waiting:
        line.sort(reverse=True)  # the lightest burden last, to be taken first
    while True:
        best: tuple[tuple[int, int], tuple[int, int, int], int, str] | None = None
        for t, line in enumerate(waiting):
            while line and line[-1][3] in chosen:
                line.pop()
            gain, fed = state.gain(t)
            if line and (gain > 0 or fed > 0):
                *rank, who = line[-1]
                candidate = ((-gain, -fed), (rank[0], rank[1], rank[2]), t, who)
                best = candidate if best is None else min(best, candidate)
        if best is None:
            return chosen
        _, _, t, who = best
        chosen[who] = t
        state.take(t)


def least(problem: Problem) -> tuple[int, ...]:
    """What each level cannot fall below, whoever is asked: needs for which nobody can bring anything stay open."""
    possible = {t for person in problem.people for t in person.can}
    fed = {p for t in possible for p in problem.templates[t].fits}
    without = sum(profile.people for p, profile in enumerate(problem.profiles) if p not in fed)
    return tuple(without if level == "diets" else 0 for level in LEVELS)


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

    `effort` is deterministic time for the hardest step (1.0 is a few seconds of work), and all steps together get
    twice that. `seconds` is a wall-clock backstop for each step which is only there for emergencies, as it makes
    answers depend on the machine.
    """
    start = greedy(problem)
    value = measure(problem, start)
    nobody = not any(person.can for person in problem.people)
    if nobody or effort <= 0 or find_spec("ortools") is None:
        return Solution(start, value, tuple(nobody or (v == 0 and level == 0) for level, v in enumerate(value)))
    return _Search(problem, start, effort, seed, seconds).run()


class _Search:
    """Level by level: each is made as small as the ones before allow, from the best answer so far."""

    def __init__(self, problem: Problem, start: Chosen, effort: float, seed: int, seconds: float | None) -> None:
        self.problem = problem
        self.chosen = start
        self.effort = effort
        self.left = 2 * effort
        self.seed = seed
        self.seconds = seconds
        self.heaviest: int | None = None
        self.least = least(problem)

    def run(self) -> Solution:
        proved: list[bool] = []
        model: Model | None = None
        for level in range(len(LEVELS)):
            if self.value(level) == self.least[level]:
                proved.append(True)
            elif level == HEAVIEST:
                proved.append(self.lighten())
                model = None
            else:
                if model is None or DETAIL[level] != DETAIL[level - 1]:
                    model = self.model(DETAIL[level], level)
                proved.append(self.improve(model, level))
                model.cp.add(model.levels[level] <= self.value(level))
            if level == HEAVIEST:
                self.heaviest = self.value(level)
        return Solution(self.chosen, measure(self.problem, self.chosen), tuple(proved))

    def value(self, level: int) -> int:
        return measure(self.problem, self.chosen)[level]

    def model(self, detail: int, before: int, heaviest: int | None = None) -> Model:
        """A model which keeps the values reached on the levels before."""
        from ortools.sat.python import cp_model

        model = build(self.problem, cp_model.CpModel(), detail, heaviest if heaviest is not None else self.heaviest)
        for level in range(before):
            expression = model.levels[level]
            if not isinstance(expression, int | None):
                model.cp.add(expression <= self.value(level))
            elif expression is not None and expression > self.value(level):
                model.cp.add_bool_or([])  # a constant too large: nothing fits
        return model

    def improve(self, model: Model, level: int) -> bool:
        """Make one level smaller; whether the value is proved the least."""
        model.cp.minimize(model.levels[level])
        status, found = self.attempt(model)
        if found is not None and measure(self.problem, found) < measure(self.problem, self.chosen):
            self.chosen = found
        return status == "OPTIMAL"

    def lighten(self) -> bool:
        """Bisect for the lightest heaviest burden under which the levels before keep their values."""
        people = {person.id: person for person in self.problem.people}
        burdens = {self.problem.burden(person, t) for person in people.values() for t in person.can}
        steps = sorted(burden for burden in burdens if burden < self.value(HEAVIEST))
        if self.may_ask_nobody():
            steps.insert(0, 0)
        low, proved = 0, True
        while steps[low:]:
            middle = (low + len(steps)) // 2
            status, found = self.attempt(self.model(LOADED, HEAVIEST, steps[middle]))
            if found is not None:
                self.chosen = found
                steps = [step for step in steps if step < self.value(HEAVIEST)]
            else:
                proved = proved and status == "INFEASIBLE"
                low = middle + 1
        return proved

    def may_ask_nobody(self) -> bool:
        return measure(self.problem, {})[:HEAVIEST] <= measure(self.problem, self.chosen)[:HEAVIEST]

    def attempt(self, model: Model) -> tuple[str, Chosen | None]:
        """(the solver's status, the people it asks)"""
        from ortools.sat.python import cp_model

        counts = _counts(model.classes, self.chosen)
        model.cp.clear_hints()  # type: ignore[no-untyped-call]
        for key, variable in model.asked.items():
            model.cp.add_hint(variable, counts.get(key, 0))
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = self.seed
        solver.parameters.linearization_level = 2
        # The models are small and have no symmetry left: long preparations cost more than they save.
        solver.parameters.max_presolve_iterations = 1
        solver.parameters.cp_model_probing_level = 0
        solver.parameters.symmetry_level = 0
        solver.parameters.max_deterministic_time = max(LEAST, min(self.effort, self.left))
        if self.seconds is not None:
            solver.parameters.max_time_in_seconds = self.seconds
        status = solver.status_name(solver.solve(model.cp))
        self.left -= solver.response_proto.deterministic_time
        if status not in ("OPTIMAL", "FEASIBLE"):
            return status, None
        return status, _people(model.classes, {key: int(solver.value(x)) for key, x in model.asked.items()})


def _counts(groups: Sequence[PeopleClass], chosen: Chosen) -> dict[tuple[int, int], int]:
    counts: dict[tuple[int, int], int] = {}
    for c, group in enumerate(groups):
        for who in group.ids:
            if who in chosen:
                counts[c, chosen[who]] = counts.get((c, chosen[who]), 0) + 1
    return counts


def _people(groups: Sequence[PeopleClass], counts: Mapping[tuple[int, int], int]) -> dict[str, int]:
    """Counts of classes back to people, the least loaded first."""
    chosen: dict[str, int] = {}
    left = [list(group.ids) for group in groups]
    for (c, t), n in sorted(counts.items()):
        for _ in range(n):
            chosen[left[c].pop(0)] = t
    return chosen
