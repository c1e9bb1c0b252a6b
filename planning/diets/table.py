"""For each guest with a need: what they can eat in each part of the meal, whom to ask, what is short."""

from __future__ import annotations

from dataclasses import dataclass

from planning.diets.listed import can_eat
from planning.diets.needs import meant, needs_in, rule_of
from planning.potluck import Answer, Guest, Potluck, Promise

PARTS = {
    "main": ("main",),
    "side": ("side", "salad", "starter", "bread"),
    "dessert": ("dessert",),
}
"""The parts of a meal everybody should find something in, and the categories that count for each."""

FILLS = {"main": ("main",), "side": ("side", "salad"), "dessert": ("dessert",)}
"""The categories that can end a shortage: a roll or a dip is no side for a whole meal (common practice)."""


@dataclass(frozen=True)
class DietRow:
    """One need of one guest in one part of the meal.

    `safe_promises` (the contract's word): nothing listed against the need, and the cook listed everything.
    `ask_first`: nobody knows yet. `short`: no filling dish is listed free of it.
    """

    guest: str
    need: str
    category: str
    safe_promises: tuple[str, ...]
    ask_first: tuple[str, ...]
    short: bool


def needs_of(guest: Guest) -> tuple[str, ...]:
    """The guest's needs, each once, as `needs_in` writes them; one nobody understands stays as written."""
    return tuple(dict.fromkeys(one.need for need in guest.all_needs() for one in meant(need)))


def allergies_of(guest: Guest) -> tuple[str, ...]:
    """Those of the guest's needs that are allergies, by their name or because somebody called them one."""
    found = (one for need in guest.all_needs() for one in meant(need))
    return tuple(
        dict.fromkeys(
            one.need for one in found
            if "allerg" in one.severity.casefold() or "sever" in one.severity.casefold()
            or ((rule := rule_of(one.need)) is not None and rule.kind == "allergy")
        )
    )  # fmt: skip


def diets(potluck: Potluck) -> tuple[DietRow, ...]:
    """A row for every need of everybody who may come, in the guests' order, for main, side and dessert.

    A party of one has all its needs at once, so for it a dish must suit every need; in a larger party each
    need may be another member's. Allergies of one party are read as one person's all the same: the careful reading.
    """
    rows = []
    for guest in potluck.guests:
        if guest.answer is Answer.NO:
            continue
        needs = needs_of(guest)
        alone, allergies = guest.party.total <= 1, allergies_of(guest)
        for need in needs:
            together = needs if alone else allergies if need in allergies else ()
            for part, categories in PARTS.items():
                row = _row(potluck.promises, guest.id, need, together or (need,), part, categories)
                rows.append(_from_own_kitchen(row, potluck) if _strict(guest, need) else row)
    return tuple(rows)


BY_KITCHEN = ("kosher", "halal")
"""Needs that are about the kitchen too, which no list of ingredients tells of (`diets.csv`, its sources)."""


def _strict(guest: Guest, need: str) -> bool:
    """Whether a need that is about the kitchen is kept strictly."""
    if need not in BY_KITCHEN:
        return False
    said = " ".join(n.severity for n in guest.all_needs() if need in needs_in(n.need)).casefold()
    return any(word in said for word in ("strict", "sever", "estrict"))


def _from_own_kitchen(row: DietRow, potluck: Potluck) -> DietRow:
    """The row with every dish of somebody else's kitchen to be asked about, whatever is listed in it."""
    own = {p.id for p in potluck.promises_of(row.guest)}
    kept = tuple(p for p in row.safe_promises if p in own)
    filling = any(p.id in kept and p.category in FILLS[row.category] for p in potluck.promises)
    asked = (*row.ask_first, *(p for p in row.safe_promises if p not in own))
    return DietRow(row.guest, row.need, row.category, kept, asked, not filling)


def _row(
    promises: tuple[Promise, ...], guest: str, need: str, needs: tuple[str, ...], part: str, categories: tuple[str, ...]
) -> DietRow:
    safe: list[str] = []
    ask: list[str] = []
    short = True
    for promise in promises:
        if promise.category not in categories:
            continue
        verdicts = {can_eat(promise, one) for one in (need, *needs)}
        if verdicts == {"listed-free"}:
            safe.append(promise.id)
            short = short and promise.category not in FILLS[part]
        elif "contains" not in verdicts:
            ask.append(promise.id)
    return DietRow(guest, need, part, tuple(safe), tuple(ask), short)


def people_without(potluck: Potluck, rows: tuple[DietRow, ...]) -> dict[tuple[str, str], int]:
    """(need, part of the meal) -> how many people have no dish listed free of it; nobody's name."""
    counts: dict[tuple[str, str], int] = {}
    for row in rows:
        guest = potluck.guest(row.guest)
        if not row.short or guest is None:
            continue
        people = max((need.count for need in guest.all_needs() if row.need in needs_in(need.need)), default=1)
        counts[row.need, row.category] = counts.get((row.need, row.category), 0) + people
    return counts
