"""A dish that breaks what somebody chose to eat: one quiet line to its cook, which the host reads, too.

However it was promised or told. To the cook and the group it is "a guest", never a name.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.capabilities.needs import need_name
from bot.context import Turn
from bot.food import mark_name
from bot.registry import Registry
from bot.texts import Html, Voice
from planning.changes import may_manage
from planning.potluck import Stage
from planning.safety.chosen import Broken, broken_news

MOST_LINES = 6


async def watch(turn: Turn) -> None:
    before = turn.before
    if before is None or turn.potluck.stage is not Stage.PLANNED or before.stage is not Stage.PLANNED:
        return
    found = broken_news(before, turn.potluck)
    if found.by_dish:
        turn.post(_lines(turn.voice, found.by_dish, "dish"), silent=True)
    if found.by_need:
        turn.post(_lines(turn.voice, found.by_need, "need"), silent=True)
    if turn.private and (news := (*found.by_dish, *found.by_need)):
        await _tell_host(turn, news)


async def _tell_host(turn: Turn, found: Sequence[Broken]) -> None:
    """What was said in the group the host reads there; of what was told in private they hear without a name."""
    host = turn.potluck.guest(turn.potluck.host)
    if host is None or host.id == turn.me or may_manage(turn.potluck, turn.actor):
        return
    voice = await turn.private_voice(host)
    if voice is not None:
        await turn.tell(host, "chosen-told", what=_lines(voice, found, "host"))


def _lines(voice: Voice, found: Sequence[Broken], to: str) -> Html:
    """A line for each dish, with all the needs it breaks, and what helps."""
    dishes: dict[str, list[Broken]] = {}
    for one in found:
        dishes.setdefault(one.promise, []).append(one)
    lines: list[str] = []
    for held in list(dishes.values())[:MOST_LINES]:
        needs = list(dict.fromkeys(need_name(voice, one.need) for one in held))
        marks = list(dict.fromkeys(mark_name(voice, mark) for one in held for mark in one.marks))
        usual = "yes" if held[0].usual else "no"
        lines.append(voice("chosen-dish", dish=held[0].dish, needs=needs, marks=marks, n=len(marks), usual=usual))
    lines.append(voice("chosen-do", to=to))
    return Html("\n".join(lines))


def register(app: Registry) -> None:
    app.watch(watch)
