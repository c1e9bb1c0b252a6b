"""When the database can't be used there is one clear word for it, and nothing is half written."""

from __future__ import annotations

import asyncio
import os
import signal
import sqlite3
import subprocess
import sys
from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from sqlalchemy import text
from sqlalchemy.engine import Connection

from bot.health import check_database
from bot.storage import Batch, ChatRecord, Post, StorageTrouble, Store
from bot.storage.engine import SqliteRunner
from tests.storage.helpers import CHAT, NOW, change, potluck, stored, with_guest

PROJECT = Path(__file__).parents[2]


def started(arguments: list[str]) -> subprocess.Popen[str]:
    env = {**os.environ, "PYTHONPATH": str(PROJECT)}
    return subprocess.Popen([sys.executable, *arguments], stdout=subprocess.PIPE, env=env, cwd=PROJECT, text=True)


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "tureen.db"


@pytest.fixture
async def sqlite(file: Path) -> AsyncIterator[Store]:
    async with await Store.open(f"sqlite+aiosqlite:///{file}", busy_ms=50) as opened:
        yield opened


async def test_a_database_another_program_has_locked_is_told_and_recovers(sqlite: Store, file: Path) -> None:
    before = await stored(sqlite)
    other = sqlite3.connect(file, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")

    with pytest.raises(StorageTrouble) as told:
        await change(sqlite, before, with_guest(before.potluck, "1", travel_min=5))
    other.execute("ROLLBACK")
    other.close()

    assert told.value.key == "storage-locked"
    assert await sqlite.potluck("p1") == before
    await change(sqlite, before, with_guest(before.potluck, "1", travel_min=5))


async def test_a_lock_that_is_let_go_in_time_is_only_waited_for(file: Path) -> None:
    async with await Store.open(f"sqlite+aiosqlite:///{file}", busy_ms=20_000) as store:
        before = await stored(store)
        code = (
            "import sqlite3, sys, time; c = sqlite3.connect(sys.argv[1], isolation_level=None);"
            "c.execute('BEGIN IMMEDIATE'); print('locked', flush=True); time.sleep(0.3); c.execute('ROLLBACK')"
        )
        with started(["-c", code, str(file)]) as other:
            assert other.stdout is not None
            other.stdout.readline()
            done = await change(store, before, with_guest(before.potluck, "1", travel_min=5))

    assert done.revisions == {"p1": 2}


async def test_a_full_disk_is_told_leaves_nothing_and_recovers(sqlite: Store) -> None:
    before = await stored(sqlite)
    running = sqlite._runner
    assert isinstance(running, SqliteRunner)
    assert running._writer is not None
    pages = running._writer.exec_driver_sql("PRAGMA page_count").scalar_one()
    running._writer.exec_driver_sql(f"PRAGMA max_page_count={pages}")

    with pytest.raises(StorageTrouble) as told:
        await change(
            sqlite,
            before,
            with_guest(before.potluck, "1", name="x" * 100_000),
            update_id=3,
            posts=(Post(CHAT, "sendMessage"),),
        )

    assert told.value.key == "storage-full"
    assert await sqlite.potluck("p1") == before
    assert await sqlite.pending_posts() == ()
    # The trouble threw the connection away, and the limit with it: there is room again.
    await change(sqlite, before, with_guest(before.potluck, "1", travel_min=5), update_id=3)


@pytest.fixture
def letter(file: Path) -> Path:
    file.write_bytes(b"This is not a database. " * 500)
    return file


async def test_a_file_that_is_no_database_is_told(letter: Path) -> None:
    with pytest.raises(StorageTrouble) as told:
        await Store.open(f"sqlite+aiosqlite:///{letter}")

    assert told.value.key == "storage-corrupt"


async def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(StorageTrouble) as told:
        await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'nowhere' / 'tureen.db'}")

    assert told.value.key == "storage-gone"


async def test_a_server_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(StorageTrouble) as told:
        await Store.open(f"postgresql+asyncpg://postgres@/postgres?host={tmp_path}")

    assert told.value.key == "storage-gone"


async def test_a_server_database_that_is_not_there_is_told(postgres: str) -> None:
    with pytest.raises(StorageTrouble) as told:
        await Store.open(postgres.replace("/postgres?", "/nowhere?"))

    assert told.value.key == "storage-gone"


