"""A question behind a statement of what somebody cannot eat: two sentences, whatever stands between them.

"My son carries an epipen for peanuts, is the table nut free?" must not be read as a question alone: the allergy would
be lost.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

_TOLD = re.compile(
    r"\b(?:allerg\w*|anaphyl\w*|epi-?\s?pens?|intoleran\w*|c(?:o)?eliacs?|lactose|vegan\w*|vegetarian\w*|veggie|pescatarian\w*|halal|kosher"
    r"|(?:can['’]?t|cannot|can not|must ?n['’]?t|mustn['’]?t|does ?n['’]?t|don['’]?t) (?:have|eat|do|tolerate)"
    r"|al[eé]rg\w*|anafil\w*|cel[ií]ac\w*|no (?:puede|puedo|podemos|pueden|come|como|comemos) (?:comer )?)",
    re.IGNORECASE,
)
_ASKED = (
    r"(?:(?:so|and|but|y|pero|entonces)\s+)?(?:(?:is|are|does|do|did|will|has|have)\s+(?:the|there|this|that|these|those|any|anything|anyone|it|they|he|she|your|our)"
    r"|what(?:['’]?s| is| are| can| could| should| dishes| food| on)|which\s+\w+|can\s+(?:i|we|he|she|they)|anything\s+\w+"
    r"|hay|habr[aá]|lleva|llevan|tiene|tienen|contiene|qu[eé]\s+(?:puede|puedo|podemos|lleva|hay|platos?)|puede\s+comer|puedo\s+comer)\b"
)
_COMMA = re.compile(rf"[,–—-](?=\s+{_ASKED})", re.IGNORECASE)
_JOINT = re.compile(rf"(?<=\s)(?:so|and)(?=\s+(?:is|are|what|which|can)\b)(?=\s+{_ASKED})", re.IGNORECASE)


def told_and_asked(text: str) -> str:
    """The text with a full stop between the two, as long as before, so that places in it stay.

    >>> told_and_asked("i'm allergic to egg, is there egg in the slaw?")
    "i'm allergic to egg. is there egg in the slaw?"
    """
    told = _TOLD.search(text)
    if told is None or ("?" not in text and _COMMA.search(text) is None):
        return text
    found = _COMMA.search(text, told.start()) or _JOINT.search(text, told.start())
    if found is None:
        return text
    return text[: found.start()] + ".".ljust(found.end() - found.start()) + text[found.end() :]
