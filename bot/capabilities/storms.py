"""In words: a storm is forecast, or there is thunder."""

from __future__ import annotations

from datetime import timedelta

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.context import Turn
from bot.registry import Registry
from bot.understood.asking import addressed, asked_in
from planning.changes import may_manage

EARLY = timedelta(days=5)
"""Earlier no forecast is about this meal (common practice, no source)."""


async def read_storm(turn: Turn) -> None:
    potluck = turn.potluck if turn.has_potluck else None
    if potluck is None or not potluck.starts_at - EARLY <= turn.now <= potluck.ends:
        return
    found = asked_in(turn, "storm")
    if found is None or not (addressed(turn) or turn.guest() is not None):
        return
    outdoor = potluck.setting == "outdoor"
    manages = may_manage(potluck, turn.actor)
    if not outdoor and not addressed(turn) and not found.question:
        return
    turn.handled = True
    buttons = [[Button(turn.voice.plain("button-rain"), "trouble", ("rain",))]] if outdoor and manages else []
    host = potluck.guest(potluck.host)
    turn.say("storm-what", outdoor=outdoor, manages=manages, host=host.name if host is not None else "",
             source=source_words(turn, "STORM-01"), buttons=buttons)  # fmt: skip


def register(app: Registry) -> None:
    app.reader(read_storm, order=27)
