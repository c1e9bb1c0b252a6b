"""The doors other machines knock at: the platform's webhook, health, readiness and metrics.

The webhook answers 200 only when the update's change is committed, so a crash before that makes the
platform send it again, and nothing needs an inbox of its own.
"""

from __future__ import annotations

import asyncio
import contextlib
import hmac
import json
import socket
from collections.abc import Awaitable, Callable, Iterator
from typing import Any

import uvicorn
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from bot import log

_log = log.get("web")
SECRET_HEADER = "X-Telegram-Bot-Api-Secret-Token"
MOST_BODY = 1_000_000
"""Bytes of one update; the platform's own are far smaller."""


class Busy(Exception):
    """The update could not be stored now; the platform shall send it again."""


class _Server(uvicorn.Server):
    @contextlib.contextmanager
    def capture_signals(self) -> Iterator[None]:
        # The bot stops itself in order; uvicorn would take the signals away from it.
        yield


class Door:
    """One listening address with its routes."""

    def __init__(self, host: str, port: int, routes: list[Route]) -> None:
        config = uvicorn.Config(
            Starlette(routes=routes),
            host=host,
            port=port,
            log_config=None,
            access_log=False,
            lifespan="off",
            timeout_graceful_shutdown=10,
            server_header=False,
            date_header=False,
        )
        self._server = _Server(config)
        self._task: asyncio.Task[None] | None = None
        self.host = host

    async def open(self) -> None:
        """Listen. Raises OSError where the address is taken or not ours: uvicorn would end the process."""
        config = self._server.config
        try:
            listening = socket.create_server((config.host, config.port), family=_family(config.host))
        except OSError as fault:
            raise OSError(f"cannot listen on {config.host}:{config.port} ({fault.strerror})") from None
        self._task = asyncio.create_task(self._server.serve([listening]), name="web")
        while not self._server.started:
            if self._task.done():
                self._task.result()
                raise OSError(f"cannot listen on {config.host}:{config.port}")
            await asyncio.sleep(0.01)

    @property
    def port(self) -> int:
        """The real port, when 0 was asked for."""
        return int(self._server.servers[0].sockets[0].getsockname()[1])

    async def close(self) -> None:
        if self._task is not None:
            self._server.should_exit = True
            with contextlib.suppress(asyncio.CancelledError):
                await self._task

    def kill(self) -> list[asyncio.Task[Any]]:
        for server in getattr(self._server, "servers", ()):
            server.close()
        return [self._task] if self._task is not None else []


def _family(host: str) -> socket.AddressFamily:
    return socket.AF_INET6 if ":" in host else socket.AF_INET


def watch_routes(ready: Callable[[], Awaitable[str | None]], metrics: Callable[[], Awaitable[bytes]]) -> list[Route]:
    """/healthz: the process answers. /readyz: it can take work (`ready` names what is missing). /metrics."""

    async def healthz(_: Request) -> Response:
        return PlainTextResponse("ok\n")

    async def readyz(_: Request) -> Response:
        missing = await ready()
        return PlainTextResponse("ready\n") if missing is None else PlainTextResponse(f"{missing}\n", 503)

    async def show(_: Request) -> Response:
        return Response(await metrics(), media_type="text/plain; version=0.0.4; charset=utf-8")

    return [Route("/healthz", healthz), Route("/readyz", readyz), Route("/metrics", show)]


def webhook_route(path: str, secret: str, take: Callable[[dict[str, Any]], Awaitable[None]]) -> Route:
    """POST `path` with the secret header. `take` returns when the update is stored, or raises Busy."""

    async def receive(request: Request) -> Response:
        given = request.headers.get(SECRET_HEADER, "")
        if not hmac.compare_digest(given.encode(), secret.encode()):
            return PlainTextResponse("wrong secret\n", 403)
        body = bytearray()
        async for chunk in request.stream():
            body += chunk
            if len(body) > MOST_BODY:
                return PlainTextResponse("too large\n", 413)
        try:
            data = json.loads(bytes(body))
            if not isinstance(data, dict) or not isinstance(data.get("update_id"), int):
                raise ValueError
        except ValueError:
            return PlainTextResponse("not an update\n", 400)
        try:
            await take(data)
        except Busy:
            return PlainTextResponse("try again\n", 503, headers={"Retry-After": "2"})
        return PlainTextResponse("ok\n")

    return Route(path, receive, methods=["POST"])
