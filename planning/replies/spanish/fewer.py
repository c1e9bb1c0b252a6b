"""Somebody of a party we know stays away: "mi hermano no va, quedamos 2"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Party
from planning.replies.ages import group_of_age
from planning.replies.intents import Intent, ReplyContext, SetParty
from planning.replies.spanish.members import LETTER, Group, counts_of, groups
from planning.replies.spanish.parties import count, relative
from planning.replies.text import Sentence

_FEWER = re.compile(
    r" (?P<n>un[oa]?|[0-9]{1,2}) (?:personas? |adult[oa]s? |niñ[oa]s? )?menos(?= )"
    r"|^ (?:tach|quit|rest|baj|descuent|descont)[a-z]* (?:a )?(?P<n2>un[oa]?|[0-9]{1,2})(?: personas?| adultos?| de la lista)?(?= $| ,)"
    r"| (?P<n3>un[oa]|[0-9]{1,2}) de nosotr[oa]s (?:al final )?(?:no (?:va|van|viene|vienen|puede|pueden|podra)|se (?:baja|bajan|queda))"
)
_STAYS = r"(?:se (?:queda|quedan|quedo|quedara|va|van|baja|bajan|bajo|baja)|no (?:va|van|viene|vienen|puede|pueden|vendra|vendran|ira|iran|podra|podran|llega|llegan|se apunta|asiste|nos acompaña|me acompaña)|(?:ya )?no (?:va|viene|puede)|falla|cancela|cancelo|esta (?:mal[oa]|enferm[oa]|con fiebre|malit[oa])|cayo enferm[oa]|amanecio (?:mal|malit[oa]|enferm[oa])|tiene (?:fiebre|guardia|turno|examen))"
LEFT = re.compile(
    rf"(?:^|(?<= ,)|(?<= que)|(?<= pero)|(?<= final)) (?:al final |finalmente |que |resulta que |)*(?P<some>(?P<of>un[oa]|[0-9]) de (?:los|las|mis) (?P<whose>[a-zñ]+)|(?:mi|el|la|los|las|su|mis|nuestr[oa]) (?P<who>[a-zñ]+(?: (?:mayor|menor|pequeñ[oa]|chic[oa]|grande))?)(?: de (?P<age>[0-9]{{1,2}})(?: años)?)?)(?: (?:al final|ya|tampoco|finalmente|se|me|nos|tambien))* {_STAYS}(?= )"
)
_NOT_COMING = re.compile(
    r"(?:^|(?<= ,)|(?<= que)|(?<= pero)|(?<= final)) (?P<some>(?:al final |ya |finalmente )*no (?:va|van|viene|vienen|puede|pueden|vendra|ira|podra)(?: (?:a )?(?:ir|venir|poder ir|poder))? (?P<of>(?P<whose>(?!)))?(?:mi|el|la|los|las|mis) (?P<who>[a-zñ]+))(?= )"
)


_BY_AGE = frozenset(("mayor", "menor", "mediano", "mediana", "pequeño", "pequeña", "chico", "chica", "grande", "peque"))
"""One of the children, where there are some: "el mayor se queda con su abuela"."""


def fewer_of(sentence: Sentence, context: ReplyContext, told: Sequence[Group]) -> SetParty | None:
    """One of a party we know stays away."""
    if context.party is None or context.party.total < 2:
        return None
    found = LEFT.search(sentence.text) or _NOT_COMING.search(sentence.text)
    if (few := _FEWER.search(sentence.text)) is not None and found is None:
        n = count(few["n"] or few["n2"] or few["n3"])
        letter = "children" if " niñ" in few[0] else "adults"
        return relative(sentence, context, counts_of(()) | {letter: -n}, few.start(), few.end())
    if found is None:
        return None
    whose = found["whose"] or (found["who"] or "").split()[0]
    n = count(found["of"]) if found["of"] else 1
    stays = [
        g
        for g in groups([*(["1"] if found["of"] else ["mi"]), whose.removesuffix("s") if found["of"] else whose])
        if g.letters
    ]
    if not stays and found["of"]:
        stays = [g for g in groups(["1", whose]) if g.letters]
    if whose in _BY_AGE and context.party.total > context.party.adults:
        stays = [g for g in groups(["mi", "niño"]) if g.letters]
    age = found.groupdict().get("age")
    if age and getattr(context.party, field := group_of_age(int(age))) >= n:
        return relative(sentence, context, counts_of(()) | {field: -n}, found.start(), found.end())
    if not stays:
        return None
    letters = [x for g in stays for x in g.letters][:1] * n if found["of"] else [x for g in stays for x in g.letters]
    field = LETTER[letters[0]]
    have = context.party
    if getattr(have, field) < len(letters):
        younger = [
            f
            for f in ("children", "toddlers", "teens", "infants")
            if field != "adults" and getattr(have, f) >= len(letters)
        ]
        if len(younger) != 1 and (younger or have.total != have.adults):
            return None
        field = younger[0] if younger else "adults"
    return relative(sentence, context, counts_of(()) | {field: -len(letters)}, found.start(), found.end())


def of_whom_is_left(left: Sequence[Intent], fewer: SetParty, context: ReplyContext) -> SetParty:
    """ "Mi madre no va, quedamos 4": who is left, where the number told agrees."""
    now = changed_by(context, fewer)
    if not left or now is None or not isinstance(left[0], SetParty):
        return fewer
    if now.total != left[0].party.total:
        return replace(fewer, confidence=0.7)
    return replace(fewer, party=now, relative=False, end=max(fewer.end, left[0].end), confidence=0.88)


def changed_by(context: ReplyContext, by: SetParty) -> Party | None:
    """The party we know with so many more or fewer; None where we know none, or nobody would be left of a group."""
    if context.party is None:
        return None
    counts = {name: getattr(context.party, name) + getattr(by.party, name) for name in LETTER.values()}
    return Party(**counts) if min(counts.values()) >= 0 else None
