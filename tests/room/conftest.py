from collections.abc import AsyncIterator
from functools import partial
from typing import Any

import pytest
import pytest_asyncio
from playwright.async_api import Browser

from tests.room.browsing import a_browser, opened


@pytest_asyncio.fixture(scope="session", loop_scope="session")
async def browser() -> AsyncIterator[Browser]:
    async with a_browser() as browser:
        yield browser


@pytest.fixture
def window(browser: Browser) -> Any:
    """`async with window(tmp_path, ...)`: the page of a new room."""
    return partial(opened, browser)
