"""Where an allergy meets the table: which dishes hold what somebody must not eat, and which of that is news."""

from __future__ import annotations

from dataclasses import dataclass, replace

from planning.potluck import Answer, Guest, Need, Potluck, Promise
from planning.safety.allergens import ALLERGY, DEGREES, SEVERE, avoided, held


@dataclass(frozen=True)
class Met:
    """One dish (or bowl of the bar, with `promise` "") and one thing somebody at the table must not eat.

    `how` is what `held` says; `owners` are the guests in whose party it is, `cooks` who bring the dish.
    """

    promise: str
    dish: str
    cooks: tuple[str, ...]
    need: str
    degree: int
    how: str
    owners: frozenset[str]

    @property
    def severe(self) -> bool:
        return self.degree >= SEVERE


def met(potluck: Potluck) -> tuple[Met, ...]:
    """Every allergy at the table against every dish that holds it, in the potluck's order.

    What is listed, named or usual counts for any allergy, "perhaps" for a severe one only. A cook whose own party it
    is knows it already, and nobody else is concerned: that is left out.
    """
    owners: dict[str, list[tuple[str, int]]] = {}
    for guest in _with_needs(potluck):
        for one in avoided(replace(potluck, guests=(guest,))):
            owners.setdefault(one.need, []).append((guest.id, one.degree))
    needs = [one for one in avoided(potluck) if one.degree >= ALLERGY]
    found = []
    for promise in _dishes(potluck):
        cooks = tuple(dict.fromkeys((promise.guest, *promise.sharers)))
        for one in needs:
            whose = frozenset(who for who, degree in owners[one.need] if degree == one.degree)
            how = held(promise, one)
            if how and whose - set(cooks) and (how != "perhaps" or one.degree >= SEVERE):
                found.append(Met(promise.id, promise.dish, cooks, one.need, one.degree, how, whose))
    return tuple(found)


def _with_needs(potluck: Potluck) -> tuple[Guest, ...]:
    return tuple(g for g in potluck.guests if g.needs or g.diets or g.allergies)


def needing(potluck: Potluck) -> tuple[tuple[str, Answer, tuple[Need, ...]], ...]:
    """Whoever has told of a need, whether they come, and of what they told."""
    return tuple((g.id, g.answer, g.all_needs()) for g in _with_needs(potluck))


def _dishes(potluck: Potluck) -> tuple[Promise, ...]:
    bowls = [Promise("", t.guest, t.name, "topping") for t in (potluck.bar.toppings if potluck.bar else ()) if t.guest]
    return (*(p for p in potluck.promises if p.category != "supplies"), *bowls)


@dataclass(frozen=True)
class News:
    """What a change makes of it: `by_need` because an allergy is new or worse, `by_dish` because a dish is."""

    by_need: tuple[Met, ...]
    by_dish: tuple[Met, ...]
    severe: tuple[str, ...]
    """Severe allergies that nobody had told of before, whether or not a dish is known to hold them."""
    unlisted: tuple[str, ...]
    """Beside such a one: dishes of which nobody has said what is in them."""

    @property
    def degree(self) -> str:
        return DEGREES[SEVERE if self.severe else ALLERGY]


def as_maybe(potluck: Potluck, guest_id: str) -> Potluck:
    """As if this guest might come."""
    guests = (replace(g, answer=Answer.MAYBE) if g.id == guest_id else g for g in potluck.guests)
    return replace(potluck, guests=tuple(guests))


def told_severe(before: Potluck, after: Potluck, guest_id: str) -> bool:
    """Whether somebody who is down as not coming has now told of a severe allergy."""
    guest, was = after.guest(guest_id), before.guest(guest_id)
    if guest is None or guest.answer is not Answer.NO or (was is not None and was.all_needs() == guest.all_needs()):
        return False
    alone = replace(after, guests=(replace(guest, answer=Answer.MAYBE),))
    known = replace(after, guests=(replace(was, answer=Answer.MAYBE),) if was is not None else ())
    worse = {one.need for one in avoided(alone) if one.degree >= SEVERE}
    return bool(worse - {one.need for one in avoided(known) if one.degree >= SEVERE})


_FIRM = {"perhaps": 0, "usual": 1, "named": 2, "listed": 2}


def news(before: Potluck, after: Potluck) -> News:
    """What meets now and did not before, or not as badly, or not as surely."""
    # Most changes touch neither a need nor a dish: then nothing can be new, and nothing is looked up.
    if before.promises == after.promises and before.bar == after.bar and needing(before) == needing(after):
        return News((), (), (), ())
    known = {(m.promise, m.dish, m.need): (m.degree, _FIRM[m.how]) for m in met(before)}
    feared = {one.need: one.degree for one in avoided(before)}
    now = {one.need: one.degree for one in avoided(after) if one.degree >= ALLERGY}
    worse = {need for need, degree in now.items() if feared.get(need, 0) < degree}
    fresh = []
    for m in met(after):
        degree, firm = known.get((m.promise, m.dish, m.need), (0, -1))
        if degree < m.degree or firm < _FIRM[m.how]:
            fresh.append(m)
    by_need = tuple(m for m in fresh if m.need in worse)
    severe = {need for need in worse if now[need] >= SEVERE}
    told = {m.promise for m in by_need}
    unlisted = [
        p.dish for p in after.promises
        if severe and not p.ingredients and p.id not in told and p.category not in ("supplies", "drink")
    ]  # fmt: skip
    by_dish = tuple(m for m in fresh if m.need not in worse)
    return News(by_need, by_dish, tuple(sorted(severe)), tuple(unlisted))
