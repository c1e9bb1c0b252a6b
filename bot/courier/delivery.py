"""One post: made, and what comes of it. Policies in doubt are stated here and nowhere else.

When a process died, or an answer was lost, between the call and the record, nobody knows whether the
platform carried it out, and it offers no key by which to ask. So:
  edits, pins, deletions, reactions   are made again: doing them twice changes nothing
  the board                           is posted again: better two than none; the newer one is kept
  reminders that guard health         (out-limit, thaw) are sent up to four times more: a doubled warning
                                      does no harm, a lost one may
  every other reminder                up to twice more: people rely on it, and reading it twice costs little
  (where processes died, not answers, any reminder is tried up to MOST_DEATHS times: that is rare, and
  nobody's fault who waits for it)
  files somebody asked for            once more (`again_in_doubt`): uploads are what a slow line loses
  everything else (answers in a chat) is not sent again: the change itself is stored and on the board;
                                      the post is recorded as given up, "in doubt"
What a dead process had claimed but not begun is not in doubt and is simply sent.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Any

import telegram

from bot import log
from bot.courier.calls import COUNTED, EDITS, SENDS, call
from bot.courier.desk import Desk
from bot.courier.faults import Fate, Kind, fate_of
from bot.courier.limiter import Limiter
from bot.courier.metrics import Metrics
from bot.courier.waits import Waits
from bot.storage.outbox import GUARD_HEALTH
from bot.storage.values import Post

_log = log.get("courier")

AGAIN_IN_DOUBT = dict.fromkeys(GUARD_HEALTH, 4)
"""How often more a reminder is sent, by kind; others ..."""
AGAIN_OTHERS = 2
MOST_DEATHS = 5
RETRY_S = (1.0, 2.0, 4.0, 8.0, 15.0, 30.0, 60.0)
"""Waits between tries after the line failed; the last one repeats."""
MOST_TRIES = 40
"""Some 35 minutes; reminders have their own last moment on top."""


_WHY = {
    Kind.BLOCKED: "courier-why-blocked",
    Kind.GONE: "courier-why-gone",
    Kind.NO_RIGHT: "courier-why-no-right",
    Kind.LOST: "courier-why-lost",
}


class End(StrEnum):
    SENT = "sent"
    LATER = "later"  # the call failed; it is made again
    NOT_YET = "not-yet"  # a limit says wait; the call was not begun
    MOVED = "moved"
    BLOCKED = "blocked"
    GONE = "gone"
    GIVEN_UP = "given-up"
    FENCED = "fenced"  # the lease ran out; somebody else has it now


@dataclass(frozen=True)
class Outcome:
    end: End
    message_id: int | None = None
    why: str = ""
    """A text key (`courier.ftl`): what the host may be told."""
    at: datetime | None = None
    """When to try again (LATER, NOT_YET)."""
    made: bool = True
    """Whether the platform may have carried it out (LATER)."""
    new_chat_id: int | None = None


def reminder_of(post: Post) -> Mapping[str, Any] | None:
    """What the payload of a reminder's post says about it: {"kind", "rows", "until"}."""
    about = post.payload.get("reminder")
    return about if isinstance(about, Mapping) else None


