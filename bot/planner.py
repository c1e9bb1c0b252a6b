"""Plans in the background: off the event loop, a moment after the last change, and kept until the next.

The chat never waits for a solver: `timeline()` gives what is known. When a new timeline is ready, it is stored with
the reminders that hang on it, and its listeners are told. A potluck that asks for a new one is marked so in the turn
that makes it ask; a mark that nobody came to is found by `catch_up`.
"""

from __future__ import annotations

import asyncio
import hashlib
import json
from collections import OrderedDict
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

import structlog

from bot.clock import Clock
from bot.derived import Derived
from bot.storage.codec import encode
from bot.storage.errors import Stale, StorageTrouble
from bot.storage.store import Store
from bot.storage.values import Batch, CommitResult, Stored
from planning.kitchen import Timeline, timeline
from planning.kitchen.known import with_last
from planning.plan import Plan, plan
from planning.potluck import Potluck, Stage

log = structlog.get_logger("planner")

EFFORT = 0.3
"""Deterministic solver units of a plan in the chat: about a second at the worst."""
MOST_KEPT = 200
MOST_SEEN = 5000
OVER = timedelta(days=1)
"""So long after its start nothing of a potluck is cooked any more."""


def _kitchen_part(potluck: Potluck) -> Any:
    """All a timeline depends on: of guests only the cooks, so that others' answers keep it as it is."""
    cooks = {p.guest for p in potluck.promises}
    return (
        potluck.starts_at,
        potluck.timezone,
        potluck.stage,
        potluck.setting,
        potluck.promises,
        potluck.kitchen,
        tuple((g.id, g.answer, g.travel_min, g.can_cook, g.has_oven) for g in potluck.guests if g.id in cooks),
    )


def _mark(part: Any) -> str:
    """What of a potluck a timeline was made for, short enough to be kept beside it."""
    return hashlib.blake2b(json.dumps(encode(part), sort_keys=True).encode(), digest_size=12).hexdigest()


@dataclass
class _Known:
    """A timeline and what it was made for: the part itself, or, until that was compared once, only its mark.
    `revision`: of the potluck when the timeline was stored; 0: it was not."""

    part: Any
    mark: str
    timeline: Timeline
    revision: int = 0

    def fits(self, part: Any) -> bool:
        if self.part is None and self.mark == _mark(part):
            self.part = part
        return self.part is not None and bool(self.part == part)


