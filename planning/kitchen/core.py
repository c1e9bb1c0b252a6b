"""The scheduling problem in the abstract: tasks with modes, resources, ovens with a temperature, courses.

Times are whole slots from an origin (`slot_min` minutes each); limits and objective are in minutes.
The kitchen makes one of these from a potluck, and so can any job shop or project with renewable
resources: those simply have no ovens and one course for the makespan.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property


@dataclass(frozen=True)
class Mode:
    """One way of doing a task: how long, and how much of which resource it takes all the while.

    In `oven` the pan stands where the set-point lies in [low, high] °F. Two modes in one oven whose
    ranges do not meet keep a gap for the change of temperature. `spare_min` is how many minutes
    before the end of its last slot it is really over: they count as off heat.
    """

    duration: int
    uses: tuple[tuple[str, int], ...] = ()
    oven: str | None = None
    low: int = 0
    high: int = 0
    spare_min: int = 0


@dataclass(frozen=True)
class Touch:
    """`amount` of `resource` is taken for `length` slots from `offset` after the start."""

    resource: str
    offset: int
    length: int
    amount: int = 1


@dataclass(frozen=True)
class Task:
    """`windows` are the closed ranges of slots in which it may start; None is anywhere.

    `only` is the number of the mode it must have, where that is settled: it has begun.
    """

    id: str
    modes: tuple[Mode, ...]
    windows: tuple[tuple[int, int], ...] | None = None
    latest_end: int | None = None
    touches: tuple[Touch, ...] = ()
    only: int | None = None


@dataclass(frozen=True)
class Lag:
    """end(before) + least <= start(after) <= end(before) + most."""

    before: str
    after: str
    least: int = 0
    most: int | None = None


@dataclass(frozen=True)
class Resource:
    """`blocks` are (from, to, amount) during which part of the capacity is not there."""

    id: str
    capacity: int
    blocks: tuple[tuple[int, int, int], ...] = ()


@dataclass(frozen=True)
class Course:
    """Served at some slot >= `due`; every minute after it costs `late_weight`."""

    id: str
    due: int
    late_weight: int = 0


@dataclass(frozen=True)
class Hold:
    """Keeping a dish hot from the end of task `after` until it is served.

    `modes` pairs a mode (its duration is ignored) with the number of the mode of `after` it goes
    with, None for any. Held, the dish may wait `limit_min` instead of its own limit.
    """

    after: str
    modes: tuple[tuple[Mode, int | None], ...]
    must: bool = False
    limit_min: int | None = None


@dataclass(frozen=True)
class Dish:
    """Ready at the end of task `last`, served with its course.

    Each minute from ready to served costs `wait_weight`. Each minute from the end of `off_heat`
    (its mode's spare minutes earlier) to served beyond `limit_min` costs `unsafe_weight`; None is no limit.
    """

    id: str
    last: str
    course: str
    wait_weight: int = 0
    limit_min: int | None = None
    unsafe_weight: int = 0
    off_heat: str | None = None
    hold: Hold | None = None


@dataclass(frozen=True)
class Problem:
    """`gap_min` and `degrees_per_min`: between set-points d degrees apart lie gap_min + d / degrees_per_min minutes."""

    tasks: tuple[Task, ...]
    lags: tuple[Lag, ...] = ()
    resources: tuple[Resource, ...] = ()
    courses: tuple[Course, ...] = ()
    dishes: tuple[Dish, ...] = ()
    horizon: int = 1000
    slot_min: int = 5
    gap_min: int = 5
    degrees_per_min: int = 10
    preferred: Mapping[str, int] = field(default_factory=dict)
    """Start slots of the plan people already know; kept where nothing is lost by it."""
    late_ends: bool = True
    """Whether starts are wanted late (cooking for a meal) or early (a project)."""

    @cached_property
    def task(self) -> dict[str, Task]:
        return {t.id: t for t in self.tasks}

    @cached_property
    def dish_of(self) -> dict[str, Dish]:
        return {d.last: d for d in self.dishes}

    @cached_property
    def after(self) -> dict[str, list[Lag]]:
        found: dict[str, list[Lag]] = {t.id: [] for t in self.tasks}
        for lag in self.lags:
            found[lag.before].append(lag)
        return found

    @cached_property
    def before(self) -> dict[str, list[Lag]]:
        found: dict[str, list[Lag]] = {t.id: [] for t in self.tasks}
        for lag in self.lags:
            found[lag.after].append(lag)
        return found

    def gap(self, a: Mode, b: Mode) -> int:
        """Slots that must lie between two modes in one oven; 0 when they can be in it together."""
        if a.oven is None or a.oven != b.oven:
            return 0
        distance = max(a.low - b.high, b.low - a.high)
        if distance <= 0:
            return 0
        minutes = self.gap_min * self.degrees_per_min + distance
        return -(-minutes // (self.degrees_per_min * self.slot_min))


@dataclass(frozen=True)
class Placed:
    """Where a task came to stand: its start slot and the number of its mode."""

    start: int
    mode: int


@dataclass(frozen=True)
class Schedule:
    """`held` maps a dish to the number of its hold mode; `served` a course to its slot."""

    placed: Mapping[str, Placed]
    served: Mapping[str, int]
    held: Mapping[str, int] = field(default_factory=dict)

    def end(self, problem: Problem, task: str) -> int:
        where = self.placed[task]
        return where.start + problem.task[task].modes[where.mode].duration


@dataclass(frozen=True)
class Cost:
    """Minutes, recomputed from a schedule (slack variables of an unproved solve are not tight)."""

    unsafe_min: int
    late_min: int
    wait: int
    objective: int


def cost(problem: Problem, schedule: Schedule) -> Cost:
    """What the schedule costs in the problem's own weights."""
    slot = problem.slot_min
    unsafe = wait = weighted = 0
    due = {c.id: c for c in problem.courses}
    late = {c: max(0, schedule.served[c] - due[c].due) * slot for c in due}
    weighted += sum(late[c] * due[c].late_weight for c in due)
    for dish in problem.dishes:
        waiting = (schedule.served[dish.course] - schedule.end(problem, dish.last)) * slot
        wait += waiting * dish.wait_weight
        over = unsafe_min(problem, schedule, dish)
        unsafe += over
        weighted += over * dish.unsafe_weight + waiting * dish.wait_weight
    return Cost(unsafe, sum(late.values()), wait, weighted)


def unsafe_min(problem: Problem, schedule: Schedule, dish: Dish) -> int:
    """Minutes off heat beyond the dish's limit."""
    limit = dish.limit_min
    if dish.hold is not None and (dish.hold.must or dish.id in schedule.held):
        limit = dish.hold.limit_min if dish.id in schedule.held else limit
    if limit is None:
        return 0
    return max(0, off_heat_min(problem, schedule, dish) - limit)


def off_heat_min(problem: Problem, schedule: Schedule, dish: Dish) -> int:
    """Minutes from the end of the heat to serving."""
    name = dish.off_heat or dish.last
    mode = problem.task[name].modes[schedule.placed[name].mode]
    return (schedule.served[dish.course] - schedule.end(problem, name)) * problem.slot_min + mode.spare_min


def keeps_rules(problem: Problem, schedule: Schedule) -> bool:
    """Whether windows, lags, capacities and gaps all hold. A list schedule that was forced may break one."""
    placed = {t.id: (t, t.modes[(p := schedule.placed[t.id]).mode], p.start) for t in problem.tasks}
    for task, mode, start in placed.values():
        if start < 0 or not any(lo <= start <= hi for lo, hi in task.windows or ((0, problem.horizon),)):
            return False
        if task.latest_end is not None and start + mode.duration > task.latest_end:
            return False
    for lag in problem.lags:
        between = placed[lag.after][2] - schedule.end(problem, lag.before)
        if between < lag.least or (lag.most is not None and between > lag.most):
            return False
    spans: dict[str, list[tuple[int, int, int]]] = {r.id: list(r.blocks) for r in problem.resources}
    ovens: dict[str, list[tuple[int, int, Mode]]] = {}

    def take(mode: Mode, start: int, end: int) -> None:
        for resource, amount in mode.uses:
            spans[resource].append((start, end, amount))
        if mode.oven is not None:
            ovens.setdefault(mode.oven, []).append((start, end, mode))

    for task, mode, start in placed.values():
        take(mode, start, start + mode.duration)
        for touch in task.touches:
            begin = start + touch.offset
            spans[touch.resource].append((begin, begin + touch.length, touch.amount))
    for dish in problem.dishes:
        if dish.hold is not None and dish.id in schedule.held:
            mode, goes_with = dish.hold.modes[schedule.held[dish.id]]
            if goes_with not in (None, schedule.placed[dish.hold.after].mode):
                return False
            take(mode, schedule.end(problem, dish.hold.after), schedule.served[dish.course])
        elif dish.hold is not None and dish.hold.must:
            return False
    return all(_within(spans[r.id], r.capacity) for r in problem.resources) and all(
        _gaps_kept(problem, uses) for uses in ovens.values()
    )


def _within(spans: list[tuple[int, int, int]], capacity: int) -> bool:
    level = 0
    for _, change in sorted(e for lo, hi, a in spans if hi > lo for e in ((lo, a), (hi, -a))):
        level += change
        if level > capacity:
            return False
    return True


def _gaps_kept(problem: Problem, uses: list[tuple[int, int, Mode]]) -> bool:
    for number, (start, end, mode) in enumerate(uses):
        for other_start, other_end, other in uses[number + 1 :]:
            gap = problem.gap(mode, other)
            if gap and start < other_end + gap and other_start < end + gap:
                return False
    return True
