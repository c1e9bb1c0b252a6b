"""Taking somebody out of everything, and old potlucks out of the database."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import Any

from sqlalchemy import delete, or_, select, update
from sqlalchemy.engine import Connection

from bot.storage import potlucks
from bot.storage import schema as t
from planning.potluck import Potluck


def without_person(potluck: Potluck, guest_id: str, names: frozenset[str]) -> Potluck:
    """The potluck as if they had never been part of it; people they named stay, unnamed by whom."""
    bar = potluck.bar
    if bar is not None:
        taken = tuple(replace(x, guest=None) if x.guest == guest_id else x for x in bar.toppings)
        bar = replace(bar, toppings=taken)
    marks = names | {guest_id}
    return replace(
        potluck,
        host=None if potluck.host == guest_id else potluck.host,
        cohosts=tuple(c for c in potluck.cohosts if c != guest_id),
        guests=tuple(
            replace(g, added_by=None) if g.added_by == guest_id else g for g in potluck.guests if g.id != guest_id
        ),
        promises=tuple(
            replace(p, sharers=tuple(s for s in p.sharers if s != guest_id))
            for p in potluck.promises
            if p.guest != guest_id
        ),
        bar=bar,
        history=tuple(h for h in potluck.history if h.guest != guest_id),
        payments=tuple(p for p in potluck.payments if p.guest != guest_id),
        declined=tuple(d for d in potluck.declined if d.guest != guest_id),
        previous=None if potluck.previous is None else _scrubbed(potluck.previous, marks),
    )


def _mentions(value: Any, marks: frozenset[str]) -> bool:
    if isinstance(value, str):
        return any(m in value if len(m) > 2 else m == value for m in marks)
    if isinstance(value, dict):
        return any(_mentions(v, marks) or k in marks for k, v in value.items())
    if isinstance(value, list | tuple):
        return any(_mentions(v, marks) for v in value)
    return isinstance(value, int) and str(value) in marks


def _scrubbed(value: Any, marks: frozenset[str]) -> Any:
    """Lists lose the elements, dicts the entries, that mention the person."""
    if isinstance(value, dict):
        return {
            k: _scrubbed(v, marks)
            for k, v in value.items()
            if k not in marks and (isinstance(v, dict | list | tuple) or not _mentions(v, marks))
        }
    if isinstance(value, list | tuple):
        return [_scrubbed(v, marks) for v in value if not _mentions(v, marks)]
    return value


def forget_person(conn: Connection, person_id: int) -> dict[str, int]:
    """Delete what is stored about somebody; returns the new revisions of the potlucks changed.

    What others did that names them (actions to undo, waiting posts, reminders) goes as well:
    removing too much of those costs an undo, removing too little would leave a name.
    """
    guest_id = str(person_id)
    revisions: dict[str, int] = {}
    names = _names(conn, person_id, guest_id)
    marks = names | {guest_id}
    for potluck_id in _everywhere(conn, guest_id):
        revisions[potluck_id] = potlucks.lock(conn, [potluck_id])[potluck_id] + 1
        stored = potlucks.load(conn, potluck_id)
        assert stored is not None
        potlucks.write_changes(conn, [(stored.potluck, without_person(stored.potluck, guest_id, names))])
        potlucks.bump(conn, {potluck_id: revisions[potluck_id]})
        _delete_mentions(conn, potluck_id, guest_id, marks)
    conn.execute(delete(t.dialog).where(or_(t.dialog.c.person_id == person_id, t.dialog.c.chat_id == person_id)))
    for row in list(conn.execute(select(t.dialog))):
        if _mentions(row.data, marks):
            here = t.dialog.c.chat_id == row.chat_id, t.dialog.c.person_id == row.person_id
            conn.execute(delete(t.dialog).where(*here))
    for row in list(conn.execute(select(t.post.c.id, t.post.c.chat_id, t.post.c.payload))):
        if row.chat_id == person_id or _mentions(row.payload, marks):
            conn.execute(delete(t.post).where(t.post.c.id == row.id))
    conn.execute(delete(t.sent_message).where(t.sent_message.c.chat_id == person_id))
    conn.execute(delete(t.chat).where(t.chat.c.id == person_id))
    conn.execute(delete(t.person).where(t.person.c.id == person_id))
    return revisions


def _names(conn: Connection, person_id: int, guest_id: str) -> frozenset[str]:
    names = set(conn.scalars(select(t.guest.c.name).where(t.guest.c.id == guest_id)))
    names |= set(conn.scalars(select(t.guest.c.username).where(t.guest.c.id == guest_id)))
    for row in conn.execute(select(t.person.c.name, t.person.c.username).where(t.person.c.id == person_id)):
        names |= {row.name, row.username}
    return frozenset(n for n in names if n)


def _everywhere(conn: Connection, guest_id: str) -> list[str]:
    """Every potluck that has them in any part, sorted."""
    found = set(potlucks.ids_of_guest(conn, guest_id))
    for table in (t.promise, t.topping, t.past_answer, t.payment, t.declined):
        found |= set(conn.scalars(select(table.c.potluck_id).where(table.c.guest == guest_id)))
    found |= set(conn.scalars(select(t.guest.c.potluck_id).where(t.guest.c.added_by == guest_id)))
    found |= set(conn.scalars(select(t.action.c.potluck_id).where(t.action.c.actor == guest_id)))
    for table, column in ((t.potluck, "cohosts"), (t.promise, "sharers")):
        key = table.c.id if table is t.potluck else table.c.potluck_id
        for row in conn.execute(select(key.label("potluck_id"), table.c[column].label("ids"))):
            if guest_id in row.ids:
                found.add(row.potluck_id)
    return sorted(found)


def _delete_mentions(conn: Connection, potluck_id: str, guest_id: str, marks: frozenset[str]) -> None:
    for row in list(conn.execute(select(t.action).where(t.action.c.potluck_id == potluck_id))):
        if row.actor == guest_id or _mentions(row.facts, marks) or _mentions(row.changes, marks):
            conn.execute(delete(t.action).where(t.action.c.id == row.id))
    for row in list(conn.execute(select(t.reminder).where(t.reminder.c.potluck_id == potluck_id))):
        if row.to == guest_id or _mentions(row.about_facts, marks) or guest_id in row.key:
            here = t.reminder.c.potluck_id == potluck_id, t.reminder.c.key == row.key
            conn.execute(delete(t.reminder).where(*here))


def delete_potlucks_before(conn: Connection, when: datetime) -> int:
    """See `Store.delete_potlucks_before`."""
    old = list(conn.scalars(select(t.potluck.c.id).where(t.potluck.c.starts_at < when)))
    for potluck_id in old:
        seen = set(conn.scalars(select(t.guest.c.id).where(t.guest.c.potluck_id == potluck_id)))
        for table in (t.post, t.sent_message):
            conn.execute(delete(table).where(table.c.potluck_id == potluck_id))
        conn.execute(update(t.person).where(t.person.c.private_potluck == potluck_id).values(private_potluck=None))
        conn.execute(delete(t.potluck).where(t.potluck.c.id == potluck_id))
        for guest_id in sorted(seen):
            if guest_id.isdecimal() and not potlucks.ids_of_guest(conn, guest_id):
                person = t.person.c.id == int(guest_id), t.person.c.can_dm.is_(False)
                conn.execute(delete(t.person).where(*person))
    return len(old)
