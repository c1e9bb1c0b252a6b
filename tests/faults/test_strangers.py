"""Whoever does not belong to a potluck learns and changes nothing of it: every door, command and button is tried."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator
from dataclasses import replace
from datetime import timedelta

import pytest
import telegram

from bot.buttons import Button
from bot.context import Turn
from bot.doors import LASTS, own
from bot.registry import load
from tests.faults.chat import Chat

HERE, ELSEWHERE = -1001, -1002
HOST, GUEST, STRANGER, MEMBER = 1, 100, 2000, 300
"""Of a stranger the platform says that they are in no group (`MuteBot`)."""
OURS = ("allotment", "lasagna", "Guest 1", "peanut", "Plot 1001")
DOORS = sorted(load().links)
COMMANDS = sorted(load().commands)


@pytest.fixture
async def chat() -> AsyncIterator[Chat]:
    """A potluck with a guest, a dish and a need in one group; a bare one in another."""
    opened = await Chat.open(HERE, ELSEWHERE)
    await opened.take(opened.words(HERE, HOST, "/potluck in 12 days 5pm, about 40 people, at the allotment hut"))
    await opened.take(opened.words(ELSEWHERE, HOST + 1, "/potluck in 9 days 6pm, about 12 people, in the barn"))
    await opened.take(opened.words(HERE, GUEST, "/bring lasagna for 12"))
    await opened.take(opened.words(HERE, GUEST, "/needs no peanut"))
    yield opened
    await opened.close()


async def told(chat: Chat, *people: int) -> str:
    """Everything that would be sent to these chats, and every acknowledgement."""
    posts = [str(p.payload) for p in await chat.store.pending_posts(100_000) if p.chat_id in people]
    return "\n".join([*posts, *chat.bot.toasts])


async def revisions(chat: Chat) -> list[tuple[str, int]]:
    found = [await chat.current(g) for g in (HERE, ELSEWHERE)]
    return [(s.potluck.id, s.revision) for s in found if s is not None]


async def test_no_door_opens_for_a_stranger_and_every_one_for_a_member(chat: Chat) -> None:
    here = await chat.current(HERE)
    assert here is not None
    before = await revisions(chat)
    for door in DOORS:
        await chat.take(chat.words(STRANGER, STRANGER, f"/start {door}-{here.potluck.id}"))
    strange, after = await told(chat, STRANGER), await revisions(chat)
    for door in DOORS:
        await chat.take(chat.words(MEMBER, MEMBER, f"/start {door}-{here.potluck.id}"))

    assert strange.count("people of that group") == len(DOORS)
    assert not [word for word in OURS if word in strange]
    assert after == before
    assert "people of that group" not in await told(chat, MEMBER)


async def test_a_link_that_was_guessed_or_whose_potluck_is_gone_leads_nowhere(chat: Chat) -> None:
    links = [f"{door}-{rest}" for door in DOORS for rest in ("0", "abcdefghij", "../..", "%00")]
    for link in [*links, "x", "board", "board-", "-"]:
        await chat.take(chat.words(MEMBER, MEMBER, f"/start {link}"))

    said = await told(chat, MEMBER)
    assert not chat.dispatcher.failed
    assert said.count("leads nowhere") == len(links) + 4
    assert not [word for word in OURS if word in said]


async def own_link(chat: Chat) -> str:
    """The payload of the link with which the guest, who asked in the group, was answered."""
    await chat.take(chat.words(HERE, GUEST, "/needs"))
    posts = [str(p.payload) for p in await chat.store.pending_posts(100_000) if p.chat_id == HERE]
    return re.findall(r"start=(my-[\w-]+)", "".join(posts))[-1]


@pytest.mark.parametrize("other", [STRANGER, MEMBER, HOST])
async def test_a_link_of_a_guests_own_opens_nothing_for_anybody_else(chat: Chat, other: int) -> None:
    link = await own_link(chat)
    await chat.take(chat.words(other, other, f"/start {link}"))

    said = await told(chat, other)
    assert "made for somebody else" in said
    assert not [word for word in OURS if word in said]


async def test_a_link_of_ones_own_opens_for_its_guest_and_no_more_after_three_days(chat: Chat) -> None:
    link = await own_link(chat)
    await chat.take(chat.words(GUEST, GUEST, f"/start {link}"))
    in_time = await told(chat, GUEST)
    chat.clock.set(chat.clock.now() + LASTS + timedelta(hours=1))
    await chat.take(chat.words(GUEST, GUEST, f"/start {link}"))

    assert "peanut" in in_time
    assert "three days only" not in in_time
    assert "three days only" in await told(chat, GUEST)


async def test_a_link_of_ones_own_opens_nothing_for_who_has_left_the_group(chat: Chat) -> None:
    here = await chat.current(HERE)
    assert here is not None
    link = own(chat.signer, "needs", here.potluck.id, STRANGER, chat.clock.now())
    await chat.take(chat.words(STRANGER, STRANGER, f"/start {link}"))

    assert "people of that group" in await told(chat, STRANGER)


async def test_no_command_of_a_stranger_in_private_shows_or_changes_anything_of_a_group(chat: Chat) -> None:
    here = await chat.current(HERE)
    assert here is not None
    before = await revisions(chat)
    await chat.take(chat.words(STRANGER, STRANGER, f"/start board-{here.potluck.id}"))
    for command in COMMANDS:
        await chat.take(chat.words(STRANGER, STRANGER, f"/{command}"))
        await chat.take(chat.words(STRANGER, STRANGER, f"/{command} lasagna for 12"))
    await chat.take(chat.words(STRANGER, STRANGER, "I bring slaw for 9"))

    said = await told(chat, STRANGER)
    assert not chat.dispatcher.failed
    assert not [word for word in ("allotment", "Guest 100", "Plot 1001") if word in said]
    assert await revisions(chat) == before


@pytest.mark.parametrize("where", [ELSEWHERE, STRANGER])
async def test_no_button_of_a_group_works_in_another_chat(chat: Chat, where: int) -> None:
    before = await revisions(chat)
    buttons = await chat.buttons(HERE)
    for data in buttons:
        await chat.take(chat.press(where, STRANGER, data))

    assert len(buttons) > 3
    assert set(chat.bot.toasts) == {"This button does not belong to this chat; use the ones on your own board."}
    assert len(chat.bot.toasts) == len(buttons)
    assert await revisions(chat) == before


async def test_a_button_signed_for_one_chat_moves_no_potluck_of_another(chat: Chat) -> None:
    """As if a signed button had been made for the wrong chat: the potluck's own place is looked at as well."""
    here = await chat.current(HERE)
    assert here is not None
    before = await revisions(chat)
    wrong = chat.signer.sign(ELSEWHERE, Button("", "ans", ("yes",)), here.potluck.id)
    await chat.take(chat.press(ELSEWHERE, MEMBER, wrong))

    assert await revisions(chat) == before
    assert chat.bot.toasts == ["This button does not belong to this chat; use the ones on your own board."]


