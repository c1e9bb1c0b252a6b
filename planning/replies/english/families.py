"""A household told as one: "the four Parkers", "me and the lads, so 4"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.lexicon import NUMBER, number_of, whole_number
from planning.replies.english.nouns import known_thing
from planning.replies.english.persons import noun_at
from planning.replies.text import Sentence, Token

MOST = 30
"""A family of more is none (common practice, no source)."""
_SUMMED = re.compile(
    rf" (?:so|=|:|makes?|that is|that makes|in total|total|altogether)(?: (?:that is|that makes|it is|we are|,))* (?P<n>{NUMBER})(?: (?:of us|in total|in all|altogether|people|now))* $"
)
"""What a list of persons comes to."""


def summed(sentence: Sentence) -> int:
    """The sum at the end of a list of persons; 0 when none is told."""
    told = _SUMMED.search(sentence.text)
    return number_of(told["n"]) if told is not None else 0


def family(tokens: list[Token]) -> tuple[int, int, int] | None:
    """ "The four Parkers": how many, first and last token."""
    for i in range(len(tokens) - 1):
        read = whole_number(tokens, i) if i == 0 or tokens[i - 1].plain in ("the", "all", "us", "for", "on") else None
        if read is None or not 1 < read[0] <= MOST or read[1] >= len(tokens):
            continue
        name = tokens[read[1]]
        if (
            name.raw[:1].isupper()
            and name.raw.endswith("s")
            and not name.raw.isupper()
            and not noun_at(tokens, read[1])
        ):
            return (read[0], i, read[1] + 1) if known_thing(name.plain)[1] < 0.5 else None
    return None
