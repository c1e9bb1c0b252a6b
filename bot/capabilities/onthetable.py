"""In words: a dish is on the table and its clock runs, how long it may stay there, whether cooking on would save it."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.capabilities.theday import all_out_since, start_clock, told_clock
from bot.capabilities.urgent import food_may_be_meant, still
from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from bot.understood import place_of
from planning.changes import may_manage
from planning.potluck import Potluck, Promise
from planning.safety.clocks import clock
from planning.safety.told import asks_how_long, asks_to_cook_on, over, put_out_words
from planning.safety.urgent import languages, out_since
from planning.safety.words import perishable

SERVING = timedelta(hours=8)
"""Food is put on a table no longer than this before the start: before that the word is about something else
(common practice, no source)."""


async def read_table(turn: Turn) -> None:
    if not food_may_be_meant(turn):
        return
    potluck = turn.potluck
    addressed = place_of(turn) not in (None, "person")
    named = dish_named(turn, turn.words, potluck.promises)
    for language in dict.fromkeys((turn.voice.language, *languages())):
        if asks_to_cook_on(turn.words, language) and _cook_on(turn, named, addressed):
            turn.handled = True
            return
        if asks_how_long(turn.words, language) and (named is not None or addressed):
            turn.handled = True
            still(turn, named, None)
            return
        if (
            turn.guest() is not None
            and potluck.starts_at - SERVING <= turn.now
            and _put_out(turn, named, language, addressed)
        ):
            turn.handled = True
            return


def _put_out(turn: Turn, named: Promise | None, language: str, addressed: bool) -> bool:
    """Starts the clocks that the words tell of; False when they tell of none."""
    said = put_out_words(turn.words, language, turn.now, turn.zone)
    if said is None:
        return False
    if named is None:
        if not (said.everything and (addressed or may_manage(turn.potluck, turn.actor))):
            return False
        all_out_since(turn, said.since)
        return True
    if not perishable(named):
        return False
    since_when(turn, named, said.since)
    return True


def since_when(turn: Turn, named: Promise, since: datetime | None) -> None:
    """The dish's clock runs, from `since` where that is earlier than what was known, else from now."""
    running = named.out_since is not None
    if not running:
        start_clock(turn, named.id, since)
    elif since is not None:
        turn.change(out_since(turn.potluck, named.id, since), "did-out")
    told_clock(turn, named.id)


def _cook_on(turn: Turn, named: Promise | None, addressed: bool) -> bool:
    """Heat does not take away what grew in food that stood too long (TIME-05)."""
    potluck = turn.potluck
    spent = over(potluck, turn.now)
    meant = [p for p in spent if named is None or p.id == named.id]
    source = source_words(turn, "TIME-05")
    own = any(turn.me in (p.guest, *p.sharers) for p in meant)
    if meant and (addressed or named is not None or own):
        turn.say("recook-over", dishes=[p.dish for p in meant], source=source, buttons=gone_buttons(turn, meant))
        return True
    if named is not None and perishable(named) and addressed:
        turn.say("recook-unknown", dish=named.dish, limit=_limit(potluck, named), source=source)
        return True
    return False


def gone_buttons(turn: Turn, dishes: list[Promise]) -> list[list[Button]]:
    """For whoever may take a dish off the list: it is thrown out."""
    mine = [p for p in dishes if may_manage(turn.potluck, turn.actor) or p.guest == turn.me]
    return [[Button(turn.voice.plain("button-thrown-out", dish=p.dish), "lostdish", (p.id,))] for p in mine[:4]]


def _limit(potluck: Potluck, dish: Promise) -> Any:
    return clock(potluck, dish).limit_min


def register(app: Registry) -> None:
    app.reader(read_table, order=18)
