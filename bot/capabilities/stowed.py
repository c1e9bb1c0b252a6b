"""In words, after the meal: what is left, what went back into the cold, whose pot is taken back."""

from __future__ import annotations

import re
from datetime import datetime, timedelta

from bot.buttons import Button
from bot.capabilities.leftovers import line, show, told
from bot.capabilities.theday import away_said
from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from bot.texts import Html
from planning.changes import give_back, put_away, take_home
from planning.potluck import Promise
from planning.safety.clocks import clock, more_minutes
from planning.safety.urgent import passed
from planning.safety.words import perishable
from planning.theday.evening import Said, of_a_table
from planning.theday.leftovers import Leftover, leftovers

BEFORE = timedelta(hours=8)
"""Food is on a table no longer than this before the start (common practice, no source)."""
ALL = re.compile(r"(?:all|everything|it all|all of it|all the food|the food|the lot|them all|the rest|todo|la comida)")
ONE = re.compile(r"(?:it|them|this|that|these|lo|la|los|las|)")
_PIECES = re.compile(r"\s*(?:,|;|&|\+|\band\b|\bplus\b|\by\b|\be\b)\s*")
_FILLER = re.compile(
    r"^(?:(?:the|some|lots of|a lot of|half|half of|a bit of|a few|most of|plenty of|much|\d+|el|la|los|las|media|medio"
    r"|un poco de|mucho|mucha|muchos|algo de|unos|unas|is|any|of)\s+)+"
)


def pieces(turn: Turn, thing: str) -> tuple[list[Promise], list[str]]:
    """The dishes of the list that the words name, and what else of food they name."""
    named: list[Promise] = []
    others: list[str] = []
    for piece in _PIECES.split(thing):
        found = dish_named(turn, piece, turn.potluck.promises)
        if found is not None:
            named += [found] if found not in named else []
        elif of_a_table(other := _FILLER.sub("", piece), turn.voice.language):
            others.append(other)
    return named, others


async def left(turn: Turn, said: Said, *, addressed: bool) -> bool:
    """ "Pork and lasagna left": how long each keeps or that it must go, and a button for whoever takes it."""
    about_all = re.search(r"left ?-?over|sobras", said.thing) is not None or said.thing in ("is anything", "anything")
    named, others = pieces(turn, said.thing)
    if not (named or about_all or (others and re.search(r"left ?-?over|sobra|sobr[oó]", turn.words.casefold()))):
        return False
    if not addressed and not named:
        return False
    if not any(p.category not in ("drink", "supplies") for p in turn.potluck.promises):
        unlisted(turn, others)
        return True
    if not named:
        if others and not about_all:
            unlisted(turn, others)
        else:
            await show(turn)
        return True
    rows = [row for row in leftovers(turn.potluck, turn.now) if row.promise in named]
    if not rows:
        return False
    buttons = [
        [Button(turn.voice.plain("button-take", dish=row.promise.dish), "takeone", (row.promise.id,))]
        for row in rows
        if not row.must_go
    ]
    turn.post(Html("\n".join(told(turn, rows))), buttons=buttons)
    if others:
        unlisted(turn, others)
    return True


def unlisted(turn: Turn, things: list[str]) -> None:
    """Of food that is not on the list nothing is known but the limit."""
    turn.say("left-unlisted", things=things[:4], limit=clock(turn.potluck, Promise("", "", "", "main")).limit_min)


def away(turn: Turn, said: Said, *, addressed: bool) -> bool:
    """ "I put the potato salad back in the fridge": its clock stops there, and the minutes it stood stay counted."""
    potluck = turn.potluck
    if turn.guest() is None or not potluck.starts_at - BEFORE <= turn.now:
        return False
    running = [p for p in potluck.promises if p.out_since is not None]
    named, _ = pieces(turn, said.thing)
    if not named and ALL.fullmatch(said.thing):
        named = running or [p for p in potluck.promises if _untold(turn, p)]
    elif not named and ONE.fullmatch(said.thing):
        own = [p for p in running if p.guest == turn.me] or running
        named = own if len(own) == 1 else []
    if not named:
        return False
    at = passed(said.at, turn.now, turn.zone) if said.at else None
    done = [p for p in named if _put_away(turn, p, said.minutes, at or turn.now)]
    if not done:
        if addressed:
            turn.react("👍")
        return addressed
    for dish in done:
        away_said(turn, dish.id)
    return True


def _untold(turn: Turn, promise: Promise) -> bool:
    """On the table since the meal began, as far as anybody knows."""
    return (
        perishable(promise) and promise.out_since is None and promise.out_min <= 0 and turn.now > turn.potluck.starts_at
    )


def _put_away(turn: Turn, promise: Promise, minutes: int | None, at: datetime) -> bool:
    if promise.out_since is not None:
        turn.change(
            put_away(turn.potluck, turn.actor, promise.id, max(at, promise.out_since)), "did-away", dish=promise.dish
        )
        return True
    if not _untold(turn, promise):
        return False
    stood = float(minutes) if minutes is not None else (at - turn.potluck.starts_at).total_seconds() / 60
    turn.change(more_minutes(turn.potluck, promise.id, max(1.0, stood)), "did-away", dish=promise.dish)
    return True


def own_back(turn: Turn) -> bool:
    """ "I take my pot": it is with its owner again."""
    mine = [p for p in turn.potluck.promises_of(turn.me) if p.category not in ("drink", "supplies")]
    if not mine:
        return False
    for dish in mine:
        if not dish.returned:
            turn.change(give_back(turn.potluck, turn.actor, dish.id), "did-back", dish=dish.dish)
    turn.react("👍")
    return True


def row_of(turn: Turn, found: Promise) -> Leftover | None:
    return next((row for row in leftovers(turn.potluck, turn.now) if row.promise.id == found.id), None)


def one_line(turn: Turn, row: Leftover) -> Html:
    return Html(line(turn, row).removeprefix("• "))


async def take_one(turn: Turn) -> None:
    """The button below one dish's line."""
    found = turn.known_promise(turn.args[0])
    after = turn.change(take_home(turn.potluck, turn.actor, found.id, turn.now), "did-take", dish=found.dish)
    now = after.promise(found.id)
    if now is not None and (row := row_of(turn, now)) is not None:
        button = Button(turn.voice.plain("button-take", dish=found.dish), "takeone", (found.id,))
        turn.edit_pressed_html(one_line(turn, row), buttons=[[button]])
    turn.toast("left-taken" if now is not None and turn.me in now.takers else "left-not-taken", dish=found.dish)


def register(app: Registry) -> None:
    app.button("takeone", take_one)
