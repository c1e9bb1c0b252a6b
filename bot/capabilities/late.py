"""Late, or here: a guest's own word, and what it does to the kitchen."""

from __future__ import annotations

import asyncio
import re
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from typing import Any

from bot.buttons import Button, Link
from bot.context import Turn
from bot.kitchen_words import step_line
from bot.registry import Registry
from bot.texts import Html, Voice
from planning.changes import Refusal, arrive, come_late
from planning.kitchen import timeline
from planning.potluck import Answer, Potluck
from planning.reminders import arrival
from planning.theday.difference import difference
from planning.theday.lateness import later_by
from planning.when import Unclear, as_read_here, moved, parse_when

EFFORT, SECONDS = 0.3, 5.0
MOST_MINUTES = 600
MOST_STEPS = 4
HERE_FROM = timedelta(hours=1)
"""Common practice, no source."""


async def command(turn: Turn) -> None:
    """/late 20; /late 5:30pm; alone it offers how much."""
    words = turn.words.casefold().removeprefix("by").strip()
    if not words:
        turn.say("late-how-much", buttons=[_choices(turn)])
        return
    digits = words.replace("minutes", "").replace("minute", "").replace("mins", "").replace("min", "").strip()
    if digits.isdecimal() and len(digits) <= 3:
        await running_late(turn, int(digits))
        return
    await running_late(turn, None, at=_clock(turn, words))


def _clock(turn: Turn, words: str) -> datetime:
    day = turn.potluck.local(max(turn.now, turn.potluck.starts_at)).date()
    try:
        said = parse_when(
            f"{day.isoformat()} {as_read_here(words, turn.voice.language)}", turn.now, turn.potluck.timezone
        )
    except Unclear:
        raise Refusal("refused-late-words") from None
    if not said.has_time:
        raise Refusal("refused-late-words")
    return said.starts_at


def hour_of(turn: Turn, words: str) -> datetime:
    """The hour somebody said they come at, on the day of the potluck."""
    potluck = turn.potluck
    try:
        said = moved(as_read_here(f"at {words}", turn.voice.language), potluck.starts_at, turn.now, potluck.timezone)
    except Unclear:
        raise Refusal("refused-late-words") from None
    return said.starts_at


_CLOCK = re.compile(r"(?P<h>\d{1,2})(?:[:.](?P<m>[0-5]\d))?\s*(?P<half>[ap])?", re.IGNORECASE)


def arrival_of(turn: Turn, words: str) -> datetime:
    """The hour somebody said they are there from, on the day of the potluck: after the start while it lasts, else the
    last such hour before it ("9:30" for a supper at five is in the morning)."""
    said, potluck = _CLOCK.search(words), turn.potluck
    if said is None or int(said["h"]) > 23:
        return hour_of(turn, words)
    hour, start = int(said["h"]), potluck.local(potluck.starts_at)
    half = (said["half"] or "").casefold()
    hours = [hour] if hour > 12 or hour == 0 else [hour % 12, hour % 12 + 12]
    if half and hour <= 12:
        hours = [h for h in hours if (h >= 12) == (half == "p")]
    at = [start.replace(hour=h, minute=int(said["m"] or 0), second=0, microsecond=0) for h in hours]
    ahead = [a for a in at if start <= a < potluck.local(potluck.ends)]
    before = [a for a in at if a < start]
    found = min(ahead) if ahead else max(before) if before else None
    return found.astimezone(UTC) if found is not None else hour_of(turn, words)


async def pressed(turn: Turn) -> None:
    await running_late(turn, int(turn.args[0]))
    turn.toast("answer-below")


async def choose(turn: Turn) -> None:
    """ "I'm late" below a reminder: by how much?"""
    turn.say("late-how-much", buttons=[_choices(turn)], reply=False)
    turn.toast("answer-below")


