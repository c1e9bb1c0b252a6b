"""What happens in the kitchen and when, read from the plan: the picture and the run sheet tell the same story."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import Any

from bot.prints.say import Writer
from planning.kitchen.off import dial_f
from planning.kitchen.result import NO_APPLIANCE
from planning.potluck import Potluck

PREHEAT = timedelta(minutes=15)
"""Before the first use, and at most before a later one after a pause."""

NOT_SHOWN = ("serve", "transport")
"""Steps that are neither work in this kitchen nor a place in it."""


@dataclass(frozen=True)
class Step:
    promise: str
    kind: str
    appliance: str
    start: datetime
    end: datetime
    temp_f: float | None
    pans: int
    home: bool
    hands_min: int = 0
    covered: bool = False


@dataclass(frozen=True)
class Event:
    """One line a cook reads. `sort` orders what happens in the same minute: out before in, dial between.

    The kind "out-on" is that of a dish which comes out and at once goes on to its next step.
    """

    at: datetime
    kind: str
    text: str
    promise: str | None = None
    sort: int = 5
    inside: tuple[Step, ...] = ()
    """Of the turn of a dial: what goes into the oven at that setting, in the order it goes in."""


@dataclass(frozen=True)
class Setting:
    """An oven at one set-point from `start` (first dish in) to `end` (last dish out), dialled at `dial`."""

    appliance: str
    temp_f: float | None
    start: datetime
    end: datetime
    dial: datetime
    steps: tuple[Step, ...] = ()


@dataclass(frozen=True)
class KitchenDay:
    steps: tuple[Step, ...]
    settings: tuple[Setting, ...]
    events: tuple[Event, ...]
    home_events: tuple[Event, ...]
    numbers: Mapping[str, int] = field(default_factory=dict)
    """Each dish's number in the picture, in the order of its first work or arrival here."""


def kitchen_day(potluck: Potluck, plan: Mapping[str, Any], write: Writer) -> KitchenDay:
    every = sorted(_steps(plan, write, potluck), key=lambda s: (s.start, s.end, s.promise))
    here = [s for s in every if not s.home]
    settings = _settings(here)
    order: dict[str, datetime] = {}
    for promise in potluck.promises:
        if promise.arrives_at:
            order[promise.id] = write.local(promise.arrives_at)
    for step in here:
        order[step.promise] = min(order.get(step.promise, step.start), step.start)
    numbers = {p: n for n, p in enumerate(sorted(order, key=lambda p: (order[p], p)), 1)}
    events = [*_arrivals(potluck, write), *_dials(settings, write), *_work(here, write)]
    events.append(Event(write.local(potluck.starts_at), "serve", write("event-serve"), None, 9))
    return KitchenDay(
        steps=tuple(here),
        settings=tuple(settings),
        events=tuple(sorted(events, key=lambda e: (e.at, e.sort, e.promise or ""))),
        home_events=tuple(sorted(_home(every, potluck, write), key=lambda e: (e.at, e.sort, e.promise or ""))),
        numbers=numbers,
    )


def _steps(plan: Mapping[str, Any], write: Writer, potluck: Potluck) -> Iterable[Step]:
    rows = (plan.get("kitchen") or {}).get("steps") or ()
    # What the kitchen has nothing for stands among the conflicts, not in the picture.
    lacking = {r["promise"] for r in rows if not r.get("appliance") and r["kind"] not in NO_APPLIANCE
               and r.get("at") != "home"}  # fmt: skip
    for row in rows:
        if row["kind"] in NOT_SHOWN or row["promise"] in lacking:
            continue
        appliance = row.get("appliance") or ""
        start, end = write.local(row["start"]), write.local(row["end"])
        yield Step(
            promise=str(row["promise"]),
            kind=row["kind"],
            appliance="" if appliance == "home" else appliance,
            start=start,
            end=max(start, end),
            temp_f=dial_f(potluck.kitchen, appliance, row.get("temp_f")),
            pans=row.get("pans") or 0,
            home=appliance == "home" or row.get("at") == "home",
            hands_min=row.get("hands_min") or 0,
            covered=bool(row.get("covered")),
        )


