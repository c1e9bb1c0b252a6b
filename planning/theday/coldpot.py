"""Which dishes are in slow cookers, and since when each was meant to cook."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from planning.kitchen.usual import estimates, steps_of
from planning.potluck import HeatStep, Potluck, Promise

EARLIEST = timedelta(hours=14)
"""No slow cooker runs longer than this before a meal (SLOW-14 says 8 to 12 hours on low, and the careful reading adds
to it; common practice, no source)."""


def in_slow_cookers(potluck: Potluck) -> tuple[Promise, ...]:
    """By what their cooks said; where nobody said anything of a slow cooker, by what is usual for the dish."""
    told = tuple(p for p in potluck.promises if any(s.kind.startswith("slow-cooker") for s in p.heat or ()))
    if told:
        return told
    return tuple(p for p in potluck.promises if any(s.kind.startswith("slow-cooker") for s in _usually(potluck, p)))


def _usually(potluck: Potluck, promise: Promise) -> tuple[HeatStep, ...]:
    """What is usual for the dish, with a source or as common practice; nothing where its cook said how it is heated."""
    if promise.heat is not None:
        return ()
    sourced, _ = steps_of(potluck, promise)
    return sourced or next((e.steps for e in estimates(replace(potluck, promises=(promise,)))), ())


def meant_to_start(potluck: Potluck, promise: Promise, now: datetime) -> datetime | None:
    """When its slow cooker was to be switched on at the latest (UTC), or None where nobody told how long it cooks.

    The minutes of the slow cooker and of what follows it are counted back from the start of the potluck: what was
    filled in earlier has stood longer, never shorter.
    """
    steps = promise.heat or ()
    first = next((n for n, s in enumerate(steps) if s.kind.startswith("slow-cooker")), None)
    if first is None:
        steps = _usually(potluck, promise)
        first = next((n for n, s in enumerate(steps) if s.kind.startswith("slow-cooker")), None)
        if first is None:
            return None
    minutes = sum(max(0, s.minutes) for s in steps[first:])
    at = potluck.starts_at - min(timedelta(minutes=minutes), EARLIEST)
    return at if at <= now else None
