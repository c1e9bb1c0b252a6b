"""Putting the bot together: the same parts for the platform, the room and a rehearsal."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import telegram

from bot import log
from bot.app import TureenBot
from bot.buttons import Signer
from bot.clock import Clock
from bot.dispatch import Dispatcher
from bot.floods import DRAWN, Spent
from bot.housekeeping import KEEP_DAYS, Housekeeping
from bot.planner import Planner
from bot.registry import Registry, load
from bot.renderer import BotRenderer
from bot.services import Services
from bot.storage.errors import StorageTrouble
from bot.storage.store import Store
from bot.texts import Voice, languages

_log = log.get("tureen")

CATCH_UP = timedelta(minutes=1)
"""What waits so long to be planned was left by a process that is no more."""


class Tureen(TureenBot):
    """The bot with its capabilities: what `TureenBot` carries, this one understands."""

    def __init__(
        self,
        *,
        token: str,
        store: Store,
        clock: Clock,
        registry: Registry | None = None,
        keep_days: int = KEEP_DAYS,
        menu: bool = True,
        **more: Any,
    ) -> None:
        """`menu`: whether the platform is told the commands, for its menus, at every start."""
        super().__init__(token=token, store=store, clock=clock, commands=self._set_commands, **more)
        self._menu = menu
        self.registry = registry or load()
        self.signer = Signer(token)
        self.planner = Planner(store, clock, self.courier.wake)
        self._caught_up = clock.now()
        self.housekeeping = Housekeeping(store, clock, keep_days)

    async def start(self) -> None:
        self.handle = self._first
        await super().start()
        self.housekeeping.start()
        try:
            await self.planner.catch_up()
        except StorageTrouble as trouble:
            _log.warning("storage can't be used now", what=trouble.key)

    async def look_around(self) -> None:
        now = self.clock.now()
        if not timedelta(0) <= now - self._caught_up < CATCH_UP:
            self._caught_up = now
            await self.planner.catch_up(CATCH_UP)

    async def _first(self, update: telegram.Update) -> None:
        """The bot's own name is known only once the platform has been asked: the rest is built then."""
        self._build()
        assert self.handle is not None
        await self.handle(update)

    def _build(self) -> None:
        dispatcher: Dispatcher

        async def is_member(chat_id: int, person_id: int) -> bool:
            return await dispatcher.admins.is_member(chat_id, person_id)

        async def has_left(chat_id: int, person_id: int) -> bool:
            return await dispatcher.admins.has_left(chat_id, person_id)

        services = Services(
            self.store,
            self.clock,
            self.signer,
            self.registry,
            self.bot.username,
            is_member,
            self.planner,
            has_left,
            Spent(self.clock, DRAWN),
        )
        dispatcher = Dispatcher(services, self.bot, self.courier, self.stored)
        self.handle, self.flooded = dispatcher.handle, dispatcher.too_much
        dispatcher.on_failure = self.metrics.failures.inc
        self.courier.render = BotRenderer(self.registry, self.signer, self.bot.username)

    async def _set_commands(self) -> None:
        self._build()
        if not self._menu:
            return
        for language in languages():
            voice = Voice(language)
            for where, scope in (
                ("group", telegram.BotCommandScopeAllGroupChats()),
                ("private", telegram.BotCommandScopeAllPrivateChats()),
            ):
                commands = [
                    telegram.BotCommand(c.name, voice.plain(f"help-{c.name}")[:256])
                    for c in sorted(self.registry.commands.values(), key=lambda c: (c.order, c.name))
                    if c.menu and c.where in ("both", where)
                ]
                await self.bot.set_my_commands(commands, scope, None if language == "en" else language)

    def quiet(self) -> bool:
        return super().quiet() and not self.planner.busy

    async def stop(self) -> None:
        self.planner.cancel()
        self.housekeeping.cancel()
        await super().stop()

    async def kill(self) -> None:
        self.planner.cancel()
        self.housekeeping.cancel()
        await super().kill()
