"""One appliance more than the kitchen has: lent, spare, brought along ("my neighbor lends us a second oven")."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.potluck import Kitchen, Microwave, Oven, SlowCooker

LONGEST = 120
BROUGHT = ("slow-cooker", "microwave")
"""What a guest can carry in; the oven of a guest stands at the guest's home."""

_THINGS = (
    ("slow-cooker", r"slow[ -]?cookers?|crock[ -]?pots?|ollas? (?:lentas?|de cocci[oó]n lenta)"),
    ("microwave", r"microwaves?|microondas"),
    ("oven", r"ovens?|hornos?"),
    ("grill", r"grills?|barbecues?|bbqs?|asador(?:es)?"),
)
_THING = rf"(?P<thing>{'|'.join(source for _, source in _THINGS)})"
_NEIGHBOR = r"(?:(?:the|my|our|a) )?(?:next[ -]door )?(?:neighbou?r'?s?'?|mom'?s?|mum'?s?|sister'?s?|brother'?s?|friend'?s?)(?: next door)?"
_MORE = r"(?:(?:a|my|our|the|one|an) )?(?:second|2nd|third|3rd|spare|extra|additional|another|other|one more)(?: (?:big|small|large|spare|working))?"
_KIN = r"(?:(?:el|la|los|las|mi|un|una) )?(?:vecin[oa]s?|herman[oa]|amig[oa]|mam[aá])"
_AFTER = r"(?:,? (?:too|as well|also|if (?:needed|you need it|that helps|it helps|you want)|for (?:the day|that|it|the party|us)|next door|along|from next door|with me|at home|over|that day|tambi[eé]n|si hace falta|si ayuda))*"
_ONE_MORE = tuple(
    re.compile(rf"(?:(?:ok|hey|hi|so|and|also|oh|btw|fyi|good news|oye|buenas|ah|adem[aá]s)[,:!]? )*{source}{_AFTER}")
    for source in (
        rf"(?:i|we)(?:'ll|'ve|ll|ve| can| could| will| also| happen to| would| have to| got to)* (?:also )?(?:bring|lend|loan|borrow|have|have got|got|own|use|offer|get)(?: (?:you|us|along|over))? {_MORE} {_THING}",
        rf"{_NEIGHBOR}(?: (?:can|could|will|is|has|would|happily|kindly|agreed to|offered to|said we can))* (?:lends?|loans?|lending|offers?|brings?|gives?|borrow|use|have|has)(?: (?:us|me|you))? (?:{_MORE}|(?:the|their|her|his|an?)) {_THING}",
        rf"(?:i|we)(?: can| could| will| may| are allowed to|'ll)* (?:also )?(?:use|borrow|have|get|share) {_NEIGHBOR} {_THING}",
        rf"there(?:'s| is) (?:also )?{_MORE} {_THING}",
        rf"(?:yo )?(?:puedo|podemos|podr[ií]a)? ?(?:llevar|traer|prestar|llevo|traigo|presto|tengo|tenemos|hay) (?:otr[oa]|un[oa]? (?:segund[oa]|extra)|una? de sobra) {_THING}(?: (?:m[aá]s|extra|de sobra))?",
        rf"{_KIN} (?:nos|me) (?:presta|prestan|deja|dejan|deja usar) (?:su|otr[oa]|un|una|el|la) {_THING}",
        rf"(?:podemos|puedo|vamos a) usar (?:el|la|otr[oa]) {_THING} de(?:l| la| mi| mis| los)? {_KIN}",
    )
)


def one_more(text: str) -> str | None:
    """Which appliance there is one more of: "oven", "slow-cooker", "microwave" or "grill"; None for other words.

    >>> one_more("my neighbour lends us a second oven")
    'oven'
    >>> one_more("I'll bring another slow cooker of chili")
    """
    plain = " ".join(text.replace("’", "'").casefold().split()).strip(" .!")
    if len(text) > LONGEST:
        return None
    match = next((m for pattern in _ONE_MORE if (m := pattern.fullmatch(plain)) is not None), None)
    if match is None:
        return None
    return next(kind for kind, source in _THINGS if re.fullmatch(source, match["thing"]))


def with_one_more(kitchen: Kitchen, kind: str) -> Kitchen:
    """The kitchen with one more of what `one_more` names, of the usual size."""
    match kind:
        case "oven":
            return replace(kitchen, ovens=(*kitchen.ovens, Oven()))
        case "slow-cooker":
            return replace(kitchen, slow_cookers=(*kitchen.slow_cookers, SlowCooker()))
        case "microwave":
            return replace(kitchen, microwaves=(*kitchen.microwaves, Microwave()))
        case _:
            return replace(kitchen, grills=kitchen.grills + 1)
