"""What must be sent waits in order, is taken by one, and is never lost."""

from __future__ import annotations

import asyncio

from bot.storage import Batch, Post, SentMessage, Store
from tests.storage.helpers import CHAT, NOW, later, potluck, stored

OTHER_CHAT = CHAT - 1
LEASE = later(minutes=2)


def post(text: str, chat_id: int = CHAT, **fields: object) -> Post:
    return Post(chat_id, "sendMessage", {"text": text}, **fields)  # type: ignore[arg-type]


async def put(store: Store, *posts: Post) -> tuple[Post, ...]:
    return (await store.commit(Batch(NOW, posts=posts))).posts


def texts(posts: tuple[Post, ...]) -> list[object]:
    return [p.payload["text"] for p in posts]


async def test_only_a_chats_oldest_post_can_be_claimed(store: Store) -> None:
    await put(store, post("a1"), post("a2"), post("b1", OTHER_CHAT), post("b2", OTHER_CHAT))

    assert texts(await store.claim_posts(NOW, "me", LEASE)) == ["a1", "b1"]
    assert await store.claim_posts(NOW, "you", LEASE) == ()


async def test_the_next_post_can_be_claimed_when_the_one_before_has_arrived(store: Store) -> None:
    first, _ = await put(store, post("a1"), post("a2"))
    await store.claim_posts(NOW, "me", LEASE)

    await store.mark_post_sent(first.id, SentMessage(CHAT, 31, "answer", "p1"))

    assert texts(await store.claim_posts(NOW, "me", LEASE)) == ["a2"]
    assert await store.message_about(CHAT, 31) == SentMessage(CHAT, 31, "answer", "p1")


async def test_a_post_that_must_wait_holds_up_those_behind_it(store: Store) -> None:
    first, _ = await put(store, post("a1"), post("a2"))
    await store.claim_posts(NOW, "me", LEASE)

    await store.requeue(first.id, later(seconds=30))

    assert await store.claim_posts(NOW, "me", LEASE) == ()
    assert texts(await store.claim_posts(later(seconds=30), "me", LEASE)) == ["a1"]


def reminding(text: str, key: str) -> Post:
    return post(text, potluck_id="p1", reminder_key=key)


async def test_what_guards_health_goes_before_answers_that_are_not_begun_and_behind_what_is(store: Store) -> None:
    await stored(store)
    first, _, _ = await put(store, post("a1"), post("a2"), post("a3"))
    assert texts(await store.claim_posts(NOW, "me", LEASE)) == ["a1"]
    await put(store, reminding("eat or chill it", "out-limit:p1"))

    assert await store.claim_posts(NOW, "you", LEASE) == ()  # a1 is on its way
    await store.mark_post_sent(first.id, None)
    assert "eat or chill it" in texts(await store.claim_posts(NOW, "you", LEASE))


async def test_other_reminders_stand_in_line_and_so_does_what_guards_health_behind_reminders(store: Store) -> None:
    await stored(store)
    await put(store, post("a1", OTHER_CHAT), post("a1"), post("a2"), reminding("start", "start"))
    await put(store, reminding("leave", "leave:1"), reminding("thaw it", "thaw:p1"))

    assert texts(await store.claim_posts(NOW, "me", LEASE)) == ["a1", "a1"]


async def test_where_a_chat_must_wait_what_guards_health_waits_too(store: Store) -> None:
    await stored(store)
    first, _ = await put(store, post("a1"), post("a2"))
    await store.claim_posts(NOW, "me", LEASE)
    await store.requeue(first.id, later(seconds=30))
    await put(store, reminding("eat or chill it", "out-limit:p1"))

    assert await store.claim_posts(NOW, "me", LEASE) == ()


