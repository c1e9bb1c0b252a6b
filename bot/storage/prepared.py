"""Statements prepared once and run on the database's driver itself.

The text of a statement and the conversions of its values are SQLAlchemy's; only its execution around
each one is left out, which takes several times as long as the database does. For statements of the
module level, whose values are given by name and never as a list (`expanding`).
"""

from __future__ import annotations

from collections import namedtuple
from collections.abc import Callable, Mapping, Sequence
from functools import cache
from typing import Any

from sqlalchemy import Double
from sqlalchemy.dialects import sqlite
from sqlalchemy.dialects.postgresql import asyncpg
from sqlalchemy.engine import Connection
from sqlalchemy.util import await_only

_DIALECTS: dict[str, Any] = {"sqlite": sqlite.dialect(), "postgresql": asyncpg.dialect()}  # type: ignore[no-untyped-call]
_OIDS = {Double: 701}
"""What PostgreSQL calls a type, where the conversion asks for it (float8)."""
_KNOWN = "prepared"
Values = Callable[[Mapping[str, Any]], list[Any]]


@cache
def prepared(dialect: str, statement: Any, names: tuple[str, ...]) -> tuple[str, Values]:
    """The statement's text and what turns a row into its values, in the order of the text's marks."""
    to = _DIALECTS[dialect]
    compiled = statement.compile(dialect=to, column_keys=list(names))
    places: list[tuple[str | None, Any]] = []
    for name in compiled.positiontup:
        convert = compiled.binds[name].type.dialect_impl(to).bind_processor(to)
        if name in names:
            places.append((name, convert))
        else:  # a constant of the statement itself
            value = compiled.params[name]
            places.append((None, convert(value) if convert else value))

    def values(row: Mapping[str, Any]) -> list[Any]:
        return [c if name is None else c(row[name]) if c else row[name] for name, c in places]

    return compiled.string, values


@cache
def row_maker(dialect: str, columns: tuple[Any, ...]) -> Callable[[Sequence[Any]], Any]:
    """What makes a row with names of what the driver returns."""
    to = _DIALECTS[dialect]
    makers = [c.type.dialect_impl(to).result_processor(to, _OIDS.get(type(c.type))) for c in columns]
    converted = [(i, maker) for i, maker in enumerate(makers) if maker is not None]
    kind: Any = namedtuple("Row", [c.key for c in columns])  # type: ignore[misc]

    def row(found: Sequence[Any]) -> Any:
        values = list(found)
        for i, maker in converted:
            values[i] = maker(values[i])
        return kind(*values)

    return row


@cache
def columns_of(statement: Any) -> tuple[Any, ...]:
    return tuple(statement.exported_columns)


def ask(conn: Connection, statement: Any, params: Mapping[str, Any]) -> list[Any]:
    """The rows of a reading statement, or of a writing one that gives rows back."""
    dialect = conn.dialect.name
    text, values = prepared(dialect, statement, tuple(params))
    row = row_maker(dialect, columns_of(statement))
    raw: Any = conn.connection.driver_connection
    if dialect == "sqlite":
        return [row(found) for found in raw.execute(text, values(params))]
    return [row(found) for found in await_only(_known(conn, raw, text).fetch(*values(params)))]


def execute(conn: Connection, statement: Any, rows: Sequence[Mapping[str, Any]]) -> None:
    """Run a writing statement once for each row."""
    dialect = conn.dialect.name
    text, values = prepared(dialect, statement, tuple(rows[0]))
    raw: Any = conn.connection.driver_connection
    if dialect == "sqlite":
        if len(rows) == 1:
            raw.execute(text, values(rows[0]))
        else:
            raw.executemany(text, [values(row) for row in rows])
    elif len(rows) == 1:
        await_only(_known(conn, raw, text).fetch(*values(rows[0])))
    else:
        # All of them on one way there and back.
        await_only(_known(conn, raw, text).executemany([values(row) for row in rows]))


def count(conn: Connection, statement: Any, row: Mapping[str, Any]) -> int:
    """Run a writing statement; how many rows it changed."""
    dialect = conn.dialect.name
    text, values = prepared(dialect, statement, tuple(row))
    raw: Any = conn.connection.driver_connection
    if dialect == "sqlite":
        return int(raw.execute(text, values(row)).rowcount)
    known = _known(conn, raw, text)
    await_only(known.fetch(*values(row)))
    return int(known.get_statusmsg().rpartition(" ")[2])


def insert_counted(conn: Connection, plain: Any, returning: Any, rows: Sequence[Mapping[str, Any]]) -> list[int]:
    """Insert rows whose `id` the database counts up; the ids in the rows' order. `returning` is `plain`
    that gives them back."""
    dialect = conn.dialect.name
    raw: Any = conn.connection.driver_connection
    if dialect == "sqlite":
        text, values = prepared(dialect, plain, tuple(rows[0]))
        return [raw.execute(text, values(row)).lastrowid for row in rows]
    text, values = prepared(dialect, returning, tuple(rows[0]))
    return [int(found[0]) for found in await_only(_known(conn, raw, text).fetchmany([values(row) for row in rows]))]


def _known(conn: Connection, raw: Any, text: str) -> Any:
    """The statement as this connection to PostgreSQL has prepared it."""
    known: dict[str, Any] = conn.info.setdefault(_KNOWN, {})
    found = known.get(text)
    if found is None:
        found = known[text] = await_only(raw.prepare(text))
    return found
