"""The room over HTTP: the Bot API for the bot, the page for people, on the loopback address."""

from __future__ import annotations

import asyncio
import json
import logging
import socket
from collections.abc import Mapping
from typing import Any
from urllib.parse import parse_qsl, unquote

import uvicorn
from starlette.datastructures import UploadFile
from starlette.requests import Request
from uvicorn.protocols.http.h11_impl import H11Protocol

from .call import Call
from .errors import ApiError, CannotDo
from .files import MOST_UPLOAD_BYTES, Upload
from .methods import LostAnswer, answer
from .room import Room
from .stopping import PromptServer

MOST_BODY_BYTES = MOST_UPLOAD_BYTES + 5_000_000
Scope = dict[str, Any]
log = logging.getLogger(__name__)


class BotApi:
    """ASGI application for /bot<token>/<method> and /file/bot<token>/<path>."""

    def __init__(self, room: Room) -> None:
        self.room = room
        self.lines: dict[tuple[str, int], asyncio.Transport] = {}
        """Open connections by client address, so that one can be dropped without an answer."""

    async def __call__(self, scope: Scope, receive: Any, send: Any) -> None:
        path = str(scope["path"])
        if path.startswith("/file/"):
            await self._file(path.removeprefix("/file/bot"), send)
            return
        token, _, name = path.removeprefix("/bot").partition("/")
        method = name.lower()
        counted = method != "getupdates"
        if counted:
            self.room.request_began()
        try:
            try:
                if token != self.room.token:
                    raise ApiError(401, "Unauthorized")
                call = await read_call(method, scope, receive)
                for hear in self.room.hearers:
                    hear(call.method, call.values)
                if not counted:
                    result = await self._poll(call, receive)
                else:
                    result = await answer(self.room, call, asyncio.sleep)
            except ApiError as error:
                await reply(send, error.code, error.body())
            except LostAnswer as lost:
                if lost.seconds:
                    await asyncio.sleep(lost.seconds)
                await self._drop(scope, receive)
            except CannotDo as why:
                await reply(send, 400, ApiError(400, f"Bad Request: {why}").body())
            except Exception:
                # A fault of the room's own must be heard, not passed off as the platform's.
                log.exception("the room failed to answer %s", method)
                await reply(send, 500, ApiError(500, "Internal Server Error: the room itself failed").body())
            else:
                await reply(send, 200, {"ok": True, "result": result})
        finally:
            if counted:
                self.room.request_ended()

    async def _poll(self, call: Call, receive: Any) -> Any:
        """A long poll whose client hangs up must not stand in the way of the next."""
        if not call.number("timeout"):
            return await answer(self.room, call, asyncio.sleep)
        answering = asyncio.ensure_future(answer(self.room, call, asyncio.sleep))
        hung_up = asyncio.ensure_future(_hung_up(receive))
        try:
            await asyncio.wait((answering, hung_up), return_when=asyncio.FIRST_COMPLETED)
            if not answering.done():
                self.room.end_poll("gone")
            return await answering
        finally:
            hung_up.cancel()
            answering.cancel()

    async def _file(self, rest: str, send: Any) -> None:
        token, _, path = rest.partition("/")
        stored = self.room.files.by_path.get(unquote(path))
        if token != self.room.token or stored is None:
            code = 401 if token != self.room.token else 404
            await reply(send, code, ApiError(code, "Unauthorized" if code == 401 else "Not Found").body())
            return
        await respond(send, 200, stored.data, stored.kind)

    async def _drop(self, scope: Scope, receive: Any) -> None:
        """Cut the line without a word. Returns when the server knows, or it would complain of the silence."""
        line = self.lines.get(tuple(scope["client"]))
        if line is not None:
            line.abort()
            await _hung_up(receive)


async def _hung_up(receive: Any) -> None:
    while (await receive())["type"] != "http.disconnect":
        pass


async def read_call(method: str, scope: Scope, receive: Any) -> Call:
    """Parameters from the address and the body: urlencoded, JSON or multipart."""
    values: dict[str, object] = dict(_pairs(scope["query_string"]))
    if scope["method"] not in ("GET", "POST"):
        raise ApiError(404, "Not Found")
    if scope["method"] == "GET":
        return Call(method, values)
    headers = dict(scope["headers"])
    kind = headers.get(b"content-type", b"").decode("latin-1").lower()
    if int(headers.get(b"content-length", b"0") or 0) > MOST_BODY_BYTES:
        raise ApiError(413, "Request Entity Too Large")
    if kind.startswith("multipart/form-data"):
        return await _multipart(method, values, scope, receive)
    body = bytearray()
    while True:
        part = await receive()
        if part["type"] == "http.disconnect":
            raise ApiError(400, "Bad Request: the request is not complete")
        body += part.get("body", b"")
        if len(body) > MOST_BODY_BYTES:
            raise ApiError(413, "Request Entity Too Large")
        if not part.get("more_body"):
            break
    if not body.strip():
        return Call(method, values)
    if kind.startswith("application/json"):
        try:
            read = json.loads(body)
        except ValueError:
            raise ApiError(400, "Bad Request: can't parse the request body as JSON") from None
        if not isinstance(read, Mapping):
            raise ApiError(400, "Bad Request: the request body must be a JSON Object")
        values |= {key: value for key, value in read.items() if value is not None}
    elif kind.startswith("application/x-www-form-urlencoded"):
        values |= dict(_pairs(bytes(body)))
    else:
        raise ApiError(400, f"Bad Request: the room does not read bodies of the type {kind or '(none)'}")
    return Call(method, values)


