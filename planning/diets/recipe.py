"""A cook who lists what is in their dish and says nothing else: "chicken, yoghurt, onions, cream, ground almonds"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from planning.diets.ingredients import find, key_of
from planning.diets.listed import usual_rows
from planning.dishes import lookup
from planning.potluck import Promise

FEWEST, LONGEST_WORDS, LONGEST = 4, 5, 400
"""Fewer items may be anything, a longer item is a story (common practice, no source)."""
ENOUGH, MOST_UNKNOWN = 2, 2
_ENDS = re.compile(r"(?<=[.!?;])\s+|\n")
_SPLIT = re.compile(r"\s*(?:,|;|&|\+|•|\bw/|\band\b|\bplus\b|\by\b|\be\b|\bademás de\b)\s*")
_LEAD = re.compile(
    r"^(?:(?:oh|ok|okay|so|well|hi|hey|sure|um|yes|yeah|no|just|only|fyi|btw|it'?s|it is|it'?ll be|its|there'?s|that'?s|in it|in mine|mine(?: has| is)?|the usual(?: stuff| things)?|same as always|as always|nothing (?:fancy|special)|i (?:use|used|put in|make it with)|made (?:with|of)|ingredients(?: are)?|contains?|it (?:has|contains)|pues|bueno|ah|sí|si|solo|sólo|nomás|es|lleva|llevan|tiene|le pongo|le puse|le echo|lo de siempre|como siempre|nada raro|hech[oa] con|ingredientes)\b[ ,:!.-]*)+"
)
_AMOUNT = re.compile(
    r"^(?:(?:a|an|the|some|my|our|one|two|three|half|\d+[\d./]*|un|una|unos|unas|el|la|los|las|algo de|mucho|mucha)\s+)*(?:(?:cans?|tins?|cups?|bit|splash|pinch|spoons?|tablespoons?|teaspoons?|tsp|tbsp|handful|lots?|bunch|cloves?|bottles?|jars?|packs?|packets?|lata|latas|taza|tazas|poco|pizca|chorrito|cucharadas?|cucharaditas?|puñado)\s+(?:of|de)\s+)?"
)
_OTHERWISE = re.compile(
    r"\b(?:bring\w*|brought|buy\w*|bought|get|grab|pick|need\w*|missing|want\w*|who|what|when|where|which|anyone|someone|please|(?<!a )(?<!of )can(?! of)|could|will|would|should|shall|might|maybe|allerg\w*|intoleran\w*|for \d+|serves|feeds|instead|doing|making|collapsed|burnt|burned|ruined|dropped|forgot\w*|melted|broke\w*|coming|i'll|ill|we'll|we're|tomorrow|today|left|out of|(?<!'s )(?<!has )got|shop|supermarket|out since|enough|traigo|traemos|traje|llevo|llevamos|compro|compramos|compré|falta\w*|necesit\w*|quién|qué|cuándo|dónde|alguien|por favor|puedo|podemos|voy|vamos|para \d+|alérgic\w*|alergia\w*|mañana|hoy|quiero|sobr[aóa]\w*)\b|\?|\$|€|£|\d\s*(?:°|am\b|pm\b|min|hrs?\b|hours?|horas?)"
)
_MADE_OF = re.compile(
    r"(?:\w+[ ,]+)?(?:it'?s|it has|it contains|its got|it'?s got|in it|contains|ingredients|made (?:with|of)|lleva|llevan|tiene|ingredientes|hech[oa] con|le pongo|le puse)\b"
)
_OF_A_DISH = re.compile(r"\S\s+(?:has|have|contains?|lleva|llevan|tiene|tienen|contienen?)\s")
"""A sentence about a dish tells what is in it, not all that is: `contents_told` reads it."""
_NOT = re.compile(r"^(?:no|without|sin|ni)\s+(?:any\s+)?")


@dataclass(frozen=True)
class Recipe:
    """`dish` whose it is; `holds` in the cook's own words; `without` what they say is not in it."""

    dish: Promise
    holds: tuple[str, ...]
    without: tuple[str, ...] = ()


def ingredients_listed(words: str) -> tuple[tuple[str, ...], tuple[str, ...]] | None:
    """(what is listed, what is said not to be in it), or None where the words are no such list.

    At least `FEWEST` items, half of them known to the tables, and nothing that tells or asks anything else.

    >>> ingredients_listed("no stock cubes, just mince, onion, tinned toms, kidney beans and a can of stout")
    (('mince', 'onion', 'tinned toms', 'kidney beans', 'stout'), ('stock cubes',))
    >>> ingredients_listed("I'll bring chips, salsa, beans and rice")
    """
    plain = " ".join(words[:LONGEST].replace("’", "'").casefold().split())
    return next((found for text in _ENDS.split(plain) if (found := _items(text.strip(" .!"))) is not None), None)


def _items(text: str) -> tuple[tuple[str, ...], tuple[str, ...]] | None:
    if _OTHERWISE.search(text):
        return None
    holds: list[str] = []
    without: list[str] = []
    for raw in _SPLIT.split(text):
        item = _item(raw)
        if not item:
            continue
        if _OF_A_DISH.search(item) or len(item.split()) > LONGEST_WORDS or (len(item.split()) > MOST_UNKNOWN and not find(item).rows):
            return None  # a story
        denied = _NOT.match(item)
        (without if denied else holds).append(_AMOUNT.sub("", item[denied.end() :] if denied else item))
    known = sum(bool(find(item).rows) for item in holds)
    if len(holds) < FEWEST or known * 2 < len(holds):
        return None
    return tuple(dict.fromkeys(holds)), tuple(dict.fromkeys(without))


def _item(raw: str) -> str:
    item, before = raw.strip(" .!:-"), ""
    while item != before:
        before, item = item, item if _NOT.match(item) else _LEAD.sub("", item).strip(" .!:-")
    return _AMOUNT.sub("", item)


def recipe_told(words: str, own: Iterable[Promise], asked: Promise | None = None) -> Recipe | None:
    """Whose recipe a list of ingredients is: of the cook's dish just `asked` about, else of the one whose name or usual
    recipe shares the most with it; None where that is no or more than one dish."""
    found = ingredients_listed(words)
    if found is None:
        return None
    holds, without = found
    if asked is not None:
        return Recipe(asked, holds, without)
    shared = {p: _shared(p, holds) for p in own if p.category not in ("supplies", "drink")}
    most = max(shared.values(), default=0)
    best = [p for p, n in shared.items() if n == most]
    # Its name or two of its usual ingredients speak for it; or it is the only dish, and said to be made of them.
    plain = " ".join(words[:LONGEST].replace("’", "'").casefold().split())
    enough = most >= ENOUGH or _MADE_OF.match(plain) is not None
    return Recipe(best[0], holds, without) if enough and len(best) == 1 else None


def _shared(dish: Promise, holds: tuple[str, ...]) -> int:
    """How many of the items such a dish usually holds; what its name speaks of counts for two."""
    name = set(key_of(dish.dish))
    known = lookup(dish.dish).dish
    usual = {row.name for row in usual_rows(known)} if known is not None else set()
    by_name = sum(bool(name & set(key_of(item))) for item in holds)
    return ENOUGH * by_name + sum(bool(usual & {row.name for row in find(item).rows}) for item in holds)
