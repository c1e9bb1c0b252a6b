"""Plans in the background: off the event loop, a moment after the last change, and kept until the next.

The chat never waits for a solver: `timeline()` gives what is known. When a new timeline is ready, the
reminders that hang on it are written anew and its listeners are told.
"""

from __future__ import annotations

import asyncio
from collections import OrderedDict
from collections.abc import Callable, Iterable
from datetime import datetime
from typing import Any

import structlog

from bot.clock import Clock
from bot.derived import Derived
from bot.storage.errors import Stale, StorageTrouble
from bot.storage.store import Store
from bot.storage.values import Batch, CommitResult
from planning.kitchen import Timeline, timeline
from planning.kitchen.known import with_last
from planning.plan import Plan, plan
from planning.potluck import Potluck, Stage

log = structlog.get_logger("planner")

EFFORT = 0.3
"""Deterministic solver units of a plan in the chat: about a second at the worst."""
MOST_KEPT = 200


def _kitchen_part(potluck: Potluck) -> Any:
    """All a timeline depends on, so that an answer that changes no dish keeps the timeline."""
    return (
        potluck.starts_at,
        potluck.timezone,
        potluck.stage,
        potluck.setting,
        potluck.promises,
        potluck.kitchen,
        tuple((g.id, g.answer, g.travel_min) for g in potluck.guests),
    )


class Planner:
    def __init__(self, store: Store, clock: Clock, wake: Callable[[CommitResult], Any] | None = None) -> None:
        self._store = store
        self._derived = Derived(store)
        self._clock = clock
        self.wake = wake
        self._known: OrderedDict[str, tuple[Any, Timeline]] = OrderedDict()
        self._wanted: dict[str, asyncio.Task[None]] = {}

    @property
    def busy(self) -> bool:
        return bool(self._wanted)

    def timeline(self, potluck: Potluck) -> Timeline | None:
        """The latest timeline of this potluck, or None before there is one. It may lag behind by a moment."""
        known = self._known.get(potluck.id)
        return known[1] if known is not None else None

    def changed(self, potlucks: Iterable[Potluck]) -> None:
        """These potlucks are new or changed: those in which it matters to the kitchen are planned anew."""
        for potluck in potlucks:
            potluck_id = potluck.id
            known = self._known.get(potluck_id)
            settled = known[0] == _kitchen_part(potluck) if known is not None else not potluck.promises
            if not settled and potluck_id not in self._wanted:
                self._wanted[potluck_id] = asyncio.create_task(self._refresh(potluck_id), name=f"plan:{potluck_id}")

    def cancel(self) -> list[asyncio.Task[None]]:
        tasks = list(self._wanted.values())
        for task in tasks:
            task.cancel()
        self._wanted.clear()
        return tasks

    async def plan(self, potluck: Potluck, now: datetime) -> Plan:
        return await asyncio.to_thread(plan, potluck, now, effort=EFFORT, seconds=10.0)

    async def _refresh(self, potluck_id: str) -> None:
        try:
            # Several changes in a row are planned once: those that come while we wait are part of it.
            await asyncio.sleep(0.05)
            for _ in range(5):
                stored = await self._store.potluck(potluck_id)
                if stored is None or not await self._plan_kitchen(stored):
                    return
        except (StorageTrouble, asyncio.CancelledError):
            pass
        except Exception:
            log.exception("planning failed", potluck=potluck_id)
        finally:
            self._wanted.pop(potluck_id, None)

    async def _plan_kitchen(self, stored: Any) -> bool:
        """True when the potluck changed meanwhile and must be looked at again."""
        potluck = stored.potluck
        part = _kitchen_part(potluck)
        before = self._known.get(potluck.id)
        if before is not None and before[0] == part:
            return False
        now = self._clock.now()
        # Near to the last one, so that nobody gets a new time without need.
        last = with_last(potluck, before[1] if before is not None else None, now)
        made = await asyncio.to_thread(timeline, last, now, EFFORT, 0, 10.0)
        self._known[potluck.id] = (part, made)
        self._known.move_to_end(potluck.id)
        while len(self._known) > MOST_KEPT:
            self._known.popitem(last=False)
        if before is not None and before[1].steps == made.steps and not made.steps:
            return False
        latest = await self._store.potluck(potluck.id)
        if latest is None:
            return False
        if _kitchen_part(latest.potluck) != part:
            return True
        if latest.potluck.stage is Stage.PLANNED and (made.steps or before is not None):
            derived = await self._derived.reminders(latest.potluck, made, now)
            # The unchanged potluck goes along so that its revision is compared: newer reminders are not overwritten.
            batch = Batch(now=now, changed=((latest, latest.potluck),), reminders=((potluck.id, derived),))
            try:
                result = await self._store.commit(batch)
            except Stale:
                return True
            if self.wake is not None:
                self.wake(result)
        return False
