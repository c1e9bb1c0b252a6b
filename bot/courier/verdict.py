"""What becomes of a reminder that is due: whom it is for, and whether it is still to be said, now or later.

Caught up with sense: what is past its last moment is skipped; what is not urgent waits for the end of
the quiet hours. Kinds that only make sense at their minute (URGENT) are never held back.
"""

from __future__ import annotations

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

from bot.storage.values import ChatRecord, PersonRecord, ReminderRow, Stored
from planning.potluck import Answer, Stage

URGENT = frozenset({"slow-cooker", "preheat", "swap", "leave", "start", "out-limit"})
"""A kitchen's or a safety clock's own minute: held back till morning they would be worthless."""
NEVER_MUTED = frozenset({"out-limit"})
"""Food safety: said even to who muted the bot or switched reminders off."""
GROUP = "group"


def account_of(row: ReminderRow, stored: Stored) -> str:
    """The guest id whose account is meant: the host's for "host", the sponsor's for who has no account."""
    to = stored.potluck.host or "" if row.to == "host" else row.to
    guest = stored.potluck.guest(to)
    if guest is not None and not guest.id.lstrip("-").isdecimal() and guest.added_by:
        return guest.added_by
    return to


def private_chat(row: ReminderRow, stored: Stored, people: dict[str, PersonRecord]) -> int | None:
    """The private chat it goes to; None: the group."""
    if row.to == GROUP:
        return None
    person = people.get(account_of(row, stored))
    return person.id if person is not None and person.can_dm else None


def verdict(
    row: ReminderRow, stored: Stored, chat: ChatRecord | None, person: PersonRecord | None, now: datetime
) -> tuple[str | None, datetime | None]:
    """(why it is skipped or None, until when it is held back or None)."""
    potluck = stored.potluck
    if row.expires_at is not None and row.expires_at <= now:
        return "too late", None
    if potluck.stage is Stage.CANCELLED:
        return "cancelled", None
    if row.kind not in NEVER_MUTED:
        if chat is not None and row.kind in chat.reminder_kinds_off:
            return "switched off", None
        if person is not None and person.muted and row.to != GROUP:
            return "muted", None
    guest = potluck.guest(row.to)
    if guest is not None and row.to != GROUP:
        if row.kind == "answer-by" and guest.answer is not Answer.NONE:
            return "answered", None
        if guest.answer is Answer.NO and row.kind not in NEVER_MUTED:
            return "not coming", None
    if row.kind not in URGENT and chat is not None:
        zone = ZoneInfo(chat.timezone or potluck.timezone)
        until = quiet_until(now, zone, chat.quiet_from, chat.quiet_to)
        if until is not None:
            if row.expires_at is not None and until >= row.expires_at:
                return "its time is over before the quiet hours are", None
            return None, until
    return None, None


def quiet_until(now: datetime, zone: ZoneInfo, quiet_from: str, quiet_to: str) -> datetime | None:
    """The end of the quiet hours `now` lies in, or None. Local wall times "HH:MM"; equal ones: never quiet."""
    start, end = time.fromisoformat(quiet_from), time.fromisoformat(quiet_to)
    if start == end:
        return None
    local = now.astimezone(zone)
    at = local.time().replace(tzinfo=None)
    inside = start <= at < end if start < end else (at >= start or at < end)
    if not inside:
        return None
    day = local.date() if at < end else local.date() + timedelta(days=1)
    # Through UTC, so that an end in a skipped hour becomes a real instant.
    return datetime.combine(day, end, zone).astimezone(UTC)
