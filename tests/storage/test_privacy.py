"""Somebody who wants to be forgotten is nowhere any more; the others lose nothing."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal

from sqlalchemy import select
from sqlalchemy.engine import Connection

from bot.storage import Batch, ChatRecord, Dialog, NewAction, PersonRecord, Post, Recollection, Store, schema
from planning.kitchen.result import Conflict, Fix, Timeline
from planning.potluck import (
    Bar,
    Declined,
    Guest,
    Money,
    Need,
    PastAnswer,
    Payment,
    Potluck,
    Promise,
    Say,
    Topping,
)
from tests.storage.helpers import CHAT, NOW, Reminder, later, potluck, stored

ID, NAME = 700123, "Zebedee"
SAID = Say("kitchen-late", {"dishes": [f"{NAME}'s pie"]})
NAMED = Conflict(("d1",), "late", SAID, Fix("ask", 0, None, SAID))


def everywhere() -> Potluck:
    me = str(ID)
    p = potluck(cohosts=(me, "2"), host=me)
    return replace(
        p,
        guests=(
            *p.guests,
            Guest(me, NAME, needs=(Need("peanut"),), username="zeb_username"),
            Guest("n1", "Child", added_by=me),
        ),
        promises=(Promise("d1", me, "slaw", "side"), Promise("d2", "1", "pie", "dessert", sharers=(me, "2"))),
        bar=Bar("baked potato", (Topping("chives", me), Topping("butter", "2"))),
        payments=(Payment(me, Money(Decimal(5))), Payment("2", Money(Decimal(6)))),
        history=(PastAnswer("2027-05-01", me, "side", "yes", True), PastAnswer("2027-05-01", "2", None, "yes", False)),
        declined=(Declined(me, "side"), Declined("2", "side")),
        previous={"asks": [{"guest": me, "dish": "x"}, {"guest": "2"}], "steps": [{"text": f"for {NAME}"}]},
    )


async def filled(store: Store) -> None:
    await stored(store, everywhere())
    await store.commit(
        Batch(
            NOW,
            chats=(ChatRecord(ID, "private", NAME),),
            people=(PersonRecord(ID, NAME, "zeb_username"), PersonRecord(2, "Mei")),
            actions=(
                NewAction("p1", str(ID), NOW, "answered", {}),
                NewAction("p1", "2", NOW, "asked", {"name": NAME}),
                NewAction("p1", "2", NOW, "answered", {"name": "Mei"}),
            ),
            dialogs=(Dialog(CHAT, ID, "amount"), Dialog(CHAT, 2, "whose", {"name": NAME}), Dialog(CHAT, 1, "amount")),
            plans=(("p1", "mark", Timeline("impossible", 0, 0, conflicts=(NAMED,))),),
            recollections=(
                Recollection(CHAT, ID, "ill", {"message": 7}, NOW, later(days=1), potluck_id="p1"),
                Recollection(ID, 2, "spoken", {"message": 8}, NOW, later(days=1)),
                Recollection(CHAT, 0, "missed", {"owner": "7", "name": NAME}, NOW, later(days=1), "7 tray"),
                Recollection(CHAT, 0, "missed", {"owner": str(ID), "name": "Zeb"}, NOW, later(days=1), f"{ID} pot"),
                Recollection(CHAT, 0, "missed", {"owner": "2", "name": "Mei"}, NOW, later(days=1), "2 bowl"),
            ),
            posts=(
                Post(ID, "sendMessage", {"text": "hello"}),
                Post(CHAT, "sendMessage", {"text": f"{NAME} brings slaw"}),
                Post(CHAT, "sendMessage", {"text": "Mei brings pie"}),
                Post(CHAT, "sendMessage", {"text": f"{NAME}andra brings tea"}),
            ),
            reminders=(
                (
                    "p1",
                    (
                        Reminder("mine", later(days=1), str(ID)),
                        Reminder("about", later(days=1), "group", about=Say("bring", {"name": NAME})),
                        Reminder("other", later(days=1), "2"),
                    ),
                ),
            ),
        )
    )


async def test_neither_id_nor_name_is_left_anywhere(store: Store) -> None:
    await filled(store)

    await store.commit(Batch(NOW, forget_people=(ID,)))

    def all_rows(conn: Connection) -> str:
        return repr([tuple(row) for t in schema.metadata.sorted_tables for row in conn.execute(select(t))])

    left = await store._runner.read(all_rows)
    words = set(re.findall(r"\w+", left))
    assert {str(ID), NAME, "zeb_username"} & words == set()


async def test_what_belongs_to_others_stays(store: Store) -> None:
    await filled(store)

    await store.commit(Batch(NOW, forget_people=(ID,)))

    now = await store.potluck("p1")
    assert now is not None
    p = now.potluck
    assert [g.id for g in p.guests] == ["1", "2", "3", "n1"]
    assert [(d.id, d.sharers) for d in p.promises] == [("d2", ("2",))]
    assert p.bar is not None
    assert [(t.name, t.guest) for t in p.bar.toppings] == [("chives", None), ("butter", "2")]
    assert [len(x) for x in (p.payments, p.history, p.declined)] == [1, 1, 1]
    assert p.previous == {"asks": [{"guest": "2"}], "steps": []}
    assert [a.facts for a in await store.actions_since("p1")] == [{"name": "Mei"}]
    assert [x.payload["text"] for x in await store.pending_posts()] == ["Mei brings pie", f"{NAME}andra brings tea"]
    assert [r.key for r in await store.reminders_of("p1")] == ["other"]
    assert await store.dialog(CHAT, 1) is not None
    assert [r.about for r in await store.recollections(CHAT, ID, NOW)] == ["2 bowl"]
    assert await store.person(2) is not None


async def test_forgetting_raises_the_revision_so_that_nobody_writes_the_name_back(store: Store) -> None:
    await filled(store)
    before = await store.potluck("p1")
    assert before is not None

    done = await store.commit(Batch(NOW, forget_people=(ID,)))

    assert done.revisions == {"p1": before.revision + 1}


async def test_forgetting_somebody_unknown_changes_nothing(store: Store) -> None:
    await filled(store)
    before = await store.fingerprint()

    await store.commit(Batch(NOW, forget_people=(424242,)))

    assert await store.fingerprint() == before
