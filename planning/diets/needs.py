"""The needs people name, and what each of them keeps away from.

A need is an allergen (the US nine, the EU fourteen, coconut) or a diet; tables `allergens.csv` and `diets.csv`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from planning import tables
from planning.diets.ingredients import ingredient_named
from planning.dishes.names import fold
from planning.potluck import Need

ANYTHING = "anything"
"""In a rule's `asks`: no list of ingredients can answer it (low salt, diabetes), so the cook is always asked."""


@dataclass(frozen=True)
class NeedRule:
    """What a need keeps away from (`avoids`), and what has to be asked about (`asks`), as marks of ingredients."""

    need: str
    kind: str
    avoids: frozenset[str]
    asks: frozenset[str]
    source: str


def _split(cell: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in cell.split(";") if part.strip())


@cache
def allergens() -> frozenset[str]:
    """The marks of ingredients which are allergens."""
    return frozenset(row["allergen"] for row in tables.rows("allergens")) | {"barley", "rye", "oats"}


@cache
def us_nine() -> frozenset[str]:
    """Major food allergens of the United States: 21 U.S.C. 321(qq), FALCPA 2004 and FASTER Act 2021."""
    return frozenset(row["allergen"] for row in tables.rows("allergens") if row["us"])


@cache
def eu_fourteen() -> frozenset[str]:
    """Regulation (EU) 1169/2011, Annex II."""
    return frozenset(row["allergen"] for row in tables.rows("allergens") if row["eu"])


@cache
def _rules() -> dict[str, NeedRule]:
    rules = {
        row["need"]: NeedRule(
            row["need"], "diet", frozenset(_split(row["avoids"])), frozenset(_split(row["asks"])), row["source"]
        )
        for row in tables.rows("diets")
    }
    for row in tables.rows("allergens"):
        name = row["allergen"]
        avoids = {"gluten", "wheat", "barley", "rye"} if name == "gluten" else {name}
        rules[name] = NeedRule(name, "allergy", frozenset(avoids), frozenset(_split(row["asks"])), row["source"])
    return rules


def rule_of(need: str) -> NeedRule | None:
    """The rule of a need as `need_of` writes it, or of any words for it; None for one no table knows."""
    found = _rules().get(need)
    if found is None and (read := need_of(need)) is not None:
        found = _rules().get(read[0])
    return found


def _plain(text: str) -> str:
    return (
        re.sub(r"[^a-z0-9']+", " ", re.sub(r"\([^)]*\)?", " ", fold(text)).replace("'s ", " "))
        .strip()
        .removesuffix("'s")
    )


@cache
def _words() -> dict[str, str]:
    found: dict[str, str] = {}
    for table, name in (("allergens", "allergen"), ("diets", "need")):
        for row in tables.rows(table):
            found.setdefault(_plain(row[name]), row[name])
    for table, name in (("diets", "need"), ("allergens", "allergen")):
        for row in tables.rows(table):
            for word in _split(row["words"]):
                found.setdefault(_plain(word), row[name])
    return found


def need_words() -> tuple[str, ...]:
    """Every word and phrase understood as a need, longest first."""
    return tuple(sorted(_words(), key=lambda word: (-len(word), word)))


_ALLERGIC = re.compile(r"\b(allerg\w*|anaphyla\w*|epipen|epi pen)\b")
_INTOLERANT = re.compile(r"\b(intoleran\w*|sensitiv\w*|c(o)?eliacs?|lactose)\b")
_SEVERE = re.compile(r"\b(?:sever|anaphyla|life threat|epi|deadly|deathly)")
_WHO = (
    r"is|are|am|be|i'm|we're|he's|she's|i|we|he|she|they|a|an|the|my|our|one|two|three|four|strict|strictly|very|bad|badly|severe|severely"
    r"|mild|mildly|slight|slightly|deathly|highly|really|extremely|quite|has|have|had|got|with|person|people|guest|kid|son|daughter"
    r"|husband|wife|partner|friend|some|any|all|only|also|please|to|of|from|or|food|foods|product|products|diet|eater|eaters"
    r"|type|1|2"
)
_REFUSING = (
    r"no|non|never|without|avoid|avoids|avoiding|off|free"
    r"|(?:cannot|can't|cant|can not|does not|doesn't|doesnt|do not|don't|dont|won't|must not|not allowed)"
    r"(?: (?:eat|have|tolerate|touch|drink|stand|do|take|digest|like))?"
)
_ABOUT = re.compile(rf"\b(?:allerg\w*|anaphyla\w*|epipen|epi pen|intoleran\w*|sensitiv\w*|{_WHO}|{_REFUSING})\b(?!')")
"""What may stand around the food in words about a need, and says who, how badly, or only that it is not eaten."""
_AROUND = re.compile(rf"^(?:(?:{_WHO})\s+)+|(?:\s+(?:{_WHO}))+$")
_DENIED = re.compile(
    r"\b(?:not (?!allowed|eat|have|tolerate|touch|drink|stand|do|take|digest|like)|no (?:known )?(?:allerg|longer)"
    r"|isn't|aren't|used to|outgr|can eat|can have|ok|okay|fine|eats|except|apart|but|unless)"
)
"""Words that turn a need about, or half of it: such a need stays as written and is always asked about."""
_NOTHING = re.compile(
    r"|n a|none?|no|nothing|nil|anything|everything|eats? (?:anything|everything)|omnivore"
    r"|no (?:known )?(?:\w+ )?(?:allerg\w+|restrictions?|needs?|requirements?|diets?|preferences?)"
)
_AND = re.compile(r"\s*(?:[,;/&+]|\band\b|\bor\b|\bplus\b|\balso\b)\s*", re.IGNORECASE)


