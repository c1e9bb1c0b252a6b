"""What the timeline has to say to somebody: slow cookers, ovens, grills, and how a guest's dish is heated there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import time, timedelta

from planning.kitchen.off import dial_f, off_by
from planning.kitchen.pans import IDLE, visits
from planning.kitchen.result import PlannedStep
from planning.kitchen.usual import HEATING
from planning.potluck import Guest, Potluck, Promise, Say
from planning.reminders_value import Reminder, dish_of, facts_of, without_account
from planning.safety.wall_clock import wall

PREHEAT_MIN = 15
LIGHT_MIN = 30
"""Charcoal is ready so long after it was lit; common practice, no source."""

SERVED_AT_ONCE = timedelta(minutes=15)
"""What leaves the oven so shortly before the start goes straight to the table; common practice, no source."""


def slow_cookers(potluck: Potluck, steps: Iterable[PlannedStep]) -> Iterator[Reminder]:
    """When each goes on; a question where nobody said that the dish is made in one and it is only usual."""
    for step in steps:
        if not step.kind.startswith("slow-cooker"):
            continue
        promise = potluck.promise(step.promise)
        own = step.at == "home" or (step.appliance or "").startswith("own:")
        to = _owner(potluck, promise) if own else "host"
        said = promise is None or promise.heat is not None
        setting = step.kind.removeprefix("slow-cooker-")
        if not said and step.end > potluck.starts_at:
            yield _asked_before(potluck, step, to, setting)
            continue
        facts = facts_of(potluck, dish=dish_of(potluck, step.promise), setting=setting, until=step.end, at=step.start)
        key = "reminder-slow-cooker" if said else "reminder-slow-cooker-usual"
        yield Reminder("slow-cooker", to, step.start, step.start + timedelta(minutes=45),
                       Say(key, facts), f"slow-cooker:{step.promise}:{step.step}")  # fmt: skip


EVENING = time(19)
"""When people are asked on the day before; common practice, no source."""


def _asked_before(potluck: Potluck, step: PlannedStep, to: str, setting: str) -> Reminder:
    """A dish that is only usually made in one, and would not be done by the meal if it went on when people wake: its
    cook is asked the evening before, and told when it would have to go on."""
    minutes = round((step.end - step.start).total_seconds() / 60)
    begins = potluck.starts_at - timedelta(minutes=minutes)
    due = wall(potluck.zone, potluck.local(begins).date() - timedelta(days=1), EVENING)
    facts = facts_of(potluck, dish=dish_of(potluck, step.promise), setting=setting, hours=round(minutes / 60, 1),
                     at=begins)  # fmt: skip
    return Reminder("slow-cooker", to, due, due + timedelta(hours=3), Say("reminder-slow-cooker-before", facts),
                    f"slow-cooker:{step.promise}:{step.step}")  # fmt: skip


def _owner(potluck: Potluck, promise: Promise | None) -> str:
    """Whose slow cooker it is; the host where no message reaches them."""
    guest = potluck.guest(promise.guest) if promise is not None else None
    return "host" if guest is None or without_account(guest) else guest.id


def grills(potluck: Potluck, steps: Iterable[PlannedStep]) -> Iterator[Reminder]:
    """Light the grill before each spell of it, and what goes on it when; one for all that go on together."""
    every = sorted((s for s in steps if s.kind == "grill" and s.at == "venue"), key=lambda s: (s.start, s.promise))
    for start in sorted({s.start for s in every}):
        on = [s for s in every if s.start == start]
        lit = any(s.start < start and s.end >= start - IDLE for s in every)
        facts = facts_of(potluck, dishes=[dish_of(potluck, s.promise) for s in on], at=start,
                         until=max(s.end for s in on))  # fmt: skip
        name, ends = f"grill:{on[0].promise}:{on[0].step}", start + timedelta(minutes=15)
        if lit:
            yield Reminder("swap", "host", start, ends, Say("reminder-grill-on", facts), f"swap:{name}")
        else:
            due = start - timedelta(minutes=LIGHT_MIN)
            yield Reminder("preheat", "host", due, ends, Say("reminder-grill", facts), f"preheat:{name}")


def ovens(potluck: Potluck, steps: Iterable[PlannedStep]) -> Iterator[Reminder]:
    """Preheat before each spell of heat; and whenever pans go in or come out, but for those that are served at once.

    Each is named by the step that goes in first, or comes out: a dish put before others is announced, whatever has
    been sent of them.
    """
    for visit in visits(steps):
        first = (visit.into or visit.out)[0]
        number = int(visit.oven.split(":")[1]) + 1
        temp = first.temp_f or 0
        off = off_by(potluck.kitchen, visit.oven)
        dishes, out = ([dish_of(potluck, s.promise) for s in of] for of in (visit.into, visit.out))
        name = f"{visit.oven}:{first.promise}:{first.step}"
        facts = facts_of(potluck, oven=number, temp=temp - off, dishes=dishes, out=out, at=visit.in_at or visit.at,
                       change="yes" if any(s.temp_f != temp for s in visit.out) else "no")  # fmt: skip
        if visit.cold:
            due = visit.at - timedelta(minutes=PREHEAT_MIN)
            text = "reminder-preheat-dial" if off else "reminder-preheat"
            yield Reminder("preheat", "host", due, visit.at + timedelta(minutes=15),
                           Say(text, facts), f"preheat:{name}")  # fmt: skip
            continue
        if not visit.into and visit.at > potluck.starts_at - SERVED_AT_ONCE:
            continue
        text = "reminder-swap" if visit.into and visit.out else "reminder-put-in" if visit.into else "reminder-take-out"
        yield Reminder("swap", "host", visit.at, max(visit.in_at or visit.at, visit.at) + timedelta(minutes=20),
                       Say(text, facts), f"{'swap' if visit.into else 'out'}:{name}")  # fmt: skip


def heated_there(potluck: Potluck, guest: Guest, steps: Sequence[PlannedStep]) -> dict[str, object]:
    """The first heat at the venue of what the guest brings: where, when and how; {} for none."""
    mine = {p.id for p in potluck.promises_of(guest.id)}
    first = next((s for s in steps if s.promise in mine and s.at == "venue" and s.kind in HEATING), None)
    if first is None:
        return {}
    stay = [s for s in steps if s.promise == first.promise and s.at == "venue" and s.kind == first.kind]
    where = "slow-cooker" if first.kind.startswith("slow-cooker") else first.kind
    return facts_of(potluck, hot=dish_of(potluck, first.promise), where=where,
                  temp=dial_f(potluck.kitchen, first.appliance, first.temp_f) or 0,
                  covered="yes" if first.covered else "no",
                  **{"from": first.start, "until": max(s.end for s in stay)})  # fmt: skip
