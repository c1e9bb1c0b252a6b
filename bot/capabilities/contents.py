"""What is in a dish, in a cook's own words: "there is peanut oil in my soup", "no nuts but same kitchen"."""

from __future__ import annotations

import re

from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from bot.understood.contents import with_contents
from planning.changes import may_manage
from planning.diets.contents import Told, contents_told
from planning.potluck import Promise, Stage

_ARTICLE = re.compile(r"^(?:the|my|our|that|this|el|la|los|las|mi|mis|nuestr[oa]s?)\s+")


async def read_contents(turn: Turn) -> None:
    """From the cook of the dish, or a host. Never a new promise, and never a whole list: the rest stays unknown."""
    event = turn.event
    if not turn.has_potluck or event.kind != "message" or event.media is not None or event.forwarded:
        return
    potluck = turn.potluck
    if potluck.stage is not Stage.PLANNED or event.person.anonymous or turn.about == "question:diets":
        return
    sentences = contents_told(turn.words)
    if not sentences:
        return
    for said in sentences:
        found = _dish(turn, said)
        if found is None:
            continue
        turn.handled = True
        what = [*said.holds, *said.without, *said.besides]
        changed = with_contents(turn, found, said)
        turn.say("contents-heard", dish=found.dish, what=what, whole=found.ingredients is not None,
                 buttons=[[turn.undo_button()]] if changed else ())  # fmt: skip


def _dish(turn: Turn, said: Told) -> Promise | None:
    """The dish named; "it" is the one named in the message replied to, or the cook's only one."""
    potluck = turn.potluck
    own = tuple(p for p in potluck.promises if turn.me in (p.guest, *p.sharers) and p.category != "supplies")
    if said.dish:
        name = _ARTICLE.sub("", said.dish)
        found = dish_named(turn, name, own)
        if found is None and may_manage(potluck, turn.actor):
            found = dish_named(turn, name, potluck.promises)
        return found if found is not None and len(name.split()) <= len(found.dish.split()) + 2 else None
    replied = turn.event.reply_text.casefold() if turn.event.reply_to_bot and turn.about != "board" else ""
    named = [p for p in own if p.dish.casefold() in replied]
    if len(named) == 1:
        return named[0]
    return own[0] if len(own) == 1 and not said.bare and not turn.words.strip().endswith("?") else None


def register(app: Registry) -> None:
    app.reader(read_contents, order=44)