async def test_a_post_whose_holder_died_while_it_was_sent_is_claimed_again_and_doubtful(store: Store) -> None:
    (sent,) = await put(store, post("a1"))
    (first,) = await store.claim_posts(NOW, "dead", LEASE)
    assert await store.begin_post(sent.id, "dead", NOW, LEASE) == 1

    assert await store.claim_posts(later(minutes=1), "me", later(minutes=9)) == ()
    (again,) = await store.claim_posts(LEASE, "me", later(minutes=9))

    assert (first.doubtful, first.tries) == (False, 0)
    assert (again.doubtful, again.tries, again.owner) == (True, 1, "me")


async def test_a_post_whose_holder_died_before_the_call_is_as_good_as_new(store: Store) -> None:
    await put(store, post("a1"))
    await store.claim_posts(NOW, "dead", LEASE)

    (again,) = await store.claim_posts(LEASE, "me", later(minutes=9))

    assert (again.doubtful, again.tries) == (False, 0)


async def test_a_doubtful_post_given_back_before_its_call_stays_doubtful(store: Store) -> None:
    (sent,) = await put(store, post("a1"))
    await store.claim_posts(NOW, "dead", LEASE)
    await store.begin_post(sent.id, "dead", NOW, LEASE)
    await store.claim_posts(LEASE, "me", later(minutes=9))

    assert await store.give_back(sent.id, "me", None)

    (again,) = await store.claim_posts(LEASE, "you", later(minutes=9))
    assert again.doubtful


async def test_a_call_is_begun_only_by_who_holds_the_post_and_only_once_a_claim(store: Store) -> None:
    (mine,) = await put(store, post("a"))
    await store.claim_posts(NOW, "me", LEASE)

    assert await store.begin_post(mine.id, "you", NOW, later(hours=1)) is None
    assert await store.begin_post(mine.id, "me", NOW, later(hours=1)) == 1
    assert await store.begin_post(mine.id, "me", NOW, later(hours=1)) is None
    assert await store.claim_posts(LEASE, "you", later(hours=2)) == ()


async def test_a_call_whose_beginning_was_perhaps_written_can_be_begun_again_by_its_holder_only(store: Store) -> None:
    (mine,) = await put(store, post("a"))
    await store.claim_posts(NOW, "me", LEASE)
    await store.begin_post(mine.id, "me", NOW, LEASE)

    assert await store.begin_post(mine.id, "you", NOW, LEASE, again=True) is None
    assert await store.begin_post(mine.id, "me", NOW, LEASE, again=True) == 2


async def test_a_call_that_was_surely_not_carried_out_does_not_count(store: Store) -> None:
    (mine,) = await put(store, post("a"))
    for made in (False, True, False):
        await store.claim_posts(NOW, "me", LEASE)
        await store.begin_post(mine.id, "me", NOW, LEASE)
        await store.requeue(mine.id, None, "me", made=made)

    (again,) = await store.claim_posts(NOW, "me", LEASE)
    assert again.tries == 1


async def test_chats_whose_oldest_post_is_a_reminder_can_be_passed_over(store: Store) -> None:
    await put(store, post("r1", reminder_key="bring:1"), post("a1"), post("b1", OTHER_CHAT))

    assert texts(await store.claim_posts(NOW, "me", LEASE, reminders=False)) == ["b1"]
    assert texts(await store.claim_posts(NOW, "me", LEASE)) == ["r1"]


async def test_a_lease_that_ran_out_binds_until_it_is_no_longer_believed(store: Store) -> None:
    await put(store, post("a1"))
    await store.claim_posts(NOW, "other", LEASE)
    now = later(minutes=5)

    assert await store.claim_posts(now, "me", later(hours=1), lapsed=later(minutes=1)) == ()
    assert texts(await store.claim_posts(now, "me", later(hours=1))) == ["a1"]


