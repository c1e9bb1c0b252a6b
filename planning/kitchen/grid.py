"""What is taken of each resource, slot by slot, as whole numbers: every question is a few operations on them.

A resource's use is one integer with a field of `width` bits for each slot. Its top bit, the guard,
stays empty; a set of slots is an integer of guard bits. Adding the room that is missing to every
field at once raises the guard wherever the resource would be overdrawn. An oven has one such number
for each range of set-points: how many pans stand in it, or are about to, that this range cannot meet.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from planning.kitchen.core import Mode, Problem, Task


@dataclass(frozen=True)
class Way:
    """A mode made ready for the grid: which numbers to ask, which to add to."""

    number: int
    mode: Mode
    asks: tuple[tuple[int, int], ...]
    """(resource, what to add to each field) for the whole length."""
    touches: tuple[tuple[int, int, int, int], ...]
    """(resource, what to add, bits of the offset, slots)."""
    takes: tuple[tuple[int, int, int], ...]
    """(resource, pattern to add from the start, bits it begins before the start)."""
    possible: bool


@dataclass
class Grid:
    """What is taken so far; `used` is replaced, never changed in place, by whoever wants to go back."""

    problem: Problem
    width: int = 0
    slots: int = 0
    used: list[int] = field(default_factory=list)
    number: dict[object, int] = field(default_factory=dict)
    capacity: list[int] = field(default_factory=list)
    every: int = 0
    guards: int = 0

    def __post_init__(self) -> None:
        problem = self.problem
        modes = [m for t in problem.tasks for m in t.modes]
        holds = [m for d in problem.dishes if d.hold is not None for m, _ in d.hold.modes]
        ranges = dict.fromkeys((m.oven, m.low, m.high) for m in (*modes, *holds) if m.oven is not None)
        longest = max((m.duration for m in modes), default=0)
        reach = max((x.offset + x.length for t in problem.tasks for x in t.touches), default=0)
        self.slots = problem.horizon + max(longest, reach) + 64
        most = len(problem.tasks) + len(problem.dishes) + 1
        for resource in problem.resources:
            self.number[resource.id] = len(self.number)
            self.capacity.append(resource.capacity)
            # Forced in, everything may stand in one slot: the fields have room for that.
            draws = [sum(a for r, a in m.uses if r == resource.id) for m in (*modes, *holds)]
            draws += [x.amount for t in problem.tasks for x in t.touches if x.resource == resource.id]
            total = sum(draws) + sum(a for _, _, a in resource.blocks) + resource.capacity + 1
            most = max(most, total)
        for key in ranges:
            self.number[key] = len(self.number)
            self.capacity.append(0)
        self.width = most.bit_length() + 1
        self.every = ((1 << (self.slots * self.width)) - 1) // ((1 << self.width) - 1)
        self.guards = self.every << (self.width - 1)
        self.used = [0] * len(self.number)
        for resource in problem.resources:
            for begin, end, amount in resource.blocks:
                begin, end = max(0, begin), min(end, self.slots)
                if end > begin:
                    self.used[self.number[resource.id]] += amount * self.ones(end - begin) << (begin * self.width)

    def ones(self, slots: int) -> int:
        """A one in each of the first fields."""
        return self.every & ((1 << (slots * self.width)) - 1)

    def span(self, first: int, last: int) -> int:
        """The set of slots from `first` to `last`, both in it; empty when there are none."""
        if last < first or last < 0:
            return 0
        until = self.guards & ((1 << ((last + 1) * self.width)) - 1)
        return until >> (first * self.width) << (first * self.width) if first > 0 else until

    def starts(self, task: Task) -> int:
        """The slots in which the task may start by its own windows, whatever its mode."""
        allowed = 0
        for lo, hi in task.windows or ((0, self.problem.horizon),):
            allowed |= self.span(lo, min(hi, self.problem.horizon))
        return allowed

    def ways(self, task: Task) -> tuple[Way, ...]:
        """The task's modes made ready, those that may be chosen and fit an empty kitchen."""
        chosen = range(len(task.modes)) if task.only is None else (task.only,)
        return tuple(self.way(task.modes[n], n, task) for n in chosen)

    def way(self, mode: Mode, number: int, task: Task | None = None, length: int | None = None) -> Way:
        """A mode made ready; `length` where it is not the mode's own (a hold)."""
        length = mode.duration if length is None else length
        width, asks, touches, takes = self.width, [], [], []
        possible = True
        totals: dict[str, int] = {}
        for resource, amount in mode.uses:
            totals[resource] = totals.get(resource, 0) + amount
        for resource, amount in totals.items():
            at = self.number[resource]
            possible &= amount <= self.capacity[at]
            asks.append((at, self._lack(at, amount)))
            takes.append((at, amount * self.ones(length), 0))
        for touch in task.touches if task is not None else ():
            at = self.number[touch.resource]
            possible &= touch.amount <= self.capacity[at]
            touches.append((at, self._lack(at, touch.amount), touch.offset * width, touch.length))
            takes.append((at, touch.amount * self.ones(touch.length) << (touch.offset * width), 0))
        if mode.oven is not None:
            asks.append((self.number[mode.oven, mode.low, mode.high], self._lack(0, 0, capacity=0)))
            for key, at in self.number.items():
                if isinstance(key, tuple) and key[0] == mode.oven:
                    gap = self.problem.gap(mode, Mode(0, (), key[0], key[1], key[2]))
                    if gap:
                        takes.append((at, self.ones(length + 2 * gap), gap * width))
        return Way(
            number, mode, tuple(asks) if length else (), tuple(touches), tuple(takes) if length else (), possible
        )

    def _lack(self, at: int, amount: int, capacity: int | None = None) -> int:
        room = (self.capacity[at] if capacity is None else capacity) - amount
        return ((1 << (self.width - 1)) - max(0, room + 1)) * self.every

    def full(self, way: Way) -> int:
        """The slots in which the way's steady demand does not fit."""
        used, guards, full = self.used, self.guards, 0
        for at, lack in way.asks:
            full |= (used[at] + lack) & guards
        return full

    def open(self, way: Way, allowed: int) -> int:
        """Of the allowed slots, those in which the way can start."""
        if not way.possible:
            return 0
        width, full = self.width, self.full(way)
        full = earlier(full, way.mode.duration, width) if full else 0
        for at, lack, offset, length in way.touches:
            if hit := (self.used[at] + lack) & self.guards:
                full |= earlier(hit, length, width) >> offset
        return allowed & ~full

    def take(self, way: Way, start: int) -> None:
        shift, used = start * self.width, self.used
        for at, pattern, before in way.takes:
            used[at] += (pattern << shift) >> before

    def give(self, way: Way, start: int) -> None:
        """Undo `take` with the same arguments."""
        shift, used = start * self.width, self.used
        for at, pattern, before in way.takes:
            used[at] -= (pattern << shift) >> before

    def first(self, some: int) -> int:
        """The earliest slot of a set that is not empty."""
        return (some & -some).bit_length() // self.width - 1

    def last(self, some: int) -> int:
        """The latest slot of a set that is not empty."""
        return some.bit_length() // self.width - 1


def earlier(some: int, slots: int, width: int) -> int:
    """The slots of a set and the `slots` - 1 before each of them."""
    have = 1
    while have * 2 <= slots:
        some |= some >> (have * width)
        have *= 2
    return some | some >> ((slots - have) * width) if have < slots else some


def later(some: int, slots: int, width: int) -> int:
    """The slots of a set and the `slots` - 1 after each of them."""
    have = 1
    while have * 2 <= slots:
        some |= some << (have * width)
        have *= 2
    return some | some << ((slots - have) * width) if have < slots else some
