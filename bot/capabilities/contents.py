"""What is in a dish, in a cook's own words: "there is peanut oil in my soup"."""

from __future__ import annotations

from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from planning.changes import change_promise, may_manage
from planning.diets.contents import contents_in
from planning.potluck import Potluck, Promise, Stage

MOST = 40


async def read_contents(turn: Turn) -> None:
    """From the cook of the dish, or a host. Never a new promise, and never a whole list: the rest stays unknown."""
    event = turn.event
    if not turn.has_potluck or event.kind != "message" or event.media is not None or event.forwarded:
        return
    potluck = turn.potluck
    if potluck.stage is not Stage.PLANNED or event.person.anonymous:
        return
    said = contents_in(turn.words)
    if said is None:
        return
    own = tuple(p for p in potluck.promises if turn.me in (p.guest, *p.sharers))
    found = dish_named(turn, said[0], own)
    if found is None and may_manage(potluck, turn.actor):
        found = dish_named(turn, said[0], potluck.promises)
    if found is None:
        return
    turn.handled = True
    more = [w for w in said[1] if w not in (found.ingredients or ()) and w not in found.dish.casefold()]
    if more:
        turn.change(_with(turn, found, more), "did-contains")
    turn.say("contents-heard", dish=found.dish, what=list(said[1]), whole=found.ingredients is not None,
             buttons=[[turn.undo_button()]] if more else ())  # fmt: skip


def _with(turn: Turn, found: Promise, more: list[str]) -> Potluck:
    """Added to the list there is; where there is none the name says it, for a list would say that all is told."""
    if found.ingredients is not None:
        listed = (*found.ingredients, *more)[:MOST]
        return change_promise(turn.potluck, turn.actor, found.id, ingredients=listed)
    joint = " con " if turn.voice.language == "es" else " with "
    name = found.dish + (", " if joint in found.dish else joint) + ", ".join(more)
    return change_promise(turn.potluck, turn.actor, found.id, dish=name[:80])


def register(app: Registry) -> None:
    app.reader(read_contents, order=44)
