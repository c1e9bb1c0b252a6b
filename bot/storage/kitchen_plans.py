"""Timelines of the kitchen, kept with the reminders that hang on them, and who waits for a new one.

A turn that changes what the kitchen must do marks the potluck in its own transaction; the plan that comes of it is
written with its reminders, and takes the mark away. So a death in between loses nothing: the mark is found.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import Integer, bindparam, null, select, update
from sqlalchemy.engine import Connection

from bot.storage import schema as t
from bot.storage.base import Base
from bot.storage.codec import decode, encode
from bot.storage.columns import Instant
from bot.storage.sql import put, run
from bot.storage.values import Batch
from planning.kitchen.result import Conflict, Timeline
from planning.potluck import Say

_k = t.kitchen_plan.c
_PLAN = ("planned", "revision", "part", "timeline")
_newer = select(_k.revision, _k.part, _k.timeline).where(
    _k.potluck_id == bindparam("p_id"), _k.revision > bindparam("p_revision", type_=Integer)
)
_due = (
    select(_k.potluck_id)
    .join(t.potluck, t.potluck.c.id == _k.potluck_id)
    .where(_k.wanted_at <= bindparam("p_before", type_=Instant))
    .where(t.potluck.c.starts_at >= bindparam("p_from", type_=Instant))
    .order_by(t.potluck.c.starts_at)
    .limit(bindparam("p_most", type_=Integer))
)
_settled = (
    update(t.kitchen_plan)
    .where(_k.potluck_id == bindparam("p_id"), _k.planned < bindparam("p_revision", type_=Integer))
    .values(planned=bindparam("p_planned", type_=Integer))
)


_waits_no_more = (
    update(t.kitchen_plan).where(_k.potluck_id == bindparam("p_id"), _k.wanted <= _k.planned).values(wanted_at=null())
)


@dataclass(frozen=True)
class KitchenPlan:
    """`revision`: the potluck's with which it was stored; `part`: a mark of what it was made for."""

    revision: int
    part: str
    timeline: Timeline


def _timeline(data: Any) -> Timeline:
    found: Timeline = decode(Timeline, data)
    return replace(found, conflicts=tuple(_conflict(c) for c in found.conflicts))


def _conflict(conflict: Conflict) -> Conflict:
    others = tuple(replace(f, text=_said(f.text)) for f in conflict.others)
    fix = replace(conflict.fix, text=_said(conflict.fix.text))
    return replace(conflict, why=_said(conflict.why), fix=fix, others=others)


def _said(said: Say) -> Say:
    return Say(said.key, {name: _fact(value) for name, value in said.facts.items()})


def _fact(value: Any) -> Any:
    """A sentence may stand among the facts of another one; JSON knows only that it is a mapping."""
    if isinstance(value, list):
        return [_fact(v) for v in value]
    if isinstance(value, Mapping) and set(value) == {"key", "facts"}:
        return _said(Say(value["key"], value["facts"]))
    return value


def write_plans(conn: Connection, batches: Sequence[Batch], revisions: Sequence[Mapping[str, int]]) -> None:
    for batch, moved in zip(batches, revisions, strict=True):
        empty = {"wanted_at": batch.now, "wanted": 0, **dict.fromkeys(_PLAN)}
        wanted = [
            {**empty, "potluck_id": p, "wanted": moved[p], "planned": 0, "revision": 0} for p in batch.plans_wanted
        ]
        put(conn, t.kitchen_plan, wanted, keep=_PLAN)
        plans: list[dict[str, Any]] = [
            {
                **empty,
                "potluck_id": p,
                "planned": moved[p],
                "revision": moved[p],
                "part": part,
                "timeline": encode(made),
            }
            for p, part, made in batch.plans
        ]
        put(conn, t.kitchen_plan, plans, keep=("wanted", "wanted_at"))
        run(conn, _waits_no_more, [{"p_id": p} for p, _, _ in batch.plans])


class KitchenPlans(Base):
    async def kitchen_plan(self, potluck_id: str, newer_than: int = 0) -> KitchenPlan | None:
        """The stored timeline, if it was stored with a later revision of the potluck than this."""
        params = {"p_id": potluck_id, "p_revision": newer_than}
        row = await self._runner.glance(lambda conn: conn.execute(_newer, params).first())
        if row is None or row.timeline is None:
            return None
        return KitchenPlan(row.revision, row.part, _timeline(row.timeline))

    async def plans_due(self, before: datetime, starting_from: datetime, most: int = 50) -> tuple[str, ...]:
        """Potlucks that have waited for a new timeline since `before` or longer; those that start first, first."""
        params = {"p_before": before, "p_from": starting_from, "p_most": most}
        return await self._runner.glance(lambda conn: tuple(conn.scalars(_due, params)))

    async def plan_settled(self, potluck_id: str, revision: int) -> None:
        """This revision asks for no other timeline; a later one may still."""
        row = {"p_id": potluck_id, "p_revision": revision, "p_planned": revision}

        def work(conn: Connection) -> None:
            run(conn, _settled, [row])
            run(conn, _waits_no_more, [{"p_id": potluck_id}])

        await self._writer.job(work)