def _settings(steps: Sequence[Step]) -> list[Setting]:
    """Runs of one set-point, oven by oven, and the moment to turn the dial for each."""
    out: list[Setting] = []
    for oven in sorted({s.appliance for s in steps if s.appliance.startswith("oven:")}):
        run: Setting | None = None
        for step in (s for s in steps if s.appliance == oven):
            if run and run.temp_f == step.temp_f and step.start - run.end <= timedelta(hours=1):
                run = out[-1] = replace(run, end=max(run.end, step.end), steps=(*run.steps, step))
                continue
            lead = PREHEAT
            if run and run.temp_f is not None and step.temp_f is not None:
                lead = max(lead, timedelta(minutes=5 + abs(step.temp_f - run.temp_f) / 10))
            dial = step.start - lead
            if run and run.end <= step.start:
                dial = max(run.end, dial)
            run = Setting(oven, step.temp_f, step.start, step.end, dial, (step,))
            out.append(run)
    return out


def _dials(settings: Sequence[Setting], write: Writer) -> Iterable[Event]:
    for number, now in enumerate(settings):
        before = settings[number - 1] if number and settings[number - 1].appliance == now.appliance else None
        place = appliance_name(now.appliance, write)
        facts: dict[str, Any] = {
            "place": place,
            "temp": write.temp(now.temp_f, setting=True),
            "ready": write.moment(now.start),
        }
        if before and now.dial - before.end < timedelta(hours=1):
            text = write("event-oven-change", before=write.temp(before.temp_f, setting=True), **facts)
        else:
            text = write("event-oven-on", **facts)
        yield Event(now.dial, "dial", text, None, 3, now.steps)
        after = settings[number + 1] if number + 1 < len(settings) else None
        if not after or after.appliance != now.appliance or after.dial - now.end >= timedelta(hours=1):
            yield Event(now.end, "off", write("event-oven-off", place=place), None, 4)


def _arrivals(potluck: Potluck, write: Writer) -> Iterable[Event]:
    for promise in potluck.promises:
        if promise.arrives_at:
            yield Event(
                write.local(promise.arrives_at),
                "arrive",
                write("event-arrive", name=write.name(promise.guest), dish=write.called(promise)),
                promise.id,
                2,
            )


def _work(steps: Sequence[Step], write: Writer) -> Iterable[Event]:
    for step in steps:
        place = appliance_name(step.appliance, write) if step.appliance else ""
        temp = write.temp(step.temp_f, setting=True)
        facts: dict[str, Any] = {
            "kind": step.kind,
            "dish": write.dish(step.promise),
            "place": place,
            "temp": temp,
            "end": write.moment(step.end, step.start),
            "minutes": round((step.end - step.start).total_seconds() / 60),
        }
        if step.appliance:
            yield Event(step.start, "in", write("event-in" if temp else "event-in-plain", **facts), step.promise, 5)
            kind = "out-on" if any(s.promise == step.promise and s.start == step.end for s in steps) else "out"
            yield Event(step.end, kind, write("event-out", **facts), step.promise, 1)
        else:
            yield Event(step.start, "work", write("event-work", **facts), step.promise, 6)


def _home(steps: Sequence[Step], potluck: Potluck, write: Writer) -> Iterable[Event]:
    for step in steps:
        if step.home and (promise := potluck.promise(step.promise)):
            yield Event(
                step.start,
                "home",
                write(
                    "event-home",
                    name=write.cooks(promise),
                    dish=write.called(promise),
                    kind=step.kind,
                    end=write.moment(step.end, step.start),
                ),
                step.promise,
            )


def appliance_name(appliance: str, write: Writer) -> str:
    """ "oven:1" as people call it: with a number only where there are several of the kind."""
    kind, _, number = appliance.partition(":")
    kitchen = write.potluck.kitchen
    several = {
        "oven": len(kitchen.ovens),
        "burner": kitchen.burners,
        "slow-cooker": len(kitchen.slow_cookers),
        "microwave": len(kitchen.microwaves),
        "grill": kitchen.grills,
    }
    if kind == "own":
        return write("appliance-own", kind=number)
    name = write("appliance", kind=kind)
    if number.isdecimal() and (several.get(kind, 2) > 1 or number != "0"):
        return write("appliance-number", name=name, number=int(number) + 1)
    return name
