"""Changes of the gathering itself: when, where, how many, who hosts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from zoneinfo import ZoneInfo

from planning.changes.rules import LONGEST_TEXT, Actor, Refusal, require_manager, require_open, tidy, whole
from planning.potluck import Answer, Guest, Kitchen, Money, Potluck, Stage

MOST_PEOPLE = 1000
FARTHEST = timedelta(days=730)


def open_potluck(
    potluck_id: str,
    by: Actor,
    *,
    starts_at: datetime,
    timezone: str,
    now: datetime,
    title: str = "",
    place: str = "",
    people: int | None = None,
    setting: str = "indoor",
    mealtime: str = "meal",
    units: str = "us",
    ends_at: datetime | None = None,
) -> Potluck:
    """A new potluck; whoever opens it is its host and comes to it."""
    _check_start(starts_at, now)
    ZoneInfo(timezone)
    if people is not None:
        people = whole(people, 1, MOST_PEOPLE, "refused-size")
    return Potluck(
        id=potluck_id,
        starts_at=starts_at,
        ends_at=_check_end(starts_at, ends_at),
        timezone=timezone,
        host=by.id,
        title=tidy(title, LONGEST_TEXT, empty="refused-empty") if title else "",
        place=tidy(place, LONGEST_TEXT, empty="refused-empty") if place else "",
        expected_people=people,
        setting=setting,
        mealtime=mealtime,
        units=units,
        guests=(Guest(by.id, by.name, Answer.YES, username=by.username),),
    )


def _check_start(starts_at: datetime, now: datetime) -> None:
    if starts_at <= now:
        raise Refusal("refused-past")
    if starts_at > now + FARTHEST:
        raise Refusal("refused-far")


def _check_end(starts_at: datetime, ends_at: datetime | None) -> datetime | None:
    if ends_at is not None and not starts_at < ends_at <= starts_at + timedelta(hours=24):
        raise Refusal("refused-end")
    return ends_at


def reschedule(potluck: Potluck, by: Actor, starts_at: datetime, now: datetime) -> Potluck:
    """Everything that has its own time (end, arrivals, answer-by) moves along by as much."""
    require_manager(potluck, by)
    require_open(potluck)
    _check_start(starts_at, now)
    by_how_much = starts_at - potluck.starts_at
    answer_by = potluck.answer_by and potluck.answer_by + by_how_much
    return replace(
        potluck,
        starts_at=starts_at,
        ends_at=potluck.ends_at and potluck.ends_at + by_how_much,
        answer_by=answer_by if answer_by and answer_by > now else None,
        promises=tuple(replace(p, arrives_at=p.arrives_at and p.arrives_at + by_how_much) for p in potluck.promises),
    )


def set_place(potluck: Potluck, by: Actor, place: str) -> Potluck:
    require_manager(potluck, by)
    require_open(potluck)
    return replace(potluck, place=tidy(place, LONGEST_TEXT, empty="refused-empty"))


def set_title(potluck: Potluck, by: Actor, title: str) -> Potluck:
    require_manager(potluck, by)
    return replace(potluck, title=tidy(title, LONGEST_TEXT, empty="refused-empty"))


def resize(potluck: Potluck, by: Actor, people: int) -> Potluck:
    require_manager(potluck, by)
    require_open(potluck)
    return replace(potluck, expected_people=whole(people, 1, MOST_PEOPLE, "refused-size"))


def set_setting(potluck: Potluck, by: Actor, setting: str, temp_f: float | None = None) -> Potluck:
    require_manager(potluck, by)
    require_open(potluck)
    if setting not in ("indoor", "outdoor"):
        raise Refusal("refused-setting")
    if temp_f is not None and not -40 <= temp_f <= 130:
        raise Refusal("refused-temperature")
    return replace(potluck, setting=setting, outdoor_temp_f=temp_f)


def set_answer_by(potluck: Potluck, by: Actor, answer_by: datetime, now: datetime) -> Potluck:
    require_manager(potluck, by)
    require_open(potluck)
    if not now < answer_by < potluck.starts_at:
        raise Refusal("refused-answer-by")
    return replace(potluck, answer_by=answer_by)


def set_budget(potluck: Potluck, by: Actor, amount: Decimal, currency: str) -> Potluck:
    require_manager(potluck, by)
    if not 0 < amount <= 1_000_000:
        raise Refusal("refused-budget")
    return replace(potluck, budget=Money(amount.quantize(Decimal("0.01")), currency))


def set_kitchen(potluck: Potluck, by: Actor, kitchen: Kitchen) -> Potluck:
    require_manager(potluck, by)
    counts = (len(kitchen.ovens), kitchen.burners, len(kitchen.slow_cookers), len(kitchen.microwaves), kitchen.cooks)
    if any(not 0 <= n <= 20 for n in counts):
        raise Refusal("refused-kitchen", most=20)
    return replace(potluck, kitchen=kitchen)


def set_oven_off(potluck: Potluck, by: Actor, number: int, off_f: float) -> Potluck:
    """Oven `number` (from 0) is so much hotter (°F; below 0: colder) than its dial says."""
    require_manager(potluck, by)
    require_open(potluck)
    if not 0 <= number < len(potluck.kitchen.ovens) or abs(off_f) > MOST_OFF_F:
        raise Refusal("refused-kitchen", most=20)
    ovens = list(potluck.kitchen.ovens)
    ovens[number] = replace(ovens[number], off_f=off_f)
    return replace(potluck, kitchen=replace(potluck.kitchen, ovens=tuple(ovens)))


MOST_OFF_F = 150.0
"""An oven further off than that is broken (common practice, no source)."""


def cancel(potluck: Potluck, by: Actor) -> Potluck:
    require_manager(potluck, by)
    require_open(potluck)
    return replace(potluck, stage=Stage.CANCELLED)


def finish(potluck: Potluck) -> Potluck:
    """The day is over and the thanks have gone out; a cancelled potluck stays cancelled."""
    return potluck if potluck.stage is Stage.CANCELLED else replace(potluck, stage=Stage.DONE)


def add_cohost(potluck: Potluck, by: Actor, guest_id: str) -> Potluck:
    require_manager(potluck, by)
    guest = potluck.guest(guest_id)
    if guest is None:
        raise Refusal("refused-unknown-person", name="")
    if guest_id == potluck.host or guest_id in potluck.cohosts:
        raise Refusal("refused-already-host", name=guest.name)
    if guest_id.startswith("n"):
        raise Refusal("refused-no-account", name=guest.name)
    return replace(potluck, cohosts=(*potluck.cohosts, guest_id))


def remove_cohost(potluck: Potluck, by: Actor, guest_id: str) -> Potluck:
    """A host may ask anybody to step back; a co-host may step back alone."""
    if by.id != guest_id:
        require_manager(potluck, by)
    return replace(potluck, cohosts=tuple(c for c in potluck.cohosts if c != guest_id))


def hand_over(potluck: Potluck, by: Actor, guest_id: str) -> Potluck:
    """The old host stays as a guest."""
    require_manager(potluck, by)
    guest = potluck.guest(guest_id)
    if guest is None or guest_id.startswith("n"):
        raise Refusal("refused-no-account", name=guest.name if guest else "")
    return replace(potluck, host=guest_id, cohosts=tuple(c for c in potluck.cohosts if c != guest_id))


def move_clock(potluck: Potluck, by: Actor, timezone: str) -> Potluck:
    """Another time zone: the hour people read stays, the instant moves.

    An hour that the new clock skips is moved forward by the gap (as zoneinfo resolves it).
    """
    require_manager(potluck, by)
    zone = ZoneInfo(timezone)

    def moved(instant: datetime | None) -> datetime | None:
        if instant is None:
            return None
        return potluck.local(instant).replace(tzinfo=zone).astimezone(UTC)

    starts_at = moved(potluck.starts_at)
    assert starts_at is not None
    return replace(
        potluck,
        timezone=timezone,
        starts_at=starts_at,
        ends_at=moved(potluck.ends_at),
        answer_by=moved(potluck.answer_by),
        promises=tuple(replace(p, arrives_at=moved(p.arrives_at)) for p in potluck.promises),
    )


def set_odds(potluck: Potluck, by: Actor, odds: Mapping[str, float] | None) -> Potluck:
    """What the host reckons of each answer ("yes", "maybe", "none": 0 to 1) instead of what was learned; None lets
    the group's own past decide again."""
    require_manager(potluck, by)
    require_open(potluck)
    if odds is not None and any(k not in ("yes", "maybe", "none") or not 0 <= v <= 1 for k, v in odds.items()):
        raise Refusal("refused-odds")
    return replace(potluck, answer_odds=dict(odds) if odds else None)


def set_service_level(potluck: Potluck, by: Actor, level: float) -> Potluck:
    """In how many evenings of all such ones the food shall suffice, above 0.5 and below 1."""
    require_manager(potluck, by)
    require_open(potluck)
    if not 0.5 <= level < 1:
        raise Refusal("refused-service-level")
    return replace(potluck, service_level=level)


def set_hearty(potluck: Potluck, by: Actor, hearty: float) -> Potluck:
    """How hungry the crowd is beyond the usual: 0 as in the tables, 1 a crowd that has worked all day."""
    require_manager(potluck, by)
    require_open(potluck)
    if not 0 <= hearty <= 1:
        raise Refusal("refused-odds")
    return replace(potluck, hearty=hearty)
