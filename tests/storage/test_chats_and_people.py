"""Chats, people, places and questions: found again, changed side by side, deleted in time."""

from __future__ import annotations

import asyncio
from dataclasses import replace

from bot.storage import (
    Batch,
    ChatRecord,
    Dialog,
    PersonRecord,
    Post,
    SentMessage,
    Store,
)
from tests.storage.helpers import CHAT, NOW, later, potluck, stored


async def test_a_new_current_potluck_takes_the_place_of_the_old_one(store: Store) -> None:
    await stored(store, potluck("old"))
    await stored(store, potluck("new"))

    current = await store.current_potluck(CHAT)

    assert current is not None
    assert current.potluck.id == "new"
    assert {s.potluck.id: s.place.current for s in await store.potlucks_in(CHAT)} == {"old": False, "new": True}


async def test_a_topic_has_its_own_current_potluck_and_else_the_chats(store: Store) -> None:
    await stored(store, potluck("chat"))
    await stored(store, potluck("topic"), thread_id=12)

    found = [await store.current_potluck(CHAT, thread) for thread in (12, 13, None)]
    turns = [(await store.load_turn(CHAT, thread)).stored for thread in (12, 13, None)]

    assert [s.potluck.id for s in found if s] == ["topic", "chat", "chat"]
    assert turns == found


async def test_moving_a_potluck_leaves_its_board_to_the_courier(store: Store) -> None:
    before = await stored(store)
    await store.board_sent("p1", 55, True, None)

    await store.commit(Batch(NOW, places=(replace(before.place, thread_id=9),)))

    now = await store.potluck("p1")
    assert now is not None
    assert (now.place.thread_id, now.place.board_message_id, now.place.board_pinned) == (9, 55, True)


async def test_potlucks_of_a_person_are_those_they_are_guest_or_host_of(store: Store) -> None:
    await stored(store, potluck("guest", guests=3, host="9"))
    await stored(store, potluck("host", guests=0, host="2"))
    await stored(store, potluck("other", guests=1, host="9"))

    assert {s.potluck.id for s in await store.potlucks_of_person(2)} == {"guest", "host"}


async def test_a_question_is_replaced_by_the_next_and_cleared(store: Store) -> None:
    await store.commit(Batch(NOW, dialogs=(Dialog(CHAT, 7, "amount"), Dialog(CHAT, 8, "amount"))))
    await store.commit(Batch(NOW, dialogs=(Dialog(CHAT, 7, "which"),), dialogs_cleared=((CHAT, 8),)))

    assert await store.dialog(CHAT, 7) == Dialog(CHAT, 7, "which")
    assert await store.dialog(CHAT, 8) is None


async def test_pruning_keeps_what_the_platform_could_send_again(store: Store) -> None:
    await store.commit(Batch(later(days=-3), update_id=1))
    await store.commit(Batch(later(hours=-23), update_id=2))

    await store.prune(NOW)

    assert [await store.seen_update(n) for n in (1, 2)] == [False, True]


async def test_posts_given_up_are_kept_for_a_month_and_those_that_wait_for_ever(store: Store) -> None:
    lost, waits = Post(CHAT, "react", {"words": "Noted: vegetarian"}), Post(CHAT, "send", not_before=later(days=-90))
    result = await store.commit(Batch(NOW, posts=(lost, waits)))
    await store.give_up(result.posts[0].id, "courier-why-refused")

    for days, left in ((0, 1), (29, 1), (31, 0)):
        await store.prune(later(days=days))
        assert len(await store.given_up(CHAT)) == left
    assert len(await store.pending_posts()) == 1


async def test_old_potlucks_are_deleted_with_all_that_belongs_to_them(store: Store) -> None:
    await stored(store, potluck("old", guests=3, starts_at=later(days=-100)))
    await stored(store, potluck("new", guests=1))
    people = (PersonRecord(1, "Ana"), PersonRecord(2, "Bo"), PersonRecord(3, "Cy", can_dm=True, private_potluck="old"))
    await store.commit(
        Batch(
            NOW,
            people=people,
            posts=(Post(CHAT, "sendMessage", potluck_id="old"),),
            messages=(SentMessage(CHAT, 5, "board", "old"),),
        )
    )

    assert await store.delete_potlucks_before(later(days=-90)) == 1

    assert await store.people((1, 2, 3)) == {1: people[0], 3: replace(people[2], private_potluck=None)}
    assert await store.pending_posts() == ()
    assert await store.message_about(CHAT, 5) is None

    assert await store.potluck("old") is None
    assert {s.potluck.id for s in await store.potlucks_of_person(1)} == {"new"}


async def test_two_who_change_different_settings_of_a_chat_both_get_them(store: Store) -> None:
    read = ChatRecord(CHAT, title="Plot 9", settings={"a": 1, "b": 2, "gone": 3})
    await store.commit(Batch(NOW, chats=(read,)))
    one = replace(read, timezone="Europe/Berlin", settings={"a": 9, "b": 2})
    other = replace(read, units="metric", settings={"a": 1, "b": 2, "gone": 3, "c": 4})

    await store.commit(Batch(NOW, changed_chats=((read, one),)))
    await store.commit(Batch(NOW, changed_chats=((read, other),)))

    both = replace(read, timezone="Europe/Berlin", units="metric", settings={"a": 9, "b": 2, "c": 4})
    assert await store.chat(CHAT) == both


async def test_two_changes_of_a_person_at_once_are_both_kept(store: Store) -> None:
    read = PersonRecord(7, "Ana")
    await store.commit(Batch(NOW, people=(read,)))

    await asyncio.gather(
        store.commit(Batch(NOW, changed_people=((read, replace(read, can_dm=True)),))),
        store.commit(Batch(NOW, changed_people=((read, replace(read, muted=True)),))),
    )

    assert await store.person(7) == replace(read, can_dm=True, muted=True)


async def test_a_changed_chat_nobody_knew_is_written_whole(store: Store) -> None:
    wished = ChatRecord(CHAT, title="Plot 9")

    await store.commit(Batch(NOW, changed_chats=((ChatRecord(CHAT), wished),)))

    assert await store.chat(CHAT) == wished
