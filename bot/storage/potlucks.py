"""Potlucks in the database: reading one whole, writing only what changed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from sqlalchemy import String, any_, bindparam, or_, select, update
from sqlalchemy.dialects.postgresql import ARRAY
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.mapping import own_fields, potluck_from, potluck_row
from bot.storage.parts import PARTS
from bot.storage.records import place_from
from bot.storage.sql import add, ask, cut, put, run
from bot.storage.values import PotluckPlace, Stored
from planning.potluck import Potluck

_revision = (
    select(t.potluck.c.revision, t.place)
    .join(t.place, t.place.c.potluck_id == t.potluck.c.id)
    .where(t.potluck.c.id == bindparam("p_id"))
)
_own = select(t.potluck).where(t.potluck.c.id == bindparam("p_id"))
_parts = [
    (
        part,
        select(part.table).where(part.table.c.potluck_id == bindparam("p_id")).order_by(part.table.c.position),
    )
    for part in PARTS
]
_locked = (
    select(t.potluck.c.id, t.potluck.c.revision)
    .where(t.potluck.c.id == any_(bindparam("ids", type_=ARRAY(String))))
    .order_by(t.potluck.c.id)
    .with_for_update()
)
_revision_only = select(t.potluck.c.revision).where(t.potluck.c.id == bindparam("p_id"))
_bump = update(t.potluck).where(t.potluck.c.id == bindparam("p_id")).values(revision=bindparam("p_revision"))


def revision_and_place(conn: Connection, potluck_id: str) -> tuple[int, PotluckPlace] | None:
    rows = ask(conn, _revision, {"p_id": potluck_id})
    return (rows[0].revision, place_from(rows[0])) if rows else None


def load(conn: Connection, potluck_id: str) -> Stored | None:
    """The potluck, whole; call it on one picture of the database."""
    head = revision_and_place(conn, potluck_id)
    if head is None:
        return None
    params = {"p_id": potluck_id}
    (own,) = ask(conn, _own, params)
    parts = {part.table.name: [part.back(r) for r in ask(conn, q, params)] for part, q in _parts}
    return Stored(potluck_from(own, parts), head[0], head[1])


def lock(conn: Connection, ids: Iterable[str]) -> dict[str, int]:
    """The present revisions; nobody else changes these potlucks before this transaction ends."""
    wanted = sorted(set(ids))
    if not wanted:
        return {}
    if conn.dialect.name == "sqlite":  # which has locked everything already, and likes small questions
        found = ((p, ask(conn, _revision_only, {"p_id": p})) for p in wanted)
        return {p: rows[0].revision for p, rows in found if rows}
    return {r.id: r.revision for r in ask(conn, _locked, {"ids": wanted})}


def bump(conn: Connection, revisions: Mapping[str, int]) -> None:
    if revisions:
        run(conn, _bump, [{"p_id": p, "p_revision": n} for p, n in sorted(revisions.items())])


def insert(conn: Connection, new: Sequence[Potluck]) -> None:
    add(conn, t.potluck, [{**potluck_row(p), "revision": 1} for p in new])
    for part in PARTS:
        rows = [{"potluck_id": p.id, "position": i, **part.row(e)} for p in new for i, e in enumerate(part.of(p))]
        add(conn, part.table, rows)


def write_changes(conn: Connection, changed: Sequence[tuple[Potluck, Potluck]]) -> None:
    """Write the rows that differ between (before, after); revisions are `bump`'s affair."""
    own = [
        {f"p_{k}": v for k, v in potluck_row(after).items()}
        for before, after in changed
        if own_fields(before) != own_fields(after)
    ]
    if own:
        run(conn, _own_update, own)
    for part in PARTS:
        froms: list[tuple[str, int]] = []
        rows: list[dict[str, Any]] = []
        for before, after in changed:
            start, positions = _part_changes(part.of(before), part.of(after), part.unique)
            if start is not None:
                froms.append((after.id, start))
            elements = part.of(after)
            rows.extend({"potluck_id": after.id, "position": i, **part.row(elements[i])} for i in positions)
        cut(conn, part.table, froms)
        put(conn, part.table, rows)


_own_update = (
    update(t.potluck)
    .where(t.potluck.c.id == bindparam("p_id"))
    .values({c.name: bindparam(f"p_{c.name}") for c in t.potluck.columns if c.name not in ("id", "revision")})
)


def _part_changes(before: Sequence[Any], after: Sequence[Any], unique: str | None) -> tuple[int | None, list[int]]:
    """(delete from this position on, or None; write these positions).

    Where an element makes way for another one, everything from there on is written anew, so that
    no id is ever there twice, not even for a moment.
    """
    if before is after:
        return None, []
    common = min(len(before), len(after))
    differing = [i for i in range(common) if before[i] is not after[i] and before[i] != after[i]]
    start = common if len(before) > len(after) else None
    if unique is not None:
        for i in differing:
            if getattr(before[i], unique) != getattr(after[i], unique):
                start = i
                break
    if start is None or start >= common:
        return start, [*differing, *range(common, len(after))]
    return start, [*(i for i in differing if i < start), *range(start, len(after))]


def ids_of_guest(conn: Connection, guest_id: str) -> list[str]:
    """The potlucks somebody is a guest or the host of, latest start first."""
    own = select(t.guest.c.potluck_id).where(t.guest.c.id == guest_id)
    query = (
        select(t.potluck.c.id)
        .where(or_(t.potluck.c.host == guest_id, t.potluck.c.id.in_(own)))
        .order_by(t.potluck.c.starts_at.desc(), t.potluck.c.id)
    )
    return list(conn.scalars(query))


def ids_in_chat(conn: Connection, chat_id: int) -> list[str]:
    query = (
        select(t.potluck.c.id)
        .join(t.place, t.place.c.potluck_id == t.potluck.c.id)
        .where(t.place.c.chat_id == chat_id)
        .order_by(t.potluck.c.starts_at.desc(), t.potluck.c.id)
    )
    return list(conn.scalars(query))


def all_ids(conn: Connection) -> list[str]:
    """Every potluck, the latest start last."""
    return list(conn.scalars(select(t.potluck.c.id).order_by(t.potluck.c.starts_at, t.potluck.c.id)))
