"""Taking somebody out of everything, and old potlucks out of the database."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import Text, delete, or_, select, type_coerce, update
from sqlalchemy.engine import Connection

from bot.storage import potlucks
from bot.storage import schema as t
from bot.storage.columns import dump
from planning.potluck import Potluck

_LONG_AGO = datetime(1970, 1, 1, tzinfo=UTC)


def without_person(potluck: Potluck, guest_id: str, marks: Marks) -> Potluck:
    """The potluck as if they had never been part of it; people they named stay, unnamed by whom."""
    bar = potluck.bar
    if bar is not None:
        taken = tuple(replace(x, guest=None) if x.guest == guest_id else x for x in bar.toppings)
        bar = replace(bar, toppings=taken)
    return replace(
        potluck,
        host=None if potluck.host == guest_id else potluck.host,
        cohosts=tuple(c for c in potluck.cohosts if c != guest_id),
        guests=tuple(
            replace(g, added_by=None) if g.added_by == guest_id else g for g in potluck.guests if g.id != guest_id
        ),
        promises=tuple(
            replace(
                p,
                sharers=tuple(s for s in p.sharers if s != guest_id),
                takers=tuple(t for t in p.takers if t != guest_id),
            )
            for p in potluck.promises
            if p.guest != guest_id
        ),
        bar=bar,
        history=tuple(h for h in potluck.history if h.guest != guest_id),
        payments=tuple(p for p in potluck.payments if guest_id not in (p.guest, p.to)),
        declined=tuple(d for d in potluck.declined if d.guest != guest_id),
        previous=None if potluck.previous is None else marks.without(potluck.previous),
    )


class Marks:
    """What gives somebody away: their id and names, as whole words."""

    def __init__(self, words: Iterable[str]) -> None:
        self.words = frozenset(words)
        whole = "|".join(re.escape(w) for w in sorted(self.words, key=len, reverse=True))
        self._found = re.compile(rf"(?<!\w)(?:{whole})(?!\w)").search

    def on(self, value: Any) -> bool:
        """Whether any text (or key, or number) inside the value mentions them."""
        if isinstance(value, str):
            return self._found(value) is not None
        if isinstance(value, dict):
            return any(self.on(k) or self.on(v) for k, v in value.items())
        if isinstance(value, list | tuple):
            return any(self.on(v) for v in value)
        return isinstance(value, int) and str(value) in self.words

    def without(self, value: Any) -> Any:
        """Lists lose the elements, dicts the entries, that mention them."""
        if isinstance(value, dict):
            return {
                k: self.without(v)
                for k, v in value.items()
                if not self.on(k) and (isinstance(v, dict | list | tuple) or not self.on(v))
            }
        if isinstance(value, list | tuple):
            return [self.without(v) for v in value if not self.on(v)]
        return value

    def may_be_in(self, column: Any) -> Any:
        """A condition the database can look for itself, true for every row of JSON that mentions them."""
        text = type_coerce(column, Text)
        return or_(*(text.contains(dump(w)[1:-1], autoescape=True) for w in sorted(self.words)))


def forget_person(conn: Connection, person_id: int) -> dict[str, int]:
    """Delete what is stored about somebody; returns the new revisions of the potlucks changed.

    What others did that names them (actions to undo, waiting posts, reminders) goes as well:
    removing too much of those costs an undo, removing too little would leave a name.
    """
    guest_id = str(person_id)
    revisions: dict[str, int] = {}
    names = _names(conn, person_id, guest_id)
    marks = Marks(names | {guest_id})
    for potluck_id in _everywhere(conn, guest_id):
        revisions[potluck_id] = potlucks.lock(conn, [potluck_id])[potluck_id] + 1
        stored = potlucks.load(conn, potluck_id)
        assert stored is not None
        potlucks.write_changes(conn, [(stored.potluck, without_person(stored.potluck, guest_id, marks))])
        potlucks.bump(conn, {potluck_id: revisions[potluck_id]})
        _delete_mentions(conn, potluck_id, guest_id, marks)
    for table, told in ((t.dialog, t.dialog.c.data), (t.recollection, t.recollection.c.value)):
        conn.execute(delete(table).where(or_(table.c.person_id == person_id, table.c.chat_id == person_id)))
        for row in list(conn.execute(select(table).where(marks.may_be_in(told)))):
            if marks.on(row._mapping[told]):
                conn.execute(delete(table).where(*(key == row._mapping[key] for key in table.primary_key)))
    conn.execute(delete(t.post).where(t.post.c.chat_id == person_id))
    for row in list(conn.execute(select(t.post.c.id, t.post.c.payload).where(marks.may_be_in(t.post.c.payload)))):
        if marks.on(row.payload):
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
    quoted = dump(guest_id)
    for ids, column in ((t.potluck.c.id, t.potluck.c.cohosts), (t.promise.c.potluck_id, t.promise.c.sharers)):
        found |= set(conn.scalars(select(ids).where(type_coerce(column, Text).contains(quoted, autoescape=True))))
    return sorted(found)


def _delete_mentions(conn: Connection, potluck_id: str, guest_id: str, marks: Marks) -> None:
    for row in list(conn.execute(select(t.action).where(t.action.c.potluck_id == potluck_id))):
        if row.actor == guest_id or marks.on(row.facts) or marks.on(row.changes):
            conn.execute(delete(t.action).where(t.action.c.id == row.id))
    for row in list(conn.execute(select(t.reminder).where(t.reminder.c.potluck_id == potluck_id))):
        if row.to == guest_id or marks.on(row.about_facts) or marks.on(row.key):
            here = t.reminder.c.potluck_id == potluck_id, t.reminder.c.key == row.key
            conn.execute(delete(t.reminder).where(*here))
    # It may name their dishes; it is made anew, without them.
    gone = {"timeline": None, "part": None, "planned": 0, "wanted_at": _LONG_AGO}
    conn.execute(update(t.kitchen_plan).where(t.kitchen_plan.c.potluck_id == potluck_id).values(gone))


def delete_potlucks_before(conn: Connection, when: datetime) -> int:
    """See `Store.delete_potlucks_before`."""
    old = list(conn.scalars(select(t.potluck.c.id).where(t.potluck.c.starts_at < when)))
    for potluck_id in old:
        seen = set(conn.scalars(select(t.guest.c.id).where(t.guest.c.potluck_id == potluck_id)))
        for table in (t.post, t.sent_message, t.recollection):
            conn.execute(delete(table).where(table.c.potluck_id == potluck_id))
        conn.execute(update(t.person).where(t.person.c.private_potluck == potluck_id).values(private_potluck=None))
        conn.execute(delete(t.potluck).where(t.potluck.c.id == potluck_id))
        for guest_id in sorted(seen):
            if guest_id.isdecimal() and not potlucks.ids_of_guest(conn, guest_id):
                person = t.person.c.id == int(guest_id), t.person.c.can_dm.is_(False)
                conn.execute(delete(t.person).where(*person))
    return len(old)
