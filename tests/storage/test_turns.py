"""What turns begin with, read together."""

from __future__ import annotations

import asyncio
from dataclasses import replace

from sqlalchemy import text

from bot.storage import Batch, ChatRecord, Dialog, PersonRecord, Store
from tests.storage.helpers import NOW, later, potluck, stored


async def test_turns_that_begin_in_the_same_moment_each_get_their_own(store: Store) -> None:
    for n in range(1, 6):
        await stored(store, potluck(f"p{n}"), -n)
    await store.commit(
        Batch(
            NOW,
            chats=tuple(ChatRecord(-n, title=f"Plot {n}") for n in range(1, 6)),
            people=tuple(PersonRecord(n, name=f"Guest {n}") for n in range(1, 6)),
            dialogs=(Dialog(-3, 3, "when", {"n": 3}, expires_at=later(days=1)),),
        )
    )

    turns = await asyncio.gather(*(store.load_turn(-n, None, n) for n in (*range(1, 6), 9)))

    assert [t.chat and t.chat.title for t in turns] == [*(f"Plot {n}" for n in range(1, 6)), None]
    assert [t.person and t.person.name for t in turns] == [*(f"Guest {n}" for n in range(1, 6)), None]
    assert [t.stored and t.stored.potluck.id for t in turns] == [*(f"p{n}" for n in range(1, 6)), None]
    assert [t.dialog and t.dialog.data["n"] for t in turns] == [None, None, 3, None, None, None]


async def test_a_turn_sees_what_was_committed_before_it_began(store: Store) -> None:
    first = await stored(store)

    async def told(name: str) -> str | None:
        await store.commit(Batch(NOW, people=(PersonRecord(7, name=name),)))
        found = (await store.load_turn(first.place.chat_id, None, 7)).person
        return found and found.name

    names = [f"Inés the {n}th" for n in range(20)]
    assert [await told(name) for name in names] == names


async def test_the_topics_own_potluck_comes_before_the_groups_among_turns_read_together(store: Store) -> None:
    await stored(store, potluck("whole"))
    await stored(store, potluck("food"), thread_id=5)

    chat = (await store.potlucks_in(-1009000000001))[0].place.chat_id
    turns = await asyncio.gather(*(store.load_turn(chat, thread, 1) for thread in (None, 5, 6, 5, None)))

    assert [t.stored and t.stored.potluck.id for t in turns] == ["whole", "food", "whole", "food", "whole"]


async def test_a_number_no_database_holds_spoils_nobody_elses_turn(empty_postgres: str) -> None:
    async with await Store.open(empty_postgres) as store:
        await stored(store)
        good = [store.load_turn(-1009000000001, None, n) for n in range(5)]

        bad, *found = await asyncio.gather(store.load_turn(10**30, None, 1), *good, return_exceptions=True)

    assert isinstance(bad, Exception)
    assert [not isinstance(t, BaseException) and t.stored is not None for t in found] == [True] * 5


async def test_a_server_that_would_answer_before_it_has_written_is_told_to_wait(empty_postgres: str) -> None:
    lazy = text("ALTER DATABASE " + empty_postgres.split("/")[-1].split("?")[0] + " SET synchronous_commit = off")
    async with await Store.open(empty_postgres) as store:
        await store._runner.glance(lambda conn: conn.execute(lazy) and None)

    async with await Store.open(empty_postgres) as store:
        found = await store._runner.glance(lambda conn: conn.execute(text("SHOW synchronous_commit")).scalar())

    assert found == "on"


async def test_a_table_that_was_changed_under_a_prepared_statement_is_read_all_the_same(empty_postgres: str) -> None:
    async with await Store.open(empty_postgres) as store:
        before = await stored(store, replace(potluck(), title="Harvest supper"))
        for _ in range(3):
            await store.potluck("p1")
        widen = text("ALTER TABLE place ALTER COLUMN thread_id TYPE numeric")
        await store._runner.glance(lambda conn: conn.execute(widen) and None)
        narrow = text("ALTER TABLE place ALTER COLUMN thread_id TYPE bigint")
        changed = await store.load_turn(before.place.chat_id, None, 1)
        await store._runner.glance(lambda conn: conn.execute(narrow) and None)

        again = await store.load_turn(before.place.chat_id, None, 1)

    assert changed.stored == again.stored == before
