"""The kitchen's solving core on instances from a file: `python -m tests.bench.kitchens FILE [--seconds S] …`.

Two formats are told apart by their content: a list of kitchens (ovens, courses, dishes, the best
known objective of each), and a mapping of PSPLIB single-mode projects (successors, durations,
demands, capacities, lower and upper bound). Neither file belongs to the project. Each instance is
run through `planning.kitchen.solve`, the same call the timeline makes, with greedy list scheduling
beside it, and PSPLIB also through a plain CP-SAT model.
"""

from __future__ import annotations

import argparse
import itertools
import json
import statistics
import time
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from planning.kitchen.core import Cost, Course, Dish, Hold, Lag, Mode, Problem, Resource, Schedule, Task, Touch
from planning.kitchen.fallback import list_schedule
from planning.kitchen.solve import solve

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


def _timed(problem: Problem, effort: float, seconds: float | None) -> dict[str, Any]:
    began = time.perf_counter()
    first: list[float] = []

    def heard(_schedule: Schedule, cost: Cost) -> None:
        first.append(time.perf_counter() - began)

    found = solve(problem, effort=effort, seconds=seconds, neat=False, on_found=heard, clock=time.perf_counter)
    took = time.perf_counter() - began
    return {"first_s": round(first[0], 4), "seconds": round(took, 3), "objective": found.cost.objective,
            "late": found.cost.late_min, "unsafe": found.cost.unsafe_min, "bound": found.bound,
            "proved": found.proved}  # fmt: skip


def run_kitchens(cases: Iterable[Mapping[str, Any]], effort: float, seconds: float | None) -> list[dict[str, Any]]:
    rows = []
    for case in cases:
        problem = kitchen(case["instance"])
        greedy = list_schedule(problem)[1]
        row = {"name": case["instance"]["name"], "best": case["best"], "greedy": greedy.objective,
               "greedy_late_unsafe": greedy.late_min + greedy.unsafe_min,
               **_timed(problem, effort, seconds)}  # fmt: skip
        rows.append(row)
        print(json.dumps(row), flush=True)
    return rows


def run_projects(
    cases: Mapping[str, Any], effort: float, seconds: float | None, *, plain: bool
) -> list[dict[str, Any]]:
    rows = []
    for name, case in cases.items():
        problem = project(case)
        row = {"name": name, "set": case["set"], "best": case["ub"], "greedy": list_schedule(problem)[1].objective,
               **_timed(problem, effort, seconds)}  # fmt: skip
        if plain:
            row["default"] = default_model(problem, seconds or 10.0)
        rows.append(row)
    for group in sorted({r["set"] for r in rows}):
        mine = [r for r in rows if r["set"] == group]
        for way in ("objective", "greedy", "default"):
            if way in mine[0]:
                gaps = [(r[way] - r["best"]) / r["best"] * 100 for r in mine]
                print(json.dumps({"set": group, "way": way, "instances": len(mine),
                                  "at_best": sum(g <= 0 for g in gaps), "mean_gap_pct": round(statistics.mean(gaps), 3),
                                  "proved": sum(r["proved"] for r in mine)}))  # fmt: skip
    return rows


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path, help="kitchens or projects as JSON")
    parser.add_argument(
        "--effort", type=float, default=1e9, help="deterministic budget; by default only the clock limits"
    )
    parser.add_argument("--seconds", type=float, default=10.0, help="wall-clock limit for one instance")
    parser.add_argument("--only", default="", help="names (or sets) that begin so")
    parser.add_argument("--every", type=int, default=1, help="take every nth instance only")
    parser.add_argument("--plain", action="store_true", help="also run a plain CP-SAT model beside it (projects)")
    args = parser.parse_args()
    import ortools.sat.python.cp_model  # noqa: F401 - importing takes half a second, which is no solving

    cases = json.loads(args.file.read_text())
    if isinstance(cases, list):
        chosen = [c for c in cases if c["instance"]["name"].startswith(args.only)][:: args.every]
        run_kitchens(chosen, args.effort, args.seconds)
    else:
        names = [n for n, c in cases.items() if n.startswith(args.only) or c["set"] == args.only][:: args.every]
        run_projects({n: cases[n] for n in names}, args.effort, args.seconds, plain=args.plain)


if __name__ == "__main__":
    main()
