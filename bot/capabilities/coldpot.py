"""A slow cooker that was never on: what was in it stood warm from its start, and cooking on does not mend that."""

from __future__ import annotations

import re
from datetime import datetime, timedelta
from typing import Any

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.capabilities.onthetable import gone_buttons
from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from planning.changes import may_manage, put_out
from planning.potluck import Promise, Stage
from planning.safety.clocks import clock
from planning.safety.told import said_since
from planning.safety.urgent import languages, out_since
from planning.theday.coldpot import in_slow_cookers, meant_to_start
from planning.theday.hazards import hears
from planning.theday.troubles import Trouble, read_trouble

NEAR = timedelta(hours=24)
_STANDS = re.compile(r"\b(?:stone cold|(?:sitting|been) in (?:there|it)|since|hours|desde|horas)\b", re.IGNORECASE)


async def read_cold(turn: Turn) -> None:
    """From the host, or from the cook of what is in it."""
    event = turn.event
    if not event.is_words or not turn.has_potluck:
        return
    potluck = turn.potluck
    if potluck.stage is Stage.CANCELLED or event.person.anonymous:
        return
    if not potluck.starts_at - NEAR <= turn.now <= potluck.ends + NEAR:
        return
    found = next((t for one in languages() if (t := read_trouble(turn.words, one))), None)
    if found is None or not found.kind.startswith("cooker-"):
        # "I never switched it on": of who has something in a slow cooker.
        own = [p for p in potluck.promises_of(turn.me) if p.category not in ("drink", "supplies")]
        inside = any(turn.me in (p.guest, *p.sharers) for p in in_slow_cookers(potluck))
        inside = inside or (bool(own) and _STANDS.search(turn.words) is not None)
        if found is not None or not inside or not hears(turn.words, "pot-cold"):
            return
        found = Trouble("cooker-cold", "")
    meant = _meant(turn)
    if not may_manage(potluck, turn.actor) and not any(turn.me in (p.guest, *p.sharers) for p in meant):
        return
    if turn.about is None and not turn.private and not meant:
        return
    turn.handled = True
    take(turn, found)


def take(turn: Turn, found: Trouble) -> None:
    meant = _meant(turn)
    if not meant:
        turn.say("cold-unnamed", source=source_words(turn, "TIME-05"), buttons=_which(turn))
        return
    if len(meant) > 1:
        turn.say("cold-which", source=source_words(turn, "TIME-05"), buttons=_which(turn, meant))
        return
    told = any(said_since(turn.words, one, turn.now, turn.zone) is not None for one in languages())
    unsure = found.kind == "cooker-sat" or (found.kind == "cooker-off" and not told)
    if unsure and meant[0].out_since is None:
        turn.say(
            "cold-was-it-on", dish=meant[0].dish, source=source_words(turn, "TIME-05"), buttons=_which(turn, meant)
        )
        return
    _stood(turn, meant[0], _since(turn, meant[0]))


async def pressed(turn: Turn) -> None:
    found = turn.known_promise(turn.args[0])
    since = datetime.fromisoformat(turn.args[1]) if len(turn.args) > 1 and turn.args[1] else None
    turn.toast("answer-below")
    _stood(turn, found, since or meant_to_start(turn.potluck, found, turn.now))


def _meant(turn: Turn) -> list[Promise]:
    """The dish these words name, else one's own of those in slow cookers, else all of those."""
    potluck = turn.potluck
    named = dish_named(turn, turn.words, potluck.promises)
    if named is not None:
        return [named]
    inside = in_slow_cookers(potluck)
    own = [p for p in inside if turn.me in (p.guest, *p.sharers)]
    return own or list(inside)


def _since(turn: Turn, dish: Promise) -> datetime | None:
    for one in languages():
        if (at := said_since(turn.words, one, turn.now, turn.zone)) is not None:
            return at
    return meant_to_start(turn.potluck, dish, turn.now)


def _which(turn: Turn, among: list[Promise] | None = None) -> list[list[Button]]:
    dishes = among or [p for p in turn.potluck.promises if p.category not in ("drink", "supplies", "dessert")]
    at = next((s for one in languages() if (s := said_since(turn.words, one, turn.now, turn.zone))), None)
    stamp = at.isoformat(timespec="minutes").replace("+00:00", "+00:00") if at is not None else ""
    return [[Button(turn.voice.plain("button-it-was-off", dish=p.dish), "coldpot", (p.id, stamp))] for p in dishes[:8]]


def _stood(turn: Turn, dish: Promise, since: datetime | None) -> None:
    """Its clock runs from the moment it was meant to cook; nobody knows when: the careful reading."""
    source = source_words(turn, "TIME-05")
    if since is None:
        turn.say("cold-unknown", dish=dish.dish, limit=clock(turn.potluck, dish).limit_min, source=source,
                 buttons=gone_buttons(turn, [dish]))  # fmt: skip
        return
    if dish.out_since is None:
        turn.change(put_out(turn.potluck, turn.actor, dish.id, since), "did-out")
    else:
        turn.change(out_since(turn.potluck, dish.id, since), "did-out")
    now = turn.known_promise(dish.id)
    ticking = clock(turn.potluck, now)
    left = ticking.left_min(turn.now)
    facts: dict[str, Any] = {"dish": dish.dish, "since": turn.voice.time(since), "limit": ticking.limit_min,
             "minutes": round(ticking.limit_min - left), "source": source}  # fmt: skip
    if left <= 0:
        turn.say("cold-over", buttons=[*gone_buttons(turn, [now]), [turn.undo_button()]], **facts)
        return
    until = turn.voice.time(turn.now + timedelta(minutes=left))
    turn.say("cold-in-time", until=until, buttons=[[turn.undo_button()]], **facts)


def register(app: Registry) -> None:
    app.button("coldpot", pressed)
    app.reader(read_cold, order=16)
