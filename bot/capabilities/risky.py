"""May somebody who is pregnant, small, old or frail eat it? By the published lists, for everybody to read.

And who swells up from a food is read as allergic to it.
"""

from __future__ import annotations

import re

from bot.capabilities.buying import source_words
from bot.capabilities.urgent import readable
from bot.capabilities.words import take
from bot.context import Turn
from bot.registry import Registry
from bot.understood import context
from planning.potluck import Stage
from planning.replies import read
from planning.safety.risky import risky, swells_from

_OF_ONESELF = re.compile(r"\b(?:i'?m|i am|estoy|my \w+ is|mi \w+ está) (?:\w+ )?(?:pregnan|embaraz)", re.IGNORECASE)


async def read_risky(turn: Turn) -> None:
    """Nobody is named, and nobody's pregnancy: it holds for whoever it holds for."""
    if not readable(turn) or turn.potluck.stage is not Stage.PLANNED:
        return
    found = risky(turn.words)
    if not found:
        return
    # Who says of themselves that they are pregnant is read on.
    turn.handled = _OF_ONESELF.search(turn.words) is None
    kinds = [turn.voice.plain("risky-food", tag=tag) for tag, _ in found]
    sources = dict.fromkeys(source_words(turn, rule) for _, rule in found)
    turn.say("risky-told", what=kinds, source="; ".join(sources))


async def read_symptom(turn: Turn) -> None:
    """A food somebody swells up from is an allergy, whatever they call it."""
    if not readable(turn) or turn.potluck.stage is not Stage.PLANNED:
        return
    said = swells_from(turn.words)
    if said is None:
        return
    reading = read(said, context(turn, replying_to="board"))
    if reading.intents:
        await take(turn, reading, addressed=True)
        turn.handled = True


def register(app: Registry) -> None:
    app.reader(read_risky, order=41)
    app.reader(read_symptom, order=41)
