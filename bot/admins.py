"""Who administers a group, asked of the platform and kept for a minute."""

from __future__ import annotations

from datetime import datetime, timedelta

import telegram
from telegram.error import TelegramError

from bot.clock import Clock

FRESH = timedelta(seconds=60)


class Admins:
    def __init__(self, bot: telegram.Bot, clock: Clock) -> None:
        self._bot = bot
        self._clock = clock
        self._known: dict[int, tuple[datetime, frozenset[int]]] = {}

    def forget(self, chat_id: int) -> None:
        self._known.pop(chat_id, None)

    async def is_admin(self, chat_id: int, person_id: int) -> bool:
        """False also when the platform can't be asked: nobody gains a right by a fault."""
        if chat_id > 0:
            return False
        known = self._known.get(chat_id)
        # Not before it was asked either: a clock set back must not keep an old answer.
        if known is None or not timedelta(0) <= self._clock.now() - known[0] <= FRESH:
            try:
                members = await self._bot.get_chat_administrators(chat_id)
            except TelegramError:
                return False
            known = (self._clock.now(), frozenset(m.user.id for m in members))
            self._known[chat_id] = known
        return person_id in known[1]

    async def is_member(self, chat_id: int, person_id: int) -> bool:
        """Whether the person is in the group now; False also when the platform can't be asked."""
        try:
            member = await self._bot.get_chat_member(chat_id, person_id)
        except TelegramError:
            return False
        return member.status in ("creator", "administrator", "member") or bool(getattr(member, "is_member", False))
