"""The page's half of the server: its files, the live events, and what people do by clicking."""

from __future__ import annotations

import asyncio
import json
import logging
from collections.abc import AsyncIterator, Awaitable, Callable
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import FileResponse, JSONResponse, Response, StreamingResponse
from starlette.routing import Route

from .errors import CannotDo
from .player import NotAtRest, Player
from .room import Room
from .views import View, Views
from .words import page_words, spoken
from .world import Seen

PAGE = Path(__file__).parent / "page"
FONTS = Path(__file__).parents[1] / "prints" / "fonts"
KINDS = {".html": "text/html", ".css": "text/css", ".js": "text/javascript"}
FILES = {file.name: KINDS[file.suffix] for file in PAGE.iterdir() if file.suffix in KINDS}
RULES = "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none'; frame-ancestors 'none'"
LONGEST_MOVE = timedelta(days=400)
SHOWS_WORK_AFTER_S = 0.4
"""Work that is done sooner is not announced: a label that flashes only disturbs."""
SHOWN_IN_PLACE = ("image/png", "image/jpeg", "image/gif", "image/webp", "application/pdf")
log = logging.getLogger(__name__)

Decisions = Callable[[str], list[View] | Awaitable[list[View]]]
"""What the bot decided and why, in a language: {"at", "what", "why"}, newest last; with "ahead" what is to come."""


