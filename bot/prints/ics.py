"""The calendar file (RFC 5545): the potluck as one event, the reminders as its alarms."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import UTC, datetime, timedelta
from typing import Protocol
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event, Timezone, TimezoneDaylight, TimezoneStandard, vDuration

from bot.prints.say import Writer
from planning.potluck import Guest, Potluck, Say, Stage


class Reminder(Protocol):
    """What `planning.reminders` makes; only these are read."""

    @property
    def to(self) -> str: ...
    @property
    def due_at(self) -> datetime: ...
    @property
    def about(self) -> Say: ...


def calendar_bytes(
    potluck: Potluck,
    reminders: Iterable[Reminder],
    guest: Guest | None,
    write: Writer,
    stamp: datetime,
    *,
    sequence: int = 0,
    link: str | None = None,
) -> bytes:
    calendar = Calendar()
    calendar.add("prodid", "-//tureen//potluck//EN")
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    calendar.add("method", "PUBLISH")
    event = Event()
    # The same id for the same potluck and person: opening a newer file replaces the older event.
    event.add("uid", f"{potluck.id}-{guest.id if guest else 'all'}@tureen.invalid")
    event.add("dtstamp", stamp)
    event.add("sequence", sequence)
    event.add("dtstart", potluck.local(potluck.starts_at))
    # An end before the start is a slip of the host's; a calendar would refuse the whole file.
    ends = potluck.ends if potluck.ends > potluck.starts_at else potluck.starts_at + timedelta(hours=3)
    event.add("dtend", potluck.local(ends))
    event.add("summary", write.title)
    event.add("status", "CANCELLED" if potluck.stage is Stage.CANCELLED else "CONFIRMED")
    event.add("transp", "OPAQUE")
    if potluck.place.strip():
        event.add("location", potluck.place.strip())
    if text := _description(potluck, guest, write, link):
        event.add("description", text)
    if link:
        event.add("url", link)
    if potluck.stage is not Stage.CANCELLED:
        for reminder in _for_whom(potluck, reminders, guest):
            event.add_component(_alarm(reminder, potluck, write))
    calendar.add_component(_timezone(potluck, ends))
    calendar.add_component(event)
    return bytes(calendar.to_ical())


def _for_whom(potluck: Potluck, reminders: Iterable[Reminder], guest: Guest | None) -> list[Reminder]:
    mine = {"group"} if guest is None else {guest.id}
    if guest is not None and guest.id in (potluck.host, *potluck.cohosts):
        mine.add("host")
    return sorted((r for r in reminders if str(r.to) in mine), key=lambda r: r.due_at)


def _alarm(reminder: Reminder, potluck: Potluck, write: Writer) -> Alarm:
    """Relative to the start, so that moving the event in the calendar moves its alarms along."""
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", write.sentence({"key": reminder.about.key, "facts": reminder.about.facts}))
    trigger = vDuration(reminder.due_at - potluck.starts_at)
    alarm.add("trigger", trigger)
    return alarm


def _description(potluck: Potluck, guest: Guest | None, write: Writer, link: str | None) -> str:
    lines = []
    if guest is None:
        if potluck.promises:
            lines.append(write("calendar-menu", dishes=write.listed(p.dish for p in potluck.promises)))
    else:
        if guest.party.total:
            lines.append(write("calendar-party", count=guest.party.total))
        mine = [f"{p.dish} ({a})" if (a := write.amount(p)) else p.dish for p in potluck.promises_of(guest.id)]
        if potluck.bar:
            mine += [t.name for t in potluck.bar.toppings if t.guest == guest.id]
        if mine:
            lines.append(write("calendar-you-bring", dishes=write.listed(mine)))
    if link:
        lines.append(link)
    return "\n".join(lines)


def _timezone(potluck: Potluck, ends: datetime) -> Timezone:
    """The zone's clock changes from a year before the start to a year after the end (RFC 5545, 3.6.5).

    An onset is written in the wall time that was valid just before it, as the standard wants.
    """
    zone = potluck.zone
    timezone = Timezone()
    timezone.add("tzid", potluck.timezone)
    first, last = potluck.starts_at - timedelta(days=400), ends + timedelta(days=400)
    changes = list(_changes(zone, first.astimezone(UTC), last.astimezone(UTC)))
    if not changes:
        offset = potluck.starts_at.astimezone(zone).utcoffset() or timedelta()
        changes = [(datetime(1970, 1, 1, tzinfo=UTC) - offset, offset)]
    for instant, before in changes:
        local = instant.astimezone(zone)
        part = TimezoneDaylight() if local.dst() else TimezoneStandard()
        part.add("dtstart", (instant + before).replace(tzinfo=None))
        part.add("tzoffsetfrom", before)
        part.add("tzoffsetto", local.utcoffset() or timedelta())
        part.add("tzname", local.tzname() or potluck.timezone)
        timezone.add_component(part)
    return timezone


def _changes(zone: ZoneInfo, first: datetime, last: datetime) -> Iterator[tuple[datetime, timedelta]]:
    """(instant, offset before it) of every change of offset, to the second."""

    def offset(at: datetime) -> timedelta:
        return at.astimezone(zone).utcoffset() or timedelta()

    at = first.replace(minute=0, second=0, microsecond=0)
    while at < last:
        following = at + timedelta(days=1)
        if offset(at) != offset(following):
            low, high = at, following
            while high - low > timedelta(seconds=1):
                middle = low + timedelta(seconds=int((high - low).total_seconds()) // 2)
                low, high = (low, middle) if offset(middle) != offset(low) else (middle, high)
            yield high, offset(low)
        at = following
