"""A host's message about what there is to cook with: what can be read, and what cannot.

"i have 1 oven with 2 racks, 4 burners, a cooler" and "un horno con dos parrillas y 4 hornillas" as one.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from planning.dishes import lookup
from planning.kitchen_words.appliances import read_kitchen
from planning.kitchen_words.unread import Unread
from planning.kitchen_words.within import BURNERS_OF_A_STOVE
from planning.potluck import Kitchen

LONGEST, MOST_UNREAD_WORDS = 300, 5

_NUMBERS = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "no": 0,
    "zero": 0, "un": 1, "una": 1, "uno": 1, "dos": 2, "tres": 3, "cuatro": 4, "cinco": 5, "seis": 6, "sin": 0,
    "ningún": 0, "ningun": 0, "ninguna": 0, "without": 0, "couple": 2, "both": 2,
}  # fmt: skip
_THINGS = (
    ("slow cooker", r"slow[ -]?cookers?|crock ?pots?|ollas? (?:lentas?|de cocción lenta|de coccion lenta|eléctricas?|electricas?)"),
    ("microwave", r"microwaves?|micros?|microondas"),
    ("rack", r"(?:oven )?(?:racks?|shelf|shelves)|rejillas?"),
    ("oven", r"ovens?|hornos?"),
    ("stove", r"(?:gas |electric )?(?:stoves?|ranges?|cooktops?)|estufas?|cocinas? de gas"),
    ("burner", r"burners?|hobs?|rings?|hot ?plates?|hornillas?|hornallas?|fogon(?:es)?|fogón|quemador(?:es)?|fuegos"),
    ("grill", r"(?:charcoal |gas )?(?:grills?|barbecues?|bbqs?)|parrillas?|asador(?:es)?"),
    ("circuit", r"circuits?|circuitos?"),
    ("outlet", r"outlets?|sockets?|enchufes?|tomas? de corriente"),
    ("cooks", r"cooks|helpers|pairs? of hands"),
)  # fmt: skip
_FACT = r"\d+(?:[.,]\d+)?[ -]?(?:qts?|quarts?|l|lit(?:er|re)s?|litros?|w|watts?|a|amps?|amp)\b"
_KIND = r"(?:(?:big|small|large|little|single|double|electric|gas|induction|working|outdoor|crappy|rubbish|ancient|tiny|decent|proper|lousy|huge|new|spare|charcoal|convection|domestic|home|good|old|real|kitchen|normal|regular|full|full-size|more|extra) )*"
_ITEM = re.compile(
    rf"(?:(?:only|just|about|also|maybe|have|has|the|my|our|mi|their|there'?s|there is|there are|solo|sólo|hay|tengo|tenemos|y|and|plus|with|con|de|of) )*(?P<n>\d{{1,2}}|{'|'.join(_NUMBERS)})?(?: of)? ?{_KIND}(?P<before>(?:{_FACT} )*)(?P<thing>{'|'.join(f'(?:{source})' for _, source in _THINGS)})(?P<after>(?:,? (?:of |with |at |de )?{_FACT})*)(?: (?:each|in all|in total|only|free|in there|over there|in here|up there|at all|there|here|total|ahí|allá|allí|en total|grande|grandes|chico|chica|cada uno|cada una|y ya|nada más))*(?: (?:with|con) (?:charcoal|gas|carbón|carbon|lid|tapa))?"
)
_FRIDGE = re.compile(
    r"(?:a |the |our |one |1 |una |un )?(?:fridge|refrigerator|nevera|refri|heladera)(?: (?:space|room|of|with|de|con))* (?P<n>\d+(?:\.\d+)?) ?(?P<unit>l|lit(?:er|re)s?|litros?|cu(?:bic)? ?f(?:oo|ee)?t)|(?P<n2>\d+(?:\.\d+)?) ?(?P<unit2>l|lit(?:er|re)s?|litros?|cu(?:bic)? ?f(?:oo|ee)?t)(?: (?:of|de))? (?:fridge|refrigerator|nevera)"
)
_LEAD = re.compile(
    r"^(?:(?:ok|hi|hey|so|well|fyi|btw|heads up|hola|bueno|oigan|ojo)[,:! ]+)*(?:(?:(?:the|my|our|la|mi|en la|in the|in my|at the) )?(?:kitchen|cocina|hall|venue|club ?house|place|house)(?: (?:has|there|only has|just has|tiene|hay|we have|i have))?[:,]? |(?:i|we)(?:'ve|ve)? (?:have|got|only have|just have|only got)(?: got)? |there(?:'s|s| is| are) |(?:it|they) (?:has|have) |tengo |tenemos |hay |aquí hay |(?:just|only|solo|sólo) |(?:(?:the|our|all|my) )*(?:kitchen )?(?:outlets?|sockets?|plugs?) (?:are|share|is|run|hang|sit)(?: all)?(?: (?:on|off))? |(?:kitchen|cocina): ?)+"
)
_PARTS = re.compile(r"\s*(?:[,;\n]|\band\b|&|\+|\bplus\b|\bwith\b(?= (?:\d|one|two|three|four|a ))|\bbut\b|\by\b|\bcon\b(?= (?:\d|un|dos|tres|cuatro))|\bpero\b|[.!](?=\s|$)|(?<=oven) (?:has |with )?(?=(?:\d|one|two|three|four) (?:oven )?racks?)|(?<=horno) (?:de )?(?=(?:\d|un|dos|tres) (?:parrillas?|rejillas?)))\s*")
_OTHER = re.compile(r"\b(?:broke|broken|died|dead|down|bring\w*|borrow|need|needs|tripped|be there|coming|traigo|traer|llevo|se rompió|no sirve)\b")
_ASIDE = re.compile(r"\b(?:cold|hot|runs|\d{3}|degrees|at \d|min|minutes|hours?|when|who)\b")
"""Said of something else than what there is: read by others where the message has told of appliances."""
_OF_BURNERS = re.compile(r"\b(?:an? )?(?P<n>\d{1,2}|one|two|three|four|five|six|seven|eight)[ -](?:burners?|rings?)[ -](?:gas |electric )?(?:stoves?|ranges?|cooktops?|hobs?|cookers?)\b")
_WITH = re.compile(r"\b(?:w/|w)(?= (?:\d|an?\b|one|two|three|four))")
_FIRST_ENDS = re.compile(r"(?<=[.!;])\s+")


@dataclass(frozen=True)
class KitchenTold:
    """`kitchen` after it; `words` what was read of it, `unread` the parts that no figure of a kitchen comes from."""

    kitchen: Kitchen
    words: str
    unread: tuple[str, ...]
    rest: str = ""
    """What else the message tells, in sentences of its own."""
    beside: int = 0
    """So many parts of the sentence speak of something else ("lunch is only 40 min")."""


def kitchen_told(text: str, before: Kitchen) -> KitchenTold | None:
    """What a message of nothing but appliances says; None for any other.

    >>> told = kitchen_told("just two microwaves and a fridge, no oven", Kitchen())
    >>> len(told.kitchen.microwaves), told.kitchen.ovens, told.unread
    (2, (), ('a fridge',))
    """
    if "?" in text or len(text) > LONGEST:
        return None
    sentences = [part for part in _FIRST_ENDS.split(" ".join(text.split())) if part]
    whole = _told_in(text, before)
    if len(sentences) < 2 or (whole is not None and not whole.beside):
        return whole
    for n, sentence in enumerate(sentences):
        if (told := _told_in(sentence, before)) is not None:
            return replace(told, rest=" ".join([*sentences[:n], *sentences[n + 1 :]]))
    return whole


def _told_in(text: str, before: Kitchen) -> KitchenTold | None:
    plain = " ".join(text.replace("’", "'").casefold().split())
    plain = _OF_BURNERS.sub(lambda m: f"{m['n']} burners", _WITH.sub("with", plain))
    lead = _LEAD.match(plain)
    rest = plain[lead.end() :] if lead else plain
    words: list[str] = []
    unread: list[str] = []
    asides = 0
    last = ""
    for part in (p.strip(" .!") for p in _PARTS.split(rest)):
        if not part:
            continue
        item = _ITEM.fullmatch(part)
        if item is not None and (said := _said(item, last)) is not None:
            words.append(said)
            last = said.rpartition(" ")[2]
        elif (cold := _FRIDGE.fullmatch(part)) is not None:
            words.append(f"fridge {cold['n'] or cold['n2']} {'cu ft' if 'f' in (cold['unit'] or cold['unit2']) else 'l'}")
        elif _OTHER.search(part) or (not _ASIDE.search(part) and (len(part.split()) > MOST_UNREAD_WORDS or _is_dish(part))):
            return None
        elif _ASIDE.search(part):
            asides += 1
        else:
            unread.append(part)
    if asides and (asides > 1 or len(words) < 2):
        return None
    if not words or (len(unread) >= len(words) + 2) or (lead is None and len(words) < 2 and "amp" not in words[0]):
        return None
    kitchen = before
    try:
        for said in words:
            kitchen = read_kitchen(said, kitchen)
    except Unread:
        return None
    return KitchenTold(kitchen, ", ".join(words), tuple(unread), beside=asides)


def _said(item: re.Match[str], last: str) -> str | None:
    thing = next(name for name, source in _THINGS if re.fullmatch(source, item["thing"]))
    if thing == "grill" and item["thing"].startswith("parrilla") and last == "oven":
        thing = "rack"  # "un horno con dos parrillas"
    n = item["n"]
    if n is None and thing in ("rack", "outlet", "cooks", "circuit"):
        return None
    number = 1 if n is None else int(n) if n.isdecimal() else _NUMBERS[n]
    if thing == "stove":
        thing, number = "burner", BURNERS_OF_A_STOVE * number
    facts = re.findall(_FACT, f"{item['before']} {item['after'] or ''}")
    facts = [re.sub(r"litros?", "l", f).replace(",", ".") for f in facts]
    return " ".join([str(number), *facts, thing])


def _is_dish(part: str) -> bool:
    if re.search(r"\b(?:ice|hielo|coolers?|fridges?|freezer|nevera|sink|counter|table|tables|charcoal|carbón|kettle|urn|grill)\b", part):
        return False
    return lookup(part).confidence >= 0.75
