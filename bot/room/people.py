"""What people in the room can do, each with the updates the platform would send the bot for it."""

from __future__ import annotations

import base64
from typing import Any

from . import shown
from .entities import Formatted, find_automatic
from .errors import CannotDo
from .files import Upload
from .groups import Groups
from .links import start_payload
from .world import Chat, Message

MOST_TEXT = 4096
TINY_PNG = base64.b64decode(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mNk+A8AAQUBAScY42YAAAAASUVORK5CYII="
)
SENDABLE = ("photo", "document", "voice", "sticker", "location")


class People(Groups):
    """Every method raises CannotDo, in one sentence, for what a messenger forbids."""

    def say(
        self, person: int, chat_id: int, text: str, *, reply_to: int | None = None, topic: int | None = None
    ) -> Message:
        """Send text; a very long one goes as several messages, as messengers do. Returns the last."""
        chat = self._open_chat(person, chat_id)
        text = text.strip()
        if not text:
            raise CannotDo("an empty message can't be sent")
        message = None
        for start in range(0, len(text), MOST_TEXT):
            say = find_automatic(Formatted(text[start : start + MOST_TEXT]))
            message = self.make(chat, person, say=say, **self._place(chat, person, reply_to, topic))
            self._said(message)
        assert message is not None
        return message

    def send(
        self, person: int, chat_id: int, kind: str, *, caption: str = "", upload: Upload | None = None,
        reply_to: int | None = None, topic: int | None = None,
    ) -> Message:  # fmt: skip
        """Something that is not text: photo, document, voice, sticker or location."""
        if kind not in SENDABLE:
            raise CannotDo(f"can't send {kind!r}; one of {', '.join(SENDABLE)}")
        chat = self._open_chat(person, chat_id)
        content = self._content(kind, upload)
        say = find_automatic(Formatted(caption.strip()[:1024]))
        message = self.make(chat, person, kind, say=say, content=content, **self._place(chat, person, reply_to, topic))
        self._said(message)
        return message

    def _content(self, kind: str, upload: Upload | None) -> dict[str, object]:
        match kind:
            case "location":
                return {"location": {"latitude": 41.8781, "longitude": -87.6298}}
            case "photo":
                stored = self.files.store(upload or Upload("photo.png", "image/png", TINY_PNG), "photos")
                return {"photo": [stored.sized() | {"width": stored.width, "height": stored.height}]}
            case "document":
                stored = self.files.store(upload or Upload("note.txt", "text/plain", b"a note\n"), "documents")
                return {"document": stored.sized() | {"file_name": stored.name, "mime_type": stored.kind}}
            case "voice":
                stored = self.files.store(upload or Upload("voice.ogg", "audio/ogg", b"OggS"), "voice")
                return {"voice": stored.sized() | {"duration": 3, "mime_type": "audio/ogg"}}
        stored = self.files.store(Upload("sticker.webp", "image/webp", b"RIFF"), "stickers")
        shape = {"type": "regular", "width": 512, "height": 512, "is_animated": False, "is_video": False}
        return {"sticker": stored.sized() | shape | {"emoji": "\N{POTATO}"}}

    def edit(self, person: int, chat_id: int, message_id: int, text: str) -> Message:
        """Change one's own text or caption."""
        chat = self.chat(chat_id)
        message = self._message(chat, message_id)
        if message.sender != person or message.kind == "service":
            raise CannotDo("only one's own message can be edited")
        message.say = find_automatic(Formatted(text.strip()[:MOST_TEXT]))
        message.edited = self.clock.now()
        self.show_message(message, "edit")
        self.tell_bot(message, "edited_message")
        return message

    def delete(self, person: int, chat_id: int, message_id: int) -> None:
        """Take away one's own message, or as an admin anybody's. The bot is not told, as on the platform."""
        chat = self.chat(chat_id)
        message = self._message(chat, message_id)
        if message.sender != person and chat.kind != "private" and not chat.member(person).admin:
            raise CannotDo("only an admin can delete somebody else's message")
        self.remove_message(chat, message_id, person)

    def start(self, person: int, payload: str = "") -> Message:
        """Open the private chat with the bot, or follow a deep link into it."""
        user = self.user(person)
        if user.blocked:
            self.unblock(person)
        return self.say(person, person, f"/start {payload}".strip())

    def press(self, person: int, chat_id: int, message_id: int, row: int, column: int) -> str | None:
        """Press an inline button. Returns the callback query's id, None for a button that only opens something.

        A button that leads into the private chat with the bot is followed, as by tapping Start there.
        """
        chat = self.chats[chat_id]
        message = self._message(chat, message_id)
        if chat.kind != "private" and not chat.member(person).present:
            raise CannotDo(f"{self.user(person).name} is not in this chat")
        found = [b for r, c, b in message.buttons() if (r, c) == (row, column)]
        if not found:
            raise CannotDo("there is no such button any more")
        button = found[0]
        self.show("press", chat, person, text=str(button["text"]), message=message.id, thread=message.thread)
        if "callback_data" in button:
            return self.press_data(person, chat, message, str(button["callback_data"]))
        if "url" in button and (payload := self.start_payload(str(button["url"]))) is not None:
            self.start(person, payload)
        return None

    def press_data(self, person: int, chat: Chat, message: Message, data: str) -> str | None:
        """A press whose data need not stand on a button: an old keyboard, or a forged call."""
        if not self.bot_in(chat):
            return None
        query_id = str(next(self._query_ids))
        self.queries[query_id] = (self.clock.now(), person, chat.id)
        body: dict[str, object] = {
            "id": query_id,
            "from": self.user(person).to_api(),
            "chat_instance": str(-(abs(chat.id) * 7919)),
            "data": data,
        }
        if message.id in chat.messages:
            body["message"] = shown.message(self, message)
        else:
            body["message"] = {"chat": shown.chat(self, chat), "message_id": message.id, "date": 0}
        self.queue.emit("callback_query", body, chat.id)
        return query_id

    def react(self, person: int, chat_id: int, message_id: int, emoji: str | None) -> None:
        """Set or (None) take back one's reaction. The bot hears of it in private or as an admin, if it asked."""
        chat = self.chat(chat_id)
        message = self._message(chat, message_id)
        old = message.reactions.get(person, ())
        new: tuple[dict[str, object], ...] = ({"type": "emoji", "emoji": emoji},) if emoji else ()
        message.reactions[person] = new
        self.show("reaction", chat, person, text=emoji or "", message=message.id)
        if chat.kind == "private" or self.bot_is_admin(chat):
            body: dict[str, object] = {
                "chat": shown.chat(self, chat), "message_id": message.id, "user": self.user(person).to_api(),
                "date": int(self.clock.now().timestamp()), "old_reaction": list(old), "new_reaction": list(new),
            }  # fmt: skip
            self.queue.emit("message_reaction", body, chat.id)

    def block(self, person: int) -> None:
        """Stop the bot in the private chat."""
        user = self.user(person)
        if user.blocked:
            return
        user.blocked = True
        chat = self.chats[person]
        self.show("service", chat, person, text=f"{user.name} stopped the bot")
        self.tell_membership("my_chat_member", chat, person, self.bot.id, "member", "kicked")

    def unblock(self, person: int) -> None:
        user = self.user(person)
        if not user.blocked:
            return
        user.blocked = False
        chat = self.chats[person]
        self.show("service", chat, person, text=f"{user.name} let the bot in again")
        self.tell_membership("my_chat_member", chat, person, self.bot.id, "kicked", "member")

    def start_payload(self, address: str) -> str | None:
        return start_payload(address, self.bot.username)

    def link_shown_to(self, person: int) -> str | None:
        """The payload of the newest deep link the bot has shown where this person could see it."""
        for chat_id, to, payload in reversed(self.links):
            chat = self.chat(chat_id)
            here = chat.id == person or (chat.kind != "private" and chat.member(person).present)
            if payload and here and to in (None, person):
                return payload
        return None

    # --- helpers -------------------------------------------------------------------------------

    def _open_chat(self, person: int, chat_id: int) -> Chat:
        chat = self.chat(chat_id)
        user = self.user(person)
        if chat.kind == "private":
            if chat.id != person:
                raise CannotDo("that is somebody else's private chat")
            if user.blocked:
                self.unblock(person)
            user.started = True
        elif not chat.member(person).present:
            raise CannotDo(f"{user.name} is not in {chat.title}")
        return chat

    def _message(self, chat: Chat, message_id: int) -> Message:
        try:
            return chat.messages[message_id]
        except KeyError:
            raise CannotDo(f"there is no message {message_id} in this chat") from None

    def _place(self, chat: Chat, person: int, reply_to: int | None, topic: int | None) -> dict[str, Any]:
        """Where a message stands: topic, reply, thread, and whether its writer is anonymous."""
        place: dict[str, Any] = {"anonymous": chat.member(person).anonymous}
        replied = self._message(chat, reply_to) if reply_to is not None else None
        if topic is not None:
            if topic not in chat.topics:
                raise CannotDo("there is no such topic in this chat")
            if chat.topics[topic].closed:
                raise CannotDo("this topic is closed")
            place |= {"thread": topic, "in_topic": True, "reply_to": topic}
        if replied is not None:
            place["reply_to"] = replied.id
            if chat.kind == "supergroup" and topic is None:
                place["thread"] = replied.thread if replied.thread is not None else replied.id
                place["in_topic"] = replied.in_topic
        return place

    def _said(self, message: Message) -> None:
        self.show_message(message)
        self.tell_bot(message)

    def remove_message(self, chat: Chat, message_id: int, by: int) -> None:
        message = chat.messages.pop(message_id)
        if message_id in chat.pinned:
            chat.pinned.remove(message_id)
        self.show("delete", chat, by, message=message_id, thread=message.thread)

    def reword(self, message: Message, **changes: Any) -> None:
        """Change a message in place, its date of edit included."""
        for key, value in changes.items():
            setattr(message, key, value)
        message.edited = self.clock.now()
