"""List scheduling towards an early end: for projects and job shops, which the same core solves.

Serial schedule generation by the longest way to the end, then pushed late and early again in turns
(justification; Valls, Ballestín and Quintanilla, European Journal of Operational Research 2005, from memory).
"""

from __future__ import annotations

from collections.abc import Callable

from planning.kitchen.board import Board, find
from planning.kitchen.core import Cost, Placed, Problem, Schedule, Task, cost

ROUNDS = 4


def serial_schedule(problem: Problem) -> tuple[Schedule, Cost]:
    """The cheapest of a few serial schedules; keeps every rule of problems without windows and greatest lags."""
    rank = _topological(problem)
    tail = _tails(problem, rank)
    work = {t.id: sum(a for _, a in t.modes[0].uses) * t.modes[0].duration for t in problem.tasks}
    best: tuple[Schedule, Cost] | None = None
    keys: list[Callable[[str], tuple[int, ...]]] = [
        lambda n: (-tail[n], rank[n]),
        lambda n: (-tail[n] - work[n] // 8, rank[n]),
        lambda n: (-len(problem.after[n]), -tail[n], rank[n]),
    ]
    for key in keys:
        placed = _forward(problem, _ready_order(problem, key))
        for _ in range(ROUNDS):
            schedule = _served(problem, placed)
            found = cost(problem, schedule)
            if best is None or found.objective < best[1].objective:
                best = schedule, found
            late = _backward(problem, placed)
            if late is None:
                break
            placed = _forward(problem, _ready_order(problem, lambda n, late=late: (late[n].start, rank[n])))  # type: ignore[misc]
    assert best is not None
    return best


def _topological(problem: Problem) -> dict[str, int]:
    waiting = {t.id: len(problem.before[t.id]) for t in problem.tasks}
    ready = [t.id for t in problem.tasks if not waiting[t.id]]
    for name in ready:
        for lag in problem.after[name]:
            waiting[lag.after] -= 1
            if not waiting[lag.after]:
                ready.append(lag.after)
    return {name: n for n, name in enumerate(ready)}


def _tails(problem: Problem, rank: dict[str, int]) -> dict[str, int]:
    """Slots from the start of each task to the end of the longest chain after it."""
    tail: dict[str, int] = {}
    for name in sorted(rank, key=lambda n: -rank[n]):
        own = min(m.duration for m in problem.task[name].modes)
        tail[name] = own + max((lag.least + tail[lag.after] for lag in problem.after[name]), default=0)
    return tail


def _ready_order(problem: Problem, key: Callable[[str], tuple[int, ...]]) -> list[Task]:
    """By the key, but never a task before those it waits for."""
    waiting = {t.id: len(problem.before[t.id]) for t in problem.tasks}
    ready = [t.id for t in problem.tasks if not waiting[t.id]]
    order: list[Task] = []
    while ready:
        name = min(ready, key=key)
        ready.remove(name)
        order.append(problem.task[name])
        for lag in problem.after[name]:
            waiting[lag.after] -= 1
            if not waiting[lag.after]:
                ready.append(lag.after)
    return order


def _length(problem: Problem, name: str, where: Placed) -> int:
    return problem.task[name].modes[where.mode].duration


def _forward(problem: Problem, order: list[Task]) -> dict[str, Placed]:
    board, placed = Board(problem), dict[str, Placed]()
    for task in order:
        bound = 0
        for lag in problem.before[task.id]:
            before = placed[lag.before]
            bound = max(bound, before.start + _length(problem, lag.before, before) + lag.least)
        found = find(board, task, bound, up=True) or Placed(bound, 0)
        board.take(task, task.modes[found.mode], found.start)
        placed[task.id] = found
    return placed


def _backward(problem: Problem, placed: dict[str, Placed]) -> dict[str, Placed] | None:
    """The same tasks as late as they fit before the end reached, those that end last first."""
    ends = {n: w.start + _length(problem, n, w) for n, w in placed.items()}
    last = max(ends.values(), default=0)
    rank = _topological(problem)
    board, late = Board(problem), dict[str, Placed]()
    for name in sorted(ends, key=lambda n: (-ends[n], -rank[n])):
        task, bound = problem.task[name], last
        for lag in problem.after[name]:
            if lag.after not in late:
                return None
            bound = min(bound, late[lag.after].start - lag.least)
        found = find(board, task, bound, up=False)
        if found is None:
            return None
        board.take(task, task.modes[found.mode], found.start)
        late[name] = found
    return late


def _served(problem: Problem, placed: dict[str, Placed]) -> Schedule:
    served = {c.id: c.due for c in problem.courses}
    bare = Schedule(placed, served)
    for dish in problem.dishes:
        served[dish.course] = max(served[dish.course], bare.end(problem, dish.last))
    return Schedule(placed, served)
