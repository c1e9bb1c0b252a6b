"""Who is told what, and when: derived from the potluck and, where there is one, the kitchen timeline.

Everything is a function of the potluck and the timeline alone, so that deriving it anew after a
change gives the same keys; `now` only drops what is past. Wall times go through the IANA database: a
skipped hour shifts forward, a doubled one fires the first time. Hours of the day are common
practice, no source; the thaw rule is THAW-03, the two clocks TIME-01 and TIME-02.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from planning.kitchen.result import PlannedStep, Timeline
from planning.potluck import Answer, Guest, Potluck, Promise, Say, Stage
from planning.reminders_kitchen import grills, heated_there, ovens, slow_cookers
from planning.reminders_out import out_limits
from planning.reminders_value import Reminder as Reminder
from planning.reminders_value import cook_of, facts_of, without_account
from planning.safety.thaw import thaw_by, thaw_days
from planning.safety.wall_clock import wall

MORNING = time(9, 0)
EVENING = time(18, 0)
LATE_MORNING = time(10, 30)
EVENING_ENDS = time(21, 0)
EARLY_EVENT = time(12, 0)
"""A potluck starting before noon is prepared for the evening before."""

ANSWER_DAYS_BEFORE = 2
"""Without a date to answer by, people are asked this many days before the potluck."""

UNPACK_MIN = 15
"""A dish is to be there so long before its first step at the venue; common practice, no source."""

USUAL_TRAVEL_MIN = 15
"""Reckoned for somebody who must come early and told nobody how far it is; common practice, no source."""

WELL_BEFORE = timedelta(minutes=30)
"""Who must be there so long before the start is told when to leave, however near; common practice, no source."""


HOT = {"reminder-bring-today": "reminder-bring-today-hot", "reminder-bring-tomorrow": "reminder-bring-tomorrow-hot",
       "reminder-bring-before": "reminder-bring-before-hot"}  # fmt: skip
"""The same words, and how the guest's dish is heated there."""

KINDS = ("answer-by", "bring", "thaw", "slow-cooker", "preheat", "swap", "leave", "start", "out-limit", "collect",
         "return")  # fmt: skip


def within_quiet(instant: datetime, timezone: str, quiet_from: str, quiet_to: str) -> bool:
    """Whether the wall clock shows a time in [from, to), "HH:MM", which may run over midnight. Equal ends: never."""
    begin, end = time.fromisoformat(quiet_from), time.fromisoformat(quiet_to)
    at = instant.astimezone(ZoneInfo(timezone)).time()
    return begin <= at < end if begin <= end else at >= begin or at < end


def shift_out_of_quiet(instant: datetime, timezone: str, quiet_from: str, quiet_to: str) -> datetime:
    """`instant`, or the end of the quiet hours it falls into (UTC)."""
    if not within_quiet(instant, timezone, quiet_from, quiet_to):
        return instant
    zone = ZoneInfo(timezone)
    local = instant.astimezone(zone)
    end = wall(zone, local.date(), time.fromisoformat(quiet_to))
    if end <= instant:
        end = wall(zone, local.date() + timedelta(days=1), time.fromisoformat(quiet_to))
    # A doubled hour can bring the same wall time again after the end has passed once.
    while within_quiet(end, timezone, quiet_from, quiet_to):
        end += timedelta(minutes=15)
    return end


def reminders(potluck: Potluck, timeline: Timeline | None, now: datetime) -> tuple[Reminder, ...]:
    """All reminders still ahead of `now`, by due time and key."""
    return ahead([*shared(potluck, timeline), *personal(potluck, timeline, potluck.guests)], now)


def ahead(found: Iterable[Reminder], now: datetime) -> tuple[Reminder, ...]:
    """Those still to come at `now`, by due time and key."""
    still = (r for r in found if r.due_at > now and r.expires_at > r.due_at)
    return tuple(sorted(still, key=lambda r: (r.due_at, r.key)))


def shared(potluck: Potluck, timeline: Timeline | None) -> tuple[Reminder, ...]:
    """What the dishes, the kitchen and the day ask for: of the guests only ids, names, their order and
    who of the `cooks_out` matter."""
    if potluck.stage is Stage.CANCELLED:
        return ()
    after, steps = (*_collect(potluck), *_return(potluck)), timeline.doable if timeline is not None else ()
    if potluck.stage is not Stage.PLANNED:
        return after
    return (*after, *_thaw(potluck, steps), *slow_cookers(potluck, steps), *ovens(potluck, steps),
            *grills(potluck, steps), *_start(potluck), *out_limits(potluck, timeline, cooks_out(potluck)))  # fmt: skip


