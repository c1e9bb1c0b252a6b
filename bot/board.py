"""The board: one pinned message a potluck, put together from what the capabilities contribute."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from bot.buttons import Signer
from bot.outgoing import sign_rows
from bot.registry import Registry
from bot.storage.values import ChatRecord, PersonRecord, Stored
from bot.texts import Voice
from planning.headcount import Headcount, headcount
from planning.menu import MenuRow, menu
from planning.potluck import Potluck, Stage

LONGEST = 3900
"""Code points of a board; the platform takes 4096 of a message."""

TALLEST = 45
"""Lines of a board: about what a phone shows without scrolling far (common practice, no source)."""

SHORTER = (12, 6, 3, 1, 0)
"""How many entries of one list are named, tried in this order until the board fits."""


@dataclass(frozen=True)
class Facts:
    """What the parts of one board share. `most` is how many entries of a list may be named."""

    now: datetime
    headcount: Headcount
    menu: tuple[MenuRow, ...]
    username: str
    chat_id: int
    most: int

    def deep_link(self, *parts: str) -> str:
        return f"https://t.me/{self.username}?start={'-'.join(parts)}"


def voice_for(chat: ChatRecord | None, potluck: Potluck, person: PersonRecord | None = None) -> Voice:
    """The group's voice, or the own one of a person who is written to in private."""
    own = person.language if person is not None else None
    return Voice(own or (chat.language if chat else "en"), potluck.zone, potluck.units)


def render(
    registry: Registry, signer: Signer, username: str, stored: Stored, chat: ChatRecord | None, now: datetime
) -> tuple[str, list[list[dict[str, str]]]]:
    """HTML and signed buttons of the board as the potluck stands now."""
    potluck, chat_id = stored.potluck, stored.place.chat_id
    voice = voice_for(chat, potluck)
    count = headcount(potluck)
    table = menu(potluck, count)
    text = ""
    for most in SHORTER:
        facts = Facts(now, count, table, username, chat_id, most)
        blocks = ["\n".join(part.lines(potluck, voice, facts)) for part in registry.board if part.lines]
        text = "\n\n".join(block for block in blocks if block)
        if len(text) <= LONGEST and text.count("\n") < TALLEST:
            break
    if potluck.stage is not Stage.PLANNED:
        return text, []
    rows = [row for part in registry.board if part.buttons for row in part.buttons(potluck, voice, facts)]
    return text, sign_rows(signer, chat_id, potluck.id, rows)
