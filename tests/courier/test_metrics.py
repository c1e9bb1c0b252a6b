"""What the operator watches moves when it should: queue length, lateness, the platform's errors."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import telegram
from prometheus_client.parser import text_string_to_metric_families

from bot.clock import SimulatedClock
from bot.courier import Courier
from bot.storage import Batch, Post, PotluckPlace, Store
from planning.potluck import Potluck, Say
from planning.reminders import Reminder

NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)
CHAT = -1009000000002


def shown(courier: Courier) -> dict[str, float]:
    families = text_string_to_metric_families(courier.metrics.text().decode())
    return {sample.name: sample.value for family in families for sample in family.samples}


async def test_the_queue_and_the_lateness_of_reminders_are_measured(tmp_path: Path) -> None:
    overdue = Reminder("start", "group", NOW - timedelta(seconds=90), NOW + timedelta(hours=1), Say("x", {}), "start")
    potluck = Potluck("p1", NOW + timedelta(days=1), "UTC")
    no_bot: Any = None
    async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'tureen.db'}") as store:
        new = ((potluck, PotluckPlace("p1", CHAT)),)
        posts = tuple(Post(CHAT, "send", {"text": "hello"}) for _ in range(3))
        await store.commit(Batch(NOW, new_potlucks=new, posts=posts, reminders=(("p1", (overdue,)),)))
        courier = Courier(no_bot, store, SimulatedClock(NOW))

        await courier.measure()

    assert shown(courier)["tureen_outbox_posts"] == 3
    assert shown(courier)["tureen_reminders_late_seconds"] == 90


class Refusing(telegram.Bot):
    """A platform that knows none of our chats."""

    async def send_message(self, *args: Any, **more: Any) -> Any:
        raise telegram.error.BadRequest("Chat not found")


async def test_an_error_of_the_platform_is_counted(tmp_path: Path) -> None:
    async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'tureen.db'}") as store:
        courier = Courier(Refusing("1:a"), store, SimulatedClock(NOW))
        result = await store.commit(Batch(NOW, posts=(Post(CHAT, "send", {"text": "hello"}),)))
        await courier.start()
        courier.wake(result)
        for _ in range(500):
            if shown(courier).get("tureen_api_errors_total"):
                break
            await asyncio.sleep(0.01)
        await courier.stop()

    assert shown(courier)["tureen_api_errors_total"] >= 1
