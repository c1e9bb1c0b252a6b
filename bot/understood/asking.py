"""Sentences of `data/words_asked.csv`, for the capabilities that answer them."""

from __future__ import annotations

from bot.context import Turn
from bot.understood.context import place_of
from planning.potluck import Stage
from planning.theday.asked import Asked, languages, read_asked


def asked_in(turn: Turn, *kinds: str) -> Asked | None:
    """What the words say of these kinds; None where nobody meant us or nothing is planned."""
    event = turn.event
    if not event.is_words or event.person.anonymous:
        return None
    if not turn.has_potluck or turn.potluck.stage is not Stage.PLANNED or place_of(turn) == "person":
        return None
    for language in dict.fromkeys((turn.voice.language, *languages())):
        if (found := read_asked(turn.words, language, kinds)) is not None:
            return found
    return None


def addressed(turn: Turn) -> bool:
    return place_of(turn) not in (None, "person")


def read_further(turn: Turn, found: Asked) -> None:
    """It is answered; the rest of the message goes to the readers after this one."""
    turn.handled = not found.rest
    turn.words = found.rest or turn.words
