"""Who can eat what: for every need what does not fit, whom to ask, and what fits by what the cooks listed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from bot.prints.say import Writer
from planning.diets import can_eat, needs_in
from planning.diets.table import PARTS
from planning.menu import bar_category
from planning.portions.wanted import base_item, item_of
from planning.potluck import Answer, Guest, Need, Potluck, Promise

MANY = 8
"""From so many dishes on, the longer of the two lists below what does not fit is "the others": what does not fit is
always named, and the three parts together are the whole table."""

BASE = "bar-base"
"""The id of the bar's base where nobody has promised it and the host sees to it."""

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


def base_of(potluck: Potluck) -> Promise | None:
    """The bar's base as something to eat, while nobody has promised it: everybody at the bar has it."""
    if potluck.bar is None or base_brought(potluck):
        return None
    return Promise(BASE, potluck.host or "", potluck.bar.base, bar_category(potluck.bar.base))


def base_brought(potluck: Potluck) -> bool:
    """Whether somebody promised the bar's base; while nobody has, the plan counts on the host for it."""
    name = base_item(potluck.bar.base).name if potluck.bar else ""
    return any(item_of(p).name == name for p in potluck.promises)


def stays_away(guest_id: str | None, potluck: Potluck) -> bool:
    """Whether the guest has said that they can't come: then nobody may count on them to bring it."""
    guest = potluck.guest(guest_id)
    return guest is not None and guest.answer is Answer.NO


def diet_lines(
    potluck: Potluck, plan: Mapping[str, Any], write: Writer, *, for_host: bool = False, can: CanEat = can_eat
) -> list[dict[str, Any]]:
    """One entry for every need. The plan speaks for the dishes of the parts it has rows for; drinks, toppings and
    whatever else it leaves out are judged here by the same rule, as a topping can hurt like a main."""
    food = food_of(potluck)
    if (base := base_of(potluck)) is not None:
        food = (*food, base)
    told = frozenset(p.id for p in potluck.promises)
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
        _judge(eater, rows, food, told, need, can)
    return [_entry(e, food, write) for e in eaters.values()]


def _judge(
    eater: _Eater,
    rows: list[Mapping[str, Any]],
    food: tuple[Promise, ...],
    told: frozenset[str],
    need: str,
    can: CanEat,
) -> None:
    fits: set[str] = {str(p) for r in rows for p in r.get("safe_promises") or ()}
    ask: set[str] = {str(p) for r in rows for p in r.get("ask_first") or ()} - fits
    covered = {c for r in rows for c in PARTS.get(str(r.get("category")), (r.get("category"),))}
    for promise in food:
        if promise.id in fits or promise.id in ask:
            continue
        spoken_for = promise.id in told and (promise.category in covered or None in covered)
        verdict = "contains" if spoken_for else can(promise, need)
        {"contains": eater.unfit, "listed-free": fits}.get(verdict, ask).add(promise.id)
    eater.ask |= ask
    eater.fits = fits if eater.fits is None else eater.fits & fits
    eater.short += [c for r in rows if r.get("short") and (c := r.get("category")) and c not in eater.short]


def _entry(eater: _Eater, food: tuple[Promise, ...], write: Writer) -> dict[str, Any]:
    fits = (eater.fits or set()) - eater.unfit - eater.ask
    names = _names(food, write)
    unfit = [names[p.id] for p in food if p.id in eater.unfit]
    ask = [names[p.id] for p in food if p.id in eater.ask - eater.unfit]
    fitting = [names[p.id] for p in food if p.id in fits]
    label = write("need", need=eater.need)
    label = write("need-allergy", need=label) if eater.severe else label
    first, rest = ("", _parts(ask, fitting, write)) if unfit or not ask else _to_ask(ask, fitting, write)
    return {
        "who": write("need-of", name=eater.name, need=label, count=eater.count)
        if eater.name
        else write("need-of-somebody", need=label, count=eater.count),
        "unfit": write("diet-unfit", dishes=write.listed(unfit)) if unfit else "",
        "to_ask": first,
        "rest": rest,
        "short": write("diet-short", categories=write.listed(write("category", category=c) for c in eater.short))
        if eater.short and fitting
        else "",
    }


def _names(food: tuple[Promise, ...], write: Writer) -> dict[str, str]:
    """Each dish as people call it; with its cook where two go by one name, as one may fit and the other not."""
    called = {p.id: write.called(p) for p in food}
    times = Counter(name.casefold() for name in called.values())
    return {
        p.id: write("dish-of", dish=called[p.id], name=write.cooks(p))
        if times[called[p.id].casefold()] > 1
        else called[p.id]
        for p in food
    }


def _parts(ask: list[str], fitting: list[str], write: Writer) -> list[str]:
    """Beside what does not fit, what to ask about and what fits, in this order; of a long table the longer of the two
    comes last, as what is left over."""
    if not fitting:
        return [write("diet-fits-none"), *([write("diet-ask-rest")] if ask else [])]
    fits = write("diet-fits", dishes=write.listed(fitting))
    if not ask:
        return [fits]
    asking = write("diet-ask", dishes=write.listed(ask))
    if len(ask) >= max(MANY, len(fitting)):
        return [fits, write("diet-ask-count", count=len(ask))]
    return [asking, write("diet-fits-count", count=len(fitting)) if len(fitting) >= MANY else fits]


def _to_ask(ask: list[str], fitting: list[str], write: Writer) -> tuple[str, list[str]]:
    """Where nothing is known not to fit, that is said by what must be asked, and first: "may not eat: nothing" would be
    read as if everything might be eaten."""
    if not fitting:
        return write("diet-ask-all"), [write("diet-fits-none")]
    fits = write("diet-fits", dishes=write.listed(fitting))
    if len(ask) >= max(MANY, len(fitting)):
        return write("diet-ask-most", count=len(ask), all=len(ask) + len(fitting)), [fits]
    asking = write("diet-ask", dishes=write.listed(ask))
    return asking, [write("diet-fits-count", count=len(fitting)) if len(fitting) >= MANY else fits]


def _said(guest: Guest | None, need: str) -> list[Need]:
    """The guest's own entries behind a need of the plan, which writes them its own way ("nuts" is "tree-nut")."""
    return [n for n in guest.all_needs() if need in needs_in(n.need)] if guest else []
