"""What is said of a dish behind it, a piece at a time: how much, how hot, how it comes. "Scalloped potatoes, serves 16,
needs 350 for 75 minutes" is one dish, and neither an hour nor a bone is one of its own.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from planning.diets.ingredients import ingredient_named
from planning.dishes import lookup
from planning.replies.asides import dishes_before
from planning.replies.intents import AddPromise, Intent

LONGEST, MOST_SERVINGS = 1000, 1000
TOLD, LEAST_SURE = 0.85, 0.6
"""Whoever says how much and how hot brings it."""
LB_PER_KG = 2.20462
"""By the international definition of the pound."""
_CUT = re.compile(r"(?<![0-9])[.,]|[.,](?![0-9])|[;!?()\n]|\s[-–—]\s")
_WORDS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11,
    "twelve": 12, "a dozen": 12, "two dozen": 24, "fifteen": 15, "twenty": 20, "thirty": 30, "una docena": 12, "dos": 2, "tres": 3,
    "cuatro": 4, "cinco": 5, "seis": 6, "ocho": 8, "diez": 10, "doce": 12, "quince": 15, "veinte": 20, "treinta": 30,
}  # fmt: skip
_N = rf"(?P<n>[0-9]{{1,3}}(?:\s?[-–]\s?[0-9]{{1,3}})?|{'|'.join(sorted(_WORDS, key=len, reverse=True))})"
_HEDGE = r"(?:(?:so|and|it|they|that|which|i|that['’]?s|it['’]?s|will|should|can|would|may|might|probably|prob|say|like|about|around|roughly|maybe|approx|some|up to|at least|i think|i['’]?d say|easily|at a push|y|eso|pues|como|unos|unas|más o menos|mas o menos|aprox|calculo|creo que|digamos|yo creo)\s+)*"
_EATERS = r"(?:portions?|servings?|helpings?|people|persons?|folks|adults|mouths|raciones|porciones|personas|platos)"
_TAIL = r"(?:\s+(?:or so|ish|at least|i think|easily|comfortably|in all|in total|total|each|of us|or thereabouts|tops|max|más o menos|mas o menos|en total|por lo menos|cuando menos))*"
_SERVINGS = re.compile(
    rf"{_HEDGE}(?:{_N}\s+(?:good\s+|big\s+)?{_EATERS}(?:\s+worth)?|(?:(?:big\s+)?enough\s+(?:for|to feed)|serves?|serving|feeds?|feeding|does|(?:will\s+)?do|cuts?\s+into|cut\s+into|makes|made\s+for|for|yields|rinde[n]?(?:\s+para)?|alcanza[n]?\s+para|da[n]?\s+para|salen|para|pa)\s+{_HEDGE}{_N.replace('<n>', '<m>')}(?:\s+(?:{_EATERS}|slices|pieces|squares|rebanadas|pedazos|porciones))?){_TAIL}",
    re.IGNORECASE,
)
_UNIT = r"(?:lbs?|pounds?|pounder|kgs?|kilos?|g|grams|oz|ounces|libras?|litros?|litres?|liters?|l|gallons?|quarts?)"
_WEIGHT = re.compile(
    rf"{_HEDGE}(?:an?\s+|the\s+|un[oa]?\s+|de\s+)*(?P<n>[0-9]{{1,3}}(?:[.,][0-9]{{1,2}})?)[ -]?(?P<unit>{_UNIT})\b(?P<rest>(?:\s+(?:bird|one|ones|joint|bone[- ]in|boneless|in|each|total|in all|whole|frozen|fresh|raw|uncooked|cooked|pre-?cooked|of it|of them|de peso|congelad[oa]s?|at the moment|right now|now|ahora|todavía|todavia|con hueso|sin hueso))*)",
    re.IGNORECASE,
)
_TIME = r"(?:(?:(?:about|around|another|like)\s+)*(?:[0-9]{1,3}(?:[.,][0-9])?(?:\s?[-–]\s?[0-9]{1,3})?|half an|an?|one|two|three|four|five|six|twenty|thirty|forty|fifty|una|dos|tres|cuatro|media)(?:\s+and\s+a\s+(?:half|quarter))?\s*(?:hours?|hrs?|h|minutes?|mins?|min|m|horas?|minutos?)(?:\s+(?:and\s+a\s+(?:half|quarter)|(?:and\s+)?[0-9]{1,2}(?:\s+(?:minutes?|mins?|min))?|y\s+media))?)"
_TEMP = r"(?:[1-5][0-9]{2}(?:\s*(?:°|º|degrees?|deg|grados))?(?:\s*[cf]\b|\s+(?:celsius|fahrenheit))?(?:\s+fan)?|gas(?:\s+mark)?\s+[0-9])"
_HEAT = re.compile(
    rf"(?P<all>(?:they\s+|ambos\s+|las dos\s+|los dos\s+)?(?:both|each|all)?)\s*(?P<said>(?:(?:it|they|that|which|just|only|then|and|will|would|needs?|need|wants?|takes?|goes|go|going|has|have|got|must|to|be|get|in|into|at|on|for|the|my|your|our|a|an|bakes?|baking|baked|roasts?|roasting|roasted|cooks?|cooking|cooked|warms?|warm|warmed|warming|heats?|heat|heated|reheats?|reheat|it|them|up|through|hall|oven|hot|about|around|se|hornea[n]?|va[n]?|al|en|el|horno|necesita[n]?|requiere[n]?|a|unos|unas|calienta[n]?|durante|por|covered|uncovered|from|cold)\s+)*(?:{_TEMP}\s+(?:for\s+|x\s+|durante\s+|por\s+|[@,]\s*)?{_TIME}|{_TIME}\s+(?:(?:in|en)\s+(?:the|a|an|my|your|el)\s+(?:hot\s+)?(?:oven|horno)\s+)?(?:at|on|@|a)\s+{_TEMP})(?:\s+(?:each|in the oven|en el horno|covered|uncovered|fan|there))*)",
    re.IGNORECASE,
)
_HOW = re.compile(
    r"(?:(?:it['’]?s|it is|they['’]?re|they are|in|in a|a|an|one|the|all|still|already|just|both|is|are|está|están|ya|en|una?|todo)\s+)*"
    r"(?:(?P<frozen>(?:rock |solid )?frozen(?: solid)?|congelad[oa]s?)|(?:big|huge|large|giant|massive|enormous|whole|full|small|good|gran|grande)[- ]?(?:sized )?(?:pot|tub|bowl|tray|pan|batch|one|dish|tin|lot|pile|olla|cazuela|charola|bandeja)(?:ful)?|(?:olla|cazuela|charola|bandeja) grande"
    r"|(?:fully |pre[- ]?|half |par)?cooked(?: already| through)?|home ?-?made|shop[- ]bought|store[- ]bought|stuffed|unstuffed|bone[- ]in|boneless|chilled|raw|uncooked|fresh|from scratch|ready to (?:eat|go|heat)|relleno|rellena|cocid[oa]s?|casero|casera|con hueso|sin hueso)"
    r"(?:\s+(?:at the moment|right now|for now|now|already|still|ahora|todavía|todavia|por ahora|of it|mind you|though))*",
    re.IGNORECASE,
)
_OF_EACH = re.compile(r"(?:\bof each(?: one| dish)?\b|\beach\b(?=\s+(?:for|serves|feeds|one))|\b(?:de )?cada un[oa]\b|\bcada cosa\b)", re.IGNORECASE)
_OF_FOR = re.compile(rf"(?P<what>de (?:[^\W\d_]+ ?){{1,3}}?) (?:como )?(?:para|pa) (?:unas |unos |como )?{_N}(?: personas)?", re.IGNORECASE)
_WITH = re.compile(r"(?:con|with) (?P<what>[^\W\d_]+(?: [^\W\d_]+)?)", re.IGNORECASE)
_SMILES = re.compile(r"(?:\s|[:;]-?(?=$|\s)|[\U0001f000-\U0001faff\u2600-\u27bf\ufe0f\u200d])+$")
_PLAIN_FOR = re.compile(r"(?:for|para|pa)\s", re.IGNORECASE)
_LABEL = re.compile(r"(?:[a-z]+[- ]free|vegan[oa]?s?|vegetarian[oa]?s?|veggie|halal|kosher|gf|df)", re.IGNORECASE)
_MEASURED = re.compile(r"\s+de\s+(?P<n>[0-9]{1,3})\s+(?:litros?|lts?|kilos?|kg)(?=\s*(?:[.,;!?)]|$|y\s))", re.IGNORECASE)
""" "Una jarra de agua de 10 litros"."""
_KEPT = re.compile(
    r"(?:(?:so|and|y|pero|which|it|they|ojo|o sea) )*(?:hay que (?:tenerl[oa]s?|guardarl[oa]s?|meterl[oa]s?|ponerl[oa]s?)|(?:va|van|se guarda|tiene que (?:ir|estar)|necesita(?: ir| estar)?) (?:en|al|el)?|(?:it |that |they )?(?:needs?|has|have|got|must|should|will|goes?|to|be|stay|go|kept|keep|stored|it)(?: (?:to|be|go|stay|keep|it|kept|stored|a))*) (?:en |in |al |into |the |el |la |your |our |tu )*(?:fridge|refrigerator|cold|chilled|cool|refri|refrigerador|nevera|hielera|heladera|frio|frío|cooler|freezer|congelador)(?: space| room)?(?: (?:till|until|hasta) [^.,;!?]{2,30})?",
    re.IGNORECASE,
)
_MADE_OF = re.compile(r"(?:it['’]?s |they['’]?re |all |hech[oa]s? |prepared |made |cooked )(?:made )?(?:with|from|out of|con|de)\s+(?P<what>[^?]{3,60})", re.IGNORECASE)
_MEAT = re.compile(r"(?:the |a |an )?(?P<meat>beef|chicken|pork|lamb|turkey|vegetable|mince|minced beef|sausage|bean|lentil|mushroom|salmon|tuna|prawn|shrimp)(?: one)?", re.IGNORECASE)
_EACH = re.compile(rf"{_HEDGE}{_N}(?:\s+(?:pieces|slices|cookies|of them|in))?\s+(?:each|apiece|per (?:pack|tray|box|bag|pan|tin)|a (?:pack|tray|box|bag|pan|tin)|in (?:each|a (?:pack|tray|box|bag))|cada (?:un[oa]|paquete|caja))", re.IGNORECASE)
_BARE = re.compile(r"(?:like |about |around |say |maybe )*(?P<much>[0-9]{1,3} (?:slices|squares))(?: of them| or so| total| in all)*", re.IGNORECASE)


@dataclass(frozen=True)
class Detail:
    """`start` is its place in the text; `all` of the dishes before it, or the last."""

    start: int
    servings: float | None = None
    quantity: str | None = None
    heat: str | None = None
    all: bool = False
    frozen: bool = False
    pounds: float | None = None
    variety: str | None = None
    suffix: str | None = None
    """What stands behind its name: "de tres leches", "con pollo"."""
    each: float | None = None
    """Pieces in each of the packs that were said."""
    contents: tuple[str, ...] = ()


def details_beside(text: str) -> tuple[str, tuple[Detail, ...]]:
    """The text with the pieces blanked out that only tell of the dish before them; places in it stay.

    >>> details_beside("ham, 10 lb, already cooked, 325 for 2 hours")[0].rstrip(" .")
    'ham'
    """
    found: list[Detail] = []
    blank: list[tuple[int, int]] = []
    pieces = list(_pieces(text[:LONGEST]))
    for k, (start, end) in enumerate(pieces):
        words = text[start:end].strip()
        if k == 0 or not words or text[end : end + 1] == "?":
            continue
        at = start + len(text[start:end]) - len(text[start:end].lstrip())
        words = _SMILES.sub("", words)
        if not words or (_PLAIN_FOR.match(words) and _LABEL.fullmatch(text[slice(*pieces[k - 1])].strip())):
            continue
        detail = _detail(words, at)
        if detail is None and _MEAT.fullmatch(words) is not None and k + 1 < len(pieces):
            follows = text[slice(*pieces[k + 1])].strip()
            if _detail(follows, 0) is not None and not re.search(r"\b(?:and|&)\b|\by\b", text[slice(*pieces[k - 1])]):
                meat = _MEAT.fullmatch(words)
                detail = Detail(at, variety=meat["meat"].casefold() if meat else None)
        if detail is not None:
            found.append(detail)
            blank.append((start, end))
    for measured in _MEASURED.finditer(text[:LONGEST]):
        if not any(a < measured.end() and measured.start() < b for a, b in blank):
            found.append(Detail(measured.start("n"), quantity=text[measured.start("n") : measured.end()]))
            blank.append(measured.span())
    for start, end in blank:
        text = text[:start] + " " * (end - start) + text[end:]
    return (_without_marks(text, blank), tuple(found)) if found else (text, ())


def _pieces(text: str) -> Iterator[tuple[int, int]]:
    start = 0
    for mark in _CUT.finditer(text):
        yield start, mark.start()
        start = mark.end()
    yield start, len(text)


def _without_marks(text: str, blank: Sequence[tuple[int, int]]) -> str:
    """The marks before what is blanked out go with it; where a sentence ended behind it, it still ends."""
    for start, _ in blank:
        if start and text[start - 1] in ",;(-–—":
            text = text[: start - 1] + " " + text[start:]
    return re.sub(r"(?<= )\)", " ", text)


def _detail(words: str, start: int) -> Detail | None:
    words = _LEAD.sub("", words.strip()).strip()
    every = _OF_EACH.search(words)
    if every is not None:
        words = f"{words[: every.start()]} {words[every.end() :]}".strip()
    if (said := _SERVINGS.fullmatch(words)) is not None:
        return _plausible(Detail(start, servings=_number(said["n"] or said["m"]), all=every is not None))
    if every is not None:
        return None
    if (of := _OF_FOR.fullmatch(words)) is not None:
        return _plausible(Detail(start, servings=_number(of["n"]), suffix=of["what"]))
    if (beside := _WITH.fullmatch(words)) is not None and _food(beside["what"]):
        return Detail(start, suffix=words)
    if (hot := _HEAT.fullmatch(words)) is not None:
        return Detail(start, heat=_minutes(hot["said"].strip()), all=bool(hot["all"].strip()))
    if (weight := _WEIGHT.fullmatch(words)) is not None:
        unit, n = weight["unit"].casefold(), float(weight["n"].replace(",", "."))
        pounds = n * LB_PER_KG if unit.startswith("k") else n if unit.startswith(("lb", "pound", "libra")) else None
        frozen = re.search(r"frozen|congelad", weight["rest"], re.IGNORECASE) is not None
        typed = "lb" if unit == "pounder" else weight["unit"]
        return Detail(start, quantity=f"{weight['n']} {typed}", pounds=pounds, frozen=frozen)
    if (how := _HOW.fullmatch(words)) is not None:
        return Detail(start, frozen=how["frozen"] is not None)
    if (each := _EACH.fullmatch(words)) is not None:
        return Detail(start, each=_number(each["n"]))
    if (exact := _BARE.fullmatch(words)) is not None:
        return Detail(start, quantity=exact["much"])
    if _KEPT.fullmatch(words) is not None:
        return Detail(start)
    if _MADE_OF.fullmatch(words) is not None:
        return Detail(start)
    return None


_LEAD = re.compile(r"^(?:and|but|y|pero)\s+", re.IGNORECASE)


def _food(words: str) -> bool:
    return ingredient_named(words) is not None or lookup(words).confidence >= KNOWN


KNOWN = 0.75
"""How well a name is known that is taken for food."""


def _plausible(detail: Detail) -> Detail | None:
    return detail if detail.servings is not None and 0 < detail.servings <= MOST_SERVINGS else None


def _number(said: str) -> float:
    plain = said.casefold()
    if plain in _WORDS:
        return float(_WORDS[plain])
    low, _, high = re.sub(r"\s", "", plain).replace("–", "-").partition("-")
    return (float(low) + float(high or low)) / 2


_HALVES = {"half": 30, "quarter": 15}


def _minutes(said: str) -> str:
    """ "Four and a half hours" in figures, as the readers of heat take them."""

    def figured(match: re.Match[str]) -> str:
        whole = _WORDS.get(match["n"].casefold(), 0) or int(match["n"])
        return f"{whole * 60 + _HALVES[match['part'].casefold()]} minutes"

    said = re.sub(r"\s*[°º]\s*", " ", said).strip()
    return re.sub(
        r"(?P<n>[0-9]|one|two|three|four|five|six) and a (?P<part>half|quarter) hours?", figured, said, flags=re.IGNORECASE
    )


def with_details(intents: Sequence[Intent], details: Sequence[Detail]) -> list[Intent] | None:
    """Each goes to the dish before it; None where one finds no dish, so that nothing must be blanked out."""
    made = list(intents)
    for detail in details:
        before = dishes_before(made, detail.start)
        if not before:
            return None
        last = max(before, key=lambda k: made[k].start)
        for at in before if detail.all else [last]:
            promise = made[at]
            assert isinstance(promise, AddPromise)
            made[at] = _told_of(promise, detail)
    return made


def _told_of(promise: AddPromise, detail: Detail) -> AddPromise:
    heat = "; ".join(p for p in (promise.heat_text, detail.heat) if p) or None
    pounds = promise.frozen_lb
    if detail.frozen and pounds is None:
        pounds = _pounds(promise.quantity) if detail.pounds is None else detail.pounds
    if detail.each is not None:
        packs = re.match(r"([0-9]+|[a-z]+)\b", (promise.quantity or "").casefold())
        n = 0 if packs is None else int(packs[1]) if packs[1].isdecimal() else _WORDS.get(packs[1], 0)
        if n:
            promise = replace(promise, quantity=f"{round(n * detail.each)}")
    dish = promise.dish
    if detail.variety and detail.variety not in dish.casefold():
        dish = f"{detail.variety} {dish}"
    if detail.suffix and detail.suffix.casefold() not in dish.casefold():
        dish = f"{dish} {detail.suffix}"
    vessel = promise.quantity or ""
    if (_ONE_VESSEL.match(vessel) and detail.quantity is not None) or (
        _SOME_BIG_ONE.match(vessel) and detail.servings is not None
    ):
        promise = replace(promise, quantity=None)  # "a jug of lemonade, 10 litres", "a big pan of paella, serves twelve"
    told = detail.servings is not None or detail.quantity is not None or detail.heat is not None
    # "Two dips: spinach dip and hummus, each for ten": which they are must still be made out.
    plain = told and not detail.all and bool(promise.category) and not promise.conditional and promise.by is None and not promise.vague
    return replace(
        promise,
        dish=dish,
        confidence=max(promise.confidence, TOLD) if plain and promise.confidence >= LEAST_SURE else promise.confidence,
        servings=detail.servings if detail.servings is not None else promise.servings,
        quantity=promise.quantity or detail.quantity,
        heat_text=heat,
        frozen_lb=round(pounds, 2) if pounds is not None else None,
        contents=(*promise.contents, *detail.contents),
    )


_ONE_VESSEL = re.compile(r"(?:an?|one|1|una?) (?:[^\W\d_]+ )?[^\W\d_]+$", re.IGNORECASE)


_SOME_BIG_ONE = re.compile(r"an? (?:big|huge|massive|giant|large|enormous) [^\W\d_]+$", re.IGNORECASE)


def _pounds(quantity: str | None) -> float | None:
    said = re.match(r"([0-9]+(?:\.[0-9]+)?) (lb|pound|kg|kilo)s?$", quantity or "")
    return None if said is None else float(said[1]) * (LB_PER_KG if said[2].startswith("k") else 1)
