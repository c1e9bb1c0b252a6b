"""What becomes of one post when the platform says no, says nothing, or says wait."""

from datetime import timedelta
from typing import Any

import pytest

from bot.room.faults import Fault
from bot.storage import Batch, Post
from tests.courier.rig import Rig


async def post(rig: Rig, chat_id: int, text: str = "hello", method: str = "send", **more: Any) -> None:
    place = {k: more.pop(k) for k in ("thread_id",) if k in more}
    made = Post(chat_id, method, {"text": text, **more}, **place)
    rig.bot.courier.wake(await rig.store.commit(Batch(now=rig.clock.now(), posts=(made,))))


async def test_a_flood_answer_delays_only_its_chat(rig: Rig) -> None:
    rig.room.start(rig.ravi)
    await rig.settle()
    rig.room.faults.add(Fault("429", method="sendMessage", retry_after=20))
    began = rig.clock.now()
    await post(rig, rig.group)
    await rig.settle(waits=False)
    await post(rig, rig.ravi, "meanwhile")
    await rig.settle()

    assert rig.shown(rig.ravi, "message")[-1].at == began
    assert rig.shown(rig.group, "message")[-1].at >= began + timedelta(seconds=20)


async def test_posts_behind_a_delayed_one_keep_their_order(rig: Rig) -> None:
    rig.room.faults.add(Fault("429", method="sendMessage", retry_after=5))
    for n in range(5):
        await post(rig, rig.group, f"n{n}")
    await rig.settle()

    assert rig.texts(rig.group) == [f"n{n}" for n in range(5)]


async def test_a_server_error_is_tried_again_until_it_works(rig: Rig) -> None:
    rig.room.faults.add(Fault("500", method="sendMessage", count=3))
    await post(rig, rig.group)
    await rig.settle()

    assert rig.texts(rig.group) == ["hello"]
    assert not await rig.store.pending_posts()


@pytest.mark.parametrize("stored", [True, False])
async def test_a_send_whose_answer_was_lost_is_not_made_twice(rig: Rig, stored: bool) -> None:
    rig.room.faults.add(Fault("timeout", method="sendMessage", stored=stored))
    await post(rig, rig.group)
    await rig.settle()

    assert rig.texts(rig.group) == ["hello"] * stored
    assert await rig.given_up(rig.group) == ["courier-why-doubt"]


async def test_a_post_marked_so_is_rather_sent_twice_than_not_at_all(rig: Rig) -> None:
    rig.room.faults.add(Fault("timeout", method="sendMessage", stored=False))
    await post(rig, rig.group, again_in_doubt=True)
    await rig.settle()

    assert rig.texts(rig.group) == ["hello"]


async def test_text_that_is_not_html_is_sent_plain(rig: Rig) -> None:
    await post(rig, rig.group, "3 < 4 <b>bold</i> &amp; more")
    await rig.settle()

    assert rig.texts(rig.group) == ["3 < 4 bold & more"]


async def test_a_text_that_is_too_long_is_cut(rig: Rig) -> None:
    await post(rig, rig.group, "<b>" + "x" * 5000 + "</b>")
    await rig.settle()

    assert [len(t) for t in rig.texts(rig.group)] == [4096]


async def test_a_topic_that_is_gone_falls_back_to_the_group(rig: Rig) -> None:
    forum = rig.room.add_group("Forum", rig.ines, forum=True).id
    rig.room.add_bot(forum, rig.ines, quietly=True)
    await post(rig, forum, thread_id=4242)
    await rig.settle()

    assert rig.texts(forum) == ["hello"]


async def test_a_person_who_blocked_the_bot_is_remembered_as_out_of_reach(rig: Rig) -> None:
    await rig.add_potluck(can_dm=(rig.ravi,))
    rig.room.start(rig.ravi)
    rig.room.block(rig.ravi)
    await rig.settle()
    await post(rig, rig.ravi)
    await rig.settle()

    person = await rig.store.person(rig.ravi)
    assert person is not None
    assert not person.can_dm
    assert "courier-why-blocked" in await rig.given_up(rig.ravi)


async def test_one_lost_post_does_not_hold_up_the_next(rig: Rig) -> None:
    rig.room.faults.add(Fault("403", method="sendMessage"))
    await post(rig, rig.group, "lost")
    await post(rig, rig.group, "next")
    await rig.settle()

    assert rig.texts(rig.group) == ["next"]
    assert await rig.given_up(rig.group) == ["courier-why-gone"]