class Delivery:
    def __init__(self, bot: telegram.Bot, clock: Waits, limiter: Limiter, desk: Desk, metrics: Metrics) -> None:
        self._bot = bot
        self._desk = desk
        self._clock = clock
        self._limiter = limiter
        self._metrics = metrics
        self._failures: Counter[int] = Counter()
        """By post: how often the line failed in this process."""

    async def deliver(self, post: Post) -> Outcome:
        """Make the call within the limits. Never raises for anything the platform says."""
        if post.doubtful and (verdict := self._in_doubt(post, died=True)) is not None:
            return verdict
        if (late := self._too_late(post)) is not None:
            return late
        if post.method in COUNTED:
            # A post that has to wait is given back, so that its claim does not run out meanwhile.
            edit = post.method in EDITS
            if (at := self._limiter.free_at(post.chat_id, edit=edit)) > self._clock.now():
                return self._too_late(post, at) or Outcome(End.NOT_YET, at=at)
            await self._limiter.turn(post.chat_id, edit=edit)
            place = self._limiter.place(post.chat_id, edit=edit)
        else:
            place = None
        begun = await self._desk.begin(post, place)
        if isinstance(begun, datetime):
            return self._too_late(post, begun) or Outcome(End.NOT_YET, at=begun)
        if begun is None or (begun.lease_until or self._clock.now()) < self._clock.now():
            # The second: it slept between the record and the call, and somebody may have taken over.
            self._metrics.posts.labels(post.method, "fenced").inc()
            return Outcome(End.FENCED)
        return await self._make(begun)

    async def _make(self, post: Post) -> Outcome:
        as_plain, thread_id = False, post.thread_id
        while True:
            fate = None
            try:
                made = await call(
                    self._bot, post.method, post.chat_id, post.payload, thread_id=thread_id, as_plain=as_plain
                )
            except (telegram.error.TelegramError, OSError, KeyError, ValueError, TypeError) as fault:
                fate = fate_of(fault, post.chat_id)
            if fate is None or fate.kind is Kind.FINE:
                self._metrics.posts.labels(post.method, "sent").inc()
                self._failures.pop(post.id, None)
                return Outcome(End.SENT, made if fate is None else None)
            self._metrics.api_errors.labels(fate.kind.value).inc()
            if fate.kind is Kind.NO_THREAD and thread_id is not None:
                thread_id = None
                continue
            # Whatever it is about the text or its buttons that was refused: the words matter most.
            if fate.kind in (Kind.PLAIN, Kind.REFUSED) and not as_plain and post.method in SENDS | {"edit"}:
                _log.warning("refused, sent once more as plain text", chat=post.chat_id, why=fate.why)
                as_plain = True
                continue
            return self._outcome(post, fate)

    def _outcome(self, post: Post, fate: Fate) -> Outcome:
        now = self._clock.now()
        if fate.kind is Kind.WAIT:
            self._limiter.stop(post.chat_id, fate.seconds)
            return Outcome(End.LATER, at=now + timedelta(seconds=fate.seconds), made=False)
        if fate.kind is Kind.MOVED:
            return Outcome(End.MOVED, new_chat_id=fate.new_chat_id)
        if fate.kind is Kind.DOUBT and (verdict := self._in_doubt(post, words=fate.why)) is not None:
            return verdict
        if fate.kind in (Kind.LATER, Kind.DOUBT):
            return self._again(post, fate)
        end = {Kind.BLOCKED: End.BLOCKED, Kind.GONE: End.GONE}.get(fate.kind, End.GIVEN_UP)
        return self._ended(post, end, _WHY.get(fate.kind, "courier-why-refused"), fate.why)

    def _again(self, post: Post, fate: Fate) -> Outcome:
        self._failures[post.id] = failures = self._failures[post.id] + 1
        wait_s = fate.seconds or RETRY_S[min(failures, len(RETRY_S)) - 1]
        at = self._clock.now() + timedelta(seconds=wait_s)
        if failures >= MOST_TRIES:
            return self._ended(post, End.GIVEN_UP, "courier-why-line", fate.why)
        return self._too_late(post, at) or Outcome(End.LATER, at=at, made=fate.kind is Kind.DOUBT)

    def _in_doubt(
        self, post: Post, *, died: bool = False, words: str = "a process died while sending it"
    ) -> Outcome | None:
        """None: make the call (again). `post.tries` is how often it may have been made: a call the platform
        refused for now, or that never left, does not count."""
        again = post.payload.get("again_in_doubt")
        if (about := reminder_of(post)) is not None and again is None:
            again = MOST_DEATHS if died else AGAIN_IN_DOUBT.get(str(about.get("kind")), AGAIN_OTHERS)
        if post.method not in SENDS or again is True or (again and post.tries <= int(again)):
            return None
        return self._ended(post, End.GIVEN_UP, "courier-why-doubt", words)

    def _too_late(self, post: Post, at: datetime | None = None) -> Outcome | None:
        about = reminder_of(post)
        last = about.get("until") if about is not None else post.payload.get("until")
        if last is None or (at or self._clock.now()) < datetime.fromisoformat(str(last)):
            return None
        return self._ended(post, End.GIVEN_UP, "courier-why-late", f"its last moment was {last}")

    def _ended(self, post: Post, end: End, why: str, words: str) -> Outcome:
        self._metrics.posts.labels(post.method, end.value).inc()
        self._failures.pop(post.id, None)
        _log.warning(
            "not sent", chat=post.chat_id, method=post.method, end=end.value, why=why, platform=words, post=post.id
        )
        return Outcome(end, why=why)
