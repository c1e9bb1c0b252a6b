"""A process that serves until it is told to end."""

from __future__ import annotations

import asyncio
import gc
import signal
from collections.abc import Awaitable, Callable, Coroutine
from typing import Any


async def until_signalled(
    start: Callable[[], Coroutine[Any, Any, None]],
    stop: Callable[[], Awaitable[None]],
    kill: Callable[[], Awaitable[None]],
) -> None:
    """Start, serve until SIGINT or SIGTERM, stop in order. What `start` raises is raised when all is closed."""
    asked = asyncio.Event()
    loop = asyncio.get_running_loop()
    for sign in (signal.SIGINT, signal.SIGTERM):
        loop.add_signal_handler(sign, asked.set)
    begin = asyncio.create_task(start())
    waiting = asyncio.create_task(asked.wait())
    await asyncio.wait({begin, waiting}, return_when=asyncio.FIRST_COMPLETED)
    if not begin.done():
        begin.cancel()
        await asyncio.gather(begin, return_exceptions=True)
        await kill()
        waiting.cancel()
        return
    if begin.exception() is not None:
        # A refused token, say: what was opened is closed before that is told.
        await kill()
        begin.result()
    # What is loaded now stays: without this the collector looks through all of it again and again, each time
    # for 20 to 50 ms in which nobody is answered.
    gc.collect()
    gc.freeze()
    await waiting
    await stop()
