"""A host tells in words what there is to cook with; what cannot be read is named, the rest is kept."""

from __future__ import annotations

from bot.capabilities.kitchen import kitchen_note, with_conflicts
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from bot.understood import place_of
from planning.changes import may_manage
from planning.kitchen_words import kitchen_told
from planning.potluck import Stage


async def read_kitchen_told(turn: Turn) -> None:
    event = turn.event
    if not turn.has_potluck or event.kind != "message" or event.media is not None or event.forwarded:
        return
    if turn.potluck.stage is not Stage.PLANNED or event.person.anonymous or place_of(turn) == "person":
        return
    if not may_manage(turn.potluck, turn.actor):
        return
    told = kitchen_told(turn.words, turn.potluck.kitchen)
    if told is None:
        return
    turn.handled = True
    noted = kitchen_note(turn, told.kitchen)
    if told.unread:
        unheard = turn.voice("kitchen-unheard", words=list(told.unread), n=len(told.unread))
        noted = Html(f"{noted}\n{unheard}")
    await with_conflicts(turn, noted, None)


def register(app: Registry) -> None:
    app.reader(read_kitchen_told, order=42)
