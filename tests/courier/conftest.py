from collections.abc import AsyncIterator
from pathlib import Path

import pytest_asyncio

from tests.courier.rig import Rig


@pytest_asyncio.fixture
async def rig(tmp_path: Path) -> AsyncIterator[Rig]:
    async with Rig(tmp_path) as rig:
        yield rig
