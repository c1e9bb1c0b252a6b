"""Three replicas of the bot behind one webhook address on one PostgreSQL, and what can happen to them.

While reminders fall due and people press buttons, one replica is frozen for longer than its leases and
woken, one is killed and started again, and the database server is stopped as if its machine had crashed.
"""

from __future__ import annotations

import argparse
import asyncio
import contextlib
import random
import signal
import socket
from datetime import timedelta

from tests.faults.balancer import Balancer
from tests.faults.killed import Driver
from tests.faults.platform import Platform
from tests.faults.reminded import Reminded
from tests.faults.stage import START, WAIT_S, Bot, Server, fast, open_groups, until, with_clocks
from tests.faults.table import Row

REPLICAS = 3
FROZEN_S = 240.0
"""Of the bots' time: every lease runs out meanwhile."""
PRESS_S = 0.25
GROUPS = 8


async def run(count: int, *, seed: int = 1, span: timedelta | None = None, pace: float | None = None) -> Row:
    """`span`: the bots' time in which the reminders fall due; an hour, or less for a few of them. `pace`: how
    much faster than the real time it passes."""
    span = span or timedelta(hours=min(1.0, count / 3000))
    # So that one small machine keeps up: no more than some twenty reminders a real second.
    pace = pace or min(20.0, 22 * span.total_seconds() / count)
    chats = [-1001 - n for n in range(GROUPS)]
    async with contextlib.AsyncExitStack() as stack:
        server = await stack.enter_async_context(Server())
        platform = await stack.enter_async_context(Platform())
        await with_clocks(server.url, chats)
        reminded = Reminded(count, START + timedelta(minutes=4), span)
        await reminded.store(server.url)
        time = fast(pace)
        bots, urls = [], []
        for port in free_ports(REPLICAS):
            urls.append(f"http://127.0.0.1:{port}/hook")
            settings = {"webhook": urls[-1], "listen": ["127.0.0.1", port], **time}
            bots.append(await stack.enter_async_context(Bot(api=platform.url, database=server.url, **settings)))
        balancer = await stack.enter_async_context(Balancer(platform, urls))
        await open_groups(platform, chats)
        driver = Driver(platform, server.url, chats, random.Random(seed))
        driver.labels = {c: platform.labelled(c) for c in chats}
        pressing = asyncio.create_task(_press(driver))
        stack.callback(pressing.cancel)
        faults = await _break(server, bots, span.total_seconds() / pace, FROZEN_S / pace, platform, reminded)
        pressing.cancel()
        await until(lambda: not platform.waiting, 120)
        # Some may not be due yet.
        await server.emptied(span.total_seconds() / pace + WAIT_S)
        for bot in bots:
            await bot.stop()
        await driver.compare()
        return _row(driver, reminded, faults, balancer, span, pace)


async def _press(driver: Driver) -> None:
    while True:
        driver.one()
        await asyncio.sleep(PRESS_S)


async def _break(
    server: Server, bots: list[Bot], span_s: float, frozen_s: float, platform: Platform, reminded: Reminded
) -> list[tuple[str, int]]:
    """The faults, spread over the time in which reminders fall due; each with how many were sent before it."""
    done: list[tuple[str, int]] = []

    def note(what: str) -> None:
        done.append((what, sum(reminded.sent(platform).values())))

    await until(lambda: reminded.sent(platform), 120)
    await asyncio.sleep(span_s * 0.15)
    note("one frozen")
    bots[0].signal(signal.SIGSTOP)
    await asyncio.sleep(frozen_s)
    bots[0].signal(signal.SIGCONT)
    note("woken")
    await asyncio.sleep(span_s * 0.15)
    note("one killed")
    await bots[1].kill()
    await asyncio.sleep(2.0)
    await bots[1].start()
    await asyncio.sleep(span_s * 0.15)
    note("database crashed and started")
    await server.crash()
    return done


def _row(
    driver: Driver, reminded: Reminded, faults: list[tuple[str, int]], balancer: Balancer, span: timedelta, pace: float
) -> Row:
    platform, book = driver.platform, driver.book
    doubled, missing = reminded.doubled(platform), reminded.missing(platform)
    unacknowledged = len(book.presses) - driver.acknowledged
    notes = [
        "faults (reminders sent before): " + ", ".join(f"{what} ({n})" for what, n in faults),
        f"{len(book.presses)} presses and {len(book.messages)} promises in words meanwhile, through "
        f"{balancer.again} repeated deliveries; {unacknowledged} stored presses were not acknowledged",
    ]
    notes += reminded.told(platform, "in flight at a fault")
    notes += [f"lost: press {u}" for u in sorted(book.lost)] + sorted(book.half)
    minutes = round(span.total_seconds() / 60)
    did = (
        f"{reminded.count} reminders due in {minutes} min ({pace:.1f} times as fast); {REPLICAS} replicas, one frozen, "
        "one killed; database crash"
    )
    # Whoever is frozen or killed may have had one on the line; the database's crash each of them.
    return Row(
        "replicas", "PostgreSQL", did, len(missing) + len(book.lost), len(doubled), len(book.half), tuple(notes),
        may_double=1 + 1 + REPLICAS,
    )  # fmt: skip


def free_ports(count: int) -> list[int]:
    with contextlib.ExitStack() as stack:
        opened = [stack.enter_context(socket.socket()) for _ in range(count)]
        for one in opened:
            one.bind(("127.0.0.1", 0))
        return [int(one.getsockname()[1]) for one in opened]


async def rows(args: argparse.Namespace) -> list[Row]:
    return [await run(args.reminders, seed=args.seed, pace=args.pace)] if args.database != "sqlite" else []
