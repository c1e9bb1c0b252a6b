"""Every test runs on SQLite and on a real PostgreSQL that is started for it."""

from __future__ import annotations

from collections.abc import AsyncIterator

import pytest

from bot.storage import Store


@pytest.fixture
async def store(url: str) -> AsyncIterator[Store]:
    opened = await Store.open(url)
    yield opened
    await opened.close()
