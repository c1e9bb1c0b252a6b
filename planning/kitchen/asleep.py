"""What a timeline would have people do after they have gone to bed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planning.kitchen.result import NO_APPLIANCE, Conflict, PlannedStep
from planning.kitchen.steps import say_conflict
from planning.kitchen.waking import bed_time
from planning.potluck import Potluck
from planning.safety.wall_clock import plain_facts


def asleep_conflicts(potluck: Potluck, steps: Sequence[PlannedStep]) -> Iterator[Conflict]:
    """At most one: the dishes that begin in the kitchen, or need a hand there, once its people are in bed."""
    bed = bed_time(potluck)
    late = sorted(
        (s for s in steps if s.start > bed and s.at == "venue" and (s.kind == "prep" or s.kind not in NO_APPLIANCE)),
        key=lambda s: (s.start, s.promise),
    )
    if not late:
        return
    names = tuple(dict.fromkeys(s.promise for s in late))
    dishes = [p.dish for name in names if (p := potluck.promise(name)) is not None]
    facts = plain_facts(potluck, {"at": late[0].start, "bed": bed})
    yield say_conflict(names, "asleep", "fewer", facts, dish=dishes[0], dishes=dishes,
                       several="yes" if len(dishes) > 1 else "no")  # fmt: skip
