"""Pictures, paper and the calendar file.

Every function takes the potluck, the plan as the plan file has it (a dict) and `words(key, **facts)`, and
returns bytes. They are plain functions that take a few ten milliseconds: call them through `asyncio.to_thread`.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime
from typing import Any

from bot.prints import render
from bot.prints.ics import Reminder, calendar_bytes
from bot.prints.say import Words, Writer
from bot.prints.shopping import shopping_data
from bot.prints.table import table_data
from planning.potluck import Guest, Potluck

__all__ = ["Words", "calendar", "shopping_list", "table_picture"]

Plan = Mapping[str, Any]


def table_picture(
    potluck: Potluck, plan: Plan, words: Words, lang: str = "en", *, for_host: bool = False, svg: bool = False
) -> bytes:
    """PNG (or SVG) of the table. Needs are tied to names only when written openly, or for the host."""
    data = table_data(potluck, plan, Writer(potluck, words, lang), for_host=for_host)
    return (render.vector if svg else render.picture)("table", data, lang)


def shopping_list(potluck: Potluck, plan: Plan, words: Words, lang: str = "en", *, link: str | None = None) -> bytes:
    """PDF, US Letter or A4 by the potluck's units."""
    return render.paper("shopping", shopping_data(potluck, plan, Writer(potluck, words, lang), link), lang)


def calendar(
    potluck: Potluck, reminders: Iterable[Reminder], guest: Guest | None, words: Words, stamp: datetime,
    lang: str = "en", *, sequence: int = 0, link: str | None = None,
) -> bytes:
    """Calendar file for one guest (the host's carries the host's reminders), or for everybody when None.

    `stamp` is the time now; `sequence` must grow with every change (the potluck's revision does).
    """
    write = Writer(potluck, words, lang)
    return calendar_bytes(potluck, reminders, guest, write, stamp, sequence=sequence, link=link)