async def test_connections_the_server_has_closed_are_opened_again(empty_postgres: str) -> None:
    kill = text(
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
        " WHERE pid <> pg_backend_pid() AND datname = current_database()"
    )
    async with await Store.open(empty_postgres) as store, await Store.open(empty_postgres) as other:
        before = await stored(store)

        await other._runner.glance(lambda conn: conn.execute(kill) and None)
        assert await store.potluck("p1") == before
        await other._runner.glance(lambda conn: conn.execute(kill) and None)
        await change(store, before, with_guest(before.potluck, "1", travel_min=5))


async def test_sqlite_is_set_so_that_a_commit_survives_a_power_loss(sqlite: Store) -> None:
    await sqlite.commit(Batch(NOW, update_id=1))
    running = sqlite._runner
    assert isinstance(running, SqliteRunner)
    assert running._writer is not None

    found = {
        p: running._writer.exec_driver_sql(f"PRAGMA {p}").scalar()
        for p in ("journal_mode", "synchronous", "foreign_keys")
    }

    # synchronous 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
    assert found == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1}


@pytest.mark.parametrize("answers", [1, 7, 40])
async def test_a_process_killed_while_it_commits_leaves_whole_changes_only(url: str, answers: int) -> None:
    async with await Store.open(url) as store:
        await stored(store, potluck(guests=1))
    with started(["-m", "tests.storage.killed", url]) as child:
        assert child.stdout is not None
        for _ in range(answers):
            acknowledged = int(child.stdout.readline())
        child.send_signal(signal.SIGKILL)

    async with await Store.open(url) as store:
        now = await store.potluck("p1")
        assert now is not None
        changes = now.revision - 1
        p = now.potluck
        assert changes >= acknowledged
        assert [d.id for d in p.promises] == [f"d{n}" for n in range(1, changes + 1)]
        assert p.guests[0].travel_min == changes
        assert [x.payload["n"] for x in await store.pending_posts(10_000)] == list(range(1, changes + 1))
        assert len(await store.actions_since("p1")) == changes
        assert [r.key for r in await store.reminders_of("p1") if r.state == "pending"] == [f"k{changes}"]
        assert await store.seen_update(changes)
        assert not await store.seen_update(changes + 1)


async def test_a_change_after_a_claim_that_may_be_undone_is_still_flushed(sqlite: Store) -> None:
    running = sqlite._runner
    assert isinstance(running, SqliteRunner)
    asked: list[int] = []

    def note(conn: Connection) -> None:
        asked.append(int(conn.exec_driver_sql("PRAGMA synchronous").scalar()))  # type: ignore[arg-type]

    for lasting in (True, False, False, True):
        await running.write(note, lasting=lasting)
    await asyncio.gather(sqlite._writer.job(note, lasting=False), sqlite._writer.job(note))
    await sqlite._writer.job(note, lasting=False)

    # 2 is FULL, 1 NORMAL; who shares a transaction with one that lasts is flushed with it.
    assert asked == [2, 1, 1, 2, 2, 2, 1]


async def test_a_file_that_need_not_outlive_a_power_cut_never_waits_for_the_disk_and_is_there_all_the_same(
    file: Path,
) -> None:
    url, asked = f"sqlite+aiosqlite:///{file}", list[int]()

    def note(conn: Connection) -> None:
        asked.append(int(conn.exec_driver_sql("PRAGMA synchronous").scalar()))  # type: ignore[arg-type]

    async with await Store.open(url, durable=False) as quick:
        for lasting in (True, False, True):
            await quick._runner.write(note, lasting=lasting)
        await quick.commit(Batch(now=NOW, chats=(ChatRecord(-1, "group", timezone="UTC"),)))
    async with await Store.open(url) as again:
        kept = await again.chat(-1)

    assert asked == [0, 0, 0]  # OFF
    assert kept is not None


async def test_postgres_waits_for_the_disk_but_for_what_may_be_undone(empty_postgres: str) -> None:
    asked: list[object] = []

    def note(conn: Connection) -> None:
        asked.append(conn.execute(text("SHOW synchronous_commit")).scalar())

    async with await Store.open(empty_postgres, pool_size=1) as store:
        for lasting in (True, False, True):
            await store._runner.write(note, lasting=lasting)

    assert asked == ["on", "off", "on"]


async def test_a_server_that_does_not_wait_for_its_disk_is_told_and_one_file_always_does(
    empty_postgres: str, sqlite: Store, file: Path
) -> None:
    # These tests' own server has fsync off.
    told = {f.key: f.ok for f in await check_database(empty_postgres)}
    beside = {f.key: f.ok for f in await check_database(f"sqlite+aiosqlite:///{file}")}

    assert told["check-durable-bad"] is False
    assert beside["check-durable-ok"] is True
