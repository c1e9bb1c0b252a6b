"""What the solver is told beside the rules, and how its answer is read: hints, second wishes, schedules."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from planning.kitchen.core import Cost, Placed, Schedule
from planning.kitchen.model import Model


def hint(m: Model, schedule: Schedule) -> None:
    """Start the search at a known schedule."""
    m.model.clear_hints()
    spans: dict[str, tuple[int, int, int]] = {}
    true: dict[int, bool] = {}
    for name, where in schedule.placed.items():
        task = m.problem.task[name]
        mode = task.modes[where.mode]
        spans[name] = (where.start, where.start + mode.duration, mode.low)
        m.model.add_hint(m.start[name], where.start)
        if len(task.modes) > 1:
            for number, literal in enumerate(m.chosen[name]):
                m.model.add_hint(literal, number == where.mode)
                true[literal.index] = number == where.mode
        if not isinstance(m.size[name], int):
            m.model.add_hint(m.size[name], mode.duration)
            m.model.add_hint(m.end[name], where.start + mode.duration)
    for course, slot in schedule.served.items():
        m.model.add_hint(m.served[course], slot)
    for dish, literals in m.held.items():
        for number, literal in enumerate(literals):
            m.model.add_hint(literal, schedule.held.get(dish) == number)
            true[literal.index] = schedule.held.get(dish) == number
    for there, literals in m.groups.values():
        m.model.add_hint(there, any(true.get(literal.index, False) for literal in literals))
    for (a, b), first in m.before.items():
        if a in spans and b in spans:
            apart = spans[a][2] != spans[b][2]
            m.model.add_hint(first, apart and spans[a][1] <= spans[b][0])
    for (a, b), same in m.alike.items():
        if a in spans and b in spans:
            m.model.add_hint(same, spans[a][2] == spans[b][2])


def tidy(m: Model, reached: Cost) -> None:
    """Second wish, at the objective reached: few set-points and hands at once, known starts kept, no early starts."""
    model, problem = m.model, m.problem
    if m.terms:
        model.add(sum(m.terms) <= reached.objective)
    wishes: list[Any] = []
    used: dict[tuple[str, int, int], list[Any]] = {}
    for use in m.oven_uses:
        used.setdefault((use.mode.oven or "", use.mode.low, use.mode.high), []).append(use.literal)
    for key, literals in sorted(used.items()):
        on = model.new_bool_var(f"set {key}")
        for literal in literals:
            model.add_implication(literal, on)
        wishes.append(200 * on)
    for name, slot in sorted(problem.preferred.items()):
        if name in m.start:
            moved = model.new_int_var(0, problem.horizon, f"moved {name}")
            model.add_abs_equality(moved, m.start[name] - slot)
            wishes.append(20 * moved)
    hands = next((r for r in problem.resources if r.id == "hands"), None)
    if hands is not None and m.demands.get("hands") and hands.capacity > 1:
        most = model.new_int_var(1, hands.capacity, "hands at once")
        demands = m.demands["hands"]
        model.add_cumulative([i for i, _ in demands], [a for _, a in demands], most)
        wishes.append(50 * most)
    due = max((c.due for c in problem.courses), default=0)
    if problem.late_ends:
        wishes.extend(due - m.start[t.id] for t in problem.tasks)
    model.minimize(sum(wishes) if wishes else 0)


def read(m: Model, value: Callable[[Any], int]) -> Schedule:
    """The schedule the solver holds, every course served no later than its dishes need."""
    placed = {
        name: Placed(value(start), next(n for n, literal in enumerate(m.chosen[name]) if value(literal)))
        for name, start in m.start.items()
    }
    served = {name: value(v) for name, v in m.served.items()}
    held = {
        dish: number for dish, literals in m.held.items() for number, literal in enumerate(literals) if value(literal)
    }
    # Serving no later than needed: the solver's own variable need not be tight when nothing is proved.
    schedule = Schedule(placed, served, held)
    tight = {c.id: c.due for c in m.problem.courses}
    for dish in m.problem.dishes:
        tight[dish.course] = max(tight[dish.course], schedule.end(m.problem, dish.last))
    return Schedule(placed, tight, held)