async def test_posts_follow_an_upgraded_group(rig: Rig) -> None:
    new = rig.room.upgrade_group(rig.group, rig.ines).id
    await post(rig, rig.group, "one")
    await post(rig, rig.group, "two")
    await rig.settle()

    assert rig.texts(new) == ["one", "two"]


async def test_an_edit_that_changes_nothing_is_fine(rig: Rig) -> None:
    await post(rig, rig.group, "same", about="thing")
    await rig.settle()
    message = rig.shown(rig.group, "message")[-1].message
    await post(rig, rig.group, "same", "edit", message_id=message)
    await rig.settle()

    assert not await rig.given_up(rig.group)


async def test_an_edit_of_a_message_that_is_gone_is_recorded_and_dropped(rig: Rig) -> None:
    await post(rig, rig.group, "new words", "edit", message_id=987654)
    await rig.settle()

    assert await rig.given_up(rig.group) == ["courier-why-lost"]


async def test_a_post_past_its_last_moment_is_not_sent(rig: Rig) -> None:
    await post(rig, rig.group, until=rig.clock.now().isoformat())
    await rig.settle()

    assert not rig.texts(rig.group)
    assert await rig.given_up(rig.group) == ["courier-why-late"]


async def test_pictures_are_uploaded(rig: Rig) -> None:
    import base64

    from bot.room.people import TINY_PNG

    await post(
        rig,
        rig.group,
        "the <b>table</b>",
        "photo",
        photo={"base64": base64.b64encode(TINY_PNG).decode(), "name": "table.png"},
    )
    await rig.settle()

    assert rig.texts(rig.group, "photo") == ["the table"]


async def test_a_sent_message_is_remembered_with_what_it_is_about(rig: Rig) -> None:
    await post(rig, rig.group, about="question:when")
    await rig.settle()

    message = rig.shown(rig.group, "message")[-1].message
    assert message is not None
    about = await rig.store.message_about(rig.group, message)
    assert about is not None
    assert about.kind == "question:when"


async def test_at_most_twenty_messages_a_minute_in_a_group(rig: Rig) -> None:
    for n in range(45):
        await post(rig, rig.group, f"n{n}")
    await rig.settle()

    times = [s.at for s in rig.shown(rig.group, "message")]
    assert rig.texts(rig.group) == [f"n{n}" for n in range(45)]
    assert all(sum(1 for t in times if s <= t < s + timedelta(minutes=1)) <= 20 for s in times)


async def test_a_post_a_dead_process_was_sending_is_in_doubt(rig: Rig) -> None:
    now = rig.clock.now()
    held = Post(
        rig.group, "send", {"text": "perhaps"}, state="sending", owner="dead", lease_until=now + timedelta(minutes=2)
    )
    behind = Post(rig.group, "send", {"text": "behind"})
    rig.bot.courier.wake(await rig.store.commit(Batch(now=now, posts=(held, behind))))
    await rig.bot.stop()
    await rig.make().start()
    await rig.settle()

    assert rig.texts(rig.group) == ["behind"]
    # A bot that polls is alone: it need not wait for a dead one's claim to run out.
    assert rig.clock.now() < now + timedelta(seconds=10)
    assert await rig.given_up(rig.group) == ["courier-why-doubt"]


async def test_an_edit_a_dead_process_was_making_is_made_again(rig: Rig) -> None:
    await post(rig, rig.group, "old")
    await rig.settle()
    message = rig.shown(rig.group, "message")[-1].message
    now = rig.clock.now()
    held = Post(
        rig.group,
        "edit",
        {"text": "new", "message_id": message},
        state="sending",
        owner="dead",
        lease_until=now + timedelta(minutes=2),
    )
    await rig.store.commit(Batch(now=now, posts=(held,)))
    await rig.bot.stop()
    await rig.make().start()
    await rig.settle()

    assert rig.texts(rig.group, "edit") == ["new"]


async def test_buttons_reach_the_chat(rig: Rig) -> None:
    rows = [[{"label": "Yes", "data": "y"}, {"label": "More", "url": "https://example.org/"}]]
    await post(rig, rig.group, buttons=rows)
    await rig.settle()

    assert rig.shown(rig.group, "message")[-1].buttons == ((("Yes", None), ("More", "https://example.org/")),)
