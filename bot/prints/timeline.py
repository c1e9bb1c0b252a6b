"""The picture of the kitchen: appliances as rows, time to the right."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from datetime import datetime, timedelta
from itertools import groupby
from typing import Any

from bot.prints.kitchen_day import Event, KitchenDay, appliance_name, kitchen_day
from bot.prints.say import Writer
from planning.potluck import Potluck

Plan = Mapping[str, Any]

SHAPES = ((1, 390), (2, 720), (3, 1050))
"""Columns of the list and width in points: a phone's width, wider when the list grows too long for it."""
MARGINS_PT = 28.0
BADGE_PT = 20.0
MANY_LIMITS = 2
ROWS = ("oven", "burner", "grill", "slow-cooker", "microwave", "own")


def timeline_data(
    potluck: Potluck, plan: Plan, write: Writer, now: datetime | None = None, *, at_least_columns: int = 1
) -> dict[str, Any]:
    day = kitchen_day(potluck, plan, write)
    start, end = _window(day, potluck, plan, write)
    span = (end - start).total_seconds()

    def at(moment: datetime) -> float:
        return min(1.0, max(0.0, (moment - start).total_seconds() / span))

    serve = write.local(potluck.starts_at)
    marks = _deadlines(plan, write)
    listed = [e for e in day.events if e.kind != "out-on"]
    notes = _limits(marks, write)
    lines = len(listed) + len(notes)
    columns, width = SHAPES[max(at_least_columns, 1 if lines <= 34 else 2 if lines <= 80 else 3) - 1]
    badge = BADGE_PT / (width - MARGINS_PT)
    arrivals = [(write.local(p.arrives_at), p.id) for p in potluck.promises if p.arrives_at]
    return {
        "title": write.title,
        "subtitle": write("timeline-title", when=write.when),
        **trouble_of(plan, write),
        "dials_title": write("oven-changes"),
        "dials": [
            {"time": write.moment(e.at), "text": e.text, "inside": _inside(e, write)}
            for e in day.events
            if e.kind in ("dial", "off")
        ],
        "ticks": [{"x": at(t), "label": write.time(t)} for t in _ticks(start, end, width)],
        "heating": write("key-heating"),
        "rows": [_row(a, day, at, start, badge, write) for a in _appliances(day)],
        "arrivals_title": write("arrivals") if arrivals else "",
        "arrivals": _points(
            [(at(t), _numbers(together)) for t, together in _by_time(arrivals, day) if start <= t <= end], badge
        ),
        "deadlines_title": write("deadlines") if marks else "",
        "deadlines": _points(_limit_marks(marks, start, end, at, write), badge),
        "serve": {"x": at(serve), "label": write("serve")},
        "now": {"x": at(write.local(now)), "label": write("now", time=write.time(now))}
        if now and start <= write.local(now) <= end
        else None,
        "events_title": write("what-when"),
        "events": _cut([_event(e, day, write, now) for e in listed], columns),
        "width": width,
        "notes": notes,
        "empty": "" if day.steps else write("kitchen-empty"),
    }


def _inside(event: Event, write: Writer) -> str:
    """What stands in the oven at a setting: when each dish goes in and when it comes out."""
    dishes = [
        write(
            "oven-dish",
            dish=write.dish(s.promise),
            start=write.moment(s.start, event.at),
            end=write.moment(s.end, event.at),
        )
        for s in event.inside
    ]
    return write("oven-inside", dishes=write.listed(dishes)) if dishes else ""


def _event(event: Event, day: KitchenDay, write: Writer, now: datetime | None) -> dict[str, Any]:
    return {
        "time": write.moment(event.at),
        "number": str(day.numbers.get(event.promise or "", "")),
        "text": event.text,
        "kind": event.kind,
        "past": bool(now and event.at < write.local(now)),
    }


