"""A reminder, and the facts its words are made from."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime

from planning.kitchen.units import in_units
from planning.potluck import Guest, Potluck, Promise, Say
from planning.safety.wall_clock import plain_facts


@dataclass(frozen=True)
class Reminder:
    """`to` is a guest id, "group" or "host". From `expires_at` on it no longer makes sense to send it.

    `key` is unique within the potluck and the same whenever the reminder is derived again.
    """

    kind: str
    to: str
    due_at: datetime
    expires_at: datetime
    about: Say
    key: str


def facts_of(potluck: Potluck, **facts: object) -> dict[str, object]:
    """Plain values. An instant `at` is local ISO text, with `at_time` "16:10" and `at_weekday` 0 (Monday) to 6."""
    return in_units(potluck, {"title": potluck.title, **plain_facts(potluck, facts)})


def cook_of(potluck: Potluck, promise: Promise | None) -> str:
    return promise.guest if promise is not None and potluck.guest(promise.guest) is not None else "host"


def dish_of(potluck: Potluck, promise_id: str) -> str:
    return promise.dish if (promise := potluck.promise(promise_id)) is not None else promise_id


_NAMED = re.compile(r"n[0-9]+")


def without_account(guest: Guest) -> bool:
    """Whether the guest is only a name somebody entered, and nobody a message can reach."""
    return _NAMED.fullmatch(guest.id) is not None and not guest.username
