"""Lines of chats."""

import asyncio

import telegram
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.per_chat import PerChat, chat_of
from tests.courier.rig import START


def message(number: int, chat: int) -> telegram.Update:
    said = telegram.Message(number, START, telegram.Chat(chat, "group"))
    return telegram.Update(number, message=said)


@settings(max_examples=50, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 4), st.integers(0, 3)), max_size=40), st.integers(1, 5))
def test_order_is_kept_within_every_chat_and_no_more_than_allowed_work_at_once(
    work: list[tuple[int, int]], at_once: int
) -> None:
    ended: list[tuple[int, int]] = []
    now, most = 0, 0

    async def one(number: int, chat: int, steps: int) -> None:
        nonlocal now, most
        now += 1
        most = max(most, now)
        for _ in range(steps):
            await asyncio.sleep(0)
        ended.append((chat, number))
        now -= 1

    async def run() -> None:
        lines = PerChat(at_once)
        await asyncio.gather(
            *(lines.process_update(message(n, c), one(n, c, steps)) for n, (c, steps) in enumerate(work))
        )
        assert lines.lines == 0

    asyncio.run(run())
    assert len(ended) == len(work)
    assert most <= at_once
    for chat in {c for c, _ in ended}:
        numbers = [n for c, n in ended if c == chat]
        assert numbers == sorted(numbers)


async def test_a_crowd_in_one_chat_takes_only_one_place() -> None:
    lines = PerChat(at_once=2)
    go_on = asyncio.Event()
    done: list[int] = []

    async def crowd() -> None:
        await go_on.wait()

    async def other() -> None:
        done.append(1)

    waiting = [asyncio.create_task(lines.process_update(message(n, 1), crowd())) for n in range(20)]
    await asyncio.sleep(0)
    await lines.process_update(message(99, 2), other())
    go_on.set()
    await asyncio.gather(*waiting)

    assert done == [1]


async def test_an_update_cut_off_by_cancelling_does_not_count_as_done() -> None:
    done: list[object] = []
    lines = PerChat(done=done.append)

    async def hang() -> None:
        await asyncio.Event().wait()

    task = asyncio.create_task(lines.process_update(message(1, 1), hang()))
    await asyncio.sleep(0)
    task.cancel()
    await asyncio.gather(task, return_exceptions=True)

    assert not done
    assert lines.lines == 0


async def test_the_next_of_a_chat_begins_when_the_change_before_it_is_stored() -> None:
    lines = PerChat()
    first, answered = message(1, 1), asyncio.Event()
    began: list[int] = []

    async def stored_and_slowly_answered() -> None:
        lines.stored(first)
        await answered.wait()

    async def next_one() -> None:
        began.append(2)

    slow = asyncio.create_task(lines.process_update(first, stored_and_slowly_answered()))
    await asyncio.sleep(0)
    await lines.process_update(message(2, 1), next_one())
    assert began == [2]
    assert lines.lines == 1
    answered.set()
    await slow
    assert lines.lines == 0


def test_a_press_in_private_stands_in_another_line_than_the_group() -> None:
    person = telegram.User(7, "Ravi", False)
    said = telegram.Message(1, START, telegram.Chat(7, "private"))
    press = telegram.Update(1, callback_query=telegram.CallbackQuery("1", person, "x", message=said))

    assert chat_of(press) == 7
    assert chat_of(message(2, -5)) == -5
    assert chat_of("not an update") is None
