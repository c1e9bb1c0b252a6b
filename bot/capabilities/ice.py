"""In words: there is no ice any more."""

from __future__ import annotations

from datetime import timedelta

from bot.capabilities.buying import source_words
from bot.context import Turn
from bot.registry import Registry
from bot.understood.asking import asked_in
from planning.kitchen.usual import steps_of
from planning.potluck import Answer, Promise
from planning.safety.clocks import clock
from planning.safety.words import perishable

BEFORE, ON_THE_WAY = timedelta(hours=6), timedelta(minutes=30)
MOST = 8


async def read_ice(turn: Turn) -> None:
    potluck = turn.potluck if turn.has_potluck else None
    if potluck is None or not potluck.starts_at - BEFORE <= turn.now <= potluck.ends:
        return
    if asked_in(turn, "no-ice") is None:
        return
    turn.handled = True
    ticking = clock(potluck, Promise("", "", "", "main"))
    cold = [p.dish for p in potluck.promises if perishable(p) and p.serve != "hot" and not steps_of(potluck, p)[0]]
    coming = [
        g.name for g in potluck.guests
        if g.answer is Answer.YES and g.arrived_at is None and g.id not in (turn.me, potluck.host)
        and turn.now < potluck.starts_at + ON_THE_WAY
    ]  # fmt: skip
    metric = potluck.units == "metric"
    turn.say("ice-gone", limit=ticking.limit_min, dishes=cold[:MOST], coming=coming[:MOST], metric=metric,
             source=source_words(turn, ticking.rule))  # fmt: skip


def register(app: Registry) -> None:
    app.reader(read_ice, order=17)
