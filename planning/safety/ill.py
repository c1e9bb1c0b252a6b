"""A cook who is, or was, ill with what food passes on (ILL-01: vomiting or diarrhea, two days after the last of it)."""

from __future__ import annotations

import re
from datetime import datetime, timedelta

ILL_WAIT = timedelta(hours=48)
"""ILL-01: two days after the last symptom."""

_WHO = (
    r"\b(?:i|we|i['’]?m|i['’]?ve|we['’]?ve|we['’]?re"
    r"|(?:my|our) (?:kids?|son|daughter|husband|wife|partner|whole family|family|baby))\b"
)
_SIGNS = (
    r"(?:throw(?:ing|n)? up|threw up|vomit\w*|puk(?:ing|ed)|diarrh\w+|stomach (?:bug|flu)|norovirus|gastro\w*"
    r"|food poisoning|the runs|been sick all night|sick to (?:my|our) stomach)"
)
_SAID = re.compile(rf"{_WHO}[^.!?]{{0,40}}?\b{_SIGNS}", re.IGNORECASE)
_NOT_SO = re.compile(
    rf"\b(?:no|not|never|without|if|nobody|avoid|don['’]?t want)\b[^.!?]{{0,30}}?{_SIGNS}"
    rf"|{_SIGNS}[^.!?]{{0,20}}?\blast (?:year|month|time|summer|winter)\b",
    re.IGNORECASE,
)


def may_cook_from(last_symptom: datetime) -> datetime:
    """The first moment at which somebody who was ill may prepare food for others."""
    return last_symptom + ILL_WAIT


def told_ill(text: str) -> bool:
    """Whether somebody says of themselves or their household that they are ill so.

    >>> told_ill("I was throwing up last night"), told_ill("that soup will not give us food poisoning")
    (True, False)
    """
    said = text[:500]
    return "?" not in said and _SAID.search(said) is not None and _NOT_SO.search(said) is None
