"""The room as the page needs it: people, chats, messages, the clock."""

from __future__ import annotations

from zoneinfo import ZoneInfo

from .links import start_payload
from .player import Player
from .rendered import to_html
from .room import Room
from .world import Chat, Message, Seen

View = dict[str, object]


class Views:
    def __init__(self, room: Room, zone: ZoneInfo, player: Player) -> None:
        self.room = room
        self.zone = zone
        self.player = player

    def groups(self) -> list[Chat]:
        """Groups as they are now, without those that were upgraded."""
        return [c for c in self.room.chats.values() if c.kind != "private" and c.migrated_to is None]

    def chat(self, chat: Chat) -> View:
        """A chat with all its messages; an upgraded group begins with what was said before."""
        messages: list[View] = []
        older = self.room.chats.get(chat.migrated_from or 0)
        for part in [older, chat] if older else [chat]:
            messages += [view for m in part.messages.values() if (view := self.message(m)) is not None]
        return self.head(chat) | {"messages": messages}

    def head(self, chat: Chat) -> View:
        user = self.room.users.get(chat.id)
        return {
            "id": chat.id,
            "kind": chat.kind,
            "title": chat.title,
            "pinned": [f"{chat.id}/{i}" for i in chat.pinned],
            "members": [u for u, m in chat.members.items() if m.present],
            "admins": [u for u, m in chat.members.items() if m.admin],
            "topics": [{"id": t.id, "name": t.name} for t in chat.topics.values()],
            "started": user.started if user else True,
            "blocked": user.blocked if user else False,
            "bot_here": self.room.bot_in(chat),
        }

    def message(self, message: Message) -> View | None:
        """None for what nobody sees: the service messages that only tell the bot of a pin or a new id."""
        chat = self.room.chats[message.chat_id]
        text = self.room.plain(message)
        if message.kind == "service":
            text = self._service(message)
            if not text:
                return None
        replied = chat.messages.get(message.reply_to or 0)
        if replied is not None and replied.kind == "service":
            replied = None
        counts: dict[str, list[int]] = {}
        for user, chosen in message.reactions.items():
            for reaction in chosen:
                counts.setdefault(str(reaction.get("emoji")), []).append(user)
        formatted = message.kind != "service" and bool(message.say.text)
        return {
            "key": f"{message.chat_id}/{message.id}",
            "chat": chat.migrated_to or message.chat_id,
            "id": message.id,
            "from": message.sender,
            "at": message.date.astimezone(self.zone).isoformat(timespec="seconds"),
            "service": message.kind == "service",
            "html": to_html(message.say, self.room.bot.username) if formatted else "",
            "text": text,
            "edited": message.edited is not None,
            "buttons": self._buttons(message),
            "prompt": message.prompt,
            "file": self._file(message),
            "topic": chat.topics[message.thread].name if message.thread in chat.topics else None,
            "reply": None if replied is None else {"from": replied.sender, "text": _quoted(self.room.plain(replied))},
            "reactions": [{"emoji": emoji, "by": who} for emoji, who in counts.items()],
        }

    def _service(self, message: Message) -> str:
        content = message.content
        named: dict[str, object] = {}
        if isinstance(joined := content.get("new_chat_members"), list) and joined:
            named = joined[0]
        if isinstance(left := content.get("left_chat_member"), dict):
            named = left
        if named:
            return f"{named['first_name']} {'left' if 'left_chat_member' in content else 'joined'}"
        if "new_chat_title" in content:
            return f"The group is called “{content['new_chat_title']}” now"
        if isinstance(topic := content.get("forum_topic_created"), dict):
            return f"Topic “{topic['name']}”"
        return "The group was upgraded" if "migrate_to_chat_id" in content else ""

    def _buttons(self, message: Message) -> list[list[View]]:
        rows: list[list[View]] = []
        for row, column, button in message.buttons():
            while len(rows) <= row:
                rows.append([])
            view: View = {"label": button["text"], "row": row, "column": column}
            if "url" in button:
                inside = start_payload(str(button["url"]), self.room.bot.username) is not None
                view["opens"] = "private" if inside else button["url"]
            if isinstance(copied := button.get("copy_text"), dict):
                view["copy"] = copied["text"]
            rows[row].append(view)
        return rows

    def _file(self, message: Message) -> View | None:
        if message.kind not in ("photo", "document"):
            return None
        found = message.content[message.kind]
        size = found[-1] if isinstance(found, list) else found
        assert isinstance(size, dict)
        stored = self.room.files.get(str(size["file_id"]))
        return {
            "url": f"/room/file/{stored.path}", "name": stored.name, "picture": message.kind == "photo",
            "width": stored.width, "height": stored.height, "size": len(stored.data),
        }  # fmt: skip

    def menu(self, person: int, chat: Chat) -> list[View]:
        user = self.room.user(person)
        private = chat.kind == "private"
        return self.room.profile.menu(chat.id, private, chat.member(person).admin, person, user.language_code)

    def clock(self) -> View:
        now = self.player.clock.now().astimezone(self.zone)
        return {"now": now.isoformat(timespec="seconds"), "zone": str(self.zone)}

    def state(self) -> View:
        people = [u for u in self.room.users.values() if not u.is_bot]
        groups = self.groups()
        return {
            "bot": {"id": self.room.bot.id, "name": self.room.bot.name, "username": self.room.bot.username},
            "people": [{"id": u.id, "name": u.name} for u in people],
            "chats": [self.chat(c) for c in groups] + [self.chat(self.room.chats[u.id]) for u in people],
            "group": groups[0].id if groups else None,
            "menus": {
                str(u.id): {
                    "private": self.menu(u.id, self.room.chats[u.id]),
                    "group": self.menu(u.id, groups[0]) if groups else [],
                }
                for u in people
            },
            "clock": self.clock(),
        }  # fmt: skip

    def happened(self, seen: Seen) -> View:
        """One live event: what happened, and the message it changed as it stands now."""
        chat = self.room.chats[seen.chat_id]
        message = chat.messages.get(seen.message or 0)
        current = self.room.chat(seen.chat_id)
        return {
            "kind": seen.kind,
            "chat": current.id,
            "key": f"{seen.chat_id}/{seen.message}" if seen.message is not None else None,
            "from": seen.sender,
            "to": seen.to,
            "text": seen.text,
            "alert": seen.alert,
            "start": start_payload(seen.url, self.room.bot.username) if seen.url else None,
            "message": self.message(message) if message is not None else None,
            "head": self.head(current),
            "clock": self.clock(),
        }


QUOTED = 90


def _quoted(text: str) -> str:
    """The beginning of what is replied to; where something is left out, that shows."""
    return text if len(text) <= QUOTED else text[: QUOTED - 1].rstrip() + "…"
