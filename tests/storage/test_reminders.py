"""Reminders follow the plan and are each sent by one."""

from __future__ import annotations

import asyncio
from collections.abc import Sequence

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot.storage import Batch, FinishedReminder, Post, Stale, Store
from planning.potluck import Say
from tests.storage.helpers import CHAT, NOW, Reminder, later, potluck, stored, with_guest

LEASE = later(minutes=5)


async def plan(store: Store, *reminders: Reminder) -> None:
    await store.commit(Batch(NOW, reminders=(("p1", reminders),)))


async def states(store: Store) -> dict[str, str]:
    return {r.key: r.state for r in await store.reminders_of("p1")}


async def claim(store: Store, owner: str = "me", at: object = NOW, limit: int = 50) -> Sequence[str]:
    return [r.key for r in await store.claim_reminders(at, owner, LEASE, limit)]  # type: ignore[arg-type]


@pytest.fixture
async def plain(store: Store) -> Store:
    await stored(store)
    return store


async def test_a_reminder_comes_back_as_it_was_planned(plain: Store) -> None:
    wanted = Reminder(
        "thaw:d1", later(days=2), "7", "thaw", later(days=3), Say("thaw", {"dish": "turkey", "hours": 24.5})
    )

    await plan(plain, wanted)

    (row,) = await plain.reminders_of("p1")
    assert (row.key, row.due_at, row.to, row.kind, row.expires_at, row.about) == tuple(vars(wanted).values())


async def test_reminders_due_are_claimed_earliest_first_and_only_once(plain: Store) -> None:
    await plan(plain, Reminder("b", later(hours=-1)), Reminder("a", later(hours=-2)), Reminder("c", later(hours=1)))

    assert await claim(plain, "me") == ["a", "b"]
    assert await claim(plain, "you") == []


async def test_a_moved_reminder_is_due_at_its_new_time_only(plain: Store) -> None:
    await plan(plain, Reminder("a", NOW))
    await plan(plain, Reminder("a", later(days=1)))

    assert await claim(plain) == []
    assert await plain.next_due(NOW) == later(days=1)
    assert await claim(plain, at=later(days=1)) == ["a"]


async def test_a_reminder_the_plan_no_longer_has_is_withdrawn_and_may_come_back(plain: Store) -> None:
    await plan(plain, Reminder("a"))
    await plan(plain)
    assert await states(plain) == {"a": "withdrawn"}
    assert await claim(plain) == []

    await plan(plain, Reminder("a"))

    assert await claim(plain) == ["a"]


async def test_a_sent_reminder_never_comes_back(plain: Store) -> None:
    await plan(plain, Reminder("a"))
    await claim(plain)
    assert await plain.finish_reminder("p1", "a", "me", "sent", 91)

    await plan(plain)
    await plan(plain, Reminder("a", later(days=1)))

    (row,) = await plain.reminders_of("p1")
    assert (row.state, row.message_id, row.due_at) == ("sent", 91, NOW)
    assert await claim(plain, at=later(days=2)) == []


async def test_a_claim_that_ran_out_goes_to_another_who_is_told_of_the_doubt(plain: Store) -> None:
    await plan(plain, Reminder("a"))
    await claim(plain, "frozen")

    (row,) = await plain.claim_reminders(LEASE, "me", later(hours=1), 10)

    assert (row.doubtful, row.tries) == (True, 2)
    assert not await plain.finish_reminder("p1", "a", "frozen", "sent")
    assert await plain.finish_reminder("p1", "a", "me", "skipped")
    assert await states(plain) == {"a": "skipped"}


async def test_an_owner_that_claimed_twice_finishes_only_its_second_claim(plain: Store) -> None:
    await plan(plain, Reminder("a"))
    (first,) = await plain.claim_reminders(NOW, "me", LEASE, 10)
    (second,) = await plain.claim_reminders(LEASE, "me", later(hours=1), 10)

    assert not await plain.finish_reminder("p1", "a", "me", "sent", tries=first.tries)
    assert await plain.finish_reminder("p1", "a", "me", "sent", tries=second.tries)


async def test_a_reminder_being_sent_is_not_moved_under_the_senders_hands(plain: Store) -> None:
    await plan(plain, Reminder("a"))
    await claim(plain)

    await plan(plain, Reminder("a", later(days=1)))
    await plan(plain)

    assert await states(plain) == {"a": "sending"}


