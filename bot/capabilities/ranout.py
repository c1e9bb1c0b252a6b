"""In words: something is all gone - who could still bring some, and what is remembered for the next time."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

from bot.capabilities.stowed import pieces
from bot.context import Turn
from bot.naming import dish_named
from bot.registry import Registry
from planning.changes import may_manage, say_outcome
from planning.potluck import Answer, Promise
from planning.theday.evening import Said, of_a_table

BEFORE, ON_THE_WAY = timedelta(hours=6), timedelta(minutes=45)
"""From so long before the start on things run out; so long after it everybody is there. Both: common practice."""
MOST_NAMES = 5


async def ran_out(turn: Turn, said: Said) -> bool:
    potluck = turn.potluck
    if turn.now < potluck.starts_at - BEFORE:
        return False
    found, others = _meant(turn, said.thing)
    if not found and not others:
        return False
    things = [*(p.dish for p in found), *others]
    if may_manage(potluck, turn.actor):
        for dish in found:
            if dish.outcome != "ran-out":
                turn.change(say_outcome(turn.potluck, turn.actor, dish.id, "ran-out"), "did-lesson", dish=dish.dish)
    buttons = [[turn.undo_button()]] if turn.changed else ()
    over = turn.now > potluck.ends
    kinds, names = {p.category for p in found}, {p.id for p in found}
    more = [p.dish for p in potluck.promises if p.category in kinds and p.out_since is None and p.id not in names]
    coming = [
        g.name for g in potluck.guests
        if g.answer is Answer.YES and g.arrived_at is None and g.id not in (turn.me, potluck.host)
        and turn.now < potluck.starts_at + ON_THE_WAY
    ]  # fmt: skip
    host = potluck.guest(potluck.host)
    turn.say(
        "evening-ran-out",
        next="yes" if turn.changed else "no",
        thing=turn.voice.join(things),
        others=[] if over else more[:MOST_NAMES],
        coming=coming[:MOST_NAMES],
        host=host.name if host is not None and host.id != turn.me and not over else "",
        buttons=buttons,
    )
    await tell_host(turn, "told-ran-out", thing=turn.voice.join(things))
    return True


def _meant(turn: Turn, thing: str) -> tuple[list[Promise], list[str]]:
    """The dishes of the list the words name, and what else of a table ("gravy and rolls")."""
    own = dish_named(turn, thing, turn.potluck.promises_of(turn.me))
    whole = own or dish_named(turn, thing, turn.potluck.promises)
    named, others = pieces(turn, thing)
    if len(named) + len(others) > 1:
        return named, others
    if whole is not None:
        return [whole], []
    return named, others or ([thing] if of_a_table(thing, turn.voice.language) else [])


async def tell_host(turn: Turn, key: str, **facts: Any) -> None:
    """The host reads it in private; where that can't be, the group's line says it."""
    host = turn.potluck.guest(turn.potluck.host)
    if host is None or host.id == turn.me or not host.id.isdecimal():
        return
    person = await turn.store.person(int(host.id))
    if person is not None and person.can_dm:
        await turn.tell(host, key, name=turn.event.person.name, **facts)


def register(app: Registry) -> None:
    """Nothing of its own: the evening's words come from `evening`."""
