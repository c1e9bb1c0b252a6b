"""Who and what is in the room: people, chats, topics, members, messages. Plain values, no rules."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime

from .entities import Formatted

ADMIN_RIGHTS = (
    "can_manage_chat", "can_delete_messages", "can_manage_video_chats", "can_restrict_members",
    "can_promote_members", "can_change_info", "can_invite_users", "can_post_stories", "can_edit_stories",
    "can_delete_stories", "can_pin_messages", "can_manage_topics",
)  # fmt: skip
BOT_ADMIN_RIGHTS = frozenset(
    {"can_manage_chat", "can_delete_messages", "can_invite_users", "can_pin_messages", "can_manage_topics"}
)
MEMBER_RIGHTS = (
    "can_send_messages", "can_send_audios", "can_send_documents", "can_send_photos", "can_send_videos",
    "can_send_video_notes", "can_send_voice_notes", "can_send_polls", "can_send_other_messages",
    "can_add_web_page_previews", "can_change_info", "can_invite_users", "can_pin_messages", "can_manage_topics",
)  # fmt: skip
ANONYMOUS_ADMIN = 1087968824
"""The platform's account behind which an anonymous admin writes."""


@dataclass
class User:
    """`started`: has opened the private chat with the bot; `blocked`: has blocked it since."""

    id: int
    first_name: str
    last_name: str = ""
    username: str = ""
    language_code: str = ""
    is_bot: bool = False
    started: bool = False
    blocked: bool = False
    deactivated: bool = False

    @property
    def name(self) -> str:
        return f"{self.first_name} {self.last_name}".strip()

    def to_api(self) -> dict[str, object]:
        out: dict[str, object] = {"id": self.id, "is_bot": self.is_bot, "first_name": self.first_name}
        for key in ("last_name", "username", "language_code"):
            if value := getattr(self, key):
                out[key] = value
        return out


@dataclass
class Member:
    """`status` in the Bot API's words: creator, administrator, member, left, kicked."""

    status: str = "member"
    rights: frozenset[str] = frozenset()
    anonymous: bool = False

    @property
    def present(self) -> bool:
        return self.status in ("creator", "administrator", "member")

    @property
    def admin(self) -> bool:
        return self.status in ("creator", "administrator")

    def to_api(self, user: User) -> dict[str, object]:
        out: dict[str, object] = {"status": self.status, "user": user.to_api()}
        if self.status == "creator":
            out["is_anonymous"] = self.anonymous
        elif self.status == "administrator":
            out |= {"can_be_edited": False, "is_anonymous": self.anonymous}
            out |= {right: right in self.rights for right in ADMIN_RIGHTS}
        elif self.status == "kicked":
            out["until_date"] = 0
        return out


@dataclass
class Topic:
    id: int
    name: str
    icon_color: int = 7322096
    closed: bool = False


NOTHING = Formatted("")


@dataclass
class Message:
    """One message. `kind`: text, photo, document, voice, sticker, location, poll or service.

    `content` holds the Bot API fields of what is not text (the photo sizes, the service fact, ...).
    `say` is the text or the caption.
    """

    id: int
    chat_id: int
    sender: int
    date: datetime
    kind: str = "text"
    say: Formatted = NOTHING
    content: dict[str, object] = field(default_factory=dict)
    reply_to: int | None = None
    thread: int | None = None
    in_topic: bool = False
    keyboard: dict[str, object] | None = None
    """The inline keyboard; other keyboards belong to a person's screen and are kept in `prompt`."""
    prompt: dict[str, object] | None = None
    preview: dict[str, object] | None = None
    edited: datetime | None = None
    reactions: dict[int, tuple[dict[str, object], ...]] = field(default_factory=dict)
    anonymous: bool = False
    protected: bool = False
    above: bool = False
    album: str = ""

    def buttons(self) -> Iterator[tuple[int, int, dict[str, object]]]:
        """(row, column, button) in reading order."""
        rows = (self.keyboard or {}).get("inline_keyboard", [])
        assert isinstance(rows, list)
        for r, row in enumerate(rows):
            for c, button in enumerate(row):
                yield r, c, button

    def labels(self) -> list[list[dict[str, str]]]:
        """The buttons as people see them: a label and, where it leads outside, the address."""
        rows: list[list[dict[str, str]]] = []
        for r, _, button in self.buttons():
            while len(rows) <= r:
                rows.append([])
            seen = {"label": str(button["text"])}
            if "url" in button:
                seen["url"] = str(button["url"])
            rows[r].append(seen)
        return rows


@dataclass
class Chat:
    id: int
    kind: str
    title: str = ""
    username: str = ""
    forum: bool = False
    members: dict[int, Member] = field(default_factory=dict)
    permissions: frozenset[str] = frozenset(MEMBER_RIGHTS) - {"can_manage_topics"}
    topics: dict[int, Topic] = field(default_factory=dict)
    messages: dict[int, Message] = field(default_factory=dict)
    pinned: list[int] = field(default_factory=list)
    migrated_to: int | None = None
    migrated_from: int | None = None
    gone: bool = False
    """Deleted by its owner."""
    next_id: int = 0
    menu_button: dict[str, object] | None = None

    def member(self, user_id: int) -> Member:
        return self.members.get(user_id, Member("left"))

    def may_pin(self, user_id: int) -> bool:
        member = self.member(user_id)
        if member.status == "creator" or "can_pin_messages" in member.rights:
            return True
        return member.present and "can_pin_messages" in self.permissions


@dataclass(frozen=True)
class Seen:
    """One thing somebody could see, as it happened. `kind` as in the rehearsal record.

    `sender` is a user id, None for the room itself (notes). `to` is who sees an answer.
    """

    at: datetime
    kind: str
    chat_id: int
    sender: int | None
    text: str = ""
    buttons: tuple[tuple[tuple[str, str | None], ...], ...] = ()
    message: int | None = None
    reply_to: int | None = None
    to: int | None = None
    file: str | None = None
    thread: int | None = None
    alert: bool = False
    url: str | None = None
    """Where an answer to a press leads."""
