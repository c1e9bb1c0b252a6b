"""Changing, removing, pinning and reacting to what was said."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING, Any

from telegram.constants import ReactionEmoji

from .. import keyboards, shown
from ..errors import bad
from . import method
from .access import chat_to_read, chat_to_write, flood, own_message
from .sending import MOST_CAPTION, media_item, preview

if TYPE_CHECKING:
    from ..call import Call
    from ..room import Room
    from ..world import Chat, Message

NOT_MODIFIED = (
    "message is not modified: specified new message content and reply markup are exactly the same as a current "
    "content and reply markup of the message"
)
DELETE_WITHIN = timedelta(hours=48)
EDITING = "chat_id message_id reply_markup "
REACTIONS = frozenset(str(emoji.value) for emoji in ReactionEmoji)


def keyboard(call: Call) -> dict[str, object] | None:
    """An edit without a keyboard takes the old one away."""
    raw = call.mapping("reply_markup")
    if not raw:
        return None
    if "inline_keyboard" not in raw:
        raise bad("inline keyboard expected")
    return keyboards.inline(raw)


def change(room: Room, message: Message, file: str | None = None, **changes: Any) -> dict[str, object]:
    if all(getattr(message, key) == value for key, value in changes.items()):
        raise bad(NOT_MODIFIED)
    flood(room, room.chats[message.chat_id])
    room.reword(message, **changes)
    room.show_message(message, "edit", file=file)
    return shown.message(room, message)


@method("editMessageText", EDITING + "text parse_mode entities link_preview_options disable_web_page_preview")
def edit_text(room: Room, call: Call) -> dict[str, object]:
    message = own_message(room, chat_to_write(room, call), call)
    say = call.formatted()
    if not say.text:
        raise bad("message text is empty")
    if message.kind != "text":
        raise bad("there is no text in the message to edit")
    return change(room, message, say=say, keyboard=keyboard(call), preview=preview(call))


@method("editMessageCaption", EDITING + "caption parse_mode caption_entities show_caption_above_media")
def edit_caption(room: Room, call: Call) -> dict[str, object]:
    message = own_message(room, chat_to_write(room, call), call)
    say = call.formatted("caption", "caption_entities", most=MOST_CAPTION)
    if message.kind not in ("photo", "document"):
        raise bad("there is no caption in the message to edit")
    above = call.flag("show_caption_above_media")
    return change(room, message, say=say, keyboard=keyboard(call), above=above)


@method("editMessageReplyMarkup", EDITING)
def edit_markup(room: Room, call: Call) -> dict[str, object]:
    message = own_message(room, chat_to_write(room, call), call)
    return change(room, message, keyboard=keyboard(call))


@method("editMessageMedia", EDITING + "media")
def edit_media(room: Room, call: Call) -> dict[str, object]:
    message = own_message(room, chat_to_write(room, call), call)
    kind, say, content, file = media_item(room, call, call.mapping("media"))
    return change(room, message, file, kind=kind, say=say, content=content, keyboard=keyboard(call))


def deletable(room: Room, chat: Chat, message: Message) -> bool:
    if room.bot_is_admin(chat) and "can_delete_messages" in chat.member(room.bot.id).rights:
        return True
    fresh = room.clock.now() - message.date < DELETE_WITHIN
    return fresh and (chat.kind == "private" or message.sender == room.bot.id)


@method("deleteMessage", "chat_id message_id")
def delete_message(room: Room, call: Call) -> bool:
    chat = chat_to_write(room, call)
    message = chat.messages.get(call.number("message_id"))
    if message is None:
        raise bad("message to delete not found")
    if not deletable(room, chat, message):
        raise bad("message can't be deleted")
    room.remove_message(chat, message.id, room.bot.id)
    return True


@method("deleteMessages", "chat_id message_ids")
def delete_messages(room: Room, call: Call) -> bool:
    """Messages that are not there, or may not go, are skipped, as on the platform."""
    chat = chat_to_write(room, call)
    wanted = call.sequence("message_ids") or []
    if not 1 <= len(wanted) <= 100:
        raise bad("message identifiers must be 1-100")
    for message_id in wanted:
        message = chat.messages.get(int(str(message_id)))
        if message is not None and deletable(room, chat, message):
            room.remove_message(chat, message.id, room.bot.id)
    return True


def _may_pin(room: Room, chat: Chat) -> None:
    if chat.kind != "private" and not chat.may_pin(room.bot.id):
        raise bad("not enough rights to manage pinned messages in the chat")


@method("pinChatMessage", "chat_id message_id disable_notification")
def pin(room: Room, call: Call) -> bool:
    chat = chat_to_write(room, call)
    _may_pin(room, chat)
    message = chat.messages.get(call.number("message_id"))
    if message is None or message.kind == "service":
        raise bad("message to pin not found")
    if chat.pinned and chat.pinned[-1] == message.id:
        return True
    if message.id in chat.pinned:
        chat.pinned.remove(message.id)
    chat.pinned.append(message.id)
    room.show("pin", chat, room.bot.id, message=message.id, text=room.plain(message), thread=message.thread)
    content: dict[str, object] = {"pinned_message": shown.message(room, message, replied=False)}
    told = room.make(chat, room.bot.id, "service", content=content, thread=message.thread, in_topic=message.in_topic)
    room.tell_bot(told)
    return True


@method("unpinChatMessage", "chat_id message_id")
def unpin(room: Room, call: Call) -> bool:
    chat = chat_to_write(room, call)
    _may_pin(room, chat)
    if not call.has("message_id"):
        which = chat.pinned[-1:]
    else:
        which = [i for i in chat.pinned if i == call.number("message_id")]
    if not which:
        raise bad("message to unpin not found")
    _unpin(room, chat, which)
    return True


@method("unpinAllChatMessages", "chat_id")
def unpin_all(room: Room, call: Call) -> bool:
    chat = chat_to_write(room, call)
    _may_pin(room, chat)
    _unpin(room, chat, list(chat.pinned))
    return True


def _unpin(room: Room, chat: Chat, which: list[int]) -> None:
    for message_id in which:
        chat.pinned.remove(message_id)
        room.show("service", chat, room.bot.id, text="message unpinned", message=message_id)


@method("setMessageReaction", "chat_id message_id reaction is_big")
def react(room: Room, call: Call) -> bool:
    """A bot may set one reaction, from the platform's fixed list."""
    chat = chat_to_read(room, call)
    message = chat.messages.get(call.number("message_id"))
    if message is None:
        raise bad("message to react not found")
    wanted = call.sequence("reaction") or []
    if len(wanted) > 1:
        raise bad("REACTIONS_TOO_MANY")
    chosen = tuple(item for item in wanted if isinstance(item, dict))
    for item in chosen:
        if item.get("type") != "emoji" or item.get("emoji") not in REACTIONS:
            raise bad("REACTION_INVALID")
    if message.reactions.get(room.bot.id, ()) != chosen:
        message.reactions[room.bot.id] = chosen
        room.show(
            "reaction", chat, room.bot.id, text=str(chosen[0]["emoji"]) if chosen else "", message=message.id,
            thread=message.thread,
        )  # fmt: skip
    return True


QUERY_LIVES = timedelta(seconds=60)
"""Common practice, no source: the platform does not publish it, bots see queries die after about a minute."""


@method("answerCallbackQuery", "callback_query_id text show_alert url cache_time")
def answer_query(room: Room, call: Call) -> bool:
    query = room.queries.get(call.text("callback_query_id"))
    if query is None or room.clock.now() - query[0] > QUERY_LIVES:
        raise bad("query is too old and response timeout expired or query ID is invalid")
    text = call.text("text")
    if len(text) > 200:
        raise bad("MESSAGE_TOO_LONG")
    _, person, chat_id = query
    if call.has("url"):
        payload = room.start_payload(call.text("url"))
        if payload is None:
            raise bad("URL_INVALID")
        room.links.append((chat_id, person, payload))
    del room.queries[call.text("callback_query_id")]
    room.show(
        "answer", room.chats[chat_id], room.bot.id, text=text, to=person, alert=call.flag("show_alert"),
        url=call.text("url") or None,
    )  # fmt: skip
    return True
