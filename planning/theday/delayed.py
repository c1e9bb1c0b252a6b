"""What a later start, said on the day, means for food that is out, hot or begun already."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from planning.kitchen.result import PlannedStep
from planning.kitchen.usual import HEATING
from planning.potluck import Potluck, Promise
from planning.safety.clocks import clock
from planning.safety.words import perishable


@dataclass(frozen=True)
class Delayed:
    """`ends_before`: dishes that are out, each with the end of its time (UTC), before the meal's new start;
    `keep_hot`: those on heat or off it already; `keep_cold`: perishable ones that are not out yet and come cold."""

    ends_before: tuple[tuple[Promise, datetime], ...]
    keep_hot: tuple[Promise, ...]
    keep_cold: tuple[Promise, ...]


def delayed(after: Potluck, steps: Iterable[PlannedStep], now: datetime) -> Delayed:
    """`steps` are those planned for the old start, so that what has begun by `now` is among them."""
    begun = {s.promise for s in steps if s.kind in HEATING and s.start <= now}
    out, hot, cold = [], [], []
    for promise in after.promises:
        if not perishable(promise):
            continue
        end = clock(after, promise).deadline
        if end is not None:
            if end <= after.starts_at:
                out.append((promise, end))
        elif promise.id in begun:
            hot.append(promise)
        elif promise.serve != "hot" and not promise.heat:
            cold.append(promise)
    return Delayed(tuple(sorted(out, key=lambda one: one[1])), tuple(hot), tuple(cold))
