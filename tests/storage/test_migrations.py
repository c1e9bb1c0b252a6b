"""The migrations are the schema's only source."""

from __future__ import annotations

import asyncio
import re
from pathlib import Path

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import text
from sqlalchemy.engine import Connection

from bot.storage import StorageTrouble, Store, schema
from bot.storage.engine import runner
from bot.storage.migrate import revision_in
from tests.storage.helpers import stored

MIGRATIONS = Path(schema.__file__).parent / "migrations"


def scripts() -> ScriptDirectory:
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    return ScriptDirectory.from_config(config)


@pytest.fixture(params=["sqlite", "postgresql"])
def empty(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    if request.param == "sqlite":
        return f"sqlite+aiosqlite:///{tmp_path / 'empty.db'}"
    return str(request.getfixturevalue("empty_postgres"))


async def test_the_tables_in_the_code_and_those_the_migrations_build_agree(store: Store) -> None:
    def differences(conn: Connection) -> list[object]:
        context = MigrationContext.configure(conn, opts={"compare_type": True})
        return list(compare_metadata(context, schema.metadata))

    assert await store._runner.read(differences) == []


def test_the_newest_migration_is_the_one_the_code_expects() -> None:
    assert scripts().get_heads() == [schema.HEAD]


def test_every_migration_is_named_by_date_and_what_it_does() -> None:
    names = [f.name for f in (MIGRATIONS / "versions").glob("*.py") if f.name != "__init__.py"]

    assert names
    assert [n for n in names if not re.fullmatch(r"\d{4}_\d\d_\d\d_[a-z_]+\.py", n)] == []


async def test_replicas_that_start_at_once_build_the_schema_once(empty: str) -> None:
    stores = await asyncio.gather(*(Store.open(empty) for _ in range(4)))

    await stored(stores[0])
    seen = [await s.potluck("p1") for s in stores]
    for s in stores:
        await s.close()
    assert all(s == seen[0] for s in seen)


async def test_a_start_on_an_up_to_date_database_keeps_what_is_in_it(empty: str) -> None:
    async with await Store.open(empty) as first:
        await stored(first)

    async with await Store.open(empty) as again:
        assert await again.potluck("p1") is not None


async def test_a_sound_database_says_so(empty: str) -> None:
    async with await Store.open(empty) as store:
        await stored(store)
        health = await store.health()

    assert health == {
        "kind": empty.split("+")[0],
        "revision": schema.HEAD,
        "current": True,
        "sound": True,
    }


async def test_a_database_of_a_newer_version_is_refused_and_left_alone(empty: str) -> None:
    await (await Store.open(empty)).close()
    running = runner(empty)
    await running.write(
        lambda conn: conn.execute(text("UPDATE alembic_version SET version_num = 'from_tomorrow'")) and None
    )

    with pytest.raises(StorageTrouble) as refused:
        await Store.open(empty)

    assert refused.value.key == "storage-newer"
    assert await running.read(revision_in) == "from_tomorrow"
    await running.close()


async def test_a_database_of_an_older_version_is_brought_up_to_date_and_keeps_what_is_in_it(empty: str) -> None:
    def back_and_forth(conn: Connection, down_to: str) -> None:
        config = Config()
        config.set_main_option("script_location", str(MIGRATIONS))
        config.attributes["connection"] = conn
        conn.execute(text("SELECT 1"))
        command.downgrade(config, down_to)

    async with await Store.open(empty) as store:
        await stored(store)
        await store._runner.write(lambda conn: back_and_forth(conn, "20261124_first_tables"))

    async with await Store.open(empty) as again:
        assert await again.potluck("p1") is not None
        assert await again._runner.read(revision_in) == schema.HEAD
