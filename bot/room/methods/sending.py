"""sendMessage and the other ways to say something."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from .. import keyboards, shown
from ..call import formatted
from ..errors import bad
from ..files import Stored, Upload
from . import SENDING, method
from .access import chat_to_write, flood, replied, thread

if TYPE_CHECKING:
    from ..call import Call
    from ..room import Room
    from ..world import Chat, Message

MOST_CAPTION = 1024
ACTIONS = (
    "typing", "upload_photo", "record_video", "upload_video", "record_voice", "upload_voice", "upload_document",
    "choose_sticker", "find_location", "record_video_note", "upload_video_note",
)  # fmt: skip
_albums = itertools.count(13_000_000_000_000_001)


def markup(call: Call, chat: Chat) -> dict[str, Any]:
    raw = call.mapping("reply_markup")
    if not raw:
        return {}
    if "inline_keyboard" in raw:
        return {"keyboard": keyboards.inline(raw)}
    return {"prompt": keyboards.prompt(raw, chat.kind == "private")}


def preview(call: Call) -> dict[str, object] | None:
    raw = call.mapping("link_preview_options")
    if raw is None and call.flag("disable_web_page_preview"):
        raw = {"is_disabled": True}
    return dict(raw) if raw is not None else None


def deliver(room: Room, call: Call, chat: Chat, kind: str, file: str | None = None, **fields: Any) -> dict[str, object]:
    """Put a message of the bot into the chat, shown to everybody there, and give it back."""
    place: dict[str, Any] = {"thread": thread(chat, call), "reply_to": replied(chat, call)}
    fields = markup(call, chat) | fields
    flood(room, chat)
    message = put(room, chat, kind, place, file, protected=call.flag("protect_content"), **fields)
    return shown.message(room, message)


def put(room: Room, chat: Chat, kind: str, place: dict[str, Any], file: str | None, **fields: Any) -> Message:
    place["in_topic"] = place["thread"] is not None
    answered = chat.messages.get(place["reply_to"] or 0)
    if answered is not None and chat.kind == "supergroup" and place["thread"] is None:
        place["thread"] = answered.thread if answered.thread is not None else answered.id
        place["in_topic"] = answered.in_topic
    message = room.make(chat, room.bot.id, kind, **place, **fields)
    room.show_message(message, file=file)
    return message


@method("sendMessage", SENDING + "text parse_mode entities link_preview_options disable_web_page_preview")
def send_message(room: Room, call: Call) -> dict[str, object]:
    chat = chat_to_write(room, call)
    say = call.formatted()
    if not say.text:
        raise bad("message text is empty")
    return deliver(room, call, chat, "text", say=say, preview=preview(call))


def picked(room: Room, call: Call, value: object, folder: str, field: str) -> Stored:
    """The file a parameter means: uploaded with the call, or known by its id."""
    upload: Upload | None = call.files.get(field) if value in (None, "") else None
    if isinstance(value, str) and value.startswith("attach://"):
        upload = call.files.get(value.removeprefix("attach://"))
        if upload is None:
            raise bad(f"can't find file to upload with name {value.removeprefix('attach://')}")
    if upload is not None:
        return room.files.store(upload, folder)
    if not isinstance(value, str) or not value:
        raise bad(f"there is no {field} in the request")
    if value.startswith(("http://", "https://", "file:")):
        raise bad("failed to get HTTP URL content (the room fetches nothing from addresses)")
    return room.files.get(value)


def photo(stored: Stored) -> dict[str, object]:
    if not stored.width:
        raise bad("can't use file of type Document as Photo")
    size = stored.sized() | {"width": stored.width, "height": stored.height}
    return {"photo": [size]}


def document(stored: Stored) -> dict[str, object]:
    return {"document": stored.sized() | {"file_name": stored.name, "mime_type": stored.kind}}


CAPTION = "caption parse_mode caption_entities show_caption_above_media "


@method("sendPhoto", SENDING + CAPTION + "photo")
def send_photo(room: Room, call: Call) -> dict[str, object]:
    chat = chat_to_write(room, call)
    say = call.formatted("caption", "caption_entities", most=MOST_CAPTION)
    stored = picked(room, call, call.values.get("photo"), "photos", "photo")
    above = call.flag("show_caption_above_media")
    return deliver(room, call, chat, "photo", stored.path, say=say, content=photo(stored), above=above)


@method("sendDocument", SENDING + CAPTION + "document disable_content_type_detection")
def send_document(room: Room, call: Call) -> dict[str, object]:
    chat = chat_to_write(room, call)
    say = call.formatted("caption", "caption_entities", most=MOST_CAPTION)
    stored = picked(room, call, call.values.get("document"), "documents", "document")
    return deliver(room, call, chat, "document", stored.path, say=say, content=document(stored))


@method(
    "sendMediaGroup",
    "chat_id message_thread_id media disable_notification protect_content reply_parameters reply_to_message_id "
    "allow_sending_without_reply",
)
def send_media_group(room: Room, call: Call) -> list[dict[str, object]]:
    chat = chat_to_write(room, call)
    media = call.sequence("media") or []
    if not 2 <= len(media) <= 10:
        raise bad("wrong number of media in the album: 2-10 are allowed")
    ready = [media_item(room, call, item) for item in media]
    if len({kind for kind, _, _, _ in ready}) > 1:
        raise bad("document can't be mixed with other media types")
    place: dict[str, Any] = {"thread": thread(chat, call), "reply_to": replied(chat, call)}
    flood(room, chat, len(ready))
    album = str(next(_albums))
    messages = [
        put(room, chat, kind, dict(place), file, say=say, content=content, album=album)
        for kind, say, content, file in ready
    ]
    return [shown.message(room, message) for message in messages]


def media_item(room: Room, call: Call, raw: object) -> tuple[str, Any, dict[str, object], str]:
    """(kind, caption, content, path) of an InputMediaPhoto or InputMediaDocument."""
    if not isinstance(raw, Mapping):
        raise bad("can't parse InputMedia: expected an Object")
    known = {
        "type", "media", "caption", "parse_mode", "caption_entities", "show_caption_above_media",
        "disable_content_type_detection",
    }  # fmt: skip
    if unknown := set(raw) - known:
        raise bad(f'the room does not know the field "{sorted(unknown)[0]}" of InputMedia')
    entities = raw.get("caption_entities")
    say = formatted(
        str(raw.get("caption", "")), str(raw.get("parse_mode", "")), entities if isinstance(entities, list) else None,
        MOST_CAPTION, "message caption is too long",
    )  # fmt: skip
    if raw.get("type") == "photo":
        stored = picked(room, call, raw.get("media"), "photos", "media")
        return "photo", say, photo(stored), stored.path
    if raw.get("type") == "document":
        stored = picked(room, call, raw.get("media"), "documents", "media")
        return "document", say, document(stored), stored.path
    raise bad(f"can't parse InputMedia: the room does not know the type {raw.get('type')!r}")


@method("sendLocation", SENDING + "latitude longitude")
def send_location(room: Room, call: Call) -> dict[str, object]:
    chat = chat_to_write(room, call)
    latitude, longitude = call.real("latitude"), call.real("longitude")
    if abs(latitude) > 90 or abs(longitude) > 180:
        raise bad("location must be non-empty")
    content: dict[str, object] = {"location": {"latitude": latitude, "longitude": longitude}}
    return deliver(room, call, chat, "location", content=content)


@method("sendChatAction", "chat_id message_thread_id action")
def send_chat_action(room: Room, call: Call) -> bool:
    chat = chat_to_write(room, call)
    thread(chat, call)
    if call.text("action") not in ACTIONS:
        raise bad("wrong parameter action in request")
    return True
