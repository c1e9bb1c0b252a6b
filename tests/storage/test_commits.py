"""One turn, one transaction: whole or not at all, once, and never over somebody else's change."""

from __future__ import annotations

import asyncio

import pytest

from bot.storage import (
    AlreadyTaken,
    Batch,
    ChatRecord,
    FinishedReminder,
    NewAction,
    Post,
    PotluckPlace,
    Stale,
    Store,
    apply_diff,
)
from planning.potluck import Promise
from tests.storage.helpers import CHAT, NOW, Reminder, change, potluck, stored, with_guest, with_promise


async def test_a_commit_gives_posts_their_ids_in_order_and_potlucks_their_new_revision(store: Store) -> None:
    before = await stored(store)

    done = await change(
        store,
        before,
        with_guest(before.potluck, "1", travel_min=5),
        posts=(Post(CHAT, "sendMessage", {"text": "a"}), Post(CHAT, "sendMessage", {"text": "b"})),
    )

    assert [p.payload["text"] for p in done.posts] == ["a", "b"]
    assert 0 < done.posts[0].id < done.posts[1].id
    assert done.revisions == {"p1": before.revision + 1}


async def test_a_stale_change_is_refused_and_leaves_nothing(store: Store) -> None:
    before = await stored(store)
    await change(store, before, with_guest(before.potluck, "1", travel_min=5))

    with pytest.raises(Stale):
        await change(
            store,
            before,
            with_guest(before.potluck, "1", travel_min=9),
            update_id=4,
            posts=(Post(CHAT, "sendMessage"),),
        )

    now = await store.potluck("p1")
    assert now is not None
    assert now.potluck.guests[0].travel_min == 5
    assert await store.pending_posts() == ()
    assert not await store.seen_update(4)


async def test_an_update_is_taken_once(store: Store) -> None:
    before = await stored(store)
    await change(store, before, with_guest(before.potluck, "1", travel_min=5), update_id=77)
    now = await store.potluck("p1")
    assert now is not None

    with pytest.raises(AlreadyTaken):
        await change(store, now, with_guest(now.potluck, "1", travel_min=9), update_id=77)

    assert await store.potluck("p1") == now
    assert await store.seen_update(77)


async def test_the_same_update_twice_at_once_is_taken_once(store: Store) -> None:
    batch = Batch(NOW, update_id=5, posts=(Post(CHAT, "sendMessage"),))

    outcomes = await asyncio.gather(store.commit(batch), store.commit(batch), return_exceptions=True)

    assert [type(o).__name__ for o in outcomes] == ["CommitResult", "AlreadyTaken"]
    assert len(await store.pending_posts()) == 1


async def test_a_fault_in_one_batch_of_a_group_does_not_undo_the_others(store: Store) -> None:
    await stored(store)
    good = [Batch(NOW, update_id=n, posts=(Post(CHAT, "sendMessage", {"n": n}),)) for n in range(4)]
    bad = Batch(NOW, update_id=99, actions=(NewAction("no such potluck", "1", NOW, "x"),))

    outcomes = await asyncio.gather(*(store.commit(b) for b in [*good[:2], bad, *good[2:]]), return_exceptions=True)

    assert [isinstance(o, Exception) for o in outcomes] == [False, False, True, False, False]
    assert [p.payload["n"] for p in await store.pending_posts()] == [0, 1, 2, 3]
    assert not await store.seen_update(99)


async def test_updates_delivered_twice_in_a_flood_are_told_apart_in_few_transactions(store: Store) -> None:
    await asyncio.gather(*(store.commit(Batch(NOW, update_id=n)) for n in range(0, 40, 2)))
    before, _ = store.written

    flood = await asyncio.gather(*(store.commit(Batch(NOW, update_id=n)) for n in range(40)), return_exceptions=True)

    assert [isinstance(o, AlreadyTaken) for o in flood] == [n % 2 == 0 for n in range(40)]
    assert store.written[0] - before <= 2


async def test_many_commits_at_once_share_transactions(store: Store) -> None:
    await asyncio.gather(*(store.commit(Batch(NOW, update_id=n)) for n in range(60)))

    transactions, commits = store.written
    assert transactions < commits == 60


