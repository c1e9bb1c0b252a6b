"""The webhook, health, readiness and metrics over real HTTP."""

import asyncio
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import aiohttp
import pytest
import pytest_asyncio
from prometheus_client.parser import text_string_to_metric_families

from bot.storage.errors import StorageTrouble
from bot.web import SECRET_HEADER
from tests.courier.rig import Rig

SECRET = "loopback-secret"


class WebRig(Rig):
    def make(self, **more: Any) -> Any:
        return super().make(
            mode="webhook",
            webhook_url="http://127.0.0.1:1/hook",
            webhook_listen=("127.0.0.1", 0),
            webhook_secret=SECRET,
            metrics_listen=("127.0.0.1", 0),
            **more,
        )

    def url(self, path: str, door: int = -1) -> str:
        return f"http://127.0.0.1:{self.bot._doors[door].port}{path}"

    def update(self, number: int, text: str) -> dict[str, Any]:
        return {
            "update_id": number,
            "message": {
                "message_id": number,
                "date": 1_800_000_000,
                "text": text,
                "chat": {"id": self.group, "type": "group", "title": "Plot 9"},
                "from": {"id": self.ravi, "is_bot": False, "first_name": "Ravi"},
            },
        }

    async def deliver(self, body: Any, secret: str = SECRET) -> int:
        async with (
            aiohttp.ClientSession() as session,
            session.post(self.url("/hook"), json=body, headers={SECRET_HEADER: secret}) as answer,
        ):
            return answer.status

    async def get(self, path: str, door: int = 0) -> tuple[int, str]:
        async with aiohttp.ClientSession() as session, session.get(self.url(path, door)) as answer:
            return answer.status, await answer.text()


@pytest_asyncio.fixture
async def web(tmp_path: Path) -> AsyncIterator[WebRig]:
    async with WebRig(tmp_path) as rig:
        yield rig


async def test_the_webhook_is_set_with_its_secret(web: WebRig) -> None:
    assert web.room.hook.url == "http://127.0.0.1:1/hook"


async def test_an_update_is_stored_before_it_is_answered(web: WebRig) -> None:
    status = await web.deliver(web.update(1, "hello"))

    assert status == 200
    assert [text for _, text in web.seen] == ["hello"]


async def test_a_wrong_secret_is_refused(web: WebRig) -> None:
    assert await web.deliver(web.update(1, "hello"), "wrong") == 403
    assert not web.seen


@pytest.mark.parametrize("body", [[], "text", {"no": "id"}, {"update_id": "1"}])
async def test_what_is_not_an_update_is_refused(web: WebRig, body: Any) -> None:
    assert await web.deliver(body) == 400


async def test_updates_of_one_chat_keep_their_order(web: WebRig) -> None:
    first = asyncio.Event()

    async def slow(update: Any) -> None:
        if update.update_id == 1:
            first.set()
            await asyncio.sleep(0.05)

    web.during = slow
    one = asyncio.create_task(web.deliver(web.update(1, "one")))
    await first.wait()
    await web.deliver(web.update(2, "two"))
    await one

    assert [text for _, text in web.seen] == ["one", "two"]


async def test_a_database_that_stays_away_makes_the_platform_try_again(web: WebRig) -> None:
    async def away(update: Any) -> None:
        raise StorageTrouble("storage-gone")

    web.during = away
    web.bot.intake.storage_waits_s = (0.001, 0.001)
    status = await web.deliver(web.update(1, "hello"))
    web.during = None

    assert status == 503
    assert await web.deliver(web.update(1, "hello")) == 200


async def test_health_and_readiness(web: WebRig) -> None:
    assert await web.get("/healthz") == (200, "ok\n")
    assert await web.get("/readyz") == (200, "ready\n")


async def test_metrics_are_what_prometheus_reads(web: WebRig) -> None:
    await web.deliver(web.update(1, "hello"))
    await web.settle()

    _, text = await web.get("/metrics")
    found = {s.name: s.value for f in text_string_to_metric_families(text) for s in f.samples}
    assert found["tureen_updates_total"] == 1
    assert found["tureen_update_seconds_count"] == 1
    assert found["tureen_posts_total"] == 1
    assert found["tureen_outbox_posts"] == 0
    assert found["tureen_reminders_late_seconds"] == 0
