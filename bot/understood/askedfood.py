"""The dish somebody's last question about food named: its cook's "yes" or "it's with flour" is known to be of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta

from bot.context import Turn
from bot.recalling import Memory
from planning.potluck import Promise

MOST_BETWEEN = 12
KEPT = timedelta(hours=2)
"""So long, and over so many messages, a question stands (common practice, no source)."""


@dataclass(frozen=True)
class FoodAsked:
    """The last question about food of a chat: the message, the dishes named (ids) and the foods asked for."""

    message: int
    dishes: tuple[str, ...]
    foods: tuple[str, ...]


ASKED = Memory("asked", FoodAsked, KEPT, of_chat=True)


def remember(turn: Turn, dishes: Iterable[Promise], foods: Iterable[str]) -> None:
    ids = tuple(p.id for p in dishes if p.id)
    if ids:
        turn.remember(ASKED, FoodAsked(turn.event.message_id or 0, ids, tuple(foods)))


async def asked_of(turn: Turn) -> tuple[Promise | None, tuple[str, ...]]:
    """(the writer's own dish asked about lately in this chat, the foods it was asked for)."""
    known = await turn.recall(ASKED)
    if known is None:
        return None, ()
    own = {p.id: p for p in turn.potluck.promises if turn.me in (p.guest, *p.sharers)}
    between = (turn.event.message_id or 0) - known.message
    mine = [own[i] for i in known.dishes if i in own]
    if not 0 < between <= MOST_BETWEEN or len(mine) != 1:
        return None, ()
    return mine[0], known.foods
