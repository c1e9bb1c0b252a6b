"""Who can be asked for what: answers, ovens, the time left, the way there, and what they said no to."""

from __future__ import annotations

from datetime import datetime
from functools import lru_cache

from planning.dishes import Dish
from planning.potluck import Answer, Guest, Potluck

SHOPPING_MIN = 60
"""Minutes to buy what a dish needs before it can be started (common practice, no source)."""

HOT_TRAVEL_MIN = 60
"""Hot dishes are not asked of people who travel longer than this (common practice, no source)."""

MOST_PROMISES = 2
"""Who brings this many things already is not asked for another."""

_SOUTH = (
    "Australia/", "Antarctica/", "Pacific/Auckland", "Pacific/Chatham", "Pacific/Fiji", "America/Argentina",
    "America/Santiago", "America/Montevideo", "America/Sao_Paulo", "America/Asuncion", "America/La_Paz", "America/Lima",
    "Africa/Johannesburg", "Africa/Harare", "Africa/Maputo", "Africa/Windhoek", "Africa/Gaborone", "Indian/Mauritius",
    "Indian/Antananarivo",
)  # fmt: skip
_SEASONS = ("winter", "spring", "summer", "fall")


def season_of(potluck: Potluck) -> str:
    """The season at the potluck's place, by its month and the hemisphere of its time zone."""
    month = potluck.local(potluck.starts_at).month
    if potluck.timezone.startswith(_SOUTH):
        month += 6
    return _SEASONS[(month % 12) // 3]


def can_be_asked(potluck: Potluck, guest: Guest) -> bool:
    """Not those who said no, not parties of children only, nobody without an account, nobody loaded already."""
    grown = guest.party.adults + guest.party.teens
    has_account = guest.added_by is None or guest.username is not None
    free = len(potluck.promises_of(guest.id)) < min(MOST_PROMISES, grown)
    return guest.answer is not Answer.NO and grown > 0 and has_account and free


def minutes_left(potluck: Potluck, guest: Guest | None, now: datetime) -> float:
    """Minutes between now and when the guest must leave home; below 0 when that has passed."""
    travel = guest.travel_min if guest else 0
    return (potluck.starts_at - now).total_seconds() / 60 - travel


@lru_cache(maxsize=2048)
def minutes_needed(dish: Dish) -> int | None:
    """Shopping and the whole chain of work; None when nobody knows how long it takes."""
    return None if dish.minutes is None else dish.minutes + SHOPPING_MIN


def can_make(dish: Dish, guest: Guest, left_min: float, is_host: bool) -> bool:
    """Whether one guest can still make and bring a dish.

    Enough time (what takes eight hours is not asked five hours before), an oven where it needs one, the way
    short enough for hot food, and nothing to cook for those who don't cook.
    """
    needed = minutes_needed(dish)
    if needed is None or needed > left_min:
        return False
    if dish.needs_oven and not guest.has_oven:
        return False
    if not guest.can_cook and (dish.needs_cooking or dish.hands_min > 15):
        return False
    far = guest.travel_min > HOT_TRAVEL_MIN and dish.serve == "hot"
    return is_host or (dish.travels and not far)
