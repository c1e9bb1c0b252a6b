"""Who administers a group and who is in it, asked of the platform and kept for a minute."""

from __future__ import annotations

from collections import OrderedDict
from datetime import datetime, timedelta

import telegram
from telegram.error import TelegramError

from bot.clock import Clock

FRESH = timedelta(seconds=60)
MOST_KNOWN = 2000


class Admins:
    def __init__(self, bot: telegram.Bot, clock: Clock) -> None:
        self._bot = bot
        self._clock = clock
        self._known: OrderedDict[int, tuple[datetime, frozenset[int]]] = OrderedDict()
        self._here: OrderedDict[tuple[int, int], tuple[datetime, bool]] = OrderedDict()

    def forget(self, chat_id: int) -> None:
        self._known.pop(chat_id, None)
        for key in [k for k in self._here if k[0] == chat_id]:
            del self._here[key]

    async def is_admin(self, chat_id: int, person_id: int, *, anew: bool = False) -> bool:
        """False also when the platform can't be asked: nobody gains a right by a fault. `anew` trusts no answer
        that was kept: another process may have heard of a change that this one did not."""
        if chat_id > 0:
            return False
        known = self._known.get(chat_id)
        # Not before it was asked either: a clock set back must not keep an old answer.
        if anew or known is None or not timedelta(0) <= self._clock.now() - known[0] <= FRESH:
            try:
                members = await self._bot.get_chat_administrators(chat_id)
            except TelegramError:
                return False
            known = self._known[chat_id] = (self._clock.now(), frozenset(m.user.id for m in members))
            self._known.move_to_end(chat_id)
            if len(self._known) > MOST_KNOWN:
                self._known.popitem(last=False)
        return person_id in known[1]

    async def is_member(self, chat_id: int, person_id: int) -> bool:
        """Whether the person is in the group now; False also when the platform can't be asked."""
        try:
            member = await self._bot.get_chat_member(chat_id, person_id)
        except TelegramError:
            return False
        return member.status in ("creator", "administrator", "member") or bool(getattr(member, "is_member", False))

    async def has_left(self, chat_id: int, person_id: int) -> bool:
        """Whether the platform says that the person is not in the group; False when it can't be asked, so that a
        fault of the line takes nobody's place. Kept for a minute."""
        known = self._here.get((chat_id, person_id))
        if known is None or not timedelta(0) <= self._clock.now() - known[0] <= FRESH:
            try:
                member = await self._bot.get_chat_member(chat_id, person_id)
            except TelegramError:
                return False
            gone = member.status in ("left", "kicked")
            gone |= member.status == "restricted" and not getattr(member, "is_member", True)
            known = self._here[chat_id, person_id] = (self._clock.now(), gone)
            if len(self._here) > MOST_KNOWN:
                self._here.popitem(last=False)
        return known[1]
