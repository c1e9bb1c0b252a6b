"""Group commit: what arrives while one transaction is being written is written in the next, together.

One fsync then serves many updates. A batch that turns out stale leaves the group alone and its
caller hears of it. A refusal by the database (most often an update that was taken before) undoes the
whole group, which is then tried again looking at every update first; whatever still fails is tried
each in a transaction of its own, so that one can't hurt the others.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar

from sqlalchemy.engine import Connection

from bot.storage.engine import Runner
from bot.storage.errors import StorageTrouble
from bot.storage.values import Batch

T = TypeVar("T")
Outcome = Any
WriteBatches = Callable[[Connection, Sequence[Batch], bool], list[Outcome]]
"""(connection, batches, carefully) -> a CommitResult or an exception for each."""

MOST_TOGETHER = 128
ASIDE = 3
"""Jobs beside the group at a time, each on a connection of its own."""


@dataclass(eq=False)
class _Waiting:
    done: asyncio.Future[Any]
    batch: Batch | None = None
    job: Callable[[Connection], Any] | None = None
    lasting: bool = True


class GroupWriter:
    def __init__(
        self, runner: Runner, write_batches: WriteBatches, committed: Callable[[], None] = lambda: None
    ) -> None:
        self._runner = runner
        self._write_batches = write_batches
        self._committed = committed
        self._queue: list[_Waiting] = []
        self._task: asyncio.Task[None] | None = None
        self._aside = asyncio.Semaphore(ASIDE)
        self.groups = 0
        self.members = 0

    async def batch(self, batch: Batch) -> Any:
        return await self._wait(_Waiting(asyncio.get_running_loop().create_future(), batch=batch))

    async def job(self, job: Callable[[Connection], T], *, lasting: bool = True) -> T:
        """Run a small job in the next group's transaction; it may be run again, so it must not
        change anything but the database. Not `lasting`: a power loss (but no death of a process) may
        undo it, so that nobody's answer stands behind a disk's flush for it."""
        member = _Waiting(asyncio.get_running_loop().create_future(), job=job, lasting=lasting)
        result: T = await self._wait(member)
        return result

    async def aside(self, job: Callable[[Connection], T], *, lasting: bool = True) -> T:
        """A job of the courier's, on few rows of one chat: where several can write at a time it stands in a
        transaction of its own, so that nobody's answer waits for it. Else as `job`."""
        if self._runner.is_sqlite:
            return await self.job(job, lasting=lasting)
        async with self._aside:
            return await self._runner.write(job, lasting=lasting)

    async def _wait(self, member: _Waiting) -> Any:
        self._queue.append(member)
        if self._task is None:
            self._task = asyncio.create_task(self._write_all(), name="storage-writer")
        return await member.done

    async def drain(self) -> None:
        while self._task is not None:
            await asyncio.wait([self._task])
        for _ in range(ASIDE):
            await self._aside.acquire()
        for _ in range(ASIDE):
            self._aside.release()

    async def _write_all(self) -> None:
        try:
            while self._queue:
                await self._all_who_are_ready()
                group, self._queue = self._queue[:MOST_TOGETHER], self._queue[MOST_TOGETHER:]
                await self._write_group(group)
        finally:
            self._task = None

    async def _all_who_are_ready(self) -> None:
        """Whoever can come without waiting for anything comes along: one flush of the disk costs more
        than several turns of the event loop."""
        seen = 0
        while seen < len(self._queue) < MOST_TOGETHER:
            seen = len(self._queue)
            await asyncio.sleep(0)

    async def _write_group(self, group: list[_Waiting]) -> None:
        self.groups += 1
        self.members += len(group)
        outcomes = await self._outcomes(group)
        for member, outcome in zip(group, outcomes, strict=True):
            if member.done.done():
                continue
            if isinstance(outcome, BaseException):
                member.done.set_exception(outcome)
            else:
                member.done.set_result(outcome)

    async def _outcomes(self, group: list[_Waiting]) -> list[Outcome]:
        """Quickly together, else carefully together, else each alone."""
        for careful in (False, True):
            try:
                return await self._together(group, careful)
            except StorageTrouble as error:
                return [error] * len(group)
            except Exception as error:
                if careful and len(group) == 1:
                    return [error]
        return [outcome for member in group for outcome in await self._outcomes([member])]

    async def _together(self, group: list[_Waiting], careful: bool) -> list[Outcome]:
        outcomes = await self._runner.write(
            lambda conn: self._write(conn, group, careful), lasting=any(m.lasting for m in group)
        )
        self._committed()
        return outcomes

    def _write(self, conn: Connection, group: list[_Waiting], careful: bool) -> list[Outcome]:
        batches = [m.batch for m in group if m.batch is not None]
        written = iter(self._write_batches(conn, batches, careful) if batches else ())
        return [next(written) if m.job is None else m.job(conn) for m in group]
