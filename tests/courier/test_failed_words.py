"""Why a reminder was lost is told in words, not by the key of a text."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import pytest

from bot.courier.delivery import _WHY
from bot.rehearsed import Rehearsed
from bot.texts import Voice

KEYS = [*_WHY.values(), "courier-why-refused", "courier-why-doubt", "courier-why-late", "courier-why-line"]


@dataclass
class Lost:
    why: str

    def take_failed_reminders(self) -> list[tuple[int, str, str]]:
        return [(-1001, "bring", self.why)]


@pytest.mark.parametrize("key", KEYS)
def test_a_rehearsal_says_why_a_reminder_was_lost_in_words(key: str) -> None:
    setup: Any = None
    rehearsed = Rehearsed(setup, file=object())  # type: ignore[arg-type]
    rehearsed._bot = Lost(key)  # type: ignore[assignment]

    assert rehearsed.take_failed_reminders() == [(-1001, "bring", Voice().plain(key))]
    assert key not in Voice().plain(key)
