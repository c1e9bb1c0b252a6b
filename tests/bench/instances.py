"""Instances from a file as core problems: kitchens on a grid of minutes, and PSPLIB single-mode projects."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from typing import Any

from planning.kitchen.core import Course, Dish, Hold, Lag, Mode, Problem, Resource, Task, Touch

WARM_LOW, WARM_HIGH = 170, 200
OVEN_HOLD_MIN = 90


def kitchen(instance: Mapping[str, Any]) -> Problem:
    """A kitchen of the file as a core problem (times there are minutes on a 5-minute grid)."""
    grid = instance["grid"]

    def slot(minutes: float) -> int:
        return round(minutes / grid)

    circuits = instance["circuits"]
    resources = [Resource(f"pans:{o['id']}", o["cap"]) for o in instance["ovens"]]
    resources += [Resource("burner", instance["burners"]), Resource("microwave", instance["microwave"]["n"])]
    for c in circuits:
        resources += [Resource(f"watts:{c['id']}", c["watts"]), Resource(f"outlets:{c['id']}", c["outlets"])]
    most = max(h["n"] for h in instance["hands"])
    changes = [*instance["hands"], {"at": instance["horizon"] * 2, "n": most}]
    blocks = tuple((slot(a["at"]), slot(b["at"]), most - a["n"])
                   for a, b in itertools.pairwise(changes) if a["n"] < most)  # fmt: skip
    resources.append(Resource("hands", most, blocks))
    tasks: list[Task] = []
    lags: list[Lag] = []
    dishes: list[Dish] = []
    for d in instance["dishes"]:
        ids: list[str] = []
        for k, step in enumerate(d["steps"]):
            name = f"{d['id']}#{k}"
            touches = tuple(Touch("hands", slot(t), 1) for t in step.get("touch", ()))
            if step["k"] == "prep":
                touches = (Touch("hands", 0, slot(step["d"])),)
            windows = ((slot(d["release"]) if k == 0 else 0, 1 << 20),)
            tasks.append(Task(name, _modes(instance, step, slot(step["d"])), windows, None, touches))
            if ids:
                gap = 0 if step["k"] == "rest" else step.get("maxgap")
                lags.append(Lag(ids[-1], name, 0, None if gap is None else slot(gap)))
            ids.append(name)
        hold: Hold | None = None
        last = d["steps"][-1]
        if d["hold"] == "slow":
            warm = [Mode(0, ((f"watts:{c['id']}", last["warm"]), (f"outlets:{c['id']}", 1))) for c in circuits]
            hold = Hold(ids[-1], tuple((m, n) for n, m in enumerate(warm)), True, d["limit"])
        elif d["hold"] == "oven":
            pans = max(s.get("pans", 1) for s in d["steps"])
            held = [Mode(0, ((f"pans:{o['id']}", pans),), o["id"], WARM_LOW, WARM_HIGH) for o in instance["ovens"]]
            hold = Hold(ids[-1], tuple((m, None) for m in held), False, OVEN_HOLD_MIN)
        dishes.append(Dish(d["id"], ids[-1], str(d["course"]), d["w"], d["limit"] if d["hot"] else None,
                           instance["w_unsafe"], None, hold))  # fmt: skip
    courses = tuple(Course(str(n), slot(c["due"]), instance["w_late"]) for n, c in enumerate(instance["courses"]))
    return Problem(tuple(tasks), tuple(lags), tuple(resources), courses, tuple(dishes), slot(instance["horizon"]), grid,
                   instance["base_gap"], instance["deg_per_min"])  # fmt: skip


def _modes(instance: Mapping[str, Any], step: Mapping[str, Any], length: int) -> tuple[Mode, ...]:
    kind = step["k"]
    if kind == "oven":
        low, high = step["T"] - step["tol"], step["T"] + step["tol"]
        return tuple(Mode(length, ((f"pans:{o['id']}", step["pans"]),), o["id"], low, high) for o in instance["ovens"])
    if kind == "stove":
        return (Mode(length, (("burner", 1),)),)
    if kind == "micro":
        circuit = instance["circuits"][instance["microwave"]["circuit"]]["id"]
        return (Mode(length, (("microwave", 1), (f"watts:{circuit}", instance["microwave"]["watts"]))),)
    if kind == "slow":
        return tuple(Mode(length, ((f"watts:{c['id']}", step["watts"]), (f"outlets:{c['id']}", 1)))
                     for c in instance["circuits"])  # fmt: skip
    return (Mode(length),)


def project(instance: Mapping[str, Any]) -> Problem:
    """A PSPLIB single-mode project as a core problem: one course whose lateness is the makespan."""
    durations, demands, successors = instance["dur"], instance["req"], instance["succ"]
    tasks = tuple(
        Task(str(i), (Mode(d, tuple((f"r{k}", a) for k, a in enumerate(demands[i]) if a)),))
        for i, d in enumerate(durations)
    )
    lags = tuple(Lag(str(i), str(j)) for i, after in enumerate(successors) for j in after)
    resources = tuple(Resource(f"r{k}", c) for k, c in enumerate(instance["cap"]))
    sink = str(len(durations) - 1)
    return Problem(tasks, lags, resources, (Course("end", 0, 1),), (Dish("end", sink, "end"),), sum(durations), 1,
                   late_ends=False)  # fmt: skip


def default_model(problem: Problem, seconds: float) -> int:
    """The makespan a plain CP-SAT model of a project reaches: intervals, cumulatives, nothing else."""
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    start = {t.id: model.new_int_var(0, problem.horizon, t.id) for t in problem.tasks}
    length = {t.id: t.modes[0].duration for t in problem.tasks}
    for lag in problem.lags:
        model.add(start[lag.after] >= start[lag.before] + length[lag.before])
    for resource in problem.resources:
        using = [(t.id, a) for t in problem.tasks for r, a in t.modes[0].uses if r == resource.id]
        model.add_cumulative([model.new_fixed_size_interval_var(start[i], length[i], i) for i, _ in using],
                             [a for _, a in using], resource.capacity)  # fmt: skip
    last = problem.dishes[0].last
    model.minimize(start[last] + length[last])
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_time_in_seconds = seconds
    status = solver.solve(model)
    return round(solver.objective_value) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else problem.horizon
