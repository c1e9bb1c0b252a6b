"""What every turn shares."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import Any

from bot.buttons import Signer
from bot.clock import Clock
from bot.registry import Registry
from bot.storage.store import Store


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
