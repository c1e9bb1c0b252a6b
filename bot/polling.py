"""Polling that confirms only what is done, and that is begun anew when it stands still."""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

import telegram
from telegram.error import Conflict, TelegramError
from telegram.ext import Application, ExtBot

from bot import log
from bot.clock import Clock
from bot.courier.metrics import Metrics
from bot.intake import ALLOWED_UPDATES
from bot.unpacking import unpacked

_log = log.get("app")

POLL_S = 25
WATCHDOG = timedelta(seconds=120)


class PatientBot(ExtBot[None]):
    """The library's bot, which asks for the next updates only when the last ones are done with.

    Asking with a higher offset tells the platform to forget what came before. The library asks as
    soon as an update is in its queue, so a crash would lose whatever is queued or being worked on.
    """

    def __init__(self, *args: Any, now: Callable[[], datetime], failed: Callable[[], None], **more: Any) -> None:
        """`failed` hears of every update that can't be read."""
        super().__init__(*args, **more)
        self._failed = failed
        self._open: set[int] = set()
        self._drained = asyncio.Event()
        self._drained.set()
        self._now = now
        self._polls: set[asyncio.Task[Any]] = set()
        self._last_poll: datetime | None = None

    async def get_updates(self, *_: Any, **told: Any) -> tuple[telegram.Update, ...]:
        """`told`: offset, timeout, allowed_updates, as the library's polling gives them."""
        task = asyncio.current_task()
        if task is not None:
            self._polls.add(task)
        try:
            await self._drained.wait()
            held: timedelta = told.get("timeout", timedelta(0))
            patience_s = (self._request[0].read_timeout or 0) + held.total_seconds()
            try:
                updates = self._unpacked(await self._post("getUpdates", told, read_timeout=patience_s))
            except (KeyError, TypeError, AttributeError) as fault:
                raise TelegramError(f"no answer of the platform's ({type(fault).__name__})") from None
        finally:
            if task is not None:
                self._polls.discard(task)
        self._last_poll = self._now()
        self._open.update(u.update_id for u in updates)
        if self._open:
            self._drained.clear()
        return updates

    def _unpacked(self, found: object) -> tuple[telegram.Update, ...]:
        # The library reads them all or none, and asks at once for the same ones again.
        each = found if isinstance(found, list) else [found]
        updates = tuple(u for one in each if (u := unpacked(one, self, self._failed)) is not None)
        if each and not updates:
            # Nothing that could be confirmed: the library waits longer and longer after this.
            raise TelegramError("no updates in the platform's answer")
        return updates

    def done(self, update: object) -> None:
        """This update's change is committed (or it had none)."""
        if isinstance(update, telegram.Update):
            self._open.discard(update.update_id)
            if not self._open:
                self._drained.set()

    # The library's bot lets nobody set attributes without an underscore.

    @property
    def open_updates(self) -> int:
        return len(self._open)

    @property
    def polls(self) -> tuple[asyncio.Task[Any], ...]:
        """The tasks that are asking for updates now."""
        return tuple(self._polls)

    @property
    def last_poll(self) -> datetime | None:
        """When the platform last answered."""
        return self._last_poll


async def cut_off(app: Application[Any, Any, Any, Any, Any, Any], *doomed: asyncio.Task[Any] | None) -> None:
    """End the library's tasks and `doomed` as a dying process would: nothing is finished or confirmed."""
    # The library keeps its tasks to itself.
    updater = app.updater
    all_of_them = [
        *doomed,
        getattr(updater, "_Updater__polling_task", None),
        getattr(app, "_Application__update_fetcher_task", None),
        *getattr(app, "_Application__create_task_tasks", ()),
    ]
    gone = [t for t in all_of_them if t is not None and t is not asyncio.current_task()]
    for task in gone:
        task.cancel()
    await asyncio.gather(*gone, return_exceptions=True)
    if updater is not None:
        updater._running = False
        # The library leaves a task waiting for this where its polling is cut off.
        getattr(updater, "_Updater__polling_task_stop_event").set()  # noqa: B009
    app._running = False


class Poller:
    def __init__(
        self, app: Application[Any, Any, Any, Any, Any, Any], bot: PatientBot, clock: Clock, metrics: Metrics
    ) -> None:
        self._app = app
        self._bot = bot
        self._clock = clock
        self._metrics = metrics

    async def start(self) -> None:
        assert self._app.updater is not None
        await self._app.updater.start_polling(
            timeout=timedelta(seconds=POLL_S), allowed_updates=ALLOWED_UPDATES, error_callback=self._on_error
        )

    async def watch(self) -> None:
        """Polling has been seen to stop without a word; then it is begun anew."""
        while True:
            await self._clock.sleep(30.0)
            last = self._bot.last_poll
            if last is None or self._bot.open_updates:
                continue
            age = self._clock.now() - last
            self._metrics.poll_age_s.set(max(0.0, age.total_seconds()))
            if age > WATCHDOG and self._app.updater is not None:
                _log.error("polling stood still; it is begun anew", for_s=age.total_seconds())
                with contextlib.suppress(TelegramError, RuntimeError, TimeoutError):
                    async with asyncio.timeout(30):
                        await self._app.updater.stop()
                with contextlib.suppress(TelegramError, RuntimeError):
                    await self.start()

    def _on_error(self, fault: TelegramError) -> None:
        self._metrics.api_errors.labels("poll").inc()
        if isinstance(fault, Conflict):
            _log.warning("another process is polling with the same token: only one may; stop the other")
        else:
            _log.warning("the platform can't be reached", why=str(fault))
