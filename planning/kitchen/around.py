"""Large neighbourhoods: all but some dishes stand still, or nearly, and the constraint solver places those anew.

(Shaw, Principles and Practice of Constraint Programming 1998; from memory.) Every part has its own
small deterministic limit, and only a cheaper schedule is looked for.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from planning.kitchen import guide
from planning.kitchen import model as rules
from planning.kitchen.budget import Budget
from planning.kitchen.core import Mode, Schedule
from planning.kitchen.search import Search

PART = 0.05
"""Deterministic units for one neighbourhood."""

SWAYS = (0, 0, 0, 2, 4)
"""For each kind of neighbourhood, by how many slots the dishes that stay may move with their appliances."""

OVERHEAD = 0.01
"""What making one ready takes, in the same units; measured once, so that effort means time."""


class Around:
    """The model of a kitchen, made once, of which parts are solved."""

    def __init__(self, cp_model: Any, model: rules.Model, search: Search, budget: Budget) -> None:
        self.cp_model, self.model, self.search, self.budget = cp_model, model, search, budget
        self.size = dict.fromkeys(range(len(SWAYS)), 14.0)

    def improve(self, tries: int, heard: Callable[[Schedule], None] | None) -> None:
        """So many neighbourhoods, each solved from the best schedule so far, which `search` then holds."""
        search = self.search
        for _ in range(tries):
            if self.budget.over() or search.total() <= search.floor:
                return
            kind = search.draw(len(SWAYS))
            model = self._fixed(self._free(kind), SWAYS[kind])
            model.add(sum(self.model.terms) <= search.total() - 1)
            solver, status = self.budget.run(self.cp_model, model, PART)
            self.budget.solved += OVERHEAD
            if status in (self.cp_model.OPTIMAL, self.cp_model.FEASIBLE):
                search.load(guide.read(self.model, solver.value))
                search.tighten()
                if heard is not None:
                    heard(search.schedule())
            # As many dishes as can just be searched through to the end.
            if status == self.cp_model.UNKNOWN:
                self.size[kind] = max(4.0, self.size[kind] * 0.9)
            elif status != self.cp_model.FEASIBLE:
                easy = solver.response_proto.deterministic_time < PART / 10
                self.size[kind] = min(float(len(search.chains)), self.size[kind] * (1.3 if easy else 1.04))

    def _free(self, kind: int) -> set[int]:
        """Dishes to place anew: ready about the same time as a costly one, or drawing on the same, or late."""
        search, draw = self.search, self.search.draw
        ends = [s.end if s is not None else 0 for s in search.stands]
        first = search.costly() if draw(6) else draw(len(ends))
        about, course = ends[first], None
        late = [c for c, at in search.served.items() if at > search.due[c]]
        if kind == 2 and late:
            course = late[draw(len(late))]
            about = search.served[course]
        far: dict[int, int] = {}
        for n, end in enumerate(ends):
            far[n] = abs(end - about) * 8 + draw(60)
            if kind == 1 and not search.things[n] & search.things[first]:
                far[n] += 100
            if course is not None and n in search.of_course[course] and end >= about:
                far[n] = 0
        return set(sorted(far, key=lambda n: (far[n], n))[: int(self.size[kind])]) | {first}

    def _fixed(self, free: set[int], sway: int) -> Any:
        """A copy of the model with all other dishes where they are, give or take `sway` slots.

        Those keep the order in which they go through an oven; else most of the search would be about them.
        """
        m, search = self.model, self.search
        model = m.model.clone()
        variables = model.proto.variables
        spans: dict[str, tuple[int, Mode]] = {}
        for n, (chain, stand) in enumerate(zip(search.chains, search.stands, strict=True)):
            if n in free or stand is None:
                continue
            for task, way, start in zip(chain.tasks, stand.ways, stand.starts, strict=True):
                domain = variables[m.start[task.id].index].domain
                domain[:] = _within(list(domain), start - sway, start + sway)
                spans[task.id] = (start, way.mode)
                if len(task.modes) > 1:
                    for number, literal in enumerate(m.chosen[task.id]):
                        variables[literal.index].domain[:] = [int(number == way.number)] * 2
            if chain.dish is not None:
                for number, literal in enumerate(m.held.get(chain.dish.id, ())):
                    variables[literal.index].domain[:] = [int(number == stand.hold)] * 2
        for (a, b), before in m.before.items() if sway else ():
            if a in spans and b in spans and m.problem.gap(spans[a][1], spans[b][1]):
                variables[before.index].domain[:] = [int(spans[a][0] < spans[b][0])] * 2
        return model


def _within(domain: list[int], lo: int, hi: int) -> list[int]:
    """The part of a domain, given as the ends of its ranges, from `lo` to `hi`."""
    found: list[int] = []
    for first, last in zip(domain[::2], domain[1::2], strict=True):
        if max(first, lo) <= min(last, hi):
            found += [max(first, lo), min(last, hi)]
    return found