class Planner:
    def __init__(self, store: Store, clock: Clock, wake: Callable[[CommitResult], Any] | None = None) -> None:
        self._store = store
        self._derived = Derived(store)
        self._clock = clock
        self.wake = wake
        self._known: OrderedDict[str, _Known] = OrderedDict()
        self._seen: OrderedDict[str, int] = OrderedDict()
        """By potluck: the revision up to which no other process has stored a timeline we don't know."""
        self._wanted: dict[str, asyncio.Task[None]] = {}

    @property
    def busy(self) -> bool:
        return bool(self._wanted)

    async def look(self, stored: Stored | None) -> None:
        """Makes sure that `timeline` knows what is stored: after a restart, or when another replica planned.
        What this process alone has changed since it last looked costs nothing."""
        if stored is None or self._seen.get(stored.potluck.id) == stored.revision:
            return
        potluck_id = stored.potluck.id
        known = self._known.get(potluck_id)
        newer = await self._store.kitchen_plan(potluck_id, known.revision if known is not None else 0)
        if newer is not None:
            self._keep(potluck_id, _Known(None, newer.part, newer.timeline, newer.revision))
        self._saw(potluck_id, stored.revision)

    def timeline(self, potluck: Potluck) -> Timeline | None:
        """The latest timeline of this potluck, or None before there is one. It may lag behind by a moment."""
        known = self._known.get(potluck.id)
        return known.timeline if known is not None else None

    def settled(self, potluck: Potluck) -> bool:
        """Whether it asks for no other timeline than the one that is known."""
        known = self._known.get(potluck.id)
        return known.fits(_kitchen_part(potluck)) if known is not None else not potluck.promises

    def changed(self, potlucks: Iterable[Potluck], revisions: Mapping[str, int]) -> None:
        """These potlucks are new or changed, and stored with these revisions: those in which it matters to the
        kitchen are planned anew."""
        for potluck in potlucks:
            self._went_on(potluck.id, revisions)
            if not self.settled(potluck):
                self._want(potluck.id)

    async def catch_up(self, waited: timedelta = timedelta(0)) -> None:
        """Plans what has waited so long for it: what a process that died, or could not reach its database, left."""
        now = self._clock.now()
        for potluck_id in await self._store.plans_due(now - waited, now - OVER):
            self._want(potluck_id)

    def cancel(self) -> list[asyncio.Task[None]]:
        tasks = list(self._wanted.values())
        for task in tasks:
            task.cancel()
        self._wanted.clear()
        return tasks

    async def plan(self, potluck: Potluck, now: datetime) -> Plan:
        return await asyncio.to_thread(plan, potluck, now, effort=EFFORT, seconds=10.0)

    def _want(self, potluck_id: str) -> None:
        if potluck_id not in self._wanted:
            self._wanted[potluck_id] = asyncio.create_task(self._refresh(potluck_id), name=f"plan:{potluck_id}")

    def _keep(self, potluck_id: str, known: _Known) -> None:
        self._known[potluck_id] = known
        self._known.move_to_end(potluck_id)
        while len(self._known) > MOST_KEPT:
            self._seen.pop(self._known.popitem(last=False)[0], None)

    def _saw(self, potluck_id: str, revision: int) -> None:
        self._seen[potluck_id] = revision
        self._seen.move_to_end(potluck_id)
        while len(self._seen) > MOST_SEEN:
            self._seen.popitem(last=False)

    def _went_on(self, potluck_id: str, revisions: Mapping[str, int]) -> None:
        """A change of ours, compared with the revision it was made to: nobody else stored anything in between."""
        revision = revisions.get(potluck_id)
        if revision is not None and self._seen.get(potluck_id, 0) == revision - 1:
            self._saw(potluck_id, revision)

    async def _refresh(self, potluck_id: str) -> None:
        try:
            # Several changes in a row are planned once: those that come while we wait are part of it.
            await asyncio.sleep(0.05)
            for _ in range(5):
                stored = await self._store.potluck(potluck_id)
                if stored is None or not await self._plan_kitchen(stored):
                    return
        except (StorageTrouble, asyncio.CancelledError):
            pass  # it stays marked as waiting
        except Exception:
            log.exception("planning failed", potluck=potluck_id)
        finally:
            self._wanted.pop(potluck_id, None)

    async def _plan_kitchen(self, stored: Stored) -> bool:
        """True when the potluck changed meanwhile and must be looked at again."""
        await self.look(stored)
        potluck = stored.potluck
        part = _kitchen_part(potluck)
        before = self._known.get(potluck.id)
        if before is not None and before.fits(part):
            await self._store.plan_settled(potluck.id, stored.revision)
            return False
        now = self._clock.now()
        # Near to the last one, so that nobody gets a new time without need.
        last = with_last(potluck, before.timeline if before is not None else None, now)
        made = await asyncio.to_thread(timeline, last, now, EFFORT, 0, 10.0)
        if before is not None and before.timeline == made:
            before.part = part
            await self._store.plan_settled(potluck.id, stored.revision)
            return False
        latest = await self._store.potluck(potluck.id)
        if latest is None:
            return False
        if _kitchen_part(latest.potluck) != part:
            return True
        derived = await self._derived.reminders(latest.potluck, made, now)
        # The unchanged potluck goes along so that its revision is compared: newer reminders are not overwritten.
        batch = Batch(
            now=now,
            changed=((latest, latest.potluck),),
            reminders=((potluck.id, derived),) if latest.potluck.stage is Stage.PLANNED else (),
            plans=((potluck.id, _mark(part), made),),
        )
        try:
            result = await self._store.commit(batch)
        except Stale:
            return True
        self._keep(potluck.id, _Known(part, "", made, result.revisions[potluck.id]))
        self._went_on(potluck.id, result.revisions)
        if self.wake is not None:
            self.wake(result)
        return False
