"""Taking updates: in order within a chat, side by side between chats, each once, none lost."""

import asyncio

import telegram

from tests.courier.rig import Rig


async def test_what_is_said_comes_back_in_order(rig: Rig) -> None:
    for n in range(10):
        rig.room.say(rig.ravi, rig.group, f"line {n}")

    await rig.settle()

    assert rig.texts(rig.group) == [f"line {n}" for n in range(10)]


async def test_one_chats_slow_update_holds_back_only_that_chat(rig: Rig) -> None:
    other = rig.room.add_group("Plot 10", rig.ravi).id
    rig.room.add_bot(other, rig.ravi, quietly=True)
    go_on = asyncio.Event()

    async def slow(update: telegram.Update) -> None:
        if update.effective_message.text == "slow":
            await go_on.wait()

    rig.during = slow
    for text in ("slow", "after"):
        rig.room.say(rig.ravi, rig.group, text)
    rig.room.say(rig.ravi, other, "elsewhere")
    await rig.until(lambda: rig.texts(other))
    before = [text for _, text in rig.seen]
    go_on.set()
    await rig.settle()

    assert before == ["elsewhere"]
    assert rig.texts(rig.group) == ["slow", "after"]


async def test_the_same_update_twice_changes_nothing_the_second_time(rig: Rig) -> None:
    rig.room.queue.duplicates = 5
    for n in range(5):
        rig.room.say(rig.ravi, rig.group, f"line {n}")

    await rig.settle()

    assert rig.texts(rig.group) == [f"line {n}" for n in range(5)]


async def test_a_kill_loses_no_update(rig: Rig) -> None:
    stuck = asyncio.Event()

    async def third_hangs(update: telegram.Update) -> None:
        if update.effective_message.text == "line 3":
            stuck.set()
            await asyncio.Event().wait()

    rig.during = third_hangs
    for n in range(30):
        rig.room.say(rig.ravi, rig.group, f"line {n}")
    await stuck.wait()
    await rig.until(lambda: rig.bot.courier.quiet())
    await rig.bot.kill()
    rig.during = None
    await rig.make().start()
    await rig.settle()

    assert [text for _, text in rig.seen] == [f"line {n}" for n in range(30)]
    assert rig.texts(rig.group) == [f"line {n}" for n in range(30)]


async def test_an_update_is_not_confirmed_before_it_is_handled(rig: Rig) -> None:
    go_on = asyncio.Event()

    async def wait(update: telegram.Update) -> None:
        await go_on.wait()

    rig.during = wait
    rig.room.say(rig.ravi, rig.group, "hold")
    await rig.until(lambda: rig.bot.bot.open_updates)
    await asyncio.sleep(0.05)
    pending = rig.room.updates_pending()
    go_on.set()
    await rig.settle()

    assert pending
    assert not rig.room.updates_pending()


async def test_a_graceful_stop_finishes_what_it_took(rig: Rig) -> None:
    started = asyncio.Event()

    async def slow(update: telegram.Update) -> None:
        started.set()
        await asyncio.sleep(0.05)

    rig.during = slow
    rig.room.say(rig.ravi, rig.group, "last")
    await started.wait()
    await rig.bot.stop()
    seen = list(rig.seen)
    await rig.make().start()
    await rig.settle()

    assert [text for _, text in seen] == ["last"]
    assert rig.texts(rig.group) == ["last"]


async def test_a_handler_that_fails_does_not_stop_the_next_update(rig: Rig) -> None:
    async def fail(update: telegram.Update) -> None:
        if update.effective_message.text == "bad":
            raise ValueError("on purpose")

    rig.during = fail
    rig.room.say(rig.ravi, rig.group, "bad")
    rig.room.say(rig.ravi, rig.group, "good")
    await rig.settle()

    assert rig.texts(rig.group) == ["good"]


async def test_updates_wait_while_storage_is_in_trouble(rig: Rig) -> None:
    from bot.storage.errors import StorageTrouble

    fails = 2

    async def trouble(update: telegram.Update) -> None:
        nonlocal fails
        if fails:
            fails -= 1
            raise StorageTrouble("storage-locked")

    rig.during = trouble
    rig.bot.intake.storage_waits_s = (0.001,)
    rig.room.say(rig.ravi, rig.group, "patience")
    await rig.settle()

    assert rig.texts(rig.group) == ["patience"]