def personal(potluck: Potluck, timeline: Timeline | None, guests: Sequence[Guest]) -> tuple[Reminder, ...]:
    """What each of these guests gets for what they said; no other guest matters to it."""
    if potluck.stage is not Stage.PLANNED:
        return ()
    steps = timeline.doable if timeline is not None else ()
    return (*_answer_by(potluck, guests), *_bring(potluck, steps, guests), *_leave(potluck, steps, guests))


def _answer_by(potluck: Potluck, guests: Sequence[Guest]) -> Iterator[Reminder]:
    """Once, to each guest who said nothing or maybe: the evening before answers are wanted."""
    zone = potluck.zone
    if potluck.answer_by is not None:
        day = potluck.local(potluck.answer_by).date() - timedelta(days=1)
        expires = min(potluck.answer_by, potluck.starts_at)
    else:
        day = potluck.local(potluck.starts_at).date() - timedelta(days=ANSWER_DAYS_BEFORE)
        expires = min(wall(zone, day + timedelta(days=1), EVENING_ENDS), potluck.starts_at)
    due, by = wall(zone, day, EVENING), potluck.answer_by or expires
    # One sentence for all who said the same: a crowd is asked at once, and at every change of the potluck.
    asked = {
        a: Say("reminder-answer-by", facts_of(potluck, by=by, answer=a.value)) for a in (Answer.NONE, Answer.MAYBE)
    }
    for guest in guests:
        if guest.answer in asked and without_account(guest):
            # Who has no account can't answer in the chat: the host asks them.
            say = Say("reminder-answer-by-named", facts_of(potluck, by=by, names=[guest.name]))
            yield Reminder("answer-by", "host", due, expires, say, f"answer-by:{guest.id}")
        elif guest.answer in asked:
            yield Reminder("answer-by", guest.id, due, expires, asked[guest.answer], f"answer-by:{guest.id}")


def _bring(potluck: Potluck, steps: tuple[PlannedStep, ...], guests: Sequence[Guest]) -> Iterator[Reminder]:
    """What each guest said they bring: the morning of the day, or the evening before an early potluck or arrival."""
    for guest in guests:
        dishes = [p.dish for p in potluck.promises_of(guest.id)]
        if potluck.bar is not None:
            dishes += [t.name for t in potluck.bar.toppings if t.guest == guest.id]
        if not dishes or guest.answer is Answer.NO:
            continue
        there = potluck.starts_at if guest.id == potluck.host else arrival(potluck, guest, steps)
        due, expires, key = _bring_when(potluck, there, there - _way(guest))
        facts = facts_of(potluck, dishes=dishes, count=len(dishes), at=there,
                       early="yes" if there < potluck.starts_at else "no")  # fmt: skip
        if guest.id != potluck.host and (heat := heated_there(potluck, guest, steps)):
            key, facts = HOT[key], facts | heat
        yield Reminder("bring", guest.id, due, expires, Say(key, facts), f"bring:{guest.id}")


def _bring_when(potluck: Potluck, there: datetime, leave: datetime) -> tuple[datetime, datetime, str]:
    """(due, expires, text) for somebody who must be there at `there`, and so leave at `leave`."""
    zone, start, off = potluck.zone, potluck.local(potluck.starts_at), potluck.local(leave)
    day = min(start.date(), potluck.local(there).date())
    if start.time() < EARLY_EVENT or leave <= wall(zone, day, LATE_MORNING) or off.date() < day:
        evening = min(day, off.date()) - timedelta(days=1)
        # A dish wanted the day before is announced the evening before that, in words that name its day.
        key = "reminder-bring-tomorrow" if evening == start.date() - timedelta(days=1) else "reminder-bring-before"
        return wall(zone, evening, EVENING), wall(zone, evening, time(23, 0)), key
    key = "reminder-bring-today" if day == start.date() else "reminder-bring-before"
    return wall(zone, day, MORNING), min(there, wall(zone, day, EVENING_ENDS)), key


def _way(guest: Guest) -> timedelta:
    return timedelta(minutes=min(max(guest.travel_min, 0), 2880))


