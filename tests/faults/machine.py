"""The machine's own trouble: a full disk, a locked database, a clock set back, no name service at the start.

Each: a press during the trouble, a clear line in the log, and afterwards everything by itself.
The disk is full for the bot's process by its limit on file sizes (RLIMIT_FSIZE: every write that would
make a file longer fails), so that no rights are needed and nobody else's disk is filled.
"""

from __future__ import annotations

import argparse
import asyncio
import contextlib
import resource
import signal
import sqlite3
import tempfile
from collections.abc import AsyncIterator, Awaitable, Callable
from dataclasses import dataclass
from pathlib import Path

from bot.storage import Store
from planning.potluck import Answer
from tests.faults.platform import Platform, Update
from tests.faults.stage import Bot, open_groups, until, with_clocks
from tests.faults.table import Row

CHAT = -1001
STORAGE_LINE = "storage can't be used now"
SOON_S = 20.0
"""More than the longest wait between two tries at storing an update."""


@dataclass
class Scene:
    platform: Platform
    bot: Bot
    file: Path
    presses: int = 0

    def press(self, answer: Answer = Answer.YES) -> Update:
        """Another guest's each time."""
        self.presses += 1
        label = {Answer.YES: "Coming", Answer.NO: "Can't"}[answer]
        return self.platform.press(CHAT, 100 + self.presses, self.platform.labelled(CHAT)[label])

    def acknowledged(self, update: Update) -> bool:
        return bool(self.platform.answers[update.query or ""])

    async def done(self, update: Update, seconds: float = SOON_S) -> None:
        await until(lambda: self.acknowledged(update), seconds)

    async def stored(self) -> int:
        """How many guests' answers are in the database."""
        async with await Store.open(f"sqlite+aiosqlite:///{self.file}") as store:
            (found,) = [s for s in await store.potlucks_in(CHAT) if s.place.current]
            return sum(
                1
                for g in found.potluck.guests
                if g.answer is not Answer.NONE and g.id.startswith("1") and len(g.id) == 3
            )


@contextlib.asynccontextmanager
async def scene(**settings: object) -> AsyncIterator[Scene]:
    with tempfile.TemporaryDirectory(prefix="faults") as folder:
        file = Path(folder) / "tureen.db"
        url = f"sqlite+aiosqlite:///{file}"
        async with Platform() as platform:
            await with_clocks(url, [CHAT])
            api = platform.url.replace("127.0.0.1", "localhost") if "no_names_s" in settings else platform.url
            async with Bot(Path(folder) / "log", api=api, database=url, log="warning", **settings) as bot:
                await open_groups(platform, [CHAT])
                yield Scene(platform, bot, file)
                await bot.stop()


async def full_disk(at: Scene) -> Row:
    files = [at.file, at.file.with_name("tureen.db-wal")]
    largest = max(f.stat().st_size for f in files if f.exists())
    before = resource.prlimit(at.bot.pid, resource.RLIMIT_FSIZE)
    await at.done(at.press())
    # Nothing may grow any more; the log that collects changes must grow to take one.
    resource.prlimit(at.bot.pid, resource.RLIMIT_FSIZE, (min(largest, files[1].stat().st_size), before[1]))
    pressed = at.press()
    await until(lambda: STORAGE_LINE in at.bot.said(), SOON_S)
    early = at.acknowledged(pressed)
    resource.prlimit(at.bot.pid, resource.RLIMIT_FSIZE, before)
    await at.done(pressed)
    return await _row(at, "disk full", "limit on file sizes; lifted again", early)


async def locked(at: Scene, seconds: float = 12.0) -> Row:
    other = sqlite3.connect(at.file, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    pressed = at.press()
    await asyncio.sleep(seconds)
    early = at.acknowledged(pressed)
    other.execute("ROLLBACK")
    other.close()
    await at.done(pressed)
    return await _row(at, "locked", f"another program held the database for {seconds:.0f} s", early)


async def clock_set_back(at: Scene) -> Row:
    await at.done(at.press())
    edits = len(at.platform.log)
    at.bot.signal(signal.SIGUSR1)
    await at.done(at.press(Answer.NO))
    at.platform.say(CHAT, 150, "/bring lasagna for 12")
    await until(lambda: any("lasagna" in s.text for s in at.platform.log[edits:]), SOON_S)
    await until(lambda: any(s.method == "editmessagetext" for s in at.platform.log[edits:]), SOON_S)
    await until(lambda: "the clock was set back" in at.bot.said(), 40)
    return await _row(at, "clock set back", "by an hour; presses, words and the board went on", False)


async def no_names(at: Scene) -> Row:
    await at.done(at.press())
    told = "the platform can't be reached" in at.bot.said()
    return await _row(at, "no name service", "for 3 s at the start", not told)


async def _row(at: Scene, what: str, did: str, wrong: bool) -> Row:
    """`wrong`: acknowledged before it can have been stored, or nothing was said."""
    stored = await at.stored()
    said = sorted(
        {line.split("]")[-1].split("  ")[0].strip() for line in at.bot.said().splitlines() if "warning" in line}
    )
    lost = at.presses - stored if what != "clock set back" else at.presses + 1 - stored
    return Row(
        what,
        "SQLite",
        did,
        lost,
        0,
        int(wrong),
        (f"{at.presses} presses, all acknowledged in the end", *(f"said: {s}" for s in said)),
    )


TROUBLES: dict[str, tuple[Callable[[Scene], Awaitable[Row]], dict[str, object]]] = {
    "disk full": (full_disk, {}),
    "locked": (locked, {}),
    "clock set back": (clock_set_back, {}),
    "no name service": (no_names, {"no_names_s": 3.0}),
}


async def on(what: str) -> Row:
    trouble, settings = TROUBLES[what]
    async with scene(**settings) as at:
        return await trouble(at)


async def rows(args: argparse.Namespace) -> list[Row]:
    return [await on(what) for what in TROUBLES] if args.database != "postgresql" else []
