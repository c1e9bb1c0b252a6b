"""Small helpers for statements that both databases understand."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache
from typing import Any

from sqlalchemy import Table, bindparam, delete, insert
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import Connection
from sqlalchemy.sql import Executable

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
    return insert(table).returning(table.c.id, sort_by_parameter_order=True)


@cache
def _delete_from(table: Table) -> Any:
    return delete(table).where(table.c.potluck_id == bindparam("p_id"), table.c.position >= bindparam("p_from"))


def put(conn: Connection, table: Table, rows: Rows, keep: tuple[str, ...] = ()) -> None:
    if rows:
        conn.execute(upsert(conn.dialect.name, table, keep), rows)


def add(conn: Connection, table: Table, rows: Rows) -> None:
    if rows:
        conn.execute(_insert(table), rows)


def add_counted(conn: Connection, table: Table, rows: Rows) -> list[int]:
    """Insert rows whose `id` the database counts up; returns the ids in the rows' order."""
    if not rows:
        return []
    if len(rows) == 1:
        key = conn.execute(_insert(table), rows[0]).inserted_primary_key
        assert key is not None
        return [int(key[0])]
    return [int(i) for i in conn.scalars(_insert_returning(table), rows)]


def cut(conn: Connection, table: Table, froms: Iterable[tuple[str, int]]) -> None:
    """Delete the rows of (potluck, from this position on)."""
    params = [{"p_id": p, "p_from": n} for p, n in froms]
    if params:
        conn.execute(_delete_from(table), params)
