"""Writing batches: several turns' changes in one transaction, table by table.

Who is stale is known before anything is written: the potlucks' rows are locked (PostgreSQL) or the
whole database is (SQLite), their revisions read, and a batch whose potluck moved on is left out.
Tables are always written in the same order and rows sorted, so that replicas can't deadlock.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from sqlalchemy import BigInteger, bindparam, case, delete, null, select, type_coerce, update
from sqlalchemy.engine import Connection

from bot.storage import potlucks
from bot.storage import schema as t
from bot.storage.columns import to_micros
from bot.storage.diffs import diff
from bot.storage.errors import AlreadyTaken, Stale
from bot.storage.kitchen_plans import write_plans
from bot.storage.merging import change_chats, change_people
from bot.storage.privacy import forget_person
from bot.storage.recollections import write_recollections
from bot.storage.records import action_row, chat_row, dialog_row, message_row, person_row, place_row, post_row
from bot.storage.reminders import ReminderSets, ReminderWrites, finish_reminder
from bot.storage.sql import add, add_counted, put, run
from bot.storage.values import Batch, CommitResult, Dialog, EntityChange, NewAction

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


BOARD = ("board_message_id", "board_pinned", "board_dirty_since", "board_owner", "board_lease_until")
"""Columns of a place that are the courier's."""


def write_batches(
    conn: Connection, batches: Sequence[Batch], careful: bool, sets: ReminderSets
) -> list[CommitResult | AlreadyTaken | Stale]:
    """`careful` looks first whether an update was taken; without it the database's own refusal
    of a second one undoes the group, which is then tried again carefully."""
    outcomes: list[Any] = [None] * len(batches)
    revisions = potlucks.lock(conn, _potlucks_touched(batches))
    taken = _taken_before(conn, batches) if careful else set()
    winners: list[int] = []
    moved: list[dict[str, int]] = []
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
        new = {p: revisions[p] + 1 for p in _bumped(batch) if p in revisions}
        new |= {p.id: 1 for p, _ in batch.new_potlucks}
        revisions.update(new)
        winners.append(n)
        moved.append(new)
    written = _write(conn, [batches[n] for n in winners], moved, sets)
    for n, result in zip(winners, written, strict=True):
        outcomes[n] = result
    return outcomes


def _bumped(batch: Batch) -> set[str]:
    return {before.potluck.id for before, _ in batch.changed} | {p for p, _ in batch.reminders}


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
    conn: Connection, batches: Sequence[Batch], revisions: Sequence[dict[str, int]], sets: ReminderSets
) -> list[CommitResult]:
    """Write what all batches hold, table by table; `revisions` are each one's new ones."""
    add(conn, t.update_taken, [{"update_id": b.update_id, "at": b.now} for b in batches if b.update_id is not None])
    new = [p for b in batches for p, _ in b.new_potlucks]
    fresh = {p.id for p in new}
    potlucks.bump(conn, {p: n for moved in revisions for p, n in moved.items() if p not in fresh})
    chats = {c.id: c for b in batches for c in b.chats}
    put(conn, t.chat, [chat_row(chats[i]) for i in sorted(chats)])
    people = {p.id: p for b in batches for p in b.people}
    put(conn, t.person, [person_row(people[i]) for i in sorted(people)])
    change_chats(conn, [pair for b in batches for pair in b.changed_chats])
    change_people(conn, [pair for b in batches for pair in b.changed_people])
    potlucks.insert(conn, new)
    _write_places(conn, batches)
    potlucks.write_changes(conn, [(before.potluck, after) for b in batches for before, after in b.changed])
    actions = _write_actions(conn, batches)
    _write_dialogs(conn, batches)
    write_recollections(conn, batches)
    _write_reminders(conn, batches, revisions, sets)
    write_plans(conn, batches, revisions)
    posts = iter(add_counted(conn, t.post, [post_row(p) for b in batches for p in b.posts]))
    messages = {(m.chat_id, m.message_id): m for b in batches for m in b.messages}
    put(conn, t.sent_message, [message_row(messages[key]) for key in sorted(messages)])
    _write_boards(conn, batches)
    results = []
    for batch, moved in zip(batches, revisions, strict=True):
        for person_id in batch.forget_people:
            moved |= forget_person(conn, person_id)
        results.append(
            CommitResult(
                posts=tuple(replace(p, id=next(posts)) for p in batch.posts),
                revisions=moved,
                actions=tuple(next(actions) for _ in batch.actions),
            )
        )
    return results


def _write_places(conn: Connection, batches: Sequence[Batch]) -> None:
    new = [p for b in batches for _, p in b.new_potlucks]
    moved = [p for b in batches for p in b.places]
    put(conn, t.place, [place_row(p) for p in new])
    put(conn, t.place, [place_row(p) for p in moved], keep=BOARD)
    current = [
        {"p_chat": p.chat_id, "p_thread": p.thread_id, "p_id": p.potluck_id} for p in [*new, *moved] if p.current
    ]
    if current:
        run(conn, _not_current, current)


def _write_actions(conn: Connection, batches: Sequence[Batch]) -> Iterator[int]:
    """The ids of the actions written, in order."""
    undone = sorted({i for b in batches for i in b.undone})
    if undone:
        run(conn, _undone, [{"p_id": i} for i in undone])
    rows = [action_row(a, _changes(b, a)) for b in batches for a in b.actions]
    return iter(add_counted(conn, t.action, rows))


def _changes(batch: Batch, action: NewAction) -> tuple[EntityChange, ...]:
    if action.changes is not None:
        return action.changes
    return tuple(
        c for before, after in batch.changed if after.id == action.potluck_id for c in diff(before.potluck, after)
    )


def _write_dialogs(conn: Connection, batches: Sequence[Batch]) -> None:
    last: dict[tuple[int, int], Dialog | None] = {}
    for batch in batches:
        last.update(dict.fromkeys(batch.dialogs_cleared))
        last.update({(d.chat_id, d.person_id): d for d in batch.dialogs})
    put(conn, t.dialog, [dialog_row(d) for key in sorted(last) if (d := last[key]) is not None])
    cleared = [{"p_chat": chat, "p_person": person} for chat, person in sorted(last) if last[chat, person] is None]
    if cleared:
        run(conn, _clear, cleared)


def _write_reminders(
    conn: Connection, batches: Sequence[Batch], revisions: Sequence[dict[str, int]], sets: ReminderSets
) -> None:
    writes = ReminderWrites(conn, sets)
    for batch, moved in zip(batches, revisions, strict=True):
        for potluck_id, reminders in batch.reminders:
            writes.replace(potluck_id, reminders, moved.get(potluck_id))
    writes.write()
    for finished in (f for b in batches for f in b.finished_reminders):
        if not finish_reminder(conn, finished):
            raise Stale(finished.key)


def _write_boards(conn: Connection, batches: Sequence[Batch]) -> None:
    lost = sorted({p for b in batches for p in b.lost_boards})
    if lost:
        run(conn, _lost, [{"p_id": p} for p in lost])
    dirty = {p: at for b in batches for p, at in b.dirty_boards}
    if dirty:
        run(conn, _dirty, [{"p_id": p, "p_now": to_micros(dirty[p])} for p in sorted(dirty)])
