"""Who administers a group: asked of the platform, kept for a minute, forgotten as soon as it may be another."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta
from typing import Any

import pytest
import telegram
from telegram.error import NetworkError

from bot.admins import FRESH, MOST_KNOWN, Admins
from bot.clock import SimulatedClock
from planning.potluck import Stage
from tests.faults.chat import START, Chat, MuteBot
from tests.faults.platform import someone

GROUP, HOST, ADMIN = -1001, 101, 107
UNTIL_NOW, GUEST = {"status": "administrator"}, {"status": "member"}
RIGHTS = {r: False for r in telegram.ChatMemberAdministrator.__slots__ if r.startswith(("can_", "is_"))}


class Group(MuteBot):
    """A group whose administrators are known here, and how often somebody asked for them."""

    def __init__(self, *admins: int) -> None:
        super().__init__()
        self.admins = admins
        self.asked = 0
        self.away = False

    async def get_chat_administrators(self, chat_id: int, **_: Any) -> tuple[Any, ...]:
        self.asked += 1
        if self.away:
            raise NetworkError("away")
        return tuple(telegram.ChatMemberOwner(telegram.User(a, "Admin", False), False) for a in self.admins)


def knowing(group: Group) -> tuple[Admins, SimulatedClock]:
    clock = SimulatedClock(START)
    return Admins(group, clock), clock  # type: ignore[arg-type]


async def test_an_answer_is_kept_for_a_minute_and_not_longer() -> None:
    group = Group(ADMIN)
    admins, clock = knowing(group)

    assert timedelta(seconds=60) == FRESH
    assert await admins.is_admin(GROUP, ADMIN)
    group.admins = ()
    clock.set(START + timedelta(seconds=59))
    assert await admins.is_admin(GROUP, ADMIN)
    clock.set(START + timedelta(seconds=61))
    assert not await admins.is_admin(GROUP, ADMIN)
    assert group.asked == 2


async def test_what_is_forgotten_is_asked_anew_and_of_other_groups_nothing_is_forgotten() -> None:
    group = Group(ADMIN)
    admins, _ = knowing(group)
    await admins.is_admin(GROUP, ADMIN)
    await admins.is_admin(-1002, ADMIN)
    group.admins = ()

    admins.forget(GROUP)

    assert not await admins.is_admin(GROUP, ADMIN)
    assert await admins.is_admin(-1002, ADMIN)


async def test_a_fault_of_the_line_gives_nobody_a_right() -> None:
    group = Group(ADMIN)
    group.away = True
    admins, _ = knowing(group)

    assert not await admins.is_admin(GROUP, ADMIN)


async def test_nobody_administers_a_private_chat() -> None:
    group = Group(ADMIN)
    admins, _ = knowing(group)

    assert not await admins.is_admin(ADMIN, ADMIN)
    assert group.asked == 0


async def test_however_many_groups_there_are_only_so_many_answers_are_kept() -> None:
    admins, _ = knowing(Group(ADMIN))
    for n in range(MOST_KNOWN + 5):
        await admins.is_admin(-2000 - n, ADMIN)
        await admins.has_left(-2000 - n, ADMIN)

    assert len(admins._known) == MOST_KNOWN
    assert len(admins._here) == MOST_KNOWN


@pytest.fixture
async def chat() -> AsyncIterator[Chat]:
    """A potluck whose host is not an administrator, in a group whose administrator is not its host."""
    opened = await Chat.open(GROUP, bot=Group(ADMIN))
    await opened.take(opened.words(GROUP, HOST, "/potluck in 8 days 5pm, about 24 people, at the hut"))
    await opened.take(opened.words(GROUP, 102, "/bring coleslaw for 12"))
    yield opened
    await opened.close()


def demotion(chat: Chat) -> dict[str, Any]:
    who, rest = {"user": someone(ADMIN)}, {"is_member": True, "until_date": 0}
    message = chat.message(GROUP)
    change = {"chat": message["chat"], "from": someone(HOST), "date": message["date"],
              "old_chat_member": {**who, **UNTIL_NOW, **RIGHTS},
              "new_chat_member": {**who, **GUEST, **rest}}  # fmt: skip
    return {"update_id": 90_000, "chat_member": change}


async def changed(chat: Chat, words: str) -> bool:
    """Whether the administrator's words changed the potluck."""
    before = await chat.current(GROUP)
    await chat.take(chat.words(GROUP, ADMIN, words))
    return await chat.current(GROUP) != before


async def test_an_administrator_steps_in_and_once_demoted_is_refused_at_once(chat: Chat) -> None:
    assert await changed(chat, "/size 30")
    chat.bot.admins = ()  # type: ignore[attr-defined]
    await chat.take(demotion(chat))

    assert not await changed(chat, "/size 40")


async def stages(chat: Chat) -> list[Stage]:
    return [s.potluck.stage for s in await chat.store.potlucks_in(GROUP)]


@pytest.mark.parametrize("words", ["/host Guest 102", "/cohost Guest 102"])
async def test_for_other_hosts_the_platform_is_asked_each_time(chat: Chat, words: str) -> None:
    assert await changed(chat, "/size 30")
    chat.bot.admins = ()  # type: ignore[attr-defined]

    assert not await changed(chat, words)


async def test_for_calling_off_the_platform_is_asked_each_time(chat: Chat) -> None:
    await chat.take(chat.words(GROUP, ADMIN, "/cancel"))
    sure = next(d for d in await chat.buttons(GROUP) if ".cancel." in d and ".yes" in d)
    chat.bot.admins = ()  # type: ignore[attr-defined]
    await chat.take(chat.press(GROUP, ADMIN, sure))

    assert await stages(chat) == [Stage.PLANNED]


async def test_an_administrator_who_still_is_one_calls_it_off(chat: Chat) -> None:
    await chat.take(chat.words(GROUP, ADMIN, "/cancel"))
    sure = next(d for d in await chat.buttons(GROUP) if ".cancel." in d and ".yes" in d)
    await chat.take(chat.press(GROUP, ADMIN, sure))

    assert await stages(chat) == [Stage.CANCELLED]
