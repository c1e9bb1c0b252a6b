"""The dish somebody's last question about food named: its cook's "yes" or "it's with flour" is known to be of it.

Kept in memory for a while; lost with the process, and then the cook is asked which dish is meant.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta

from bot.context import Turn
from bot.services import FoodAsked
from planning.potluck import Promise

MOST_KEPT, MOST_BETWEEN = 1000, 12
KEPT = timedelta(hours=2)
"""So long, and over so many messages, a question stands (common practice, no source)."""


def remember(turn: Turn, dishes: Iterable[Promise], foods: Iterable[str]) -> None:
    asked = turn.services.asked
    ids = tuple(p.id for p in dishes if p.id)
    if not ids:
        return
    asked[turn.event.chat_id] = FoodAsked(turn.event.message_id or 0, turn.now, ids, tuple(foods))
    asked.move_to_end(turn.event.chat_id)
    while len(asked) > MOST_KEPT:
        asked.popitem(last=False)


def asked_of(turn: Turn) -> tuple[Promise | None, tuple[str, ...]]:
    """(the writer's own dish asked about lately in this chat, the foods it was asked for)."""
    known = turn.services.asked.get(turn.event.chat_id)
    own = {p.id: p for p in turn.potluck.promises if turn.me in (p.guest, *p.sharers)}
    if known is None or turn.now - known.at > KEPT:
        return None, ()
    between = (turn.event.message_id or 0) - known.message_id
    mine = [own[i] for i in known.dishes if i in own]
    if not 0 < between <= MOST_BETWEEN or len(mine) != 1:
        return None, ()
    return mine[0], known.foods
