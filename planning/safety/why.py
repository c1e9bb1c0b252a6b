"""Who says so: the published row behind each caution about a dish, a topic or a rule."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from planning import tables
from planning.kitchen.result import Timeline
from planning.potluck import Potluck, Say
from planning.safety import safety
from planning.safety.notes import row
from planning.safety.topics import rules_about

CONFLICT_ROWS = {
    "off-heat": "HOLD-06", "hold-too-cool": "HOLD-06", "thaw-short": "THAW-03", "thaw-late": "THAW-03",
    "frozen-weight": "COOK-35", "too-heavy": "COOK-35",
    "too-much-power": "ELEC-03", "no-outlet": "ELEC-18",
}  # fmt: skip
"""The row behind a conflict of the timeline, where it rests on one and not on arithmetic alone."""


@dataclass(frozen=True)
class Because:
    """A sentence the bot says and the row of `data/safety.csv` it rests on, in the table's own words.

    `say` is None where the rule was asked for by its id and nothing here falls under it.
    """

    rule: str
    text: str
    value: str
    unit: str
    say: Say | None


def because(
    potluck: Potluck, now: datetime, timeline: Timeline | None, words: str, said: str = ""
) -> tuple[Because, ...]:
    """The cautions these words ask about, each once: a rule's id, a dish, or a topic of the table ("thawing").

    Where there are no words, those about the dishes named in `said`, the message that was replied to.
    """
    wanted = " ".join(words.casefold().split())
    by_id = {r["id"].casefold(): r["id"] for r in tables.rows("safety")}
    told: list[tuple[str, str | None, Say]] = []
    for conflict in timeline.conflicts if timeline is not None else ():
        if (about := CONFLICT_ROWS.get(conflict.rule)) is not None:
            told += [(about, promise, conflict.why) for promise in conflict.promises or (None,)]
    told += [(n.rule, n.promise, n.say) for n in safety(potluck, now, timeline)]
    if wanted in by_id:
        rule = by_id[wanted]
        return (_because(rule, next((say for of, _, say in told if of == rule), None)),)
    dishes = _dishes(potluck, wanted, said)
    found = [t for t in told if t[1] in dishes]
    if not found and wanted:
        found = [t for t in told if wanted in row(t[0])["topic"].casefold() or row(t[0])["topic"].casefold() in wanted]
    if not found and wanted:
        said_of = {rule: say for rule, _, say in reversed(told)}
        return tuple(_because(rule, said_of.get(rule)) for rule in rules_about(wanted))
    once: dict[tuple[str, str | None], Because] = {}
    for rule, promise, say in found:
        once.setdefault((rule, promise), _because(rule, say))
    return tuple(once.values())


def _dishes(potluck: Potluck, wanted: str, said: str) -> set[str]:
    if wanted:
        return {p.id for p in potluck.promises if wanted in p.dish.casefold() or p.dish.casefold() in wanted}
    return {p.id for p in potluck.promises if p.dish.casefold() in said.casefold()}


def _because(rule: str, say: Say | None) -> Because:
    found = row(rule)
    plain = found["unit"] not in ("bool", "allowed", "list", "state", "discard", "formula")
    return Because(rule, found["rule"], found["value"] if plain else "", found["unit"] if plain else "", say)
