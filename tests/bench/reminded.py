"""Reminders kept, moved and handed out, beside APScheduler with its SQLAlchemy job store on the same sort of file.

Both write to SQLite in a folder of their own; APScheduler as it comes (one transaction a job), ours as the bot
does it (a potluck's reminders in the transaction of the change that moves them; a hundred handed out at a time,
each ended in a commit of its own that group commit joins with others). Handing out is the whole way but the
message: claimed, ended as sent. APScheduler is asked for fewer, since it would take minutes; rates are compared.
"""

from __future__ import annotations

import asyncio
import tempfile
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import psutil

from bot.storage import Batch, PotluckPlace, Store, Stored
from bot.storage.values import FinishedReminder
from planning.potluck import Guest, Potluck, Say
from planning.reminders import Reminder

NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)
COUNT = 100_000
EACH = 50
"""Reminders of one potluck: a big one."""
LESS = 50
"""APScheduler is asked for one in so many."""
OWNER = "bench"
AT_ONCE = 64


@dataclass(frozen=True)
class Rates:
    """Reminders a second; `grown_mb` is the memory the process gained from the first tenth to the end."""

    kept: float
    moved: float
    handed_out: float
    grown_mb: float
    missing: int


def memory_mb() -> float:
    return float(psutil.Process().memory_info().rss) / 1e6


def _reminders(due: datetime) -> tuple[Reminder, ...]:
    about = Say("reminder-bring-today", {"dishes": ["slaw"], "count": 1, "title": "Harvest supper"})
    return tuple(Reminder("bring", str(n), due, due + timedelta(hours=9), about, f"bring:{n}") for n in range(EACH))


async def ours(count: int, folder: Path) -> Rates:
    potlucks = count // EACH
    async with await Store.open(f"sqlite+aiosqlite:///{folder / 'ours.db'}") as store:
        began = time.perf_counter()
        for some in _parts(range(potlucks)):
            await asyncio.gather(*(store.commit(_new(n)) for n in some))
        kept = time.perf_counter() - began
        before = memory_mb()
        began = time.perf_counter()
        for some in _parts(range(potlucks)):
            await asyncio.gather(*(_move(store, n) for n in some))
        moved = time.perf_counter() - began
        began, ended = time.perf_counter(), 0
        now = NOW + timedelta(days=1)
        while rows := await store.claim_reminders(now, OWNER, now + timedelta(minutes=1), 100):
            ends = (FinishedReminder(r.potluck_id, r.key, OWNER, "sent", tries=r.tries) for r in rows)
            await asyncio.gather(*(store.commit(Batch(now=now, finished_reminders=(end,))) for end in ends))
            ended += len(rows)
        handed_out = time.perf_counter() - began
        grown = memory_mb() - before
    total = potlucks * EACH
    return Rates(total / kept, total / moved, ended / handed_out, grown, total - ended)


def _new(n: int) -> Batch:
    guests = tuple(Guest(str(i), f"Guest {i}") for i in range(EACH))
    potluck = Potluck(f"p{n}", NOW + timedelta(days=2), "America/Chicago", host="0", guests=guests)
    place = PotluckPlace(potluck.id, -1000 - n)
    return Batch(now=NOW, new_potlucks=((potluck, place),), reminders=((potluck.id, _reminders(NOW)),))


async def _move(store: Store, n: int) -> None:
    stored: Stored | None = await store.potluck(f"p{n}")
    assert stored is not None
    later = replace(stored.potluck, starts_at=stored.potluck.starts_at + timedelta(hours=1))
    reminders = ((later.id, _reminders(NOW + timedelta(hours=1))),)
    await store.commit(Batch(now=NOW, changed=((stored, later),), reminders=reminders))


def _parts(numbers: range) -> Iterator[range]:
    for first in range(0, len(numbers), AT_ONCE):
        yield numbers[first : first + AT_ONCE]


_done = 0
_all_done = threading.Event()


def _remind(potluck: str, key: str, wanted: int) -> None:
    """What APScheduler calls; it keeps jobs by the name of their function."""
    global _done
    _done += 1
    if _done >= wanted:
        _all_done.set()


def theirs(count: int, folder: Path) -> Rates:
    from apscheduler.executors.pool import ThreadPoolExecutor
    from apscheduler.jobstores.sqlalchemy import SQLAlchemyJobStore
    from apscheduler.schedulers.background import BackgroundScheduler

    global _done
    _done = 0
    _all_done.clear()
    store = SQLAlchemyJobStore(url=f"sqlite:///{folder / 'theirs.db'}")
    scheduler = BackgroundScheduler(
        timezone=UTC, jobstores={"default": store}, executors={"default": ThreadPoolExecutor(1)},
        job_defaults={"misfire_grace_time": None},
    )  # fmt: skip
    scheduler.start(paused=True)
    ahead = datetime.now(UTC) + timedelta(days=1)
    began = time.perf_counter()
    for n in range(count):
        scheduler.add_job(_remind, "date", run_date=ahead, id=f"{n}", args=[f"p{n // EACH}", f"bring:{n}", count])
    kept = time.perf_counter() - began
    before = memory_mb()
    due = datetime.now(UTC) - timedelta(seconds=1)
    began = time.perf_counter()
    for n in range(count):
        scheduler.reschedule_job(f"{n}", trigger="date", run_date=due)
    moved = time.perf_counter() - began
    began = time.perf_counter()
    scheduler.resume()
    _all_done.wait(600)
    handed_out = time.perf_counter() - began
    grown = memory_mb() - before
    scheduler.shutdown()
    return Rates(count / kept, count / moved, _done / handed_out, grown, count - _done)


async def run(rounds: int, count: int = COUNT) -> list[str]:
    """One round only: each writes hundreds of thousands of rows."""
    with tempfile.TemporaryDirectory() as name:
        mine = await ours(count, Path(name))
        less = max(EACH, count // LESS)
        other = await asyncio.to_thread(theirs, less, Path(name))
    lines = [f"Reminders a second: {count} here, {less} in APScheduler's SQLAlchemy job store (both SQLite)"]
    lines.append(f"{'':<14}{'kept':>10}{'moved':>10}{'handed out':>12}{'memory':>12}{'missing':>9}")
    for label, r in (("here", mine), ("APScheduler", other)):
        lines.append(
            f"{label:<14}{r.kept:>10.0f}{r.moved:>10.0f}{r.handed_out:>12.0f}{r.grown_mb:>+9.0f} MB{r.missing:>9}"
        )
    ratios = (mine.kept / other.kept, mine.moved / other.moved, mine.handed_out / other.handed_out)
    lines.append(f"{'times':<14}{ratios[0]:>10.1f}{ratios[1]:>10.1f}{ratios[2]:>12.1f}")
    return lines
