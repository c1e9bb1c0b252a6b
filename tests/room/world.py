"""A small stage for the room's tests: one group, a few people, the real client library."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from telegram import Bot
from telegram.request import HTTPXRequest

from bot.clock import SimulatedClock
from bot.room.room import Room
from bot.room.server import RoomServer
from bot.room.world import Chat, User

START = datetime(2027, 9, 10, 14, tzinfo=UTC)


@dataclass
class Stage:
    clock: SimulatedClock
    room: Room
    group: Chat
    ines: User
    ravi: User
    mei: User


def stage(*, forum: bool = False, bot_in: bool = True, admin: bool = False, **settings: Any) -> Stage:
    clock = SimulatedClock(START)
    room = Room(clock, **settings)
    ines, ravi, mei = (room.add_person(name) for name in ("Inés", "Ravi", "Mei"))
    group = room.add_group("Plot 9 Supper", ines.id, (ravi.id, mei.id), forum=forum)
    if bot_in:
        room.add_bot(group.id, quietly=True)
    if admin:
        room.make_admin(group.id, quietly=True)
    return Stage(clock, room, group, ines, ravi, mei)


@asynccontextmanager
async def client(room: Room) -> AsyncIterator[tuple[RoomServer, Bot]]:
    """The room served on the loopback address and the real client library's Bot on it."""
    async with RoomServer(room) as server:
        bot = Bot(
            room.token,
            base_url=server.base_url,
            base_file_url=server.base_file_url,
            request=HTTPXRequest(connection_pool_size=8),
            get_updates_request=HTTPXRequest(connection_pool_size=4),
        )
        async with bot:
            yield server, bot
