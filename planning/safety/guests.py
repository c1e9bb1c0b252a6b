"""Dishes that are not for everybody: infants, small children, pregnant guests."""

from __future__ import annotations

from collections.abc import Iterator

from planning.potluck import Answer, Potluck, Promise
from planning.safety.notes import BLOCK, NOTE, WARN, SafetyNote, note
from planning.safety.words import has, words

LISTERIA = (("sprouts", "RISK-06", BLOCK), ("unpasteurized", "RISK-07", BLOCK), ("raw-animal", "RISK-08", BLOCK),
            ("soft-cheese", "RISK-03", WARN), ("pate", "RISK-04", WARN), ("smoked-fish", "RISK-05", WARN),
            ("deli", "RISK-02", WARN), ("seafood-salad", "RISK-09", WARN))  # fmt: skip
"""(tag, rule, severity). What a label or heating settles is a warning: the cook is asked."""


def food_notes(potluck: Potluck, promise: Promise) -> Iterator[SafetyNote]:
    """What is in the dish, and who should not have it. No guest is named: needs are private."""
    coming = [g for g in potluck.guests if g.answer is not Answer.NO]
    facts: dict[str, object] = {"dish": promise.dish}
    if has(promise, "raw-egg") and not has(promise, "treated-egg"):
        yield note("SPEC-04", WARN, "raw-egg", facts, promise=promise.id)
    if has(promise, "raw-dough"):
        yield note("SPEC-06", WARN, "raw-dough", facts, promise=promise.id)
    if has(promise, "canned-at-home"):
        yield note("SPEC-10", BLOCK, "home-canned", facts, promise=promise.id)
    if has(promise, "wild-mushroom"):
        yield note("SPEC-15", NOTE, "wild-mushroom", facts, promise=promise.id)
    if has(promise, "rice"):
        yield note("SPEC-11", NOTE, "rice", facts, promise=promise.id)
    if has(promise, "potato"):
        yield note("SPEC-13", NOTE, "foil-potato", facts, promise=promise.id)
    if any(g.party.infants for g in coming) and has(promise, "honey"):
        yield note("SPEC-09", BLOCK, "honey", facts, promise=promise.id)
    small = any(g.party.toddlers or g.party.infants for g in coming)
    if risky := words(promise, "choke"):
        if not has(promise, "choke-cut") and (small or any(g.party.children for g in coming)):
            rule, severity, key = ("CHOKE-02", BLOCK, "choke") if small else ("CHOKE-14", NOTE, "choke-older")
            yield note(rule, severity, key, facts | {"what": list(risky)}, promise=promise.id)
    elif small and (risky := words(promise, "choke-part")):
        # A name does not say whether the nuts in it are whole, chopped or a sauce: nothing is barred.
        yield note("CHOKE-02", WARN, "choke", facts | {"what": list(risky)}, promise=promise.id)
    if any(g.pregnant for g in coming):
        for tag, rule, severity in LISTERIA:
            if found := words(promise, tag):
                yield note(rule, severity, f"listeria-{tag}", facts | {"what": list(found)}, promise=promise.id)
        if has(promise, "raw-egg") and not has(promise, "treated-egg"):
            yield note("RISK-08", BLOCK, "listeria-raw-animal", facts | {"what": list(words(promise, "raw-egg"))},
                       promise=promise.id)  # fmt: skip
