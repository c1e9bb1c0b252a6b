"""What sounds like an emergency and tells of none: an illness somebody has lived with, a thing that fell in.

An allergy told in advance must be noted, not answered with an ambulance; and a cake that collapsed is no fainted guest.
"""

from __future__ import annotations

import re

from planning.dishes import lookup

_SIGN = {
    "en": r"(?:anaphylaxis|anaphylactic(?: reactions?)?|allergic reactions?|reactions?|hives(?: all over)?|wheez\w+"
    r"|rash(?:es)?)",
    "es": r"(?:anafilaxia|reacci[oó]n(?:es)?(?: al[eé]rgicas?)?|urticaria|ronchas)",
}
_STANDING = {
    "en": re.compile(
        rf"\b{_SIGN['en']}(?: \(| (?:to|from|with|around|after eating)(?! (?:the|this|that|those|it|your|something"
        r"|whatever|what|her|him|his)\b)| when(?:ever)? (?:he|she|they|i|we|you) )"
        r"|\b(?:history of|risk of|prone to|diagnosed with|have had|has had|had) (?:\w+ ){0,2}anaphyla"
    ),
    "es": re.compile(
        rf"\b{_SIGN['es']}(?: \(| (?:a|al|con|por|cuando (?:come|como|comen))(?! (?:lo|eso|esto|algo)\b))"
        r"|\b(?:historial de|riesgo de|diagnosticad[oa] con|ha tenido|tuvo) (?:\w+ ){0,2}anafil"
    ),
}
_NOW = {
    "en": re.compile(
        r"\b(?:just|now|help|ate|eaten|swallowed|bit|having|started|starting|getting worse|what (?:do|should) (?:we|i)"
        r"|quick|quickly|hurry|urgent|ambulance|where(?:'s|s| is)|turning|swelling|911|999|112)\b|!!"
    ),
    "es": re.compile(
        r"\b(?:comi[oó]|comí|ha comido|acaba|trag[oó]|prob[oó]|ahora|ahorita|ayuda|auxilio|socorro|r[aá]pido|urgen\w+"
        r"|qu[eé] (?:hago|hacemos)|est[aá]n?|empez[oó]|ambulancia|911|112)\b|!!"
    ),
}


def lives_with(text: str, words: str, language: str) -> bool:
    """Whether a sentence `text` of the message `words` tells of an illness somebody has, and of nothing happening now.

    >>> said = "my daughter has anaphylaxis to sesame, she's 5"
    >>> lives_with(said, said, "en"), lives_with("she has anaphylaxis now!", "she has anaphylaxis now!", "en")
    (True, False)
    """
    if language not in _STANDING or _STANDING[language].search(text) is None:
        return False
    return _NOW[language].search(words.casefold()) is None


_FELL = re.compile(
    r"(?P<what>[^\W\d_][\w'’-]*) (?:(?:has|have|had|just|all|both|totally|sort of|kind of|half) )*collapsed\b",
    re.IGNORECASE,
)
_THINGS = re.compile(
    r"tent|gazebo|marquee|table|chair|bench|shelf|roof|ladder|grill|barbecue|bbq|stand|box|bag|parasol|umbrella|canopy|tower"
    r"|pile|stack|wifi|system|internet|website|plan|lot|thing|middle|centre|center|soufflé|souffle|top|layers?|sides?|base|it"
)
_INSTEAD = re.compile(
    r"\b(?:instead|doing (?:a|one)|making|baking|bringing|bake|dessert|trifle|crumble|en su lugar)\b", re.IGNORECASE
)


def without_fallen_things(text: str) -> str:
    """The text where what collapsed is no person: a dish, a tent, several of something."""

    def fell(match: re.Match[str]) -> str:
        what = match["what"].casefold()
        # Several of something nobody knows ("pavs") are things where something else is made; a name is a person.
        several = what.endswith("s") and not what.endswith(("'s", "’s", "ss", "us")) and _INSTEAD.search(text)
        thing = _THINGS.fullmatch(what) or lookup(what).dish is not None or several
        return f"{match['what']} sank" if thing else match[0]

    return _FELL.sub(fell, text)
