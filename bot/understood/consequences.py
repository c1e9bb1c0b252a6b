"""What a withdrawal leaves open, for whoever withdraws and for the host."""

from __future__ import annotations

from collections.abc import Iterable

from bot.context import Turn
from planning.headcount import headcount
from planning.menu import menu
from planning.potluck import Potluck, Promise, Say


def gaps(turn: Turn, categories: Iterable[str], potluck: Potluck | None = None) -> list[Say]:
    """Of these categories, what the table is short of now, or would be with that potluck."""
    potluck = potluck or turn.potluck
    wanted = dict.fromkeys(categories)
    return [
        Say("gap", {"category": turn.voice.plain(f"category-{r.category}"), "short": round(r.lacking_servings)})
        for r in menu(potluck, headcount(potluck))
        if r.category in wanted and r.lacking_servings >= 1
    ]


async def tell_host(turn: Turn, dishes: list[Promise], *, left: bool) -> None:
    """The host hears in private who dropped out or gave up which dishes, and what that leaves short."""
    host = turn.potluck.guest(turn.potluck.host)
    if host is None or host.id == turn.me or not host.id.isdecimal():
        return
    person = await turn.store.person(int(host.id))
    if person is None or not person.can_dm:
        return  # the group's line says it; a second one there would only be noise
    short = [turn.voice.say(g) for g in gaps(turn, (p.category for p in dishes))]
    await turn.tell(
        host,
        "told-dropped-out" if left else "told-gave-up",
        name=turn.event.person.name,
        dishes=[p.dish for p in dishes],
        short=short,
    )
