"""`python -m tests.faults [PART…]`: every part breaks something and prints its rows; at the end, one table."""

from __future__ import annotations

import argparse
import asyncio
import importlib
import sys
import traceback
from collections.abc import Iterable

from tests.faults.table import Row, broken, table

PARTS = {
    "killed": "kill -9 at random moments during updates",
    "line": "429 storms, 500s, lost, half-read and slow answers, updates twice and out of order",
    "crowd": "two hundred guests in one group, two thousand groups at once",
    "chat": "any interleaving of people against a simple model",
    "memories": "the next words after a restart, and taken by another replica",
    "fuzz": "updates with anything in them",
    "machine": "disk full, database locked, clock set back, no name service",
    "replicas": "three replicas, one frozen, one killed, the database crashed, reminders falling due",
}
MODULES = {"chat": "chat_machine"}


def parser() -> argparse.ArgumentParser:
    ask = argparse.ArgumentParser(prog="python -m tests.faults", description=__doc__)
    ask.add_argument("parts", nargs="*", metavar="PART", help="; ".join(f"{k}: {v}" for k, v in PARTS.items()))
    ask.add_argument("--database", choices=("sqlite", "postgresql"), help="only this one (default: both)")
    ask.add_argument("--updates", type=int, default=600, help="killed: updates in all (default 600)")
    ask.add_argument("--rounds", type=int, default=8, help="killed: kills (default 8)")
    ask.add_argument("--reminders", type=int, default=1000, help="replicas: reminders falling due (default 1000)")
    ask.add_argument("--pace", type=float, help="replicas: how much faster than the real time theirs passes")
    ask.add_argument("--groups", type=int, default=2000, help="crowd: groups at once (default 2000)")
    ask.add_argument("--examples", type=int, default=500, help="chat, fuzz: random chats (a tenth) and updates")
    ask.add_argument("--seed", type=int, default=1)
    return ask


def part(name: str, args: argparse.Namespace) -> Iterable[Row]:
    """Its rows; one bad row where it did not come to its end, so that the others are told all the same."""
    try:
        found: Iterable[Row] = asyncio.run(
            importlib.import_module(f"tests.faults.{MODULES.get(name, name)}").rows(args)
        )
        return list(found)
    except Exception as fault:
        traceback.print_exc()
        said = str(fault).strip().splitlines() or [""]
        return [broken(name, args.database or "both", f"{type(fault).__name__}: {said[0]}")]


def main() -> int:
    ask = parser()
    args = ask.parse_args()
    rows: list[Row] = []
    for name in args.parts:
        if name not in PARTS:
            ask.error(f"there is no part {name!r}; one of {', '.join(PARTS)}")
    for name in args.parts or PARTS:
        print(f"{name}: {PARTS[name]} ...", file=sys.stderr, flush=True)
        rows += part(name, args)
    print(table(rows), flush=True)
    return 1 if any(row.bad for row in rows) else 0


if __name__ == "__main__":
    sys.exit(main())
