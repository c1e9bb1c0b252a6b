"""In words: is there enough of it, how much is needed of it - from the list and the tables of portions."""

from __future__ import annotations

import math
import re

from bot.capabilities.buying import amount_of
from bot.context import Turn
from bot.goods import meant
from bot.naming import dishes_named
from bot.registry import Registry
from bot.servings import amount_words
from bot.texts import Html
from bot.understood.asking import addressed, asked_in, read_further
from planning.headcount import headcount
from planning.menu import servings_of
from planning.portions import Item, find
from planning.portions.wanted import item_of
from planning.potluck import Promise

MOST_NAMED = 6
_ARTICLE = re.compile(r"^(?:the|my|our|some|more|any|el|la|los|las|mi|mis|m[aá]s|de)\s+")


async def read_amounts(turn: Turn) -> None:
    found = asked_in(turn, "enough", "how-much")
    if found is None:
        return
    thing = _ARTICLE.sub("", found["thing"])
    named = dishes_named(turn, thing, turn.potluck.promises)[:MOST_NAMED]
    item = _item(turn, thing, named)
    if item is None and not (named and (addressed(turn) or found.question)):
        return
    lines = []
    if named:
        lines.append(_on_the_list(turn, named))
    elif item is not None and found.kind == "enough":
        lines.append(turn.voice("enough-nobody", thing=thing))
    if item is not None and (row := amount_of(turn, item)) is not None:
        lines.append(row)
    if not lines:
        return
    turn.post(Html("\n".join(lines)))
    read_further(turn, found)


def _item(turn: Turn, thing: str, named: list[Promise]) -> Item | None:
    own = find(thing) or find(meant(turn.voice, thing))
    return own or (item_of(named[0]) if named else None)


def _on_the_list(turn: Turn, named: list[Promise]) -> Html:
    """How many portions are promised, and how many everybody taking one would be."""
    count = headcount(turn.potluck)
    have = sum(servings_of(p, count) for p in named)
    wanted = math.ceil(count.eaters - 1e-9)
    rows = []
    for p in named:
        cook = turn.potluck.guest(p.guest)
        amount = amount_words(turn.voice, turn.potluck, p)
        rows.append(turn.voice.plain("enough-row", dish=p.dish, amount=amount, name=cook.name if cook else ""))
    return turn.voice("enough-listed", rows=rows, have=math.floor(have), wanted=wanted, people=count.at_service_level,
                      short=max(0, wanted - math.floor(have)))  # fmt: skip


def register(app: Registry) -> None:
    app.reader(read_amounts, order=29)
