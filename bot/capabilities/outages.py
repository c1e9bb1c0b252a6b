"""The power was away and is back: how long, what hung on it, and what must be done with that now."""

from __future__ import annotations

from datetime import timedelta

from bot.capabilities.buying import source_words
from bot.capabilities.onthetable import gone_buttons
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from bot.understood import place_of
from planning.changes import may_manage, restore_kitchen
from planning.potluck import Answer, Promise, Stage
from planning.safety.clocks import clock, more_minutes
from planning.theday.outage import Outage, read_outage, without_heat

BEFORE, AFTER = timedelta(hours=24), timedelta(hours=12)
FRIDGE_MIN = 240
"""A refrigerator that stays shut (POWER-01)."""


async def read_back(turn: Turn) -> None:
    """From anybody of the table, wherever it is said: it makes no clock milder."""
    event, guest = turn.event, turn.guest() if turn.has_potluck else None
    if guest is None or guest.answer is Answer.NO or not event.is_words or event.person.anonymous:
        return
    potluck = turn.potluck
    if potluck.stage is Stage.CANCELLED or place_of(turn) == "person":
        return
    if not potluck.starts_at - BEFORE <= turn.now <= potluck.ends + AFTER:
        return
    found = read_outage(turn.words, turn.now, turn.zone)
    if found is None:
        return
    turn.handled = True
    _answer(turn, found)


def _answer(turn: Turn, found: Outage) -> None:
    stood = without_heat(turn.potluck, found)
    lines: list[str] = [
        turn.voice("outage-was", since=turn.voice.time(found.since), until=turn.voice.time(found.until),
                   minutes=found.minutes, long=found.minutes > FRIDGE_MIN, source=source_words(turn, "POWER-13"))
    ]  # fmt: skip
    over = [dish for dish in stood if not _counted(turn, dish, found, lines)]
    lines.append(turn.voice("outage-rest", n=len(stood), source=source_words(turn, "TIME-05")))
    if turn.potluck.kitchen_before is not None and may_manage(turn.potluck, turn.actor):
        turn.change(restore_kitchen(turn.potluck, turn.actor), "did-kitchen")
        lines.append(turn.voice("outage-planned"))
    buttons = gone_buttons(turn, over)
    if turn.before is not None:
        buttons.append([turn.undo_button()])
    turn.post(Html("\n".join(lines)), buttons=buttons)


def _counted(turn: Turn, dish: Promise, found: Outage, lines: list[str]) -> bool:
    """Its minutes without heat stay counted; False when they are used up."""
    turn.change(more_minutes(turn.potluck, dish.id, found.minutes), "did-out")
    ticking = clock(turn.potluck, turn.known_promise(dish.id))
    left = ticking.left_min(turn.now)
    spent = round(ticking.limit_min - left)
    until = turn.voice.time(turn.now + timedelta(minutes=max(left, 0)))
    key = "outage-in-time" if left > 0 else "outage-over"
    lines.append(turn.voice(key, dish=dish.dish, minutes=spent, limit=ticking.limit_min, until=until))
    return left > 0


def register(app: Registry) -> None:
    app.reader(read_back, order=15)
