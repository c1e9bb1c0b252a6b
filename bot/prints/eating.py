"""Who can eat what: for every need what does not fit, whom to ask, and what fits by what the cooks listed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from bot.prints.say import Writer
from planning.diets import can_eat, needs_in
from planning.diets.table import PARTS
from planning.potluck import Answer, Guest, Need, Potluck, Promise

MANY = 8
"""A list of dishes that fit is counted instead of named from here on; what does not fit is always named."""

CanEat = Callable[[Promise, str], str]


@dataclass
class _Eater:
    """One line: a guest with an open need, or all who share a need that is not theirs to show."""

    need: str
    name: str | None
    count: int = 0
    severe: bool = False
    unfit: set[str] = field(default_factory=set)
    ask: set[str] = field(default_factory=set)
    fits: set[str] | None = None
    short: list[str] = field(default_factory=list)


def food_of(potluck: Potluck) -> tuple[Promise, ...]:
    """Everything on the table that can be eaten or drunk, the bar's taken toppings too."""
    promises = tuple(p for p in potluck.promises if p.category != "supplies")
    toppings = potluck.bar.toppings if potluck.bar else ()
    return promises + tuple(
        Promise(f"topping:{n}", t.guest, t.name, "topping") for n, t in enumerate(toppings) if t.guest
    )


def diet_lines(
    potluck: Potluck, plan: Mapping[str, Any], write: Writer, *, for_host: bool = False, can: CanEat = can_eat
) -> list[dict[str, Any]]:
    """One entry for every need. The plan speaks for the dishes of the parts it has rows for; drinks, toppings and
    whatever else it leaves out are judged here by the same rule, as a topping can hurt like a main."""
    food = food_of(potluck)
    by_person: dict[tuple[str, str], list[Mapping[str, Any]]] = {}
    for row in plan.get("diets") or ():
        by_person.setdefault((str(row["guest"]), str(row["need"])), []).append(row)
    eaters: dict[tuple[str, str | None], _Eater] = {}
    for (guest_id, need), rows in by_person.items():
        guest = potluck.guest(guest_id)
        if guest is not None and guest.answer is Answer.NO:
            continue
        said = _said(guest, need)
        named = guest is not None and (for_host or any(n.open for n in said))
        eater = eaters.setdefault(
            (need, guest_id if named else None), _Eater(need, write.name(guest_id) if named else None)
        )
        eater.count += sum(n.count for n in said) or 1
        eater.severe |= any(n.severity.endswith("allergy") for n in said)
        _judge(eater, rows, food, need, can)
    return [_entry(e, food, write) for e in eaters.values()]


def _judge(eater: _Eater, rows: list[Mapping[str, Any]], food: tuple[Promise, ...], need: str, can: CanEat) -> None:
    fits: set[str] = {str(p) for r in rows for p in r.get("safe_promises") or ()}
    ask: set[str] = {str(p) for r in rows for p in r.get("ask_first") or ()} - fits
    covered = {c for r in rows for c in PARTS.get(str(r.get("category")), (r.get("category"),))}
    for promise in food:
        if promise.id in fits or promise.id in ask:
            continue
        verdict = "contains" if promise.category in covered or None in covered else can(promise, need)
        {"contains": eater.unfit, "listed-free": fits}.get(verdict, ask).add(promise.id)
    eater.ask |= ask
    eater.fits = fits if eater.fits is None else eater.fits & fits
    eater.short += [c for r in rows if r.get("short") and (c := r.get("category")) and c not in eater.short]


def _entry(eater: _Eater, food: tuple[Promise, ...], write: Writer) -> dict[str, Any]:
    fits = (eater.fits or set()) - eater.unfit - eater.ask
    unfit = [write.called(p) for p in food if p.id in eater.unfit]
    ask = [write.called(p) for p in food if p.id in eater.ask - eater.unfit]
    fitting = [write.called(p) for p in food if p.id in fits]
    label = write("need", need=eater.need)
    label = write("need-allergy", need=label) if eater.severe else label
    if ask and not fitting:
        asking = write("diet-ask-rest" if unfit else "diet-ask-all")
    else:
        asking = write("diet-ask", dishes=write.listed(ask)) if ask else ""
    if not fitting:
        fit = write("diet-fits-none")
    elif len(fitting) < MANY:
        fit = write("diet-fits", dishes=write.listed(fitting))
    else:
        fit = write("diet-fits-count", count=len(fitting))
    return {
        "who": write("need-of", name=eater.name, need=label, count=eater.count)
        if eater.name
        else write("need-of-somebody", need=label, count=eater.count),
        "unfit": write("diet-unfit", dishes=write.listed(unfit)) if unfit else "",
        "ask": asking,
        "fits": fit,
        "short": write("diet-short", categories=write.listed(write("category", category=c) for c in eater.short))
        if eater.short
        else "",
    }


def _said(guest: Guest | None, need: str) -> list[Need]:
    """The guest's own entries behind a need of the plan, which writes them its own way ("nuts" is "tree-nut")."""
    return [n for n in guest.all_needs() if need in needs_in(n.need)] if guest else []
