"""How long it takes to load the planning, and which large libraries that brings along."""

from __future__ import annotations

import json
import statistics
import subprocess
import sys

from tests.bench.timing import line

CODE = """if True:
    import json, sys, time
    began = time.perf_counter()
    import {name}
    large = [m for m in ("ortools", "numpy", "pint", "pandas", "scipy", "sqlalchemy", "telegram") if m in sys.modules]
    print(json.dumps([time.perf_counter() - began, large]))"""

NAMES = ("planning.plan", "planning.replies", "ortools.sat.python.cp_model")


def loaded(name: str) -> tuple[float, list[str]]:
    """(seconds, large libraries) of one import in a fresh process."""
    code = CODE.format(name=name)
    seconds, large = json.loads(subprocess.run([sys.executable, "-c", code], capture_output=True, check=True).stdout)
    return seconds, large


async def run(rounds: int = 3) -> list[str]:
    """The lines to print."""
    lines = ["Loading (seconds in a fresh process; median)"]
    for name in NAMES:
        runs = [loaded(name) for _ in range(max(3, rounds))]
        brings = ", ".join(runs[0][1]) or "nothing large"
        lines.append(f"{line(name, f'{statistics.median(seconds for seconds, _ in runs):.2f}')}  brings {brings}")
    return lines