async def test_a_process_that_slept_can_neither_put_back_nor_give_up_what_another_took_over(store: Store) -> None:
    (mine,) = await put(store, post("a"))
    await store.claim_posts(NOW, "slept", LEASE)
    await store.claim_posts(LEASE, "me", later(hours=1))

    assert not await store.requeue(mine.id, NOW, owner="slept")
    assert not await store.give_up(mine.id, "blocked", owner="slept")
    assert [(p.state, p.owner) for p in await store.pending_posts()] == [("claimed", "me")]
    assert await store.requeue(mine.id, NOW, owner="me")


async def test_a_post_given_up_stays_on_record_and_lets_the_next_one_through(store: Store) -> None:
    first, _ = await put(store, post("a1"), post("a2"))

    await store.give_up(first.id, "blocked")

    assert [(p.payload["text"], p.why, p.state) for p in await store.given_up(CHAT)] == [("a1", "blocked", "given-up")]
    assert texts(await store.claim_posts(NOW, "me", LEASE)) == ["a2"]
    assert await store.queue_length() == {"given-up": 1, "claimed": 1}


async def test_two_processes_never_claim_the_same_post(store: Store, url: str) -> None:
    await put(store, *(post(str(n), CHAT - n) for n in range(40)))
    async with await Store.open(url) as other:
        taken = await asyncio.gather(
            *((store, other)[n % 2].claim_posts(NOW, str(n), LEASE, limit=7) for n in range(12))
        )

    claimed = [p.id for posts in taken for p in posts]
    assert len(claimed) == len(set(claimed)) == 40


async def test_waiting_posts_are_told_oldest_first_after_a_restart(store: Store, url: str) -> None:
    await put(store, post("a"), post("b"))
    async with await Store.open(url) as again:
        assert texts(await again.pending_posts()) == ["a", "b"]


async def dirty(store: Store, at: object = NOW) -> None:
    await store.commit(Batch(NOW, dirty_boards=(("p1", at),)))  # type: ignore[arg-type]


async def test_a_board_is_clean_once_it_shows_what_is_stored(store: Store) -> None:
    await stored(store)
    await dirty(store)
    (board,) = await store.dirty_boards()

    assert await store.board_sent("p1", 70, True, board.board_dirty_since)

    now = await store.potluck("p1")
    assert now is not None
    assert await store.dirty_boards() == ()
    assert (now.place.board_message_id, now.place.board_pinned, now.place.board_dirty_since) == (70, True, None)


async def test_a_board_dirtied_while_it_was_sent_stays_dirty_even_at_the_same_instant(store: Store) -> None:
    await stored(store)
    await dirty(store, NOW)
    (board,) = await store.dirty_boards()
    await dirty(store, NOW)

    await store.board_sent("p1", 70, False, board.board_dirty_since)

    (still,) = await store.dirty_boards()
    assert still.board_message_id == 70
    assert still.board_dirty_since is not None
    assert board.board_dirty_since is not None
    assert still.board_dirty_since > board.board_dirty_since


async def test_boards_wait_in_the_order_they_were_dirtied(store: Store) -> None:
    for name, minute in (("late", 2), ("early", 1)):
        await stored(store, potluck(name))
        await store.commit(Batch(NOW, dirty_boards=((name, later(minutes=minute)),)))

    assert [b.potluck_id for b in await store.dirty_boards()] == ["early", "late"]


async def test_of_several_processes_one_sends_a_board(store: Store, url: str) -> None:
    await stored(store)
    await dirty(store)
    async with await Store.open(url) as other:
        held = await asyncio.gather(
            *(s.claim_board("p1", str(n), NOW, LEASE) for n, s in enumerate((store, other, store)))
        )

    assert sorted(held, key=str) == [LEASE, LEASE, None]


async def test_a_board_sent_or_released_can_be_claimed_again_when_dirty(store: Store) -> None:
    await stored(store)
    await dirty(store)
    assert await store.claim_board("p1", "me", NOW, LEASE) is None
    assert not await store.release_board("p1", "you")
    assert await store.release_board("p1", "me")
    assert await store.claim_board("p1", "you", NOW, LEASE) is None
    (board,) = await store.dirty_boards()
    await dirty(store)

    await store.board_sent("p1", 70, True, board.board_dirty_since)

    assert await store.claim_board("p1", "me", NOW, LEASE) is None


