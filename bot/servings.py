"""Saying amounts: how much a promise is, how much of a category to ask for."""

from __future__ import annotations

import math

from bot.texts import Voice
from planning.headcount import headcount
from planning.menu import servings_of
from planning.potluck import Potluck, Promise

SMALLEST_ASK, LARGEST_ASK = 4, 15
"""One ask fills at most one usual vessel: nobody is asked to cook for forty. Common practice, no source."""


def one_ask(servings: float) -> int:
    """Servings to ask one person for, a whole number within what one cook brings."""
    return min(LARGEST_ASK, max(SMALLEST_ASK, math.ceil(servings)))


def amount_words(voice: Voice, potluck: Potluck, promise: Promise) -> str:
    """ "for 12", or the quantity as said, or "for about 10" when it is the usual yield."""
    if promise.servings is not None:
        return voice.plain("amount-for", n=promise.servings)
    if promise.quantity:
        return promise.quantity
    usual = servings_of(promise, headcount(potluck))
    return voice.plain("amount-about", n=round(usual)) if usual else ""
