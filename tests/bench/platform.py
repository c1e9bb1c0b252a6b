"""The least Bot API a bot can be measured against: no checks, no limits, answers at once (or after `delay_s`).

The room is the faithful server; this one only has to be faster than any bot beside it.
"""

from __future__ import annotations

import asyncio
import itertools
import json
import time
from typing import Any

from aiohttp import web

TOKEN = "7000000001:loopback-bench-not-a-secret-000000"
BOT = {"id": 7000000001, "is_bot": True, "first_name": "Bench", "username": "bench_bot",
       "can_join_groups": True, "can_read_all_group_messages": False, "supports_inline_queries": False}  # fmt: skip
NEW_MESSAGE = frozenset({"sendmessage", "sendphoto", "senddocument", "editmessagetext", "editmessagereplymarkup"})


class Platform:
    def __init__(self, delay_s: float = 0.0) -> None:
        self.delay_s = delay_s
        self.url = ""
        self._ids = itertools.count(1)
        self._messages = itertools.count(1000)
        self._waiting: list[dict[str, Any]] = []
        self._news = asyncio.Event()
        self._asked: dict[str, float] = {}
        self.answered_s: list[float] = []
        """From handing out a press to its acknowledgement; in the order of the acknowledgements."""
        self._sent_at: dict[str, float] = {}
        self._wanted = 0
        self._all_answered = asyncio.Event()
        self.keyboards: dict[int, list[list[dict[str, Any]]]] = {}
        """The newest keyboard of each chat, with the id of its message under "message_id"."""
        self.board: dict[int, int] = {}
        self.calls: dict[str, int] = {}
        self.first_poll = asyncio.Event()

    async def __aenter__(self) -> Platform:
        app = web.Application(client_max_size=50_000_000)
        app.router.add_route("*", "/bot{token}/{method}", self._answer)
        self._runner = web.AppRunner(app, access_log=None)
        await self._runner.setup()
        await web.TCPSite(self._runner, "127.0.0.1", 0).start()
        self.url = f"http://127.0.0.1:{self._runner.addresses[0][1]}/bot"
        return self

    async def __aexit__(self, *_: object) -> None:
        await self._runner.cleanup()

    # --- what people do ---

    def say(self, chat: int, person: int, text: str) -> None:
        entities = []
        if text.startswith("/"):
            entities = [{"type": "bot_command", "offset": 0, "length": len(text.split()[0])}]
        said = {**self._message(chat), "from": _person(person), "text": text, "entities": entities}
        self._emit({"message": said})

    def press(self, chat: int, person: int, message: int, data: str) -> None:
        number = next(self._ids)
        self._sent_at[str(number)] = time.perf_counter()
        said = {**self._message(chat), "message_id": message, "from": BOT, "text": "board"}
        query = {"id": str(number), "from": _person(person), "chat_instance": "1", "data": data, "message": said}
        self._emit({"callback_query": query}, number)

    async def answers(self, wanted: int, seconds: float = 120.0) -> None:
        """Until this many presses in all have been acknowledged."""
        self._wanted = wanted
        self._all_answered.clear()
        if len(self.answered_s) < wanted:
            async with asyncio.timeout(seconds):
                await self._all_answered.wait()

    # --- what the bot asks ---

    async def _answer(self, request: web.Request) -> web.StreamResponse:
        method = request.match_info["method"].lower()
        form = await request.post() if request.method == "POST" else request.query
        self.calls[method] = self.calls.get(method, 0) + 1
        if method == "getupdates":
            self.first_poll.set()
            result: Any = await self._updates(int(str(form.get("offset", 0))), float(str(form.get("timeout", 0))))
        else:
            if self.delay_s:
                await asyncio.sleep(self.delay_s)
            result = self._result(method, dict(form))
        return web.Response(body=json.dumps({"ok": True, "result": result}), content_type="application/json")

    def _result(self, method: str, form: dict[str, Any]) -> Any:
        if method == "getme":
            return BOT
        if method == "getwebhookinfo":
            return {"url": "", "has_custom_certificate": False, "pending_update_count": 0}
        if method == "answercallbackquery":
            sent = self._sent_at.pop(str(form["callback_query_id"]), None)
            if sent is not None:
                self.answered_s.append(time.perf_counter() - sent)
                if len(self.answered_s) >= self._wanted:
                    self._all_answered.set()
            return True
        if method in NEW_MESSAGE:
            chat = int(form["chat_id"])
            message = self._message(chat)
            if "message_id" in form:
                message["message_id"] = int(form["message_id"])
            if form.get("reply_markup"):
                rows = json.loads(form["reply_markup"]).get("inline_keyboard")
                if rows:
                    self.keyboards[chat] = rows
                    self.board[chat] = message["message_id"]
            return {**message, "from": BOT, "text": form.get("text", "")}
        if method == "getchatadministrators":
            return []
        return True

    async def _updates(self, offset: int, timeout_s: float) -> list[dict[str, Any]]:
        self._waiting = [u for u in self._waiting if u["update_id"] >= offset] if offset else self._waiting
        if not self._waiting and timeout_s:
            self._news.clear()
            try:
                async with asyncio.timeout(timeout_s):
                    await self._news.wait()
            except TimeoutError:
                pass
        return self._waiting[:100]

    def _emit(self, update: dict[str, Any], number: int | None = None) -> None:
        self._waiting.append({"update_id": number or next(self._ids), **update})
        self._news.set()

    def _message(self, chat: int) -> dict[str, Any]:
        where = {"id": chat, "type": "group", "title": f"Group {chat}"}
        return {"message_id": next(self._messages), "date": int(time.time()), "chat": where}


def _person(number: int) -> dict[str, Any]:
    return {"id": number, "is_bot": False, "first_name": f"Guest {number}", "language_code": "en"}
