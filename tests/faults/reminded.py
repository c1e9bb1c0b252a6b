"""Many groups with one reminder each, and what became of them."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from bot.storage import Batch, ChatRecord, PotluckPlace, Store
from bot.texts import Voice
from planning.potluck import Potluck, Say
from planning.reminders import KINDS, reminders
from tests.faults.platform import SENDS, Platform
from tests.faults.stage import ZONE
from tests.faults.table import listed

FIRST_CHAT = -500_000
SAID = Voice().plain("reminder-start")


@dataclass(frozen=True)
class Due:
    key: str
    kind: str
    due_at: datetime
    expires_at: datetime
    about: Say
    to: str = "group"


@dataclass
class Reminded:
    """`count` reminders, the kinds in turns, due evenly over `span` from `first` on."""

    count: int
    first: datetime
    span: timedelta
    chats: dict[int, str] = field(default_factory=dict)
    """The kind by chat."""

    async def store(self, url: str) -> None:
        async with await Store.open(url) as store:
            for begin in range(0, self.count, 200):
                await store.commit(self._batch(range(begin, min(begin + 200, self.count))))

    def _batch(self, numbers: range) -> Batch:
        chats, new, rows = [], [], []
        for n in numbers:
            chat, kind = FIRST_CHAT - n, KINDS[n % len(KINDS)]
            self.chats[chat] = kind
            due_at = self.first + self.span * n / self.count
            potluck = Potluck(f"remind{n}", self.first + timedelta(days=3), ZONE)
            # Every kind says the same here: what counts is when it is said and how often.
            said = next(r.about for r in reminders(potluck, None, self.first) if r.kind == "start")
            due = Due(f"{kind}:{n}", kind, due_at, due_at + timedelta(days=2), said)
            # Equal ends: no quiet hours, which would hold some kinds back.
            chats.append(ChatRecord(chat, "group", f"Plot {n}", ZONE, quiet_from="00:00", quiet_to="00:00"))
            new.append((potluck, PotluckPlace(potluck.id, chat)))
            rows.append((potluck.id, (due,)))
        return Batch(self.first, chats=tuple(chats), new_potlucks=tuple(new), reminders=tuple(rows))

    def sent(self, platform: Platform) -> Counter[int]:
        """By its words: with one kind the board is posted in the same chat, which is no reminder."""
        return Counter(s.chat for s in platform.log if s.method in SENDS and s.chat in self.chats and SAID in s.text)

    def missing(self, platform: Platform) -> list[int]:
        sent = self.sent(platform)
        return [chat for chat in self.chats if not sent[chat]]

    def doubled(self, platform: Platform) -> dict[int, int]:
        """Chats in which it was said more than once, and how often."""
        return {chat: n for chat, n in self.sent(platform).items() if n > 1}

    def told(self, platform: Platform, why: str) -> list[str]:
        """Notes: every doubled one and every missing one."""
        doubled = [f"{self.chats[c]} in {c} ({n} times)" for c, n in self.doubled(platform).items()]
        missing = [f"{self.chats[c]} in {c}" for c in self.missing(platform)]
        return listed(f"doubled, {why}", doubled) + listed("LOST reminders", missing)
