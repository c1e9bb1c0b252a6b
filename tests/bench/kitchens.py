"""The kitchen's solving core on instances from a file: `python -m tests.bench.kitchens FILE [--seconds S] …`.

Two formats are told apart by their content: a list of kitchens (ovens, courses, dishes, the best
known objective of each), and a mapping of PSPLIB single-mode projects (successors, durations,
demands, capacities, lower and upper bound). Neither file belongs to the project. Each instance is
run through `planning.kitchen.solve`, the same call the timeline makes, with greedy list scheduling
beside it, and PSPLIB also through a plain CP-SAT model.

    --sample N --seed S     N instances drawn by the seed, not all
    --set j30|j60, --only P one set, or names that begin so
    --save FILE             every row as it comes; what stands there already is not run again, so that a
                            long run can be made in pieces (`--stop-after S` ends a piece)
"""

from __future__ import annotations

import argparse
import json
import random
import statistics
import time
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from planning.kitchen.core import Cost, Problem, Schedule
from planning.kitchen.fallback import list_schedule
from planning.kitchen.solve import solve
from tests.bench.instances import default_model, kitchen, project


def timed(problem: Problem, effort: float, seconds: float | None) -> dict[str, Any]:
    """One run through the core: when the first schedule came, when the last, and what it costs."""
    began = time.perf_counter()
    first: list[float] = []

    def heard(_schedule: Schedule, cost: Cost) -> None:
        first.append(time.perf_counter() - began)

    found = solve(problem, effort=effort, seconds=seconds, neat=False, on_found=heard, clock=time.perf_counter)
    took = time.perf_counter() - began
    return {"first_s": round(first[0], 4), "seconds": round(took, 3), "objective": found.cost.objective,
            "late": found.cost.late_min, "unsafe": found.cost.unsafe_min, "bound": found.bound,
            "proved": found.proved}  # fmt: skip


def row_of(name: str, case: Mapping[str, Any], args: argparse.Namespace) -> dict[str, Any]:
    """Everything measured of one instance."""
    if "instance" in case:
        problem = kitchen(case["instance"])
        greedy = list_schedule(problem, 0)[1]
        row = {"name": name, "set": f"{len(case['instance']['dishes'])} dishes", "best": case["best"],
               "greedy": greedy.objective, "greedy_late_unsafe": greedy.late_min + greedy.unsafe_min}  # fmt: skip
        if "greedy_1s_restarts" in case:
            row["greedy_1s_restarts"] = case["greedy_1s_restarts"]
        return row | timed(problem, args.effort, args.seconds)
    problem = project(case)
    row = {"name": name, "set": case["set"], "best": case["ub"], "greedy": list_schedule(problem, 0)[1].objective}
    row |= timed(problem, args.effort, args.seconds)
    if args.plain:
        row["default"] = default_model(problem, args.seconds)
    return row


def summary(rows: Iterable[Mapping[str, Any]]) -> list[dict[str, Any]]:
    """For each set and way: instances run, how many at the best known value, the mean gap to it, proofs, time."""
    rows, found = list(rows), []
    for group in sorted({r["set"] for r in rows}):
        mine = [r for r in rows if r["set"] == group]
        for way in ("objective", "greedy", "greedy_1s_restarts", "default"):
            if all(way in r for r in mine):
                gaps = [(r[way] - r["best"]) / max(1, r["best"]) * 100 for r in mine]
                told = {"set": group, "way": way, "instances": len(mine), "at_best": sum(g <= 0 for g in gaps),
                        "mean_gap_pct": round(statistics.mean(gaps), 3)}  # fmt: skip
                if way == "objective":
                    told |= {"proved": sum(r["proved"] for r in mine),
                             "median_s": statistics.median(r["seconds"] for r in mine),
                             "longest_s": max(r["seconds"] for r in mine),
                             "latest_first_s": max(r["first_s"] for r in mine)}  # fmt: skip
                found.append(told)
    return found


def chosen(cases: Any, args: argparse.Namespace) -> dict[str, Mapping[str, Any]]:
    """The instances asked for, by name."""
    named = {c["instance"]["name"]: c for c in cases} if isinstance(cases, list) else cases
    names = [n for n, c in named.items() if n.startswith(args.only) and args.set in ("", c.get("set"))]
    if args.sample and args.sample < len(names):
        drawn = set(random.Random(args.seed).sample(names, args.sample))
        names = [n for n in names if n in drawn]
    return {n: named[n] for n in names}


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("file", type=Path, help="kitchens or projects as JSON")
    parser.add_argument("--effort", type=float, default=1e9, help="deterministic budget; unsaid, only the clock limits")
    parser.add_argument("--seconds", type=float, default=10.0, help="wall-clock limit for one instance")
    parser.add_argument("--set", default="", help="of projects, the set: j30, j60")
    parser.add_argument("--only", default="", help="names that begin so")
    parser.add_argument("--sample", type=int, default=0, help="so many instances, drawn by the seed")
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--save", type=Path, help="rows are kept here, and not run again")
    parser.add_argument("--stop-after", type=float, default=0.0, help="begin no instance after so many seconds")
    parser.add_argument("--plain", action="store_true", help="also run a plain CP-SAT model beside it (projects)")
    args = parser.parse_args()
    import ortools.sat.python.cp_model  # noqa: F401 - importing takes half a second, which is no solving

    wanted = chosen(json.loads(args.file.read_text()), args)
    kept = [json.loads(line) for line in args.save.read_text().splitlines()] if args.save and args.save.exists() else []
    rows = [r for r in kept if r["name"] in wanted]
    began = time.perf_counter()
    for name, case in wanted.items():
        if any(r["name"] == name for r in rows):
            continue
        if args.stop_after and time.perf_counter() - began > args.stop_after:
            break
        row = row_of(name, case, args)
        rows.append(row)
        print(json.dumps(row), flush=True)
        if args.save:
            with args.save.open("a") as out:
                out.write(json.dumps(row) + "\n")
    for told in summary(rows):
        print(json.dumps(told))


if __name__ == "__main__":
    main()
