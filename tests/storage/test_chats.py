"""A group that becomes a supergroup takes everything with it."""

from __future__ import annotations

from bot.storage import Batch, ChatRecord, Dialog, Post, Recollection, SentMessage, Store
from tests.storage.helpers import CHAT, NOW, Reminder, later, stored

OLD, NEW = -512, CHAT


async def filled(store: Store) -> None:
    await stored(store, chat_id=OLD)
    await store.board_sent("p1", 70, True, None)
    await store.commit(
        Batch(
            NOW,
            chats=(ChatRecord(OLD, title="Plot 9", timezone="America/Chicago"),),
            dialogs=(Dialog(OLD, 7, "amount", message_id=71),),
            recollections=(
                Recollection(OLD, 7, "ill", {"message": 70}, NOW, later(days=1)),
                Recollection(OLD, 0, "asked", {"message": 71}, NOW, later(days=1)),
            ),
            posts=(
                Post(OLD, "send", {"text": "hi", "reply_to": 3}),
                Post(OLD, "edit", {"text": "hi", "message_id": 70}),
            ),
            messages=(SentMessage(OLD, 70, "board", "p1"),),
            reminders=(("p1", (Reminder("a"),)),),
        )
    )


async def everything(store: Store) -> object:
    return await store.fingerprint()


async def test_everything_is_found_under_the_new_id(store: Store) -> None:
    await filled(store)

    await store.migrate_chat(OLD, NEW)

    turn = await store.load_turn(NEW, None, 7)
    assert turn.chat == ChatRecord(NEW, "supergroup", "Plot 9", "America/Chicago")
    assert turn.dialog == Dialog(NEW, 7, "amount")
    assert turn.stored is not None
    assert (turn.stored.place.chat_id, turn.stored.place.board_message_id) == (NEW, None)
    assert await store.moved_to(OLD) == NEW
    assert await store.moved_from(NEW) == (OLD,)
    assert (await store.load_turn(OLD, None, 7)).stored is None


async def test_waiting_messages_go_to_the_new_chat_without_pointing_at_old_ones(store: Store) -> None:
    await filled(store)

    await store.migrate_chat(OLD, NEW)

    assert [(p.chat_id, p.method, p.payload) for p in await store.pending_posts()] == [
        (NEW, "send", {"text": "hi"})
    ]


async def test_moving_twice_changes_nothing_more(store: Store) -> None:
    await filled(store)
    await store.migrate_chat(OLD, NEW)
    once = await everything(store)

    await store.migrate_chat(OLD, NEW)

    assert await everything(store) == once


async def test_a_new_chat_known_before_the_move_gets_the_old_ones_settings(store: Store) -> None:
    await filled(store)
    await store.commit(Batch(NOW, chats=(ChatRecord(NEW, "supergroup"),), dialogs=(Dialog(NEW, 7, "newer"),)))

    await store.migrate_chat(OLD, NEW)

    turn = await store.load_turn(NEW, None, 7)
    assert turn.chat is not None
    assert turn.chat.timezone == "America/Chicago"
    assert turn.dialog == Dialog(NEW, 7, "newer")


async def test_what_was_said_in_the_old_group_is_known_in_the_new_one_where_nothing_newer_is(store: Store) -> None:
    await filled(store)
    newer = Recollection(NEW, 0, "asked", {"message": 3}, later(minutes=1), later(days=1))
    await store.commit(Batch(NOW, recollections=(newer,)))

    await store.migrate_chat(OLD, NEW)

    moved = Recollection(NEW, 7, "ill", {"message": 70}, NOW, later(days=1))
    assert await store.recollections(NEW, 7, NOW) == (newer, moved)
    assert await store.recollections(OLD, 7, NOW) == ()
