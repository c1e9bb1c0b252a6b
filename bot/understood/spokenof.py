"""Food that somebody spoke of and what is in it, where it stands on no list: who asks for that food must hear of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta

from bot.context import Turn
from bot.recalling import Memory
from bot.texts import Html
from planning.diets.alarms import Alarm
from planning.diets.asked import DIET, Asked

MOST_NAMED = 4


@dataclass(frozen=True)
class SpokenOf:
    """`foods` as they were said, `marks` what of the tables they hold; `by`: "" where it was told in private."""

    by: str
    foods: tuple[str, ...]
    marks: tuple[str, ...]


SPOKEN_OF = Memory("spoken-of", SpokenOf, timedelta(days=14), of_chat=True, in_group=True)


def remember_spoken(turn: Turn, told: Alarm) -> None:
    """Whether or not anybody at the table must not eat it: such a one may come later."""
    foods = tuple(food for food, _, _ in told.holds)
    marks = sorted({m for _, need, marks in told.holds for m in (*marks, need) if m})
    if foods:
        about = ",".join(foods)[:40]
        by = "" if turn.private else turn.event.person.name
        turn.remember(SPOKEN_OF, SpokenOf(by, foods, tuple(marks)), about)


async def spoken_lines(turn: Turn, asked: tuple[Asked, ...]) -> list[Html]:
    """What was said of the foods asked for by somebody who then put nothing on the list."""
    wanted = [one for one in asked if one.sense != DIET]
    if not wanted:
        return []
    lines = []
    for said in await turn.recall_all(SPOKEN_OF):
        if any(one.need in said.marks or one.marks & set(said.marks) for one in wanted):
            lines.append(turn.voice("eat-spoken-of", what=list(said.foods), name=said.by, known=bool(said.by)))
    return lines[:MOST_NAMED]
