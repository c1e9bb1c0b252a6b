"""Many at once: two hundred guests of one group within ten seconds, and two thousand groups at the same moment.

All are counted, the board shows it in the end, and the platform's limits are kept: they are measured on
the platform's side, in its own time, over every message and edit.
"""

from __future__ import annotations

import argparse
import asyncio
import contextlib
import random
from datetime import timedelta

from bot.buttons import Button, Signer
from bot.courier.limiter import ALL_PER_SECOND, GROUP_PER_MINUTE
from bot.storage import Batch, ChatRecord, PotluckPlace, Store
from planning.potluck import Answer, Potluck
from tests.faults.platform import TOKEN, Platform, most_in
from tests.faults.stage import DATABASES, START, ZONE, Bot, databases, emptied, fast, open_groups, until, with_clocks
from tests.faults.table import Row

CHAT = -1001
PACE = 3.0
ANSWERS = {"Coming": Answer.YES, "Maybe": Answer.MAYBE, "Can't": Answer.NO}


async def one_group(database: str, guests: int = 200, seconds: float = 10.0, seed: int = 1) -> Row:
    chance = random.Random(seed)
    async with contextlib.AsyncExitStack() as stack:
        url = await stack.enter_async_context(DATABASES[database]())
        platform = await stack.enter_async_context(Platform())
        await with_clocks(url, [CHAT])
        bot = await stack.enter_async_context(Bot(api=platform.url, database=url))
        await open_groups(platform, [CHAT])
        said = {100 + n: chance.choice(sorted(ANSWERS)) for n in range(guests)}
        labels = platform.labelled(CHAT)
        for person, label in said.items():
            platform.press(CHAT, person, labels[label])
            await asyncio.sleep(seconds / guests)
        coming = sum(1 for label in said.values() if label == "Coming") + 1  # the host
        await until(lambda: f"Coming: {coming}<" in _board(platform), 60)
        await until(lambda: len(platform.answers) == guests, 60)
        await bot.stop()
        wrong = await _wrong(url, {p: ANSWERS[label] for p, label in said.items()})
        times = [s.at for s in platform.log if s.chat == CHAT]
        most = most_in(times, 60.0)
    over = max(0, most - GROUP_PER_MINUTE)
    edits = sum(1 for s in platform.log if s.method == "editmessagetext")
    notes = (f"the board counts {coming} who come, after {edits} edits; most messages and edits in a minute: {most}",)
    return Row("one group", database, f"{guests} guests answer within {seconds:.0f} s", wrong, 0, over, notes, 0)


def _board(platform: Platform) -> str:
    return next((s.text for s in reversed(platform.log) if s.chat == CHAT and "Coming:" in s.text), "")


async def _wrong(url: str, said: dict[int, Answer]) -> int:
    async with await Store.open(url) as store:
        (stored,) = [s for s in await store.potlucks_in(CHAT) if s.place.current]
        found = {int(g.id): g.answer for g in stored.potluck.guests}
        return sum(1 for person, answer in said.items() if found.get(person) is not answer)


async def many_groups(database: str, groups: int = 2000) -> Row:
    """Everybody's first press at once; each group's board is posted for it."""
    chats = [-10_000 - n for n in range(groups)]
    signer = Signer(TOKEN)
    async with contextlib.AsyncExitStack() as stack:
        url = await stack.enter_async_context(DATABASES[database]())
        platform = await stack.enter_async_context(Platform())
        async with await Store.open(url) as store:
            for begin in range(0, groups, 200):
                await store.commit(_potlucks(chats[begin : begin + 200]))
        bot = await stack.enter_async_context(Bot(api=platform.url, database=url, **fast(PACE)))
        await until(lambda: platform.polls, 60)
        for chat in chats:
            platform.press(chat, 1000 - chat, signer.sign(chat, Button("", "ans", ("yes",)), f"g{-chat}"))
        await until(lambda: len(platform.answers) == groups, 300)
        await until(lambda: len({s.chat for s in platform.log if "Coming: 1<" in s.text}) == groups, 600)
        await emptied(url)
        await bot.stop()
        counted = 0
        async with await Store.open(url) as store:
            for chat in chats:
                (stored,) = await store.potlucks_in(chat)
                counted += any(g.answer is Answer.YES for g in stored.potluck.guests)
        posted = [s for s in platform.log if s.method == "sendmessage"]
        # A third of a second here is a second of the bot's; calls on their way blur the edge a little.
        most = most_in([s.at for s in posted], 1.0 / PACE)
    notes = (f"most messages in a second of the bot's time, as they arrived: {most} (its limit is {ALL_PER_SECOND})",)
    did = f"{groups} groups press at once and get their boards"
    return Row("many groups", database, did, groups - counted, len(posted) - groups, 0, notes, 0)


def _potlucks(chats: list[int]) -> Batch:
    new = tuple((Potluck(f"g{-c}", START + timedelta(days=9), ZONE), PotluckPlace(f"g{-c}", c)) for c in chats)
    records = tuple(ChatRecord(c, "group", f"Plot {-c}", timezone=ZONE) for c in chats)
    return Batch(START, chats=records, new_potlucks=new)


async def rows(args: argparse.Namespace) -> list[Row]:
    found = []
    for database in databases(args.database):
        found.append(await one_group(database, seed=args.seed))
        found.append(await many_groups(database, args.groups))
    return found
