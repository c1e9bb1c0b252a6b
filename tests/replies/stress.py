"""`python -m tests.replies.stress [--show WAY|all] [--every N]`: what becomes of sentences that are read right when
they are told in other words (`retold.py`; `--spanish`: `retold_spanish.py`): a stand-in for sentences nobody has seen.

A sentence told otherwise keeps its reading, or becomes a question, or is lost; another change made silently is worst.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from random import Random

from planning.replies import read
from tests.replies.corpus import Line, Outcome, context_of, lines, outcome, outcome_of
from tests.replies.retold import NAMES, WAYS
from tests.replies.retold_spanish import NAMES_ES, WAYS_ES

KINDS = ("kept", "asked", "lost", "wrong asked", "wrong silent")
"""Asked: the reading is right but there is a question now; lost: part of it is missing; wrong: something else is
read."""


def fate(before: Outcome, after: Outcome) -> str:
    """What became of a sentence told otherwise; capitals and apostrophes of a name don't count."""
    missed = {_loosely(p) for p in after.missed}
    wrong = {p for p in after.wrong if _loosely(p) not in missed}
    if wrong & after.silent:
        return "wrong silent"
    if wrong:
        return "wrong asked"
    if missed - {_loosely(p) for p in after.wrong}:
        return "lost"
    return "asked" if after.reading.question is not None and before.reading.question is None else "kept"


def _loosely(piece: tuple[str, str]) -> tuple[str, str]:
    return piece[0], piece[1].lower().replace("'", "")


def told_otherwise(line: Line, way: str) -> Outcome | None:
    """The reading of the line told that way; None where the way does not apply."""
    spanish = line.file.startswith("spanish")
    told = (WAYS_ES if spanish else WAYS)[way](line, Random(f"{way}|{line.text}"))
    if told is None:
        return None
    context = replace(context_of(line.place), language="es" if spanish else "en")
    if spanish and way == "other names":
        context = replace(context, guests=NAMES_ES)
    elif way == "other names" or "Oksana" in told.text or "Bashir" in told.text:
        context = replace(context, guests=NAMES)
    return outcome_of(told, read(told.text, context))


def fates(every: int = 1, *, spanish: bool = False) -> Iterator[tuple[str, str, Line, Outcome]]:
    """Way, fate, the line and its outcome told otherwise, for lines that are read right as they stand."""
    for n, line in enumerate(lines("spanish_*.tsv") if spanish else lines()):
        if n % every or line.text.startswith(">") or not any(c.isalpha() for c in line.text):
            continue
        before = outcome(line)
        if before.wrong or before.missed:
            continue
        for way in WAYS_ES if spanish else WAYS:
            after = told_otherwise(line, way)
            if after is not None:
                yield way, fate(before, after), line, after


def main() -> None:
    shown = sys.argv[sys.argv.index("--show") + 1] if "--show" in sys.argv else ""
    every = int(sys.argv[sys.argv.index("--every") + 1]) if "--every" in sys.argv else 1
    tally: Counter[tuple[str, str]] = Counter()
    spanish = "--spanish" in sys.argv
    for way, became, line, after in fates(every, spanish=spanish):
        tally[way, became] += 1
        if shown in (way, "all", became) and became != "kept":
            print(f"{became} | {way} | {line.file[7:-4]}:{line.number} [{line.place}] {after.line.text!r}")
            print(f"       wrong {sorted(after.wrong)} missed {sorted(after.missed)}")
    print(f"{'told otherwise by':<20}" + "".join(f"{k:>14}" for k in ("told", *KINDS)))
    for way in (*(WAYS_ES if spanish else WAYS), "all"):
        n = {k: sum(c for (w, b), c in tally.items() if b == k and way in (w, "all")) for k in KINDS}
        total = sum(n.values())
        print(f"{way:<20}{total:>14}" + "".join(f"{n[k]:>6}{n[k] / total if total else 0:>8.3f}" for k in KINDS))


if __name__ == "__main__":
    main()
