"""Whether somebody may eat something, as people ask it: "can he have the fried rice?", "what should she avoid?", "could
the 4 month old have a bit of cake?", "and now?"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

LONGEST = 400
_WHO = r"(?:i|we|he|she|they|it|(?:my|our|the|his|her) (?:[\w'-]+ ){0,3}?[\w'-]+|[a-z][\w'-]+)"
_BIT = r"(?:(?:a|an|some|any|the|my|your|his|her|their|that|this|of|little|tiny|small|bit|piece|slice|bite|taste|spoonful|mouthful|portion|un|una|el|la|los|las|de|del|poco|poquito|trozo|pedazo|algo|mi|tu|su|ese|esa|este|esta) )*"
_MAY = re.compile(
    rf"\b(?:can|could|may|should|is it (?:ok|okay|alright|all right|fine|safe) (?:if|for)|(?:ok|okay|fine|safe) (?:if|for)) (?P<who>{_WHO}) (?:to )?(?:still |also |actually |safely |even |just |now |then )*(?:eat|eats|have|has|try|tries|taste|get|be given)\b(?! (?:to|a look|a say|in)\b) ?(?:{_BIT})(?P<what>[^?.!,]{{2,60}})"
    rf"|\b(?:is|are) (?P<what2>(?:the |that |this |my |your |\w+['’]s )?[^?.!,]{{2,40}}?) (?:ok|okay|alright|all right|fine|safe|good|suitable|allowed) (?:for|to give(?: to)?) (?P<who2>{_WHO})\b"
    rf"|\b(?:can|could|may|should) (?:i|we) (?:give|feed|offer) (?P<who3>{_WHO}) (?:{_BIT})(?P<what3>[^?.!,]{{2,60}})"
    rf"|\bpued[eo]n? (?:(?P<who4>(?:él|ella|mi|el|la|nuestr[oa]) ?[\wáéíóúñ]*(?: (?:pequeñ[oa]|chic[oa]|menor|mayor|de \w+ (?:meses|años)))?) )?(?:comer|probar|tomar)(?:lo|la)? ?(?:{_BIT})(?P<what4>[^?.!,]{{2,60}})"
    rf"|\b(?:le|les) (?:puedo|podemos|puede) dar (?:{_BIT})(?P<what5>[^?.!,]{{2,60}})"
)
_AVOID = re.compile(
    rf"\bwhat (?:(?:all )?(?:should|must|do|does|can't|cannot|can not|shouldn't|mustn't)) (?P<who>{_WHO}) (?:need to |have to |has to )?(?:avoid|stay away from|steer clear of|skip|leave out|leave|not (?:eat|have|touch)|eat|have)\b"
    r"|\bwhat(?:'s| is)(?: there)? (?:off limits|not (?:ok|okay|safe|good)|forbidden|out) for\b|\b(?:what|anything|something) (?:to|she should|he should|i should|we should|they should) (?:avoid|stay away from)\b"
    r"|\bqué (?:debe|debo|debería|tiene que|tengo que|debemos) (?:evitar|dejar)\b|\bqué no (?:puede|puedo|debe|debo|podemos) (?:comer|tomar|probar)\b"
)
_NOT_AVOID = re.compile(r"\bwhat (?:should|do|does|can) (?:i|we|they|he|she) (?:eat|have)\b")
_AGAIN = re.compile(
    r"^(?:(?:ok|okay|so|hm+|and|but|what about|how about|y|entonces|bueno|pues|qué tal|is it|is that) ?,? ?)*(?:now|right now|then|ahora|ya|ahora sí)(?: then)?\s*\?*$"
)
_INFANT = re.compile(
    r"\b(?:(?:[1-9]|1[01]|one|two|three|four|five|six|seven|eight|nine|ten|eleven)[ -](?:months?|mo|mths?|weeks?|wks?)\b(?:[ -]?olds?)?|(?:1[0-9]|2[0-9]|3[0-9])[ -]?weeks?[ -]olds?|(?:the |our |my |a |her |his |their |new |little |wee )+(?:baby|babies|infant|infants|newborn|bub)\b|(?:baby|babies|infants?|newborns?)\b(?! (?:back|carrots?|corn|potato|spinach|shower|leaf|greens|tomato|wipes|food|new))"
    r"|(?:[1-9]|1[01]|un|dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez|once) mes(?:es)?\b|(?:el|la|mi|nuestr[oa]|un|una) (?:bebé|bebe|recién nacid[oa])|bebés?\b)"
)
_HONEY = re.compile(r"\b(?:honey(?!moon|dew|comb toffee|crisp)|miel)\b")
_NO_HONEY = re.compile(
    r"\b(?:no|without|not|never|skip|leave out|hold|sin|nada de|nunca)(?: (?:any|the|give (?:him|her|them)|dar(?:le)?|la|de))* (?:honey|miel)\b|\bhoney[ -]?free\b|\b(?:honey|miel) (?:is|are|isn't|no) (?:not|bad|off|forbidden|es bueno)\b"
)
_GIVES = re.compile(
    r"\b(?:eat|eats|eating|have|has|had|having|give|gives|gave|given|feed|fed|try|tries|tried|taste|tasted|bit|bite|lick|spoon|share|for the baby|come|comer|comió|probar|prob[oó]|darle|dar|dimos|di|tomar|tomó|prueba)\b"
)
_PREGNANT = re.compile(r"\b(?:pregnan\w*|expecting|embarazad\w*|embarazo)\b")


def _plain(words: str) -> str:
    return " ".join(words[:LONGEST].replace("\u2019", "'").replace("¿", " ").replace("¡", " ").casefold().split())


def asks_may_eat(words: str) -> tuple[str, str] | None:
    """(who, what) of "can he have the fried rice?" in their words; None for other words. It must be put as a question.

    >>> asks_may_eat("can he have the fried rice?"), asks_may_eat("can I have the address?")[1]
    (('he', 'fried rice'), 'address')
    """
    plain = _plain(words)
    said = _MAY.search(plain)
    if said is None or not ("?" in plain or plain.startswith(("can ", "could ", "is ", "are ", "puede", "may "))):
        return None
    groups = said.groupdict()
    who = next((groups[k] for k in ("who", "who2", "who3", "who4") if groups.get(k)), "")
    what = next((groups[k] for k in ("what", "what2", "what3", "what4", "what5") if groups.get(k)), "")
    return (who.strip(), what.strip()) if what.strip() else None


def asks_to_avoid(words: str) -> bool:
    """ "What should she avoid from the list?".

    >>> asks_to_avoid("what should she avoid from the list?"), asks_to_avoid("what should I have ready?")
    (True, False)
    """
    plain = _plain(words)
    said = _AVOID.search(plain)
    return said is not None and _NOT_AVOID.search(said[0]) is None


def asks_again(words: str) -> bool:
    """ "And now?", right after something changed."""
    return _AGAIN.match(_plain(words)) is not None and len(words) <= 30


_ABOUT = re.compile(r"^(?:(?:ok|okay|so|and|but|or|what about|how about|y|qué tal|entonces)[ ,]+)+(?P<what>(?:the |my |his |her |el |la |los |las |mi )?[^?,.!]{2,40})\?*$")


def asks_about(words: str) -> str:
    """ "And the spring rolls?", behind such a question: the words for the dish, "" for other words."""
    said = _ABOUT.match(_plain(words))
    return said["what"] if said is not None and "?" in words and len(words.split()) <= 7 else ""


def of_an_infant(words: str) -> bool:
    """Whether somebody under a year is spoken of as eating, or to be given, something."""
    plain = _plain(words)
    return _INFANT.search(plain) is not None and _GIVES.search(plain) is not None


def honey_for_an_infant(words: str) -> bool:
    """Whether honey and a child under one year stand in one message, as food for it.

    >>> honey_for_an_infant("could the 4 month old have a bit? it's just honey"), honey_for_an_infant("no honey for the baby")
    (True, False)
    """
    plain = _plain(words)
    return _HONEY.search(plain) is not None and _NO_HONEY.search(plain) is None and of_an_infant(plain)


def tells_of_pregnancy(words: str) -> bool:
    return _PREGNANT.search(_plain(words)) is not None
