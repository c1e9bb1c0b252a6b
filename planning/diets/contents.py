"""What a cook's sentence says is in a dish: "there is peanut oil in my soup", "apple has butter, no nuts", "mi tarta
tiene almendra molida", "no its with flour", "yes 2 eggs per loaf"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from planning.diets.ingredients import find
from planning.diets.needs import need_words

LONGEST = 240
MOST = 12
MOST_WORDS = 4
"""An ingredient of more words is a story (common practice, no source)."""

_ENDS = re.compile(r"(?<=[.!?;])\s+|\n")
_LEADS = (
    r"(?:(?:yes|yeah|yep|yup|no|nope|nah|oh|ah|so|ok|okay|actually|fyi|btw|sorry|well|careful|note|heads up|just so you know|i forgot|forgot to say|uh oh|wait|hold on|warning|attention|apparently|(?:it )?turns out(?: that)?|i see(?: that)?"
    r"|(?:i )?(?:have )?(?:just |only )?(?:now )?(?:looked|checked|noticed|realised|realized|remembered|saw|seen|found out|read|been told)(?: (?:the|on the|at the) (?:label|box|packet|jar|bottle|bag|recipe))?(?: that)?"
    r"|sí|si|ojo|por cierto|bueno|perdón|resulta que|cuidado|acabo de (?:ver|mirar|leer)(?: que)?|me acabo de (?:enterar|dar cuenta)(?: de)?(?: que)?|he visto que)\s*[,:!.-]*\s+)*"
)
_HAS = r"(?:has|have|had|'s got|have got|has got|contains?|contained|does have|do have|(?:is|are|was|were|comes?|come) (?:all )?(?:made |cooked |baked |fried )?(?:with|from|of|in)(?! (?:the|my|a|an|our) )|uses?|got|lleva|llevan|tiene|tienen|contiene|contienen|(?:está|están) hech[oa]s? con|va con|van con)"
_OF_DISH = re.compile(rf"^{_LEADS}(?P<dish>[^?,:]{{2,60}}?):? {_HAS} (?P<what>.{{2,140}}?)[.! ]*$")
_IN = re.compile(
    r"\b(?:there(?:'?s| is| are| was| were)|(?:i|we) (?:always |also |usually |just |did )?(?:put|used|added|have put|use|put in)|it turns out there(?:'?s| is)|(?:has|have)) "
    r"(?P<what>.{2,120}?) (?:in|into|to) (?P<dish>(?:my|the|our|that|this|his|her) [^?]{2,60}?)[.! ]*$"
)
_HAY = re.compile(
    r"\b(?:hay|le puse|le eché|lleva) (?P<what>.{2,120}?) (?:en|a) (?P<dish>(?:mi|la|el|mis|las|los) [^?]{2,60}?)[.! ]*$"
)
_OF_IT = re.compile(
    rf"^{_LEADS}(?:(?:it|they|mine|ours|that|this)(?:'s|s|'re|re)? (?:(?:is|are|does|do) )?)?(?:has|have|contains?|got|(?:all )?(?:made |cooked |baked |fried )?with(?! (?:the|my|our|me|us) )|there'?s|there is|there are|theres|(?:i|we) (?:use|used|put|added|put in)|lleva|llevan|tiene|tienen|contiene|es con|son con|va con|con|le puse)(?: in)? (?P<what>.{{2,140}}?)(?:,? (?:in (?:it|them|there|mine)|fyi|btw|too|though|by the way|también))*[.! ]*$"
)
_IS_IT = re.compile(rf"^{_LEADS}(?:it|they|mine|those|these)(?:'s|s|'re|re| is| are) (?P<what>.{{2,80}}?)[.! ]*$")
_PER = re.compile(
    rf"^{_LEADS}(?:it has |there's |about )?(?P<what>(?:\d+|an?|one|two|three|four|some|un|una|dos) [^?,.]{{2,40}}?) (?:per|in each|in every|for each|por) (?:loaf|batch|pan|pie|cake|dozen|tray|piece|one|pot|dish|bandeja|pan|pastel)[.! ]*$"
)
_TURNED = re.compile(
    r"\b(?:(?:does not|doesn't|do not|don't|doesnt|dont) (?:have|contain|use)(?: any)?|no (?P<es>lleva|llevan|tiene|tienen|contiene|contienen))\b(?! no\b)"
)
"""Denied before the verb: read as "has no"."""
_OF_SOMEBODY = re.compile(r"\b(?:for (?:me|us|him|her|them|my)|please|pls|thanks|thank you|para (?:mí|mi)|por favor|gracias)\b")
_DENIES_IN = re.compile(
    rf"^{_LEADS}(?P<what>(?:no|without|sin|zero) .{{2,60}}?) (?:in|on|en) (?P<dish>(?:the|my|our|this|that|el|la|los|las|mi|mis) [^?,]{{2,40}}?)(?:,? (?:btw|by the way|fyi|tho|though|por cierto|eh))*[.! ]*$"
)
_ON = re.compile(
    rf"^{_LEADS}(?P<what>(?!there|theres|for\b)(?:[\w'-]+ ){{0,3}}[\w'-]+?) (?:on top|on (?:it|them|top of (?:it|them))|inside|in (?:it|them)|in the (?:dough|batter|sauce|dressing|crust|pastry|filling|glaze|topping|frosting|icing)|por encima|encima|dentro)[.! ]*$"
)
"""Without a verb: only beside a dish that is told in the same breath."""
_DENIES = re.compile(rf"^{_LEADS}(?P<what>(?:no|without|sin|zero) .{{2,120}}?)[.! ]*$")
_SPLIT = re.compile(r"\s*(?:,|;|&|\+|\bw/|\bw\b|\band\b|\bwith\b|\bplus\b|\bbut\b|\by\b|\bcon\b|\bpero\b)\s*")
_NOT = re.compile(r"^(?:no|without|free of|not|zero|any|sin|nada de|ningún|ni)\s+")
_FREE = re.compile(r"^(?:[\w-]+[ -]free|vegan[oa]?s?|vegetarian[oa]?s?|halal|kosher|plant[ -]based)$")
_SHARED = re.compile(
    r"^(?:(?:it'?s |all )?(?:from |in |made in )?(?:the |a )?same (?:kitchen|pan|oil|fryer|bakery|oven|board)|traces?(?: of .+)?|may (?:contain|have) (?:traces? of )?.+|(?:en )?la misma cocina|trazas(?: de .+)?|puede (?:llevar|contener) .+)$"
)
_AGAINST = re.compile(
    r"\b(?:isn't|doesn't|don't|never|none|if|unless|maybe|might|could|should|would|will|can|nunca|quizá|podría|tampoco|to be|been out|time|"
    r"minutes?|hours?|horas?|minutos?|left|room|space|place|allerg\w*|alergi\w*|alérgic\w*|running|late|oven|out of|ran out|coming|bring\w*|traigo|people|us|kids)\b"
)
_LEAD = re.compile(r"^(?:a|an|the|some|a bit of|a little|lots of|a lot of|plenty of|real|also|just|only|well|\d+|one|two|three|four|un|una|unos|unas|algo de|un poco de|el|la|"
                   r"los|las|mucho|mucha)\s+")  # fmt: skip
_IN_PART = r"(?:it|them|there|the (?:dough|batter|sauce|dressing|crust|pastry|filling|glaze|topping|frosting|icing|marinade|broth|stock|crumbs?|mix|base|gravy)|la (?:masa|salsa|base|cobertura)|el (?:relleno|caldo|aliño))"
_TAIL = re.compile(
    rf"\s+(?:too|also|inside|as well|(?:in|en) {_IN_PART}|on (?:top|it|them)|sorry|though|tho|after all|fyi|btw|at all|también|dentro|por encima|encima)$"
)
_AFTER = re.compile(
    r"\s*,?\s+(?:so|which means|meaning|just so you know|be careful|careful|if (?:anyone|anybody)|for (?:anyone|those)|así que|por si|o sea que|para que)\b.*$"
)
"""What follows from it ("so not vegan"), which says nothing more of what is in it."""


PART_OF_A_DISH = frozenset((
    "dressing", "sauce", "crust", "pastry", "glaze", "filling", "dough", "batter", "frosting", "icing", "topping",
    "marinade", "broth", "stock", "gravy", "crumb", "crumbs", "crumble", "noodles", "seasoning", "coating", "base",
    "mix", "paste", "cream", "garnish", "salsa", "masa", "relleno", "caldo", "aliño", "cobertura", "glaseado",
))  # fmt: skip
"""Words for what belongs to a dish and names none."""


@dataclass(frozen=True)
class Told:
    """`dish` in the cook's words, "" where "it" is said; `holds` what is in it, `without` what is not, `besides` what
    else was said of it ("same kitchen")."""

    dish: str
    holds: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    besides: tuple[str, ...] = ()
    bare: bool = False
    """Nothing in the words shows that a dish is meant ("no nuts"): only below a message about one is it told of it."""


def contents_in(words: str) -> tuple[str, tuple[str, ...]] | None:
    """(the words for the dish, what is in it), or None. Questions, denials and conditions are none of it; at least one
    thing must be an ingredient of the tables, and only those are kept.

    >>> contents_in("I just found out there is peanut oil in my soup")
    ('my soup', ('peanut oil',))
    """
    return next(((t.dish, t.holds) for t in contents_told(words) if t.dish and t.holds and not t.without), None)


def contents_told(words: str) -> tuple[Told, ...]:
    """Each sentence that tells what is in a dish and nothing else; what no table knows is left out."""
    found = (_told(text) for text in _sentences(words))
    return tuple(one for one in found if one is not None)


def _told(text: str) -> Told | None:
    text = _WILL.sub(lambda m: f"{m['it']} has", _TRAIL.sub("", text))
    text = _TURNED.sub(lambda m: f"{m['es']} no" if m["es"] else "has no", _AFTER.sub("", text))
    if _AGAINST.search(text) or _OF_SOMEBODY.search(text):
        return None
    return next((one for part in _from_its_clauses(text) if (one := _clause(part)) is not None), None)


_PAUSE = re.compile(r"(?:,|:|\s[–-])\s+")


def _from_its_clauses(text: str) -> Iterator[str]:
    """The sentence, and what is left of it behind each pause: "just looked, the dressing has peanuts"."""
    yield text
    for pause in _PAUSE.finditer(text):
        yield text[pause.end() :]


def _clause(text: str) -> Told | None:
    both = _ONE_AND_OTHER.search(text)
    if both is not None and any(_known(_plain(both[k])) for k in "ab"):
        return Told(both["dish"] or "", tuple(dict.fromkeys((_plain(both["a"]), _plain(both["b"])))))
    inside = _IN.search(text)
    for pattern in (_PER, _FOR_DISH, _OF_IT, _IN, _HAY, _OF_DISH, _IS_IT, _DENIES_IN, _DENIES, _ON, _GOES):
        said = pattern.search(text)
        if said is None:
            continue
        if pattern is _OF_IT and inside is not None and inside["dish"].split()[-1] not in PART_OF_A_DISH:
            continue  # "there's egg in the rice" is of the rice
        dish = said.groupdict().get("dish") or ""
        made = sorted_out(said["what"], dish)
        if pattern is _IS_IT and made is not None and not (made.without or made.besides):
            continue  # "it is bread" names a dish
        if made is not None:
            return replace(made, bare=pattern in (_DENIES, _IS_IT, _ON))
    return None


def sorted_out(what: str, dish: str) -> Told | None:
    holds: list[str] = []
    without: list[str] = []
    besides: list[str] = []
    denied = False
    for raw in _SPLIT.split(what):
        part = _plain(raw)
        if not part:
            continue
        if _SHARED.match(part):
            besides.append(part)
            denied = False
            continue
        if _FREE.match(part):
            without.append(part)
            continue
        denied = _NOT.match(part) is not None or (denied and raw.strip().startswith("or "))
        thing = _plain(_NOT.sub("", part))
        if not thing or len(thing.split()) > MOST_WORDS or not _known(thing):
            continue
        (without if denied else holds).append(f"no {thing}" if denied else thing)
    if not holds and not without:
        return None
    return Told(dish, tuple(dict.fromkeys(holds[:MOST])), tuple(dict.fromkeys(without)), tuple(besides))


def _known(thing: str) -> bool:
    found = find(thing)
    return bool(found.rows) or {thing, thing.removesuffix("s")} & frozenset(need_words()) != frozenset()


def _plain(part: str) -> str:
    part = _TAIL.sub("", part.strip(" .!:"))
    while (shorter := _LEAD.sub("", part)) != part:
        part = shorter
    return part


def _sentences(words: str) -> Iterator[str]:
    plain = " ".join(words[:LONGEST].replace("\u2019", "'").casefold().split())
    return (text for text in _ENDS.split(plain) if text and "?" not in text)


_TRAIL = re.compile(r"(?:,? (?:btw|fyi|by the way|lol|haha|sorry|just saying|so you know|por cierto|ojo|eh))+[.! ]*$")
_WILL = re.compile(
    r"\b(?!(?:i|we|you|he|she|who|what|that|someone|somebody)(?:'ll| will)\b)(?P<it>[a-z]+)(?:'ll| will) (?:also )?(?:have|contain)\b(?! to\b)"
)
""" "It'll have egg": no more of a plan than the dish is."""
_FOR_DISH = re.compile(rf"^{_LEADS}(?:in|inside|en) (?P<dish>(?:the|my|our|mi|el|la|los|las) [^?,:]{{2,40}}?)(?::| -| –|,? (?:there(?:'s| is| are)|hay|va|van)) (?P<what>.{{2,140}}?)[.! ]*$")
_GOES = re.compile(rf"^{_LEADS}(?P<what>.{{2,80}}?) (?:goes|go|went|is|are|va|van) (?:in|into|en) (?P<dish>(?:the|my|our|mi|el|la|los|las) [^?]{{2,40}}?)[.! ]*$")
_ONE_AND_OTHER = re.compile(
    r"\b(?:one|the first|first|1|un[oa]?|l[ao] primer[oa])(?: of (?:them|the [a-z]+|my [a-z]+)| de (?:ellos|ellas|l[ao]s [a-z]+))? ?(?P<dish>[^\W\d_]{3,})? ?(?:is|will be|=|:|es|será) (?:an? |un[oa]? )?(?P<a>[^.;?]{2,40}?)(?:,| and|;|,? y) (?:the |l[ao] |el )?(?:other|second|2nd|otr[oa]|segund[oa])(?: one| [^\W\d_]{3,})? ?(?:is|will be|=|:|es|será) (?:an? |un[oa]? )?(?P<b>[^.;?]{2,40}?)[.! ]*$"
)
""" "One dip is taramasalata, the other is hummus"."""


def short_list(words: str) -> Told | None:
    """A few ingredients and nothing else ("pork, and yes sesame seeds on top"), from a cook whose dish was asked about:
    all of them known; never the whole of what is in it."""
    plain = " ".join(words[:LONGEST].replace("\u2019", "'").casefold().split())
    if "?" in plain or len(plain.split()) > SHORT or _NO_LIST.search(plain) or _AGAINST.search(plain) or _OF_SOMEBODY.search(plain):
        return None
    items = [_plain(_YES_BEFORE.sub("", raw)) for raw in _SPLIT.split(_TRAIL.sub("", plain))]
    items = [i for i in items if i]
    denied = [bool(_NOT.match(i)) for i in items]
    if not items or not all(_known(_plain(_NOT.sub("", i))) for i in items):
        return None
    holds = tuple(i for i, no in zip(items, denied, strict=True) if not no)
    without = tuple(f"no {_plain(_NOT.sub('', i))}" for i, no in zip(items, denied, strict=True) if no)
    return Told("", holds, without)


SHORT = 14
_YES_BEFORE = re.compile(r"^(?:(?:yes|yeah|yep|oh|ah|well|also|just|only|some|sí|si|pues|también|solo|it has|it's got|there's|lleva|tiene|hay)[ ,]+)+")
_NO_LIST = re.compile(
    r"\b(?:need|want|buy|get|grab|love|loves|like|likes|hate|eat|eats|drink|make|making|more|less|need[so]|quiero|gusta|compra\w*|com[eo]|falta\w*|hago)\b"
)

_YES = re.compile(
    rf"^(?:(?:yes|yeah|yep|yup|it does|they do|it is|there is|there are|a (?:little|tiny)? ?bit|some|a little|(?:i'm )?afraid so|unfortunately|sorry|oh|ah|s[ií]|un poco|algo|lleva|claro|por desgracia|ay)[ ,!.]*)+"
    rf"(?:(?:it|they|there) (?:does|do|has|is|are)[ ,]*)?(?:(?:a (?:little )?bit|some|lots?|plenty|un poco)[ ,]*)?(?:(?:in|en|on) {_IN_PART})?[ ,]*(?:i'm afraid|sorry|perdón)?[.! ]*$"
)
_NO = re.compile(
    r"^(?:(?:no|nope|none|nah|not at all|not really|it doesn't|they don't|it does not|there isn't|there aren't|nothing like that|nada|no lleva|no llevan|para nada|ninguno|ninguna|de eso nada)[ ,!.]*)+(?:in (?:it|them)|at all|i promise|promise)?[.! ]*$"
)


def answered(words: str) -> bool | None:
    """Whether a cook's few words say yes or no to "is there any in it?"; None when they say something else.

    >>> answered("yes in the dressing"), answered("nope, none"), answered("yes I'm coming")
    (True, False, None)
    """
    plain = " ".join(words[:LONGEST].replace("\u2019", "'").casefold().split())
    if _YES.match(plain):
        return True
    return False if _NO.match(plain) else None
