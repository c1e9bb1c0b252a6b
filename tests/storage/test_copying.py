"""A copy is the same as the original or it is refused."""

from __future__ import annotations

import asyncio
import os
from pathlib import Path

import pytest
from sqlalchemy import update

from bot.storage import Batch, CopyFailed, Post, StorageError, Store, copy_all, copying, schema
from planning.potluck import Promise
from tests.storage.helpers import CHAT, NOW, change, stored, with_promise
from tests.storage.test_privacy import filled


@pytest.fixture
def empty_url(request: pytest.FixtureRequest, url: str, tmp_path: Path) -> str:
    """An empty database of the other kind."""
    if url.startswith("sqlite"):
        return str(request.getfixturevalue("empty_postgres"))
    return f"sqlite+aiosqlite:///{tmp_path / 'other.db'}"


async def test_everything_moves_to_the_other_kind_of_database_and_back(
    store: Store, empty_url: str, tmp_path: Path
) -> None:
    await filled(store)
    original = await store.fingerprint()
    async with await Store.open(empty_url) as there:
        counts = await copy_all(store, there)
        async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'back.db'}") as back:
            await copy_all(there, back)
            assert await there.fingerprint() == await back.fingerprint() == original
            assert await back.potluck("p1") == await store.potluck("p1")

    assert counts["guest"] == 5
    assert counts["reminder"] == 3
    assert counts["recollection"] == 5


async def test_a_moved_database_goes_on_counting(store: Store, empty_url: str) -> None:
    await filled(store)
    (*_, last) = await store.pending_posts()
    async with await Store.open(empty_url) as there:
        await copy_all(store, there)
        done = await there.commit(Batch(NOW, posts=(Post(CHAT, "sendMessage"),)))

    assert done.posts[0].id > last.id


async def test_a_database_that_has_something_is_not_copied_into(store: Store, empty_url: str) -> None:
    async with await Store.open(empty_url) as there:
        await stored(there)
        with pytest.raises(StorageError) as refused:
            await copy_all(store, there)

    assert refused.value.key == "copy-target-not-empty"


async def test_a_copy_that_differs_is_refused_and_leaves_nothing(
    store: Store, empty_url: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    await filled(store)
    whole = copying._insert

    def careless(conn: object, table: object, rows: object) -> None:
        whole(conn, table, rows)  # type: ignore[arg-type]
        if table is schema.guest:
            conn.execute(update(schema.guest).where(schema.guest.c.id == "1").values(name="Someone"))  # type: ignore[attr-defined]

    monkeypatch.setattr(copying, "_insert", careless)
    async with await Store.open(empty_url) as there:
        with pytest.raises(CopyFailed) as refused:
            await copy_all(store, there)
        assert await there.potluck("p1") is None

    assert refused.value.facts == {"tables": "guest"}


async def test_a_backup_is_one_file_that_opens_and_holds_everything(store: Store, tmp_path: Path) -> None:
    await filled(store)

    await store.backup(tmp_path / "backup.db")

    assert [name for name in os.listdir(tmp_path) if name.startswith("backup")] == ["backup.db"]
    async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'backup.db'}") as again:
        assert await again.fingerprint() == await store.fingerprint()


async def test_a_backup_never_overwrites(store: Store, tmp_path: Path) -> None:
    await store.backup(tmp_path / "backup.db")

    with pytest.raises(StorageError):
        await store.backup(tmp_path / "backup.db")


async def test_a_backup_while_people_answer_holds_one_moment(store: Store, tmp_path: Path) -> None:
    before = await stored(store)

    async def answer() -> None:
        seen = before
        for n in range(20):
            after = with_promise(seen.potluck, Promise(f"d{n}", "1", "rolls", "bread"))
            await change(store, seen, after, posts=(Post(CHAT, "sendMessage"),))
            found = await store.potluck("p1")
            assert found is not None
            seen = found

    await asyncio.gather(answer(), store.backup(tmp_path / "backup.db"))

    async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'backup.db'}") as again:
        kept = await again.potluck("p1")
        assert kept is not None
        assert len(kept.potluck.promises) == len(await again.pending_posts()) == kept.revision - 1
