"""What a turn knows of what was said a little while ago, and what it leaves for the next ones.

"It", "yes" and "I'll take over" mean what was spoken of just before. That is written with the turn that causes it and
read from the store by the turn that needs it, so no process has to have heard both messages.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import timedelta
from typing import Generic, TypeVar

from bot.reading import Reading
from bot.storage.codec import decode, encode
from bot.storage.recollections import CHATS_OWN
from bot.storage.values import Recollection, RecollectionKey

T = TypeVar("T")
MOST_OF_ALL = 40


@dataclass(frozen=True)
class Memory(Generic[T]):
    """One sort of recollection: what it holds (a value planning's codec can write) and how long it counts.

    `of_chat`: the chat's own, else each person's. `in_group`: kept with the potluck's group also when somebody writes
    in private; else it stays in the chat where it was said.
    """

    kind: str
    holds: type[T]
    kept: timedelta
    of_chat: bool = False
    in_group: bool = False


@dataclass
class Recalling(Reading):
    _read: dict[int, dict[RecollectionKey, Recollection]] = field(default_factory=dict)
    _kept: dict[RecollectionKey, Recollection | None] = field(default_factory=dict)

    async def recall(self, what: Memory[T], about: str = "") -> T | None:
        """What this person (or the chat) last said of this sort, this turn included; None once it counts no more.

        The first question of a turn costs one read, the others none."""
        key = self._key(what, about)
        if key in self._kept:
            return _value(what, self._kept[key])
        chat_id = key[0]
        if chat_id not in self._read:
            found = await self.store.recollections(chat_id, self.event.person.id, self.now)
            self._read[chat_id] = {one.key: one for one in found}
        return _value(what, self._read[chat_id].get(key))

    async def recall_all(self, what: Memory[T], most: int = MOST_OF_ALL) -> list[T]:
        """Everything of this sort that counts in the chat, whoever's, the newest first."""
        chat_id = self._chat_of(what)
        stored = await self.store.recollections_of_all(chat_id, what.kind, self.now, most)
        own = [r for r in self._kept.values() if r is not None and (r.chat_id, r.kind) == (chat_id, what.kind)]
        rows = [*reversed(own), *(one for one in stored if one.key not in self._kept)]
        return [value for one in rows if (value := _value(what, one)) is not None][:most]

    def remember(self, what: Memory[T], value: T, about: str = "") -> None:
        """Keep it for whoever takes the next messages; a newer one about the same takes its place."""
        key = self._key(what, about)
        potluck_id = self.stored.potluck.id if self.stored is not None else None
        self._kept.pop(key, None)
        self._kept[key] = Recollection(
            key[0], key[1], what.kind, encode(value), self.now, self.now + what.kept, about, potluck_id
        )

    def let_go(self, what: Memory[T], about: str = "") -> None:
        """It is settled."""
        self._kept[self._key(what, about)] = None

    def _chat_of(self, what: Memory[T]) -> int:
        return self.place.chat_id if what.in_group else self.event.chat_id

    def _key(self, what: Memory[T], about: str) -> RecollectionKey:
        person = CHATS_OWN if what.of_chat else self.event.person.id
        return self._chat_of(what), person, what.kind, about


def _value(what: Memory[T], one: Recollection | None) -> T | None:
    if one is None:
        return None
    try:
        value: T = decode(what.holds, one.value)
    except (TypeError, KeyError, ValueError):
        return None  # written by another version of the bot: as if nobody had said it
    return value
