"""What a turn begins with, in one statement: chat, person, open question, and which potluck is current there.

On a database server one statement serves every turn that is waiting to begin (as a group commit serves
every turn that ends): the way there and back costs more than the rows.
"""

from __future__ import annotations

import asyncio
from dataclasses import dataclass
from typing import Any

from sqlalchemy import BigInteger, and_, bindparam, case, column, func, literal, select, true
from sqlalchemy.dialects.postgresql import ARRAY
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.engine import Runner
from bot.storage.errors import StorageTrouble
from bot.storage.sql import ask

MOST_TOGETHER = 128

chat_param = bindparam("p_chat", type_=BigInteger)
thread_param = bindparam("p_thread", type_=BigInteger)
person_param = bindparam("p_person", type_=BigInteger)


def current_id(chat: Any, thread: Any) -> Any:
    """The potluck that words in a chat (and topic) are about."""
    here, its = t.place.alias("here"), t.potluck.alias("its")
    return (
        select(here.c.potluck_id)
        .join(its, its.c.id == here.c.potluck_id)
        .where(here.c.chat_id == chat, here.c.current)
        .order_by(
            # The topic's own, else the one outside all topics, else the chat's newest.
            case((here.c.thread_id == thread, 0), (here.c.thread_id.is_(None), 1), else_=2),
            its.c.starts_at.desc(),
            here.c.potluck_id,
        )
        .limit(1)
    )


def _labelled(table: Any, prefix: str) -> list[Any]:
    return [c.label(f"{prefix}_{c.name}") for c in table.columns]


_COLUMNS = [
    *_labelled(t.chat, "chat"),
    *_labelled(t.person, "person"),
    *_labelled(t.dialog, "dialog"),
    *_labelled(t.place, "place"),
    t.potluck.c.revision.label("revision"),
]


def _joined(source: Any, chat: Any, person: Any) -> Any:
    return (
        source.outerjoin(t.chat, t.chat.c.id == chat)
        .outerjoin(t.person, t.person.c.id == person)
        .outerjoin(t.dialog, and_(t.dialog.c.chat_id == chat, t.dialog.c.person_id == person))
    )


_one = select(literal(1).label("one")).subquery("one")
_alone = select(*_COLUMNS).select_from(
    _joined(_one, chat_param, person_param)
    .outerjoin(t.place, t.place.c.potluck_id == current_id(chat_param, thread_param).scalar_subquery())
    .outerjoin(t.potluck, t.potluck.c.id == t.place.c.potluck_id)
)
_asked = (
    func.unnest(*(bindparam(f"p_{name}s", type_=ARRAY(BigInteger)) for name in ("chat", "thread", "person")))
    .table_valued(*(column(name, BigInteger) for name in ("chat", "thread", "person")), with_ordinality="n")
    .render_derived(name="asked")
)
_here = current_id(_asked.c.chat, _asked.c.thread).lateral("current_one")
_together = (
    select(*_COLUMNS)
    .select_from(
        _joined(_asked, _asked.c.chat, _asked.c.person)
        .outerjoin(_here, true())
        .outerjoin(t.place, t.place.c.potluck_id == _here.c.potluck_id)
        .outerjoin(t.potluck, t.potluck.c.id == t.place.c.potluck_id)
    )
    .order_by(_asked.c.n)
)

Wanted = tuple[int, int | None, int | None]
"""Chat, topic, person."""


@dataclass(eq=False)
class _Waiting:
    wanted: Wanted
    done: asyncio.Future[Any]


class TurnReader:
    def __init__(self, runner: Runner) -> None:
        self._runner = runner
        self._queue: list[_Waiting] = []
        self._task: asyncio.Task[None] | None = None

    async def row(self, wanted: Wanted) -> Any:
        """The row of one turn, read after this was called."""
        if self._runner.is_sqlite:
            params = dict(zip(("p_chat", "p_thread", "p_person"), wanted, strict=True))
            (row,) = await self._runner.glance(lambda conn: ask(conn, _alone, params))
            return row
        waiting = _Waiting(wanted, asyncio.get_running_loop().create_future())
        self._queue.append(waiting)
        if self._task is None:
            self._task = asyncio.create_task(self._read_all(), name="storage-reader")
        return await waiting.done

    async def _read_all(self) -> None:
        try:
            await asyncio.sleep(0)  # whoever came in the same moment comes along
            while self._queue:
                group, self._queue = self._queue[:MOST_TOGETHER], self._queue[MOST_TOGETHER:]
                for waiting, found in zip(group, await self._rows(group), strict=True):
                    if waiting.done.done():
                        continue
                    if isinstance(found, BaseException):
                        waiting.done.set_exception(found)
                    else:
                        waiting.done.set_result(found)
        finally:
            self._task = None

    async def _rows(self, group: list[_Waiting]) -> list[Any]:
        """A row or an exception for each; what one of them asks wrongly is that one's own trouble."""
        try:
            return await self._runner.glance(lambda conn: _read(conn, [w.wanted for w in group]))
        except StorageTrouble as error:
            return [error] * len(group)
        except Exception as error:
            if len(group) == 1:
                return [error]
        return [found for waiting in group for found in await self._rows([waiting])]


def _read(conn: Connection, wanted: list[Wanted]) -> list[Any]:
    chats, threads, persons = zip(*wanted, strict=True)
    return ask(conn, _together, {"p_chats": chats, "p_threads": threads, "p_persons": persons})
