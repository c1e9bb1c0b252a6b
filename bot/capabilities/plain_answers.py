"""Where the bot sees everything, the next plain message of whoever was asked may be the answer."""

import re

from bot.capabilities.confirming import plain_answer
from bot.context import Turn
from bot.registry import Registry
from bot.understood.fitting import other_business

NUMBERED = ("people", "hour")
_PLACE = re.compile(
    r"(?:it['’]?s |it is |we meet )?(?:at|in|on|behind|by|near|@|the|our|my|\d+)\b[^?]{2,60}", re.IGNORECASE
)
_WHEN = re.compile(r"\d|day\b|tomorrow|tonight|noon", re.IGNORECASE)


def _fits(turn: Turn) -> bool:
    """Whether words that nobody addressed to the bot can be nothing but the answer to its open question."""
    words = turn.words.strip()
    kind = turn.dialog.kind if turn.dialog is not None else ""
    if "?" in words or len(words) > 60 or other_business(turn):
        return False
    if kind in NUMBERED:
        return any(c.isdecimal() for c in words) and len(words) <= 30
    if kind == "when":
        return _WHEN.search(words) is not None
    if kind == "place":
        return _PLACE.fullmatch(words) is not None
    return kind in ("confirm", "callsure") and turn.has_potluck and plain_answer(turn) is not None


async def read_plain(turn: Turn) -> None:
    event = turn.event
    if turn.private or not event.is_words:
        return
    if event.reply_to is not None or turn.dialog is None or not turn.question_is_fresh or not _fits(turn):
        return
    owner = turn.services.registry.questions.get(turn.dialog.kind)
    if owner is not None:
        turn.handled = True
        await owner(turn)


def register(app: Registry) -> None:
    app.reader(read_plain, order=40)
