"""One Telegram update as the plain facts a capability needs."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import telegram
from telegram.constants import ChatID

from planning.changes import Actor


@dataclass(frozen=True)
class Someone:
    """A person behind an update. An anonymous administrator has the group's own id and no account."""

    id: int
    name: str
    username: str | None = None
    language: str | None = None
    anonymous: bool = False


@dataclass(frozen=True)
class Event:
    """`kind`: message, edited, press, or a service word (bot-added, bot-admin, bot-removed, joined,
    left, migrated, blocked, unblocked, renamed, admins). `media` names what is not text."""

    kind: str
    update_id: int
    chat_id: int
    chat_kind: str
    chat_title: str
    person: Someone
    thread_id: int | None = None
    message_id: int | None = None
    text: str = ""
    media: str | None = None
    reply_to: int | None = None
    reply_to_bot: bool = False
    reply_to_person: Someone | None = None
    reply_text: str = ""
    forwarded: bool = False
    data: str = ""
    query_id: str | None = None
    subjects: tuple[Someone, ...] = ()
    details: dict[str, Any] = field(default_factory=dict)

    @property
    def is_words(self) -> bool:
        """Whether somebody wrote words of their own: no press, no edit, no picture, nothing passed on."""
        return self.kind == "message" and self.media is None and not self.forwarded

    @property
    def private(self) -> bool:
        return self.chat_kind == "private"

    def actor(self, *, is_admin: bool = False) -> Actor:
        return Actor(str(self.person.id), self.person.name, is_admin or self.person.anonymous, self.person.username)


MEDIA = (
    "photo", "voice", "sticker", "location", "venue", "contact", "video", "video_note", "audio", "document",
    "animation", "poll", "dice",
)  # fmt: skip


def someone(user: telegram.User) -> Someone:
    name = " ".join(part for part in (user.first_name, user.last_name) if part).strip()
    if not name.strip("\u200b\u200c\u200d\u2060\ufeff \u3164"):
        name = user.username or "Guest"
    return Someone(user.id, name[:100], user.username, user.language_code)


_WANTED_BELOW_A_PRESS = ("message_id", "chat")
_WANTED_IN_A_TOPIC = (*_WANTED_BELOW_A_PRESS, "date", "message_thread_id", "is_topic_message")


def slim(update: dict[str, Any]) -> dict[str, Any]:
    """The update's JSON without what nobody here reads, so that the library need not build it.

    Below a pressed button stands our own message with all its words and keys: of it only the id, the
    chat and the topic are wanted. Outside topics it is given the form of a message too old to be shown
    (its date is 0), which has no more than that and is built in a fraction of the time.
    """
    query = update.get("callback_query")
    if isinstance(query, dict) and isinstance(message := query.get("message"), dict):
        if message.get("is_topic_message"):
            query["message"] = {name: message[name] for name in _WANTED_IN_A_TOPIC if name in message}
        else:
            query["message"] = {"date": 0, **{name: message[name] for name in _WANTED_BELOW_A_PRESS if name in message}}
    return update


def read(update: telegram.Update, bot_id: int) -> Event | None:
    """The event, or None for what concerns nobody here (channels, other bots)."""
    if update.callback_query is not None:
        return _press(update, update.callback_query)
    if update.my_chat_member is not None:
        return _own_membership(update, update.my_chat_member)
    if update.chat_member is not None:
        return _membership(update, update.chat_member)
    message = update.message or update.edited_message
    if message is not None:
        return _message(update, message, bot_id)
    return None


def _press(update: telegram.Update, query: telegram.CallbackQuery) -> Event | None:
    if query.message is None:
        return None
    message = query.message
    full = message if isinstance(message, telegram.Message) else None
    return Event(
        "press",
        update.update_id,
        message.chat.id,
        message.chat.type,
        message.chat.title or "",
        someone(query.from_user),
        thread_id=_thread(full) if full else None,
        message_id=message.message_id,
        data=query.data or "",
        query_id=query.id,
    )


