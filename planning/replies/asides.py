"""A question behind a statement of what somebody cannot eat: two sentences, whatever stands between them.

"My son carries an epipen for peanuts, is the table nut free?" must not be read as a question alone: the allergy would
be lost.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from planning.diets.contents import sorted_out
from planning.replies.intents import AddPromise, Intent

_TOLD = re.compile(
    r"\b(?:allerg\w*|anaphyl\w*|epi-?\s?pens?|intoleran\w*|c(?:o)?eliacs?|lactose|vegan\w*|vegetarian\w*|veggie|pescatarian\w*|halal|kosher"
    r"|(?:can['’]?t|cannot|can not|must ?n['’]?t|mustn['’]?t|does ?n['’]?t|don['’]?t) (?:have|eat|do|tolerate)"
    r"|al[eé]rg\w*|anafil\w*|cel[ií]ac\w*|no (?:puede|puedo|podemos|pueden|come|como|comemos) (?:comer )?)",
    re.IGNORECASE,
)
_ASKED = (
    r"(?:(?:so|and|but|y|pero|entonces)\s+)?(?:(?:is|are|does|do|did|will|has|have)\s+(?:the|there|this|that|these|those|any|anything|anyone|it|they|he|she|your|our)"
    r"|what(?:['’]?s| is| are| can| could| should| dishes| food| on)|which\s+\w+|can\s+(?:i|we|he|she|they)|anything\s+\w+"
    r"|hay|habr[aá]|lleva|llevan|tiene|tienen|contiene|qu[eé]\s+(?:puede|puedo|podemos|lleva|hay|platos?)|puede\s+comer|puedo\s+comer)\b"
)
_COMMA = re.compile(rf"[,–—-](?=\s+{_ASKED})", re.IGNORECASE)
_JOINT = re.compile(rf"(?<=\s)(?:so|and)(?=\s+(?:is|are|what|which|can)\b)(?=\s+{_ASKED})", re.IGNORECASE)


def told_and_asked(text: str) -> str:
    """The text with a full stop between the two, as long as before, so that places in it stay.

    >>> told_and_asked("i'm allergic to egg, is there egg in the slaw?")
    "i'm allergic to egg. is there egg in the slaw?"
    """
    told = _TOLD.search(text)
    if told is None or ("?" not in text and _COMMA.search(text) is None):
        return text
    found = _COMMA.search(text, told.start()) or _JOINT.search(text, told.start())
    if found is None:
        return text
    return text[: found.start()] + ".".ljust(found.end() - found.start()) + text[found.end() :]


_WHAT = r"[^.;:()!?\n]{2,80}?"
_CONTENTS = re.compile(
    r"(?P<lead>(?<![,;.!(–—\s-])\s{0,3}[,;.!(–—-]{1,6}\s{0,3}|(?<!\s)\s+)(?P<who>(?:(?:it|they|which|that|but|and|fyi|btw|note|careful|warning|all|ojo|que)['’]?s?:?\s+){0,4})"
    rf"(?:(?P<verb>contains?|has|have|there['’]?s|there is|there are|is made with|made with|cooked in|cooked with|fried in|lleva|llevan|contiene|contienen|tiene|tienen|hay)\s+(?P<what>{_WHAT})(?:\s+in (?:it|them|there|these))?"
    rf"|(?P<no>(?:no|without|sin)\s+{_WHAT})(?:\s+in (?:it|them|there|these)(?=[.;()!\n]|$)|(?=\))))"
    r"(?=\s*(?:[.;()!\n]|$))\)?",
    re.IGNORECASE,
)


_WILL = re.compile(r"\b(?P<it>it|they|there)(?P<will>['’]?ll| will)(?= (?:have|contain)\b(?! to\b))", re.IGNORECASE)
""" "It'll have egg": what is in it, though it is not made yet."""
_IF = re.compile(r"\b(?:if|when|whether|unless|once|in case|assuming|si|cuando)$", re.IGNORECASE)


@dataclass(frozen=True)
class Beside:
    """What is said to be in a dish, right behind it; `start` its place in the text."""

    start: int
    contents: tuple[str, ...]


def contents_beside(text: str) -> tuple[str, tuple[Beside, ...]]:
    """The text with what it tells of a dish's contents blanked out, so that no milk becomes a dish of its own.

    >>> contents_beside("soup for 10, contains milk")[0].rstrip()
    'soup for 10'
    """
    found: list[Beside] = []
    text = _WILL.sub(lambda m: m["it"] + " " * len(m["will"]), text)
    for match in _CONTENTS.finditer(text[:1000]):
        loose = not match["lead"].strip() and not match["who"]
        if match["verb"] is not None and loose and match["verb"].casefold() in ("has", "have", "hay"):
            continue  # "I have eggs" offers them
        if loose and _IF.search(text[: match.start()]):
            continue  # "if there's oven space"
        told = sorted_out((match["what"] or match["no"]).casefold(), "")
        if told is None or not text[: match.start()].strip():
            continue
        found.append(Beside(match.start(), (*told.holds, *told.without)))
        end = match.end()
        stop = "." if "." in match["lead"] else " "
        text = text[: match.start()] + stop + " " * (end - match.start() - 1) + text[end:]
    return text, tuple(found)


def dishes_before(intents: Sequence[Intent], start: int) -> list[int]:
    """The places among the intents of the dishes named before this place of the text."""
    return [k for k, i in enumerate(intents) if isinstance(i, AddPromise) and not i.vague and i.start <= start]


def with_contents(intents: Sequence[Intent], told: Sequence[Beside]) -> list[Intent] | None:
    """Each goes to the dish before it; None where one finds no dish, so that nothing must be blanked out."""
    made = list(intents)
    for beside in told:
        before = dishes_before(made, beside.start)
        if not before:
            return None
        at = max(before, key=lambda k: made[k].start)
        promise = made[at]
        assert isinstance(promise, AddPromise)
        made[at] = replace(promise, contents=(*promise.contents, *beside.contents))
    return made


_DIET = (
    r"(?:vegan[oa]?s?|vegetarian[oa]?s?|veggie|plant[- ]based|meat(?:[- ]free|less)|(?:gluten|dairy|lactose|nut|egg|soy|milk)[- ]free"
    r"|gf|df|halal|kosher|sin (?:gluten|lactosa|huevo|l[aá]cteos|frutos secos|carne))"
)
_LABELS = re.compile(
    r"(?P<lead>(?<![,;.!(–—\s-])\s{0,3}[,;.!(–—-]{1,6}\s{0,3})(?:(?:it['’]?s|it is|they are|which is|which are|they['’]?re|all|both|totally|fully|completely|100 ?%|es|son|tod[oa]s?)\s+)*"
    rf"(?P<labels>{_DIET}(?:\s*(?:,|/|&|\+|\band\b|\by\b)\s*{_DIET})*)\s*(?=[.;()!\n]|$)\)?",
    re.IGNORECASE,
)
_SHORT = {"gf": "gluten-free", "df": "dairy-free"}


@dataclass(frozen=True)
class Labelled:
    """What is said of a dish right behind it; `start` its place in the text."""

    start: int
    labels: tuple[str, ...]


def labels_beside(text: str) -> tuple[str, tuple[Labelled, ...]]:
    """The text with the diets blanked out that stand behind something, as behind a dish.

    >>> labels_beside("rice and beans for 8, vegan and gf")[1][0].labels
    ('vegan', 'gluten-free')
    """
    found = [
        Labelled(
            match.start(),
            tuple(
                _SHORT.get(label, label)
                for label in re.findall(_DIET, match["labels"].casefold())
            ),
        )
        for match in _LABELS.finditer(text[:1000]) if text[: match.start()].strip()
    ]  # fmt: skip
    for label in found:
        match = _LABELS.match(text, label.start)
        assert match is not None
        text = text[: match.start()] + ".".ljust(match.end() - match.start()) + text[match.end() :]
    return text, tuple(found)


def with_labels(intents: Sequence[Intent], told: Sequence[Labelled]) -> list[Intent] | None:
    """Each promise with the diets said right behind it as part of its name; None where one of them is behind no dish:
    then it is somebody's own."""
    made = list(intents)
    for label in told:
        before = [k for k, i in enumerate(made) if isinstance(i, AddPromise) and i.start < i.end <= label.start]
        at = max(before, key=lambda k: made[k].end, default=None)
        promise = made[at] if at is not None else None
        if at is None or not isinstance(promise, AddPromise) or promise.vague:
            return None
        if any(i.end > promise.end and i.start < label.start for i in made if i is not promise and i.end > i.start):
            return None  # "slaw for 12 and my wife comes, too, vegan"
        front = [w for w in label.labels if w not in promise.dish.casefold() and not w.startswith("sin ")]
        behind = [w for w in label.labels if w not in promise.dish.casefold() and w.startswith("sin ")]
        made[at] = replace(promise, dish=" ".join((*front, promise.dish, *behind)))
    return made
