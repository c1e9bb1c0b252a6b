"""One of the family is told of and comes, in one breath: "mi hermana está embarazada y viene", "viene mi mujer, sin
sésamo para ella". What is told of them and their coming are put side by side, as two sentences."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

from planning.replies.spanish.lexicon import any_of
from planning.replies.text import Sentence, Token

_COMES = r"(?:(?:tambien|igual|si) )?(?:(?:va|van|quiere|quieren) a? ?(?:venir|ir)|vienen?|van?|vendra|vendran|ira|iran|se (?:apuntan?|suman?|anotan?|unen?)|nos acompañan?|me acompañan?)"


@cache
def _told_and_comes() -> re.Pattern[str]:
    return re.compile(
        rf"^ (?:(?:y|pues|ah|oye|ojo|si|,) )*(?P<kin>(?:mi|mis|nuestr[oa]s?) (?:{any_of('kin')})) (?P<told>(?:es|son|esta|estan|tienen?|no (?:puede|pueden|comen?|toman?|tolera|toleran)) [^,]{{1,60}}?)(?: ,)? (?:y|e|pero) (?P<comes>{_COMES})(?= $| ,| tambien | conmigo | con nosotros | seguro | igual )"
    )


@cache
def _none_for() -> re.Pattern[str]:
    things = f"{any_of('allergen')}|{any_of('avoid')}"
    return re.compile(
        rf"(?: ,| -| pero| y)(?: pero| y| eso si ,?| ,)* (?:sin|nada de|nada con|que no haya|no) (?:nada de |los |las |el |la )?(?P<list>(?:{things})(?:(?: ,| y| ni| o)(?: de)? (?:{things}))*) para (?:ella|el|ellas|ellos)(?: por favor| porfa)?(?= $| ,)"
    )


@cache
def _kin_before() -> re.Pattern[str]:
    return re.compile(rf" (?P<kin>(?:mi|mis|nuestr[oa]s?) (?:{any_of('kin')}))(?= )")


def parts(sentence: Sentence) -> list[Sentence]:
    """The sentence in two, or as it is."""
    if sentence.question:
        return [sentence]
    if (match := _told_and_comes().match(sentence.text)) is not None:
        kin = sentence.tokens[slice(*sentence.token_range(match, "kin"))]
        told = sentence.tokens[slice(*sentence.token_range(match, "told"))]
        begin, _ = sentence.token_range(match, "comes")
        _, end = sentence.token_range(match, "comes")
        comes = [replace(sentence.tokens[begin], plain="vienen" if kin[0].plain.endswith("s") else "viene")]
        return [Sentence([*kin, *comes, *sentence.tokens[end:]], False), Sentence([*kin, *told], False)]
    match = _none_for().search(sentence.text)
    named = list(_kin_before().finditer(sentence.text[: match.start() + 1])) if match is not None else []
    if match is None or not named:
        return [sentence]
    first, last = sentence.token_range(match)
    listed = sentence.tokens[slice(*sentence.token_range(match, "list"))]
    kin = sentence.tokens[slice(*sentence.token_range(named[-1], "kin"))]
    where = listed[0]
    said = [Token(word, where.raw, where.start, where.start) for word in ("no", "puede", "comer")]
    rest = [*sentence.tokens[:first], *sentence.tokens[last:]]
    return [Sentence(rest, False), Sentence([*kin, *said, *listed], False)]
