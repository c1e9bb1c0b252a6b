"""List scheduling: a timeline that always comes, at once, and the solver's first hint.

Dishes are placed one after the other, each chain from its last step backwards as late as it fits,
or from its first step forwards as early as it fits when there is no room. Several orders are
tried; the cheapest schedule stays. Nothing here is random.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import combinations

from planning.kitchen.board import Board, find, in_window
from planning.kitchen.core import (
    Cost,
    Placed,
    Problem,
    Schedule,
    Task,
    cost,
    keeps_rules,
    off_heat_min,
    unsafe_min,
)
from planning.kitchen.serial import serial_schedule


def _chain(problem: Problem, last: str) -> list[Task]:
    """The task and all before it, in an order that keeps every lag."""
    seen: dict[str, None] = {}

    def visit(name: str) -> None:
        for lag in problem.before[name]:
            if lag.before not in seen:
                visit(lag.before)
        seen.setdefault(name)

    visit(last)
    return [problem.task[name] for name in seen]


def _backward(board: Board, problem: Problem, chain: Sequence[Task], bound: int) -> dict[str, Placed] | None:
    """Each task as late as it fits, last first; None when the first one would start too early."""
    placed: dict[str, Placed] = {}
    mark = board.mark()
    for task in reversed(chain):
        end = bound
        least: int | None = None
        for lag in problem.after[task.id]:
            if lag.after in placed:
                end = min(end, placed[lag.after].start - lag.least)
                if lag.most is not None:
                    least = max(least or 0, placed[lag.after].start - lag.most)
        found = find(board, task, end, up=False, most=least)
        if found is None:
            board.undo(mark)
            return None
        placed[task.id] = found
        board.take(task, task.modes[found.mode], found.start)
    return placed


def _forward(board: Board, problem: Problem, chain: Sequence[Task]) -> dict[str, Placed]:
    """Each task as early as it fits; a task with nothing to fit is put after the horizon's work."""
    start_over = 0
    placed: dict[str, Placed] = {}
    mark = board.mark()
    for _ in range(200):
        board.undo(mark)
        placed = {}
        again = None
        for task in chain:
            bound, most = start_over if not problem.before[task.id] else 0, None
            for lag in problem.before[task.id]:
                if lag.before not in placed:
                    continue
                end = placed[lag.before].start + problem.task[lag.before].modes[placed[lag.before].mode].duration
                bound = max(bound, end + lag.least)
                most = end + lag.most if lag.most is not None else most
            found = find(board, task, bound, up=True)
            if found is None:
                found = Placed(in_window(task, bound, up=True) or bound, task.only or 0)
            if most is not None and found.start > most and again is None:
                again = found.start - most
            placed[task.id] = found
            board.take(task, task.modes[found.mode], found.start)
        if again is None:
            return placed
        start_over += max(1, again)
    return placed


def _place(problem: Problem, order: Sequence[str], palette: frozenset[int] | None) -> Schedule:
    board = Board(problem, palette=palette)
    placed: dict[str, Placed] = {}
    due = {c.id: c.due for c in problem.courses}
    for last in order:
        chain = [t for t in _chain(problem, last) if t.id not in placed]
        dish = problem.dish_of.get(last)
        found = None
        if problem.late_ends and dish is not None:
            found = _backward(board, problem, chain, due[dish.course])
        if found is None:
            found = _forward(board, problem, chain)
        placed.update(found)
    return _served(problem, board, placed)


def _served(problem: Problem, board: Board, placed: dict[str, Placed]) -> Schedule:
    served = {c.id: c.due for c in problem.courses}
    bare = Schedule(placed, served)
    for dish in problem.dishes:
        served[dish.course] = max(served[dish.course], bare.end(problem, dish.last))
    held: dict[str, int] = {}
    for dish in problem.dishes:
        hold = dish.hold
        if hold is None:
            continue
        since = bare.end(problem, hold.after)
        length = served[dish.course] - since
        off = off_heat_min(problem, bare, dish)
        if length <= 0 or (not hold.must and (dish.limit_min is None or off <= dish.limit_min)):
            continue
        probe = Task(f"hold:{dish.id}", ())
        for number, (mode, goes_with) in enumerate(hold.modes):
            if goes_with not in (None, placed[hold.after].mode):
                continue
            if board.clash(probe, mode, since, length) is None:
                board.take(probe, mode, since, length)
                held[dish.id] = number
                break
    return Schedule(placed, served, held)


