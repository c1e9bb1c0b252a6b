"""Who belongs to a group: joining, leaving, the bot's own coming and going, rights, topics, upgrades."""

from __future__ import annotations

from . import shown
from .errors import CannotDo
from .state import State
from .world import ADMIN_RIGHTS, BOT_ADMIN_RIGHTS, Chat, Member, Message, Topic

MESSAGES_BEFORE_UPGRADE = 100_000
"""An upgraded group counts its messages from here on, so that no number stands for two messages."""


class Groups(State):
    """What changes who is in a group, and as what. Raises CannotDo for what a messenger forbids."""

    def join(self, person: int, chat_id: int, by: int | None = None) -> Message:
        chat = self._group(chat_id)
        user = self.user(person)
        old = chat.member(person).status
        chat.members[person] = Member()
        message = self.service(
            chat, by or person, f"{user.name} joined", {"new_chat_members": [user.to_api()]}
        )  # fmt: skip
        self._tell_member(chat, by or person, person, old, "member")
        return message

    def leave(self, person: int, chat_id: int, by: int | None = None) -> Message:
        chat = self._group(chat_id)
        user = self.user(person)
        if not chat.member(person).present:
            raise CannotDo(f"{user.name} is not in {chat.title}")
        old = chat.member(person).status
        new = "left" if by in (None, person) else "kicked"
        chat.members[person] = Member(new)
        message = self.service(chat, by or person, f"{user.name} left", {"left_chat_member": user.to_api()})
        self._tell_member(chat, by or person, person, old, new)
        return message

    def add_bot(self, chat_id: int, by: int | None = None, *, quietly: bool = False) -> None:
        """Put the bot into a group. `quietly`: it was there before the story begins, nobody is told."""
        chat = self._group(chat_id)
        by = by if by is not None else self._owner(chat)
        old = chat.member(self.bot.id).status
        chat.members[self.bot.id] = Member()
        if quietly:
            return
        self.tell_membership("my_chat_member", chat, by, self.bot.id, old, "member")
        self.service(chat, by, f"{self.bot.name} was added", {"new_chat_members": [self.bot.to_api()]})

    def make_admin(
        self, chat_id: int, by: int | None = None, user_id: int | None = None, *,
        rights: frozenset[str] = BOT_ADMIN_RIGHTS, anonymous: bool = False, quietly: bool = False,
    ) -> None:  # fmt: skip
        """Make the bot (or a person) an admin."""
        chat = self._group(chat_id)
        who = user_id if user_id is not None else self.bot.id
        by = by if by is not None else self._owner(chat)
        if not chat.member(who).present:
            raise CannotDo(f"{self.user(who).name} is not in {chat.title}")
        old = chat.member(who).status
        chat.members[who] = Member("administrator", rights & set(ADMIN_RIGHTS), anonymous)
        if quietly:
            return
        self.show("service", chat, by, text=f"{self.user(who).name} is an admin now")
        if who == self.bot.id:
            self.tell_membership("my_chat_member", chat, by, who, old, "administrator")
        else:
            self._tell_member(chat, by, who, old, "administrator")

    def dismiss_admin(self, chat_id: int, by: int | None = None, user_id: int | None = None) -> None:
        chat = self._group(chat_id)
        who = user_id if user_id is not None else self.bot.id
        by = by if by is not None else self._owner(chat)
        chat.members[who] = Member()
        self.show("service", chat, by, text=f"{self.user(who).name} is no admin any more")
        if who == self.bot.id:
            self.tell_membership("my_chat_member", chat, by, who, "administrator", "member")
        else:
            self._tell_member(chat, by, who, "administrator", "member")

    def remove_bot(self, chat_id: int, by: int | None = None) -> None:
        chat = self._group(chat_id)
        by = by if by is not None else self._owner(chat)
        old = chat.member(self.bot.id).status
        chat.members[self.bot.id] = Member("kicked")
        self.tell_membership("my_chat_member", chat, by, self.bot.id, old, "kicked")
        self.service_to_people(chat, by, f"{self.bot.name} was removed", {"left_chat_member": self.bot.to_api()})

    def bot_leaves(self, chat_id: int) -> None:
        chat = self._group(chat_id)
        old = chat.member(self.bot.id).status
        chat.members[self.bot.id] = Member("left")
        self.tell_membership("my_chat_member", chat, self.bot.id, self.bot.id, old, "left")
        content: dict[str, object] = {"left_chat_member": self.bot.to_api()}
        self.service_to_people(chat, self.bot.id, f"{self.bot.name} left", content)

    def service_to_people(self, chat: Chat, sender: int, text: str, content: dict[str, object]) -> None:
        message = self.make(chat, sender, "service", content=content)
        self.show("service", chat, sender, text=text, message=message.id)

    def rename(self, person: int, chat_id: int, title: str) -> Message:
        chat = self._group(chat_id)
        chat.title = title
        return self.service(chat, person, f"the group is called {title} now", {"new_chat_title": title})

    def create_topic(self, by: int, chat_id: int, name: str, icon_color: int = 7322096) -> Topic:
        chat = self._group(chat_id)
        if not chat.forum:
            raise CannotDo(f"{chat.title} has no topics")
        new_id = chat.next_id + 1
        topic = chat.topics[new_id] = Topic(new_id, name, icon_color)
        content: dict[str, object] = {"forum_topic_created": {"name": name, "icon_color": icon_color}}
        self.service(chat, by, f"topic {name}", content, thread=new_id, in_topic=True)
        return topic

    def close_topic(self, by: int, chat_id: int, topic: int, closed: bool = True) -> None:
        chat = self._group(chat_id)
        chat.topics[topic].closed = closed
        word = "closed" if closed else "reopened"
        content: dict[str, object] = {f"forum_topic_{word}": {}}
        self.service(chat, by, f"topic {word}", content, thread=topic, in_topic=True)

    def upgrade_group(self, chat_id: int, by: int | None = None, *, forum: bool = False) -> Chat:
        """Turn a basic group into a supergroup with a new id; both chats get their service message."""
        old = self._group(chat_id)
        if old.kind != "group":
            raise CannotDo(f"{old.title} is a supergroup already")
        by = by if by is not None else self._owner(old)
        new = Chat(next(self._supergroup_ids), "supergroup", old.title, forum=forum, members=dict(old.members))
        new.permissions, new.migrated_from, new.next_id = old.permissions, old.id, MESSAGES_BEFORE_UPGRADE
        self.chats[new.id] = new
        told = self.make(old, by, "service", content={"migrate_to_chat_id": new.id})
        self.show("service", old, by, text="the group was upgraded", message=told.id)
        if self.bot_in(old):
            self.queue.emit("message", shown.message(self, told), old.id)
        old.migrated_to = new.id
        arrived = self.make(new, by, "service", content={"migrate_from_chat_id": old.id})
        self.tell_bot(arrived)
        return new

    # --- helpers -------------------------------------------------------------------------------

    def _group(self, chat_id: int) -> Chat:
        chat = self.chat(chat_id)
        if chat.kind == "private":
            raise CannotDo("this is a private chat, not a group")
        return chat

    def _owner(self, chat: Chat) -> int:
        return next((u for u, m in chat.members.items() if m.status == "creator"), self.bot.id)

    def _tell_member(self, chat: Chat, by: int, who: int, old: str, new: str) -> None:
        """The platform tells of other people's membership only an admin bot that asked for it."""
        if self.bot_is_admin(chat):
            self.tell_membership("chat_member", chat, by, who, old, new)

    def tell_membership(self, kind: str, chat: Chat, by: int, who: int, old: str, new: str) -> None:
        user = self.user(who)
        rights = chat.member(who).rights or BOT_ADMIN_RIGHTS
        body: dict[str, object] = {
            "chat": shown.chat(self, chat),
            "from": self.user(by).to_api(),
            "date": int(self.clock.now().timestamp()),
            "old_chat_member": Member(old, rights).to_api(user),
            "new_chat_member": Member(new, rights).to_api(user),
        }
        self.queue.emit(kind, body, chat.id)
