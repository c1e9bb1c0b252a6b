"""From a potluck's dishes and kitchen to a plain scheduling problem, in slots of five minutes.

Slots count from `Frame.origin`; serving time lies on a slot, so every time told to people is a
whole number of five-minute steps before it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from itertools import pairwise

from planning.kitchen.core import Course, Dish, Lag, Mode, Problem, Resource, Task
from planning.kitchen.homes import Home, home_modes, homes, in_home_oven, resources_of
from planning.kitchen.links import groups, keeps_hot, lag, roomy, touches, wide_enough
from planning.kitchen.modes import SLOT_MIN, alike, all_set_points, hold_of, modes_of, slots, span
from planning.kitchen.off_heat import OFF_HEAT_MIN, ending_on_a_slot, shorter_rest
from planning.kitchen.steps import (
    HEATING,
    KEEP_WARM,
    OVEN,
    Checked,
    last_heat,
    usable_watts,
)
from planning.kitchen.thawing import longer_by
from planning.kitchen.volume import quarts
from planning.kitchen.waking import Frame, wake_up, windows
from planning.potluck import HeatStep, Kitchen, Potluck, SlowCooker

PREHEAT_MIN = 15
LATE_WEIGHT, UNSAFE_WEIGHT = 1_000, 10_000
USUAL_TRAVEL_MIN = 15
"""What a dish cooked at home is given to get there when nobody said how far it is; common practice, no source."""


@dataclass(frozen=True)
class Link:
    """Which steps a task stands for (more than one where they run on in the same place).

    `at_end`: they end with its last slot; otherwise they begin with its first.
    """

    promise: str
    steps: tuple[int, ...]
    at_end: bool = False


@dataclass(frozen=True)
class KitchenProblem:
    problem: Problem
    frame: Frame
    links: dict[str, Link]
    checked: dict[str, Checked]
    units: tuple[tuple[SlowCooker, tuple[int, ...]], ...]
    """Slow cookers alike: one of them and the numbers of all."""
    places: dict[tuple[str, int], tuple[str | None, int | None]]
    """(task or "hold:promise", mode) -> (appliance group, circuit)."""


@dataclass
class _Parts:
    """What one promise adds."""

    tasks: list[Task] = field(default_factory=list)
    lags: list[Lag] = field(default_factory=list)
    links: dict[str, Link] = field(default_factory=dict)
    places: dict[tuple[str, int], tuple[str | None, int | None]] = field(default_factory=dict)


def make(
    potluck: Potluck,
    checked: Iterable[Checked],
    now: datetime,
    coolers: frozenset[str] = frozenset(),
    since: datetime | None = None,
) -> KitchenProblem:
    """The whole problem. Every dish is a course of its own: one that is late does not hold up the others.

    Dishes in `coolers` come hot in an insulated carrier, held at 140 °F or more (TRANS-02), and have no limit off heat.
    The grid begins no later than `since`, when the first step that is under way began.
    """
    dishes = tuple(checked)
    kitchen = potluck.kitchen
    longest = max((_work(c) for c in dishes), default=0)
    wake = wake_up(potluck)
    back = math.ceil((potluck.starts_at - wake).total_seconds() / 60 / SLOT_MIN)
    days = min(21, max(0, math.ceil((longest - back) * SLOT_MIN / 1440)) + 1) if longest > back else 0
    due = back + days * (1440 // SLOT_MIN)
    if since is not None:
        due = max(due, min(math.ceil((potluck.starts_at - since).total_seconds() / 60 / SLOT_MIN), 22 * 288))
    origin = potluck.starts_at - timedelta(minutes=due * SLOT_MIN)
    frame = Frame(origin, due, due - back, 0)
    frame = Frame(origin, due, due - back, frame.slot_up(now))
    set_points = all_set_points(dishes)
    units = alike(kitchen)
    at_homes = homes(potluck, dishes)
    parts = _Parts()
    made: list[Dish] = []
    courses: list[Course] = []
    for one in dishes:
        dish = _add_dish(potluck, frame, one, parts, set_points, units, at_homes.get(one.promise.guest))
        if one.promise.id in coolers:
            dish = replace(dish, limit_min=None, hold=None)
        made.append(dish)
        courses.append(Course(dish.course, due, LATE_WEIGHT))
    work = sum(max((m.duration for m in t.modes), default=0) + 8 for t in parts.tasks)
    horizon = max(due, frame.now, max((w[0] for t in parts.tasks for w in t.windows or ()), default=0)) + work + 24
    tasks = tuple(_clip(t, horizon) for t in parts.tasks)
    resources = (*_resources(kitchen, units), *(r for home in at_homes.values() for r in resources_of(home)))
    problem = Problem(tasks, tuple(parts.lags), resources, tuple(courses), tuple(made),
                      horizon, SLOT_MIN)  # fmt: skip
    return KitchenProblem(problem, frame, parts.links, {c.promise.id: c for c in dishes}, units, parts.places)


def _clip(task: Task, horizon: int) -> Task:
    """Open windows end at the horizon."""
    windows = tuple((lo, min(hi, horizon)) for lo, hi in task.windows or ((0, horizon),) if lo <= horizon)
    return replace(task, windows=windows)


def _work(one: Checked) -> int:
    """Slots the dish takes from its first step to its last, with the time the rule for thawing asks for."""
    return sum(slots(s.minutes) for s in one.steps) + slots(longer_by(one))


MOST_UNITS = 1000
"""Nobody has more burners or hands; a larger number written by mistake would only cost memory."""


def _resources(kitchen: Kitchen, units: tuple[tuple[SlowCooker, tuple[int, ...]], ...]) -> Iterator[Resource]:
    def some(count: int) -> int:
        return max(0, min(count, MOST_UNITS))

    for number, oven in enumerate(kitchen.ovens):
        yield Resource(f"pans:{number}", some(oven.racks * oven.pans_per_rack))
    yield Resource("burner", some(kitchen.burners))
    yield Resource("grill", some(kitchen.grills))
    yield Resource("hands", some(kitchen.cooks))
    for number, (_, group) in enumerate(units):
        yield Resource(f"slow:{number}", len(group))
    for number in range(len(kitchen.microwaves)):
        yield Resource(f"microwave:{number}", 1)
    for number, circuit in enumerate(kitchen.circuits):
        yield Resource(f"watts:{number}", usable_watts(circuit.amps, circuit.volts))
        yield Resource(f"outlets:{number}", some(circuit.outlets))


def _add_dish(potluck: Potluck, frame: Frame, one: Checked, parts: _Parts, set_points: tuple[int, ...],
              units: tuple[tuple[SlowCooker, tuple[int, ...]], ...], home: Home | None) -> Dish:  # fmt: skip
    promise, steps = one.promise, one.steps
    guest = potluck.guest(promise.guest)
    travel = slots(min(guest.travel_min, 1440)) if guest is not None and guest.travel_min > 0 else 0
    arrival = frame.slot_up(promise.arrives_at) if promise.arrives_at is not None else 0
    total = _work(one)
    runs = groups(steps)
    early_until = _early_steps(one, total > frame.due - max(frame.wake, frame.now))
    ids: list[str] = []
    there_by = _home_by(potluck, frame, one, travel)
    ready = spare = waits = 0
    longer, thawed = slots(longer_by(one)), max((n for n, s in enumerate(steps) if s.kind == "thaw"), default=-1)
    last_hot = max((n for n, g in enumerate(runs) if any(keeps_hot(steps[i]) for i in g)), default=-1)
    for number, group in enumerate(runs):
        task_id = f"{promise.id}#{group[0]}"
        first = steps[group[0]]
        away = first.at == "home" or first.kind == "transport"
        heat = last_heat(steps, group[0])
        mine = [steps[n] for n in group]
        if first.at == "home" and home is not None:
            modes, places = home_modes(home, mine)
            hands = touches(mine, home.name("hands"))
        else:
            modes, places = modes_of(potluck.kitchen, mine, set_points, units, heat)
            if not modes:
                # A slow cooker that nothing powers keeps nothing warm; an oven does.
                modes, places = modes_of(potluck.kitchen, mine, set_points, (), heat)
            modes, places = roomy(modes, places, quarts(promise.quantity), units)
            hands = touches(mine) if potluck.kitchen.cooks > 0 else ()
        if not modes:
            # The kitchen has nothing for it, which is told; when it would be is planned all the same.
            modes, places = (Mode(span(mine)),), [(None, None)]
        if first.kind == "rest" and number and first.at == steps[group[0] - 1].at:
            modes = shorter_rest(modes, mine, spare)
        at_end = False
        if one.hot and number == last_hot and steps[group[-1]].kind in HEATING:
            modes, hands, at_end = ending_on_a_slot(modes, hands, [[steps[n] for n in g] for g in runs[number + 1 :]])
        spare = min((m.spare_min for m in modes), default=0)
        heated = first.kind in (OVEN, KEEP_WARM) and not away and any(m.oven for m in modes)
        warm = slots(PREHEAT_MIN) if heated or in_home_oven(first) else 0
        may = windows(potluck, frame, mine, 0 if away else arrival, early=group[-1] <= early_until, warm=warm)
        start = next((max(lo, ready) for lo, hi in may if hi >= max(lo, ready)), max(may[-1][0], ready))
        ready = start + min((m.duration for m in modes), default=0)
        if group[-1] == thawed and ready + longer + _left(steps, group) <= frame.due:
            ready, waits = ready + longer, longer
        latest = there_by
        if away and promise.arrives_at is not None:
            later_home = any(s.kind == "transport" for s in steps[group[-1] + 1 :])
            on_the_way = any(s.kind == "transport" for s in mine)
            latest = arrival if on_the_way or later_home else arrival - travel
        # A time that cannot be kept is left to the search for conflicts, not to an empty model.
        if latest is not None and ready > latest:
            latest = None
        parts.tasks.append(Task(task_id, modes, may, latest, hands))
        parts.links[task_id] = Link(promise.id, group, at_end)
        parts.places.update({(task_id, n): place for n, place in enumerate(places)})
        ids.append(task_id)
    made = {t.id: t.modes for t in parts.tasks[-len(ids) :]}
    for (before, group), (after, next_group) in pairwise(zip(ids, runs, strict=True)):
        between = lag(before, after, steps[group[-1]], steps[next_group[0]], travel)
        if waits and group[-1] == thawed:
            # Moved to the refrigerator as early as the rule has it, however short a thaw its cook gave.
            between = replace(between, least=max(between.least, waits), most=None)
        parts.lags.append(wide_enough(between, made[before], made[after]))
    off = ids[last_hot]
    heat_task = next(t for t in parts.tasks if t.id == off)
    return Dish(promise.id, ids[-1], f"c:{promise.id}", wait_weight=1 if one.hot else 0,
                limit_min=OFF_HEAT_MIN if one.hot else None, unsafe_weight=UNSAFE_WEIGHT, off_heat=off,
                hold=hold_of(potluck.kitchen, one, heat_task, parts.places, units))  # fmt: skip


def _left(steps: Sequence[HeatStep], group: Sequence[int]) -> int:
    """Slots of the steps after a group."""
    return sum(slots(s.minutes) for s in steps[group[-1] + 1 :])


def _home_by(potluck: Potluck, frame: Frame, one: Checked, travel: int) -> int | None:
    """By when (slot) a dish made wholly at home must be off, to be on the table when it starts; None for others.

    Where the cook lists the way, or is the host, nothing is added; the guest's own minutes count, else the usual ones,
    as far as they do not by themselves keep the dish off heat too long: nobody has told them.
    """
    promise, steps = one.promise, one.steps
    if promise.arrives_at is not None or promise.guest == potluck.host:
        return None
    if any(s.at != "home" for s in steps) or any(s.kind == "transport" for s in promise.heat or steps):
        return None
    last = max((n for n, s in enumerate(steps) if keeps_hot(s)), default=-1)
    rests = sum(slots(s.minutes) for s in steps[last + 1 :]) if one.hot and last >= 0 else 0
    return frame.due - (travel or min(slots(USUAL_TRAVEL_MIN), max(0, slots(OFF_HEAT_MIN) - rests)))


def _early_steps(one: Checked, too_long: bool) -> int:
    """The number of the last step that may be done on an earlier day; -1 for none.

    Thawing and chilling, and what comes before them, may. So may the whole of a dish that is not
    served hot and does not fit into the day.
    """
    cold = [n for n, s in enumerate(one.steps) if s.kind in ("thaw", "chill")]
    if too_long and not one.hot:
        return len(one.steps)
    return cold[-1] if cold and too_long else -1
