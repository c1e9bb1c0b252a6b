"""The whole bot in a process of its own. Its settings:

api, database     where the platform and the database are
webhook, listen   [address, port] pairs: behind a webhook instead of polling
zero, began, pace an hour in minutes: this process's clock shows `zero` plus `pace` times the real
                  seconds since the instant `began`; without them it is the real clock.
                  SIGUSR1 sets the real one back by an hour
no_names_s        for so many seconds no host name can be resolved (a stand-in for the resolver: the machine's
                  own is left alone)
"""

from __future__ import annotations

import asyncio
import os
import signal
import socket
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from bot import log
from bot.app import TICK_S
from bot.assembly import Tureen
from bot.clock import Clock, RealClock
from bot.commands.run import open_patiently
from tests.faults.platform import TOKEN

SECRET = "loopback-secret"


class FastClock:
    """Time that runs `pace` times as fast as the real one."""

    def __init__(self, zero: datetime, began: datetime, pace: float) -> None:
        self._zero, self._began, self._pace = zero, began, pace

    def now(self) -> datetime:
        return self._zero + (datetime.now(UTC) - self._began) * self._pace

    async def sleep_until(self, when: datetime, *, schedule: bool = False) -> None:
        while (left := (when - self.now()).total_seconds()) > 0:  # noqa: ASYNC110
            await asyncio.sleep(left / self._pace)

    async def sleep(self, seconds: float) -> None:
        await self.sleep_until(self.now() + timedelta(seconds=seconds))


class SetBack(RealClock):
    """The real clock, until somebody sets it."""

    by = timedelta(0)

    def now(self) -> datetime:
        return super().now() - self.by

    def set_back(self) -> None:
        self.by += timedelta(hours=1)


def without_names(seconds: float) -> None:
    loop = asyncio.get_running_loop()
    resolve, over = loop.getaddrinfo, loop.time() + seconds

    async def getaddrinfo(*args: Any, **more: Any) -> Any:
        if loop.time() < over:
            raise socket.gaierror(socket.EAI_AGAIN, "Temporary failure in name resolution")
        return await resolve(*args, **more)

    loop.getaddrinfo = getaddrinfo  # type: ignore[method-assign]


async def run(given: dict[str, Any]) -> None:
    log.set_up(given.get("log", "error"))
    set_back = SetBack()
    clock: Clock = set_back
    asyncio.get_running_loop().add_signal_handler(signal.SIGUSR1, set_back.set_back)
    if "no_names_s" in given:
        without_names(float(given["no_names_s"]))
    if "pace" in given:
        clock = FastClock(
            datetime.fromisoformat(given["zero"]), datetime.fromisoformat(given["began"]), float(given["pace"])
        )
    store = await open_patiently(given["database"], clock)
    more: dict[str, Any] = {}
    if "listen" in given:
        more = {
            "mode": "webhook", "webhook_url": given["webhook"], "webhook_listen": tuple(given["listen"]),
            "webhook_secret": SECRET,
        }  # fmt: skip
    bot = Tureen(
        token=TOKEN, base_url=given["api"], base_file_url=given["api"], store=store, clock=clock,
        send_limits=given.get("limits", True), **more,
    )  # fmt: skip
    ticking = asyncio.create_task(_tick(bot, clock))
    await bot.run_until_signalled()
    ticking.cancel()
    await store.close()


async def _tick(bot: Tureen, clock: Clock) -> None:
    """What the scheduler does on the real clock; a faster clock has none."""
    while not isinstance(clock, RealClock):
        await clock.sleep(TICK_S)
        await bot.courier.tick()


def main(given: dict[str, Any], kept_log: Path | None = None) -> None:
    """The process. `kept_log`: what it says is added there."""
    if kept_log is not None:
        with kept_log.open("ab") as heard:
            os.dup2(heard.fileno(), 2)
    asyncio.run(run(given))
