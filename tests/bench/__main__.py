"""`python -m tests.bench [PART…]`: each part prints a table. Without a name, all parts."""

from __future__ import annotations

import argparse
import asyncio
import importlib

PARTS = {
    "press": "a guest's button press through the whole bot, beside a bare one",
    "plan": "the whole plan, with the solvers and without",
    "headcount": "the exact headcount, beside sampling it",
    "asks": "who is asked for what, beside HiGHS and greedy; how many asks move after a drop-out",
    "toppings": "which toppings open most combinations, beside CP-SAT, HiGHS and one at a time",
    "amounts": "amounts read in chat text, beside pint",
    "imports": "what loading the planning takes",
}


def main() -> None:
    ask = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    ask.add_argument("parts", nargs="*", metavar="PART", help="; ".join(f"{k}: {v}" for k, v in PARTS.items()))
    ask.add_argument("--rounds", type=int, default=3, help="how often each is measured, in turns (default 3)")
    args = ask.parse_args()
    for name in args.parts or PARTS:
        if name not in PARTS:
            ask.error(f"there is no part {name!r}; one of {', '.join(PARTS)}")
        part = importlib.import_module(f"tests.bench.{name}")
        print("\n".join(asyncio.run(part.run(args.rounds))), flush=True)


if __name__ == "__main__":
    main()
