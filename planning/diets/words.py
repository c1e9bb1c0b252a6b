"""What to say about one dish and one need: keys and facts, the words are elsewhere."""

from __future__ import annotations

import re

from planning.diets.ingredients import find
from planning.diets.listed import COOK, UNKNOWN, USUAL, listed, names_it, verdict
from planning.diets.needs import ANYTHING, core_of, rule_of
from planning.potluck import Promise, Say

_WITH = re.compile(r"\b(?:with|con)\b")
_PARTS = re.compile(r",|;|&|\band\b|\by\b")
_NOT = re.compile(r"\s*(?:no|without|sin)\b")


def _told(promise: Promise, marks: frozenset[str]) -> bool:
    """Whether what stands behind "with" in a dish's name, as its cook told it, holds one of these marks."""
    behind = _WITH.split(promise.dish.casefold(), maxsplit=1)[1:]
    parts = [part for text in behind for part in _PARTS.split(text) if not _NOT.match(part)]
    return any(row.holds & marks for part in parts for row in find(part.strip()).rows)


def say_of(promise: Promise, need: str) -> Say:
    """One line on whether somebody with `need` finds something listed against it, and who listed it."""
    what = listed(promise)
    found = verdict(what, need)
    rule = rule_of(need)
    name = rule.need if rule else need
    if found == "listed-free":
        return Say("diets-listed-free", {"need": name, "kind": rule.kind if rule else "diet"})
    if rule is None and names_it(promise, need):
        by_cook = bool(promise.ingredients) or what.basis != USUAL
        return Say("diets-contains-cook" if by_cook else "diets-contains-usual", {"need": name, "marks": core_of(need)})
    if rule is None or ANYTHING in rule.asks:
        return Say("diets-ask-always", {"need": name})
    if found == "contains":
        marks = sorted(rule.avoids & what.holds)
        if not marks:
            return Say("diets-breaks", {"need": name})
        usual = what.basis == USUAL and not _told(promise, frozenset(marks))
        key = "diets-contains-usual" if usual else "diets-contains-cook"
        return Say(key, {"need": name, "marks": ", ".join(marks)})
    perhaps = sorted((rule.avoids & what.may_hold) | (rule.asks & (what.holds | what.may_hold)))
    if perhaps:
        return Say("diets-may-contain", {"need": name, "marks": ", ".join(perhaps)})
    if what.basis == UNKNOWN:
        return Say("diets-ask-unknown", {"need": name})
    if what.basis == COOK and what.unknown_ingredients:
        return Say("diets-ask-items", {"need": name, "items": ", ".join(what.unknown_ingredients)})
    return Say("diets-ask-usual", {"need": name})
