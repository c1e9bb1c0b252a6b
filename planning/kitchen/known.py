"""The last plan: what is under way stays as it is, and what people already know is kept where it can be."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime

from planning.kitchen.core import Task
from planning.kitchen.problem import KitchenProblem
from planning.kitchen.result import Timeline
from planning.potluck import Potluck


@dataclass(frozen=True)
class Known:
    """A step of the last plan. `begun`: it is under way or over."""

    promise: str
    kind: str
    start: datetime
    appliance: str | None
    circuit: int | None
    temp_f: float | None
    begun: bool


def known_steps(potluck: Potluck, now: datetime) -> tuple[Known, ...]:
    """The steps of `previous`, by start. Times are ISO text, local where they carry no offset.

    Begun are those named in `previous["started"]` (promise ids, or steps as mappings with promise and
    kind) whose start has come; where nothing is said, every step whose start has come.
    """
    previous = potluck.previous or {}
    steps = previous.get("steps")
    if not isinstance(steps, (list, tuple)):
        return ()
    started = previous.get("started")
    found: list[Known] = []
    for step in steps:
        if not isinstance(step, Mapping) or (start := _instant(potluck, step.get("start"))) is None:
            continue
        promise, kind = str(step.get("promise")), str(step.get("kind"))
        begun = start <= now and _said_to_have_started(started, promise, kind)
        place, circuit, temp = step.get("appliance"), step.get("circuit"), step.get("temp_f")
        found.append(
            Known(
                promise, kind, start, place if isinstance(place, str) else None,
                circuit if isinstance(circuit, int) else None,
                float(temp) if isinstance(temp, (int, float)) else None, begun,
            )
        )  # fmt: skip
    return tuple(sorted(found, key=lambda k: (k.start, k.promise, k.kind)))


def with_last(potluck: Potluck, last: Timeline | None, now: datetime) -> Potluck:
    """The potluck with its last timeline as `previous`, so that a new one keeps to it where it can.

    A potluck that carries steps of a previous plan already keeps those; asks of the previous plan stay.
    """
    before = potluck.previous or {}
    if last is None or not last.doable or before.get("steps"):
        return potluck
    told = [
        {"promise": s.promise, "kind": s.kind, "start": s.start.isoformat(), "appliance": s.appliance,
         "circuit": s.circuit, "temp_f": s.temp_f}
        for s in last.doable
    ]  # fmt: skip
    begun = [{"promise": s.promise, "kind": s.kind} for s in last.doable if s.start <= now]
    return replace(potluck, previous={**before, "steps": told, "started": begun})


def _instant(potluck: Potluck, value: object) -> datetime | None:
    try:
        at = value if isinstance(value, datetime) else datetime.fromisoformat(str(value))
    except ValueError:
        return None
    return (at if at.tzinfo is not None else at.replace(tzinfo=potluck.zone)).astimezone(UTC)


def _said_to_have_started(started: object, promise: str, kind: str) -> bool:
    if not isinstance(started, (list, tuple)):
        return True
    for one in started:
        if isinstance(one, Mapping):
            if one.get("promise") == promise and one.get("kind", kind) == kind:
                return True
        elif one == promise:
            return True
    return False


def with_known(made: KitchenProblem, known: tuple[Known, ...]) -> KitchenProblem:
    """The problem with begun steps fixed where and when they are, and the others' known starts preferred."""
    by_step: dict[tuple[str, str], list[Known]] = {}
    for one in known:
        by_step.setdefault((one.promise, one.kind), []).append(one)
    preferred: dict[str, int] = {}
    tasks: list[Task] = []
    for task in made.problem.tasks:
        link = made.links[task.id]
        kind = made.checked[link.promise].steps[link.steps[0]].kind
        left = by_step.get((link.promise, kind))
        if not left:
            tasks.append(task)
            continue
        one = left.pop(0)
        # A rest begins when the dish leaves the heat, at the latest with the end of that slot.
        slot = made.frame.slot_up(one.start) if kind == "rest" else made.frame.slot_down(one.start)
        if one.begun and slot >= 0:
            tasks.append(replace(task, windows=((slot, slot),), latest_end=None, only=_mode(made, task, one)))
        else:
            preferred[task.id] = slot
            tasks.append(task)
    return replace(made, problem=replace(made.problem, tasks=tuple(tasks), preferred=preferred))


def _mode(made: KitchenProblem, task: Task, one: Known) -> int | None:
    """The mode that is what is going on; None where the kitchen no longer has it."""
    for number, mode in enumerate(task.modes):
        place, circuit = made.places[task.id, number]
        same_oven = mode.oven is None or (place == one.appliance and (one.temp_f is None or mode.low == one.temp_f))
        if same_oven and circuit == one.circuit:
            return number
    return None
