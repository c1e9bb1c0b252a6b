"""In words: whose hour it is, and whether the clocks are changed before or on the day."""

from __future__ import annotations

import re
from datetime import timedelta
from zoneinfo import ZoneInfo

from babel.dates import get_timezone_name

from bot.context import Turn
from bot.registry import Registry
from bot.understood.asking import addressed, asked_in, read_further
from bot.zones import find_zone
from planning.when.clockchange import change_between

DAY = timedelta(days=1)
MOST_WORDS = 3
ZONES_SAID = ("eastern", "central", "mountain", "pacific")


async def read_clocks(turn: Turn) -> None:
    found = asked_in(turn, "clocks-change", "whose-time")
    if found is None or not (addressed(turn) or found.question or found.kind == "clocks-change"):
        return
    if found.kind == "clocks-change":
        _change(turn)
        turn.handled = True
        return
    potluck = turn.potluck
    elsewhere = _elsewhere(turn)
    there = potluck.starts_at.astimezone(ZoneInfo(elsewhere[1])) if elsewhere is not None else None
    other = turn.voice.on(elsewhere[1]).time(potluck.starts_at) if elsewhere is not None and there is not None else ""
    turn.say("clocks-whose", when=potluck.starts_at, zone=_zone_name(turn), other=other,
             place=elsewhere[0] if elsewhere is not None else "")  # fmt: skip
    read_further(turn, found)


def _zone_name(turn: Turn) -> str:
    local = turn.potluck.starts_at.astimezone(turn.zone)
    return str(get_timezone_name(local, locale=turn.voice.locale))


def _elsewhere(turn: Turn) -> tuple[str, str] | None:
    """A place the words name whose clocks read otherwise at the start: "I'm coming from Chicago"."""
    words = re.findall(r"[^\W\d_][\w.'-]*", turn.words)
    here = turn.potluck.starts_at.astimezone(turn.zone).utcoffset()
    for length in range(MOST_WORDS, 0, -1):
        for n in range(len(words) - length + 1):
            name = " ".join(words[n : n + length])
            if (
                not name[:1].isupper()
                and length == 1
                and name.casefold() not in ("eastern", "central", "pacific", "mountain")
            ):
                continue
            zone = find_zone(name)
            if zone is not None and turn.potluck.starts_at.astimezone(ZoneInfo(zone)).utcoffset() != here:
                return name, zone
    return None


def _change(turn: Turn) -> None:
    """Of the days up to the potluck and its own; what is told here goes by the clock of the day."""
    potluck = turn.potluck
    found = change_between(potluck.timezone, turn.now - DAY, potluck.ends + DAY)
    if found is None:
        turn.say("clocks-none", when=potluck.starts_at)
        return
    minute = timedelta(minutes=1)
    before = (found.at - minute).astimezone(turn.zone).replace(tzinfo=None) + minute
    turn.say(
        "clocks-change", day=turn.voice.day(found.at), minutes=abs(found.minutes), back=found.minutes < 0,
        before=turn.voice.wall_time(f"{before:%H:%M}"), after=turn.voice.time(found.at), when=potluck.starts_at,
    )  # fmt: skip


def register(app: Registry) -> None:
    app.reader(read_clocks, order=27)
