"""What a failed call means: one exception in, one `Fate` out. No waiting and no storing here."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from telegram.error import (
    BadRequest,
    ChatMigrated,
    Conflict,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)

from bot.log import redact
from bot.transport import Broken, NotSent


class Kind(StrEnum):
    """What is known after a call failed."""

    FINE = "fine"  # the platform says it is already so
    LATER = "later"  # it was not carried out; try again
    WAIT = "wait"  # the platform names the delay (429)
    DOUBT = "doubt"  # it may have been carried out
    MOVED = "moved"  # the group has another id now
    PLAIN = "plain"  # our markup was refused: send it as plain text
    NO_THREAD = "no-thread"  # the topic is gone or closed
    LOST = "lost"  # the message it was about is not there (any more)
    BLOCKED = "blocked"  # this person does not want, or never opened, a private chat
    GONE = "gone"  # the bot is not in this group, or it does not exist
    NO_RIGHT = "no-right"  # an admin has to allow it
    REFUSED = "refused"  # never possible like this


@dataclass(frozen=True)
class Fate:
    kind: Kind
    why: str
    """The platform's words, secrets blotted out; for the record and the log, not for people."""
    seconds: float = 0.0
    new_chat_id: int | None = None


# The platform's descriptions, lower case, and what they mean. First match wins.
_DESCRIPTIONS: tuple[tuple[str, Kind], ...] = (
    ("message is not modified", Kind.FINE),
    ("message to delete not found", Kind.FINE),
    ("message can't be deleted", Kind.REFUSED),
    ("can't parse entities", Kind.PLAIN),
    ("can't find end of the entity", Kind.PLAIN),
    ("message thread not found", Kind.NO_THREAD),
    ("topic_closed", Kind.NO_THREAD),
    ("topic_deleted", Kind.NO_THREAD),
    ("topic closed", Kind.NO_THREAD),
    ("message to edit not found", Kind.LOST),
    ("message to pin not found", Kind.LOST),
    ("message can't be edited", Kind.LOST),
    ("message to react not found", Kind.LOST),
    ("message_id_invalid", Kind.LOST),
    ("there is no text in the message to edit", Kind.LOST),
    ("chat not found", Kind.GONE),
    ("group chat was deactivated", Kind.GONE),
    ("peer_id_invalid", Kind.GONE),
    ("not enough rights", Kind.NO_RIGHT),
    ("have no rights", Kind.NO_RIGHT),
    ("need administrator rights", Kind.NO_RIGHT),
    ("chat_admin_required", Kind.NO_RIGHT),
    ("chat_write_forbidden", Kind.NO_RIGHT),
    ("chat_restricted", Kind.NO_RIGHT),
)


def fate_of(fault: BaseException, chat_id: int) -> Fate:
    """`chat_id` tells a private chat (positive) from a group: the same 403 means different things."""
    why = redact(f"{type(fault).__name__}: {fault}")[:300]
    if isinstance(fault, ChatMigrated):
        return Fate(Kind.MOVED, why, new_chat_id=fault.new_chat_id)
    if isinstance(fault, RetryAfter):
        wait = fault.retry_after
        seconds = wait if isinstance(wait, (int, float)) else wait.total_seconds()
        # An absurd delay is asked about again after an hour instead of silencing a chat for days.
        return Fate(Kind.WAIT, why, seconds=min(max(float(seconds), 0.0), 3600.0))
    if isinstance(fault, BadRequest):
        words = str(fault).lower()
        for part, kind in _DESCRIPTIONS:
            if part in words:
                return Fate(Kind.BLOCKED if kind is Kind.GONE and chat_id > 0 else kind, why)
        return Fate(Kind.REFUSED, why)
    if isinstance(fault, Forbidden):
        words = str(fault).lower()
        if chat_id > 0:
            return Fate(Kind.BLOCKED, why)
        return Fate(Kind.NO_RIGHT if "not enough rights" in words else Kind.GONE, why)
    if isinstance(fault, NotSent):
        return Fate(Kind.LATER, why)
    if isinstance(fault, TimedOut):
        # The library's own transport says so when its pool was full and nothing was sent.
        return Fate(Kind.LATER if "*not* sent" in str(fault) else Kind.DOUBT, why)
    if isinstance(fault, Broken):
        return Fate(Kind.DOUBT, why)
    if isinstance(fault, InvalidToken | Conflict):
        return Fate(Kind.LATER, why, seconds=60.0)
    if isinstance(fault, NetworkError):
        # With our transport only HTTP answers are left here: 5xx, which the platform gives before it acts.
        # The library's own transport mixes broken lines in under its module's name: those are doubtful.
        connect = "ConnectError" in why or "ConnectTimeout" in why
        return Fate(Kind.DOUBT if "httpx." in why and not connect else Kind.LATER, why)
    if isinstance(fault, TelegramError):
        return Fate(Kind.DOUBT, why)
    return Fate(Kind.REFUSED, why)