def _thaw(potluck: Potluck, steps: tuple[PlannedStep, ...]) -> Iterator[Reminder]:
    """In the morning of the last day on which thawing can start, or the evening before that."""
    for promise in potluck.promises:
        latest = thaw_by(potluck, promise, steps)
        if latest is None or promise.frozen_lb is None:
            continue
        day = potluck.local(latest).date()
        due = wall(potluck.zone, day, MORNING)
        if due > latest:
            due = wall(potluck.zone, day - timedelta(days=1), EVENING)
        facts = facts_of(potluck, dish=promise.dish, lb=promise.frozen_lb, days=thaw_days(promise.frozen_lb), by=latest)
        yield Reminder("thaw", cook_of(potluck, promise), due, max(latest, due + timedelta(minutes=30)),
                       Say("reminder-thaw", facts), f"thaw:{promise.id}")  # fmt: skip


def arrival(potluck: Potluck, guest: Guest, steps: Iterable[PlannedStep] = ()) -> datetime:
    """When the guest should be there: as promised, in time for their dish's first step there, or at the start."""
    mine = {p.id: p for p in potluck.promises if p.guest == guest.id}
    said = [p.arrives_at for p in mine.values() if p.arrives_at is not None]
    needed = [s.start - timedelta(minutes=UNPACK_MIN) for s in steps
              if s.promise in mine and mine[s.promise].arrives_at is None
              and s.at == "venue" and s.kind not in ("transport", "thaw")]  # fmt: skip
    return min([*said, *needed, potluck.starts_at])


def _leave(potluck: Potluck, steps: tuple[PlannedStep, ...], guests: Sequence[Guest]) -> Iterator[Reminder]:
    """To everybody who comes and has told how far it is, and to every cook who must be there well before the start."""
    for guest in guests:
        if guest.answer is not Answer.YES or guest.id == potluck.host:
            continue
        there = arrival(potluck, guest, steps)
        if guest.travel_min <= 0 and potluck.starts_at - there < WELL_BEFORE:
            continue
        way = _way(guest) or timedelta(minutes=USUAL_TRAVEL_MIN)
        facts = facts_of(potluck, at=there, minutes=max(0, guest.travel_min), place=potluck.place)
        yield Reminder("leave", guest.id, there - way, there, Say("reminder-leave", facts), f"leave:{guest.id}")


def _start(potluck: Potluck) -> Iterator[Reminder]:
    yield Reminder("start", "group", potluck.starts_at, potluck.starts_at + timedelta(hours=1),
                   Say("reminder-start", facts_of(potluck, place=potluck.place)), "start")  # fmt: skip


def cooks_out(potluck: Potluck) -> frozenset[str]:
    """Who promised a dish, alone or with others, and then said no."""
    cooks = {w for p in potluck.promises for w in (p.guest, *p.sharers)}
    return frozenset(g.id for g in potluck.guests if g.answer is Answer.NO and g.id in cooks)


def _brought(potluck: Potluck) -> tuple[Promise, ...]:
    """The promises at least one of whose cooks came."""
    out = cooks_out(potluck)
    return tuple(p for p in potluck.promises if not out.issuperset((p.guest, *p.sharers)))


def _collect(potluck: Potluck) -> Iterator[Reminder]:
    """Thanks, and whose dish to take home: late in the morning after (a night after midnight is the same evening)."""
    day = potluck.local(potluck.ends - timedelta(hours=6)).date() + timedelta(days=1)
    due = wall(potluck.zone, day, LATE_MORNING)
    there = _brought(potluck)
    dishes = [p.dish for p in there if p.category != "supplies"]
    cooks = {w for p in there for w in (p.guest, *p.sharers)} - cooks_out(potluck)
    names = [g.name for g in potluck.guests if g.id in cooks]
    facts = facts_of(potluck, dishes=dishes, count=len(dishes), names=names)
    yield Reminder("collect", "group", due, wall(potluck.zone, day, EVENING_ENDS),
                   Say("reminder-collect", facts), "collect")  # fmt: skip


def _return(potluck: Potluck) -> Iterator[Reminder]:
    """Two days after, kindly, whose dish is still where: common practice, no source."""
    left = [p.dish for p in _brought(potluck) if p.category not in ("drink", "supplies") and not p.returned]
    if left:
        day = potluck.local(potluck.ends - timedelta(hours=6)).date() + timedelta(days=2)
        due = wall(potluck.zone, day, LATE_MORNING)
        yield Reminder("return", "group", due, wall(potluck.zone, day, EVENING_ENDS),
                       Say("reminder-return", facts_of(potluck, dishes=left, count=len(left))), "return")  # fmt: skip
