"""Reading: what a turn needs in one go, and single things."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from sqlalchemy import BigInteger, bindparam, exists, select

from bot.storage import potlucks
from bot.storage import schema as t
from bot.storage.base import Base
from bot.storage.records import action_from, chat_from, dialog_from, message_from, person_from, place_from
from bot.storage.sql import ask, first
from bot.storage.turns import chat_param, current_id, person_param, thread_param
from bot.storage.values import (
    Action,
    ChatRecord,
    Dialog,
    PersonRecord,
    PotluckPlace,
    SentMessage,
    Stored,
    TurnData,
)

_current_id = current_id(chat_param, thread_param)
_chat = select(t.chat).where(t.chat.c.id == chat_param)
_moved_from = select(t.chat_moved.c.old_id).where(t.chat_moved.c.new_id == chat_param)
_moved = select(t.chat_moved.c.new_id).where(t.chat_moved.c.old_id == chat_param)
_people = select(t.person).where(t.person.c.id.in_(bindparam("ids", expanding=True)))
_dialog = select(t.dialog).where(t.dialog.c.chat_id == chat_param, t.dialog.c.person_id == person_param)
_action = select(t.action).where(t.action.c.id == bindparam("p_id"))
_last_action = (
    select(t.action)
    .where(t.action.c.potluck_id == bindparam("p_id"), t.action.c.actor == bindparam("p_actor"))
    .where(t.action.c.undone.is_(False))
    .order_by(t.action.c.id.desc())
    .limit(1)
)
_latest_actions = (
    select(t.action)
    .where(t.action.c.potluck_id == bindparam("p_id"), t.action.c.undone.is_(False))
    .order_by(t.action.c.id.desc())
    .limit(bindparam("p_most"))
)
_actions_since = (
    select(t.action)
    .where(t.action.c.potluck_id == bindparam("p_id"), t.action.c.id > bindparam("p_after"))
    .order_by(t.action.c.id)
)
_seen = select(exists().where(t.update_taken.c.update_id == bindparam("p_update", type_=BigInteger)))
_message = select(t.sent_message).where(
    t.sent_message.c.chat_id == chat_param,
    t.sent_message.c.message_id == bindparam("p_message", type_=BigInteger),
)


class _Prefixed:
    """One table's columns of a joined row."""

    __slots__ = ("_prefix", "_row")

    def __init__(self, row: Any, prefix: str) -> None:
        self._row, self._prefix = row, prefix

    def __getattr__(self, name: str) -> Any:
        return getattr(self._row, f"{self._prefix}_{name}")


