"""`check`: settings, database, migrations, clock and token, each verified, one line for each.

Nothing is changed: no migration is run, no webhook is set, no message is sent.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from email.utils import parsedate_to_datetime
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import aiohttp
import telegram
from alembic.script import ScriptDirectory
from sqlalchemy.engine import Connection
from sqlalchemy.exc import SQLAlchemyError
from telegram.error import InvalidToken, TelegramError

import bot.storage as storage
from bot import log
from bot.clock import Clock
from bot.settings import Settings, SettingsFault, load
from bot.storage.engine import runner, sqlite_path
from bot.storage.errors import StorageError
from bot.storage.migrate import revision_in
from bot.storage.schema import HEAD
from bot.transport import AiohttpRequest

CLOCK_OFF_S = 5.0
"""Reminders are meant to the minute; the platform's Date header has whole seconds."""
ASKED_FOR_S = 10.0


@dataclass(frozen=True)
class Finding:
    """One line: a text key (`check.ftl`) with its facts, and whether it is as it should be."""

    ok: bool
    key: str
    facts: Mapping[str, Any] = field(default_factory=dict)


async def check(clock: Clock, env_file: Path | None = None, environ: Mapping[str, str] | None = None) -> list[Finding]:
    """Verify everything that can be; what depends on something broken is left out."""
    try:
        settings = load(env_file, need_token=False, environ=environ)
    except SettingsFault as wrong:
        return [Finding(False, "check-settings-bad", {"what": log.redact(fault)}) for fault in wrong.faults]
    found = [Finding(True, "check-settings-ok", {"mode": settings.mode})]
    if settings.send_limits == "off":
        found.append(Finding(True, "check-limits-off"))
    found += await check_database(settings.database_url.get_secret_value())
    found += await check_platform(settings, clock)
    return found


async def check_database(url: str) -> list[Finding]:
    """Whether it answers, can be written to, and how far its migrations are."""
    path = sqlite_path(url)
    if path and (not_there := _not_there(Path(path))):
        return not_there
    try:
        running = runner(url, 1)
    except (SQLAlchemyError, ImportError, ValueError) as fault:
        return [Finding(False, "check-database-bad", {"why": log.redact(str(fault))})]
    try:
        revision = await running.glance(revision_in)
        # An empty transaction takes the write lock: a read-only file or folder shows here.
        await running.write(lambda conn: None)
        flushes = path is not None or await running.glance(_flushes)
    except StorageError as fault:
        return [Finding(False, "check-database-bad", {"why": fault.key.removeprefix("storage-")})]
    except (SQLAlchemyError, OSError) as fault:
        return [Finding(False, "check-database-bad", {"why": log.redact(type(fault).__name__)})]
    finally:
        await running.close()
    kind = "SQLite" if path is not None else "PostgreSQL"
    durable = Finding(flushes, "check-durable-ok" if flushes else "check-durable-bad", {"kind": kind})
    return [Finding(True, "check-database-ok", {"kind": kind}), _migrations(revision), durable]


def _flushes(conn: Connection) -> bool:
    """Whether the server waits for its disk; that it is waited for (synchronous_commit) our connections see to."""
    return str(conn.exec_driver_sql("SHOW fsync").scalar()) == "on"


def _not_there(file: Path) -> list[Finding]:
    if file.exists():
        return []
    if file.parent.is_dir():
        return [Finding(True, "check-database-new", {"what": str(file)}), Finding(True, "check-migrations-first")]
    return [Finding(False, "check-database-bad", {"why": f"there is no folder {file.parent}"})]


def _migrations(revision: str | None) -> Finding:
    if revision is None:
        return Finding(True, "check-migrations-first")
    if revision == HEAD:
        return Finding(True, "check-migrations-ok", {"revision": revision})
    folder = ScriptDirectory(str(Path(storage.__file__).parent / "migrations"))
    known = {script.revision for script in folder.walk_revisions()}
    if revision in known:
        return Finding(True, "check-migrations-behind", {"revision": revision, "newest": HEAD})
    return Finding(False, "check-migrations-newer", {"revision": revision})


async def check_platform(settings: Settings, clock: Clock) -> list[Finding]:
    """The token, what it allows, and this machine's clock beside the platform's."""
    if settings.token is None:
        return [*await check_clock(settings.api_base_url, clock), Finding(False, "check-token-missing")]
    request = _request(settings.api_base_url)
    client = telegram.Bot(settings.token.get_secret_value(), base_url=settings.api_base_url, request=request)
    found = await check_clock(settings.api_base_url, clock)
    async with request:
        try:
            me = await client.get_me()
            hook = await client.get_webhook_info()
        except InvalidToken:
            return [*found, Finding(False, "check-token-bad")]
        except TelegramError as fault:
            return [*found, Finding(False, "check-token-unknown", {"why": log.redact(str(fault))})]
    key = "check-token-privacy" if me.can_read_all_group_messages else "check-token-ok"
    found.append(Finding(True, key, {"username": me.username or me.first_name}))
    if settings.mode == "webhook" and hook.url == settings.webhook_url and hook.last_error_message:
        why = log.redact(hook.last_error_message)
        found.append(Finding(False, "check-webhook-error", {"why": why, "url": hook.url}))
    elif settings.mode == "webhook" and hook.url == settings.webhook_url:
        found.append(Finding(True, "check-webhook-ok", {"url": hook.url, "waiting": hook.pending_update_count}))
    elif hook.url and settings.mode == "polling":
        found.append(Finding(True, "check-webhook-other"))
    return found


async def check_clock(api_base_url: str, clock: Clock) -> list[Finding]:
    """This machine's clock beside the Date header of any answer of the Bot API's server."""
    parts = urlsplit(api_base_url)
    try:
        async with (
            aiohttp.ClientSession(trust_env=not _loopback(api_base_url)) as session,
            session.get(
                f"{parts.scheme}://{parts.netloc}/",
                timeout=aiohttp.ClientTimeout(total=ASKED_FOR_S),
                allow_redirects=False,
            ) as answer,
        ):
            theirs = _instant(answer.headers.get("Date"))
    except (aiohttp.ClientError, TimeoutError, OSError):
        theirs = None
    if theirs is None:
        return [Finding(True, "check-clock-unknown")]
    seconds = abs((clock.now() - theirs).total_seconds())
    ok = seconds <= CLOCK_OFF_S
    return [Finding(ok, "check-clock-ok" if ok else "check-clock-bad", {"seconds": round(seconds)})]


def _instant(header: str | None) -> datetime | None:
    try:
        parsed = parsedate_to_datetime(header) if header else None
    except (TypeError, ValueError):
        return None
    return parsed if parsed is not None and parsed.tzinfo is not None else None


def _loopback(url: str) -> bool:
    return (urlsplit(url).hostname or "") in ("127.0.0.1", "localhost", "::1")


def _request(url: str) -> AiohttpRequest:
    return AiohttpRequest(
        proxy_from_environment=not _loopback(url), connect_timeout_s=ASKED_FOR_S, read_timeout_s=ASKED_FOR_S
    )
