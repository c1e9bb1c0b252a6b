"""The table: one row for each thing that was tried, on each database."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class Row:
    """`did` says what was done, with counts. `lost`: acknowledged changes or reminders that are not there.
    `doubled`: done twice. `half`: changes of which only a part is there. `notes`: what a reader must know,
    one line each; every doubled one is listed there. `may_double`: how many the faults explain (one a process
    and fault); more is bad."""

    what: str
    database: str
    did: str
    lost: int
    doubled: int
    half: int
    notes: tuple[str, ...] = ()
    may_double: int | None = None
    ended: bool = True
    """Whether it came to its end: what did not is bad, whatever was counted."""

    @property
    def bad(self) -> bool:
        too_often = self.may_double is not None and self.doubled > self.may_double
        return bool(not self.ended or self.lost or self.half or too_often)


def broken(what: str, database: str, why: str) -> Row:
    """What was to be tried broke off: nothing is known of it."""
    return Row(what, database, "BROKE OFF", 0, 0, 0, (why,), ended=False)


HEAD = ("fault", "database", "lost", "doubled", "of at most", "half", "what was done")


def listed(what: str, things: Iterable[str]) -> list[str]:
    """Notes that name every one of them, a few a line."""
    named = list(things)
    return [f"{what}: " + ", ".join(named[n : n + 5]) for n in range(0, len(named), 5)]


def table(rows: Iterable[Row]) -> str:
    cells = [
        (
            r.what,
            r.database,
            str(r.lost),
            str(r.doubled),
            str("" if r.may_double is None else r.may_double),
            str(r.half),
            r.did,
        )
        for r in rows
    ]
    widths = [max(len(row[n]) for row in [HEAD, *cells]) for n in range(len(HEAD))]
    widths[-1] = 0
    lines = [_line(HEAD, widths), _line(tuple("-" * w for w in widths), widths)]
    for row, r in zip(cells, rows, strict=True):
        lines.append(_line(row, widths))
        lines += [f"    {note}" for note in r.notes]
    return "\n".join(lines)


def _line(cells: tuple[str, ...], widths: list[int]) -> str:
    shown = [c.rjust(w) if c.isdigit() else c.ljust(w) for c, w in zip(cells, widths, strict=True)]
    return "  ".join(shown).rstrip()
