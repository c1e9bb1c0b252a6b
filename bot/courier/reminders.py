"""The ticker: due reminders become posts, or are skipped, in one transaction each.

A reminder is claimed with a lease, looked at again with the newest state, and then - in one commit -
marked as ended and written to the outbox. A process that slept and wakes up too late can't do that a
second time: the commit is refused when the claim is no longer its own. What may happen to the post
after that is the outbox's policy (`delivery.py`).
"""

from __future__ import annotations

import asyncio
from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any

from bot import log
from bot.clock import Clock
from bot.courier.desk import Desk
from bot.courier.metrics import Metrics
from bot.courier.render import ReminderCase
from bot.courier.verdict import account_of, private_chat, verdict
from bot.storage.errors import Stale, StorageError, StorageTrouble
from bot.storage.values import Batch, FinishedReminder, PersonRecord, Post, ReminderRow, Stored
from planning.potluck import Say

if TYPE_CHECKING:
    from bot.courier.courier import Courier

_log = log.get("reminders")

AT_A_TIME = 100
BOARD_CHANGES = ("start",)
"""With these the board shows other buttons, though nobody changed anything."""


class Ticker:
    def __init__(self, courier: Courier, clock: Clock, desk: Desk, metrics: Metrics) -> None:
        self._courier = courier
        self._clock = clock
        self._desk = desk
        self._metrics = metrics
        self._news = asyncio.Event()
        self._task: asyncio.Task[None] | None = None
        self._turn = asyncio.Lock()
        self.next_at: datetime | None = None
        self._looking = False

    # --- simulated time: one task that sleeps until the next due time ---

    def start(self) -> None:
        self._task = asyncio.create_task(self._watch(), name="courier:reminders")

    async def stop(self) -> None:
        if self._task is not None:
            self._task.cancel()
            await asyncio.gather(self._task, return_exceptions=True)
            self._task = None

    def tasks(self) -> list[asyncio.Task[Any]]:
        return [self._task] if self._task is not None else []

    def changed(self) -> None:
        """Reminders may have moved: the next due time is looked up anew."""
        self._news.set()

    @property
    def busy(self) -> bool:
        """Working, or about to: the time has come or news wait to be looked at."""
        due = self.next_at is not None and self.next_at <= self._clock.now()
        watching = self._task is not None and not self._task.done()
        return self._turn.locked() or self._looking or (watching and (due or self._news.is_set()))

    async def _watch(self) -> None:
        while True:
            self._looking = True
            try:
                self._news.clear()
                await self.tick()
                self.next_at = await self._desk.next_due()
            except StorageTrouble as trouble:
                _log.warning("storage can't be used now", what=trouble.key)
                self.next_at = self._clock.now() + timedelta(seconds=5)
            except Exception:
                # One fault must not end everybody's reminders; what was claimed comes free with its lease.
                _log.exception("the reminders' ticker failed")
                self.next_at = self._clock.now() + timedelta(seconds=5)
            finally:
                self._looking = False
            news = asyncio.ensure_future(self._news.wait())
            waits: list[asyncio.Future[Any]] = [news]
            if self.next_at is not None:
                waits.append(asyncio.ensure_future(self._clock.sleep_until(self.next_at, schedule=True)))
            try:
                await asyncio.wait(waits, return_when=asyncio.FIRST_COMPLETED)
            finally:
                for wait in waits:
                    wait.cancel()

    # --- one look ---

    async def tick(self) -> None:
        """Deal with everything that is due now."""
        if self._courier.render is None:
            # Nothing could be said yet; what is due stays due.
            return
        async with self._turn:
            while rows := await self._desk.claim_reminders(AT_A_TIME):
                by_potluck: dict[str, list[ReminderRow]] = {}
                for row in rows:
                    by_potluck.setdefault(row.potluck_id, []).append(row)
                # Side by side, so that one flush of the disk serves many potlucks.
                dealt = await asyncio.gather(
                    *(self._deal(potluck_id, group) for potluck_id, group in by_potluck.items()),
                    return_exceptions=True,
                )
                for fault in dealt:
                    if isinstance(fault, BaseException):
                        raise fault

    async def _deal(self, potluck_id: str, rows: list[ReminderRow]) -> None:
        now = self._clock.now()
        stored = await self._desk.stored(potluck_id)
        if stored is None:
            await self._end(rows, "skipped")
            return
        chat = await self._desk.chat(stored.place.chat_id)
        people = await self._people(stored, rows)
        bundles: dict[tuple[str, int | None], list[ReminderRow]] = {}
        for row in sorted(rows, key=lambda r: (r.due_at, r.key)):
            state, later = verdict(row, stored, chat, people.get(account_of(row, stored)), now)
            if later is not None:
                await self._desk.postpone(row, later)
                self._metrics.reminders.labels("held").inc()
            elif state is not None:
                _log.info("reminder skipped", potluck=potluck_id, key=row.key, why=state)
                await self._end([row], "skipped")
            else:
                bundles.setdefault((row.kind, private_chat(row, stored, people)), []).append(row)
        for (kind, private_to), bundle in bundles.items():
            case = ReminderCase(stored, kind, tuple(bundle), chat, private_to, people, now)
            await self._send(case)

    async def _send(self, case: ReminderCase) -> None:
        try:
            post = await self._post(case)
        except StorageError:
            raise
        except Exception:
            # Its words can't be made (its facts are of another version, say). The others' go out all the same.
            _log.exception("a reminder can't be put into words", kind=case.kind, potluck=case.stored.potluck.id)
            await self._end(case.rows, "failed")
            return
        if post is None:
            await self._end(case.rows, "skipped")
            return
        done = tuple(_finished(r, "sent") for r in case.rows)
        try:
            now = self._clock.now()
            boards = ((case.stored.potluck.id, now),) if case.kind in BOARD_CHANGES else ()
            result = await self._desk.commit(
                Batch(now=now, posts=(post,), finished_reminders=done, dirty_boards=boards)
            )
        except Stale:
            # Somebody else holds (some of) them now, or they were withdrawn: each on its own then.
            if len(case.rows) > 1:
                for row in case.rows:
                    await self._send(replace(case, rows=(row,)))
            else:
                self._metrics.reminders.labels("fenced").inc()
            return
        self._metrics.reminders.labels("posted").inc(len(case.rows))
        self._courier.wake(result, potlucks=[potluck_id for potluck_id, _ in boards])

    async def _post(self, case: ReminderCase) -> Post | None:
        if self._courier.render is None:
            return None
        said = await self._courier.render.reminder(case)
        if said is None:
            return None
        place = case.stored.place
        lasts = [r.expires_at for r in case.rows if r.expires_at is not None]
        payload = {
            "about": f"reminder:{case.kind}",
            **said.payload,
            "reminder": {
                "kind": case.kind,
                "until": min(lasts).isoformat() if lasts else None,
                "rows": [_as_json(r) for r in case.rows],
            },
        }
        to_group = case.private_to is None
        return Post(
            place.chat_id if case.private_to is None else case.private_to,
            said.method or "send",
            payload,
            thread_id=place.thread_id if to_group else None,
            potluck_id=case.stored.potluck.id,
            reminder_key=case.rows[0].key,
        )

    async def say_in_group(self, post: Post) -> bool:
        """A private reminder found the door closed: mention the person in the group instead."""
        about = post.payload.get("reminder")
        if not isinstance(about, dict) or post.potluck_id is None:
            return False
        stored = await self._desk.stored(post.potluck_id)
        if stored is None:
            return False
        rows = tuple(_from_json(r, post.potluck_id) for r in about["rows"])
        chat = await self._desk.chat(stored.place.chat_id)
        people = await self._people(stored, rows)
        case = ReminderCase(stored, str(about["kind"]), rows, chat, None, people, self._clock.now())
        again = await self._post(case)
        if again is None:
            return False
        self._courier.wake(await self._desk.post(again))
        return True

    async def _people(self, stored: Stored, rows: Iterable[ReminderRow]) -> dict[str, PersonRecord]:
        accounts = {a for a in (account_of(r, stored) for r in rows) if a.lstrip("-").isdecimal()}
        return {str(i): p for i, p in (await self._desk.people(int(a) for a in accounts)).items()}

    async def _end(self, rows: Iterable[ReminderRow], state: str) -> None:
        rows = tuple(rows)
        self._metrics.reminders.labels(state).inc(len(rows))
        for row in rows:
            try:
                await self._desk.commit(Batch(now=self._clock.now(), finished_reminders=(_finished(row, state),)))
            except Stale:
                self._metrics.reminders.labels("fenced").inc()


def _finished(row: ReminderRow, state: str) -> FinishedReminder:
    return FinishedReminder(row.potluck_id, row.key, row.owner or "", state, tries=row.tries)


def _as_json(row: ReminderRow) -> dict[str, Any]:
    return {
        "key": row.key,
        "kind": row.kind,
        "to": row.to,
        "due_at": row.due_at.isoformat(),
        "about": [row.about.key, dict(row.about.facts)],
    }


def _from_json(data: dict[str, Any], potluck_id: str) -> ReminderRow:
    return ReminderRow(
        potluck_id,
        data["key"],
        data["kind"],
        data["to"],
        datetime.fromisoformat(data["due_at"]),
        None,
        Say(data["about"][0], data["about"][1]),
    )
