"""The bot as a process: it takes updates, hands each to one function, and runs the courier beside it.

Nothing is lost when it dies at any moment: by polling, an update is confirmed to the platform only
after everything fetched before it has been handled; by webhook, 200 is answered only then.
"""

from __future__ import annotations

import asyncio
import contextlib
import socket
from collections.abc import Awaitable, Callable
from datetime import datetime
from typing import Any
from urllib.parse import urlsplit

import telegram
from telegram.error import InvalidToken, TelegramError
from telegram.ext import Application, TypeHandler

from bot import log
from bot.clock import Clock, RealClock
from bot.courier import Courier, Renderer
from bot.courier.metrics import Metrics
from bot.intake import ALLOWED_UPDATES, Handle, Intake
from bot.per_chat import AT_ONCE, PerChat
from bot.polling import PatientBot, Poller, cut_off
from bot.settings import Settings, host_port
from bot.signals import until_signalled
from bot.storage.errors import StorageTrouble
from bot.transport import AiohttpRequest
from bot.unpacking import unpacked
from bot.web import Busy, Door, watch_routes, webhook_route

_log = log.get("app")

TICK_S = 15.0
"""How often, in real time, reminders and left-over posts are looked for."""
STOP_S = 25.0
"""Less than what service managers usually allow before they kill."""