def _thread(message: telegram.Message) -> int | None:
    # A reply in the general topic carries a thread id that is no topic, and the general topic
    # itself must be addressed without one.
    return message.message_thread_id if message.is_topic_message and message.message_thread_id != 1 else None


def _message(update: telegram.Update, m: telegram.Message, bot_id: int) -> Event | None:
    if m.chat.type == "channel" or m.from_user is None:
        return None
    anonymous = m.sender_chat is not None and m.sender_chat.id == m.chat.id
    if (m.from_user.is_bot and not anonymous) or m.from_user.id == ChatID.SERVICE_CHAT:
        return None
    person = Someone(m.chat.id, m.chat.title or "", anonymous=True) if anonymous else someone(m.from_user)
    replied = m.reply_to_message
    base: dict[str, Any] = {
        "update_id": update.update_id,
        "chat_id": m.chat.id,
        "chat_kind": m.chat.type,
        "chat_title": m.chat.title or "",
        "person": person,
        "thread_id": _thread(m),
        "message_id": m.message_id,
    }
    if m.migrate_to_chat_id or m.migrate_from_chat_id:
        old, new = (m.chat.id, m.migrate_to_chat_id) if m.migrate_to_chat_id else (m.migrate_from_chat_id, m.chat.id)
        return Event("migrated", **base, details={"old": old, "new": new})
    if m.new_chat_members:
        people = tuple(someone(u) for u in m.new_chat_members if not u.is_bot)
        return Event("joined", **base, subjects=people) if people else None
    if m.left_chat_member is not None:
        if m.left_chat_member.is_bot:
            return None
        return Event("left", **base, subjects=(someone(m.left_chat_member),))
    if m.new_chat_title:
        return Event("renamed", **base)
    media = next((kind for kind in MEDIA if getattr(m, kind, None)), None)
    if m.text is None and media is None:
        return None
    details: dict[str, Any] = {}
    if m.location is not None:
        details = {"lat": m.location.latitude, "lon": m.location.longitude}
    if replied is not None and replied.forum_topic_created is not None:
        # In a topic, what starts a thread of its own "replies" to the topic's first message.
        replied = None
    return Event(
        "edited" if update.edited_message is not None else "message",
        **base,
        text=m.text or m.caption or "",
        media=media,
        reply_to=replied.message_id if replied else None,
        reply_to_bot=bool(replied and replied.from_user and replied.from_user.id == bot_id),
        reply_to_person=someone(replied.from_user)
        if replied and replied.from_user and not replied.from_user.is_bot
        else None,
        reply_text=(replied.text or replied.caption or "") if replied else "",
        forwarded=m.forward_origin is not None,
        details=details,
    )


_IN = ("member", "administrator", "creator")


def _own_membership(update: telegram.Update, change: telegram.ChatMemberUpdated) -> Event | None:
    was, now = change.old_chat_member.status, change.new_chat_member.status
    if change.chat.type == "channel":
        return None
    if change.chat.type == "private":
        kind = "blocked" if now == "kicked" else "unblocked"
    elif now not in _IN and now != "restricted":
        kind = "bot-removed"
    elif was not in _IN and was != "restricted":
        kind = "bot-added"
    else:
        kind = "bot-admin"
    return Event(
        kind,
        update.update_id,
        change.chat.id,
        change.chat.type,
        change.chat.title or "",
        someone(change.from_user),
        details={"admin": now == "administrator"},
    )


def _membership(update: telegram.Update, change: telegram.ChatMemberUpdated) -> Event | None:
    user = change.new_chat_member.user
    was, now = change.old_chat_member.status, change.new_chat_member.status
    if user.is_bot:
        return None
    left = now in ("left", "kicked") and was in _IN
    kind = "left" if left else "joined" if now in _IN and was not in _IN else "admins"
    return Event(
        kind,
        update.update_id,
        change.chat.id,
        change.chat.type,
        change.chat.title or "",
        someone(change.from_user),
        subjects=(someone(user),),
    )