class Pages:
    """ASGI application for everything that is not the Bot API.

    Only pages served from here may act: a request must name the loopback host, come from the same
    origin and be JSON, so that no other site open in the browser can speak in the room.
    """

    def __init__(self, room: Room, player: Player, zone: ZoneInfo, decisions: Decisions = lambda _: []) -> None:
        self.room = room
        self.player = player
        self.views = Views(room, zone, player)
        self.decisions = decisions
        self.listeners: set[asyncio.Queue[View]] = set()
        self.moving = asyncio.Lock()
        self.playing: View | None = None
        self._working: asyncio.Task[None] | None = None
        room.listeners.append(self._seen)
        self.app = Starlette(
            routes=[
                Route("/", self.file),
                Route("/page/{name}", self.file),
                Route("/page/font/{name}", self.font),
                Route("/room/state", self.state),
                Route("/room/events", self.events),
                Route("/room/decisions", self.why),
                Route("/room/words", self.words),
                Route("/room/file/{path:path}", self.sent_file),
                Route("/room/do", self.do, methods=["POST"]),
            ]
        )

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        if scope["type"] == "http" and not _from_here(Request(scope)):
            await JSONResponse({"error": "only the page on this machine may speak here"}, 403)(scope, receive, send)
            return
        await self.app(scope, receive, send)

    async def file(self, request: Request) -> Response:
        name = request.path_params.get("name", "index.html")
        if name not in FILES:
            return Response("there is nothing here", 404)
        headers = {"Content-Security-Policy": RULES, "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff"}
        return FileResponse(PAGE / name, media_type=FILES[name], headers=headers)

    async def font(self, request: Request) -> Response:
        """Letters for names the reader's machine may have no font for."""
        name = request.path_params["name"]
        if name not in {file.name for file in FONTS.glob("*.?tf")}:
            return Response("there is nothing here", 404)
        return FileResponse(FONTS / name, media_type=f"font/{name[-3:]}", headers={"Cache-Control": "max-age=86400"})

    async def sent_file(self, request: Request) -> Response:
        stored = self.room.files.by_path.get(request.path_params["path"])
        if stored is None:
            return Response("there is no such file", 404)
        place = "inline" if stored.kind in SHOWN_IN_PLACE else "attachment"
        name = "".join(c for c in stored.name if c.isascii() and (c.isalnum() or c in "._- ")) or "file"
        headers = {
            "Content-Disposition": f'{place}; filename="{name}"', "X-Content-Type-Options": "nosniff",
            "Content-Security-Policy": "sandbox; default-src 'none'; img-src 'self'; style-src 'unsafe-inline'",
        }  # fmt: skip
        return Response(stored.data, media_type=stored.kind, headers=headers)

    async def state(self, request: Request) -> Response:
        return JSONResponse(self.views.state() | {"playing": self.playing, "moving": self.moving.locked()})

    async def why(self, request: Request) -> Response:
        told = self.decisions(spoken(request.query_params.get("lang")))
        return JSONResponse(told if isinstance(told, list) else await told)

    async def words(self, request: Request) -> Response:
        language = spoken(request.query_params.get("lang"))
        return JSONResponse({"language": language, "words": page_words(language)})

    async def events(self, request: Request) -> Response:
        return StreamingResponse(self._stream(), media_type="text/event-stream", headers={"Cache-Control": "no-store"})

    async def _stream(self) -> AsyncIterator[str]:
        queue: asyncio.Queue[View] = asyncio.Queue()
        self.listeners.add(queue)
        try:
            yield "retry: 1000\n\n"
            while True:
                try:
                    event = await asyncio.wait_for(queue.get(), 15)
                except TimeoutError:
                    yield ": still here\n\n"
                    continue
                yield f"data: {json.dumps(event)}\n\n"
        finally:
            self.listeners.discard(queue)

    def tell(self, event: View) -> None:
        for queue in self.listeners:
            queue.put_nowait(event)

    def _seen(self, seen: Seen) -> None:
        if self.listeners:
            self.tell(self.views.happened(seen))

    def tick(self) -> None:
        """The clock has moved."""
        if self.listeners:
            self.tell({"kind": "clock", "clock": self.views.clock()})

    def played(self, done: int, of: int) -> None:
        """So many lines of a script that is played while people may be looking already."""
        self.playing = {"done": done, "of": of} if done < of else None
        self.tell({"kind": "playing", "playing": self.playing, "clock": self.views.clock()})

    def _watch_work(self) -> None:
        if self._working is None or self._working.done():
            self._working = asyncio.create_task(self._tell_of_work())

    async def _tell_of_work(self) -> None:
        """Say so while the bot takes its time over what people did."""
        rest = asyncio.ensure_future(self.player.at_rest())
        await asyncio.wait([rest], timeout=SHOWS_WORK_AFTER_S)
        if not rest.done():
            self.tell({"kind": "busy", "on": True})
            await asyncio.wait([rest], timeout=self.player.patience_s)
            rest.cancel()
            self.tell({"kind": "busy", "on": False})

    async def do(self, request: Request) -> Response:
        if not request.headers.get("content-type", "").startswith("application/json"):
            return JSONResponse({"error": "send JSON"}, 415)
        try:
            asked = json.loads(await request.body())
            if not isinstance(asked, dict):
                raise ValueError("not an object")
            await self._do(asked)
            self._watch_work()
        except CannotDo as why:
            return JSONResponse({"error": str(why)}, 400)
        except NotAtRest as why:
            return JSONResponse({"error": str(why)}, 503)
        except (ValueError, KeyError, TypeError, IndexError) as why:
            log.warning("a request of the page was refused", exc_info=True)
            return JSONResponse({"error": f"the room did not understand: {why}"}, 400)
        return JSONResponse({"ok": True})

    async def _do(self, asked: dict[str, Any]) -> None:
        if asked["do"] == "move":
            await self._move(asked)
            return
        who = int(asked["who"])
        self.room.user(who)
        match asked["do"]:
            case "say":
                reply = int(asked["reply"]) if asked.get("reply") else None
                topic = int(asked["topic"]) if asked.get("topic") else None
                self.room.say(who, int(asked["chat"]), str(asked["text"]), reply_to=reply, topic=topic)
            case "send":
                self.room.send(who, int(asked["chat"]), str(asked["what"]))
            case "start":
                self.room.start(who, str(asked.get("payload", "")))
            case "press":
                chat, message = int(asked["chat"]), int(asked["message"])
                self.room.press(who, chat, message, int(asked["row"]), int(asked["column"]))
            case "edit":
                self.room.edit(who, int(asked["chat"]), int(asked["message"]), str(asked["text"]))
            case "delete":
                self.room.delete(who, int(asked["chat"]), int(asked["message"]))
            case "react":
                emoji = str(asked["emoji"]) if asked.get("emoji") else None
                self.room.react(who, int(asked["chat"]), int(asked["message"]), emoji)
            case "block":
                self.room.block(who)
            case "leave":
                self.room.leave(who, int(asked["chat"]))
            case "join":
                self.room.join(who, int(asked["chat"]))
            case other:
                raise CannotDo(f"the page can't {other}")

    async def _move(self, asked: dict[str, Any]) -> None:
        """Move the clock, stopping at everything that is due on the way."""
        now = self.player.clock.now()
        if asked.get("to") == "next":
            due = self.player.bot.due() if self.player.bot is not None else None
            target = (await due) if asyncio.iscoroutine(due) else due
            if target is None:
                raise CannotDo("nothing is planned yet, so there is no next reminder")
        elif "by_min" in asked:
            target = now + timedelta(minutes=float(asked["by_min"]))
        else:
            target = datetime.fromisoformat(str(asked["to"])).replace(tzinfo=self.views.zone)
        if target < now:
            raise CannotDo("the clock can only be moved forward")
        if target - now > LONGEST_MOVE:
            raise CannotDo(f"the clock can be moved {LONGEST_MOVE.days} days at most at once")
        async with self.moving:
            try:
                self.tell({"kind": "moving", "on": True})
                await self.player.move_to(target)
            finally:
                self.tell({"kind": "moving", "on": False, "clock": self.views.clock()})


def _from_here(request: Request) -> bool:
    host = request.headers.get("host", "")
    if host.rpartition(":")[0] not in ("127.0.0.1", "localhost") and host not in ("127.0.0.1", "localhost"):
        return False
    origin = request.headers.get("origin")
    return origin is None or origin == f"http://{host}"
