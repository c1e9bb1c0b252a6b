"""The slot-by-slot numbers against a plain count, and the local search that stands on them."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from planning.kitchen.budget import Budget
from planning.kitchen.core import Problem, cost, keeps_rules
from planning.kitchen.fallback import first_layout
from planning.kitchen.grid import Grid
from planning.kitchen.search import Search
from planning.kitchen.serial import Serial
from planning.kitchen.solve import solve
from tests.planning.kitchen.test_core import broken, every_schedule, job_shop, tiny


def layout(problem: Problem, seed: int = 0) -> Search:
    found = first_layout(problem, seed)
    assert found is not None
    return found


def fits_by_count(problem: Problem, placed: dict[str, tuple[int, int]], task: str, mode: int, start: int) -> bool:
    """Whether one more task breaks no capacity and no change of an oven: counted, slot by slot."""
    everything = {**placed, task: (start, mode)}
    spans = {n: (at, at + problem.task[n].modes[m].duration, problem.task[n].modes[m])
             for n, (at, m) in everything.items()}  # fmt: skip
    for resource in problem.resources:
        for slot in range(problem.horizon + 10):
            taken = sum(a for lo, hi, m in spans.values() if lo <= slot < hi for r, a in m.uses if r == resource.id)
            if taken > resource.capacity:
                return False
    lo, hi, mine = spans[task]
    return all(
        not (gap := problem.gap(mine, m)) or hi + gap <= other_lo or other_hi + gap <= lo
        for n, (other_lo, other_hi, m) in spans.items() if n != task
    )  # fmt: skip


@settings(max_examples=60, deadline=None, derandomize=True)
@given(tiny(last=12, mosts=(None,)), st.data())
def test_a_task_can_start_where_counting_says_so_and_nowhere_else(problem: Problem, data: st.DataObject) -> None:
    grid, placed = Grid(problem), dict[str, tuple[int, int]]()
    for task in problem.tasks[:-1]:
        way = data.draw(st.sampled_from(grid.ways(task)))
        if open_slots := grid.open(way, grid.starts(task)):
            at = data.draw(st.sampled_from([grid.first(open_slots), grid.last(open_slots)]))
            grid.take(way, at)
            placed[task.id] = (at, way.number)
    last = problem.tasks[-1]

    for way in grid.ways(last):
        allowed = grid.starts(last)
        found = {s for s in range(13) if grid.open(way, allowed) & grid.span(s, s)}
        lo, hi = last.windows[0] if last.windows else (0, problem.horizon)
        counted = {s for s in range(lo, hi + 1) if fits_by_count(problem, placed, last.id, way.number, s)}
        assert found == counted


@given(tiny(), st.integers(0, 9))
@settings(max_examples=40, deadline=None, derandomize=True)
def test_what_is_given_back_leaves_nothing(problem: Problem, start: int) -> None:
    grid = Grid(problem)
    before = list(grid.used)

    for task in problem.tasks:
        for way in grid.ways(task):
            grid.take(way, start)
            grid.give(way, start)

    assert grid.used == before


@settings(max_examples=40, deadline=None, derandomize=True)
@given(tiny(last=60, mosts=(None, 3, 6)), st.integers(0, 3))
def test_local_search_keeps_every_rule_and_knows_what_it_costs(problem: Problem, seed: int) -> None:
    search = layout(problem, seed)
    first = search.total()

    search.improve(40)

    assert broken(problem, search.schedule()) == []
    assert keeps_rules(problem, search.schedule())
    assert cost(problem, search.schedule()).objective == search.total() <= first


@settings(max_examples=30, deadline=None, derandomize=True)
@given(tiny(last=60, mosts=(None, 3, 6)))
def test_settling_costs_nothing_and_a_schedule_read_back_is_the_same(problem: Problem) -> None:
    search = layout(problem)
    search.improve(20)
    reached = search.total()

    search.settle()
    settled = search.schedule()
    search.load(settled)

    assert search.total() <= reached
    assert search.schedule() == settled


@settings(max_examples=15, deadline=None, derandomize=True)
@given(tiny().filter(lambda p: len(p.tasks) <= 3))
def test_no_schedule_of_a_tiny_kitchen_costs_less_than_the_floor(problem: Problem) -> None:
    floor = layout(problem).floor

    assert all(cost(problem, s).objective >= floor for s in every_schedule(problem, 9))


@settings(max_examples=10, deadline=None, derandomize=True)
@given(tiny(last=60, mosts=(None, 3, 6)), st.integers(0, 2))
def test_the_same_problem_seed_and_effort_give_the_same_schedule(problem: Problem, seed: int) -> None:
    assert solve(problem, effort=0.1, seed=seed) == solve(problem, effort=0.1, seed=seed)


def test_a_project_is_never_below_its_floor_and_comes_out_alike_twice() -> None:
    problem, optimum = job_shop("la02")

    def searched() -> tuple[int, int]:
        serial = Serial(problem, 3)
        serial.begin()
        serial.improve(150)
        assert serial.best is not None
        assert broken(problem, serial.best[0]) == []
        return serial.floor, serial.best[1].objective

    floor, reached = searched()
    assert floor <= optimum <= reached
    assert (floor, reached) == searched()


def test_a_clock_ends_the_search_and_the_best_so_far_stands() -> None:
    problem, optimum = job_shop("ft10")
    ticks = iter(range(10_000))

    found = solve(problem, effort=1e9, seconds=40, clock=lambda: float(next(ticks)))

    assert not found.proved
    assert found.cost.objective >= optimum
    assert broken(problem, found.schedule) == []


def test_effort_is_spent_by_work_and_not_by_time() -> None:
    class Worker:
        work = 0

    worker, budget = Worker(), Budget(1.0)
    budget.watch(worker, 0.001)

    worker.work = 999
    assert not budget.over()
    worker.work = 1001
    assert budget.over()
