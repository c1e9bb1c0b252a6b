"""A timeline is stored whole; who waits for a new one is found until it is there."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from bot.storage import Batch, Store, Stored
from planning.kitchen import timeline
from planning.kitchen.result import Timeline
from planning.potluck import Guest, HeatStep, Promise
from tests.storage.helpers import NOW, later, stored

PART = "a mark"


def made(before) -> Timeline:  # type: ignore[no-untyped-def]
    """Two pans of different heat for one oven, with a conflict or two to be stored, too."""
    heat = (HeatStep("oven", 50, 375.0, pans=2), HeatStep("serve", 0))
    hotter = (HeatStep("oven", 40, 475.0, pans=2), HeatStep("serve", 0))
    dishes = tuple(
        Promise(f"d{n}", "7", f"dish {n}", "main", heat=heat if n % 2 else hotter, serve="hot") for n in range(6)
    )
    potluck = replace(before.potluck, guests=(Guest("7", "Mei"),), promises=dishes)
    return timeline(potluck, potluck.starts_at - timedelta(days=1), 0.1, 0, 5.0)


async def held(store: Store) -> Stored:
    """The one potluck."""
    return await store.potluck("p1") or await stored(store)


async def want(store: Store) -> int:
    """The revision that asks for a timeline."""
    before = await held(store)
    result = await store.commit(Batch(NOW, changed=((before, before.potluck),), plans_wanted=(before.potluck.id,)))
    return result.revisions[before.potluck.id]


async def keep(store: Store, found: Timeline) -> int:
    before = await held(store)
    plans = ((before.potluck.id, PART, found),)
    result = await store.commit(Batch(NOW, changed=((before, before.potluck),), plans=plans))
    return result.revisions[before.potluck.id]


async def test_a_timeline_is_read_back_as_it_was_by_another_store(store: Store, url: str) -> None:
    before = await held(store)
    found = made(before)
    revision = await keep(store, found)

    async with await Store.open(url) as other:
        read = await other.kitchen_plan(before.potluck.id)
    assert read is not None
    assert (read.timeline, read.part, read.revision) == (found, PART, revision)
    assert found.steps
    assert found.conflicts


async def test_only_a_newer_timeline_than_the_known_one_is_read(store: Store) -> None:
    revision = await keep(store, Timeline("optimal", 0, 0))
    potluck_id = (await held(store)).potluck.id

    assert await store.kitchen_plan(potluck_id, revision) is None
    assert await store.kitchen_plan(potluck_id, revision - 1) is not None


async def test_who_waits_is_found_until_the_timeline_is_stored(store: Store) -> None:
    await want(store)
    potluck = (await held(store)).potluck

    assert await store.plans_due(NOW, NOW) == (potluck.id,)
    assert await store.plans_due(NOW - timedelta(seconds=1), NOW) == ()
    assert await store.plans_due(NOW, potluck.starts_at + timedelta(days=1)) == ()
    await keep(store, Timeline("optimal", 0, 0))
    assert await store.plans_due(later(days=1), NOW) == ()


async def test_what_is_settled_waits_no_more_but_a_later_wish_does(store: Store) -> None:
    revision = await want(store)
    potluck_id = (await held(store)).potluck.id

    await store.plan_settled(potluck_id, revision)
    assert await store.plans_due(NOW, NOW) == ()
    await want(store)
    await store.plan_settled(potluck_id, revision)
    assert await store.plans_due(NOW, NOW) == (potluck_id,)


async def test_a_potlucks_timeline_goes_with_it(store: Store) -> None:
    await keep(store, Timeline("optimal", 0, 0))
    before = await held(store)

    await store.delete_potlucks_before(before.potluck.starts_at + timedelta(days=1))

    assert await store.kitchen_plan(before.potluck.id) is None
