"""What every part of the store shares: the runner, the turns' reader, the group writer and the cache."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.storage.group import GroupWriter
from bot.storage.turns import TurnReader
from planning.potluck import Potluck

if TYPE_CHECKING:
    from bot.storage.engine import Runner


class PotluckCache:
    """Potlucks by id at a known revision. Values are frozen, so they can be shared; a revision
    never comes back with other content, so an entry is right or is not used. Oldest use goes first."""

    def __init__(self, most: int = 500) -> None:
        self._most = most
        self._known: dict[str, tuple[int, Potluck]] = {}

    def get(self, potluck_id: str, revision: int) -> Potluck | None:
        known = self._known.get(potluck_id)
        if known is None or known[0] != revision:
            return None
        self._known[potluck_id] = self._known.pop(potluck_id)
        return known[1]

    def put(self, potluck: Potluck, revision: int) -> None:
        known = self._known.pop(potluck.id, None)
        if known is not None and known[0] > revision:  # an older reading that took its time
            self._known[potluck.id] = known
            return
        self._known[potluck.id] = (revision, potluck)
        if len(self._known) > self._most:
            del self._known[next(iter(self._known))]

    def drop(self, potluck_id: str) -> None:
        self._known.pop(potluck_id, None)


class Base:
    _runner: Runner
    _writer: GroupWriter
    _turns: TurnReader
    _cache: PotluckCache
