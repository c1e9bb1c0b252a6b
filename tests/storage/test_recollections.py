"""What was said a little while ago is kept with the turn that caused it, counts for its time, and goes."""

from __future__ import annotations

import asyncio
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot.storage import AlreadyTaken, Batch, Recollection, Stale, Store
from bot.storage.codec import decode, encode
from planning.theday.situation import Food, Recent, State, Verdict
from tests.storage.helpers import CHAT, NOW, change, later, stored

ME, OTHER = 7, 8


def said(person: int = ME, kind: str = "spoken", about: str = "", **fields: Any) -> Recollection:
    return replace(Recollection(CHAT, person, kind, {"n": 1}, NOW, later(hours=3), about, "p1"), **fields)


async def kept(store: Store, *said: Recollection, **batch: Any) -> None:
    await store.commit(Batch(NOW, recollections=said, **batch))


async def test_what_is_kept_is_read_back_whole_by_another_store_on_the_same_database(store: Store, url: str) -> None:
    one = said(value={"words": "“Käse” 🧀", "list": [1, None, 2.5]})
    await kept(store, one)

    async with await Store.open(url) as other:
        assert await other.recollections(CHAT, ME, NOW) == (one,)


async def test_a_person_sees_their_own_and_the_chats_newest_first_and_nobody_elses(store: Store) -> None:
    mine, chats = said(at=later(minutes=1)), said(0, "asked", at=later(minutes=2))
    await kept(store, said(OTHER), mine, chats, said(chat_id=CHAT - 1))

    assert await store.recollections(CHAT, ME, NOW) == (chats, mine)


async def test_everyones_of_one_kind_come_newest_first_and_no_more_than_asked_for(store: Store) -> None:
    first, second, third = (said(p, at=later(minutes=p)) for p in (1, 2, 3))
    await kept(store, second, third, first, said(4, "ill"))

    assert await store.recollections_of_all(CHAT, "spoken", NOW, 2) == (third, second)


async def test_it_counts_until_its_time_is_over_and_not_at_that_instant(store: Store) -> None:
    await kept(store, said(until=later(hours=3)))

    before, then = later(hours=2, minutes=59), later(hours=3)
    assert len(await store.recollections(CHAT, ME, before)) == 1
    assert await store.recollections(CHAT, ME, then) == ()
    assert await store.recollections_of_all(CHAT, "spoken", then, 9) == ()


async def test_a_newer_one_about_the_same_replaces_it_and_one_about_something_else_does_not(store: Store) -> None:
    await kept(store, said(about="a"), said(about="b"))
    newer = said(about="a", value={"n": 2}, at=later(minutes=5))
    await kept(store, newer)

    assert await store.recollections(CHAT, ME, NOW) == (newer, said(about="b"))


async def test_what_is_let_go_is_gone_and_the_rest_stays(store: Store) -> None:
    await kept(store, said(about="a"), said(about="b"))

    await store.commit(Batch(NOW, let_go=(said(about="a").key,)))

    assert await store.recollections(CHAT, ME, NOW) == (said(about="b"),)


async def test_a_turn_that_comes_too_late_leaves_nothing_behind(store: Store) -> None:
    before = await stored(store)
    await change(store, before, replace(before.potluck, title="A"))

    with pytest.raises(Stale):
        await change(store, before, replace(before.potluck, title="B"), recollections=(said(),))

    assert await store.recollections(CHAT, ME, NOW) == ()


async def test_an_update_taken_before_changes_nothing_of_it(store: Store) -> None:
    await kept(store, said(), update_id=5)

    with pytest.raises(AlreadyTaken):
        await kept(store, said(value={"n": 2}), update_id=5)

    assert await store.recollections(CHAT, ME, NOW) == (said(),)


async def test_people_who_write_at_once_keep_what_each_of_them_said(store: Store) -> None:
    await asyncio.gather(*(kept(store, said(p), said(0, "asked"), update_id=p) for p in range(1, 20)))

    assert len(await store.recollections_of_all(CHAT, "spoken", NOW, 99)) == 19
    assert len(await store.recollections(CHAT, 99, NOW)) == 1


async def test_what_counts_no_more_is_pruned_and_what_counts_is_not(store: Store) -> None:
    await kept(store, said(about="old", until=later(hours=1)), said(about="new", until=later(hours=2)))

    await store.prune(later(hours=1))

    assert [r.about for r in await store.recollections(CHAT, ME, NOW)] == ["new"]


async def test_it_goes_with_the_potluck_it_belongs_to(store: Store) -> None:
    await stored(store)
    other = said(about="b", potluck_id="p2")
    await kept(store, said(about="a", until=later(days=90)), other)

    await store.delete_potlucks_before(later(days=60))

    assert await store.recollections(CHAT, ME, NOW) == (other,)


words = st.text(max_size=8)
instants = st.none() | st.just(NOW)
figures = st.none() | st.floats(-40, 600)
foods = st.builds(Food, words, words, words, st.integers(0, 99), st.integers(0, 99), st.booleans())
states = st.builds(State, words, instants, figures, figures, words, st.booleans(), st.booleans())
verdicts = st.builds(Verdict, foods, words, words, by=instants, f=figures, lb=figures, state=states)


@settings(suppress_health_check=list(HealthCheck))
@given(st.builds(Recent, st.just(NOW), st.lists(verdicts, max_size=3).map(tuple), st.booleans(), st.booleans()))
def test_the_food_somebody_spoke_of_comes_back_as_it_was_told(recent: Recent) -> None:
    assert decode(Recent, encode(recent)) == recent
