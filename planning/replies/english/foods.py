"""Words for what somebody cannot or will not eat, and whose words they are."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from planning.potluck import Need
from planning.replies.english.lexicon import any_of, words
from planning.replies.text import Sentence

DIET = rf"(?P<diet>{any_of('diet')})"
ALLERGEN = any_of("allergen")
FOODS = rf"(?:{ALLERGEN})(?:(?: ,)?(?: and| or| &| \+|,| /)? (?:all |any |to |raw |also to |no )?(?:{ALLERGEN}))*"
LIST = rf"(?P<list>{FOODS})(?![a-z-])"
DIETS = rf"(?P<diets>(?:{any_of('diet')})(?:(?: ,)?(?: and| &| \+|,| or)? (?:{any_of('diet')}))*)"
_AGED = r"[0-9]{1,2} (?:- )?(?:years?|yrs?|months?)[ -]olds?|[0-9]{1,2} yo|(?:older|younger|other|little|big|eldest|oldest|youngest|middle|smallest) one"
KIN = rf"(?:(?:my|our|the|his|her|their) (?:[a-z]+ )?|(?<=^ )|(?<=, )|(?<=and )|(?<=but )|(?<=except )|(?<=that )|(?<=- )|(?<=: )|(?<=so )|(?<=because )|(?<=both ))(?P<kin>{any_of('kin')}|{any_of('kins')}|{any_of('guestkin')}|{_AGED})(?: \( (?:age |aged )?[0-9]{{1,2}} \))?(?: (?!is\b|are\b|has\b|have\b|can\b|does\b|do\b|will\b|must\b|who\b|and\b|or\b|also\b)[a-z]+)??"
_FIRST = re.compile(
    "|".join(sorted({re.escape(w.split()[0]) for role in ("diet", "allergen") for w in words(role)}, key=len))
)
_FOOD_AFTER = re.compile(
    r"^ (?:lasagna|chili|curry|option|options|dish|dishes|main|mains|food|meal|version|pie|cake|salad|burgers?|sausages?|stew|"
    r"casserole|pizza|one(?! (?:vegan|vegetarian|celiac|pescatarian|gluten|halal|kosher|dairy|nut)) |one(?= $)|side|cooking|friendly|brownies|cookies|bake|quiche|soup|pasta|stuff|recipe|choices?|menu|dip|"
    r"[a-z]+ (?:lasagna|chili|curry|pie|cake|salad|bake|soup|stew|casserole|burgers|brownies|cookies|rolls|pasta|dip))\b"
)
_SUBJECT = re.compile(
    rf" {KIN}(?: (?!and |but |is |are |has |have |had |i |we |comes? |coming |will |can |not |that |if )[a-z]+){{0,4}}?(?: (?:(?:is|are) (?:(?:a|also|strictly|fully) )*(?:{any_of('diet')})(?: (?:and|&|plus|,|but)(?: also| is)?)?|has|have|is|with|got|who|,|a|an|also|the|real|really|very|bad|badly|severe|severely|serious|nasty|mild|terrible|strong|highly|deathly|deadly|life-threatening|anaphylactic))* ?$"
)
_ANY_KIN = re.compile(
    rf" (?:(?:my|our|the|his|her) (?:[a-z]+ )??)?(?P<kin>{any_of('kin')}|{any_of('guestkin')}|kids|children|boys|girls|twins|parents|{_AGED})(?![a-z-])"
)
_PRONOUN = re.compile(r"(?:^|[ ,(]) ?(?:he|she|they|him|her|them|who) ")


@lru_cache(maxsize=8192)
def _may_name(word: str) -> bool:
    return _FIRST.search(word) is not None


def names_food(text: str) -> bool:
    """Whether any food or diet of a need may be named in plain words; without one nothing about them needs a look."""
    return any(_may_name(word) for word in text.split(" "))


def pieces(listed: str) -> list[str]:
    """The single foods of a list."""
    return re.findall(rf"(?<![a-z-])(?:{ALLERGEN})(?![a-z-])", listed)


def needs_of(listed: str, count: int, severity: str) -> tuple[Need, ...]:
    """The needs a list of foods stands for; "nuts" is tree nuts and peanuts, to be on the careful side."""
    table = words("allergen")
    found: list[Need] = []
    for piece in pieces(listed):
        for need in table[piece].split("+"):
            name = {"gluten": "gluten-free", "meat": "vegetarian"}.get(need, need)
            kind = "diet" if name == "vegetarian" and severity == "" else severity
            if all(n.need != name for n in found):
                found.append(Need(name, count, kind))
    return tuple(found)


def diets_of(listed: str, count: int = 1) -> tuple[Need, ...]:
    """The needs a list of diet words stands for; coeliac disease counts as an allergy."""
    table = words("diet")
    return tuple(
        Need(table[w], count, "allergy" if w.startswith("celiac") else "diet")
        for w in re.findall(rf"(?<![a-z-])(?:{any_of('diet')})(?![a-z-])", listed)
    )


def is_dish(after: str) -> bool:
    """Whether the words after a diet word make it a dish ("vegan slaw")."""
    if _FOOD_AFTER.match(after):
        return True
    following = after.split()[:3]
    dishes = words("dish")
    return (
        any(word in dishes for word in following[:2])
        and bool(following)
        and following[0] not in (",", "and", "+", "\x00")
    )


def kin_of(match: re.Match[str]) -> str | None:
    """The member of the party a match of KIN names."""
    kin = match.groupdict().get("kin")
    if not kin:
        return None
    first = kin.split()[0]
    known = words("kin").keys() | words("guestkin").keys() | words("kins").keys()
    return first if kin not in known and first in known else kin


def member_of(sentence: Sentence, match: re.Match[str], earlier: str) -> str | None:
    """Whose need it is: named in the words themselves, before them ("my kid has a peanut allergy"), or told of by a
    pronoun, which stands for the last one named ("with my mum, she's coeliac"). `earlier`: the sentences before."""
    if (named := kin_of(match)) is not None:
        return named
    before = sentence.text[: match.start() + 1].rstrip() + " "
    if (subject := _SUBJECT.search(before)) is not None:
        return kin_of(subject)
    tail = f"{before[-12:]}{match[0]} "
    if _PRONOUN.search(tail) is None or re.search(r" (?:i|we) (?:am|are|have|can|do|get) ", f" {match[0].strip()} "):
        return None
    return last_kin(f"{earlier} {before}") or last_kin(f" {sentence.text[match.end() :]} ")


_SOMEBODY = re.compile(
    rf" (?P<name>[^\W\d_][\w'-]*)(?: \( [^()]{{1,20}} \)| , [^,]{{1,20}} ,)?(?: (?:(?:is|are) (?:(?:a|also|strictly|fully) )*(?:{any_of('diet')})(?: (?:and|&|plus|,|but)(?: also| is)?)?|is|has|have|can|does|do|will|got|not|also|a|an|the|very|really|severely|who|badly|seriously|highly|terrible|bad|nasty|serious|severe))+ ?$"
)


def name_before(sentence: Sentence, end: int, guests: Sequence[tuple[str, str]]) -> tuple[str | None, str] | None:
    """Somebody called by name before the words at `end` of the sentence ("Pat has a", "Ella (6) is"): the guest's id,
    None for nobody the group knows, and the name."""
    match = _SOMEBODY.search(sentence.text[: end + 1].rstrip() + " ")
    if match is None:
        return None
    word = match["name"].removesuffix("'s")
    for guest, name in guests:
        if word in name.lower().split()[:1]:
            return guest, name
    token = next((t for t in sentence.tokens if t.plain == match["name"]), None)
    known = any(word in words(role) for role in ("kin", "kins", "guestkin", "neutral", "diet", "allergen"))
    if (
        token is None
        or known
        or not token.raw[:1].isupper()
        or token.raw.isupper()
        or token.plain != token.raw.lower()
        or word in _NO_NAMES
    ):
        return None
    return None, token.raw.removesuffix("'s")


_NO_NAMES = frozenset(
    (
        "i",
        "we",
        "he",
        "she",
        "they",
        "it",
        "you",
        "who",
        "everyone",
        "everything",
        "something",
        "nothing",
        "anything",
        "everybody",
        "nobody",
        "someone",
        "yes",
        "no",
        "one",
        "two",
        "both",
        "none",
        "that",
        "this",
        "and",
        "but",
        "also",
        "so",
        "all",
        "there",
        "what",
    )
)


def last_guest(text: str, guests: Sequence[tuple[str, str]]) -> str | None:
    """The guest named in these words, if one is and no member of the party after them."""
    best: tuple[int, str] | None = None
    for guest, name in guests:
        first = name.lower().split()[:1]
        at = text.rfind(f" {first[0]} ") if first else -1
        if at >= 0 and (best is None or at > best[0]):
            best = at, guest
    return best[1] if best is not None and _ANY_KIN.search(text, best[0] + 1) is None else None


def last_kin(text: str) -> str | None:
    """The member named last in these words."""
    found = list(_ANY_KIN.finditer(text[-600:]))
    return kin_of(found[-1]) if found else None
