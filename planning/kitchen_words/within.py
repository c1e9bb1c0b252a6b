"""What there is to cook with, found within a longer line: "Sat 6pm, one oven with two racks, a grill, 30 people"."""

from __future__ import annotations

import re

from planning.kitchen_words.appliances import read_kitchen
from planning.kitchen_words.unread import Unread
from planning.potluck import Kitchen

BURNERS_OF_A_STOVE = 4
"""Common practice, no source."""

_N = r"(?P<n>\d{1,2}|an?|one|two|three|four|five|six|no|zero)"
_KIND = (
    r"(?:(?:big|small|large|little|single|electric|gas|induction|working|outdoor|charcoal|convection|domestic|home|good"
    r"|old|real|kitchen) )*"
)
_FACTS = r"(?P<facts>(?:\d+(?:\.\d+)?[ -]?(?:qts?|quarts?|l|lit(?:er|re)s?|w|watts?|a|amps?) )*)"
_THING = (
    r"(?P<thing>slow[ -]?cookers?|ovens?|stoves?|burners?|hobs?|rings?|hot ?plates?|grills?|barbecues?|bbqs?"
    r"|microwaves?|circuits?|outlets?|sockets?|(?:oven )?racks?|cooks|helpers)"
)
_AFTER = (
    r"(?P<after>(?: (?:of|with|at))? \d+(?:\.\d+)?[ -]?(?:qts?|quarts?|l|w|watts?|a|amps?)\b)?"
    r"(?: (?:in all|in total|each|only|free|there))?"
)
_ITEM = re.compile(rf"(?<![\w.$€£]){_N} {_KIND}{_FACTS}{_THING}\b{_AFTER}", re.IGNORECASE)
_LEAD = re.compile(
    r"(?:(?:with|plus|and|we have|we've got|there is|there's|there are|i have|the kitchen has|kitchen|has|having|only"
    r"|just|about|\+|&)[: ]*)+$",
    re.IGNORECASE,
)
_BETWEEN = re.compile(r"[\s,;+&]*(?:\b(?:and|with|plus|each|has|of)\b[\s,;+&]*)*")
_CALLED = {"hob": "burner", "ring": "burner", "hotplate": "burner", "hot plate": "burner", "bbq": "barbecue",
           "slowcooker": "slow cooker", "slow-cooker": "slow cooker", "oven rack": "rack"}  # fmt: skip
_FEAST = re.compile(r"an? (?:[a-z]+ )*(?:barbecue|bbq)", re.IGNORECASE)
""" "A barbecue" by itself is a feast; a number, or what stands before it, makes it a thing."""


def kitchen_within(text: str, mark: str = " ") -> tuple[str, str]:
    """The text with what it says of appliances replaced by `mark`, and that in the words `read_kitchen` reads.

    >>> kitchen_within("Sat 6pm, one big oven with two racks and 2 slow-cookers, 30 people")
    ('Sat 6pm,  , 30 people', 'one oven, two rack, 2 slow cooker')
    """
    found: list[str] = []
    spans: list[tuple[int, int]] = []
    for match in _ITEM.finditer(text):
        start, end = match.span()
        goes_on = bool(spans) and _BETWEEN.fullmatch(text, spans[-1][1], start) is not None
        words = _said(match)
        if words is None or (not goes_on and _FEAST.fullmatch(match[0])):
            continue
        if goes_on:
            spans[-1] = (spans[-1][0], end)
        else:
            lead = _LEAD.search(text[:start])
            spans.append((lead.start() if lead else start, end))
        found.append(words)
    for start, end in reversed(spans):
        text = f"{text[:start]}{mark}{text[end:]}"
    return text, ", ".join(found)


def _said(match: re.Match[str]) -> str | None:
    """ "1 oven" for "a big oven"; None where it is nothing to cook with."""
    thing = " ".join(match["thing"].casefold().split())
    thing = thing if thing in ("cooks", "helpers") else thing.removesuffix("s")
    thing = _CALLED.get(thing, thing)
    number = match["n"].casefold()
    if thing == "stove":
        stoves = int(number) if number.isdecimal() else 1
        thing, number = "burner", str(BURNERS_OF_A_STOVE * stoves)
    words = f"{number} {match['facts']}{thing}{match['after'] or ''}"
    try:
        read_kitchen(words, Kitchen())
    except Unread:
        return None
    return words
