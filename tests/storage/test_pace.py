"""Replicas of one database keep the platform's limits together."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.storage import Batch, Post, Store
from bot.storage.engine import AsyncRunner
from bot.storage.pace import Limit, Place, free_at
from tests.storage.helpers import CHAT, NOW, later, stored

LIMITS = (Limit(2, 3.0), Limit(4, 60.0))
EVERYBODY = (Limit(30, 1.0),)
LEASE = later(hours=1)


@pytest.fixture
async def shared(empty_postgres: str) -> str:
    async with await Store.open(empty_postgres) as store:
        await store.commit(Batch(NOW, posts=tuple(Post(CHAT - n % 3, "send", {"n": n}) for n in range(60))))
    return empty_postgres


async def begin(store: Store, owner: str, at: datetime, limits: tuple[Limit, ...] = LIMITS) -> list[object]:
    """Everything that may leave at `at`, begun; what each call was told."""
    told: list[object] = []
    for post in await store.claim_posts(at, owner, LEASE):
        begun = await store.begin_post(post.id, owner, at, LEASE, Place(post.chat_id, limits, EVERYBODY))
        if begun == 1:
            await store.mark_post_sent(post.id)
        else:
            await store.give_back(post.id, owner, None)
        told.append(begun)
    return told


async def test_two_replicas_together_send_no_more_than_one_may(shared: str) -> None:
    async with await Store.open(shared) as one, await Store.open(shared) as two:
        first = [await begin(one, "one", NOW), await begin(two, "two", NOW)]
        third = await begin(one, "one", NOW)

    assert first == [[1, 1, 1], [1, 1, 1]]
    assert third == [later(seconds=3)] * 3


async def test_all_chats_together_are_limited_as_well(shared: str) -> None:
    everybody = (Limit(2, 1.0),)
    async with await Store.open(shared) as store:
        told = [
            await store.begin_post(p.id, "me", NOW, LEASE, Place(p.chat_id, LIMITS, everybody))
            for p in await store.claim_posts(NOW, "me", LEASE)
        ]

    assert told == [1, 1, later(seconds=1)]


async def test_a_post_that_finds_no_place_is_not_begun(shared: str) -> None:
    async with await Store.open(shared) as store:
        (post, *_) = await store.claim_posts(NOW, "me", LEASE)
        none = Place(post.chat_id, (Limit(1, 60.0),), EVERYBODY)
        first = await store.begin_post(post.id, "me", NOW, LEASE, none)
        await store.requeue(post.id, NOW)
        (again, *_) = await store.claim_posts(NOW, "me", LEASE)
        told = await store.begin_post(again.id, "me", NOW, LEASE, none)
        await store.give_back(again.id, "me", None)
        (after, *_) = await store.claim_posts(NOW, "me", LEASE)

    assert (first, told) == (1, later(minutes=1))
    assert (after.tries, after.doubtful) == (1, False)


async def test_a_board_that_finds_no_place_stays_free_for_others(empty_postgres: str) -> None:
    async with await Store.open(empty_postgres) as store:
        await stored(store)
        await store.commit(Batch(NOW, dirty_boards=(("p1", NOW),)))
        full = Place(CHAT, (Limit(1, 60.0),), EVERYBODY)
        assert await store.claim_board("p1", "me", NOW, LEASE, full) is None
        await store.release_board("p1", "me")

        assert await store.claim_board("p1", "me", NOW, LEASE, full) == later(minutes=1)
        assert await store.claim_board("p1", "you", later(minutes=1), LEASE, full) is None


async def test_rows_of_quiet_chats_are_pruned(shared: str) -> None:
    async with await Store.open(shared) as store:
        await begin(store, "me", NOW)
        await store.prune(later(days=2))

        told = await begin(store, "me", NOW, (Limit(1, 60.0),))

    assert told == [1, 1, 1]


@given(st.lists(st.integers(0, 5_000), max_size=60), st.integers(1, 6), st.integers(1, 4_000))
def test_no_window_ever_holds_more_than_it_may(gaps_ms: list[int], most: int, per_ms: int) -> None:
    limit = Limit(most, per_ms / 1000)
    taken: list[datetime] = []
    now = NOW
    for gap in gaps_ms:
        now += timedelta(milliseconds=gap)
        now = free_at(taken, (limit,), now)
        taken.append(now)

    span = timedelta(seconds=limit.per_s)
    assert all(sum(1 for t in taken if start <= t < start + span) <= most for start in taken)


async def test_a_frozen_replica_in_the_middle_of_a_transaction_does_not_keep_others_from_sending(shared: str) -> None:
    asleep = AsyncRunner(shared, idle_s=0.1)
    async with await Store.open(shared) as store, asyncio.timeout(20):
        (post, *_) = await store.claim_posts(NOW, "me", LEASE)
        async with asleep.engine.connect() as frozen:
            await frozen.exec_driver_sql("BEGIN")
            await frozen.exec_driver_sql("LOCK TABLE pace")
            begun = await store.begin_post(post.id, "me", NOW, LEASE, Place(post.chat_id, LIMITS, EVERYBODY))
            await frozen.invalidate()
    await asleep.close()

    assert begun == 1
