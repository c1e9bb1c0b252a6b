"""Writing batches: several turns' changes in one transaction, table by table.

Who is stale is known before anything is written: the potlucks' rows are locked (PostgreSQL) or the
whole database is (SQLite), their revisions read, and a batch whose potluck moved on is left out.
Tables are always written in the same order and rows sorted, so that replicas can't deadlock.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from sqlalchemy import BigInteger, bindparam, case, delete, null, select, type_coerce, update
from sqlalchemy.engine import Connection

from bot.storage import potlucks
from bot.storage import schema as t
from bot.storage.codec import encode
from bot.storage.columns import to_micros
from bot.storage.diffs import diff
from bot.storage.errors import AlreadyTaken, Stale
from bot.storage.mapping import chat_row, dialog_row, person_row, place_row, post_row
from bot.storage.privacy import forget_person
from bot.storage.reminders import ReminderSets, finish_reminder, replace_reminders
from bot.storage.sql import add, add_one, put
from bot.storage.values import Batch, CommitResult, NewAction, SentMessage

_taken = select(t.update_taken.c.update_id).where(t.update_taken.c.update_id.in_(bindparam("ids", expanding=True)))
_mark = type_coerce(t.place.c.board_dirty_since, BigInteger)
_now = bindparam("p_now", type_=BigInteger)
_dirty = (
    update(t.place)
    .where(t.place.c.potluck_id == bindparam("p_id"))
    # It grows with every change, even of the same instant: see PotluckPlace.
    .values(board_dirty_since=case((_mark >= _now, _mark + 1), else_=_now))
)
_lost = (
    update(t.place).where(t.place.c.potluck_id == bindparam("p_id")).values(board_message_id=null(), board_pinned=False)
)
_not_current = (
    update(t.place)
    .where(
        t.place.c.chat_id == bindparam("p_chat"),
        t.place.c.thread_id.is_not_distinct_from(bindparam("p_thread", type_=BigInteger)),
        t.place.c.potluck_id != bindparam("p_id"),
        t.place.c.current,
    )
    .values(current=False)
)
_undone = update(t.action).where(t.action.c.id == bindparam("p_id")).values(undone=True)
_clear = delete(t.dialog).where(
    t.dialog.c.chat_id == bindparam("p_chat"), t.dialog.c.person_id == bindparam("p_person")
)


def write_batches(
    conn: Connection, batches: Sequence[Batch], careful: bool, sets: ReminderSets
) -> list[CommitResult | AlreadyTaken | Stale]:
    """`careful` looks first whether an update was taken; without it the database's own refusal
    of a second one undoes the group, which is then tried again carefully."""
    outcomes: list[Any] = [None] * len(batches)
    revisions = potlucks.lock(conn, _potlucks_touched(batches))
    taken = _taken_before(conn, batches) if careful else set()
    winners: list[tuple[int, Batch, dict[str, int]]] = []
    for n, batch in enumerate(batches):
        if batch.update_id is not None and batch.update_id in taken:
            outcomes[n] = AlreadyTaken(batch.update_id)
            continue
        stale = _stale(batch, revisions)
        if stale is not None:
            outcomes[n] = Stale(stale)
            continue
        if batch.update_id is not None:
            taken.add(batch.update_id)
        moved = {b.potluck.id for b, _ in batch.changed}
        moved |= {p for p, _ in batch.reminders if p in revisions}
        new = {p: revisions[p] + 1 for p in moved}
        revisions.update(new)
        revisions.update({p.id: 1 for p, _ in batch.new_potlucks})
        winners.append((n, batch, new))
    for n, result in zip([w[0] for w in winners], _write(conn, winners, sets), strict=True):
        outcomes[n] = result
    return outcomes


def _stale(batch: Batch, revisions: Mapping[str, int]) -> str | None:
    """The potluck that isn't as the batch saw it: changed since, gone, or a new one's id is taken."""
    for before, _ in batch.changed:
        if revisions.get(before.potluck.id) != before.revision:
            return before.potluck.id
    new = {p.id for p, _ in batch.new_potlucks}
    for potluck_id, _ in batch.reminders:
        if potluck_id not in revisions and potluck_id not in new:
            return potluck_id
    return next((p for p in new if p in revisions), None)


def _potlucks_touched(batches: Sequence[Batch]) -> set[str]:
    touched = {before.potluck.id for b in batches for before, _ in b.changed}
    touched |= {p.id for b in batches for p, _ in b.new_potlucks}
    return touched | {p for b in batches for p, _ in b.reminders}


def _taken_before(conn: Connection, batches: Sequence[Batch]) -> set[int]:
    ids = [b.update_id for b in batches if b.update_id is not None]
    return set(conn.scalars(_taken, {"ids": ids})) if ids else set()


def _write(
    conn: Connection, winners: Sequence[tuple[int, Batch, dict[str, int]]], sets: ReminderSets
) -> list[CommitResult]:
    batches = [w[1] for w in winners]
    add(
        conn,
        t.update_taken,
        [{"update_id": b.update_id, "at": b.now} for b in batches if b.update_id is not None],
    )
    bumped: dict[str, int] = {}
    for _, _, new in winners:
        bumped.update(new)
    potlucks.bump(conn, bumped)
    chats = {c.id: c for b in batches for c in b.chats}
    put(conn, t.chat, [chat_row(chats[i]) for i in sorted(chats)])
    people = {p.id: p for b in batches for p in b.people}
    put(conn, t.person, [person_row(people[i]) for i in sorted(people)])
    results = []
    for _, batch, new in winners:
        results.append(_write_one(conn, batch, new, sets))
    _write_boards(conn, batches)
    return results


def _write_one(conn: Connection, batch: Batch, revisions: dict[str, int], sets: ReminderSets) -> CommitResult:
    new = [p for p, _ in batch.new_potlucks]
    potlucks.insert(conn, new)
    put(conn, t.place, [place_row(p) for _, p in batch.new_potlucks])
    revisions = {**revisions, **{p.id: 1 for p in new}}
    potlucks.write_changes(conn, [(before.potluck, after) for before, after in batch.changed])
    put(
        conn,
        t.place,
        [place_row(p) for p in batch.places],
        keep=("board_message_id", "board_pinned", "board_dirty_since"),
    )
    for place in [*(p for _, p in batch.new_potlucks), *batch.places]:
        if place.current:
            conn.execute(_not_current, {"p_chat": place.chat_id, "p_thread": place.thread_id, "p_id": place.potluck_id})
    actions = tuple(add_one(conn, t.action, _action_row(batch, a)) for a in batch.actions)
    if batch.undone:
        conn.execute(_undone, [{"p_id": i} for i in batch.undone])
    put(conn, t.dialog, [dialog_row(d) for d in batch.dialogs])
    if batch.dialogs_cleared:
        conn.execute(_clear, [{"p_chat": c, "p_person": p} for c, p in batch.dialogs_cleared])
    for potluck_id, reminders in batch.reminders:
        replace_reminders(conn, potluck_id, reminders, sets, revisions.get(potluck_id))
    for f in batch.finished_reminders:
        if not finish_reminder(conn, f):
            raise Stale(f.key)
    posts = tuple(replace(p, id=add_one(conn, t.post, post_row(p))) for p in batch.posts)
    put(conn, t.sent_message, [message_row(m) for m in batch.messages])
    for person_id in batch.forget_people:
        revisions |= forget_person(conn, person_id)
    return CommitResult(posts, revisions, actions)


def _write_boards(conn: Connection, batches: Sequence[Batch]) -> None:
    lost = sorted({p for b in batches for p in b.lost_boards})
    if lost:
        conn.execute(_lost, [{"p_id": p} for p in lost])
    dirty = {p: at for b in batches for p, at in b.dirty_boards}
    if dirty:
        conn.execute(_dirty, [{"p_id": p, "p_now": to_micros(dirty[p])} for p in sorted(dirty)])


def message_row(m: SentMessage) -> dict[str, Any]:
    return {
        "chat_id": m.chat_id,
        "message_id": m.message_id,
        "kind": m.kind,
        "potluck_id": m.potluck_id,
        "reminder_key": m.reminder_key,
        "at": m.at,
    }


def _action_row(batch: Batch, new: NewAction) -> dict[str, Any]:
    changes = new.changes
    if changes is None:
        changes = tuple(
            c for before, after in batch.changed if after.id == new.potluck_id for c in diff(before.potluck, after)
        )
    return {
        "potluck_id": new.potluck_id,
        "actor": new.actor,
        "at": new.at,
        "key": new.key,
        "facts": encode(new.facts),
        "changes": [[c.kind, c.key, c.before, c.after, c.before_at, c.after_at] for c in changes],
        "undone": False,
    }
