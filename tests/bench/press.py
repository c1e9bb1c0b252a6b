"""A guest presses Coming or Maybe: the whole bot on SQLite beside bare client-library bots.

Every press of the whole bot is a change: read, checked, committed with its disk flush (SQLite, WAL,
synchronous=FULL), acknowledged; boards are edited within the platform's limits. Bots run in processes
of their own, one at a time, in turns; ratios are taken within one round, since the machine is shared.
"""

from __future__ import annotations

import asyncio
import pstats
import signal
import statistics
import sys
import tempfile
from collections import defaultdict
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import psutil

from bot.clock import RealClock
from tests.bench.platform import Platform

GROUPS = 20
GUESTS = 40
PRESSES = 1500
STEADY_PER_S = 20
STEADY_S = 10
WARM_UP = 200


@dataclass
class Measured:
    """All times in seconds; memory in MB; CPU seconds of the bot's process."""

    per_s: float = 0.0
    cpu_ms: float = 0.0
    steady: list[float] = field(default_factory=list)
    resting_mb: float = 0.0
    lost: int = 0


CHATS = tuple(-1000 - g for g in range(GROUPS))


async def with_clocks(url: str) -> None:
    """A database in which every group has said which clock it lives by."""
    from bot.storage import Batch, ChatRecord, Store

    async with await Store.open(url) as store:
        chats = tuple(ChatRecord(c, "group", f"Group {c}", timezone="America/Chicago") for c in CHATS)
        await store.commit(Batch(now=RealClock().now(), chats=chats))


class Bot:
    def __init__(
        self, which: str, platform: Platform, folder: Path, profile: Path | None = None, database: str | None = None
    ) -> None:
        self._args = [which, platform.url, database or f"sqlite+aiosqlite:///{folder / f'{which}.db'}"]
        self._args += [str(profile)] if profile else []
        self._platform = platform
        self.which = which

    async def __aenter__(self) -> Bot:
        if self.which == "tureen":
            await with_clocks(self._args[2])
        self._process = await asyncio.create_subprocess_exec(sys.executable, "-m", "tests.bench.child", *self._args)
        self.about = psutil.Process(self._process.pid)
        async with asyncio.timeout(60):
            polled = asyncio.create_task(self._platform.first_poll.wait())
            died = asyncio.create_task(self._process.wait())
            await asyncio.wait({polled, died}, return_when=asyncio.FIRST_COMPLETED)
        died.cancel()
        if self._process.returncode is not None:
            raise RuntimeError(f"{self.which} did not start")
        return self

    async def __aexit__(self, *_: object) -> None:
        if self._process.returncode is None:
            self._process.terminate()
            try:
                async with asyncio.timeout(20):
                    await self._process.wait()
            except TimeoutError:
                self._process.kill()

    def cpu_s(self) -> float:
        used = self.about.cpu_times()
        return float(used.user + used.system)

    def memory_mb(self) -> float:
        return float(self.about.memory_info().rss) / 1e6


async def measure(
    which: str,
    folder: Path,
    *,
    presses: int = PRESSES,
    delay_s: float = 0.0,
    profile: Path | None = None,
    steady: bool = True,
    database: str | None = None,
) -> Measured:
    async with Platform(delay_s) as platform, Bot(which, platform, folder, profile, database) as bot:
        presser = Presser(platform, which)
        await presser.set_up()
        await asyncio.sleep(1.0)
        found = Measured(resting_mb=bot.memory_mb())
        await presser.burst(WARM_UP)
        if profile is not None:
            bot.about.send_signal(signal.SIGUSR1)
        cpu, began = bot.cpu_s(), asyncio.get_running_loop().time()
        await presser.burst(presses)
        seconds = asyncio.get_running_loop().time() - began
        found.per_s = presses / seconds
        if profile is not None:
            bot.about.send_signal(signal.SIGUSR2)
        found.cpu_ms = (bot.cpu_s() - cpu) / presses * 1000
        if steady:
            await asyncio.sleep(1.0)
            found.steady = await presser.steady(STEADY_PER_S, STEADY_S)
        found.lost = presser.pressed - len(platform.answered_s)
    return found


