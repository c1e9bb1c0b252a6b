"""A host tells in words what there is to cook with; what cannot be read is named, the rest is kept."""

from __future__ import annotations

from bot.buttons import Button
from bot.capabilities.kitchen import kitchen_note, with_conflicts
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from bot.understood import place_of
from planning.changes import Refusal, may_manage
from planning.kitchen_words import BROUGHT, kitchen_told, one_more, with_one_more
from planning.potluck import Stage


async def read_kitchen_told(turn: Turn) -> None:
    event = turn.event
    if not turn.has_potluck or not event.is_words:
        return
    if turn.potluck.stage is not Stage.PLANNED or event.person.anonymous or place_of(turn) == "person":
        return
    kind = one_more(turn.words)
    if not may_manage(turn.potluck, turn.actor):
        if kind in BROUGHT:
            _offered(turn, str(kind))
        return
    if kind is not None:
        turn.handled = True
        await with_conflicts(turn, kitchen_note(turn, with_one_more(turn.potluck.kitchen, kind)), None)
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
    if told.rest:
        # The other sentences are read by those who come after.
        turn.handled, turn.words = False, told.rest


def _offered(turn: Turn, kind: str) -> None:
    """A guest has one to spare: the host says whether the plan counts on it."""
    turn.handled = True
    host = turn.potluck.guest(turn.potluck.host)
    turn.say(
        "kitchen-offered",
        name=turn.event.person.name,
        thing=kind,
        host=host.name if host is not None else "",
        buttons=[[Button(turn.voice.plain("button-count-on-it"), "onemore", (kind,))]],
    )


async def count_on_it(turn: Turn) -> None:
    """Pressed by a host: it is in the plan, once."""
    kind = turn.args[0]
    if kind not in BROUGHT:
        raise Refusal("refused-button-old")
    noted = kitchen_note(turn, with_one_more(turn.potluck.kitchen, kind))
    turn.delete_pressed()
    await with_conflicts(turn, noted, None, reply=False)


def register(app: Registry) -> None:
    app.button("onemore", count_on_it)
    app.reader(read_kitchen_told, order=42)
