"""How long a picture takes and whether memory stays flat: `python -m tests.prints.bench` (not a test)."""

from __future__ import annotations

import resource
import statistics
import sys
import time
from dataclasses import replace

from bot import prints
from tests.prints.builders import a_potluck, with_bar, with_kitchen, with_needs, words_from_texts
from tests.prints.test_paper import listing

PROMISES, ROUNDS, PICTURES = 40, 15, 500


def main() -> None:
    words = words_from_texts()
    potluck, plan = with_kitchen(with_bar(with_needs(a_potluck(PROMISES))))
    jobs = {
        "table picture": lambda p: prints.table_picture(p, plan, words),
        "timeline picture": lambda p: prints.timeline_picture(p, plan, words),
        "run sheet": lambda p: prints.run_sheet(p, plan, words),
        "table cards": lambda p: prints.table_cards(p, plan, words, listed=listing),
        "bar menu": lambda p: prints.bar_menu(p, plan, words, listed=listing),
        "shopping list": lambda p: prints.shopping_list(p, plan, words),
        "name tags": lambda p: prints.name_tags(p, plan, words),
    }
    for name, job in jobs.items():
        job(potluck)
        took = []
        for n in range(ROUNDS):
            # Another title each time: the setter remembers what it has set already.
            start = time.perf_counter()
            job(replace(potluck, title=f"Supper {n}"))
            took.append(1000 * (time.perf_counter() - start))
        sys.stdout.write(f"{name}: median {statistics.median(took):.0f} ms, most {max(took):.0f} ms\n")
    for n in range(PICTURES + 1):
        if n % 100 == 0:
            peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
            sys.stdout.write(f"after {n} pictures: at most {peak:.0f} MB\n")
        jobs["table picture" if n % 2 else "timeline picture"](replace(potluck, title=f"Supper {n}"))


if __name__ == "__main__":
    main()
