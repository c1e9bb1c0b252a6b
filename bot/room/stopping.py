"""A server that starts and ends at once: uvicorn's own looks ten times a second whether it shall, and waits a tenth
of a second more for the sake of distant clients. A room ends with every rehearsal, and its clients are in this process.
"""

from __future__ import annotations

import asyncio
import contextlib
import socket

import uvicorn


class PromptServer(uvicorn.Server):
    def __init__(self, config: uvicorn.Config) -> None:
        super().__init__(config)
        self._ending = asyncio.Event()

    def end(self) -> None:
        """Take no more connections, let the answers that are on their way go out, and return from serving."""
        self.should_exit = True
        self._ending.set()

    async def main_loop(self) -> None:
        await self.on_tick(0)
        await self._ending.wait()

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        for server in self.servers:
            server.close()
        for listening in sockets or []:
            listening.close()
        for connection in list(self.server_state.connections):
            connection.shutdown()
        within_s = self.config.timeout_graceful_shutdown
        if answering := set(self.server_state.tasks):
            _, late = await asyncio.wait(answering, timeout=within_s)
            for task in late:
                task.cancel()
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(within_s):
                for server in self.servers:
                    await server.wait_closed()