class TureenBot:
    """One running bot. `handle` may be set after construction, before `start()`."""

    def __init__(
        self,
        *,
        token: str,
        store: Any,
        clock: Clock,
        handle: Handle | None = None,
        render: Renderer | None = None,
        base_url: str = "https://api.telegram.org/bot",
        base_file_url: str = "https://api.telegram.org/file/bot",
        send_limits: bool = True,
        mode: str = "polling",
        webhook_url: str | None = None,
        webhook_listen: tuple[str, int] = ("127.0.0.1", 8443),
        webhook_secret: str | None = None,
        webhook_connections: int = 40,
        metrics_listen: tuple[str, int] | None = None,
        commands: Callable[[], Awaitable[None]] | None = None,
        at_once: int = AT_ONCE,
    ) -> None:
        log.hide(token, webhook_secret)
        self.clock = clock
        self.store = store
        self.handle = handle
        self.commands = commands
        self.metrics = Metrics()
        self._mode = mode
        self._webhook = (webhook_url, webhook_listen, webhook_secret, webhook_connections)
        self._metrics_listen = metrics_listen
        loopback = (urlsplit(base_url).hostname or "") in ("127.0.0.1", "localhost", "::1")
        self._requests = (
            AiohttpRequest(connections=4, proxy_from_environment=not loopback),
            AiohttpRequest(connections=32, proxy_from_environment=not loopback),
        )
        self.bot = PatientBot(
            token,
            base_url=base_url,
            base_file_url=base_file_url,
            get_updates_request=self._requests[0],
            request=self._requests[1],
            now=clock.now,
            failed=self.metrics.failures.inc,
        )
        self._per_chat = PerChat(at_once, done=self.bot.done)
        self._app: Application[Any, Any, Any, Any, Any, Any] = (
            Application.builder()
            .bot(self.bot)
            .concurrent_updates(self._per_chat)
            .update_queue(asyncio.Queue(maxsize=1))
            .build()
        )
        self.flooded: Handle | None = None
        self.intake = Intake(
            self._handled, clock, self.metrics, give_up=mode == "webhook", flooded=self._told_of_flood
        )
        self._app.add_handler(TypeHandler(telegram.Update, self.intake.on_update))
        self._app.add_error_handler(self.intake.on_error)
        self._poller = Poller(self._app, self.bot, clock, self.metrics)
        # Behind a webhook several work side by side; by polling there can only be one.
        replica = f"{socket.gethostname()}:{webhook_listen[1]}" if mode == "webhook" else None
        self.courier = Courier(
            self.bot, store, clock, limits=send_limits, render=render, metrics=self.metrics, replica=replica
        )
        self.courier.people_wait = lambda: bool(self._per_chat.lines)
        self._doors: list[Door] = []
        self._tasks: list[asyncio.Task[Any]] = []
        self._running = False

    @classmethod
    def from_settings(cls, settings: Settings, **more: Any) -> TureenBot:
        """`more`: store, clock, handle, render, commands."""
        assert settings.token is not None
        return cls(
            token=settings.token.get_secret_value(),
            base_url=settings.api_base_url,
            base_file_url=settings.api_file_url,
            send_limits=settings.send_limits == "platform",
            mode=settings.mode,
            webhook_url=settings.webhook_url,
            webhook_listen=host_port(settings.webhook_listen),
            webhook_secret=settings.webhook_secret.get_secret_value() if settings.webhook_secret else None,
            webhook_connections=settings.webhook_connections,
            metrics_listen=host_port(settings.metrics_listen) if settings.metrics_listen else None,
            **more,
        )

    # --- life ---

    async def start(self) -> None:
        """Connect and begin. Waits for a platform that can't be reached; a refused token raises InvalidToken."""
        assert self.handle is not None, "set `handle` before start()"
        if self._metrics_listen is not None:
            # Opened first, so that liveness can be asked while the platform is not reachable yet.
            await self._open(*self._metrics_listen, watch_routes(self._missing, self._metrics_text))
        await self._until_reached(self._app.initialize)
        # Before anything is sent: what draws boards may be built here.
        if self.commands is not None:
            try:
                await self.commands()
            except TelegramError as fault:
                _log.warning("the command menu could not be set", why=str(fault))
        await self._app.start()
        self._running = True
        await self.courier.start()
        if self._mode == "webhook":
            await self._start_webhook()
        else:
            await self._until_reached(self._poller.start)
        if isinstance(self.clock, RealClock):
            self._tasks.append(asyncio.create_task(self._tick(), name="tick"))
            if self._mode == "polling":
                self._tasks.append(asyncio.create_task(self._poller.watch(), name="watchdog"))
        _log.info("started", mode=self._mode)

    async def stop(self) -> None:
        """Finish what was taken, then go. What could not be sent stays in the outbox."""
        if not self._running:
            return
        self._running = False
        self._stop_timers()
        for door in self._doors:
            await door.close()
        updater = self._app.updater
        try:
            async with asyncio.timeout(STOP_S):
                if updater is not None and updater.running:
                    await updater.stop()
                await self._app.stop()
        except TimeoutError:
            # A database that stays away, say. What is not confirmed comes again, what is stored stays.
            _log.warning("not everything could be finished in time", after_s=STOP_S)
            await self.kill()
            return
        await self.courier.stop()
        await self._app.shutdown()
        _log.info("stopped")

    async def kill(self) -> None:
        """Be gone as if the process had died: nothing is finished, flushed or said."""
        self._running = False
        for request in self._requests:
            request.kill()
        self._stop_timers()
        doomed: list[asyncio.Task[Any] | None] = [*self._tasks, *self.courier.kill(), *self.bot.polls]
        for door in self._doors:
            doomed += door.kill()
        await cut_off(self._app, *doomed)
        for request in self._requests:
            await request.shutdown()

    async def run_until_signalled(self) -> None:
        """Start, serve until SIGINT or SIGTERM, stop in order."""
        await until_signalled(self.start, self.stop, self.kill)

    # --- what the rehearsal player asks ---

    def quiet(self) -> bool:
        """True when nothing is in work: only waits on the clock are left, or nothing at all."""
        return (
            not self.bot.open_updates
            and not self._per_chat.lines
            and self._app.update_queue.empty()
            and self.courier.quiet()
        )

    def waiting_to_send(self) -> datetime | None:
        """When the earliest wait for a rate limit, a retry or the board's gap ends; None when there is none."""
        return self.courier.next_send_at()

    def due(self) -> datetime | None:
        """When the next planned thing (a reminder) is due; None when none is known."""
        return self.courier.next_due_at()

    def reminder_kind(self, chat_id: int, message_id: int) -> str | None:
        """The kind of reminder this message was, None when it was none. This process's messages only."""
        return self.courier.reminder_kind(chat_id, message_id)

    def take_failed_reminders(self) -> list[tuple[int, str, str]]:
        """(chat id, kind, why as a text key) of reminders given up since the last time this was asked."""
        return self.courier.take_failed_reminders()

    # --- updates ---

    async def _handled(self, update: telegram.Update) -> None:
        assert self.handle is not None
        await self.handle(update)

    async def _told_of_flood(self, update: telegram.Update) -> None:
        if self.flooded is not None:
            await self.flooded(update)

    def stored(self, update: telegram.Update) -> None:
        """This update's change is committed; only its acknowledgement is left."""
        self.bot.done(update)
        self._per_chat.stored(update)

    async def _take(self, data: dict[str, Any]) -> None:
        """A webhook's update; returns when it is handled."""
        update = unpacked(data, self.bot, self.metrics.failures.inc)
        if update is None:
            return
        if not self._running:
            raise Busy
        await self._app.update_processor.process_update(update, self._app.process_update(update))
        if not self.intake.stored(update):
            raise Busy

    # --- inside ---

    async def _start_webhook(self) -> None:
        url, listen, secret, connections = self._webhook
        assert url is not None
        assert secret is not None
        path = urlsplit(url).path or "/"
        routes = [webhook_route(path, secret, self._take)]
        routes += watch_routes(self._missing, self._metrics_text)[:2]
        await self._open(*listen, routes)
        await self._until_reached(
            lambda: self.bot.set_webhook(
                url, allowed_updates=ALLOWED_UPDATES, secret_token=secret, max_connections=connections
            )
        )

    async def _open(self, host: str, port: int, routes: list[Any]) -> None:
        door = Door(host, port, routes)
        await door.open()
        self._doors.append(door)

    async def _until_reached(self, step: Callable[[], Awaitable[Any]]) -> None:
        wait_s = 1.0
        while True:
            try:
                await step()
                return
            except InvalidToken:
                raise
            except TelegramError as fault:
                _log.warning("the platform can't be reached", why=str(fault), again_in_s=wait_s)
                await self.clock.sleep(wait_s)
                wait_s = min(60.0, wait_s * 2)

    async def _tick(self) -> None:
        """By spans, not by the wall clock's times: one that is set back must not stop the reminders."""
        while True:
            try:
                await self.courier.tick()
                await self.look_around()
            except Exception:
                _log.exception("a look at what is due failed; the next one follows", after_s=TICK_S)
            await self.clock.sleep(TICK_S)

    async def look_around(self) -> None:
        """What else is due, at every tick."""

    async def _missing(self) -> str | None:
        """What stands between this process and taking work; None when it is ready."""
        if not self._running:
            return "starting or stopping"
        try:
            async with asyncio.timeout(5):
                await self.store.queue_length()
        except (StorageTrouble, TimeoutError, OSError):
            return "the database does not answer"
        return None

    async def _metrics_text(self) -> bytes:
        with contextlib.suppress(StorageTrouble, OSError):
            await self.courier.measure()
        return self.metrics.text()

    def _stop_timers(self) -> None:
        for task in self._tasks:
            task.cancel()
