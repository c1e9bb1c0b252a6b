"""Projects and job shops, which the same core solves: serial schedules towards an early end, and a search over orders.

Schedules are pushed late and early again in turns (justification; Valls, Ballestín and Quintanilla,
European Journal of Operational Research 2005), orders are crossed and kept as in a genetic algorithm
(Hartmann, Naval Research Logistics 1998). Both from memory.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from planning.kitchen.core import Cost, Placed, Problem, Schedule, cost
from planning.kitchen.draw import Draw
from planning.kitchen.grid import Grid

POPULATION = 60


class Serial:
    """A project's tasks by number, and the best schedule met so far. `work` counts tasks placed."""

    def __init__(self, problem: Problem, seed: int = 0) -> None:
        self.problem = problem
        self.grid = Grid(problem)
        self.empty = list(self.grid.used)
        self.names = _topological(problem)
        at = {name: n for n, name in enumerate(self.names)}
        tasks = [problem.task[name] for name in self.names]
        self.ways = [tuple(w for w in self.grid.ways(t) if w.possible) or self.grid.ways(t)[:1] for t in tasks]
        self.allowed = [self.grid.starts(t) for t in tasks]
        self.before = [[(at[g.before], g.least) for g in problem.before[name]] for name in self.names]
        self.after = [[(at[g.after], g.least) for g in problem.after[name]] for name in self.names]
        self.shortest = [min(w.mode.duration for w in ways) for ways in self.ways]
        self.tail = [0] * len(tasks)
        for n in reversed(range(len(tasks))):
            self.tail[n] = self.shortest[n] + max((self.tail[j] + least for j, least in self.after[n]), default=0)
        self.draw = Draw(seed)
        self.work = 0
        self.best: tuple[Schedule, Cost] | None = None
        self.floor = self._floor()
        self.pool: list[tuple[int, list[int]]] = []

    def _floor(self) -> int:
        """No end is earlier: the longest chain, and each resource's work over its capacity.

        Only where the cost is that of one course's end; 0 elsewhere.
        """
        courses, dishes = self.problem.courses, self.problem.dishes
        if len(courses) != 1 or any(d.wait_weight or d.unsafe_weight for d in dishes):
            return 0
        ends = {d.last for d in dishes}
        waits = [self.tail[n] if self._counts(n, ends) else 0 for n in range(len(self.names))]
        head = [0] * len(self.names)
        for n in range(len(self.names)):
            head[n] = max((head[i] + self.shortest[i] + least for i, least in self.before[n]), default=0)
        low = max((h + w for h, w in zip(head, waits, strict=True)), default=0)
        if all(w for w in waits):
            for resource in self.problem.resources:
                work = sum(
                    min(sum(a for r, a in w.mode.uses if r == resource.id) * w.mode.duration for w in ways)
                    for ways in self.ways
                )
                if resource.capacity > 0:
                    low = max(low, -(-work // resource.capacity))
        return max(0, low - courses[0].due) * courses[0].late_weight * self.problem.slot_min

    def _counts(self, n: int, ends: set[str]) -> bool:
        """Whether the task's longest chain ends in one that is waited for."""
        while self.after[n]:
            n = max(self.after[n], key=lambda x: self.tail[x[0]] + x[1])[0]
        return self.names[n] in ends

    def forward(self, order: Sequence[int]) -> tuple[list[int], list[int]]:
        """Each task in turn as early as it fits: starts and the numbers of ways."""
        grid = self.grid
        grid.used[:] = self.empty
        starts, chosen = [0] * len(order), [0] * len(order)
        self.work += len(order)
        for n in order:
            bound = max((starts[i] + self.ways[i][chosen[i]].mode.duration + g for i, g in self.before[n]), default=0)
            allowed = self.allowed[n]
            if bound:
                allowed = allowed >> (bound * grid.width) << (bound * grid.width)
            best = None
            for number, way in enumerate(self.ways[n]):
                fits = grid.open(way, allowed)
                end = grid.first(fits) + way.mode.duration if fits else grid.slots
                if best is None or end < best:
                    best, chosen[n], starts[n] = end, number, max(bound, end - way.mode.duration)
            grid.take(self.ways[n][chosen[n]], starts[n])
        return starts, chosen

    def backward(self, order: Sequence[int], chosen: Sequence[int], last: int) -> list[int] | None:
        """Each task in turn as late as it fits with an end at `last` or before; None where one fits nowhere."""
        grid = self.grid
        grid.used[:] = self.empty
        starts = [0] * len(order)
        self.work += len(order)
        for n in order:
            way = self.ways[n][chosen[n]]
            bound = min((starts[j] - g for j, g in self.after[n]), default=last) - way.mode.duration
            if bound < 0:
                return None
            fits = grid.open(way, self.allowed[n] & ((1 << ((bound + 1) * grid.width)) - 1))
            if not fits:
                return None
            starts[n] = grid.last(fits)
            grid.take(way, starts[n])
        return starts

    def evaluate(self, order: Sequence[int]) -> tuple[int, list[int]]:
        """The cost after one push late and one early again, and the order of its starts."""
        starts, chosen = self.forward(order)
        self._meet(starts, chosen)
        ends = [s + self.ways[n][chosen[n]].mode.duration for n, s in enumerate(starts)]
        late = self.backward(sorted(range(len(ends)), key=lambda n: (-ends[n], -n)), chosen, max(ends, default=0))
        if late is not None:
            starts, chosen = self.forward(sorted(range(len(late)), key=lambda n: (late[n], n)))
        reached = self._meet(starts, chosen)
        return reached, sorted(range(len(starts)), key=lambda n: (starts[n], n))

    def _meet(self, starts: Sequence[int], chosen: Sequence[int]) -> int:
        placed = {name: Placed(starts[n], self.ways[n][chosen[n]].number) for n, name in enumerate(self.names)}
        served = {c.id: c.due for c in self.problem.courses}
        bare = Schedule(placed, served)
        for dish in self.problem.dishes:
            served[dish.course] = max(served[dish.course], bare.end(self.problem, dish.last))
        reached = cost(self.problem, bare)
        if self.best is None or reached.objective < self.best[1].objective:
            self.best = bare, reached
        return reached.objective

    def begin(self) -> None:
        """The orders everybody would try: the longest way to the end first, weighed in three manners."""
        work = [sum(a for _, a in ways[0].mode.uses) * ways[0].mode.duration for ways in self.ways]
        keys: list[Callable[[int], tuple[int, ...]]] = [
            lambda n: (-self.tail[n], n),
            lambda n: (-self.tail[n] - work[n] // 8, n),
            lambda n: (-len(self.after[n]), -self.tail[n], n),
        ]
        for key in keys:
            order = self._ready_order(key)
            for _ in range(3):
                reached, order = self.evaluate(order)
            self.pool.append((reached, order))

    def _ready_order(self, key: Callable[[int], tuple[int, ...]]) -> list[int]:
        """By the key, but never a task before those it waits for."""
        waiting = [len(before) for before in self.before]
        ready = [n for n, count in enumerate(waiting) if not count]
        order: list[int] = []
        while ready:
            n = min(ready, key=key)
            ready.remove(n)
            order.append(n)
            for j, _ in self.after[n]:
                waiting[j] -= 1
                if not waiting[j]:
                    ready.append(j)
        return order

    def improve(self, rounds: int, enough: Callable[[], bool] = lambda: False) -> None:
        """So many new orders, each from two of the pool; fewer when nothing is left to gain."""
        draw = self.draw
        for _ in range(rounds):
            assert self.best is not None
            if self.best[1].objective <= self.floor or enough():
                return
            if len(self.pool) < POPULATION:
                late = {n: self.tail[n] * (60 + draw(80)) for n in range(len(self.names))}
                child = self._ready_order(lambda n, late=late: (-late[n], n))  # type: ignore[misc]
            else:
                child = self._cross()
            found = self.evaluate(child)
            if len(self.pool) < POPULATION:
                self.pool.append(found)
                continue
            worst = max(range(len(self.pool)), key=lambda k: (self.pool[k][0], k))
            if found[0] <= self.pool[worst][0] and found[1] not in [order for _, order in self.pool]:
                self.pool[worst] = found

    def _cross(self) -> list[int]:
        """Two points: the middle from one parent's order, the rest from the other's; now and then a shift."""
        draw, count = self.draw, len(self.names)
        a, b = (min(self.pool[draw(len(self.pool))], self.pool[draw(len(self.pool))])[1] for _ in range(2))
        lo, hi = sorted((draw(count + 1), draw(count + 1)))
        child = a[:lo]
        inside = set(child)
        for n in b:
            if len(child) == hi:
                break
            if n not in inside:
                child.append(n)
                inside.add(n)
        child += [n for n in a if n not in inside]
        for _ in range(draw(7)):
            self._shift(child)
        return child

    def _shift(self, order: list[int]) -> None:
        """One task to another place between those it waits for and those that wait for it."""
        where = {n: k for k, n in enumerate(order)}
        n = order[self.draw(len(order))]
        lo = max((where[i] + 1 for i, _ in self.before[n]), default=0)
        hi = min((where[j] for j, _ in self.after[n]), default=len(order))
        order.remove(n)
        order.insert(lo + self.draw(max(1, hi - lo)), n)


def _topological(problem: Problem) -> list[str]:
    waiting = {t.id: len(problem.before[t.id]) for t in problem.tasks}
    ready = [t.id for t in problem.tasks if not waiting[t.id]]
    for name in ready:
        for lag in problem.after[name]:
            waiting[lag.after] -= 1
            if not waiting[lag.after]:
                ready.append(lag.after)
    return ready


def serial_schedule(problem: Problem) -> tuple[Schedule, Cost]:
    """The cheapest of a few serial schedules; keeps every rule of problems without windows and greatest lags."""
    serial = Serial(problem)
    serial.begin()
    assert serial.best is not None
    return serial.best
