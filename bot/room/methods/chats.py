"""What the bot may ask about chats, and do to them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from .. import shown
from ..errors import CannotDo, bad
from . import method
from .access import chat_to_read

if TYPE_CHECKING:
    from ..call import Call
    from ..room import Room


@method("getChat", "chat_id")
def get_chat(room: Room, call: Call) -> dict[str, object]:
    return shown.full_chat(room, chat_to_read(room, call))


@method("getChatMember", "chat_id user_id")
def get_member(room: Room, call: Call) -> dict[str, object]:
    chat = chat_to_read(room, call)
    user_id = call.number("user_id")
    if user_id not in room.users:
        raise bad("user not found")
    if chat.kind == "private":
        if user_id not in (chat.id, room.bot.id):
            raise bad("member not found")
        return {"status": "member", "user": room.user(user_id).to_api()}
    return chat.member(user_id).to_api(room.user(user_id))


@method("getChatMemberCount", "chat_id")
def count_members(room: Room, call: Call) -> int:
    chat = chat_to_read(room, call)
    return 2 if chat.kind == "private" else sum(m.present for m in chat.members.values())


@method("getChatAdministrators", "chat_id return_bots")
def get_admins(room: Room, call: Call) -> list[dict[str, object]]:
    """Other bots are left out; the asking bot is listed."""
    chat = chat_to_read(room, call)
    if chat.kind == "private":
        raise bad("there are no administrators in the private chat")
    return [m.to_api(room.user(u)) for u, m in chat.members.items() if m.admin]


@method("leaveChat", "chat_id")
def leave_chat(room: Room, call: Call) -> bool:
    chat = chat_to_read(room, call)
    if chat.kind == "private":
        raise bad("can't leave a private chat")
    room.bot_leaves(chat.id)
    return True


@method("createForumTopic", "chat_id name icon_color icon_custom_emoji_id")
def create_topic(room: Room, call: Call) -> dict[str, object]:
    chat = chat_to_read(room, call)
    if not 1 <= len(call.text("name")) <= 128:
        raise bad("TOPIC_TITLE_EMPTY" if not call.text("name") else "TOPIC_TITLE_INVALID")
    rights = chat.member(room.bot.id).rights if chat.kind != "private" else frozenset()
    if "can_manage_topics" not in rights and "can_manage_topics" not in chat.permissions:
        raise bad("not enough rights to create a topic")
    try:
        topic = room.create_topic(room.bot.id, chat.id, call.text("name"), call.number("icon_color", 7322096))
    except CannotDo:
        raise bad("the chat is not a forum") from None
    return {"message_thread_id": topic.id, "name": topic.name, "icon_color": topic.icon_color}


@method("getFile", "file_id")
def get_file(room: Room, call: Call) -> dict[str, object]:
    stored = room.files.get(call.text("file_id"))
    if len(stored.data) > 20_000_000:
        raise bad("file is too big")
    return stored.sized() | {"file_path": stored.path}
