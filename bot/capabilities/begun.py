"""In words: a dish went on the heat only now, or earlier than planned - when it is done, and what that does."""

from __future__ import annotations

import re
from datetime import datetime, timedelta

from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from bot.texts import Html
from bot.understood.asking import asked_in
from planning.changes import may_manage, put_on_heat
from planning.kitchen.usual import HEATING, steps_of
from planning.potluck import Promise
from planning.safety.urgent import passed
from planning.theday.begun import BEFORE, Cooking, cooking
from planning.when.clockchange import change_between

EARLY_MIN = 30
_IT = re.compile(r"(?:it|them|lo|la|los|las|)")
_OLD = re.compile(r"\b(?:old time|old clock|before the change|hora vieja|hora de antes)\b", re.IGNORECASE)


async def read_begun(turn: Turn) -> None:
    if not turn.has_potluck or not turn.potluck.starts_at - BEFORE <= turn.now <= turn.potluck.ends:
        return
    found = asked_in(turn, "began")
    if found is None:
        return
    dish = _dish(turn, found["thing"].removesuffix("'s"))
    if dish is None:
        return
    going = cooking(turn.potluck, dish, _since(turn, found["at"]))
    if going is None:
        return
    turn.handled = True
    manages = may_manage(turn.potluck, turn.actor)
    if manages or turn.guest() is not None:
        turn.change(put_on_heat(turn.potluck, turn.actor, dish.id, going.since), "did-began", dish=dish.dish)
    start, ready = turn.potluck.starts_at, going.ready
    late = round((ready - start).total_seconds() / 60)
    voice, host = turn.voice, turn.potluck.guest(turn.potluck.host)
    lines = [in_since(turn, dish, going)]
    if late > 0:
        lines.append(voice("begun-late", late=late, start=voice.time(start), ready=voice.time(ready), manages=manages,
                           host=host.name if host is not None else ""))  # fmt: skip
    turn.post(Html("\n".join(lines)), buttons=[[turn.undo_button()]] if turn.before is not None else ())


def in_since(turn: Turn, dish: Promise, going: Cooking) -> Html:
    """Since when it is on the heat, and when it is done and ready."""
    voice, start = turn.voice, turn.potluck.starts_at
    early = (start - going.ready).total_seconds() / 60 >= EARLY_MIN
    slow = any(s.kind.startswith("slow-cooker") for s in steps_of(turn.potluck, dish)[0])
    return voice("begun-done", dish=dish.dish, since=voice.time(going.since), minutes=going.minutes,
                 done=voice.time(going.done), rest=going.rest, ready=voice.time(going.ready), early=early, slow=slow,
                 start=voice.time(start))  # fmt: skip


def _dish(turn: Turn, thing: str) -> Promise | None:
    """The dish named; "it" is one's only one that is heated."""
    potluck = turn.potluck
    own = potluck.promises_of(turn.me)
    if _IT.fullmatch(thing):
        heated = [p for p in own if any(s.kind in HEATING for s in steps_of(potluck, p)[0])]
        return heated[0] if len(heated) == 1 else None
    return dish_named(turn, thing, own) or dish_named(turn, thing, potluck.promises)


def _since(turn: Turn, at: str) -> datetime:
    """When it went in; an hour by the clock of before is put into the new one."""
    since = (passed(at, turn.now, turn.zone) if at else None) or turn.now
    if _OLD.search(turn.words):
        change = change_between(turn.potluck.timezone, turn.now - timedelta(days=1), turn.now)
        if change is not None:
            since += timedelta(minutes=change.minutes)
    return since


def register(app: Registry) -> None:
    app.reader(read_begun, order=16)
