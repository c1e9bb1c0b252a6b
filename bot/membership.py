"""Whether somebody who writes in private still belongs to the group whose potluck they write about."""

from __future__ import annotations

from bot.services import Services
from bot.storage.values import Stored


async def is_outside(services: Services, stored: Stored, person_id: int) -> bool:
    """True only when the platform says that they left or were removed. Guests are asked about too: a group need not
    tell us of everybody who goes (only an administrator hears of all)."""
    return await services.has_left(stored.place.chat_id, person_id)