async def add_one(store: Store, who: str) -> None:
    """A turn: read, change, commit; from the start again when somebody was faster."""
    while True:
        seen = await store.potluck("p1")
        assert seen is not None
        promise = Promise(f"d{who}", who, "rolls", "bread", 10.0)
        try:
            await change(store, seen, with_promise(seen.potluck, promise), update_id=int(who))
            return
        except Stale:
            await asyncio.sleep(0)


async def test_people_who_answer_at_once_lose_nothing(store: Store) -> None:
    await stored(store)

    await asyncio.gather(*(add_one(store, str(n)) for n in range(1, 21)))

    now = await store.potluck("p1")
    assert now is not None
    assert {p.id for p in now.potluck.promises} == {f"d{n}" for n in range(1, 21)}
    assert now.revision == 21


async def test_two_processes_that_change_one_potluck_lose_nothing(store: Store, url: str) -> None:
    await stored(store)
    other = await Store.open(url)

    await asyncio.gather(*(add_one((store, other)[n % 2], str(n)) for n in range(1, 21)))

    seen = [await s.potluck("p1") for s in (store, other)]
    await other.close()
    assert seen[0] == seen[1]
    assert seen[0] is not None
    assert {p.id for p in seen[0].potluck.promises} == {f"d{n}" for n in range(1, 21)}


async def test_the_cache_never_shows_what_another_process_has_changed(store: Store, url: str) -> None:
    before = await stored(store)
    async with await Store.open(url) as other:
        theirs = await other.potluck("p1")
        assert theirs is not None
        await change(other, theirs, with_guest(theirs.potluck, "2", travel_min=33))

    now = await store.potluck("p1")
    turn = await store.load_turn(CHAT)

    assert now is not None
    assert now.potluck.guests[1].travel_min == 33
    assert turn.stored == now
    assert before.potluck.guests[1].travel_min == 0


async def test_what_somebody_did_can_be_taken_back(store: Store) -> None:
    before = await stored(store)
    after = with_promise(before.potluck, Promise("d1", "2", "slaw", "side"))
    await change(store, before, after, actions=(NewAction("p1", "2", NOW, "promised", {"dish": "slaw"}),))

    action = await store.last_action("p1", "2")
    now = await store.potluck("p1")
    assert action is not None
    assert now is not None
    await change(store, now, apply_diff(now.potluck, action.changes), undone=(action.id,))

    again = await store.potluck("p1")
    assert again is not None
    assert again.potluck == before.potluck
    assert await store.last_action("p1", "2") is None
    kept = await store.action(action.id)
    assert kept is not None
    assert (kept.undone, kept.key, kept.facts) == (True, "promised", {"dish": "slaw"})


async def test_actions_are_told_in_the_order_they_happened(store: Store) -> None:
    await stored(store)
    for key in ("a", "b", "c"):
        await store.commit(Batch(NOW, actions=(NewAction("p1", "1", NOW, key),)))
    actions = await store.actions_since("p1")

    assert [a.key for a in actions] == ["a", "b", "c"]
    assert await store.actions_since("p1", actions[1].id) == actions[2:]


async def test_a_batch_with_a_lost_claim_writes_nothing(store: Store) -> None:
    await stored(store)

    with pytest.raises(Stale):
        await store.commit(
            Batch(NOW, chats=(ChatRecord(CHAT),), finished_reminders=(FinishedReminder("p1", "thaw", "somebody"),))
        )

    assert await store.chat(CHAT) is None


async def test_a_potluck_id_that_is_taken_is_refused(store: Store) -> None:
    await stored(store)

    with pytest.raises(Stale):
        await store.commit(Batch(NOW, new_potlucks=((potluck(), PotluckPlace("p1", CHAT)),)))


async def test_a_potluck_changed_into_itself_is_still_checked(store: Store) -> None:
    old = await stored(store)
    await change(store, old, with_guest(old.potluck, "1", travel_min=5))

    with pytest.raises(Stale):
        await change(store, old, old.potluck, reminders=(("p1", (Reminder("a"),)),))

    assert await store.reminders_of("p1") == ()


async def test_a_commit_that_forgets_a_guest_never_shows_them_again(store: Store) -> None:
    before = await stored(store)

    await change(store, before, with_guest(before.potluck, "1", travel_min=5), forget_people=(2,))

    now = await store.potluck("p1")
    assert now is not None
    assert [g.id for g in now.potluck.guests] == ["1", "3"]
    assert now.potluck.guests[0].travel_min == 5
