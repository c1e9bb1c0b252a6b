"""Questions about food that some people leave out: raw eggs, raw milk, raw fish, sprouts, cold cuts; and what somebody
says they swell up from.

Which words are which stands in `data/safety_words.csv`; the rules are those of `guests.py`.
"""

from __future__ import annotations

import re

from planning.potluck import Promise
from planning.safety.guests import LISTERIA
from planning.safety.words import words

_ASKS = re.compile(
    r"\?|\b(?:is (?:that|this|it) (?:a problem|ok|okay|fine|bad)|can (?:i|she|we|they) (?:eat|have)|ok for|"
    r"okay for|problema|puedo comer)\b",
    re.IGNORECASE,
)
_ABOUT = re.compile(
    r"\b(?:eat|have (?:it|some|that)|problem|ok|okay|fine|safe|bad|pregnan\w*|baby|toddler|comer\w*|come|problema|"
    r"embaraz\w*|bebé|puede|sirve|bien)\b",
    re.IGNORECASE,
)
_FOREIGN = (
    (re.compile(r"\bleche (?:bronca|cruda|sin pasteurizar)\b|\b(?:sin|no) pasteuriza\w+"), "raw milk"),
    (re.compile(r"\bhuevos? crudos?\b"), "raw egg"),
    (re.compile(r"\bpescado crudo\b|\bmariscos? crudos?\b"), "sashimi"),
    (re.compile(r"\b(?:brotes|germinados)\b"), "sprouts"),
)
_SYMPTOM = (
    r"(?:swells? up|swelling up|breaks? out|gets? hives|(?:his|her|my|their) throat (?:closes|swells|itches)|"
    r"(?:ends? up|lands?|landed) in (?:the )?(?:hospital|er)|can'?t breathe|goes into shock|has (?:a )?reactions?)"
)
_NO_FOOD_SYMPTOM = re.compile(
    rf"\bno (?P<food>[a-z]+(?: (?!because|bc|cause|since|please|my|i\b)[a-z]+)?)"
    rf"(?:,| please|\.| -|;)*\s+(?:please,?\s+)?(?:because |bc |cause |since )?"
    rf"(?:(?P<i>i)|my (?P<who>\w+)) {_SYMPTOM}",
    re.IGNORECASE,
)


def risky(text: str) -> tuple[tuple[str, str], ...]:
    """(tag, rule) of each sort of risky food a question names; () where nothing is asked of any.

    >>> risky("i'd bring the tiramisu but it has raw eggs, is that a problem?")
    (('raw-egg', 'SPEC-04'),)
    """
    plain = " ".join(text.casefold().split())
    if len(plain.split()) > 40 or not (_ASKS.search(plain) and _ABOUT.search(plain)):
        return ()
    for pattern, english in _FOREIGN:
        plain = pattern.sub(english, plain)
    named = Promise("", "", plain, "main")
    found = [(tag, rule) for tag, rule, _ in LISTERIA if words(named, tag)]
    if re.search(r"\braw eggs?\b", plain):
        found.append(("raw-egg", "SPEC-04"))
    return tuple(found)


def swells_from(text: str) -> str | None:
    """ "Please no kiwi, my daughter swells up" in the words of an allergy; None for other words.

    >>> swells_from("Whoever's doing desserts, please no kiwi, my daughter swells up")
    'my daughter is allergic to kiwi'
    """
    said = _NO_FOOD_SYMPTOM.search(text.replace("’", "'"))
    if said is None:
        return None
    whose = "i am" if said["i"] else f"my {said['who']} is"
    return f"{whose} allergic to {said['food'].casefold().removesuffix(' please')}"
