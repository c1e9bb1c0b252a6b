"""`python -m tests.bench [PART…]`: each part prints a table. Without a name, all parts."""

from __future__ import annotations

import argparse
import asyncio
import importlib

PARTS = {
    "press": "a guest's button press through the whole bot, beside a bare one",
    "replicas": "1, 2 and 4 replicas on one PostgreSQL, and one beside a bare bot",
    "reminded": "reminders kept, moved and handed out, beside APScheduler",
    "resting": "a board among 10 and among 10,000 potlucks; the bot at rest",
    "plan": "the whole plan, with the solvers and without",
    "headcount": "the exact headcount, beside sampling it",
    "asks": "who is asked for what, beside HiGHS and greedy; how many asks move after a drop-out",
    "toppings": "which toppings open most combinations, beside CP-SAT, HiGHS and one at a time",
    "amounts": "amounts read in chat text, beside pint",
    "pictures": "pictures and paper at 40 promises; memory over 500 pictures",
    "imports": "what loading the planning takes",
}


def main() -> None:
    ask = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    ask.add_argument("parts", nargs="*", metavar="PART", help="; ".join(f"{k}: {v}" for k, v in PARTS.items()))
    ask.add_argument("--rounds", type=int, default=3, help="how often each is measured, in turns (default 3)")
    ask.add_argument("--count", type=int, default=100_000, help="reminded: how many reminders (default 100000)")
    args = ask.parse_args()
    for name in args.parts or PARTS:
        if name not in PARTS:
            ask.error(f"there is no part {name!r}; one of {', '.join(PARTS)}")
        part = importlib.import_module(f"tests.bench.{name}")
        more = {"count": args.count} if name == "reminded" else {}
        print("\n".join(asyncio.run(part.run(args.rounds, **more))), flush=True)


if __name__ == "__main__":
    main()