async def running_late(turn: Turn, minutes: int | None, *, at: datetime | None = None) -> None:
    """Move what this person brings, tell them so, and tell the host what it breaks."""
    before = turn.potluck
    host = before.guest(before.host)
    name = turn.event.person.name
    if minutes is None and at is None:
        turn.say("late-noted", buttons=[_choices(turn)])
        if host is not None:
            await turn.tell(host, "told-late", name=name)
        return
    if minutes is not None and not 0 < minutes <= MOST_MINUTES:
        raise Refusal("refused-late-words")
    comes = at or _later(turn, minutes or 0)
    after = turn.change(come_late(before, turn.actor, comes), "did-late", when=turn.voice.time(comes))
    turn.say("late-moved", when=turn.voice.time(comes), buttons=[[turn.undo_button()]])
    if host is None:
        return
    lines: list[str] = [turn.voice("told-late-until", name=name, when=turn.voice.time(comes))]
    lines += await _broken(turn, before, after)
    await turn.tell(host, "told-lines", lines=Html("\n".join(lines)))


def _later(turn: Turn, minutes: int) -> datetime:
    """So many minutes after the time at which this person should have been there: by what is still to come of it,
    when their dish was needed, else when it starts."""
    planner = turn.services.planner
    known = planner.timeline(turn.potluck) if planner is not None else None
    guest = turn.guest()
    due = turn.potluck.starts_at if guest is None else arrival(turn.potluck, guest, known.doable if known else ())
    return later_by(minutes, due, turn.potluck.starts_at, turn.now)


async def _broken(turn: Turn, before: Potluck, after: Potluck) -> list[str]:
    """What the host has to know: conflicts that are new, and steps that move."""
    if not any(p.heat for p in before.promises):
        return [turn.voice("late-breaks-nothing")]
    was, is_now = await asyncio.gather(
        asyncio.to_thread(timeline, before, turn.now, EFFORT, 0, SECONDS),
        asyncio.to_thread(timeline, after, turn.now, EFFORT, 0, SECONDS),
    )
    said = difference(before, after, was, is_now, turn.now)
    lines: list[str] = [turn.voice.say(s) for s in said.says]
    if said.moved:
        lines.append(turn.voice("day-moved-head"))
        lines += [step_line(turn.voice, after, s) for s in said.moved[:MOST_STEPS]]
    return lines or [turn.voice("late-breaks-nothing")]


async def here(turn: Turn) -> None:
    """/here: we have arrived. The answer is a yes, and what was to come later is here."""
    known = turn.guest()
    if known is not None and known.arrived_at is not None:
        turn.toast("here-already")
        return
    after = turn.change(arrive(turn.potluck, turn.actor, turn.now), "did-here")
    dishes = [p for p in after.promises_of(turn.me) if p.category not in ("drink", "supplies") and p.out_since is None]
    if turn.event.kind == "press" and not dishes:
        # A table where everybody presses must not fill with lines about it.
        turn.toast("here-toast")
        return
    rows = [[Button(turn.voice.plain("button-out", dish=p.dish), "out", (p.id,))] for p in dishes[:6]]
    turn.say(
        "here-noted",
        name=turn.event.person.name,
        n=sum(g.party.total for g in after.guests if g.arrived_at is not None),
        of=sum(g.party.total for g in after.guests if g.answer is Answer.YES),
        dishes=[p.dish for p in dishes],
        buttons=[*rows, [turn.undo_button()]],
        reply=None if turn.event.kind == "message" else False,
    )
    if turn.event.kind == "press":
        turn.toast("here-toast")


def _choices(turn: Turn) -> list[Button]:
    return [Button(turn.voice.plain("button-late", n=n), "late", (str(n),), owner=turn.me) for n in (10, 20, 30, 60)]


def on_board(potluck: Potluck, voice: Voice, facts: Any) -> Iterable[list[Button | Link]]:
    """Before the start, too, people come: from an hour before until the message that it starts has the button."""
    if potluck.starts_at - HERE_FROM <= facts.now < potluck.starts_at:
        yield [Button(voice.plain("button-here"), "here")]


def register(app: Registry) -> None:
    app.command("late", command, order=60)
    app.command("here", here, order=61)
    app.button("late", pressed)
    app.button("lates", choose)
    app.button("here", here)
    app.on_board(40, buttons=on_board)