def _pairs(raw: bytes) -> list[tuple[str, str]]:
    if not raw:
        return []
    try:
        return parse_qsl(raw.decode("utf-8"), keep_blank_values=True, errors="strict")
    except ValueError:
        raise ApiError(400, "Bad Request: strings must be encoded in UTF-8") from None


async def _multipart(method: str, values: dict[str, object], scope: Scope, receive: Any) -> Call:
    files: dict[str, Upload] = {}
    async with Request(scope, receive).form(max_files=50, max_part_size=MOST_BODY_BYTES) as form:
        for name, value in form.multi_items():
            if isinstance(value, UploadFile):
                kind = value.content_type or "application/octet-stream"
                files[name] = Upload(value.filename or "file", kind, await value.read())
            else:
                values[name] = value
    return Call(method, values, files)


async def reply(send: Any, status: int, body: Mapping[str, object]) -> None:
    raw = json.dumps(body, ensure_ascii=False, separators=(",", ":")).encode("utf-8", "surrogatepass")
    await respond(send, status, raw, "application/json")


async def respond(send: Any, status: int, raw: bytes, kind: str) -> None:
    headers = [(b"content-type", kind.encode("latin-1", "replace")), (b"content-length", b"%d" % len(raw))]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": raw})


class RoomServer:
    """The room served in this process and event loop; `port` 0 lets the system choose one."""

    def __init__(self, room: Room, port: int = 0, pages: Any = None) -> None:
        self.room = room
        self.port = port
        self.api = BotApi(room)
        self.pages = pages
        self._server: PromptServer | None = None
        self._running: asyncio.Task[None] | None = None

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    @property
    def base_url(self) -> str:
        return f"{self.address}/bot"

    @property
    def base_file_url(self) -> str:
        return f"{self.address}/file/bot"

    async def _app(self, scope: Scope, receive: Any, send: Any) -> None:
        path = scope.get("path", "")
        if scope["type"] == "http" and path.startswith(("/bot", "/file/bot")):
            await self.api(scope, receive, send)
        elif self.pages is not None:
            await self.pages(scope, receive, send)
        elif scope["type"] == "http":
            await reply(send, 404, ApiError(404, "Not Found").body())

    async def start(self) -> None:
        lines = self.api.lines

        class Line(H11Protocol):
            def connection_made(self, transport: Any) -> None:
                super().connection_made(transport)
                lines[tuple(transport.get_extra_info("peername"))] = transport

            def connection_lost(self, exc: Exception | None) -> None:
                lines.pop(tuple(self.transport.get_extra_info("peername") or ()), None)
                super().connection_lost(exc)

        # Named TCP, because asyncio switches off the 40 ms wait for fuller packets only where it sees the name.
        listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listening.bind(("127.0.0.1", self.port))
        except OSError:
            listening.close()
            raise
        self.port = listening.getsockname()[1]
        config = uvicorn.Config(
            self._app, http=Line, ws="none", lifespan="off", interface="asgi3", proxy_headers=False,
            log_config=None, access_log=False, timeout_graceful_shutdown=1, timeout_keep_alive=3600,
            server_header=False, date_header=False,
        )  # fmt: skip
        self._server = PromptServer(config)
        # The command that opened the room decides what Ctrl-C means.
        self._running = asyncio.ensure_future(self._server._serve([listening]))
        while not self._server.started:
            if self._running.done():
                await self._running
                raise RuntimeError("the room's server did not start")
            await asyncio.sleep(0.002)

    async def stop(self) -> None:
        await self.room.hook.close()
        self.room.end_poll("gone")
        if self._server is not None and self._running is not None:
            self._server.end()
            for line in list(self.api.lines.values()):
                line.close()
            await self._running

    async def __aenter__(self) -> RoomServer:
        await self.start()
        return self

    async def __aexit__(self, *error: object) -> None:
        await self.stop()
