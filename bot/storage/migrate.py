"""The schema's only source: Alembic's migrations, run at the start under a lock.

SQLite: the write lock (BEGIN IMMEDIATE); PostgreSQL: an advisory lock that ends with the transaction. Whoever comes
second finds the work done. Either all migrations are applied or none.
"""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import inspect, text
from sqlalchemy.engine import Connection

from bot.storage.engine import AsyncRunner, Runner, SqliteRunner
from bot.storage.errors import StorageTrouble
from bot.storage.schema import HEAD

_LOCK = 0x7475_7265_656E  # any number nobody else uses


def revision_in(conn: Connection) -> str | None:
    """The newest migration the database has had, None for an empty one."""
    if not inspect(conn).has_table("alembic_version"):
        return None
    return conn.execute(text("SELECT version_num FROM alembic_version")).scalar()


def upgrade(conn: Connection) -> None:
    """Bring the schema up to date in the transaction `conn` is in."""
    from alembic import command
    from alembic.config import Config
    from alembic.util import CommandError

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations").replace("%", "%%"))
    config.attributes["connection"] = conn
    conn.execute(text("SELECT 1"))  # so that Alembic sees that a transaction is open and leaves it so
    try:
        command.upgrade(config, "head")
    except CommandError as error:
        # The database was written by a newer version of the bot.
        raise StorageTrouble("storage-newer", {"revision": str(revision_in(conn))}) from error


async def migrate(runner: Runner) -> None:
    if await runner.glance(revision_in) == HEAD:
        return
    if isinstance(runner, SqliteRunner):
        await runner.write(upgrade, heavy=True)
    else:
        assert isinstance(runner, AsyncRunner)
        await runner.write(_locked_upgrade)


def _locked_upgrade(conn: Connection) -> None:
    if conn.dialect.name == "postgresql":
        conn.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": _LOCK})
    upgrade(conn)
