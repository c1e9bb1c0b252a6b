"""The platform as the fault tests need it: a loopback Bot API server that keeps account of everything.

It checks nothing (the room does that); it can fail each call as a script says, hands out updates by
polling or to webhooks, and again when they were not confirmed. Times are the event loop's, in seconds.
"""

from __future__ import annotations

import asyncio
import itertools
import json
from collections import Counter, defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from aiohttp import web

TOKEN = "7000000002:loopback-faults-not-a-secret-00000"
BOT = {
    "id": 7000000002, "is_bot": True, "first_name": "Tureen", "username": "faults_bot", "can_join_groups": True,
    "can_read_all_group_messages": True, "supports_inline_queries": False,
}  # fmt: skip
SENDS = frozenset({"sendmessage", "sendphoto", "senddocument"})
EDITS = frozenset({"editmessagetext", "editmessagereplymarkup"})
SENT_DATE = int(datetime(2027, 9, 10, 14, tzinfo=UTC).timestamp())


@dataclass(frozen=True)
class Said:
    """A call that took effect. `text` of a press's acknowledgement, a message or an edit."""

    at: float
    method: str
    chat: int
    text: str
    message: int = 0
    reply_to: int = 0
    markup: str = ""


@dataclass(frozen=True)
class Fault:
    """What becomes of one call. `stored`: it takes effect although the answer is lost.

    429 (with `seconds`), 500; "lost": the line is cut without an answer after `seconds`; "half": cut in
    the middle of the answer; "slow": answered after `seconds`.
    """

    kind: str
    seconds: float = 0.0
    stored: bool = False


Fate = Callable[[str, dict[str, Any]], Fault | None]


@dataclass
class Update:
    id: int
    lane: int
    """The chat, whose updates are delivered one after the other."""
    body: dict[str, Any]
    query: str | None = None


