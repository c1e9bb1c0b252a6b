"""Log lines: structlog on top, every line through one door that blots out secrets and personal data.

Secrets get into log lines by roads nobody plans: the token is part of every Bot API address, so it
stands in the texts of HTTP exceptions, in tracebacks and in other libraries' debug lines. Therefore
nothing is trusted: the finished line is searched for every known secret and for anything that has
the shape of a bot token.
"""

from __future__ import annotations

import io
import logging
import re
import sys
from collections.abc import Iterable, MutableMapping
from traceback import format_tb
from typing import Any, TextIO

import structlog
from telegram.error import TelegramError

from bot.storage.errors import StorageTrouble

_TOKEN_SHAPE = re.compile(r"(?<![0-9])\d{5,20}(:|%3A)[A-Za-z0-9_-]{20,200}")
BLOT = "[secret]"

# Names of fields that would carry what people wrote or who they are. Ids of chats are kept: without
# them no fault can be followed, and they name nobody outside the platform.
_PERSONAL = frozenset(
    {"text", "name", "username", "first_name", "last_name", "payload", "caption", "diets", "allergies"}
)

_secrets: set[str] = set()


def hide(*secrets: str | None) -> None:
    """From now on these strings never reach a log line."""
    _secrets.update(s for s in secrets if s and len(s) >= 6)


def redact(text: str) -> str:
    """`text` with every known secret and every bot-token-like run blotted out."""
    for secret in _secrets:
        if secret in text:
            text = text.replace(secret, BLOT)
    return _TOKEN_SHAPE.sub(BLOT, text)


class Redacting(logging.Formatter):
    """Wraps a formatter; works on the finished line, so tracebacks and stack texts are covered too."""

    def __init__(self, inner: logging.Formatter) -> None:
        super().__init__()
        self._inner = inner

    def format(self, record: logging.LogRecord) -> str:
        return redact(self._inner.format(record))


class NobodysData(logging.Filter):
    """The client library tells what it could not read with all that came, that is with people's words."""

    def filter(self, record: logging.LogRecord) -> bool:
        if record.name.split(".")[0] == "telegram" and "Received data was %" in str(record.msg):
            record.msg, record.args = "Error while parsing updates!", ()
        return True


class RedactingStream(io.TextIOBase):
    """For what goes around logging: the interpreter's own last traceback on stderr."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream

    def write(self, text: str) -> int:
        self._stream.write(redact(text))
        return len(text)

    def flush(self) -> None:
        self._stream.flush()

    def fileno(self) -> int:
        return self._stream.fileno()

    def isatty(self) -> bool:
        return self._stream.isatty()


def _without_people(_: Any, __: str, event: MutableMapping[str, Any]) -> MutableMapping[str, Any]:
    for key in _PERSONAL.intersection(event):
        event[key] = "[left out]"
    return event


_NOBODYS_WORDS = (OSError, TelegramError, StorageTrouble)
"""Faults whose own words come from the system, the platform or us; any other's may quote what somebody wrote."""


def told(error: BaseException | None) -> str:
    """A fault with those behind it, as a traceback without anybody's words: frames, kinds, and no values."""
    lines: list[str] = []
    seen: set[int] = set()
    while error is not None and id(error) not in seen:
        seen.add(id(error))
        kind = f"{type(error).__module__}.{type(error).__qualname__}"
        words = str(error) if isinstance(error, _NOBODYS_WORDS) else "[its words are left out]"
        lines[:0] = ["Traceback (most recent call last):\n", *format_tb(error.__traceback__), f"{kind}: {words}\n"]
        if isinstance(error, BaseExceptionGroup):
            lines += [line for part in error.exceptions for line in (told(part), "\n")]
        hidden = error.__suppress_context__
        error = error.__cause__ or (None if hidden else error.__context__)
    return "".join(lines).rstrip("\n")


def _exc_text(exc_info: Any) -> str:
    return told(exc_info[1] if isinstance(exc_info, tuple) else exc_info)


def set_up(log: str = "info", *, secrets: Iterable[str] = (), stream: TextIO | None = None) -> None:
    """Send every logger's lines to `stream` (stderr). `log` as in TUREEN_LOG: "info", "debug:json"…"""
    hide(*secrets)
    level, _, shape = log.partition(":")
    before: list[Any] = [
        structlog.contextvars.merge_contextvars,
        structlog.stdlib.add_log_level,
        structlog.processors.TimeStamper(fmt="iso", utc=True),
        _without_people,
    ]
    last: Any = structlog.processors.JSONRenderer()
    if shape != "json":
        # Pretty tracebacks print local variables, plain ones a fault's message: both what people wrote.
        last = structlog.dev.ConsoleRenderer(
            colors=False, exception_formatter=lambda out, exc_info: print("\n" + _exc_text(exc_info), file=out, end="")
        )
    structlog.configure(
        processors=[*before, structlog.stdlib.ProcessorFormatter.wrap_for_formatter],
        logger_factory=structlog.stdlib.LoggerFactory(),
        wrapper_class=structlog.stdlib.BoundLogger,
        cache_logger_on_first_use=False,
    )
    after: list[Any] = [structlog.stdlib.ProcessorFormatter.remove_processors_meta]
    if shape == "json":
        after.append(structlog.processors.ExceptionRenderer(_exc_text))
    handler = logging.StreamHandler(stream or sys.stderr)
    handler.setFormatter(
        Redacting(structlog.stdlib.ProcessorFormatter(foreign_pre_chain=before, processors=[*after, last]))
    )
    handler.addFilter(NobodysData())
    root = logging.getLogger()
    root.handlers[:] = [handler]
    root.setLevel(level.upper())
    # These print a line per HTTP call, with the address and so the token: only ever warnings.
    for chatty in (
        "httpx",
        "httpcore",
        "aiohttp",
        "asyncio",
        "uvicorn",
        "uvicorn.access",
        "sqlalchemy",
        "alembic",
    ):
        logging.getLogger(chatty).setLevel(max(logging.WARNING, root.level))
    # The library's debug lines carry whole messages, that is personal data.
    logging.getLogger("telegram").setLevel(max(logging.INFO, root.level))


def get(name: str) -> Any:
    return structlog.get_logger(name)
