"""The room kept open for people: the bot in it, the page on it, a clock that runs and can be moved."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from pathlib import Path

from .browser import Decisions, Pages
from .rehearsal import MakeBot, Rehearsal
from .script import Script, parse_script, read_script
from .server import RoomServer

PEOPLE = ("Inés", "Ravi", "Mei", "Tomasz")


def empty_script(now: datetime, timezone: str, names: Sequence[str] = PEOPLE, group: str = "Plot 9 Supper") -> Script:
    """A group into which the bot has just been put, at the time `now`; the first of `names` is its administrator."""
    people = [{"id": f"person{number}", "name": name} for number, name in enumerate(names, 1)]
    lines: tuple[dict[str, object], ...] = (
        {"clock": now.replace(microsecond=0).isoformat(), "timezone": timezone},
        {"people": people, "group": group, "admins": ["person1"]},
        {"event": "bot-added", "who": "person1"},
    )
    return parse_script("\n".join(json.dumps(line) for line in lines))


async def serve_room(
    script: Path | Script,
    out: Path,
    make_bot: MakeBot,
    *,
    port: int = 0,
    ready: Callable[[str], None],
    progress: Callable[[str], None] = lambda _: None,
    decisions: Decisions = lambda _: [],
    stop: asyncio.Event | None = None,
    keep_ticking: bool = True,
) -> None:
    """Play `script` (`empty_script` for nothing much), then keep the room open until `stop` is set.

    `ready` gets the page's address once the room is served, before the script is played. The clock starts at
    the script's time, runs with the wall clock (`keep_ticking`) and is moved from the page. Raises
    ScriptError for a script that can't be played, OSError for a port that is taken.
    """
    read = script if isinstance(script, Script) else read_script(script)
    play = Rehearsal(read, out, make_bot, progress)
    pages = Pages(play.room, play.player, read.zone, decisions)
    stop = stop or asyncio.Event()
    async with RoomServer(play.room, port, pages) as server:
        ready(server.address)
        ticking: asyncio.Task[None] | None = None
        try:
            async with pages.moving:
                await play.play(server, pages.played)
            if keep_ticking:
                ticking = asyncio.create_task(_tick(play, pages))
            await stop.wait()
        finally:
            if ticking is not None:
                ticking.cancel()
            await play.end()


async def _tick(play: Rehearsal, pages: Pages) -> None:
    """A second a second. While somebody moves the clock it runs by itself."""
    while True:
        await asyncio.sleep(1)
        if not pages.moving.locked():
            play.clock.set(play.clock.now() + timedelta(seconds=1))
            pages.tick()
