"""What is reckoned with: how many of each answer come, for how sure a table, for how hungry a crowd."""

import re

from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, set_hearty, set_odds, set_service_level
from planning.headcount import headcount, odds_in_words

FIGURE = re.compile(r"\b(yes|maybe|none)\s*[:=]?\s*(\d{1,3})\s*%?", re.IGNORECASE)
LEVEL = re.compile(r"^(?:level|sure)\s*[:=]?\s*(\d{1,2})\s*%?$", re.IGNORECASE)
HUNGER = {"hearty": 1.0, "hungry": 1.0, "usual": 0.0, "light": 0.0}


async def command(turn: Turn) -> None:
    """/reckon shows it; /reckon yes 95 maybe 40 none 10; /reckon level 85; /reckon hearty; /reckon default."""
    words = turn.words.strip().casefold()
    if words:
        _set(turn, words)
    potluck = turn.potluck
    count = headcount(potluck)
    lines = [
        turn.voice.say(odds_in_words(potluck)),
        turn.voice(
            "reckon-level",
            level=round(potluck.service_level * 100),
            people=count.at_service_level,
            expected=round(count.expected),
            hearty=potluck.hearty > 0,
        ),
    ]
    turn.post(Html("\n".join(lines)), buttons=[[turn.undo_button()]] if words else ())


def _set(turn: Turn, words: str) -> None:
    potluck, by = turn.potluck, turn.actor
    if words in ("default", "learned"):
        turn.change(set_odds(potluck, by, None), "did-reckon")
    elif words in HUNGER:
        turn.change(set_hearty(potluck, by, HUNGER[words]), "did-reckon")
    elif (level := LEVEL.match(words)) is not None:
        turn.change(set_service_level(potluck, by, int(level[1]) / 100), "did-reckon")
    elif figures := FIGURE.findall(words):
        said = {answer.casefold(): int(n) / 100 for answer, n in figures}
        turn.change(set_odds(potluck, by, {**(potluck.answer_odds or {}), **said}), "did-reckon")
    else:
        raise Refusal("refused-odds")


def register(app: Registry) -> None:
    app.command("reckon", command, order=36, hosts=True)
