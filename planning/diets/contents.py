"""What a sentence says is in a dish: "there is peanut oil in my soup", "mi tarta tiene almendra molida"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator

from planning.diets.ingredients import find

LONGEST = 240
MOST = 12
MOST_WORDS = 4
"""An ingredient of more words is a story (common practice, no source)."""

_ENDS = re.compile(r"(?<=[.!?;])\s+|\n")
_WHOSE = r"(?:my|the|our|that|this|his|her)"
_IN = re.compile(
    r"\b(?:there(?:['\u2019]?s| is| are| was| were)|i (?:put|used|added|have put)|we (?:put|used|added)|it turns out there(?:['\u2019]?s| is)|(?:has|have)) "
    rf"(?P<what>[^?]{{2,120}}?) (?:in|into|to) (?P<dish>{_WHOSE} [^?]{{2,60}}?)[.! ]*$"
)  # fmt: skip
_HAS = re.compile(
    rf"\b(?P<dish>{_WHOSE} [^?,]{{2,60}}?) (?:has|have|had|contains?|does have|do have|is made (?:with|from|of)|"
    r"are made (?:with|from|of)|is cooked (?:in|with)|is fried in|has got|have got) (?P<what>[^?]{2,120}?)(?: in (?:it|them|there))?[.! ]*$"
)  # fmt: skip
_TIENE = re.compile(
    r"\b(?P<dish>(?:mi|mis|la|el|los|las|nuestra|nuestro) [^?,]{2,60}?) (?:lleva|llevan|tiene|tienen|contiene|contienen|está hech[oa] con|"
    r"están hech[oa]s con) (?P<what>[^?]{2,120}?)[.! ]*$"
)  # fmt: skip
_HAY = re.compile(
    r"\b(?:hay|le puse|le eché|lleva) (?P<what>[^?]{2,120}?) (?:en|a) (?P<dish>(?:mi|la|el|mis|las|los) [^?]{2,60}?)[.! ]*$"
)
_SPLIT = re.compile(r"\s*(?:,|;|&|\+|\band\b|\bwith\b|\bplus\b|\by\b|\bcon\b)\s*")
_AGAINST = re.compile(
    r"\b(?:no|not|isn't|doesn't|don't|never|without|free|none|if|unless|maybe|might|may|could|should|would|will|can|sin|nunca|si|quizá|"
    r"podría|tampoco|to be|been out|time|minutes?|hours?|horas?|minutos?|left|room|space|place|allerg\w*|alergi\w*|alérgic\w*)\b"
)
_LEAD = re.compile(r"^(?:a|an|the|some|a bit of|a little|lots of|a lot of|plenty of|real|also|un|una|unos|unas|algo de|un poco de|el|la|"
                   r"los|las|mucho|mucha)\s+")  # fmt: skip
_TAIL = re.compile(r"\s+(?:too|also|inside|as well|in it|también|dentro)$")


def contents_in(words: str) -> tuple[str, tuple[str, ...]] | None:
    """(the words for the dish, what is in it), or None. Questions, denials and conditions are none of it; at least one
    thing must be an ingredient of the tables, and only those are kept.

    >>> contents_in("I just found out there is peanut oil in my soup")
    ('my soup', ('peanut oil',))
    """
    for text in _sentences(words):
        if _AGAINST.search(text):
            continue
        for pattern in (_IN, _HAS, _HAY, _TIENE):
            said = pattern.search(text)
            if said is None:
                continue
            parts = [_plain(part) for part in _SPLIT.split(said["what"])]
            kept = [p for p in parts if p and len(p.split()) <= MOST_WORDS and find(p).rows]
            if kept:
                return said["dish"], tuple(dict.fromkeys(kept[:MOST]))
    return None


def _plain(part: str) -> str:
    part = _TAIL.sub("", part.strip(" .!"))
    while (shorter := _LEAD.sub("", part)) != part:
        part = shorter
    return part


def _sentences(words: str) -> Iterator[str]:
    plain = " ".join(words[:LONGEST].replace("\u2019", "'").casefold().split())
    return (text for text in _ENDS.split(plain) if text and "?" not in text)
