"""Somebody is hurt, or ill from what was eaten, or would grill under a roof: what to do first, and whom to call."""

from __future__ import annotations

from datetime import timedelta

from bot.capabilities.buying import source_words
from bot.capabilities.urgent import readable
from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from bot.texts import Html
from planning.safety.clocks import clock
from planning.safety.told import grills_inside, hurt, ill_from_food
from planning.safety.urgent import country, languages, out_so_far
from planning.safety.words import perishable
from planning.theday.hazards import denied, hazard

SOURCES = {"wound": "EMER-16", "scald": "EMER-17", "fire": "EMER-08", "poison": "EMER-01", "gas-smell": "practice"}
OPEN_WORDS = 16
"""In the open chat a longer message tells a story (common practice, no source)."""
ILL_FOR = timedelta(days=7)
"""So long after a meal illness is still talked of as its doing (common practice, no source)."""


async def read_hurt(turn: Turn) -> None:
    """Whoever writes it, wherever, before anything else is read."""
    event = turn.event
    if not turn.words or event.forwarded or event.kind not in ("message", "edited"):
        return
    if not (turn.private or turn.about is not None) and len(turn.words.split()) > OPEN_WORDS:
        return
    kind = next((k for one in languages() if (k := hurt(turn.words, one))), None)
    if kind is None or denied(turn.words, kind):
        return
    if kind in ("poison", "wound") and hazard(turn.words, kinds=("chemical", "glass")) is not None:
        return  # on the food, in nobody: `hazards` tells of it
    turn.handled = True
    where = country(turn.zone.key)
    turn.post(turn.voice(f"hurt-{kind}", country=where, source=source_words(turn, SOURCES[kind])))


async def read_ill_guests(turn: Turn) -> None:
    """Ill after eating: help first, then the food is put aside and told of."""
    if not readable(turn):
        return
    potluck = turn.potluck
    if not potluck.starts_at <= turn.now <= potluck.ends + ILL_FOR:
        return
    if not any(ill_from_food(turn.words, one) for one in languages()):
        return
    turn.handled = True
    where = country(turn.zone.key)
    dish = dish_named(turn, turn.words, potluck.promises)
    lines: list[str] = [turn.voice("ill-eaters", country=where, source=source_words(turn, "ILL-12"))]
    if dish is not None:
        spent = out_so_far(potluck, dish, turn.now)
        over = perishable(dish) and spent is not None and spent >= clock(potluck, dish).limit_min
        lines.append(turn.voice("ill-eaters-dish", dish=dish.dish, minutes=round(spent or 0), over=over))
    else:
        lines.append(turn.voice("ill-eaters-food"))
    lines.append(turn.voice("ill-eaters-call", country=where))
    turn.post(Html("\n".join(lines)))


async def read_grill(turn: Turn) -> None:
    if not readable(turn) or not any(grills_inside(turn.words, one) for one in languages()):
        return
    if turn.about is None and not turn.private and "?" not in turn.words:
        return
    # Who tells what there is to cook with, and where it stands, is read on.
    turn.handled = "?" in turn.words
    turn.say("grill-outside-only", source=source_words(turn, "CO-01"))


def register(app: Registry) -> None:
    app.reader(read_hurt, order=15)
    app.reader(read_ill_guests, order=15)
    app.reader(read_grill, order=18)
