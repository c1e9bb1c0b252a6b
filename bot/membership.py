"""Whether somebody who writes in private still belongs to the group whose potluck they write about."""

from __future__ import annotations

from bot.services import Services
from bot.storage.values import Stored
from planning.potluck import Answer


async def is_outside(services: Services, stored: Stored, person_id: int) -> bool:
    """True only when the platform says that they left or were removed. It is asked about those who are no guest
    or don't come (whoever leaves is taken off): of the others nothing new would be learnt."""
    guest = stored.potluck.guest(str(person_id))
    if guest is not None and guest.answer is not Answer.NO:
        return False
    return await services.has_left(stored.place.chat_id, person_id)
