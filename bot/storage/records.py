"""Everything that isn't a potluck itself, as rows and back: chats, people, posts, reminders."""

from __future__ import annotations

from typing import Any

from bot.storage.codec import encode
from bot.storage.values import (
    Action,
    ChatRecord,
    Dialog,
    EntityChange,
    NewAction,
    PersonRecord,
    Post,
    PotluckPlace,
    ReminderLike,
    ReminderRow,
    SentMessage,
)
from planning.potluck import Say

Row = dict[str, Any]


def chat_row(c: ChatRecord) -> Row:
    return {
        "id": c.id,
        "kind": c.kind,
        "title": c.title,
        "timezone": c.timezone,
        "units": c.units,
        "language": c.language,
        "quiet_from": c.quiet_from,
        "quiet_to": c.quiet_to,
        "reminder_kinds_off": list(c.reminder_kinds_off),
        "bot_is_admin": c.bot_is_admin,
        "bot_present": c.bot_present,
        "settings": encode(c.settings),
    }


def chat_from(r: Any) -> ChatRecord:
    return ChatRecord(
        r.id,
        r.kind,
        r.title,
        r.timezone,
        r.units,
        r.language,
        r.quiet_from,
        r.quiet_to,
        tuple(r.reminder_kinds_off),
        r.bot_is_admin,
        r.bot_present,
        r.settings,
    )


def person_row(p: PersonRecord) -> Row:
    return {
        "id": p.id,
        "name": p.name,
        "username": p.username,
        "language": p.language,
        "can_dm": p.can_dm,
        "muted": p.muted,
        "private_potluck": p.private_potluck,
        "units": p.units,
    }


def person_from(r: Any) -> PersonRecord:
    return PersonRecord(r.id, r.name, r.username, r.language, r.can_dm, r.muted, r.private_potluck, r.units)


def place_from(r: Any) -> PotluckPlace:
    return PotluckPlace(
        r.potluck_id,
        r.chat_id,
        r.thread_id,
        r.board_message_id,
        r.board_pinned,
        r.current,
        r.board_dirty_since,
    )


def place_row(p: PotluckPlace) -> Row:
    return {
        "potluck_id": p.potluck_id,
        "chat_id": p.chat_id,
        "thread_id": p.thread_id,
        "board_message_id": p.board_message_id,
        "board_pinned": p.board_pinned,
        "current": p.current,
        "board_dirty_since": p.board_dirty_since,
    }


def dialog_from(r: Any) -> Dialog:
    return Dialog(r.chat_id, r.person_id, r.kind, r.data, r.message_id, r.expires_at)


def dialog_row(d: Dialog) -> Row:
    return {
        "chat_id": d.chat_id,
        "person_id": d.person_id,
        "kind": d.kind,
        "data": encode(d.data),
        "message_id": d.message_id,
        "expires_at": d.expires_at,
    }


def post_row(p: Post) -> Row:
    return {
        "chat_id": p.chat_id,
        "thread_id": p.thread_id,
        "method": p.method,
        "payload": encode(p.payload),
        "potluck_id": p.potluck_id,
        "reminder_key": p.reminder_key,
        "not_before": p.not_before,
        "tries": p.tries,
        "state": p.state,
        "lease_until": p.lease_until,
        "owner": p.owner,
        "doubtful": p.doubtful,
        "why": p.why,
    }


def post_from(r: Any) -> Post:
    return Post(
        chat_id=r.chat_id,
        method=r.method,
        payload=r.payload,
        id=r.id,
        thread_id=r.thread_id,
        potluck_id=r.potluck_id,
        reminder_key=r.reminder_key,
        not_before=r.not_before,
        tries=r.tries,
        state=r.state,
        lease_until=r.lease_until,
        owner=r.owner,
        doubtful=r.doubtful,
        why=r.why,
    )


def reminder_from(r: Any) -> ReminderRow:
    return ReminderRow(
        potluck_id=r.potluck_id,
        key=r.key,
        kind=r.kind,
        to=r.to,
        due_at=r.due_at,
        expires_at=r.expires_at,
        about=Say(r.about_key, r.about_facts),
        state=r.state,
        lease_until=r.lease_until,
        owner=r.owner,
        tries=r.tries,
        doubtful=r.doubtful,
        message_id=r.message_id,
    )


def reminder_row(potluck_id: str, r: ReminderLike) -> Row:
    """A reminder nobody has claimed yet."""
    return {
        "potluck_id": potluck_id,
        "key": r.key,
        "kind": r.kind,
        "to": r.to,
        "due_at": r.due_at,
        "expires_at": r.expires_at,
        "about_key": r.about.key,
        "about_facts": encode(r.about.facts),
        "state": "pending",
        "lease_until": None,
        "owner": None,
        "tries": 0,
        "doubtful": False,
        "message_id": None,
    }


def message_row(m: SentMessage) -> Row:
    return {
        "chat_id": m.chat_id,
        "message_id": m.message_id,
        "kind": m.kind,
        "potluck_id": m.potluck_id,
        "reminder_key": m.reminder_key,
        "at": m.at,
    }


def message_from(r: Any) -> SentMessage:
    return SentMessage(r.chat_id, r.message_id, r.kind, r.potluck_id, r.reminder_key, r.at)


def action_row(a: NewAction, changes: tuple[EntityChange, ...]) -> Row:
    return {
        "potluck_id": a.potluck_id,
        "actor": a.actor,
        "at": a.at,
        "key": a.key,
        "facts": encode(a.facts),
        "changes": [[c.kind, c.key, c.before, c.after, c.before_at, c.after_at] for c in changes],
        "undone": False,
    }


def action_from(r: Any) -> Action:
    changes = tuple(EntityChange(*c) for c in r.changes)
    return Action(r.id, r.potluck_id, r.actor, r.at, r.key, r.facts, changes, r.undone)
