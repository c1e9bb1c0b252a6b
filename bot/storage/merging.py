"""Changes to chats and people: only what was changed is written.

A chat's record is written from several sides (a host's setting, the bot made admin, the courier's
notes in `settings`); writing a whole record read a moment ago would take the others' changes back.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields, replace
from typing import Any, TypeVar

from sqlalchemy import Table, bindparam, select
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.records import chat_from, chat_row, person_from, person_row
from bot.storage.sql import put
from bot.storage.values import ChatRecord, PersonRecord

R = TypeVar("R", ChatRecord, PersonRecord)
_locked = {
    table: select(table).where(table.c.id.in_(bindparam("ids", expanding=True))).order_by(table.c.id).with_for_update()
    for table in (t.chat, t.person)
}


def merged(current: R, before: R, after: R) -> R:
    """`current` with what differs between `before` and `after`; a mapping differs key by key."""
    changed: dict[str, Any] = {}
    for f in fields(after):
        old, new = getattr(before, f.name), getattr(after, f.name)
        if old != new:
            mapping = isinstance(new, Mapping)
            changed[f.name] = _merged_keys(getattr(current, f.name), old, new) if mapping else new
    return replace(current, **changed)


def _merged_keys(current: Mapping[str, Any], old: Mapping[str, Any], new: Mapping[str, Any]) -> dict[str, Any]:
    kept = {k: v for k, v in current.items() if k in new or k not in old}
    return kept | {k: v for k, v in new.items() if k not in old or old[k] != v}


def _write(
    conn: Connection,
    table: Table,
    pairs: Sequence[tuple[R, R]],
    back: Callable[[Any], R],
    row: Callable[[R], dict[str, Any]],
) -> None:
    if not pairs:
        return
    ids = sorted({after.id for _, after in pairs})
    now = {r.id: back(r) for r in conn.execute(_locked[table], {"ids": ids})}
    for before, after in pairs:
        current = now.get(after.id)
        now[after.id] = after if current is None else merged(current, before, after)
    put(conn, table, [row(now[i]) for i in ids])


def change_chats(conn: Connection, pairs: Sequence[tuple[ChatRecord, ChatRecord]]) -> None:
    _write(conn, t.chat, pairs, chat_from, chat_row)


def change_people(conn: Connection, pairs: Sequence[tuple[PersonRecord, PersonRecord]]) -> None:
    _write(conn, t.person, pairs, person_from, person_row)
