"""The room's values as the Bot API writes them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .entities import Formatted
from .world import ANONYMOUS_ADMIN, MEMBER_RIGHTS, Chat, Message, User

if TYPE_CHECKING:
    from .state import State

GROUP_ANONYMOUS_BOT = User(ANONYMOUS_ADMIN, "Group", username="GroupAnonymousBot", is_bot=True)


def chat(room: State, value: Chat) -> dict[str, object]:
    out: dict[str, object] = {"id": value.id, "type": value.kind}
    if value.kind == "private":
        user = room.user(value.id)
        out |= {k: v for k, v in user.to_api().items() if k in ("first_name", "last_name", "username")}
    else:
        out["title"] = value.title
        if value.username:
            out["username"] = value.username
        if value.forum:
            out["is_forum"] = True
    return out


def full_chat(room: State, value: Chat) -> dict[str, object]:
    """getChat's answer."""
    out = chat(room, value)
    out |= {"accent_color_id": value.id % 7, "max_reaction_count": 11}
    out["accepted_gift_types"] = {
        "unlimited_gifts": False, "limited_gifts": False, "unique_gifts": False, "premium_subscription": False,
        "gifts_from_channels": False,
    }  # fmt: skip
    if value.kind != "private":
        out["permissions"] = {right: right in value.permissions for right in MEMBER_RIGHTS}
    pinned = [value.messages[i] for i in value.pinned if i in value.messages]
    if pinned:
        out["pinned_message"] = message(room, pinned[-1], replied=False)
    return out


def entities(room: State, value: Formatted) -> list[dict[str, object]]:
    out = []
    for entity in value.entities:
        shown = entity.to_api()
        if entity.type == "text_mention":
            user = room.users.get(int(str(shown.pop("user_id"))))
            if user is None:
                continue  # a mention of somebody the bot has never met is plain text
            shown["user"] = user.to_api()
        out.append(shown)
    return out


def message(room: State, value: Message, replied: bool = True) -> dict[str, object]:
    """`replied` false leaves out the message replied to: the platform nests one level only."""
    where = room.chats[value.chat_id]
    out: dict[str, object] = {"message_id": value.id, "date": int(value.date.timestamp()), "chat": chat(room, where)}
    if value.anonymous:
        out["from"] = GROUP_ANONYMOUS_BOT.to_api()
        out["sender_chat"] = chat(room, where)
    else:
        out["from"] = room.user(value.sender).to_api()
    if value.thread is not None:
        out["message_thread_id"] = value.thread
        if value.in_topic:
            out["is_topic_message"] = True
    if replied and value.reply_to is not None and value.reply_to in where.messages:
        out["reply_to_message"] = message(room, where.messages[value.reply_to], replied=False)
    if value.edited is not None:
        out["edit_date"] = int(value.edited.timestamp())
    if value.kind == "text":
        out["text"] = value.say.text
        if marked := entities(room, value.say):
            out["entities"] = marked
        if value.preview is not None:
            out["link_preview_options"] = value.preview
    else:
        out |= value.content
        if value.say.text:
            out["caption"] = value.say.text
            if marked := entities(room, value.say):
                out["caption_entities"] = marked
        if value.above:
            out["show_caption_above_media"] = True
    if value.album:
        out["media_group_id"] = value.album
    if value.protected:
        out["has_protected_content"] = True
    if value.keyboard is not None:
        out["reply_markup"] = value.keyboard
    return out
