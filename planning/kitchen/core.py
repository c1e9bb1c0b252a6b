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
    """`windows` are the closed ranges of slots in which it may start; None is anywhere."""

    id: str
    modes: tuple[Mode, ...]
    windows: tuple[tuple[int, int], ...] | None = None
    latest_end: int | None = None
    touches: tuple[Touch, ...] = ()


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
