"""Which piece of an opening line says where, and what is left for a title."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

BLANK = "\x00"
"""Stands where something was taken out of a line, so that its two sides do not become one phrase."""
PLACE = re.compile(
    r"^(?:it is |place: ?|where: ?|location: ?|venue: ?)?(?:(?P<lead>(?:at|in|on|behind|by|near|outside|inside)\b|@)) ?(?P<where>.+)$|^(?:place|where|location|venue): ?(?P<named>.+)$",
    re.IGNORECASE,
)
_PLACE_INSIDE = re.compile(r"^(?P<title>.{2,60}?) (?P<lead>at|@|in) (?P<where>(?:the |our |my |[A-Z0-9])[^,]{1,80})$")
_PLACES = (
    r"(?:hut|hall|house|home|apartment|flat|kitchen|church|school|room|(?:community |youth |sports )?cent(?:re|er)|barn|club|clubhouse|loft|cabin|shed|place|garden|gardens"
    r"|backyard|back yard|yard|park|beach|meadow|orchard|field|lawn|terrace|patio|lake|campsite|rooftop|plot|allotments?|pavilion|porch|garage|gym|library|museum|office|annex|courtyard|shelter(?: [0-9]+)?"
    r"|street|st|road|rd|lane|row|avenue|ave|drive|close|court|square|way|crescent|terrace|mews|casa|patio|jardín|parque|salón|piso|local|plaza|playa|azotea|terraza|calle(?: .+)?)"
)
_NAKED_PLACE = re.compile(
    rf"^(?:(?:my|our|mum's|mom's|your) (?:[\w'’-]+ ){{0,3}}?{_PLACES}|(?:mine|ours|my mum's|my mom's|my parents')(?: [0-9].*)?|[\w-]+['’]s? (?:[\w-]+ )?{_PLACES}|(?:break|meeting|lunch|common|staff|conference|community|function|back|dining|living) ?room|(?:town|village|church|parish|school|scout|club|boat) ?(?:hall|house|hut)|clubhouse|boathouse|the (?:[\w'’-]+ ){{0,3}}?{_PLACES}(?: (?:on|in|by|near|behind) .+)?"
    rf"|(?:(?:my|our) (?:house|place|flat) )?[0-9]{{1,5}}[a-z]? (?:[\w'’-]+ ){{1,4}}?{_PLACES}|(?:flat|apt|apartment|unit|room|suite|studio|shelter|pavilion|hall|plot) [0-9]+[a-z]?|en (?:casa|mi|el|la|los|las|nuestr[oa]|tu) ?.*)$",
    re.IGNORECASE,
)
"""A piece that names a place with nothing before it ("my house", "the club hut", "14 Elm Row", "en mi casa")."""
_CALLED_PLACE = re.compile(
    r"^(?:(?:St\.?|[A-Z][\w'’-]+) ){1,3}(?:Park|Hall|School|Church|Chapel|Hut|Gardens?|Cent(?:er|re)|Library|House|Pavilion|Beach|Farm|Barn|Club|Gym|Lake|Meadows?|Allotments?)$"
)
"""A place by its name, each word with a capital ("Lakeside Park")."""
_FILLER = re.compile(
    r"^(?:and|with|plus|a|an|the|we|for|on|it's|its|it is|please|potluck|our|start(?:ing|s)?|from|at|there will be|expecting|approx|about|around|let's have|let's do)$",
    re.IGNORECASE,
)


def _tidy(piece: str) -> str:
    piece = piece.strip(" .,;:!?-–—")
    words = piece.split()
    while words and _FILLER.match(words[-1]):
        words.pop()
    while words and words[0].lower() in ("and", "with", "plus", "for", "from", "on", "we", "please") and len(words) > 1:
        words.pop(0)
    return "" if len(words) == 1 and _FILLER.match(words[0]) else " ".join(words)


def place_and_rest(rest: str) -> tuple[str | None, str]:
    """The piece that says where, and what is left besides (the first such piece is the title)."""
    place: str | None = None
    left: list[str] = []
    for piece in re.split(rf"[,{BLANK}]", rest):
        piece = piece.strip(" .;:!?-–—")
        if not piece:
            continue
        match = PLACE.match(piece)
        if match is not None and place is None:
            where = (match["where"] or match["named"] or "").strip(" .,")
            lead = (match["lead"] or "").lower()
            if where:
                place = f"{lead} {where}" if lead in ("behind", "by", "near", "outside", "inside", "on") else where
                continue
        if place is None and (_NAKED_PLACE.match(piece) or _CALLED_PLACE.match(piece)):
            place = re.sub(r"^(?:en (?!casa)|(?:mine|ours) (?=[0-9]))", "", piece, flags=re.IGNORECASE)
            continue
        inside = _PLACE_INSIDE.match(piece)
        if inside is not None and place is None:
            place = inside["where"].strip()
            piece = inside["title"]
        if (tidy := _tidy(piece)) and len(tidy) >= 3:
            left.append(tidy)
    if place is not None:
        place = re.sub(r"(?: (?:with|and|for|on|at|plus|from))+$", "", place)
    return place, left[0][:80] if left else ""
