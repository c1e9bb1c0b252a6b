"""kill -9 at random moments, again and again, while updates are answered.

Acknowledged is what the platform saw answered (answerCallbackQuery): the bot may do that only after its commit.
After each kill the database is opened and compared with the presses and words that were taken.
"""

from __future__ import annotations

import argparse
import asyncio
import random
from collections import Counter
from dataclasses import dataclass, field
from datetime import timedelta

from sqlalchemy import text

from bot.storage import Store
from planning.potluck import Answer
from tests.faults.platform import SENDS, Platform, Update
from tests.faults.reminded import Reminded
from tests.faults.stage import DATABASES, START, Bot, databases, emptied, fast, open_groups, until, with_clocks
from tests.faults.table import Row, listed

GUESTS = 25
HOST, ROAST = 1, "roast chicken"
PACE = 20.0
ANSWERS = (Answer.YES, Answer.MAYBE, Answer.NO)
LABELS = {Answer.YES: "Coming", Answer.MAYBE: "Maybe", Answer.NO: "Can't"}
DISHES = ("lasagna", "potato salad", "coleslaw", "brownies", "chili", "corn bread", "lemonade", "fruit salad")
WORDS_SHARE = 0.1


@dataclass
class Guest:
    said: list[tuple[int, Answer | int]] = field(default_factory=list)
    """(update id, the answer pressed or the message id of a /bring), in the order they were made."""


@dataclass
class Book:
    """What people did, beside what is stored."""

    guests: dict[tuple[int, int], Guest] = field(default_factory=dict)
    presses: dict[int, Update] = field(default_factory=dict)
    messages: dict[int, int] = field(default_factory=dict)
    """Message ids of /bring by update id."""
    lost: set[int] = field(default_factory=set)
    half: set[str] = field(default_factory=set)
    kitchens: set[str] = field(default_factory=set)
    """Where the reminders of the oven were gone."""


