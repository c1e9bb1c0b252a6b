"""The machine's own trouble: a full disk, a locked database, a clock set back, no name service at the start.

Each: a press during the trouble, a clear line in the log, and afterwards everything by itself.
The disk that is full is one of memory (tmpfs) that holds nothing but the database, and is filled with zeros; mounting
it takes root. Without, SQLite's disk is full for the bot's process by its limit on file sizes (RLIMIT_FSIZE: every
write that would make a file longer fails), and PostgreSQL's row is left out, with a word.
"""

from __future__ import annotations

import argparse
import asyncio
import contextlib
import os
import resource
import signal
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import AsyncIterator, Awaitable, Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import text
from sqlalchemy.ext.asyncio import create_async_engine

from bot.storage import Store
from planning.potluck import Answer
from tests.faults.platform import Platform, Update
from tests.faults.stage import Bot, Server, databases, open_groups, until, with_clocks
from tests.faults.table import Row

CHAT = -1001
STORAGE_LINE = "storage can't be used now"
SMALL_MB = 256
MOST_PRESSES = 200
SOON_S = 20.0
"""More than the longest wait between two tries at storing an update."""


@dataclass
class Scene:
    """`disk`: the folder that is a disk of its own, if there is one."""

    database: str
    platform: Platform
    bot: Bot
    url: str
    disk: Path | None
    presses: int = 0

    @property
    def file(self) -> Path:
        """SQLite's."""
        return Path(self.url.split("///")[1])

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
        async with await Store.open(self.url) as store:
            (found,) = [s for s in await store.potlucks_in(CHAT) if s.place.current]
            return sum(
                1
                for g in found.potluck.guests
                if g.answer is not Answer.NONE and g.id.startswith("1") and len(g.id) == 3
            )


@contextlib.asynccontextmanager
async def scene(database: str, **settings: object) -> AsyncIterator[Scene]:
    async with contextlib.AsyncExitStack() as stack:
        folder = Path(stack.enter_context(tempfile.TemporaryDirectory(prefix="faults", ignore_cleanup_errors=True)))
        disk = stack.enter_context(small_disk(folder / "disk")) if settings.pop("small_disk", False) else None
        if database == "SQLite":
            url = f"sqlite+aiosqlite:///{(disk or folder) / 'tureen.db'}"
        else:
            url = (await stack.enter_async_context(Server(disk))).url
        platform = await stack.enter_async_context(Platform())
        await with_clocks(url, [CHAT])
        api = platform.url.replace("127.0.0.1", "localhost") if "no_names_s" in settings else platform.url
        bot = Bot(folder / "log", api=api, database=url, log="warning", **settings)
        await stack.enter_async_context(bot)
        await open_groups(platform, [CHAT])
        yield Scene(database, platform, bot, url, disk)
        await bot.stop()


def may_mount() -> bool:
    return os.geteuid() == 0 and sys.platform == "linux"


@contextlib.contextmanager
def small_disk(folder: Path) -> Iterator[Path | None]:
    """A disk of memory, not yet full; None where none can be had."""
    folder.mkdir()
    folder.chmod(0o755)
    size = f"size={SMALL_MB}m,mode=755"
    done = (
        may_mount() and not subprocess.run(["mount", "-t", "tmpfs", "-o", size, "none", folder], check=False).returncode
    )
    try:
        yield folder if done else None
    finally:
        if done:
            subprocess.run(["umount", "-l", folder], check=True)


def filled(disk: Path) -> Path:
    """All that is left of it is taken by one file of zeros."""
    file = disk / "zeros"
    with contextlib.suppress(OSError), file.open("wb", buffering=0) as zeros:
        while zeros.write(bytes(1 << 16)):
            pass
    return file


async def full_disk(at: Scene) -> Row:
    """Guests press until it is noticed (what fits into pages that are there already is still stored)."""
    await at.done(at.press())
    if at.disk is not None:
        over = filled(at.disk).unlink
        did = f"a disk of {SMALL_MB} MB filled up; emptied again"
    else:
        over = _no_longer_files(at)
        did = "limit on file sizes; lifted again"
    early = False
    waiting: list[Update] = []
    for _ in range(MOST_PRESSES):
        waiting.append(at.press())
        with contextlib.suppress(TimeoutError):
            await until(lambda: at.acknowledged(waiting[-1]) or STORAGE_LINE in at.bot.said(), SOON_S)
        if STORAGE_LINE in at.bot.said():
            early = at.acknowledged(waiting[-1])
            break
    over()
    for pressed in waiting:
        await at.done(pressed)
    return await _row(at, "disk full", did, early or STORAGE_LINE not in at.bot.said())


def _no_longer_files(at: Scene) -> Callable[[], None]:
    log = at.file.with_name("tureen.db-wal")
    largest = max(f.stat().st_size for f in (at.file, log) if f.exists())
    before = resource.prlimit(at.bot.pid, resource.RLIMIT_FSIZE)
    # Nothing may grow any more; the log that collects changes must grow to take one.
    resource.prlimit(at.bot.pid, resource.RLIMIT_FSIZE, (min(largest, log.stat().st_size), before[1]))

    def lifted() -> None:
        resource.prlimit(at.bot.pid, resource.RLIMIT_FSIZE, before)

    return lifted


async def locked(at: Scene, seconds: float = 12.0) -> Row:
    async with _holding(at):
        pressed = at.press()
        await asyncio.sleep(seconds)
        early = at.acknowledged(pressed)
    await at.done(pressed)
    return await _row(at, "locked", f"another program held the database for {seconds:.0f} s", early)


@contextlib.asynccontextmanager
async def _holding(at: Scene) -> AsyncIterator[None]:
    if at.database == "SQLite":
        other = sqlite3.connect(at.file, isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        yield
        other.execute("ROLLBACK")
        other.close()
        return
    engine = create_async_engine(at.url)
    async with engine.connect() as conn:
        await conn.execute(text("LOCK TABLE potluck, guest, action, post IN ACCESS EXCLUSIVE MODE"))
        yield
        await conn.rollback()
    await engine.dispose()


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
        {line.split("]", 1)[-1].split("  ")[0].strip() for line in at.bot.said().splitlines() if "warning" in line}
    )
    lost = at.presses - stored if what != "clock set back" else at.presses + 1 - stored
    return Row(
        what,
        at.database,
        did,
        lost,
        0,
        int(wrong),
        (f"{at.presses} presses, all acknowledged in the end", *(f"said: {s}" for s in said)),
    )


TROUBLES: dict[str, tuple[Callable[[Scene], Awaitable[Row]], dict[str, object]]] = {
    "disk full": (full_disk, {"small_disk": True}),
    "locked": (locked, {}),
    "clock set back": (clock_set_back, {}),
    "no name service": (no_names, {"no_names_s": 3.0}),
}


async def on(what: str, database: str = "SQLite", **other: object) -> Row:
    trouble, settings = TROUBLES[what]
    async with scene(database, **{**settings, **other}) as at:
        return await trouble(at)


async def rows(args: argparse.Namespace) -> list[Row]:
    found = []
    for database in databases(args.database):
        for what in TROUBLES:
            if what == "disk full" and database != "SQLite" and not may_mount():
                note = ("not tried: mounting a disk of its own takes root",)
                found.append(Row(what, database, "nothing", 0, 0, 0, note))
                continue
            found.append(await on(what, database))
    return found