def _orders(problem: Problem) -> list[list[str]]:
    """Orders worth trying: long chains first, tight dishes last served first, by temperature, by release."""
    lasts = [d.last for d in problem.dishes]
    loose = [t.id for t in problem.tasks if not problem.after[t.id] and t.id not in problem.dish_of]
    chains = {name: _chain(problem, name) for name in lasts + loose}
    dish = problem.dish_of

    def work(name: str) -> int:
        return sum(min(m.duration for m in t.modes) for t in chains[name])

    def tightness(name: str) -> int:
        return dish[name].limit_min or 10_000 if name in dish else 10_000

    def heat(name: str) -> int:
        return max((m.low for t in chains[name] for m in t.modes), default=0)

    def release(name: str) -> int:
        return max((t.windows[0][0] for t in chains[name] if t.windows), default=0)

    def scarce(name: str) -> int:
        return min((len(t.modes) for t in chains[name]), default=0)

    def needs(name: str) -> int:
        return max((sum(a for _, a in m.uses) for t in chains[name] for m in t.modes), default=0)

    keys: list[Callable[[str], tuple[int, ...]]] = [
        lambda n: (-work(n),),
        lambda n: (tightness(n), -work(n)),
        lambda n: (-release(n), tightness(n), -work(n)),
        lambda n: (heat(n), -work(n)),
        lambda n: (-heat(n), -work(n)),
        lambda n: (scarce(n), -needs(n), -work(n)),
        lambda n: (-needs(n), -work(n)),
        lambda n: (work(n),),
    ]
    return [sorted(lasts + loose, key=lambda n, key=key: (key(n), n)) for key in keys]  # type: ignore[misc]


def _palettes(problem: Problem) -> list[frozenset[int] | None]:
    """None, and the few small sets of set-points with which every dish in an oven can do."""
    wants = {frozenset(m.low for m in t.modes) for t in problem.tasks if t.modes and t.modes[0].oven is not None}
    if not wants or any(m.low != m.high for t in problem.tasks for m in t.modes if m.oven is not None):
        return [None]
    settings = sorted(frozenset().union(*wants))
    for size in (1, 2, 3):
        found = [frozenset(c) for c in combinations(settings, size) if all(w & set(c) for w in wants)]
        if found:
            # Fewer degrees apart means shorter changes.
            return [None, *sorted(found, key=lambda c: (max(c) - min(c), sorted(c)))[:4]]
    return [None]


def list_schedule(problem: Problem, most: int | None = None) -> tuple[Schedule, Cost]:
    """The cheapest of several list schedules that keep every rule.

    Always answers: where none keeps every rule (a step that fits nowhere), the cheapest of those that
    do not; `core.keeps_rules` tells. At most `most` schedules are made; unsaid, fewer the more there is
    to place, as each takes longer.
    """
    if not problem.late_ends:
        return serial_schedule(problem)
    usual = max(4, min(120, 80_000 // max(1, len(problem.tasks)) ** 2))
    left = usual if most is None else min(usual, most)
    best: tuple[bool, int, Schedule, Cost] | None = None
    palettes = _palettes(problem)
    for order, palette in ((o, p) for o in _orders(problem) for p in palettes):
        for schedule, found in _improved(problem, order, palette):
            rank = (not keeps_rules(problem, schedule), found.objective)
            if best is None or rank < best[:2]:
                best = (*rank, schedule, found)
            left -= 1
            if rank == (False, 0) or left <= 0:
                return best[2], best[3]
    assert best is not None
    return best[2], best[3]


def _improved(problem: Problem, order: list[str], palette: frozenset[int] | None) -> Iterable[tuple[Schedule, Cost]]:
    """The order itself, and then with the dishes that came off badly moved to the front."""
    due = {c.id: c.due for c in problem.courses}
    for _ in range(3):
        schedule = _place(problem, order, palette)
        yield schedule, cost(problem, schedule)
        bad = [
            d.last
            for d in problem.dishes
            if schedule.end(problem, d.last) > due[d.course] or unsafe_min(problem, schedule, d)
        ]
        if not bad:
            return
        order = bad + [name for name in order if name not in bad]
