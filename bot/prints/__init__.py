"""Pictures, paper and the calendar file.

Every function takes the potluck, the plan as the plan file has it (a dict) and `words(key, **facts)`, and
returns bytes. They are plain functions that take a few ten milliseconds: call them through `asyncio.to_thread`.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime
from pathlib import Path
from typing import Any

from bot.prints import render
from bot.prints.bar import bar_menu_data
from bot.prints.cards import ListedOf, cards_data, listed_by_planning, name_tags_data
from bot.prints.ics import Reminder, calendar_bytes
from bot.prints.run_sheet import run_sheet_data
from bot.prints.say import Words, Writer
from bot.prints.shopping import shopping_data
from bot.prints.table import table_data
from bot.prints.timeline import timeline_data
from planning.potluck import Guest, Potluck

__all__ = [
    "Words",
    "bar_menu",
    "calendar",
    "name_tags",
    "run_sheet",
    "shopping_list",
    "table_cards",
    "table_picture",
    "timeline_picture",
    "write_all",
]

Plan = Mapping[str, Any]


def table_picture(
    potluck: Potluck, plan: Plan, words: Words, lang: str = "en", *, for_host: bool = False, svg: bool = False
) -> bytes:
    """PNG (or SVG) of the table. Needs are tied to names only when written openly, or for the host."""
    write = Writer(potluck, words, lang)

    def shaped(columns: int) -> dict[str, Any]:
        return table_data(potluck, plan, write, for_host=for_host, at_least_columns=columns)

    return render.vector("table", shaped(1), lang) if svg else render.picture("table", shaped, lang)


def timeline_picture(
    potluck: Potluck, plan: Plan, words: Words, lang: str = "en", *, now: datetime | None = None, svg: bool = False
) -> bytes:
    """PNG (or SVG) of the kitchen: appliances as rows, when the oven changes, who arrives; a line at `now`."""
    write = Writer(potluck, words, lang)

    def shaped(columns: int) -> dict[str, Any]:
        return timeline_data(potluck, plan, write, now, at_least_columns=columns)

    return render.vector("timeline", shaped(1), lang) if svg else render.picture("timeline", shaped, lang)


def run_sheet(potluck: Potluck, plan: Plan, words: Words, lang: str = "en", *, link: str | None = None) -> bytes:
    """PDF a cook can follow without a phone."""
    return render.paper("run_sheet", run_sheet_data(potluck, plan, Writer(potluck, words, lang), link), lang)


def shopping_list(potluck: Potluck, plan: Plan, words: Words, lang: str = "en", *, link: str | None = None) -> bytes:
    """PDF, US Letter or A4 by the potluck's units."""
    return render.paper("shopping", shopping_data(potluck, plan, Writer(potluck, words, lang), link), lang)


def table_cards(
    potluck: Potluck, plan: Plan, words: Words, lang: str = "en", *, listed: ListedOf = listed_by_planning
) -> bytes:
    """PDF of folded cards, two a page (one where the text is long), with what each dish lists and who said so."""
    return render.paper("cards", cards_data(potluck, Writer(potluck, words, lang), listed), lang)


def bar_menu(
    potluck: Potluck,
    plan: Plan,
    words: Words,
    lang: str = "en",
    *,
    listed: ListedOf = listed_by_planning,
    link: str | None = None,
) -> bytes:
    """PDF of the combos that can be built today and of the toppings with their amounts."""
    return render.paper("bar_menu", bar_menu_data(potluck, plan, Writer(potluck, words, lang), listed, link), lang)


def name_tags(potluck: Potluck, plan: Plan, words: Words, lang: str = "en") -> bytes:
    """PDF of tags that say whose each dish is, so that it goes home with them."""
    return render.paper("name_tags", name_tags_data(potluck, Writer(potluck, words, lang)), lang)


def calendar(
    potluck: Potluck,
    reminders: Iterable[Reminder],
    guest: Guest | None,
    words: Words,
    stamp: datetime,
    lang: str = "en",
    *,
    sequence: int = 0,
    link: str | None = None,
) -> bytes:
    """Calendar file for one guest (the host's carries the host's reminders), or for everybody when None.

    `stamp` is the time now; `sequence` must grow with every change (the potluck's revision does).
    """
    write = Writer(potluck, words, lang)
    return calendar_bytes(potluck, reminders, guest, write, stamp, sequence=sequence, link=link)


def write_all(
    potluck: Potluck,
    plan: Plan,
    out_dir: Path | str,
    words: Words,
    lang: str = "en",
    *,
    now: datetime,
    reminders: Iterable[Reminder] = (),
    link: str | None = None,
    listed: ListedOf = listed_by_planning,
) -> list[Path]:
    """Everything there is, written into a folder; the bar's menu only with a bar."""
    out = Path(out_dir)
    out.mkdir(parents=True, exist_ok=True)
    files = {
        "table.png": table_picture(potluck, plan, words, lang),
        "kitchen.png": timeline_picture(potluck, plan, words, lang, now=now),
        "run-sheet.pdf": run_sheet(potluck, plan, words, lang, link=link),
        "table-cards.pdf": table_cards(potluck, plan, words, lang, listed=listed),
        "shopping-list.pdf": shopping_list(potluck, plan, words, lang, link=link),
        "name-tags.pdf": name_tags(potluck, plan, words, lang),
        "calendar.ics": calendar(potluck, reminders, None, words, now, lang, link=link),
    }
    if potluck.bar:
        files["bar-menu.pdf"] = bar_menu(potluck, plan, words, lang, listed=listed, link=link)
    for name, content in files.items():
        (out / name).write_bytes(content)
    return [out / name for name in files]
