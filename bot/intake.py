"""One update's way to whoever handles it: measured, given up after a minute, patient with storage."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable

import telegram
from telegram.ext import ContextTypes

from bot import log
from bot.clock import Clock
from bot.courier.metrics import Metrics
from bot.floods import Floods, Verdict
from bot.storage.errors import StorageTrouble

_log = log.get("app")

Handle = Callable[[telegram.Update], Awaitable[None]]

ALLOWED_UPDATES = ("message", "edited_message", "callback_query", "my_chat_member", "chat_member", "message_reaction")
HANDLE_S = 60.0
"""One update may take so long; then it is given up, or a hanging one would stop everybody's."""
STORAGE_WAITS_S = (0.2, 0.5, 1.0, 2.0, 5.0, 10.0)


class Intake:
    """`give_up`: after the last of the waits an update storage did not take is given back (a webhook's
    comes again to another replica); else it is tried until it is stored."""

    def __init__(
        self, handle: Handle, clock: Clock, metrics: Metrics, *, give_up: bool, flooded: Handle | None = None
    ) -> None:
        """`flooded` tells whoever sends more than anybody would; without it nobody is held back."""
        self._handle = handle
        self._flooded = flooded
        self._floods = Floods(clock)
        self._clock = clock
        self._metrics = metrics
        self._give_up = give_up
        self._unstored: set[int] = set()
        self.storage_waits_s = STORAGE_WAITS_S

    async def on_update(self, update: telegram.Update, _: ContextTypes.DEFAULT_TYPE) -> None:
        began = self._clock.now()
        self._metrics.updates.labels(_kind(update)).inc()
        verdict = Verdict.FINE if self._flooded is None else self._floods.look(update)
        if verdict is not Verdict.FINE:
            self._metrics.passed_over.inc()
        if verdict is Verdict.PASS_OVER:
            return
        handle = self._flooded if self._flooded is not None and verdict is Verdict.TELL else self._handle
        tries = 0
        while True:
            try:
                async with asyncio.timeout(HANDLE_S):
                    await handle(update)
                break
            except StorageTrouble as trouble:
                # The update stays unconfirmed meanwhile: a locked database or a full disk loses nothing.
                wait_s = self.storage_waits_s[min(tries, len(self.storage_waits_s) - 1)]
                _log.warning("storage can't be used now", what=trouble.key, again_in_s=wait_s)
                tries += 1
                if self._give_up and tries > len(self.storage_waits_s):
                    self._unstored.add(update.update_id)
                    return
                # The machine's trouble, not the story's: real time even where the clock is simulated.
                await asyncio.sleep(wait_s)
        self._metrics.update_s.observe(max(0.0, (self._clock.now() - began).total_seconds()))

    async def on_error(self, update: object, context: ContextTypes.DEFAULT_TYPE) -> None:
        self._metrics.failures.inc()
        chat = update.effective_chat.id if isinstance(update, telegram.Update) and update.effective_chat else None
        _log.error("an update could not be handled", chat=chat, exc_info=context.error)

    def stored(self, update: telegram.Update) -> bool:
        """Whether a worked-on update was taken by storage; to be asked once."""
        if update.update_id not in self._unstored:
            return True
        self._unstored.discard(update.update_id)
        return False


def _kind(update: telegram.Update) -> str:
    return next((k for k in ALLOWED_UPDATES if getattr(update, k, None) is not None), "other")
