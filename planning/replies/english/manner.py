"""Words behind a dish that only say how it is: "soup, vegan, for 9", "ham, 5 lb, sliced", "chili, label and all"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence

from planning.replies.english.lexicon import any_of, words
from planning.replies.text import Token

_ENDS = frozenset((",", "for", "-", "–", "(", ")", "and", "feeds", "serves", "but", "so", "if"))
_KIND = ("version", "one", "ones", "option", "style", "edition", "variety", "kind", "type", "recipe")
_LEADS = frozenset(("all", "both", "very", "fully", "mostly", "nice", "extra", "super", "freshly", "fresh", "already", "it", "is", "will", "be", "they", "are", "totally", "100", "%", "completely", "a", "bit", "slightly", "not", "too", "real", "really", "also", "thinly", "just", "still"))  # fmt: skip
_HOW = re.compile(
    r"^ (?:"
    r"labels?(?: and all| on| included| attached)?|(?:with )?(?:the )?(?:labels?|ingredients?(?: list| card)?)(?: (?:on|attached|included))?"
    r"|from scratch|straight from the (?:oven|garden|farm|freezer)|(?:my|our|an?|the) (?:old )?(?:[a-z]+(?:'s)? )?(?:own )?(?:recipe|speciality|specialty|favou?rite|classic|special)"
    r"|(?:done|ready|finished|here|there) (?:by|at|before|around) [0-9:]+(?: ?(?:am|pm))?(?: sharp)?"
    r"|served? (?:hot|cold|warm|chilled|at room temperature|on the side)|(?:hot|cold|warm)|room temp(?:erature)?|on the side|in (?:a )?(?:slices|cubes|chunks|pieces|halves|foil|strips)|on (?:a )?(?:sticks?|skewers?|toothpicks?)"
    r"|(?:will |may |might |would )?(?:just )?(?:needs?|wants?) (?:a |an |the |some )?(?:plug|outlet|socket|power|fridge(?: space)?|reheating|warming(?: up)?|heating(?: up)?|oven(?: space| time)?|serving (?:spoon|fork|bowl)|trivet|extension (?:cord|lead)|plugging in)"
    r"|(?:already )?(?:cut|chopped|sliced|mixed|tossed|dressed|cooked|baked|plated)(?: up)?(?: (?:and|&) [a-z]+ed)?"
    r"|(?:the )?(?:good|usual|big|small|large|proper|real) (?:ones?|kind|stuff|sort)|as (?:always|usual|ever|before)|(?:the )?usual"
    r"|(?:the|that|my|our) (?:one|ones|kind|recipe|version|sort) (?:with|that|which|from|everyone|you|we|i|people|they|without|all) [a-z' ]{2,40}?|one [a-z]+(?: (?:and|,))? (?:one|the other) [a-z]+|(?:one|half|some|the other|both|each)(?: (?:of (?:them|which)|batch|tray|pot|pan))? (?:with(?:out)?|is|are|has|have)(?: [a-z]+){0,3}?(?: (?:and|,) (?:one|half|the other|some|the rest)(?: (?:with(?:out)?|is|are))?(?: [a-z]+){0,2}?)?"
    rf"|(?:no|without|with no|free of|zero) (?:any |added )?(?:{any_of('allergen')})(?:(?: ,| or| and| &) (?:any )?(?:{any_of('allergen')}))*"
    r")(?= $| ,| \)| -| and | but | so )"
)


def manner(tokens: Sequence[Token], i: int, last: int) -> int:
    """Where words behind the comma end that only say how the dish is made ("soup, vegan, for 9", "sweetcorn, chopped",
    "a pie, veggie version"); 0 when they say something else."""
    text = " " + " ".join(t.plain for t in tokens[i:last]) + " "
    if (whole := _HOW.match(text)) is not None:
        return i + len(whole[0].split())
    j = i
    while j < last and tokens[j].plain in _LEADS:
        j += 1
    if j >= last:
        return 0
    diet = next((n for n in (3, 2, 1) if " ".join(t.plain for t in tokens[j : min(j + n, last)]) in words("diet") and j + n <= last), 0)
    plain = tokens[j].plain
    made = diet or tokens[j].raw.lower() in ("gf", "df", "veg") or plain in words("manner") or (len(plain) > 5 and plain.endswith("ed"))
    after = j + (diet or 1)
    while made and after < last and (tokens[after].plain in words("diet") or tokens[after].raw.lower() in ("gf", "df") or (tokens[after].plain in ("and", "&") and after + 1 < last and tokens[after + 1].plain in words("diet"))):
        after += 1  # "turkey chili, gf df"
    after += after < last and tokens[after].plain in _KIND
    return after if made and (after >= last or tokens[after].plain in _ENDS) else 0