async def test_a_guest_who_left_the_group_unheard_changes_and_learns_nothing_in_private(chat: Chat) -> None:
    await chat.take(chat.words(HERE, STRANGER, "/bring rice for 9"))
    before = await revisions(chat)
    for words in ("/bring figs for 8", "/list", "4 of us", "/drop rice"):
        await chat.take(chat.words(STRANGER, STRANGER, words))

    assert await revisions(chat) == before
    assert not [word for word in OURS if word in await told(chat, STRANGER)]


async def test_a_button_of_a_group_works_on_in_the_supergroup_it_became_and_nowhere_else(chat: Chat) -> None:
    supergroup = -1005
    buttons = await chat.buttons(HERE)
    await chat.store.migrate_chat(HERE, supergroup)
    for data in buttons:
        await chat.take(chat.press(supergroup, GUEST, data))
    inside = list(chat.bot.toasts)
    await chat.take(chat.press(ELSEWHERE, GUEST, buttons[0]))

    assert not [said for said in inside if "does not belong" in said]
    assert "does not belong" in chat.bot.toasts[-1]


async def test_who_floods_is_told_to_wait_and_changes_nothing(chat: Chat) -> None:
    before = await revisions(chat)
    update = telegram.Update.de_json(chat.words(GUEST, GUEST, "/bring rice for 9"), chat.bot)  # type: ignore[arg-type]
    await chat.dispatcher.too_much(update)

    assert "wait a minute" in await told(chat, GUEST)
    assert await revisions(chat) == before


async def test_what_goes_wrong_inside_is_counted_and_told(chat: Chat) -> None:
    async def broken(_: Turn) -> None:
        raise RuntimeError("broken for this test")

    failures: list[int] = []
    chat.dispatcher.on_failure = lambda: failures.append(1)
    commands = {"missing": replace(chat.registry.commands["missing"], handler=broken)}
    chat.dispatcher.services = replace(chat.dispatcher.services, registry=replace(chat.registry, commands=commands))
    await chat.take(chat.words(HERE, GUEST, "/missing"))

    assert failures == [1]
