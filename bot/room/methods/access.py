"""May the bot do this in this chat? The refusals are the platform's."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..errors import ApiError, bad, forbidden

if TYPE_CHECKING:
    from ..call import Call
    from ..room import Room
    from ..world import Chat, Message


def known_chat(room: Room, call: Call) -> Chat:
    raw = call.text("chat_id").strip()
    if not raw:
        raise bad("chat_id is empty")
    try:
        chat = room.chats.get(int(raw))
    except ValueError:
        chat = next((c for c in room.chats.values() if c.username and f"@{c.username}" == raw), None)
    if chat is None:
        raise bad("chat not found")
    if chat.migrated_to is not None:
        raise ApiError(
            400, "Bad Request: group chat was upgraded to a supergroup chat", migrate_to_chat_id=chat.migrated_to
        )
    return chat


def chat_to_read(room: Room, call: Call) -> Chat:
    chat = known_chat(room, call)
    if chat.kind == "private":
        if not room.user(chat.id).started:
            raise bad("chat not found")
        return chat
    _in_group(room, chat)
    return chat


def chat_to_write(room: Room, call: Call) -> Chat:
    chat = known_chat(room, call)
    if chat.kind == "private":
        user = room.user(chat.id)
        if user.deactivated:
            raise forbidden("user is deactivated")
        if user.blocked:
            raise forbidden("bot was blocked by the user")
        if not user.started:
            raise forbidden("bot can't initiate conversation with a user")
        return chat
    _in_group(room, chat)
    if not room.bot_is_admin(chat) and "can_send_messages" not in chat.permissions:
        raise bad("not enough rights to send text messages to the chat")
    return chat


def _in_group(room: Room, chat: Chat) -> None:
    kind = "supergroup chat" if chat.kind == "supergroup" else "group chat"
    if chat.gone:
        raise forbidden("the group chat was deleted")
    status = chat.member(room.bot.id).status
    if status == "kicked":
        raise forbidden(f"bot was kicked from the {kind}")
    if status == "left":
        raise forbidden(f"bot is not a member of the {kind}")


def thread(chat: Chat, call: Call) -> int | None:
    """The topic to write in. The General topic is addressed by leaving it out, never by 1."""
    if not call.has("message_thread_id") or call.number("message_thread_id") == 0:
        return None
    topic = chat.topics.get(call.number("message_thread_id"))
    if topic is None:
        raise bad("message thread not found")
    if topic.closed:
        raise bad("TOPIC_CLOSED")
    return topic.id


def replied(chat: Chat, call: Call) -> int | None:
    parameters = call.mapping("reply_parameters") or {}
    unknown = set(parameters) - {"message_id", "chat_id", "allow_sending_without_reply"}
    if unknown:
        raise bad(f'the room does not know the field "{sorted(unknown)[0]}" of reply_parameters')
    raw = parameters.get("message_id", call.number("reply_to_message_id"))
    if not isinstance(raw, int) or isinstance(raw, bool):
        raise bad('can\'t parse reply parameters: Field "message_id" must be of type Number')
    if not raw:
        return None
    if parameters.get("chat_id") not in (None, chat.id, str(chat.id)):
        raise bad("the room knows replies within one chat only")
    if raw in chat.messages and chat.messages[raw].kind != "service":
        return raw
    if parameters.get("allow_sending_without_reply") or call.flag("allow_sending_without_reply"):
        return None
    raise bad("message to be replied not found")


def flood(room: Room, chat: Chat, weight: int = 1) -> None:
    if room.flood_limits:
        room.floods.count(chat.id, room.clock.now(), weight)


def own_message(room: Room, chat: Chat, call: Call) -> Message:
    if not call.has("message_id"):
        raise bad("message identifier is not specified")
    message = chat.messages.get(call.number("message_id"))
    if message is None:
        raise bad("message to edit not found")
    if message.sender != room.bot.id or message.kind == "service":
        raise bad("message can't be edited")
    return message
