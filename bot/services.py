"""What every turn shares."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import Any

from bot.buttons import Signer
from bot.clock import Clock
from bot.floods import Spent
from bot.registry import Registry
from bot.storage.store import Store


async def _nobody_left(chat_id: int, person_id: int) -> bool:
    return False


@dataclass(frozen=True)
class Services:
    """`username` is the bot's own, for deep links."""

    store: Store
    clock: Clock
    signer: Signer
    registry: Registry
    username: str
    is_member: Callable[[int, int], Awaitable[bool]]
    planner: Any = None
    has_left: Callable[[int, int], Awaitable[bool]] = _nobody_left
    """Whether the platform says that a person is not in a group any more; False when it can't be asked."""
    drawn: Spent | None = None
    """Of each potluck how many pictures and papers were asked for; None: as many as anybody likes."""