class Driver:
    def __init__(self, platform: Platform, url: str, chats: list[int], chance: random.Random) -> None:
        self.platform, self.url, self.chats, self.chance = platform, url, chats, chance
        self.book = Book()
        self.labels: dict[int, dict[str, str]] = {}
        self.sent = 0

    def one(self) -> None:
        """Somebody presses another answer than their last, or promises a dish in words."""
        n, self.sent = self.sent, self.sent + 1
        chat = self.chats[n % len(self.chats)]
        person = 100 + (n // len(self.chats)) % GUESTS
        guest = self.book.guests.setdefault((chat, person), Guest())
        if self.chance.random() < WORDS_SHARE:
            message = self.platform.say(chat, person, f"/bring {self.chance.choice(DISHES)} for {5 + n % 20}")
            update = self.platform.waiting[-1].id
            guest.said.append((update, message))
            self.book.messages[update] = message
            return
        last = next((a for _, a in reversed(guest.said) if isinstance(a, Answer)), None)
        answer = self.chance.choice([a for a in ANSWERS if a is not last])
        press = self.platform.press(chat, person, self.labels[chat][LABELS[answer]])
        guest.said.append((press.id, answer))
        self.book.presses[press.id] = press

    async def cook(self) -> None:
        """In every group the host's dish for the oven, until its preheating stands among the reminders."""
        for chat in self.chats:
            self.platform.say(chat, HOST, f"/bring {ROAST} for 12")
            self.platform.say(chat, HOST, f"/heat {ROAST}: oven 60 min at 400")
        async with await Store.open(self.url) as store, asyncio.timeout(120):
            while not all([await preheats(store, chat) for chat in self.chats]):  # noqa: ASYNC110
                await asyncio.sleep(0.1)

    @property
    def acknowledged(self) -> int:
        return sum(1 for p in self.book.presses.values() if self.platform.answers[p.query or ""])

    async def compare(self) -> None:
        """Everything stored against what was taken; nobody writes meanwhile."""
        async with await Store.open(self.url) as store:
            rows = await store._runner.glance(
                lambda conn: conn.execute(text("SELECT update_id FROM update_taken")).all()
            )
            taken = {r[0] for r in rows}
            answered = {u for u, p in self.book.presses.items() if self.platform.answers[p.query or ""]}
            self.book.lost |= answered - taken
            waiting = {p.payload.get("reply_to") for p in await store.pending_posts(100_000)}
            for chat in self.chats:
                waiting |= {p.payload.get("reply_to") for p in await store.given_up(chat, 100_000)}
                await self._compare_group(store, chat, taken)
        replied = {s.reply_to for s in self.platform.log if s.method in SENDS}
        for update, message in self.book.messages.items():
            if update in taken and message not in replied | waiting:
                self.book.half.add(f"update {update}: its reply was never written")

    async def _compare_group(self, store: Store, chat: int, taken: set[int]) -> None:
        if not await preheats(store, chat):
            self.book.kitchens.add(f"group {chat}: nobody is reminded of the oven")
        (stored,) = [s for s in await store.potlucks_in(chat) if s.place.current]
        potluck = stored.potluck
        actions = Counter(a.actor for a in await store.actions_since(potluck.id))
        for person in range(100, 100 + GUESTS):
            said = self.book.guests.get((chat, person), Guest()).said
            done = [a for u, a in said if u in taken]
            answer, changes, brought = outcome(done)
            guest = potluck.guest(str(person))
            found = (
                guest.answer if guest is not None else Answer.NONE,
                actions[str(person)],
                len(potluck.promises_of(str(person))),
            )
            if found != (answer, changes, brought):
                self.book.half.add(f"group {chat}, guest {person}: {found}, not {(answer, changes, brought)}")


async def preheats(store: Store, chat: int) -> bool:
    """Whether a reminder to preheat waits: guests' answers move it, and no kill may take it."""
    (stored,) = [s for s in await store.potlucks_in(chat) if s.place.current]
    return any(r.kind == "preheat" and r.state == "pending" for r in await store.reminders_of(stored.potluck.id))


def outcome(done: list[Answer | int]) -> tuple[Answer, int, int]:
    """(answer, changes on record, promises) after these presses and promises in words, in order."""
    answer, changes, brought = Answer.NONE, 0, 0
    for what in done:
        if isinstance(what, Answer):
            changes += what is not answer
            answer = what
        else:
            # Who promises something before they answered is taken to come.
            answer = Answer.YES if answer is Answer.NONE else answer
            changes, brought = changes + 1, brought + 1
    return answer, changes, brought


async def on(database: str, *, updates: int, rounds: int, reminders: int, seed: int = 1, groups: int = 20) -> Row:
    chance = random.Random(seed)
    chats = [-1001 - n for n in range(groups)]
    per_round = max(1, updates // rounds)
    async with DATABASES[database]() as url, Platform() as platform:
        await with_clocks(url, chats)
        reminded = Reminded(reminders, START + timedelta(minutes=2), timedelta(seconds=rounds * 2.0 * PACE))
        await reminded.store(url)
        async with Bot(api=platform.url, database=url, limits=False, **fast(PACE)) as bot:
            await open_groups(platform, chats)
            driver = Driver(platform, url, chats, chance)
            driver.labels = {c: platform.labelled(c) for c in chats}
            await driver.cook()
            for _ in range(rounds):
                await _round(driver, bot, per_round)
                await driver.compare()
                await bot.start()
            # The bot asks for more only when what it has is stored; then the platform forgets that.
            await until(lambda: not platform.waiting, 120)
            await emptied(url)
            await bot.stop()
        await driver.compare()
        return await _row(database, driver, reminded, rounds, url)


async def _round(driver: Driver, bot: Bot, updates: int) -> None:
    """Updates in small handfuls, and a kill after some of them, a few milliseconds early or late."""
    before, chance = driver.acknowledged, driver.chance
    enough = before + chance.randrange(updates)
    kill_at_once = chance.random() < 0.1
    for n in range(updates):
        driver.one()
        if n % 7 == 0:
            await asyncio.sleep(0)
    if not kill_at_once:
        try:
            await until(lambda: driver.acknowledged >= enough, 60)
        except TimeoutError:
            pass
    await asyncio.sleep(chance.random() * 0.03)
    await bot.kill()


async def _row(database: str, driver: Driver, reminded: Reminded, rounds: int, url: str) -> Row:
    platform, book = driver.platform, driver.book
    replies = Counter(s.reply_to for s in platform.log if s.method in SENDS and s.reply_to)
    silent = [m for m in book.messages.values() if not replies[m]]
    doubled = reminded.doubled(platform)
    twice = [m for m in book.messages.values() if replies[m] > 1]
    missing = reminded.missing(platform)
    async with await Store.open(url) as store:
        sound = bool((await store.health())["sound"])
        unsure = 0
        for chat in driver.chats:
            unsure += sum(1 for p in await store.given_up(chat, 100_000) if p.why == "courier-why-doubt")
    notes = [
        f"{len(book.presses)} presses and {len(book.messages)} promises in words; reminders {reminded.count}; "
        f"the database is {'sound' if sound else 'DAMAGED'}",
        f"stored, but the process died before it could say so: {len(book.presses) - driver.acknowledged} presses",
        f"replies on the line at a kill, by policy not repeated: {len(silent)} (on record as in doubt: {unsure})",
    ]
    notes += reminded.told(platform, "on the line at a kill")
    notes += sorted(book.kitchens)
    notes += listed("LOST presses", map(str, sorted(book.lost)))
    notes += sorted(book.half)[:20]
    lost = len(book.lost) + len(missing) + len(book.kitchens) + max(0, len(silent) - unsure)
    half = len(book.half) + (not sound)
    did = f"{rounds} kills during {driver.sent} updates"
    # One process; of its reminders one is on the line at a time.
    return Row("kill -9", database, did, lost, len(doubled) + len(twice), half, tuple(notes), may_double=rounds)


async def rows(args: argparse.Namespace) -> list[Row]:
    return [
        await on(name, updates=args.updates, rounds=args.rounds, reminders=args.rounds * 10, seed=args.seed)
        for name in databases(args.database)
    ]
