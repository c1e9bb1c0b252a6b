"""Whether words below an open question are its answer, or business of their own."""

from __future__ import annotations

import re

from bot.context import Turn
from bot.understood.context import context
from planning.replies import (
    AddPromise,
    Ask,
    CallOff,
    KitchenSays,
    Late,
    MoveTo,
    Reschedule,
    Resize,
    SetAnswer,
    SetNeeds,
    Undo,
    read,
)

ABOUT_IT_ALL = (Reschedule, CallOff, Undo, KitchenSays, Late)
SURE = 0.8
_I = re.compile(r"\b(?:i|we)\b|\b(?:i|we)['\u2019]|\b(?:yo|traigo|llevo|vengo|venimos|soy|somos)\b", re.IGNORECASE)


def other_business(turn: Turn) -> bool:
    """ "Let's move it to Sunday" below "Where is it?" is no place: true where the words say something else."""
    kind = turn.dialog.kind if turn.dialog is not None else ""
    if kind not in ("place", "people") or not turn.has_potluck:
        return False
    if turn.words.rstrip().endswith("?"):
        return True
    found = read(turn.words[:1000], context(turn, replying_to="bot")).intents
    if any(isinstance(i, ABOUT_IT_ALL) for i in found):
        return True
    if kind == "people":
        return any(isinstance(i, MoveTo) for i in found)
    if any(isinstance(i, Resize) or (isinstance(i, Ask) and i.confidence >= SURE) for i in found):
        return True
    if any(isinstance(i, SetNeeds) for i in found):
        return True
    own = [i for i in found if isinstance(i, (AddPromise, SetAnswer)) and not getattr(i, "implied", False)]
    return any(i.confidence >= SURE for i in own) and _I.search(turn.words) is not None
