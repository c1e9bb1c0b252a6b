"""What the courier asks others for: words. It knows when to send; it does not know what to say."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Protocol

from bot.storage.values import ChatRecord, PersonRecord, Post, ReminderRow, Stored


@dataclass(frozen=True)
class Drawn:
    """A board: HTML and rows of {"label", "data" | "url"}."""

    text: str
    buttons: Sequence[Sequence[Mapping[str, str]]] = ()


@dataclass(frozen=True)
class ReminderCase:
    """Reminders of one kind that go into one message.

    `private_to` is the account the message goes to, or None for the group. In the group, `rows` may
    be several people's: they are mentioned, and nothing private (needs, allergies, travel) is said.
    `chat` is the potluck's group.
    """

    stored: Stored
    kind: str
    rows: tuple[ReminderRow, ...]
    chat: ChatRecord | None
    private_to: int | None
    people: Mapping[str, PersonRecord] = field(default_factory=dict)
    """Accounts by guest id, as far as known."""
    now: datetime | None = None


class Renderer(Protocol):
    async def board(self, stored: Stored, chat: ChatRecord | None, now: datetime) -> Drawn:
        """The board as it is now. Called right before it is sent."""
        ...

    async def reminder(self, case: ReminderCase) -> Post | None:
        """The message, or None when there is nothing (any more) to say.

        Only `payload` of the post is used ("text", "buttons", "silent", "about", …): where it goes is
        the courier's business.
        """
        ...

    async def notice(
        self, stored: Stored | None, chat: ChatRecord | None, key: str, facts: Mapping[str, Any]
    ) -> str | None:
        """A sentence of the courier's own (`courier.ftl`) in the chat's language, as HTML."""
        ...
