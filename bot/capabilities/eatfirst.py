"""In words: may the sides be eaten before the rest is ready?"""

from __future__ import annotations

import re
from datetime import timedelta

from bot.context import Turn
from bot.naming import dishes_named
from bot.registry import Registry
from bot.understood.asking import addressed, asked_in
from planning.potluck import CATEGORIES, Promise
from planning.safety.words import perishable
from planning.theday.begun import waits_for

BEFORE = timedelta(hours=8)
MOST = 8
_ARTICLE = re.compile(r"^(?:with |con )?(?:the |our |los |las |el |la )")


async def read_first(turn: Turn) -> None:
    if not turn.has_potluck or not turn.potluck.starts_at - BEFORE <= turn.now <= turn.potluck.ends:
        return
    found = asked_in(turn, "eat-first")
    if found is None:
        return
    thing = _ARTICLE.sub("", found["thing"])
    meant = _meant(turn, thing)
    if not meant and not addressed(turn):
        return
    without = re.search(r"\bwithout\b|\bsin\b", turn.words.casefold()) is not None
    first = [p for p in turn.potluck.promises if p not in meant and p.category in CATEGORIES[:5]] if without else meant
    wait = waits_for(turn.potluck)
    first = [p for p in first if wait is None or p != wait[0]]
    if not first:
        return
    turn.handled = True
    turn.say(
        "eatfirst", dishes=[p.dish for p in first[:MOST]], clocks=any(perishable(p) for p in first),
        waits=wait[0].dish if wait is not None else "", ready=turn.voice.time(wait[1]) if wait is not None else "",
    )  # fmt: skip


def _meant(turn: Turn, thing: str) -> list[Promise]:
    """Dishes of the sort that is named, or the dish."""
    promises = turn.potluck.promises
    for category in CATEGORIES:
        words = turn.voice.plain(f"category-{category}").casefold().split()
        if any(thing.rstrip("s").removesuffix("e") == w.rstrip("s").removesuffix("e") for w in words) or thing in (
            category,
            f"{category}s",
        ):
            return [p for p in promises if p.category == category]
    return dishes_named(turn, thing, promises)


def register(app: Registry) -> None:
    app.reader(read_first, order=27)
