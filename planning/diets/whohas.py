"""Asked who has which allergies or diets: "who has what allergies again?", "¿quién es alérgico a qué?"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

LONGEST = 120
_NEEDS = r"(?:food |known |special )?(?:allerg(?:y|ies|ic)|diets?|dietary (?:needs?|restrictions?|requirements?)|food (?:needs?|restrictions?)|intoleran(?:t|ces?)|special diets?)"
_LEAD = r"(?:(?:hey|ok|okay|so|and|wait|sorry|again|quick question|remind me|can you (?:remind|tell) me|tell me|oye|oigan|a ver|y|perdón)[ ,:-]*)*"
_TAIL = r"(?:[ ,]*(?:again|here|coming|tonight|today|please|so far|in this group|in the group|at the table|otra vez|por favor|hoy|aquí|de nuevo))*"
_ASKS = re.compile(
    rf"{_LEAD}(?:who(?:'s| is| has| all has| all is|s)? (?:got |have )?(?:(?:what|which|any|the|an) )?{_NEEDS}(?: to what)?"
    rf"|(?:what|which) {_NEEDS} (?:do we have|are there|do people have|does everyone have|have we (?:got)?|should i know(?: about)?|are we dealing with|were there)"
    rf"|any {_NEEDS}(?: to know about| i should know(?: about)?| at all)?"
    rf"|(?:are there|do we have|does anyone have|has anyone(?: got)?|did anyone (?:mention|say)|is anyone|anyone|anybody)(?: have)? (?:any |with |with any )?{_NEEDS}(?: to know about)?"
    r"|(?:quién(?:es)?|quien(?:es)?) (?:es|son|tiene|tienen) (?:alérgic[oa]s?|alergic[oa]s?|(?:qué |que )?(?:alergias?|dietas?))(?: a (?:qué|que|algo))?"
    rf"|(?:qué|que) (?:alergias?|dietas?) (?:hay|tenemos|tiene la gente)|hay (?:alguna? )?(?:alergias?|alérgic[oa]s?)){_TAIL}",
    re.IGNORECASE,
)


def asks_who_has_needs(words: str) -> bool:
    """Whether the whole message asks that.

    >>> asks_who_has_needs("who has what allergies again?"), asks_who_has_needs("who's allergic to cats?")
    (True, False)
    """
    plain = " ".join(words[: LONGEST + 1].replace("’", "'").split()).strip(" .!?¿¡…")
    return len(words) <= LONGEST and _ASKS.fullmatch(plain) is not None
