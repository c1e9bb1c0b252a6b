"""The machine's trouble, in short: each ends by itself and is told in one line."""

from __future__ import annotations

import asyncio
import os
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from bot.clock import SimulatedClock
from bot.commands import run
from bot.storage import StorageTrouble
from tests.faults import crowd, machine
from tests.faults.chat import START
from tests.faults.platform import TOKEN, Platform
from tests.faults.stage import PROJECT
from tests.faults.table import table


@pytest.mark.parametrize("what", ["disk full", "no name service"])
async def test_the_bot_goes_on_by_itself_after(what: str) -> None:
    row = await machine.on(what, small_disk=False)

    assert not row.bad, table([row])


async def test_a_crowd_is_counted_and_the_group_limit_kept() -> None:
    row = await crowd.one_group("SQLite", 200, 2.0)

    assert not row.bad, table([row])


async def test_many_groups_at_once_all_get_their_boards() -> None:
    row = await crowd.many_groups("SQLite", 60)

    assert not row.bad, table([row])
    assert row.doubled == 0


async def started(platform: Platform, folder: Path, **settings: str) -> tuple[int, str]:
    """`run` as a person starts it; its exit code and what it said."""
    given = {
        "TUREEN_TOKEN": TOKEN, "TUREEN_API_BASE_URL": platform.url, "TUREEN_LOG": "warning",
        "TUREEN_DATABASE_URL": f"sqlite+aiosqlite:///{folder}/tureen.db", **settings,
    }  # fmt: skip
    kept = {k: v for k, v in os.environ.items() if not k.startswith("TUREEN_")}
    process = await asyncio.create_subprocess_exec(
        sys.executable, "-m", "bot", "run", cwd=PROJECT, env={**kept, **given}, stderr=subprocess.PIPE
    )
    _, said = await process.communicate()
    assert process.returncode is not None
    return process.returncode, said.decode()


async def test_a_port_that_is_taken_is_told_in_one_line(tmp_path: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        listen = f"127.0.0.1:{taken.getsockname()[1]}"
        async with Platform() as platform:
            code, said = await started(platform, tmp_path, TUREEN_METRICS_LISTEN=listen)

    assert code == 1
    assert len(said.splitlines()) == 1
    assert listen in said
    assert "TUREEN_METRICS_LISTEN" in said


async def test_a_folder_that_is_not_there_is_told_in_one_line(tmp_path: Path) -> None:
    async with Platform() as platform:
        code, said = await started(platform, tmp_path / "nowhere")

    assert code == 1
    assert len(said.splitlines()) == 1
    assert "TUREEN_DATABASE_URL" in said


async def test_a_database_server_out_of_reach_is_waited_for(empty_postgres: str, tmp_path: Path) -> None:
    clock = SimulatedClock(START)
    gone = f"postgresql+asyncpg://postgres@/postgres?host={tmp_path}"
    waiting = asyncio.create_task(run.open_patiently(gone, clock))
    for _ in range(3):
        while clock.next_wake() is None:  # noqa: ASYNC110 - it tells nobody that it sleeps
            await asyncio.sleep(0.01)
        at = clock.next_wake()
        assert at is not None
        clock.set(at)
    waiting.cancel()
    store = await run.open_patiently(empty_postgres, clock)
    await store.close()

    assert clock.now() > START


async def test_a_file_that_can_not_be_opened_is_not_waited_for(tmp_path: Path) -> None:
    with pytest.raises(StorageTrouble):
        await run.open_patiently(f"sqlite+aiosqlite:///{tmp_path}/nowhere/tureen.db", SimulatedClock(START))