async def test_a_reminder_put_back_is_due_later_and_not_doubtful(plain: Store) -> None:
    await plan(plain, Reminder("a"))
    await claim(plain)

    assert await plain.requeue_reminder("p1", "a", "me", later(seconds=30))

    assert await plain.next_due(NOW) == later(seconds=30)
    (row,) = await plain.claim_reminders(later(seconds=30), "me", LEASE, 1)
    assert not row.doubtful


async def test_a_claim_can_be_held_longer_by_its_owner_only(plain: Store) -> None:
    await plan(plain, Reminder("a"))
    await claim(plain)

    assert not await plain.renew_reminder("p1", "a", "you", later(hours=2))
    assert await plain.renew_reminder("p1", "a", "me", later(hours=2))
    assert await claim(plain, "you", LEASE) == []


async def test_the_next_due_time_counts_claims_that_will_run_out(plain: Store) -> None:
    assert await plain.next_due(NOW) is None
    await plan(plain, Reminder("a"), Reminder("b", later(days=1)))
    await claim(plain)

    assert await plain.next_due(NOW) == LEASE


async def test_a_claim_ends_in_the_same_transaction_as_the_post_it_became(plain: Store) -> None:
    await plan(plain, Reminder("a"))
    await claim(plain)
    done = (FinishedReminder("p1", "a", "me"),)

    await plain.commit(Batch(NOW, finished_reminders=done, posts=(Post(CHAT, "sendMessage", reminder_key="a"),)))
    with pytest.raises(Stale):
        await plain.commit(Batch(NOW, finished_reminders=done, posts=(Post(CHAT, "sendMessage", reminder_key="a"),)))

    assert [p.reminder_key for p in await plain.pending_posts()] == ["a"]


async def test_replacing_reminders_makes_turns_begun_before_stale(plain: Store) -> None:
    seen = await plain.potluck("p1")
    assert seen is not None
    await plan(plain, Reminder("a"))

    with pytest.raises(Stale):
        await plain.commit(Batch(NOW, changed=((seen, with_guest(seen.potluck, "1", travel_min=5)),)))


async def test_an_unchanged_set_is_not_written_again_even_by_another_process(plain: Store, url: str) -> None:
    await plan(plain, Reminder("a"), Reminder("b", later(days=1)))
    before = await plain.reminders_of("p1")
    async with await Store.open(url) as other:
        await plan(other, Reminder("a"), Reminder("b", later(days=1)))
        await plan(other, Reminder("a"), Reminder("b", later(days=2)))
    await plan(plain, Reminder("a"), Reminder("b", later(days=1)))

    assert await plain.reminders_of("p1") == before


async def test_two_processes_never_claim_the_same_reminder(plain: Store, url: str) -> None:
    await plan(plain, *(Reminder(f"k{n:02}") for n in range(40)))
    async with await Store.open(url) as other:
        taken = await asyncio.gather(*(claim((plain, other)[n % 2], str(n), limit=7) for n in range(12)))

    claimed = [k for keys in taken for k in keys]
    assert len(claimed) == len(set(claimed)) == 40


async def test_reminders_of_a_potluck_that_is_gone_are_refused(store: Store) -> None:
    with pytest.raises(Stale):
        await plan(store, Reminder("a"))


sets = st.dictionaries(st.sampled_from("abcdef"), st.integers(-3, 3), max_size=6)


@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(history=st.lists(st.tuples(sets, st.booleans()), min_size=1, max_size=6))
async def test_whatever_the_plans_were_the_last_one_stands_and_nothing_is_sent_twice(
    store: Store, history: list[tuple[dict[str, int], bool]]
) -> None:
    if await store.potluck("p1") is not None:
        await store.delete_potlucks_before(later(days=1000))
    await stored(store, potluck())
    sent: list[str] = []
    wanted: dict[str, int] = {}
    for wanted, send in history:
        await plan(store, *(Reminder(k, later(hours=h)) for k, h in wanted.items()))
        if send:
            for key in await claim(store):
                assert await store.finish_reminder("p1", key, "me", "sent")
                sent.append(key)

    rows = await store.reminders_of("p1")

    assert len(sent) == len(set(sent))
    assert {r.key for r in rows if r.state == "sent"} == set(sent)
    assert {r.key: r.due_at for r in rows if r.state == "pending"} == {
        k: later(hours=h) for k, h in wanted.items() if k not in sent
    }
