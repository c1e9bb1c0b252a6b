"""A note, and the row of the table it rests on."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from planning import tables
from planning.potluck import Say

BLOCK, WARN, NOTE = "block", "warn", "note"


@dataclass(frozen=True)
class SafetyNote:
    """`promise` None means the whole potluck. `rule` and `source` are the id of the row in `data/safety.csv`.

    `severity`: "block" must not be served so, "warn" needs somebody to act, "note" is good to know.
    `value` is in `unit`; `deadline` (UTC) is when it must have been done.
    """

    promise: str | None
    rule: str
    say: Say
    value: float | str
    unit: str
    deadline: datetime | None
    severity: str
    source: str


def row(rule: str) -> dict[str, str]:
    """The table's row; KeyError when there is none."""
    return _by_id()[rule]


def _by_id() -> dict[str, dict[str, str]]:
    return {r["id"]: r for r in tables.rows("safety")}


def note(
    rule: str,
    severity: str,
    key: str,
    facts: dict[str, object],
    *,
    promise: str | None = None,
    deadline: datetime | None = None,
) -> SafetyNote:
    """A note with its row's value. A row nobody has read (from memory) makes a note, never a block or warning."""
    found = row(rule)
    if found["how_known"] != "read":
        severity = NOTE
    return SafetyNote(promise, rule, Say(f"safety-{key}", {"rule": rule, **facts}), _number(found["value"]),
                      found["unit"], deadline, severity, found["source"])  # fmt: skip


def _number(text: str) -> float | str:
    try:
        value = float(text)
    except ValueError:
        return text
    return int(value) if value.is_integer() else value
