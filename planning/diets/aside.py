"""A diet said behind one's dish by itself: "vegan tho". It may be of the dish or of who cooks it."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

LONGEST = 60
_DIETS = r"vegan|vegetarian|veggie|gluten[- ]free|dairy[- ]free|lactose[- ]free|nut[- ]free|egg[- ]free|halal|kosher|vegan[oa]s?|vegetarian[oa]s?|sin gluten|sin lactosa|sin lácteos|sin frutos secos|sin huevo"
_ASIDE = re.compile(
    rf"(?:(?:and|but|oh|also|which is|all|y|pero|ah)[ ,]+)*(?P<diet>{_DIETS})(?:[ ,]+(?:tho|though|btw|by the way|fyi|of course|obviously|just so you know|eso sí|por cierto|claro|que conste))+"
)


def diet_aside(words: str) -> str | None:
    """The diet of such an aside as it was said, or None.

    >>> diet_aside("Vegan tho!"), diet_aside("vegan"), diet_aside("my wife is vegan tho")
    ('vegan', None, None)
    """
    plain = " ".join(words[:LONGEST].casefold().split()).strip(" .!…")
    found = _ASIDE.fullmatch(plain)
    return found["diet"] if found is not None else None
