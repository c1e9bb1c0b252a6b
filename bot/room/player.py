"""Moves the clock and waits for the bot: what the rehearsal and the page have in common."""

from __future__ import annotations

import asyncio
import inspect
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, Protocol

from bot.clock import SimulatedClock

from .room import Room

PATIENCE_S = 60.0
"""Real seconds without coming to rest after which the bot is given up."""
STEPS_A_MOVE = 200_000


class BotProcess(Protocol):
    """What the player needs of a bot. `quiet` may be a coroutine that returns when the bot is at rest, or a
    plain method that says whether it is; `due` and `waiting_to_send` may be either, too."""

    async def start(self) -> None: ...

    async def stop(self) -> None: ...

    async def kill(self) -> None: ...

    def quiet(self) -> Any:
        """No update is being handled and nothing can be sent without the clock moving."""

    def waiting_to_send(self) -> Any:
        """Something waits for the clock: true, or the time until which it waits."""

    def due(self) -> Any:
        """When the next planned thing is due, None when nothing is planned."""

    def reminder_kind(self, chat_id: int, message_id: int) -> str | None:
        """The kind of reminder this message was, None when it was none."""


@dataclass(frozen=True)
class BotSetup:
    """What a bot needs to live in a room."""

    token: str
    base_url: str
    base_file_url: str
    clock: SimulatedClock
    timezone: str
    group: int
    """The group's id at the time: an upgraded group has another."""
    people: Mapping[int, str]
    """User id -> the script's id of the person."""
    out: Path
    username: str = ""
    life: int = 1
    """1 for the first start of a rehearsal; what an earlier rehearsal left behind in `out` is not ours."""


class NotAtRest(Exception):
    """The bot went on and on, or hung."""


async def _value(answer: Any) -> Any:
    return await answer if inspect.isawaitable(answer) else answer


@dataclass
class Player:
    """`bot` is None while the bot is down."""

    room: Room
    clock: SimulatedClock
    bot: BotProcess | None = None
    patience_s: float = PATIENCE_S
    waits: int = field(default=0)
    """How often the clock was moved for a wait of the bot's."""

    async def rest(self) -> None:
        """Return when the bot is idle; waits for rate limits and retries run on the simulated clock."""
        if self.bot is None:
            return
        try:
            async with asyncio.timeout(self.patience_s):
                while True:
                    await self.at_rest()
                    waiting = await _value(self.bot.waiting_to_send())
                    if not waiting:
                        return
                    until = waiting if isinstance(waiting, datetime) else self.clock.next_wake(schedule=False)
                    if until is None or until <= self.clock.now():
                        await asyncio.sleep(0.001)
                        continue
                    self.waits += 1
                    self.clock.set(until)
        except TimeoutError:
            raise NotAtRest(f"the bot did not come to rest within {self.patience_s:.0f} s") from None

    async def at_rest(self) -> None:
        """Return when the bot is idle, whatever it still waits for; the clock is not moved."""
        if self.bot is None:
            return
        calm = 0
        while calm < 2:
            await self.room.settled()
            answer = await _value(self.bot.quiet())
            # Twice in a row, with everybody getting a turn between: a message may just be on its way.
            calm = calm + 1 if answer is not False and not self._room_busy() else 0
            await asyncio.sleep(0 if calm else 0.0005)

    def _room_busy(self) -> bool:
        return self.room.updates_pending() or self.room.requests_in_flight() > 0

    async def move_to(self, target: datetime) -> None:
        """Move the clock to `target`, stopping at everything that is due on the way, in order."""
        for _ in range(STEPS_A_MOVE):
            stop = await self.next_stop()
            if stop is None or stop > target:
                break
            self.clock.set(stop)
            await self.rest()
        if self.clock.now() < target:
            self.clock.set(target)
            await self.rest()

    async def next_stop(self) -> datetime | None:
        """The next time at which anything happens by itself."""
        if self.bot is None:
            return None
        times = (await _value(self.bot.due()), self.clock.next_wake())
        return min((t for t in times if t is not None and t > self.clock.now()), default=None)

    async def move_by(self, span: timedelta) -> None:
        await self.move_to(self.clock.now() + span)
