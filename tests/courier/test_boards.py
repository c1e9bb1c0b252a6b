"""The board: one message, edited in place, rarely enough, and always right in the end."""

from datetime import timedelta
from itertools import pairwise

from bot.courier.board import GAP_S
from bot.courier.limiter import GROUP_PER_MINUTE
from bot.room.faults import Fault
from tests.courier.rig import Rig


async def board(rig: Rig) -> tuple[int, int | None]:
    stored = await rig.store.potluck("p1")
    assert stored is not None
    return stored.place.chat_id, stored.place.board_message_id


async def test_a_new_board_is_posted_and_pinned(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()

    assert rig.texts(rig.group) == ["Board 1: Inés, Ravi"]
    assert len(rig.shown(rig.group, "pin")) == 1
    stored = await rig.store.potluck("p1")
    assert stored is not None
    assert stored.place.board_pinned
    assert stored.place.board_dirty_since is None


async def test_two_hundred_answers_in_ten_seconds_make_few_edits(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()
    for n in range(200):
        rig.room.say((rig.ravi, rig.ines)[n % 2], rig.group, f"!g{n}")
        if n % 20 == 19:
            await rig.settle(waits=False)
            rig.clock.set(rig.clock.now() + timedelta(seconds=1))
    await rig.settle()

    calls = [s.at for s in rig.shown(rig.group, "message", "edit")]
    assert len(rig.texts(rig.group, "edit")) <= 6
    assert rig.texts(rig.group, "edit")[-1].endswith("g199")
    assert all(
        sum(1 for t in calls if start <= t < start + timedelta(minutes=1)) <= GROUP_PER_MINUTE for start in calls
    )


async def test_edits_of_one_board_keep_their_distance(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()
    for n in range(8):
        rig.room.say(rig.ravi, rig.group, f"!g{n}")
        await rig.settle(waits=False)
        rig.clock.set(rig.clock.now() + timedelta(seconds=1))
    await rig.settle()

    times = [s.at for s in rig.shown(rig.group, "message", "edit")]
    assert all(b - a >= timedelta(seconds=GAP_S) for a, b in pairwise(times))


async def test_the_first_edit_after_a_quiet_time_leaves_at_once(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.pass_s(60)
    before = rig.clock.now()
    rig.room.say(rig.ravi, rig.group, "!late")
    await rig.settle(waits=False)

    assert rig.shown(rig.group, "edit")[-1].at == before


async def test_a_deleted_board_is_posted_anew_and_pinned(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()
    _, first = await board(rig)
    assert first is not None
    rig.room.remove_message(rig.room.chats[rig.group], first, rig.ines)
    rig.room.say(rig.ravi, rig.group, "!new")
    await rig.settle()

    _, second = await board(rig)
    assert second != first
    assert len(rig.shown(rig.group, "pin")) == 2


async def test_the_board_follows_an_upgraded_group(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()
    new = rig.room.upgrade_group(rig.group, rig.ines).id
    await rig.change("after the upgrade")
    await rig.settle()

    assert (await board(rig))[0] == new
    assert rig.texts(new)[-1].endswith("after the upgrade")


async def test_a_board_that_may_have_been_posted_is_posted_rather_twice_than_not_at_all(rig: Rig) -> None:
    rig.room.faults.add(Fault("timeout", method="sendMessage", stored=False))
    await rig.add_potluck()
    await rig.settle()

    assert (await board(rig))[1] is not None
    assert rig.texts(rig.group) == ["Board 1: Inés, Ravi"]


async def test_an_edit_whose_answer_was_lost_is_made_again(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()
    rig.room.faults.add(Fault("timeout", method="editMessageText", stored=True))
    rig.room.say(rig.ravi, rig.group, "!once")
    await rig.settle()

    stored = await rig.store.potluck("p1")
    assert stored is not None
    assert stored.place.board_dirty_since is None
    assert rig.texts(rig.group, "edit")[-1].endswith("once")


async def test_a_flood_answer_to_an_edit_delays_the_board_and_loses_nothing(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.pass_s(30)
    rig.room.faults.add(Fault("429", method="editMessageText", retry_after=7))
    began = rig.clock.now()
    rig.room.say(rig.ravi, rig.group, "!patient")
    await rig.settle()

    assert rig.shown(rig.group, "edit")[-1].at >= began + timedelta(seconds=7)
    assert rig.texts(rig.group, "edit")[-1].endswith("patient")


async def test_a_group_that_threw_the_bot_out_does_not_keep_it_busy(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()
    rig.room.remove_bot(rig.group, rig.ines)
    await rig.change("nobody sees this")
    await rig.settle()

    assert not await rig.store.dirty_boards()
    assert rig.bot.courier.quiet()


async def test_a_refused_pin_is_said_once(rig: Rig) -> None:
    no = "not enough rights to manage pinned messages in the chat"
    rig.room.faults.add(Fault("400", method="pinChatMessage", count=2, description=no))
    await rig.add_potluck()
    await rig.settle()
    await rig.change("again", lost=True)
    await rig.settle()

    assert rig.texts(rig.group).count("notice courier-pin-refused") == 1


async def test_what_was_dirty_when_the_process_died_is_drawn_by_the_next(rig: Rig) -> None:
    await rig.add_potluck()
    await rig.settle()
    await rig.bot.kill()
    await rig.change("while dead", wake=False)
    await rig.make().start()
    await rig.settle()

    assert rig.texts(rig.group, "edit")[-1].endswith("while dead")
