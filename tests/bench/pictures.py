"""Pictures and paper of a potluck with 40 promises, warm; memory over 500 pictures."""

from __future__ import annotations

import os
import statistics
import time
from collections.abc import Callable
from dataclasses import replace

import psutil

from bot import prints
from planning.potluck import Potluck
from tests.bench.timing import line
from tests.prints.builders import a_potluck, with_bar, with_kitchen, with_needs, words_from_texts

PROMISES, LONGEST_MS, PICTURES = 40, 300, 500


async def run(rounds: int = 3) -> list[str]:
    """The lines to print."""
    words = words_from_texts()
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck(PROMISES))))
    jobs: dict[str, Callable[[Potluck], bytes]] = {
        "picture of the table": lambda p: prints.table_picture(p, plan, words),
        "picture of the kitchen": lambda p: prints.timeline_picture(p, plan, words),
        "run sheet": lambda p: prints.run_sheet(p, plan, words),
        "table cards": lambda p: prints.table_cards(p, plan, words),
        "bar menu": lambda p: prints.bar_menu(p, plan, words),
        "shopping list": lambda p: prints.shopping_list(p, plan, words),
        "name tags": lambda p: prints.name_tags(p, plan, words),
    }
    out = [
        f"Pictures and paper, {PROMISES} promises (milliseconds, warm; a picture may take {LONGEST_MS})",
        line("", "median", "slowest"),
    ]
    for name, job in jobs.items():
        job(potluck)
        took = [_milliseconds(job, replace(potluck, title=f"Supper {n}")) for n in range(5 * rounds)]
        out.append(line(name, f"{statistics.median(took):.0f}", f"{max(took):.0f}"))
    # The first hundred fill what the setter remembers; from there on nothing may grow.
    pictures = [jobs["picture of the table"], jobs["picture of the kitchen"]]
    held = []
    for n in range(PICTURES + 1):
        pictures[n % 2](replace(potluck, title=f"Meal {n}"))
        if n in (100, PICTURES):
            held.append(psutil.Process(os.getpid()).memory_info().rss / 2**20)
    out.append(line(f"memory after 100 and {PICTURES} pictures (MB)", *(f"{mb:.0f}" for mb in held)))
    return out


def _milliseconds(job: Callable[[Potluck], bytes], potluck: Potluck) -> float:
    # Another title each time: the setter remembers what it has set already.
    start = time.perf_counter()
    job(potluck)
    return 1000 * (time.perf_counter() - start)