class Presser:
    def __init__(self, platform: Platform, which: str) -> None:
        self._platform = platform
        self._real = which == "tureen"
        self._next = 0
        self.pressed = 0
        self._buttons: dict[int, list[str]] = {}

    async def set_up(self) -> None:
        """The whole bot gets a potluck in every group and the buttons come from its boards."""
        if not self._real:
            self._buttons = {c: ["yes", "maybe"] for c in CHATS}
            return
        for chat in CHATS:
            self._platform.say(chat, 1, "/potluck in 12 days 5pm, about 40 people")
        async with asyncio.timeout(60):
            while len(self._coming()) < GROUPS:  # noqa: ASYNC110
                await asyncio.sleep(0.05)
        self._buttons = self._coming()

    def _coming(self) -> dict[int, list[str]]:
        found = {}
        for chat, rows in self._platform.keyboards.items():
            labelled = {b["text"]: b["callback_data"] for row in rows for b in row if "callback_data" in b}
            wanted = [next((d for t, d in labelled.items() if word in t), None) for word in ("Coming", "Maybe")]
            if all(wanted):
                found[chat] = [w for w in wanted if w]
        return found

    def press(self) -> None:
        """Round the groups; a guest's answer flips at each of their turns, so every press changes something."""
        n, self._next = self._next, self._next + 1
        chats = sorted(self._buttons)
        chat = chats[n % GROUPS]
        turn = n // GROUPS
        guest, flip = turn % GUESTS, (turn // GUESTS) % 2
        message = self._platform.board.get(chat, 1)
        self._platform.press(chat, 100 + guest, message, self._buttons[chat][flip])
        self.pressed += 1

    async def burst(self, presses: int) -> None:
        for _ in range(presses):
            self.press()
        await self._platform.answers(self.pressed)

    async def steady(self, per_s: int, seconds: int) -> list[float]:
        first = len(self._platform.answered_s)
        loop = asyncio.get_running_loop()
        began = loop.time()
        for n in range(per_s * seconds):
            await asyncio.sleep(max(0.0, began + n / per_s - loop.time()))
            self.press()
        await self._platform.answers(self.pressed)
        return self._platform.answered_s[first:]


def percentile(values: list[float], share: float) -> float:
    return sorted(values)[min(len(values) - 1, int(share * len(values)))] if values else float("nan")


def where_time_goes(profile: Path, presses: int) -> list[tuple[str, float]]:
    """Own time in milliseconds a press, by part of the program."""
    parts: dict[str, float] = defaultdict(float)
    for (file, _, name), (_, _, own, _, _) in pstats.Stats(str(profile)).stats.items():  # type: ignore[attr-defined]
        parts[_part(file, name)] += own
    return sorted(((p, s / presses * 1000) for p, s in parts.items()), key=lambda x: -x[1])


def _part(file: str, name: str) -> str:
    if file == "~":
        return "sqlite itself" if "sqlite3" in name else "waiting for the network" if "epoll" in name else "built-ins"
    path = Path(file).as_posix()
    if "/site-packages/" in path:
        return path.split("/site-packages/")[1].split("/")[0].removesuffix(".py")
    for own in ("planning/", "bot/"):
        if own in path:
            rest = path.split(own, 1)[1].split("/")
            return own + (rest[0].removesuffix(".py"))
    return "python: " + Path(file).parent.name if "asyncio" in path else "python's library"


async def run(rounds: int = 3) -> list[str]:
    """The lines to print."""
    lines = []
    found: dict[str, list[Measured]] = defaultdict(list)
    with tempfile.TemporaryDirectory() as name:
        for n in range(rounds):
            for which in ("bare", "tureen", "bare-aiohttp"):
                folder = Path(name) / f"{n}"
                folder.mkdir(exist_ok=True)
                found[which].append(await measure(which, folder))
        slow = {w: await measure(w, Path(name), delay_s=0.05, presses=600, steady=False) for w in ("bare", "tureen")}
        profile = Path(name) / "profile"
        (Path(name) / "profiled").mkdir()
        await measure("tureen", Path(name) / "profiled", profile=profile, steady=False, presses=1000)
        parts = where_time_goes(profile, 1000)
    lines.append(f"A press on Coming or Maybe, {GROUPS} groups of {GUESTS} guests, {rounds} rounds in turns (median)")
    head = ("presses/s", 10), ("to bare", 9), ("CPU ms", 8), ("p50 ms", 8), ("p99 ms", 8), ("rest MB", 9), ("lost", 6)
    lines.append(f"{'bot':<14}" + "".join(f"{name:>{width}}" for name, width in head))
    for which, all_ in found.items():
        ratio = statistics.median(m.per_s / b.per_s for m, b in zip(all_, found["bare"], strict=True))
        lines.append(
            f"{which:<14}{_mid(m.per_s for m in all_):>10.0f}{ratio:>9.2f}{_mid(m.cpu_ms for m in all_):>8.2f}"
            f"{_mid(percentile(m.steady, 0.5) for m in all_) * 1000:>8.1f}"
            f"{_mid(percentile(m.steady, 0.99) for m in all_) * 1000:>8.1f}"
            f"{_mid(m.resting_mb for m in all_):>9.0f}{sum(m.lost for m in all_):>6}"
        )
    lines.append(f"p50, p99: at {STEADY_PER_S} presses a second, from press to acknowledgement (after the commit)")
    lines.append("A platform that answers after 50 ms: " + ", ".join(f"{w} {m.per_s:.0f}/s" for w, m in slow.items()))
    lines.append("Where the whole bot's time goes, own ms a press, profiled (which slows Python, not SQLite):")
    lines += [f"  {part:<28}{ms:>7.3f}" for part, ms in parts[:14]]
    return lines


def _mid(values: Any) -> float:
    return float(statistics.median(values))