@dataclass
class Platform:
    fate: Fate = lambda _method, _form: None
    delay_s: float = 0.0
    log: list[Said] = field(default_factory=list)
    answers: Counter[str] = field(default_factory=Counter)
    """Acknowledgements that took effect, by the id of the press."""
    faults: Counter[str] = field(default_factory=Counter)
    keyboards: dict[int, list[list[dict[str, Any]]]] = field(default_factory=dict)
    """The newest keyboard of each chat that begins with a signed button."""
    keyboard_of: dict[int, int] = field(default_factory=dict)
    calls: Counter[str] = field(default_factory=Counter)
    handed: Counter[int] = field(default_factory=Counter)
    """How often each update was handed out."""

    def __post_init__(self) -> None:
        self.waiting: list[Update] = []
        self.sent_updates: list[Update] = []
        """The presses, as they were made."""
        self.news = asyncio.Event()
        self._ids = itertools.count(1)
        self._messages = itertools.count(1000)
        self.url = ""
        self.polls = 0

    async def __aenter__(self) -> Platform:
        app = web.Application(client_max_size=50_000_000)
        app.router.add_route("*", "/bot{token}/{method}", self._take)
        self._runner = web.AppRunner(app, access_log=None, shutdown_timeout=0.1)
        await self._runner.setup()
        await web.TCPSite(self._runner, "127.0.0.1", 0).start()
        self.url = f"http://127.0.0.1:{self._runner.addresses[0][1]}/bot"
        return self

    async def __aexit__(self, *_: object) -> None:
        await self._runner.cleanup()

    # --- what people do ---

    def say(self, chat: int, person: int, text: str) -> int:
        """The id of the message."""
        message = next(self._messages)
        entities = []
        if text.startswith("/"):
            entities = [{"type": "bot_command", "offset": 0, "length": len(text.split()[0])}]
        said = {**_message(chat, message), "from": someone(person), "text": text, "entities": entities}
        self.emit(Update(next(self._ids), chat, {"message": said}))
        return message

    def press(self, chat: int, person: int, data: str) -> Update:
        number = next(self._ids)
        said = {**_message(chat, self.keyboard_of.get(chat, 1)), "from": BOT, "text": "board"}
        query = {"id": f"q{number}", "from": someone(person), "chat_instance": "1", "data": data, "message": said}
        update = Update(number, chat, {"callback_query": query}, f"q{number}")
        self.emit(update)
        self.sent_updates.append(update)
        return update

    def emit(self, update: Update) -> None:
        self.waiting.append(update)
        self.news.set()

    def labelled(self, chat: int) -> dict[str, str]:
        """Callback data by label, of the chat's newest keyboard."""
        rows = self.keyboards.get(chat, [])
        return {b["text"]: b["callback_data"] for row in rows for b in row if "callback_data" in b}

    def texts(self, chat: int) -> list[str]:
        return [s.text for s in self.log if s.chat == chat and s.method in SENDS]

    # --- what the bot asks ---

    async def _take(self, request: web.Request) -> web.StreamResponse:
        method = request.match_info["method"].lower()
        form: dict[str, Any] = dict(await request.post() if request.method == "POST" else request.query)
        self.calls[method] += 1
        if method == "getupdates":
            return _json(await self._updates(int(form.get("offset", 0)), float(form.get("timeout", 0))))
        if self.delay_s:
            await asyncio.sleep(self.delay_s)
        fault = self.fate(method, form)
        if fault is None:
            return _json(self._do(method, form))
        self.faults[fault.kind] += 1
        result = self._do(method, form) if fault.stored or fault.kind == "slow" else None
        if fault.kind == "429":
            wait = {"retry_after": int(fault.seconds)}
            return _json(None, 429, f"Too Many Requests: retry after {int(fault.seconds)}", wait)
        if fault.kind == "500":
            return _json(None, 500, "Internal Server Error")
        await asyncio.sleep(fault.seconds)
        if fault.kind == "slow":
            return _json(result)
        if fault.kind == "half":
            answer = web.StreamResponse(headers={"Content-Length": "4000"})
            await answer.prepare(request)
            await answer.write(b'{"ok":true,"result":{"message_id":1')
        if request.transport is not None:
            request.transport.abort()
        return web.Response()

    def _do(self, method: str, form: dict[str, Any]) -> Any:
        if method == "getme":
            return BOT
        if method == "getwebhookinfo":
            return {"url": "", "has_custom_certificate": False, "pending_update_count": 0}
        if method == "getchatadministrators":
            return []
        if method == "getchatmember":
            return {"status": "member", "user": someone(int(form["user_id"]))}
        now = asyncio.get_running_loop().time()
        if method == "answercallbackquery":
            query = str(form["callback_query_id"])
            self.answers[query] += 1
            self.log.append(Said(now, method, 0, str(form.get("text", ""))))
            return True
        if method not in SENDS | EDITS:
            return True
        chat = int(form["chat_id"])
        message = int(form.get("message_id") or next(self._messages))
        replied = int(json.loads(form["reply_parameters"])["message_id"]) if form.get("reply_parameters") else 0
        text = str(form.get("text") or form.get("caption") or "")
        markup = str(form.get("reply_markup") or "")
        self.log.append(Said(now, method, chat, text, message, replied, markup))
        rows = json.loads(markup).get("inline_keyboard") if markup else None
        if rows and any("callback_data" in b for row in rows for b in row):
            self.keyboards[chat], self.keyboard_of[chat] = rows, message
        return {**_message(chat, message), "from": BOT, "text": text}

    async def _updates(self, offset: int, timeout_s: float) -> list[dict[str, Any]]:
        self.polls += 1
        if offset:
            self.waiting = [u for u in self.waiting if u.id >= offset]
        if not self.waiting and timeout_s:
            self.news.clear()
            try:
                async with asyncio.timeout(timeout_s):
                    await self.news.wait()
            except TimeoutError:
                pass
        found = self.waiting[:100]
        for update in found:
            self.handed[update.id] += 1
        return [{"update_id": u.id, **u.body} for u in found]


def _json(
    result: Any, status: int = 200, description: str = "", parameters: dict[str, Any] | None = None
) -> web.Response:
    body: dict[str, Any] = {"ok": True, "result": result}
    if status != 200:
        body = {"ok": False, "error_code": status, "description": description, "parameters": parameters or {}}
    return web.Response(body=json.dumps(body), status=status, content_type="application/json")


def _message(chat: int, message: int) -> dict[str, Any]:
    where: dict[str, Any] = {"id": chat, "type": "group", "title": f"Plot {-chat}"}
    if chat > 0:
        where = {"id": chat, "type": "private", "first_name": f"Guest {chat}"}
    return {"message_id": message, "date": SENT_DATE, "chat": where}


def someone(number: int) -> dict[str, Any]:
    return {"id": number, "is_bot": False, "first_name": f"Guest {number}", "language_code": "en"}


def most_in(times: list[float], seconds: float) -> int:
    """The most of these instants (rising) in any span of so many seconds."""
    windows: defaultdict[int, int] = defaultdict(int)
    first = 0
    for n, at in enumerate(times):
        while at - times[first] >= seconds:
            first += 1
        windows[first] = max(windows[first], n - first + 1)
    return max(windows.values(), default=0)
