"""One try at a kitchen: the problem made, solved, and told in promises, appliances and instants."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from planning.kitchen.core import Schedule, keeps_rules
from planning.kitchen.known import known_steps, with_known
from planning.kitchen.modes import SLOT_MIN, WARM_OVEN_F, step_minutes
from planning.kitchen.problem import KitchenProblem, make
from planning.kitchen.relaxed import relaxed
from planning.kitchen.result import DishTimes, PlannedStep
from planning.kitchen.solve import Solution, solve
from planning.kitchen.steps import HOLD_F, KEEP_WARM, OVEN, Checked
from planning.potluck import Potluck


@dataclass(frozen=True)
class Attempt:
    made: KitchenProblem
    solution: Solution
    steps: tuple[PlannedStep, ...]
    dishes: tuple[DishTimes, ...]

    @property
    def broken(self) -> dict[str, int]:
        """Minutes late and unsafe of each dish that has any."""
        return {d.promise: d.late_min + d.unsafe_min for d in self.dishes if d.late_min or d.unsafe_min}


def attempt(
    potluck: Potluck,
    checked: Sequence[Checked],
    now: datetime,
    *,
    effort: float,
    seed: int = 0,
    seconds: float | None = None,
    clock: Callable[[], float] | None = None,
    coolers: frozenset[str] = frozenset(),
    neat: bool = True,
    lists: int | None = None,
) -> Attempt:
    """Make and solve the kitchen of these dishes."""
    known = known_steps(potluck, now)
    since = min((k.start for k in known if k.begun), default=None)
    made = with_known(make(potluck, checked, now, coolers, since), known)
    solution = solve(made.problem, effort=effort, seed=seed, seconds=seconds, clock=clock, neat=neat, lists=lists)
    for problem in relaxed(made.problem):
        if keeps_rules(made.problem, solution.schedule):
            break
        made = replace(made, problem=problem)
        solution = solve(problem, effort=effort, seed=seed, seconds=seconds, clock=clock, neat=neat, lists=lists)
    steps = planned(made, solution.schedule)
    return Attempt(made, solution, steps, _dish_times(potluck, made, solution.schedule, steps))


def planned(made: KitchenProblem, schedule: Schedule) -> tuple[PlannedStep, ...]:
    """The steps in order of time, with numbered appliances."""
    steps: list[PlannedStep] = []
    for task_id, link in made.links.items():
        told = list(_steps_of_task(made, schedule, task_id, link.promise, link.steps))
        if told[0].kind == "rest" and steps and (steps[-1].promise, steps[-1].at) == (link.promise, told[0].at):
            # Resting begins the moment the dish leaves the heat, not at the next slot.
            told = _moved(told, steps[-1].end - told[0].start)
        elif link.at_end:
            ends = made.frame.instant(schedule.end(made.problem, task_id))
            told = _moved(told, ends - told[-1].end)
        steps.extend(told)
    for promise, number in schedule.held.items():
        dish = next(d for d in made.problem.dishes if d.id == promise)
        start = max(s.end for s in steps if s.promise == promise)
        end = made.frame.instant(schedule.served[dish.course])
        if end <= start or dish.hold is None:
            continue
        place, circuit = made.places[f"hold:{promise}", number]
        mode = dish.hold.modes[number][0]
        watts = next((a for r, a in mode.uses if r.startswith("watts:")), 0)
        pans = next((a for r, a in mode.uses if r.startswith("pans:")), 0)
        temp = float(WARM_OVEN_F) if mode.oven else HOLD_F
        steps.append(PlannedStep(promise, KEEP_WARM, place, circuit, start, end, temp, pans, watts,
                                 step=made.checked[promise].number(len(made.checked[promise].steps))))  # fmt: skip
    steps.sort(key=lambda s: (s.start, s.promise, s.step))
    return _numbered(made, steps)


def _moved(steps: list[PlannedStep], by: timedelta) -> list[PlannedStep]:
    return [replace(s, start=s.start + by, end=s.end + by) for s in steps]


def _steps_of_task(made: KitchenProblem, schedule: Schedule, task_id: str, promise: str,
                   numbers: tuple[int, ...]) -> Iterable[PlannedStep]:  # fmt: skip
    where = schedule.placed[task_id]
    mode = made.problem.task[task_id].modes[where.mode]
    place, circuit = made.places[task_id, where.mode]
    at = made.frame.instant(where.start)
    for number in numbers:
        step = made.checked[promise].steps[number]
        set_f = float(mode.low) if mode.oven is not None else step.temp_f
        minutes = step_minutes(step, set_f if step.kind == OVEN and mode.oven is not None else None)
        end = at + timedelta(minutes=minutes)
        watts = next((a for r, a in mode.uses if r.startswith("watts:")), 0)
        pans = step.pans if step.kind == OVEN or mode.oven is not None else 0
        yield PlannedStep(promise, step.kind, place, circuit, at, end, set_f, pans, watts, step.at,
                          made.checked[promise].number(number),
                          step.hands_min or (step.minutes if step.kind == "prep" else 0), step.covered)  # fmt: skip
        # In an oven, and after a rest, the next step runs on at once; elsewhere it waits for its own slot.
        at = end if step.kind in (OVEN, "rest") else at + timedelta(minutes=-(-minutes // SLOT_MIN) * SLOT_MIN)


def _numbered(made: KitchenProblem, steps: list[PlannedStep]) -> tuple[PlannedStep, ...]:
    """Burners, grills and slow cookers alike get numbers: the first that is free takes the step.

    A dish stays in its slow cooker from one step to the next. A span of time never needs more of
    them than there are, as the capacity was kept.
    """
    alike = {f"slow:{n}": [f"slow-cooker:{i}" for i in group] for n, (_, group) in enumerate(made.units)}
    capacity = {r.id: r.capacity for r in made.problem.resources}
    alike |= {kind: [f"{kind}:{i}" for i in range(capacity.get(kind, 0))] for kind in ("burner", "grill")}
    free_at: dict[str, datetime] = {}
    using: dict[tuple[str, str], str] = {}
    numbered: list[PlannedStep] = []
    ends = {(s.promise, s.appliance): max(x.end for x in steps if (x.promise, x.appliance) == (s.promise, s.appliance))
            for s in steps}  # fmt: skip
    for step in steps:
        names = alike.get(step.appliance or "")
        if names is None:
            numbered.append(step)
            continue
        key = (step.promise, step.appliance or "")
        mine = using.get(key) if (step.appliance or "").startswith("slow:") else None
        if mine is None:
            until = ends[step.promise, step.appliance] if (step.appliance or "").startswith("slow:") else step.end
            mine = next((n for n in names if free_at.get(n, step.start) <= step.start), names[0] if names else "")
            free_at[mine] = until
            using[key] = mine
        numbered.append(replace(step, appliance=mine))
    return tuple(numbered)


def _dish_times(potluck: Potluck, made: KitchenProblem, schedule: Schedule,
                steps: tuple[PlannedStep, ...]) -> tuple[DishTimes, ...]:  # fmt: skip
    """Ready when the last step before serving ends; recomputed from the steps as told."""
    found: list[DishTimes] = []
    for dish in made.problem.dishes:
        mine = [s for s in steps if s.promise == dish.id]
        ready = max(s.end for s in mine)
        serve = max(potluck.starts_at, ready)
        late = max(0, round((ready - potluck.starts_at).total_seconds() / 60))
        off = 0
        if made.checked[dish.id].hot:
            hot = [s.end for s in mine if s.kind not in ("prep", "rest", "chill", "thaw", "transport", "serve")]
            off = round((serve - max(hot)).total_seconds() / 60) if hot else 0
        over = max(0, off - dish.limit_min) if dish.limit_min is not None else 0
        found.append(DishTimes(dish.id, ready, serve, late, over, off))
    return tuple(found)
