"""The platform's own faults: floods, server errors, answers lost, cut in half or slow; updates twice, out of order."""

from __future__ import annotations

import argparse
import contextlib
import random
from collections import Counter
from datetime import timedelta
from typing import Any

from bot.storage import Store
from planning.potluck import Answer
from tests.faults.balancer import Balancer
from tests.faults.killed import LABELS
from tests.faults.platform import SENDS, Fault, Platform
from tests.faults.reminded import Reminded
from tests.faults.replicas import free_ports
from tests.faults.stage import DATABASES, START, Bot, databases, emptied, fast, open_groups, until, with_clocks
from tests.faults.table import Row

PACE = 20.0
GROUPS = 10
STORMS = 6
"""Every so many calls in a row are refused with 429, again and again."""


class Weather:
    """One call in four goes wrong, and now and then a storm of 429s."""

    def __init__(self, seed: int) -> None:
        self._chance = random.Random(seed)
        self._storm = 0
        self.on = False

    def __call__(self, method: str, form: dict[str, Any]) -> Fault | None:
        if not self.on:
            return None
        if self._storm:
            self._storm -= 1
            return Fault("429", 1)
        kind = self._chance.choices(
            ["", "429", "storm", "500", "lost", "half", "slow"], [76, 5, 1, 6, 4, 3, 5]
        )[0]  # fmt: skip
        if kind == "storm":
            self._storm = STORMS
            return Fault("429", 2)
        if kind in ("lost", "half"):
            return Fault(kind, 0.05, stored=self._chance.random() < 0.5)
        return Fault(kind, {"429": 1, "slow": 0.3}.get(kind, 0.0)) if kind else None


async def on(database: str, guests: int, *, reminders: int, seed: int = 1) -> Row:
    chance, weather = random.Random(seed), Weather(seed)
    chats = [-1001 - n for n in range(GROUPS)]
    async with contextlib.AsyncExitStack() as stack:
        url = await stack.enter_async_context(DATABASES[database]())
        platform = await stack.enter_async_context(Platform(fate=weather))
        await with_clocks(url, chats)
        reminded = Reminded(reminders, START + timedelta(minutes=2), timedelta(minutes=3))
        await reminded.store(url)
        (port,) = free_ports(1)
        hook = f"http://127.0.0.1:{port}/hook"
        settings = {"webhook": hook, "listen": ["127.0.0.1", port], "limits": False, **fast(PACE)}
        bot = await stack.enter_async_context(Bot(api=platform.url, database=url, **settings))
        balancer = await stack.enter_async_context(Balancer(platform, [hook]))
        await open_groups(platform, chats)
        labels = {c: platform.labelled(c) for c in chats}
        weather.on = True
        said: dict[tuple[int, int], Answer] = {}
        words: list[int] = []
        for n in range(guests):
            chat, person, answer = chats[n % GROUPS], 100 + n // GROUPS, chance.choice(list(LABELS))
            said[chat, person] = answer
            update = platform.press(chat, person, labels[chat][LABELS[answer]])
            if n % 4 == 0:
                words.append(platform.say(chat, 1, f"/bring lasagna for {4 + n}"))
            # A line of its own for each: they overtake one another.
            update.lane = update.id
        await until(lambda: not platform.waiting, 300)
        again = chance.sample(list(platform.sent_updates), k=guests // 5)
        for update in again:
            platform.emit(update)
        await until(lambda: not platform.waiting, 300)
        await emptied(url)
        await bot.stop()
        lost = await _wrong(url, said)
        replies = Counter(s.reply_to for s in platform.log if s.method in SENDS and s.reply_to)
        silent = [m for m in words if not replies[m]]
        async with await Store.open(url) as store:
            unsure = sum([len(await store.given_up(c, 100_000)) for c in chats])
    doubled, missing = reminded.doubled(platform), reminded.missing(platform)
    faults = ", ".join(f"{kind} {n}" for kind, n in sorted(platform.faults.items()))
    notes = [
        f"calls that went wrong: {faults}; updates delivered again: {len(again)}; out of order: all",
        f"answers to words that may be lost, by policy not repeated: {len(silent)} ({unsure} posts on record)",
        f"presses acknowledged: {sum(1 for q in platform.answers if q)} of {guests}",
    ]
    notes += reminded.told(platform, "its answer was lost")
    did = f"{guests} presses, {len(words)} words and {reminders} reminders through it, {balancer.again} redelivered"
    return Row(
        "platform", database, did, lost + len(missing) + max(0, len(silent) - unsure),
        len(doubled), sum(1 for m in words if replies[m] > 1), tuple(notes),
        may_double=platform.faults["lost"] + platform.faults["half"],
    )  # fmt: skip


async def _wrong(url: str, said: dict[tuple[int, int], Answer]) -> int:
    wrong = 0
    async with await Store.open(url) as store:
        for chat in {c for c, _ in said}:
            (stored,) = [s for s in await store.potlucks_in(chat) if s.place.current]
            found = {g.id: g.answer for g in stored.potluck.guests}
            wrong += sum(1 for (c, p), answer in said.items() if c == chat and found.get(str(p)) is not answer)
    return wrong


async def rows(args: argparse.Namespace) -> list[Row]:
    return [await on(d, args.updates // 2, reminders=args.rounds * 5, seed=args.seed) for d in databases(args.database)]
