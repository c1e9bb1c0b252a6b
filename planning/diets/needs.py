"""The needs people name, and what each of them keeps away from.

A need is an allergen (the US nine, the EU fourteen, coconut) or a diet; tables `allergens.csv` and `diets.csv`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache

from planning import tables
from planning.dishes.names import fold

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
    """The rule of a need as `need_of` writes it, or of any of its words; None for a need nobody wrote down."""
    found = _rules().get(need)
    if found is None and (read := need_of(need)) is not None:
        found = _rules().get(read[0])
    return found


def _plain(text: str) -> str:
    return re.sub(r"[^a-z0-9']+", " ", fold(text)).strip()


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
_AROUND = re.compile(
    r"^(?:(?:is|are|am|i'm|we're|he's|she's|a|an|the|my|our|one|two|three|strict|strictly|very|bad|severe|severely|mild|mildly"
    r"|deathly|highly|really|all|has|have|with|person|guest|kid|son|daughter|husband|wife|partner|friend|some|any)\s+)+"
)


@lru_cache(maxsize=4096)
def need_of(text: str) -> tuple[str, str] | None:
    """(need, kind) of what somebody wrote: kind is "allergy", "intolerance" or "diet"; None when not understood.

    >>> need_of("coeliac"), need_of("allergic to shrimp"), need_of("lactose intolerant")
    (('gluten-free', 'intolerance'), ('shellfish', 'allergy'), ('dairy-free', 'intolerance'))
    """
    said = _plain(text)
    if not said:
        return None
    allergic, intolerant = bool(_ALLERGIC.search(said)), bool(_INTOLERANT.search(said))
    need = _find(said)
    if need is None:
        return None
    rule = _rules()[need]
    if allergic:
        return need, "allergy"
    if intolerant:
        return need, "intolerance"
    return need, rule.kind


def _find(said: str) -> str | None:
    words = _words()
    tries = [said]
    bare = _AROUND.sub("", said)
    tries.append(bare)
    stripped = _ALLERGIC.sub(" ", bare)
    stripped = re.sub(r"\b(to|food|foods|products?|diet|eater|only|please|person|people|of)\b", " ", stripped)
    tries.append(" ".join(stripped.split()))
    tries.append(" ".join(re.sub(r"\bintoleran\w*|\bsensitiv\w*", " ", stripped).split()))
    for attempt in tries:
        for form in (attempt, attempt.removesuffix("s"), attempt.replace("free", " free").replace("  ", " ")):
            if form in words:
                return words[form]
    return None
