"""What is taken of each resource so far, and the nearest place where a task still fits."""

from __future__ import annotations

from dataclasses import dataclass, field

from planning.kitchen.core import Mode, Placed, Problem, Task


@dataclass
class Board:
    """What is taken so far: per resource the (from, to, amount) spans, per oven the modes in it."""

    problem: Problem
    spans: dict[str, list[tuple[int, int, int]]] = field(default_factory=dict)
    ovens: dict[str, list[tuple[int, int, Mode]]] = field(default_factory=dict)
    capacity: dict[str, int] = field(default_factory=dict)
    palette: frozenset[int] | None = None
    """Set-points to keep to, wherever a task has one of them."""

    def modes(self, task: Task) -> list[int]:
        """The numbers of the modes worth trying."""
        if task.only is not None:
            return [task.only]
        everything = list(range(len(task.modes)))
        if self.palette is None:
            return everything
        kept = [n for n in everything if task.modes[n].oven is not None and task.modes[n].low in self.palette]
        return kept or everything

    def __post_init__(self) -> None:
        for resource in self.problem.resources:
            self.spans[resource.id] = list(resource.blocks)
            self.capacity[resource.id] = resource.capacity

    def clash(self, task: Task, mode: Mode, start: int, length: int | None = None) -> tuple[int, int] | None:
        """The span that stands in the way of the task at `start`, or None."""
        end = start + (mode.duration if length is None else length)
        for resource, amount in mode.uses:
            if (hit := self._over(resource, start, end, amount)) is not None:
                return hit
        for touch in task.touches:
            begin = start + touch.offset
            if (hit := self._over(touch.resource, begin, begin + touch.length, touch.amount)) is not None:
                return hit[0] - touch.offset, hit[1] - touch.offset
        if mode.oven is not None:
            for other_start, other_end, other in self.ovens.get(mode.oven, ()):
                gap = self.problem.gap(mode, other)
                if gap and start < other_end + gap and end > other_start - gap:
                    return other_start - gap, other_end + gap
        return None

    def _over(self, resource: str, start: int, end: int, amount: int) -> tuple[int, int] | None:
        """The first span of time in which the resource would be overdrawn."""
        free = self.capacity.get(resource, 0) - amount
        if free < 0:
            return start, 1 << 30
        near = [s for s in self.spans.get(resource, ()) if s[0] < end and s[1] > start]
        if sum(s[2] for s in near) <= free:
            return None
        for at in sorted({max(start, s[0]) for s in near}):
            here = [s for s in near if s[0] <= at < s[1]]
            if sum(s[2] for s in here) > free:
                return max(s[0] for s in here), min(s[1] for s in here)
        return None

    def mark(self) -> tuple[dict[str, int], dict[str, int]]:
        """Where the board stands, for `undo`."""
        return {k: len(v) for k, v in self.spans.items()}, {k: len(v) for k, v in self.ovens.items()}

    def undo(self, mark: tuple[dict[str, int], dict[str, int]]) -> None:
        """Give back everything taken since the mark."""
        for key, spans in self.spans.items():
            del spans[mark[0].get(key, 0) :]
        for key, uses in self.ovens.items():
            del uses[mark[1].get(key, 0) :]

    def take(self, task: Task, mode: Mode, start: int, length: int | None = None) -> None:
        end = start + (mode.duration if length is None else length)
        if end > start:
            for resource, amount in mode.uses:
                self.spans[resource].append((start, end, amount))
        for touch in task.touches:
            begin = start + touch.offset
            self.spans[touch.resource].append((begin, begin + touch.length, touch.amount))
        if mode.oven is not None:
            self.ovens.setdefault(mode.oven, []).append((start, end, mode))


def in_window(task: Task, start: int, *, up: bool) -> int | None:
    """The nearest allowed start at or after (`up`) or at or before `start`."""
    if task.windows is None:
        return start if start >= 0 else (0 if up else None)
    if up:
        fits = [max(lo, start) for lo, hi in task.windows if hi >= start]
        return min(fits, default=None)
    fits = [min(hi, start) for lo, hi in task.windows if lo <= start]
    return max(fits, default=None)


def find(board: Board, task: Task, bound: int, *, up: bool, most: int | None = None) -> Placed | None:
    """The earliest start >= bound, or (not `up`) the latest with end <= bound, over all modes."""
    best: Placed | None = None
    for number in board.modes(task):
        mode = task.modes[number]
        at: int | None = bound if up else bound - mode.duration
        if not up and task.latest_end is not None:
            at = min(bound, task.latest_end) - mode.duration
        while at is not None:
            at = in_window(task, at, up=up)
            if at is None or at > board.problem.horizon or (up and most is not None and at > most):
                break
            if not up and most is not None and at + mode.duration < most:
                break
            hit = board.clash(task, mode, at)
            if hit is None:
                better = best is None or (at < best.start if up else at > best.start)
                if better:
                    best = Placed(at, number)
                break
            at = max(at + 1, hit[1]) if up else min(at - 1, hit[0] - mode.duration)
    return best
