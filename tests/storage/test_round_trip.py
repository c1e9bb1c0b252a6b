"""What is stored comes back exactly, on both databases."""

from __future__ import annotations

import json
from dataclasses import dataclass, fields, replace
from datetime import UTC, datetime
from decimal import Decimal
from itertools import count

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot.storage import Batch, ChatRecord, Dialog, PersonRecord, PotluckPlace, Store
from bot.storage.codec import decode, encode
from bot.storage.parts import More
from planning.potluck import Guest, Money, Payment, Potluck
from tests import strategies as given_
from tests.storage.helpers import CHAT, NOW, potluck, stored

several = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
_number = count()


async def read_anew(store: Store, potluck_id: str) -> Potluck:
    store._cache.drop(potluck_id)
    found = await store.potluck(potluck_id)
    assert found is not None
    return found.potluck


@several
@given(data=st.data())
async def test_any_potluck_comes_back_as_it_was(store: Store, data: st.DataObject) -> None:
    p = data.draw(given_.potlucks(f"p{next(_number)}"))

    await store.commit(Batch(NOW, new_potlucks=((p, PotluckPlace(p.id, CHAT)),)))

    assert await read_anew(store, p.id) == p


@several
@given(data=st.data())
async def test_any_change_comes_back_as_it_was_made(store: Store, data: st.DataObject) -> None:
    before, after = data.draw(given_.pairs())
    name = f"c{next(_number)}"
    before, after = (decode(Potluck, encode(p) | {"id": name}) for p in (before, after))
    await store.commit(Batch(NOW, new_potlucks=((before, PotluckPlace(name, CHAT)),)))
    seen = await store.potluck(name)
    assert seen is not None

    await store.commit(Batch(NOW, changed=((seen, after),)))

    assert await read_anew(store, name) == after


@several
@given(given_.potlucks())
def test_any_potluck_survives_the_way_through_json(p: Potluck) -> None:
    assert decode(Potluck, encode(p)) == p


async def test_money_keeps_its_last_zero(store: Store) -> None:
    await stored(store, potluck(payments=(Payment("1", Money(Decimal("12.50")), "ice"),)))

    p = await read_anew(store, "p1")

    assert str(p.payments[0].money.amount) == "12.50"


async def test_a_time_keeps_its_microsecond(store: Store) -> None:
    at = datetime(2027, 3, 14, 7, 59, 59, 999_999, tzinfo=UTC)
    await stored(store, potluck(answer_by=at))

    assert (await read_anew(store, "p1")).answer_by == at


async def test_ids_as_large_as_the_platforms_are_kept(store: Store) -> None:
    chat_id, person_id = -1_009_999_999_999_999, 2**52 - 1
    await store.commit(Batch(NOW, chats=(ChatRecord(chat_id),), people=(PersonRecord(person_id, "Ana"),)))

    assert (await store.load_turn(chat_id, None, person_id)).chat == ChatRecord(chat_id)


async def test_characters_no_database_holds_are_left_out_instead_of_failing(store: Store) -> None:
    await stored(store, potluck(title="a\x00b\ud800c"))

    assert (await read_anew(store, "p1")).title == "abc"


async def test_two_elements_that_change_places_are_kept_in_their_new_order(store: Store) -> None:
    before = await stored(store, potluck(guests=3))
    a, b, c = before.potluck.guests
    await store.commit(Batch(NOW, changed=((before, replace(before.potluck, guests=(c, b, a))),)))

    assert [g.id for g in (await read_anew(store, "p1")).guests] == ["3", "2", "1"]


async def test_chats_people_and_dialogs_come_back_as_they_were(store: Store) -> None:
    chat = ChatRecord(
        CHAT,
        "supergroup",
        "Plot 9",
        "America/Chicago",
        "metric",
        "de",
        "22:30",
        "06:15",
        ("thaw",),
        True,
        False,
        {"a": [1]},
    )
    person = PersonRecord(7, "Inés", "ines", "es", True, True, "p1", "us")
    dialog = Dialog(CHAT, 7, "amount", {"dish": "slaw", "n": [1, 2]}, 55, NOW)

    await store.commit(Batch(NOW, chats=(chat,), people=(person,), dialogs=(dialog,)))
    turn = await store.load_turn(CHAT, None, 7)

    assert (turn.chat, turn.person, turn.dialog) == (chat, person, dialog)
    assert (await store.chat(CHAT), await store.person(7), await store.dialog(CHAT, 7)) == (chat, person, dialog)


@dataclass(frozen=True)
class GuestOfTomorrow(Guest):
    seat: tuple[int, ...] = ()


def test_a_field_without_a_column_travels_in_more() -> None:
    more = More(GuestOfTomorrow, {f.name for f in fields(Guest)})

    sent = more.out(GuestOfTomorrow("1", "Ana", seat=(4, 2)))

    assert json.loads(json.dumps(sent)) == {"seat": [4, 2]}
    assert more.back(sent) == {"seat": (4, 2)}
