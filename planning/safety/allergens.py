"""Dishes which hold what somebody at the table must not eat. Nobody is named: needs are private."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from planning.diets import listed, meant, need_of, rule_of
from planning.diets.listed import names_it
from planning.potluck import Answer, Need, Potluck, Promise
from planning.safety.notes import NOTE, WARN, SafetyNote, note

SEVERE, ALLERGY, INTOLERANCE = 3, 2, 1
_SEVERE_WORDS = ("sever", "anaphyla", "life", "epi", "deadly", "airborne", "strong")


@dataclass(frozen=True)
class Avoided:
    """One thing to keep away from, as the tables call it (`need`), and how bad it is for the worst-off."""

    need: str
    marks: frozenset[str]
    degree: int


def avoided(potluck: Potluck) -> tuple[Avoided, ...]:
    """Every allergy and intolerance of anybody who may come, each once at its worst, by name.

    An allergen named without a severity counts as an allergy: the careful reading. A diet of choice is
    none of these. Of an allergy to what no table knows ("kiwi") only the words are known: it has no marks.
    """
    found: dict[str, Avoided] = {}
    for guest in potluck.guests:
        if guest.answer is Answer.NO:
            continue
        for need in (one for said in guest.all_needs() for one in meant(said)):
            rule = rule_of(need.need)
            degree = degree_of(need, rule.kind if rule is not None else "")
            name = rule.need if rule is not None else need.need
            if degree == 0 or (name in found and found[name].degree >= degree):
                continue
            found[name] = Avoided(name, rule.avoids if rule is not None else frozenset(), degree)
    return tuple(found[name] for name in sorted(found))


def degree_of(need: Need, kind: str) -> int:
    """SEVERE, ALLERGY, INTOLERANCE, or 0 for what somebody chose; `kind` is what the tables take the need for."""
    said = need.severity.casefold()
    read = need_of(need.need)
    by_name = read[1] if read is not None else kind
    if any(word in said for word in _SEVERE_WORDS) or any(word in need.need.casefold() for word in _SEVERE_WORDS[:2]):
        return SEVERE
    if "allerg" in said:
        return ALLERGY
    if "intoler" in said or "sensitiv" in said:
        return INTOLERANCE
    if said == "diet":
        # "vegetarian" is a choice; "peanut", written among the diets, is still an allergen.
        return 0 if kind != "allergy" else ALLERGY
    return {"allergy": ALLERGY, "intolerance": INTOLERANCE}.get(by_name, ALLERGY if kind == "allergy" else 0)


def allergen_notes(potluck: Potluck, promise: Promise, needs: tuple[Avoided, ...]) -> Iterator[SafetyNote]:
    """What the cook listed, what the name says, and what a dish of that name usually holds.

    Listed or named: a warning (XCON-01: one serving utensil a dish, for allergens too). Perhaps, or
    usually: a note to ask. Nothing is a block: others may eat it.
    """
    if not needs or promise.category == "supplies":
        return
    for one in needs:
        how = held(promise, one)
        facts: dict[str, object] = {"dish": promise.dish, "need": one.need, "who": "cook"}
        facts["degree"] = DEGREES[one.degree]
        if how in ("listed", "named"):
            facts["who"] = "cook" if promise.ingredients else "name"
            severity = WARN if one.degree >= ALLERGY else NOTE
            yield note("XCON-01", severity, "allergen", facts, promise=promise.id)
        elif how == "usual":
            yield note("XCON-01", NOTE, "allergen-usual", facts, promise=promise.id)
        elif how == "perhaps" and promise.ingredients:
            yield note("XCON-01", NOTE, "allergen-perhaps", facts, promise=promise.id)


DEGREES = {SEVERE: "severe", ALLERGY: "allergy", INTOLERANCE: "intolerance"}


def held(promise: Promise, one: Avoided) -> str:
    """How the dish comes to hold what is avoided: "listed" by its cook, "named" by its own words, "usual" in such a
    dish, "perhaps" by brand or recipe; "" when nothing says so, which is not the same as without it."""
    if not one.marks:
        if names_it(replace(promise, ingredients=("water",)), one.need):
            return "named"
        return "" if not names_it(promise, one.need) else "listed" if promise.ingredients else "usual"
    what = listed(promise)
    # With a list that holds nothing, only what the name itself surely mentions is left.
    if one.marks & listed(replace(promise, ingredients=("water",))).holds:
        return "named"
    if one.marks & what.holds:
        return "listed" if what.basis == "cook" else "usual"
    return "perhaps" if one.marks & what.may_hold else ""


def topping_notes(potluck: Potluck, needs: tuple[Avoided, ...]) -> Iterator[SafetyNote]:
    """Bowls of the bar, where one spoon goes from bowl to bowl (XCON-03). A topping is what its name says."""
    if potluck.bar is None:
        return
    for topping in potluck.bar.toppings:
        if topping.guest is None:
            continue
        bowl = Promise("", topping.guest, topping.name, "topping")
        for one in needs:
            if held(bowl, one) not in ("", "perhaps"):
                facts: dict[str, object] = {"dish": topping.name, "need": one.need}
                facts["degree"] = DEGREES[one.degree]
                severity = WARN if one.degree >= ALLERGY else NOTE
                yield note("XCON-03", severity, "allergen-topping", facts)