class Reads(Base):
    async def load_turn(self, chat_id: int, thread_id: int | None = None, person_id: int | None = None) -> TurnData:
        """Chat, person, the potluck current there and the open question, in one statement when the
        potluck is in the cache."""
        row = await self._turns.row((chat_id, thread_id, person_id))
        stored = None
        if row.place_potluck_id is not None:
            stored = await self._whole(row.revision, place_from(_Prefixed(row, "place")))
        return TurnData(
            chat=None if row.chat_id is None else chat_from(_Prefixed(row, "chat")),
            person=None if row.person_id is None else person_from(_Prefixed(row, "person")),
            stored=stored,
            dialog=None if row.dialog_chat_id is None else dialog_from(_Prefixed(row, "dialog")),
        )

    async def _whole(self, revision: int, place: PotluckPlace) -> Stored | None:
        known = self._cache.get(place.potluck_id, revision)
        if known is not None:
            return Stored(known, revision, place)
        stored = await self._runner.read(lambda conn: potlucks.load(conn, place.potluck_id))
        if stored is not None:
            self._cache.put(stored.potluck, stored.revision)
        return stored

    async def potluck(self, potluck_id: str) -> Stored | None:
        head = await self._runner.glance(lambda conn: potlucks.revision_and_place(conn, potluck_id))
        return None if head is None else await self._whole(*head)

    async def current_potluck(self, chat_id: int, thread_id: int | None = None) -> Stored | None:
        """The topic's own current potluck, else the chat's."""
        params = {"p_chat": chat_id, "p_thread": thread_id}
        found = await self._runner.glance(lambda conn: conn.scalar(_current_id, params))
        return None if found is None else await self.potluck(found)

    async def potlucks_in(self, chat_id: int) -> tuple[Stored, ...]:
        """All potlucks of a chat, latest start first."""
        return await self._several(await self._runner.glance(lambda conn: potlucks.ids_in_chat(conn, chat_id)))

    async def potlucks_of_person(self, person_id: int) -> tuple[Stored, ...]:
        """Where somebody is a guest or the host, latest start first."""
        return await self._several(await self._runner.glance(lambda conn: potlucks.ids_of_guest(conn, str(person_id))))

    async def potluck_ids(self) -> tuple[str, ...]:
        """Every potluck there is, the latest start last."""
        return tuple(await self._runner.glance(potlucks.all_ids))

    async def _several(self, ids: Iterable[str]) -> tuple[Stored, ...]:
        found = [await self.potluck(i) for i in ids]
        return tuple(s for s in found if s is not None)

    async def chat(self, chat_id: int) -> ChatRecord | None:
        row = await self._runner.glance(lambda conn: first(conn, _chat, {"p_chat": chat_id}))
        return None if row is None else chat_from(row)

    async def moved_to(self, chat_id: int) -> int | None:
        """The supergroup a group became, if it did."""
        return await self._runner.glance(lambda conn: conn.scalar(_moved, {"p_chat": chat_id}))

    async def moved_from(self, chat_id: int) -> tuple[int, ...]:
        """The groups that became this supergroup."""
        return await self._runner.glance(
            lambda conn: tuple(int(old) for old in conn.scalars(_moved_from, {"p_chat": chat_id}))
        )

    async def person(self, person_id: int) -> PersonRecord | None:
        return (await self.people((person_id,))).get(person_id)

    async def people(self, ids: Iterable[int]) -> dict[int, PersonRecord]:
        """Those of them who are known, by id."""
        wanted = sorted(set(ids))
        if not wanted:
            return {}
        rows = await self._runner.glance(lambda conn: list(conn.execute(_people, {"ids": wanted})))
        return {r.id: person_from(r) for r in rows}

    async def dialog(self, chat_id: int, person_id: int) -> Dialog | None:
        params = {"p_chat": chat_id, "p_person": person_id}
        row = await self._runner.glance(lambda conn: first(conn, _dialog, params))
        return None if row is None else dialog_from(row)

    async def action(self, action_id: int) -> Action | None:
        row = await self._runner.glance(lambda conn: first(conn, _action, {"p_id": action_id}))
        return None if row is None else action_from(row)

    async def last_action(self, potluck_id: str, actor: str) -> Action | None:
        """The newest thing somebody did to a potluck that wasn't undone."""
        params = {"p_id": potluck_id, "p_actor": actor}
        row = await self._runner.glance(lambda conn: first(conn, _last_action, params))
        return None if row is None else action_from(row)

    async def latest_actions(self, potluck_id: str, most: int) -> tuple[Action, ...]:
        """The newest things anybody did to a potluck that were not undone, newest first."""
        params = {"p_id": potluck_id, "p_most": most}
        rows = await self._runner.glance(lambda conn: ask(conn, _latest_actions, params))
        return tuple(action_from(r) for r in rows)

    async def actions_since(self, potluck_id: str, after_id: int = 0) -> tuple[Action, ...]:
        """What was done after the action with this id, oldest first."""
        params = {"p_id": potluck_id, "p_after": after_id}
        rows = await self._runner.glance(lambda conn: ask(conn, _actions_since, params))
        return tuple(action_from(r) for r in rows)

    async def seen_update(self, update_id: int) -> bool:
        """Whether this update's effects are stored already."""
        return bool(await self._runner.glance(lambda conn: conn.scalar(_seen, {"p_update": update_id})))

    async def message_about(self, chat_id: int, message_id: int) -> SentMessage | None:
        """What a message of the bot was about; None for one that isn't known."""
        params = {"p_chat": chat_id, "p_message": message_id}
        r = await self._runner.glance(lambda conn: first(conn, _message, params))
        return None if r is None else message_from(r)
