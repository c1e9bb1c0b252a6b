"""Day and time together, checked against now and the wall clock of the place."""

from __future__ import annotations

import re
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from planning.potluck import Say
from planning.when.dates import patterns, take_date, valid
from planning.when.foreign import foreign_date
from planning.when.times import NO_TIME, PERIOD, Clock, day_time, take_time
from planning.when.values import LONGEST, WEEKDAYS, Scan, Unclear, When, day_facts

FARTHEST_DAYS = 3 * 366
"""A potluck farther away than about three years is taken for a slip (common practice, no source)."""


def _instant(day: date, at: time, zone: ZoneInfo, notes: list[Say]) -> datetime:
    """The instant of that wall time; a skipped hour moves on, a doubled one is the first."""
    wall = datetime.combine(day, at)
    instant = wall.replace(tzinfo=zone).astimezone(UTC)
    back = instant.astimezone(zone).replace(tzinfo=None)
    if back != wall:
        notes.append(Say("when-skipped-hour", {"said": f"{at:%H:%M}", "shown": f"{back:%H:%M}", **day_facts(day)}))
    elif wall.replace(tzinfo=zone).utcoffset() != wall.replace(tzinfo=zone, fold=1).utcoffset():
        notes.append(Say("when-doubled-hour", {"said": f"{at:%H:%M}", **day_facts(day)}))
    return instant


def parse_when(text: str, now: datetime, timezone: str, *, foreign: bool = True) -> When:
    """The date and time the text names, seen from `now` in `timezone` (an IANA name).

    Raises Unclear (a sentence to show) when there is none, or one that can't be acted on. `foreign` false leaves
    other languages out.
    """
    zone = ZoneInfo(timezone)
    local = now.astimezone(zone).replace(tzinfo=None)
    scan = Scan(re.sub(r"\s", " ", text[:LONGEST]).replace("\x00", " "))
    found, weekday, notes, by_weekday = take_date(scan, local)
    if isinstance(found, datetime):
        at = (now.astimezone(UTC) + (found - local)).replace(second=0, microsecond=0)
        return When(at, True, None, scan.rest(), scan.words(), True, tuple(notes))
    vague = patterns()["vague"].search(scan.left) if found is None else None
    if vague is not None:
        raise Unclear(Say("when-which-day", {"words": vague[0]}))
    clock, end, midnight = take_time(scan, found is not None)
    if clock is None and (wrong := NO_TIME.search(scan.left)) is not None:
        raise Unclear(Say("when-no-such-time", {"written": wrong[0].strip()}))
    left = scan.left.strip(" ,.!?\x00")
    if found is None and (clock is None or len(left) >= 4) and foreign:
        other = foreign_date(scan.all if clock is None else left, local)
        if other is not None:
            found = other.date() if isinstance(other, datetime) else other
            if isinstance(other, datetime) and clock is None:
                clock = Clock(other.hour, other.minute, "", True)
            scan.take_all()
    if found is None and clock is None:
        raise Unclear(Say("when-not-understood", {"text": text.strip()[:60]}))
    if (period := PERIOD.search(scan.left)) is not None and (found or clock):
        scan.take(period)
    if found is not None and weekday is not None and found.weekday() != weekday:
        other = found + timedelta(days=min(range(-3, 4), key=lambda k: ((found.weekday() + k - weekday) % 7, k)))
        facts = day_facts(found) | day_facts(other, "other_") | {"said": WEEKDAYS[weekday]}
        raise Unclear(Say("when-weekday-disagrees", facts))
    return _settled(scan, found, clock, end, midnight, local, zone, notes, by_weekday)


def _settled(
    scan: Scan, found: date | None, clock: Clock | None, end: Clock | None, midnight: bool,
    local: datetime, zone: ZoneInfo, notes: list[Say], by_weekday: bool,
) -> When:  # fmt: skip
    """Day and clock together, checked against now."""
    today = local.date()
    day = found or today
    if clock is None:
        if day < today:
            raise _past_date(day, None, local)
        _check_far(day, today)
        starts = _instant(day, time(0), zone, [])
        return When(starts, False, None, scan.rest(), scan.words(), True, tuple(notes), by_weekday)
    at, _ = day_time(clock, scan.all)
    if midnight:
        day += timedelta(days=1)
        notes.append(Say("when-midnight", day_facts(day - timedelta(days=1))))
    if found is None and datetime.combine(day, at) <= local:
        day += timedelta(days=1)
    if datetime.combine(day, at) <= local:
        if by_weekday and day == today:
            day += timedelta(days=7)  # "Wed 8am" on a Wednesday at nine is next week's
            notes.append(Say("when-next-weekday", day_facts(day)))
        else:
            raise _past_date(day, at, local)
    _check_far(day, today)
    starts = _instant(day, at, zone, notes)
    ends = None
    if end is not None:
        ends_at = _end_time(end, at, scan.all)
        ends_day = day if ends_at > at else day + timedelta(days=1)
        ends = _instant(ends_day, ends_at, zone, notes)
    return When(starts, True, ends, scan.rest(), scan.words(), found is not None, tuple(notes), by_weekday)


def _end_time(end: Clock, start: time, text: str) -> time:
    """When it ends: a bare hour is the first such hour after the start."""
    if end.half or end.sure:
        return day_time(end, text)[0]
    morning, evening = time(end.hour % 12, end.minute), time(end.hour % 12 + 12, end.minute)
    return morning if start < morning else evening if start < evening else morning


def _past_date(day: date, at: time | None, local: datetime) -> Unclear:
    """Says that it has passed, and offers the next such date."""
    today = local.date()
    if (today - day).days < 7 and at is not None and (today - day).days == 0:
        offer = day + timedelta(days=1)
    elif (today - day).days == 1 and at is None:
        offer = today
    else:
        offer = next(d for y in range(today.year, today.year + 9) if (d := valid(y, day.month, day.day)) and d >= today)
    facts = day_facts(day) | day_facts(offer, "other_") | {"time": f"{at:%H:%M}" if at else "none"}
    return Unclear(Say("when-past", facts))


def _check_far(day: date, today: date) -> None:
    if (day - today).days > FARTHEST_DAYS:
        raise Unclear(Say("when-too-far", day_facts(day)))
