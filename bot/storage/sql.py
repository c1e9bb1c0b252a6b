"""Small helpers for statements that both databases understand."""

from __future__ import annotations

from collections import namedtuple
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import cache
from typing import Any

from sqlalchemy import Table, bindparam, delete, insert
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import Connection
from sqlalchemy.sql import Executable

Rows = Sequence[dict[str, Any]]
_SQLITE: Any = sqlite.dialect()


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


def ask(conn: Connection, statement: Any, params: Mapping[str, Any]) -> list[Any]:
    """The rows of a reading statement, which must be one of the module-level ones: it is prepared once.

    On SQLite without SQLAlchemy's execution around it, as in `run`.
    """
    if conn.dialect.name != "sqlite":
        return list(conn.execute(statement, params))
    text, values, row = _questions(statement, tuple(params))
    raw: Any = conn.connection.driver_connection
    return [row(found) for found in raw.execute(text, values(params))]


@cache
def _questions(statement: Any, names: tuple[str, ...]) -> tuple[str, Any, Callable[[tuple[Any, ...]], Any]]:
    """The statement's text, what makes its values, and what makes a row of what SQLite returns."""
    text, values = _prepared(statement, names)
    columns = list(statement.selected_columns)
    makers = [c.type.dialect_impl(_SQLITE).result_processor(_SQLITE, None) for c in columns]
    converted = [(i, maker) for i, maker in enumerate(makers) if maker is not None]
    kind: Any = namedtuple("Row", [c.key for c in columns])  # type: ignore[misc]

    def row(found: tuple[Any, ...]) -> Any:
        values = list(found)
        for i, maker in converted:
            values[i] = maker(values[i])
        return kind(*values)

    return text, values, row


def run(conn: Connection, statement: Any, rows: Rows) -> None:
    """Execute a writing statement once for each row, when nothing is asked back.

    On SQLite without SQLAlchemy's execution around it, which takes several times as long as the
    database does; the statement's text and the values' conversions are still SQLAlchemy's.
    """
    if not rows:
        return
    if conn.dialect.name != "sqlite":
        conn.execute(statement, rows)
        return
    text, values = _prepared(statement, tuple(rows[0]))
    raw: Any = conn.connection.driver_connection
    if len(rows) == 1:
        raw.execute(text, values(rows[0]))
    else:
        raw.executemany(text, [values(row) for row in rows])


@cache
def _prepared(statement: Any, names: tuple[str, ...]) -> tuple[str, Callable[[Mapping[str, Any]], list[Any]]]:
    """The statement's text and what turns a row into its values, in the order of the text's marks."""
    compiled = statement.compile(dialect=_SQLITE, column_keys=list(names))
    places: list[tuple[str | None, Any]] = []
    for name in compiled.positiontup:
        convert = compiled.binds[name].type.dialect_impl(_SQLITE).bind_processor(_SQLITE)
        if name in names:
            places.append((name, convert))
        else:  # a constant of the statement itself
            value = compiled.params[name]
            places.append((None, convert(value) if convert else value))

    def values(row: Mapping[str, Any]) -> list[Any]:
        return [c if name is None else c(row[name]) if c else row[name] for name, c in places]

    return compiled.string, values


def put(conn: Connection, table: Table, rows: Rows, keep: tuple[str, ...] = ()) -> None:
    if rows:
        run(conn, upsert(conn.dialect.name, table, keep), rows)


def add(conn: Connection, table: Table, rows: Rows) -> None:
    run(conn, _insert(table), rows)


def add_counted(conn: Connection, table: Table, rows: Rows) -> list[int]:
    """Insert rows whose `id` the database counts up; returns the ids in the rows' order."""
    if not rows:
        return []
    if conn.dialect.name == "sqlite":
        text, values = _prepared(_insert(table), tuple(rows[0]))
        raw: Any = conn.connection.driver_connection
        return [raw.execute(text, values(row)).lastrowid for row in rows]
    if len(rows) == 1:
        key = conn.execute(_insert(table), rows[0]).inserted_primary_key
        assert key is not None
        return [int(key[0])]
    return [int(i) for i in conn.scalars(_insert_returning(table), rows)]


def cut(conn: Connection, table: Table, froms: Iterable[tuple[str, int]]) -> None:
    """Delete the rows of (potluck, from this position on)."""
    run(conn, _delete_from(table), [{"p_id": p, "p_from": n} for p, n in froms])
