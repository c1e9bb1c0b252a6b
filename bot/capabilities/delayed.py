"""The meal is moved to later on the day itself: what that means for food that is out, hot or not yet out."""

from __future__ import annotations

from datetime import timedelta

from bot.capabilities.buying import source_words
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.potluck import Stage
from planning.theday.delayed import delayed

SAME_DAY = timedelta(hours=12)
"""Further ahead nothing is out or hot yet (common practice, no source)."""
MOST_NAMED = 8


async def watch(turn: Turn) -> None:
    """However the hour was changed: by command, in words, by a press."""
    before, after = turn.before, turn.potluck
    if before is None or before.stage is not Stage.PLANNED or after.stage is not Stage.PLANNED:
        return
    moved = after.starts_at - before.starts_at
    if not timedelta() < moved <= SAME_DAY or before.starts_at - SAME_DAY > turn.now:
        return
    planner = turn.services.planner
    known = planner.timeline(before) if planner is not None else None
    found = delayed(after, known.steps if known is not None else (), turn.now)
    voice = turn.voice
    lines: list[str] = []
    for dish, end in found.ends_before[:MOST_NAMED]:
        lines.append(voice("delay-ends-before", dish=dish.dish, end=voice.time(end), over=end <= turn.now))
    if found.keep_hot:
        lines.append(voice("delay-keep-hot", dishes=[p.dish for p in found.keep_hot[:MOST_NAMED]]))
    if found.keep_cold:
        lines.append(voice("delay-keep-cold", dishes=[p.dish for p in found.keep_cold[:MOST_NAMED]]))
    if lines:
        head = voice("delay-head", when=voice.time(after.starts_at), source=source_words(turn, "TIME-01"))
        turn.post(Html("\n".join([head, *lines])), reply=False)


def register(app: Registry) -> None:
    app.watch(watch)
