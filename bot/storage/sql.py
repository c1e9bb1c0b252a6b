"""Small helpers for statements that both databases understand."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import Any

from sqlalchemy import Table, bindparam, delete, insert
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import Connection
from sqlalchemy.sql import Executable

from bot.storage.prepared import ask, count, execute, insert_counted

__all__ = ["add", "add_counted", "ask", "count", "cut", "first", "put", "run", "upsert"]

Rows = Sequence[dict[str, Any]]


@cache
def upsert(dialect: str, table: Table, keep: tuple[str, ...] = ()) -> Executable:
    """INSERT that overwrites the row with the same primary key, but for the columns in `keep`."""
    maker: Any = postgresql.insert if dialect == "postgresql" else sqlite.insert
    statement = maker(table)
    keys = [c.name for c in table.primary_key.columns]
    new = {c.name: statement.excluded[c.name] for c in table.columns if c.name not in keys and c.name not in keep}
    return statement.on_conflict_do_update(index_elements=keys, set_=new)  # type: ignore[no-any-return]


@cache
def _insert(table: Table) -> Any:
    return insert(table)


@cache
def _insert_returning(table: Table) -> Any:
    return insert(table).returning(table.c.id)


@cache
def _delete_from(table: Table) -> Any:
    return delete(table).where(table.c.potluck_id == bindparam("p_id"), table.c.position >= bindparam("p_from"))


def first(conn: Connection, statement: Any, params: Mapping[str, Any]) -> Any:
    """The first row, or None."""
    return next(iter(ask(conn, statement, params)), None)


def run(conn: Connection, statement: Any, rows: Rows) -> None:
    """Execute a writing statement once for each row, when nothing is asked back."""
    if rows:
        execute(conn, statement, rows)


def put(conn: Connection, table: Table, rows: Rows, keep: tuple[str, ...] = ()) -> None:
    if rows:
        run(conn, upsert(conn.dialect.name, table, keep), rows)


def add(conn: Connection, table: Table, rows: Rows) -> None:
    run(conn, _insert(table), rows)


def add_counted(conn: Connection, table: Table, rows: Rows) -> list[int]:
    """Insert rows whose `id` the database counts up; returns the ids in the rows' order."""
    return insert_counted(conn, _insert(table), _insert_returning(table), rows) if rows else []


def cut(conn: Connection, table: Table, froms: Iterable[tuple[str, int]]) -> None:
    """Delete the rows of (potluck, from this position on)."""
    run(conn, _delete_from(table), [{"p_id": p, "p_from": n} for p, n in froms])
