"""A group that became a supergroup: everything moves to the new id, in one transaction."""

from __future__ import annotations

from sqlalchemy import delete, insert, select, update
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.recollections import move_recollections
from bot.storage.sql import put


def migrate_chat(conn: Connection, old_id: int, new_id: int) -> None:
    """Idempotent. Message ids of the old group mean nothing in the new one, so boards are posted
    anew, and waiting posts about an old message (edits, pins) are dropped.

    The old chat's settings win over those of a new chat that an early update made with defaults.
    """
    old = conn.execute(select(t.chat).where(t.chat.c.id == old_id)).mappings().first()
    if old is not None:
        put(conn, t.chat, [{**old, "id": new_id, "kind": "supergroup"}])
        conn.execute(delete(t.chat).where(t.chat.c.id == old_id))
    moved = {"old_id": old_id, "new_id": new_id}
    conn.execute(delete(t.chat_moved).where(t.chat_moved.c.old_id == old_id))
    conn.execute(insert(t.chat_moved), moved)
    conn.execute(
        update(t.place)
        .where(t.place.c.chat_id == old_id)
        .values(chat_id=new_id, board_message_id=None, board_pinned=False, board_owner=None, board_lease_until=None)
    )
    _move_dialogs(conn, old_id, new_id)
    move_recollections(conn, old_id, new_id)
    _move_posts(conn, old_id, new_id)
    conn.execute(delete(t.sent_message).where(t.sent_message.c.chat_id == old_id))


def _move_dialogs(conn: Connection, old_id: int, new_id: int) -> None:
    there = select(t.dialog.c.person_id).where(t.dialog.c.chat_id == new_id)
    conn.execute(delete(t.dialog).where(t.dialog.c.chat_id == old_id, t.dialog.c.person_id.in_(there)))
    conn.execute(update(t.dialog).where(t.dialog.c.chat_id == old_id).values(chat_id=new_id, message_id=None))


_OLD_MESSAGE = ("message_id",)
_REPLY = ("reply_to",)


def _move_posts(conn: Connection, old_id: int, new_id: int) -> None:
    for row in list(conn.execute(select(t.post.c.id, t.post.c.payload).where(t.post.c.chat_id == old_id))):
        if any(k in row.payload for k in _OLD_MESSAGE):
            conn.execute(delete(t.post).where(t.post.c.id == row.id))
            continue
        payload = {k: v for k, v in row.payload.items() if k not in _REPLY}
        conn.execute(update(t.post).where(t.post.c.id == row.id).values(chat_id=new_id, payload=payload))
