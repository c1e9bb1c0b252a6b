"""The next potluck from the last: what carries over, what is learned, and who brings what this time."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from dateutil.rrule import MONTHLY, rrule, weekday

from planning.changes import Actor, open_potluck
from planning.potluck import Answer, Bar, Guest, PastAnswer, Potluck, Promise, Stage, Topping
from planning.theday.leftovers import learned

NAMED_DAYS = 60
"""For so long an earlier evening keeps whose answer it was; after that only that somebody said and came."""
MOST_HISTORY = 600


@dataclass(frozen=True)
class Proposal:
    """`dish` "" asks for any dish of the category."""

    guest: str
    category: str
    dish: str
    servings: float | None


def came(potluck: Potluck) -> tuple[PastAnswer, ...]:
    """What each guest said and whether they came, as far as this potluck knows.

    A no-show was written down when the host said so; whoever said yes counts as come without it, whoever
    said maybe or nothing only when they told of their arrival.
    """
    day = potluck.local(potluck.starts_at).date().isoformat()
    told = {h.guest for h in potluck.history if h.date == day}
    found = [h for h in potluck.history if h.date == day]
    for guest in potluck.guests:
        if guest.id in told or guest.id == potluck.host:
            continue
        there = guest.answer is Answer.YES or guest.arrived_at is not None
        categories: list[str | None] = list(dict.fromkeys(p.category for p in potluck.promises_of(guest.id))) or [None]
        found += [PastAnswer(day, guest.id, c, guest.answer.value, there) for c in categories]
    return tuple(found)


def carried(past: Iterable[Potluck], now: datetime) -> tuple[PastAnswer, ...]:
    """The group's earlier evenings, each once, the oldest first; those long ago without names."""
    rows: dict[tuple[str, str, str | None], PastAnswer] = {}
    for potluck in sorted(past, key=lambda p: p.starts_at):
        if potluck.stage is Stage.CANCELLED or potluck.starts_at >= now:
            continue
        for row in (*potluck.history, *came(potluck)):
            rows[(row.date, row.guest, row.category)] = row
    limit = (now - timedelta(days=NAMED_DAYS)).date().isoformat()
    nobody: dict[tuple[str, str], str] = {}
    found = []
    for row in sorted(rows.values(), key=lambda r: (r.date, r.guest, r.category or "")):
        if row.date < limit:
            name = nobody.setdefault((row.date, row.guest), f"past-{len(nobody) + 1}")
            row = replace(row, guest=name)
        found.append(row)
    return tuple(found[-MOST_HISTORY:])


def corrections(past: Iterable[Potluck], now: datetime) -> Mapping[str, float]:
    """What the newest earlier evening taught, the ones before it included."""
    over = [p for p in past if p.stage is not Stage.CANCELLED and p.starts_at < now]
    return learned(max(over, key=lambda p: p.starts_at)) if over else {}


def repeat(
    last: Potluck, by: Actor, new_id: str, starts_at: datetime, now: datetime, history: tuple[PastAnswer, ...]
) -> Potluck:
    """A new potluck like the last one: place, kitchen, bar, budget, people and their needs; no answers, no dishes.

    People who were only carried on from evening to evening and have not answered one of the last `NAMED_DAYS` are
    left out with their needs; should they come after all, they are asked like anybody new. Raises Refusal for a date
    that has passed. Whoever repeats it is its host.
    """
    length = last.ends_at - last.starts_at if last.ends_at is not None else None
    fresh = open_potluck(
        new_id,
        by,
        starts_at=starts_at,
        ends_at=starts_at + length if length is not None else None,
        timezone=last.timezone,
        now=now,
        title=last.title,
        place=last.place,
        people=last.expected_people,
        setting=last.setting,
        mealtime=last.mealtime,
        units=last.units,
    )
    bar = last.bar and Bar(
        last.bar.base, tuple(Topping(t.name) for t in last.bar.toppings), last.bar.combos, last.bar.most_asks
    )
    lately = _lately(last, history)
    known = tuple(
        replace(g, answer=Answer.NONE, pregnant=False, arrived_at=None)
        for g in last.guests
        if g.id != by.id and g.name and g.id in lately
    )
    me = fresh.guests[0]
    mine = last.guest(by.id)
    host = Guest(me.id, me.name, Answer.YES, mine.party if mine else me.party, username=me.username)
    if mine is not None:
        host = replace(host, needs=mine.needs, diets=mine.diets, allergies=mine.allergies)
    return replace(
        fresh,
        guests=(host, *(g for g in known if not _door(last, g))),
        cohosts=tuple(c for c in (*last.cohosts, last.host or by.id) if c != by.id and last.guest(c) is not None),
        kitchen=last.kitchen_before or last.kitchen,
        bar=bar,
        budget=last.budget,
        prices=last.prices,
        items=last.items,
        service_level=last.service_level,
        answer_odds=last.answer_odds,
        parking=last.parking,
        door_code=last.door_code,
        pin=last.pin,
        repeats=last.repeats,
        corrections=learned(last),
        history=history,
        last_number=last.last_number,
    )