@lru_cache(maxsize=4096)
def need_of(text: str) -> tuple[str, str] | None:
    """(need, kind) of what somebody wrote: kind is "allergy", "intolerance" or "diet"; None when not understood.

    >>> need_of("coeliac"), need_of("allergic to shrimp"), need_of("lactose intolerant")
    (('gluten-free', 'intolerance'), ('shellfish', 'allergy'), ('dairy-free', 'intolerance'))
    """
    said = _plain(text)
    need = _words().get(said) or (None if not said or _DENIED.search(said) else _find(said))
    if need is None:
        return None
    if _ALLERGIC.search(said):
        return need, "allergy"
    if _INTOLERANT.search(said):
        return need, "intolerance"
    return need, _rules()[need].kind


@lru_cache(maxsize=4096)
def needs_in(text: str) -> tuple[str, ...]:
    """The needs which these words name, each once: as the tables call it where they know it, else as written.

    Nothing is lost: of "dairy free and kiwi" the second part stays as it is; only "none" names no need.

    >>> needs_in("no pork"), needs_in("gluten-free & kiwi")
    (('pork-free',), ('gluten-free', 'kiwi'))
    """
    whole = need_of(text)
    if whole is not None:
        return (whole[0],)
    if _NOTHING.fullmatch(_plain(text)):
        return ()
    parts = [part.strip(" .!") for part in _AND.split(text)]
    parts = [part for part in parts if part]
    read = [need_of(part) for part in parts]
    if not any(read):
        return (text,)
    return tuple(dict.fromkeys(found[0] if found else part for part, found in zip(parts, read, strict=True)))


def meant(need: Need) -> tuple[Need, ...]:
    """A guest's need under the tables' names, one for each thing it names.

    How many have it stays as said, and so does how bad it is where somebody said so; else the words tell
    ("severe egg allergy", "coeliac").
    """
    names = needs_in(need.need)
    if names == (need.need,):
        return (need,)
    severity, said = need.severity, _plain(need.need)
    if severity in ("", "diet", "allergy") and _SEVERE.search(said):
        severity = "severe allergy"
    elif severity in ("", "diet"):
        severity = "allergy" if _ALLERGIC.search(said) else "intolerance" if _INTOLERANT.search(said) else severity
    return tuple(replace(need, need=name, severity=severity) for name in names)


def core_of(need: str) -> str:
    """What is left of words about a need without who has it and how badly: "no mushrooms please" is "mushrooms"."""
    return " ".join(_ABOUT.sub(" ", _plain(need)).split())


def _find(said: str) -> str | None:
    for attempt in (said, _AROUND.sub("", said), core_of(said)):
        for form in (
            attempt,
            attempt.removesuffix("s"),
            re.sub(r" nuts?$", "", attempt),
            re.sub(r" ?free", " free", attempt),
        ):
            if (found := _words().get(form)) is not None:
                return found
        # "tilapia", "cashew butter", "edamame": a food of one allergen is that allergen, the careful reading.
        if (found := _allergen_of(attempt)) is not None:
            return found
    return None


def _allergen_of(food: str) -> str | None:
    row = ingredient_named(food) if food else None
    if row is None:
        return None
    held = row.holds & allergens()
    if held <= _GLUTEN_GRAINS and held:
        return "wheat" if held == {"wheat"} else "gluten-free"
    return next(iter(held)) if len(held) == 1 and held <= _rules().keys() else None


_GLUTEN_GRAINS = frozenset(("wheat", "barley", "rye"))
