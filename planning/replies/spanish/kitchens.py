"""What the host has to cook with, told as a list: "un horno con dos rejillas y 4 hornallas"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.intents import KitchenSays, ReplyContext
from planning.replies.text import Sentence

_APPLIANCE = r"(?:hornos?|rejillas?|bandejas?|baldas|hornillas?|hornallas?|fuegos|quemadores|parrillas?|microondas|ollas? (?:de coccion lenta|lentas?)|enchufes|circuitos|neveras?|heladeras?|refrigerador(?:es)?|cociner[oa]s|asador(?:es)?)"
_STOVE = r"(?:(?:una? )?(?:vitro(?:ceramica)?|placa|cocina|estufa|induccion) (?:de|con) )?"
_KITCHEN = re.compile(
    rf"^ (?:(?:tenemos|tengo|hay|en la cocina|en casa|la cocina tiene|mi cocina tiene|solo|pues|para cocinar|cocina|, |: ?) ?)*(?P<what>(?:[0-9]+|una?) {_APPLIANCE}(?:(?: ,)?(?: y| con| ,| mas)* {_STOVE}(?:[0-9]+|una?) {_APPLIANCE})*)(?: (?:en total|nada mas|solo))* $"
)


def read_kitchen(sentence: Sentence, context: ReplyContext) -> KitchenSays | None:
    """What the host has to cook with: "un horno con dos rejillas y 4 hornallas"."""
    if not context.host or not context.addressed or context.asked is not None or sentence.question:
        return None
    match = _KITCHEN.match(sentence.text)
    if match is None:
        return None
    start, end = sentence.span(0, len(sentence.tokens))
    said = sentence.tokens[slice(*sentence.token_range(match, "what"))]
    return KitchenSays(" ".join(t.plain for t in said), start=start, end=end, confidence=0.9)