async def test_a_board_that_is_not_dirty_can_not_be_claimed(store: Store) -> None:
    await stored(store)

    assert await store.claim_board("p1", "me", NOW, LEASE) == NOW


async def test_a_board_whose_sender_died_is_claimed_by_another(store: Store) -> None:
    await stored(store)
    await dirty(store)
    await store.claim_board("p1", "dead", NOW, LEASE)

    assert await store.claim_board("p1", "me", NOW, later(hours=1)) == LEASE
    assert await store.claim_board("p1", "me", LEASE, later(hours=1)) is None


async def test_a_board_that_was_deleted_is_posted_anew(store: Store) -> None:
    await stored(store)
    await store.board_sent("p1", 70, True, None)

    await store.commit(Batch(NOW, lost_boards=("p1",), dirty_boards=(("p1", NOW),)))

    (board,) = await store.dirty_boards()
    assert (board.board_message_id, board.board_pinned) == (None, False)


async def test_a_board_sent_to_a_chat_that_has_moved_is_not_believed(store: Store) -> None:
    await stored(store)
    await store.migrate_chat(CHAT, OTHER_CHAT)

    assert not await store.board_sent("p1", 70, True, None, chat_id=CHAT)


async def test_a_remembered_message_is_forgotten_only_when_old(store: Store) -> None:
    await store.remember_message(CHAT, 1, "ask", "p1", at=later(days=-400))
    await store.remember_message(CHAT, 2, "ask", "p1", at=later(days=-1))

    await store.prune(NOW)

    assert await store.message_about(CHAT, 1) is None
    assert await store.message_about(CHAT, 2) is not None


async def test_what_the_dead_held_is_free_at_once_and_only_a_begun_call_is_doubtful(store: Store) -> None:
    began, _ = await put(store, post("a1"), post("b1", OTHER_CHAT))
    await store.claim_posts(NOW, "one/dead", LEASE)
    await store.begin_post(began.id, "one/dead", NOW, LEASE)

    assert await store.claim_posts(later(seconds=1), "one/me", LEASE) == ()
    assert await store.release_claims(later(seconds=1), "one/me") == 2

    found = await store.claim_posts(later(seconds=1), "one/me", LEASE)
    assert {p.payload["text"]: p.doubtful for p in found} == {"a1": True, "b1": False}


async def test_a_replica_that_starts_frees_what_its_own_earlier_life_held_and_nobody_elses(store: Store) -> None:
    await put(store, post("a1"))
    await store.claim_posts(NOW, "one/dead", LEASE)
    await put(store, post("b1", OTHER_CHAT))
    await store.claim_posts(NOW, "one_/alive", LEASE)
    await put(store, post("c1", OTHER_CHAT - 1))
    await store.claim_posts(NOW, "one/me", LEASE)

    assert await store.release_claims(NOW, "one/me", "one/") == 1
    assert texts(await store.claim_posts(NOW, "one/me", LEASE)) == ["a1"]


async def test_a_holder_whose_claim_was_freed_while_it_lived_can_not_begin_its_call(store: Store) -> None:
    (first,) = await put(store, post("a1"))
    await store.claim_posts(NOW, "asleep", LEASE)

    await store.release_claims(NOW, "me")

    assert await store.begin_post(first.id, "asleep", NOW, LEASE) is None


async def test_a_board_the_dead_held_can_be_drawn_at_once(store: Store) -> None:
    await stored(store)
    await store.commit(Batch(NOW, dirty_boards=(("p1", NOW),)))
    assert await store.claim_board("p1", "dead", NOW, LEASE) is None
    assert await store.claim_board("p1", "me", NOW, LEASE) == LEASE

    await store.release_claims(NOW, "me")

    assert await store.claim_board("p1", "me", NOW, LEASE) is None
