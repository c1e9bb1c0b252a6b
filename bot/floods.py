"""More updates than people send: one person's, or one chat's, beyond that are told once and then passed over.

Whoever floods must not keep everybody else waiting, nor fill the database. The marks stand far above what a keen
guest or a crowded group does (a hundred presses in a row; two hundred guests three times within seconds), and what
waited while the bot was away never counts: it comes all at once by no fault of those who wrote it. They are kept in
this process, so with several replicas a flood gets as many times through as there are replicas.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Hashable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from enum import Enum

import telegram

from bot.clock import Clock


@dataclass(frozen=True)
class Allowed:
    """So many at once, and so many a second for ever (our choice; no source)."""

    at_once: int
    per_s: float


PERSON = Allowed(120, 2.0)
CHAT = Allowed(900, 30.0)
DRAWN = Allowed(10, 0.1)
"""Pictures and papers of one potluck: each takes a tenth of a second and more of a processor."""
TOLD_AGAIN = timedelta(minutes=1)
WAITED = timedelta(seconds=30)
"""A message older than this waited for us: a flood that is passed over never lets others wait as long."""
MOST_KNOWN = 20_000


class Verdict(Enum):
    FINE = "fine"
    TELL = "tell"
    PASS_OVER = "pass over"


@dataclass
class _Taker:
    """`full_at`: seconds since 1970 at which nothing of what was taken counts any more (the "generic cell rate
    algorithm" of ITU-T I.371, as a virtual schedule)."""

    full_at: float = 0.0
    told: datetime | None = None


@dataclass
class Spent:
    """What is asked of one thing after another, each within what is allowed."""

    clock: Clock
    allowed: Allowed
    _known: OrderedDict[Hashable, _Taker] = field(default_factory=OrderedDict)

    def take(self, key: Hashable) -> bool:
        """Whether there is one more for this key now; it is counted."""
        return _takes(self.of(key), self.allowed, self.clock.now())

    def of(self, key: Hashable) -> _Taker:
        taker = self._known.pop(key, None) or _Taker()
        self._known[key] = taker
        if len(self._known) > MOST_KNOWN:
            self._known.popitem(last=False)
        return taker


class Floods:
    def __init__(self, clock: Clock, person: Allowed = PERSON, chat: Allowed = CHAT) -> None:
        self._clock = clock
        self._people = Spent(clock, person)
        self._chats = Spent(clock, chat)

    def look(self, update: telegram.Update) -> Verdict:
        """Counts this update; to be asked once for each."""
        now = self._clock.now()
        if _waited(update, now):
            return Verdict.FINE
        asked = ((self._people, update.effective_user), (self._chats, update.effective_chat))
        over = [spent.of(one.id) for spent, one in asked if one is not None and not spent.take(one.id)]
        if not over:
            return Verdict.FINE
        if any(t.told is not None and timedelta(0) <= now - t.told < TOLD_AGAIN for t in over):
            return Verdict.PASS_OVER
        for taker in over:
            taker.told = now
        return Verdict.TELL


def _takes(taker: _Taker, allowed: Allowed, now: datetime) -> bool:
    at, each = now.timestamp(), 1 / allowed.per_s
    most = at + allowed.at_once * each
    # Further ahead than anything taken can be: the clock was set back, which is nobody's flood.
    before = max(taker.full_at, at) if taker.full_at <= most + each else at
    if before + each > most + 1e-9:
        return False
    taker.full_at = before + each
    return True


def _waited(update: telegram.Update, now: datetime) -> bool:
    message = update.message or update.edited_message
    return message is not None and now - (message.edit_date or message.date) > WAITED
