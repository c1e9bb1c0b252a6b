"""What is given up, step by step, where not everything can be kept: what was only reckoned with, then what was said
of when a dish leaves home. The timeline that comes of it says how late it is; nothing in a kitchen is ever doubled."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from planning.kitchen.core import Problem


def relaxed(problem: Problem) -> Iterator[Problem]:
    """The problem with less to keep: without the hands of people at home, then without latest ends."""
    free = replace(
        problem,
        tasks=tuple(
            replace(t, touches=tuple(x for x in t.touches if not x.resource.startswith("home:")))
            for t in problem.tasks
        ),
    )  # fmt: skip
    if free.tasks != problem.tasks:
        yield free
    if any(t.latest_end is not None for t in free.tasks):
        yield replace(free, tasks=tuple(replace(t, latest_end=None) for t in free.tasks))
