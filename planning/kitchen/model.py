"""The timeline as a constraint model: one function a rule, its formula in the docstring.

S, E are start and end of a task, d its duration, x_m that mode m is chosen, V a course's serving
slot. The solver's package is passed in, so that importing this file costs nothing.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from planning.kitchen import ovens
from planning.kitchen.core import Dish, Mode, Problem, Task


@dataclass(frozen=True)
class OvenUse:
    """Something that stands in an oven if `literal` is true. `whose` is a task, or "hold:" and a dish."""

    literal: Any
    start: Any
    end: Any
    mode: Mode
    whose: str


@dataclass
class Model:
    """The model under construction: the solver's variables by task id."""

    cp: Any
    problem: Problem
    model: Any = None
    start: dict[str, Any] = field(default_factory=dict)
    end: dict[str, Any] = field(default_factory=dict)
    chosen: dict[str, list[Any]] = field(default_factory=dict)
    served: dict[str, Any] = field(default_factory=dict)
    held: dict[str, list[Any]] = field(default_factory=dict)
    demands: dict[str, list[tuple[Any, int]]] = field(default_factory=dict)
    size: dict[str, Any] = field(default_factory=dict)
    oven_uses: list[OvenUse] = field(default_factory=list)
    before: dict[tuple[str, str], Any] = field(default_factory=dict)
    """(a, b) -> literal: a leaves the oven, and it changes its temperature, before b goes in."""
    alike: dict[tuple[str, str], Any] = field(default_factory=dict)
    """(a, b) -> literal: both want the same set-point."""
    groups: dict[tuple[int, ...], tuple[Any, list[Any]]] = field(default_factory=dict)
    waited: dict[str, Any] = field(default_factory=dict)
    unsafe: dict[str, Any] = field(default_factory=dict)
    terms: list[Any] = field(default_factory=list)

    def any_of(self, literals: list[Any], name: str) -> Any:
        """A literal that is true when one of these (at most one of which is) is; made once for each set."""
        if len(literals) == 1:
            return literals[0]
        key = tuple(sorted(literal.index for literal in literals))
        if key not in self.groups:
            there = self.model.new_bool_var(name)
            self.model.add(sum(literals) == there)
            self.groups[key] = (there, literals)
        return self.groups[key][0]


def build(cp: Any, problem: Problem) -> Model:
    """All rules and the objective: sum of weighted minutes late, unsafe and waited."""
    m = Model(cp, problem, cp.CpModel())
    for course in problem.courses:
        m.served[course.id] = m.model.new_int_var(course.due, problem.horizon, f"V {course.id}")
    for task in problem.tasks:
        choose_one_mode(m, task)
    for course in problem.courses:
        if course.late_weight:
            weight = course.late_weight * problem.slot_min
            m.terms.append(weight * (m.served[course.id] - course.due))
    steps_in_order(m)
    for dish in problem.dishes:
        ready_before_served(m, dish)
        keep_hot(m, dish)
        not_long_off_heat(m, dish)
    ovens.one_set_point_at_a_time(m)
    within_capacity(m)
    m.model.minimize(sum(m.terms) if m.terms else 0)
    return m


def choose_one_mode(m: Model, task: Task) -> None:
    """sum_m x_m = 1; E = S + d_m where x_m; S in the task's windows; E <= latest end."""
    cp, model, horizon = m.cp, m.model, m.problem.horizon
    windows = task.windows or ((0, horizon),)
    domain = cp.Domain.from_intervals([[lo, min(hi, horizon)] for lo, hi in windows if lo <= horizon])
    start = m.start[task.id] = model.new_int_var_from_domain(domain, f"S {task.id}")
    lengths = sorted({mode.duration for mode in task.modes})
    if len(task.modes) == 1:
        literals: list[Any] = [model.new_constant(1)]
    else:
        literals = [model.new_bool_var(f"x {task.id} {n}") for n in range(len(task.modes))]
        model.add_exactly_one(literals)
        if task.only is not None:
            model.add(literals[task.only] == 1)
    m.chosen[task.id] = literals
    if len(lengths) == 1:
        size: Any = lengths[0]
        end: Any = start + lengths[0]
    else:
        size = model.new_int_var_from_domain(cp.Domain.from_values(lengths), f"d {task.id}")
        end = model.new_int_var(0, horizon + lengths[-1], f"E {task.id}")
        for literal, mode in zip(literals, task.modes, strict=True):
            model.add(size == mode.duration).only_enforce_if(literal)
    m.end[task.id], m.size[task.id] = end, size
    if task.latest_end is not None:
        model.add(end <= task.latest_end)
    _demand(m, task, literals, start)
    for literal, mode in zip(literals, task.modes, strict=True):
        if mode.oven is not None:
            m.oven_uses.append(OvenUse(literal, start, end, mode, task.id))