def _lately(last: Potluck, history: Iterable[PastAnswer]) -> frozenset[str]:
    """Who has answered, brought or run something in the last potluck or in the evenings whose answers still have
    names; and who was new at the last one, whatever they said there."""
    busy = (last.host, *last.cohosts, *(who for p in last.promises for who in (p.guest, *p.sharers)))
    there = {who for who in busy if who}
    there |= {g.id for g in last.guests if g.answer is not Answer.NONE or g.arrived_at is not None}
    answered = {row.guest for row in history if row.said != Answer.NONE.value or row.came}
    carried_on = {row.guest for row in last.history}
    return frozenset(there | answered | {g.id for g in last.guests if g.id not in carried_on})


def _door(last: Potluck, guest: Guest) -> bool:
    """People who were only counted at the door have no name to ask."""
    return guest.id.startswith("n") and guest.added_by == last.host and guest.party.total > 1 and not guest.username


def proposals(last: Potluck, history: Iterable[PastAnswer]) -> tuple[Proposal, ...]:
    """Who could bring what this time: each their usual dish, but mains go round.

    As many mains as last time are proposed to those who have brought the fewest so far; whoever brought one and
    is not among them is asked for something lighter. By the order in which people are listed where equal.
    """
    cooks = [g for g in last.guests if last.promises_of(g.id) and g.id != ""]
    mains = [p for p in last.promises if p.category == "main"]
    brought = {g.id: 0 for g in cooks}
    for row in history:
        if row.category == "main" and row.guest in brought and row.came:
            brought[row.guest] += 1
    turn = sorted(cooks, key=lambda g: brought[g.id])[: len(mains)]
    found = []
    for guest in cooks:
        own = last.promises_of(guest.id)
        usual_main = next((p for p in own if p.category == "main"), None)
        if guest in turn:
            found.append(_of(guest, usual_main) if usual_main else Proposal(guest.id, "main", "", _usual(mains)))
            continue
        other = next((p for p in own if p.category != "main"), None)
        found.append(_of(guest, other) if other else Proposal(guest.id, LIGHTER, "", None))
    return tuple(found)


LIGHTER = "side"


def _of(guest: Guest, promise: Promise) -> Proposal:
    return Proposal(guest.id, promise.category, promise.dish, promise.servings)


def _usual(mains: list[Promise]) -> float | None:
    known = sorted(p.servings for p in mains if p.servings)
    return known[len(known) // 2] if known else None


def next_month(potluck: Potluck) -> datetime:
    """The same weekday of the next month ("the third Saturday"; a fifth becomes the last), at the same wall hour."""
    local = potluck.local(potluck.starts_at)
    nth = (local.day - 1) // 7 + 1
    day = weekday(local.weekday(), nth if nth <= 4 else -1)
    after = rrule(MONTHLY, byweekday=day, dtstart=local.replace(tzinfo=None), count=3)
    first = next(d for d in after if (d.year, d.month) != (local.year, local.month))
    moved: datetime = first.replace(tzinfo=potluck.zone).astimezone(UTC)
    return moved