def _cut(lines: Sequence[dict[str, Any]], columns: int) -> list[list[dict[str, Any]]]:
    """One list in reading order, down the first column, then the next."""
    tall = -(-len(lines) // columns)
    return [list(lines[n * tall : (n + 1) * tall]) for n in range(columns)]


def trouble_of(plan: Plan, write: Writer) -> dict[str, Any]:
    """What does not work in the kitchen yet, with the way out."""
    kitchen = plan.get("kitchen") or {}
    conflicts = [
        {"why": write.sentence(c.get("why")), "fix": write.sentence((c.get("fix") or {}).get("text"))}
        for c in kitchen.get("conflicts") or ()
    ]
    told = {p for c in kitchen.get("conflicts") or () for p in c.get("promises") or ()}
    late = [
        write("late", dish=write.dish(d["promise"]), minutes=round(d["late_min"]))
        for d in kitchen.get("dishes") or ()
        if (d.get("late_min") or 0) > 0 and d["promise"] not in told
    ]
    bad = kitchen.get("status") == "impossible"
    return {
        "trouble": write("kitchen-impossible") if bad else (write("kitchen-conflicts") if conflicts or late else ""),
        "conflicts": [*conflicts, *({"why": text, "fix": ""} for text in late)],
        "fix_word": write("fix"),
    }


def _window(day: KitchenDay, potluck: Potluck, plan: Plan, write: Writer) -> tuple[datetime, datetime]:
    """From the first work that isn't a long simmer, at most eight hours ahead, to a while after serving."""
    serve = write.local(potluck.starts_at)
    short = [s.start for s in day.steps if s.end - s.start <= timedelta(hours=2)]
    starts = [*short, *(s.dial for s in day.settings), serve - timedelta(hours=1, minutes=30)]
    starts += [write.local(p.arrives_at) for p in potluck.promises if p.arrives_at]
    start = max(min(starts), serve - timedelta(hours=8))
    end = max([serve, *(s.end for s in day.steps if s.end <= serve + timedelta(hours=3))])
    # A limit long after serving stands in the list only: the chart keeps its minutes for the cooking.
    deadlines = [t for t, _ in _deadlines(plan, write) if serve <= t <= serve + timedelta(minutes=45)]
    end = max([end, *deadlines]) + timedelta(minutes=15)
    floor = start.replace(minute=0 if start.minute < 30 else 30, second=0, microsecond=0)
    return floor, max(end, floor + timedelta(hours=2))


def _ticks(start: datetime, end: datetime, width: int) -> list[datetime]:
    """Full hours, or every second, third ... one, so that their labels keep clear of each other."""
    hours = max(1, math.ceil((end - start) / timedelta(hours=1) / (width // 70)))
    at = start.replace(minute=0)
    at = at if at >= start else at + timedelta(hours=1)
    out = []
    while at <= end:
        out.append(at)
        at += timedelta(hours=hours)
    return out


def _appliances(day: KitchenDay) -> list[str]:
    def place(appliance: str) -> tuple[int, str, int]:
        kind, _, number = appliance.partition(":")
        return (ROWS.index(kind) if kind in ROWS else len(ROWS), kind, int(number) if number.isdecimal() else 0)

    return sorted({s.appliance for s in day.steps if s.appliance}, key=place)


def _row(appliance: str, day: KitchenDay, at: Any, start: datetime, badge: float, write: Writer) -> dict[str, Any]:
    steps = [s for s in day.steps if s.appliance == appliance]
    shown: list[dict[str, Any]] = []
    free: list[float] = []
    for step in steps:
        left, right = at(step.start), at(step.end)
        right = max(right, min(1.0, left + badge))
        left = min(left, right - badge)
        lane = next((n for n, until in enumerate(free) if until <= left + 1e-9), len(free))
        free[lane : lane + 1] = [right]
        shown.append(
            {
                "x": left,
                "w": right - left,
                "lane": lane,
                "number": str(day.numbers.get(step.promise, "")),
                "dish": write.dish(step.promise),
                "oven": step.appliance.startswith("oven:"),
                "times": write("from-to", start=write.time(step.start), end=write.time(step.end)),
                "since": write("since", time=write.moment(step.start, start)) if step.start < start else "",
            }
        )
    return {
        "name": appliance_name(appliance, write),
        "lanes": len(free),
        "steps": shown,
        "settings": [
            {
                "x": at(s.start),
                "w": max(0.0, at(s.end) - at(s.start)),
                "dial": at(s.dial),
                "temp": write.temp(s.temp_f, setting=True),
            }
            for s in day.settings
            if s.appliance == appliance
        ],
    }


def _by_time(arrivals: Sequence[tuple[datetime, str]], day: KitchenDay) -> list[tuple[datetime, list[int]]]:
    """The numbers of the dishes that come at each time."""
    times: dict[datetime, list[int]] = {}
    for at, promise in sorted(arrivals):
        times.setdefault(at, []).append(day.numbers[promise])
    return list(times.items())


def _numbers(numbers: Sequence[int]) -> str:
    """ "2-5, 9": several dishes that come at one time stand in one mark, runs of numbers told by their ends."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{r[0]}\u2013{r[-1]}" if len(r) > 2 else ", ".join(map(str, r)) for r in runs)


def _points(points: Sequence[tuple[float, str]], badge: float) -> dict[str, Any]:
    """Marks on a row, in as many lanes as they need not to cover each other; `x` is a mark's middle."""
    free: list[float] = []
    out = []
    for x, label in points:
        wide = badge * max(1.0, 0.4 + 0.35 * len(label))
        x = min(max(x, wide / 2), max(1 - wide / 2, wide / 2))
        lane = next((n for n, until in enumerate(free) if until <= x - wide / 2 + 1e-9), len(free))
        free[lane : lane + 1] = [x + wide / 2]
        out.append({"x": x, "lane": lane, "label": label})
    return {"lanes": len(free), "points": out}


def _deadlines(plan: Plan, write: Writer) -> list[tuple[datetime, str]]:
    notes = [n for n in plan.get("safety") or () if n.get("deadline")]
    return sorted((write.local(n["deadline"]), write.sentence(n.get("say"))) for n in notes)


def _limit_marks(
    marks: Sequence[tuple[datetime, str]],
    start: datetime,
    end: datetime,
    at: Callable[[datetime], float],
    write: Writer,
) -> list[tuple[float, str]]:
    """A mark at every limit; of those after the drawn hours the first, by its time at the edge."""
    every = sorted({t for t, _ in marks})
    later = [(1.0, f"{write.time(t)} \u2192") for t in every if t > end][:1]
    return [(at(t), "!") for t in every if start <= t <= end] + later


def _limits(marks: Sequence[tuple[datetime, str]], write: Writer) -> list[dict[str, str]]:
    """The limits by time; of many at one time the first few, as all stand on the run sheet."""
    out: list[dict[str, str]] = []
    for at, group in groupby(marks, key=lambda m: m[0]):
        texts = [text for _, text in group]
        shown = texts if len(texts) <= MANY_LIMITS + 1 else texts[:MANY_LIMITS]
        more = [write("more-limits", count=len(texts) - len(shown))] if len(shown) < len(texts) else []
        out += [{"time": write.moment(at) if n == 0 else "", "text": t} for n, t in enumerate([*shown, *more])]
    return out