def _demand(m: Model, task: Task, literals: list[Any], start: Any) -> None:
    """The intervals that draw on resources: one for each set of modes that draw the same."""
    whole = m.model.new_interval_var(start, m.size[task.id], m.end[task.id], f"i {task.id}")
    drawing: dict[tuple[str, int], list[int]] = {}
    for number, mode in enumerate(task.modes):
        for use in mode.uses:
            drawing.setdefault(use, []).append(number)
    intervals: dict[tuple[int, ...], Any] = {tuple(range(len(task.modes))): whole}
    for (resource, amount), numbers in sorted(drawing.items()):
        some = tuple(numbers)
        if some not in intervals:
            there = m.any_of([literals[n] for n in some], f"x {task.id} {some}")
            intervals[some] = m.model.new_optional_interval_var(
                start, m.size[task.id], m.end[task.id], there, f"i {task.id} {some}"
            )
        m.demands.setdefault(resource, []).append((intervals[some], amount))
    for touch in task.touches:
        hand = m.model.new_fixed_size_interval_var(start + touch.offset, touch.length, f"touch {task.id}")
        m.demands.setdefault(touch.resource, []).append((hand, touch.amount))


def steps_in_order(m: Model) -> None:
    """E_before + least <= S_after <= E_before + most."""
    for lag in m.problem.lags:
        m.model.add(m.start[lag.after] >= m.end[lag.before] + lag.least)
        if lag.most is not None:
            m.model.add(m.start[lag.after] <= m.end[lag.before] + lag.most)


def ready_before_served(m: Model, dish: Dish) -> None:
    """E_last + W = V, W >= 0; each minute of W costs the dish's wait weight.

    The objective is made of W, which is small, and not of V and E: so the solver knows from the start that
    nothing costs less than nothing, and proves several times as fast.
    """
    wait = m.waited[dish.id] = m.model.new_int_var(0, m.problem.horizon, f"W {dish.id}")
    m.model.add(m.end[dish.last] + wait == m.served[dish.course])
    if dish.wait_weight:
        m.terms.append(dish.wait_weight * m.problem.slot_min * wait)


def keep_hot(m: Model, dish: Dish) -> None:
    """At most one h_m (exactly one where it must be); held from E_after to V in mode m; h_m -> x of the cooking."""
    hold = dish.hold
    if hold is None:
        return
    literals = [m.model.new_bool_var(f"h {dish.id} {n}") for n in range(len(hold.modes))]
    (m.model.add_exactly_one if hold.must else m.model.add_at_most_one)(literals)
    m.held[dish.id] = literals
    since, served = m.end[hold.after], m.served[dish.course]
    for number, (literal, (mode, goes_with)) in enumerate(zip(literals, hold.modes, strict=True)):
        if goes_with is not None:
            m.model.add_implication(literal, m.chosen[hold.after][goes_with])
        size = m.waited[dish.id]
        if hold.after != dish.last:
            size = m.model.new_int_var(0, m.problem.horizon, f"hold {dish.id} {number}")
        span = m.model.new_optional_interval_var(since, size, served, literal, f"hold {dish.id} {number}")
        for resource, amount in mode.uses:
            m.demands.setdefault(resource, []).append((span, amount))
        if mode.oven is not None:
            m.oven_uses.append(OvenUse(literal, since, served, mode, f"hold:{dish.id}"))


def not_long_off_heat(m: Model, dish: Dish) -> None:
    """U >= (V - E_off) minutes + sum_m x_m spare_m - limit, U >= 0; held, the limit is the hold's."""
    hold = dish.hold
    limits = [(dish.limit_min, False)] if hold is None else [(dish.limit_min, False), (hold.limit_min, True)]
    if hold is not None and hold.must:
        limits = limits[1:]
    if all(limit is None for limit, _ in limits):
        return
    slot = m.problem.slot_min
    over = m.unsafe[dish.id] = m.model.new_int_var(0, m.problem.horizon * slot, f"U {dish.id}")
    name = dish.off_heat or dish.last
    spare = [(x, mode.spare_min) for x, mode in zip(m.chosen[name], m.problem.task[name].modes, strict=True)]
    waited = m.waited[dish.id] if name == dish.last else m.served[dish.course] - m.end[name]
    off = waited * slot + sum(x * minutes for x, minutes in spare if minutes)
    held = m.held.get(dish.id, [])
    for limit, when_held in limits:
        if limit is None:
            continue
        rule = m.model.add(over >= off - limit)
        if hold is not None and not hold.must and not when_held:
            rule.only_enforce_if([literal.negated() for literal in held])
    m.terms.append(dish.unsafe_weight * over)


def within_capacity(m: Model) -> None:
    """At every moment the demands on a resource, and what of it is not there, are within its capacity."""
    for resource in m.problem.resources:
        demands = list(m.demands.get(resource.id, ()))
        if not demands:
            continue
        for begin, end, amount in resource.blocks:
            blocked = m.model.new_fixed_size_interval_var(begin, end - begin, f"blocked {resource.id}")
            demands.append((blocked, amount))
        if resource.capacity == 1 and all(amount == 1 for _, amount in demands):
            m.model.add_no_overlap([interval for interval, _ in demands])
        elif sum(amount for _, amount in demands) > resource.capacity:
            m.model.add_cumulative([i for i, _ in demands], [a for _, a in demands], resource.capacity)
