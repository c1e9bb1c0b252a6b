"""A room with the small bot in it, and a browser window on its page."""

from __future__ import annotations

import asyncio
import shutil
from collections.abc import AsyncIterator, Callable, Sequence
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from playwright.async_api import Browser, Page, async_playwright

from bot.room.serve import PEOPLE, empty_script, serve_room
from tests.room.fake_bot import FakeBot

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
FLAGS = (
    "--no-sandbox --disable-gpu --disable-background-networking --disable-component-update --disable-sync "
    "--no-first-run --disable-dev-shm-usage"
)
START = datetime(2027, 9, 10, 14, tzinfo=UTC)


def in_a_browser(test: Callable[..., Any]) -> Any:
    """A test on the event loop that the browser lives on: starting one for each would take longer than the tests."""
    return pytest.mark.browser(pytest.mark.asyncio(loop_scope="session")(test))


@asynccontextmanager
async def a_browser() -> AsyncIterator[Browser]:
    async with async_playwright() as driver:
        browser = await driver.chromium.launch(executable_path=CHROMIUM, args=FLAGS.split())
        yield browser
        await browser.close()


@asynccontextmanager
async def open_room(tmp_path: Path, people: Sequence[str] = PEOPLE, title: str = "Plot 9 Supper") -> AsyncIterator[str]:
    stop = asyncio.Event()
    address: asyncio.Future[str] = asyncio.get_running_loop().create_future()
    shelf: dict[str, Any] = {}
    room = asyncio.ensure_future(
        serve_room(
            empty_script(START, "America/Chicago", people, title),
            tmp_path / "out",
            lambda setup: FakeBot(setup, shelf),
            ready=address.set_result,
            stop=stop,
            keep_ticking=False,
            decisions=lambda _: [{"at": "2027-09-10T09:00", "what": "Counted Ravi in", "why": "pressed Coming"}],
        )
    )
    try:
        yield await address
    finally:
        stop.set()
        await room


@dataclass
class Window:
    page: Page
    complaints: list[str]
    """Console errors, and requests that went anywhere else."""

    async def be(self, name: str) -> None:
        await self.page.locator("#who label", has_text=name).click()

    async def say(self, pane: str, text: str) -> None:
        await self.page.fill(f"#{pane}-text", text)
        await self.page.press(f"#{pane}-text", "Enter")


@asynccontextmanager
async def opened(
    browser: Browser,
    tmp_path: Path,
    width: int = 1280,
    height: int = 820,
    language: str = "en-US",
    dark: bool = False,
    people: Sequence[str] = PEOPLE,
    title: str = "Plot 9 Supper",
) -> AsyncIterator[Window]:
    """A window of its own: it shares no cookie and no storage with another."""
    async with open_room(tmp_path, people, title) as address:
        page = await browser.new_page(
            viewport={"width": width, "height": height}, locale=language, color_scheme="dark" if dark else "light"
        )
        page.set_default_timeout(10_000)
        w = Window(page, [])
        page.on("console", lambda m: w.complaints.append(m.text) if m.type == "error" else None)
        page.on("pageerror", lambda error: w.complaints.append(str(error)))
        page.on("request", lambda r: None if r.url.startswith((address, "data:")) else w.complaints.append(r.url))
        await page.goto(address)
        await page.wait_for_selector("#who label")
        yield w
        await page.close()
