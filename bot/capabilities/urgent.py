"""What must not wait: an emergency, food that stood out, food that is raw or frozen inside."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.capabilities.theday import reasons, told_clock
from bot.context import Turn
from bot.naming import dish_named
from bot.recalling import Memory
from bot.registry import Registry
from bot.texts import Html
from bot.understood import place_of
from planning.changes import put_out
from planning.kitchen.units import say_in_units
from planning.potluck import Promise, Stage
from planning.safety.allergens import SEVERE, avoided
from planning.safety.clocks import clock
from planning.safety.heat import cook_notes
from planning.safety.urgent import (
    Stood,
    asks_if_still_good,
    country,
    emergency,
    languages,
    out_since,
    out_so_far,
    stood,
    undone,
)
from planning.safety.words import perishable

MOST_REMEMBERED = 20
EARLY, LATE = timedelta(hours=24), timedelta(days=4)
"""Talk of food on the table is meant from a day before the start until leftovers are past their days (STORE-01)."""


@dataclass(frozen=True)
class Answered:
    """Messages of one person that were answered as an emergency; a group that moved counts its messages anew."""

    chat_id: int
    messages: tuple[int, ...]


ANSWERED = Memory("urgent", Answered, timedelta(days=2))
"""So long the platform lets people edit what they wrote."""


async def read_emergency(turn: Turn) -> None:
    """Whoever writes it, wherever: the number to call comes first, and nothing else is read."""
    event = turn.event
    if not turn.words or event.forwarded or event.kind not in ("message", "edited"):
        return
    names = [g.name for g in turn.potluck.guests] if turn.has_potluck else []
    told = turn.private or turn.about is not None
    if not any(emergency(turn.words, language, told=told, names=names) for language in languages()):
        return
    await answer_emergency(turn)


async def answer_emergency(turn: Turn) -> None:
    """The number and the injector, once for a message and its edits."""
    event = turn.event
    turn.handled = True
    known, message = await turn.recall(ANSWERED), event.message_id or 0
    before = known.messages if known is not None and known.chat_id == event.chat_id else ()
    if event.kind == "edited" and message in before:
        return  # it was one before, and the number stands below it
    turn.remember(ANSWERED, Answered(event.chat_id, (*before, message)[-MOST_REMEMBERED:]))
    where = country(turn.zone.key)
    severe = turn.has_potluck and any(one.degree >= SEVERE for one in avoided(turn.potluck))
    # Who is known to be severely allergic has the injector prescribed: it comes first, the call with it (EMER-15).
    keys: tuple[str, ...] = ("urgent-injector", "urgent-call") if severe else ("urgent-call", "urgent-injector")
    keys = (*keys, "safety-emergency", "safety-poison-line")
    buttons = [[Button(turn.voice.plain("button-why"), "whynum")]] if turn.has_potluck else []
    source = source_words(turn, "EMER-15")
    turn.post(Html("\n".join(turn.voice(key, country=where, source=source) for key in keys)), buttons=buttons)


async def why_number(turn: Turn) -> None:
    reasons(turn, "EMER-02")
    turn.toast("answer-below")


async def read_food(turn: Turn) -> None:
    """Is it still good, how long has it been out, it is raw inside: answered from the clock and the tables."""
    if not food_may_be_meant(turn):
        return
    potluck = turn.potluck
    addressed = place_of(turn) not in (None, "person")
    found = dish_named(turn, turn.words, potluck.promises)
    if found is None and not addressed:
        return
    for language in dict.fromkeys((turn.voice.language, *languages())):
        said = stood(turn.words, language, turn.now, turn.zone)
        if asks_if_still_good(turn.words, language):
            turn.handled = True
            still(turn, found, said)
            return
        if said is not None and found is not None and "?" not in turn.words and said != Stood():
            if turn.guest() is None:
                return
            turn.handled = True
            _has_been_out(turn, found, said)
            return
        kind = undone(turn.words, language)
        if kind is not None:
            turn.handled = True
            _undone(turn, found, kind)
            return


def food_may_be_meant(turn: Turn) -> bool:
    """Whether words are read at all here, and at a time when they may be about food on the table."""
    if not readable(turn) or turn.potluck.stage is Stage.CANCELLED:
        return False
    return turn.potluck.starts_at - EARLY <= turn.now <= turn.potluck.ends + LATE


def readable(turn: Turn) -> bool:
    event = turn.event
    return (
        turn.has_potluck
        and event.kind == "message"
        and event.media is None
        and not event.forwarded
        and not event.person.anonymous
    )


def still(turn: Turn, found: Promise | None, said: Stood | None) -> None:
    """Never that it is good: how long it was out as far as known, the limit, and what is listed to do."""
    now, potluck = turn.now, turn.potluck
    ticking = clock(potluck, found or Promise("", "", "", "main"))
    facts: dict[str, Any] = {"limit": ticking.limit_min, "source": source_words(turn, ticking.rule)}
    told = None
    if said is not None:
        told = said.minutes if said.since is None else (now - said.since).total_seconds() / 60
    if found is None:
        over = told is not None and told >= ticking.limit_min
        rows = [[Button(turn.voice.plain("button-table"), "table")]]
        if over:
            turn.say("urgent-still-over-unnamed", buttons=rows, minutes=round(told or 0), **facts)
        else:
            turn.say("urgent-still-which", buttons=rows, **facts)
        return
    if not perishable(found):
        turn.say("urgent-still-keeps", dish=found.dish)
        return
    known = out_so_far(potluck, found, now)
    spent = max(known or 0.0, (told or 0.0) + (found.out_min if known is not None and said is not None else 0.0))
    facts |= {"dish": found.dish, "minutes": round(spent)}
    why = Button(turn.voice.plain("button-why"), "why", (found.id,))
    start = Button(turn.voice.plain("button-out", dish=found.dish), "out", (found.id,))
    if spent >= ticking.limit_min:
        turn.say("urgent-still-over", buttons=[[why]], **facts)
    elif ticking.deadline is not None:
        end = now + timedelta(minutes=ticking.limit_min - spent)
        turn.say("urgent-still-running", buttons=[[why]], until=turn.voice.time(end), **facts)
    elif spent > 0:
        turn.say("urgent-still-rested", buttons=[[start], [why]], **facts)
    else:
        turn.say("urgent-still-unknown", buttons=[[start], [why]], **facts)


def _has_been_out(turn: Turn, found: Promise, said: Stood) -> None:
    """It has been out since an earlier moment: its clock runs from there."""
    since = said.since or turn.now - timedelta(minutes=said.minutes or 0)
    if found.out_since is None:
        turn.change(put_out(turn.potluck, turn.actor, found.id, since), "did-out")
    else:
        turn.change(out_since(turn.potluck, found.id, since), "did-out")
    told_clock(turn, found.id)


def _undone(turn: Turn, found: Promise | None, kind: str) -> None:
    if kind == "frozen":
        turn.say("urgent-frozen", source=source_words(turn, "THAW-12"))
        return
    # Where no dish of the list is meant, the highest figure is the careful one.
    note = next(iter(cook_notes(found)), None) if found is not None else None
    if note is None:
        metric = "yes" if turn.potluck.units == "metric" else "no"
        turn.say("urgent-raw-unknown", metric=metric, source=source_words(turn, "COOK-01"))
        return
    turn.say(
        "urgent-raw", rule=turn.voice.say(say_in_units(turn.potluck, note.say)), source=source_words(turn, note.source)
    )


def register(app: Registry) -> None:
    app.button("whynum", why_number)
    app.reader(read_emergency, order=15)
    app.reader(read_food, order=18)
