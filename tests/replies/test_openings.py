"""Rules tried only where they can begin find what a search everywhere would."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from planning.replies.english.openings import Rules, ways

_START = r"(?:^|(?<= ,)|(?<= and)) "
_RULES = [
    (r"^ yes\b|\bsure\b", 0.8),
    (rf"{_START}coming\b", 0.9),
    (r"\b(?:i|we) (?:can|will) come\b", 0.9),
    (rf"(?:{_START}|\bwe )be there(?= $| ,)", 0.7),
    (r"no", 0.6),
]
_WORDS = st.lists(
    st.sampled_from(["yes", "sure", ",", "and", "coming", "i", "we", "can", "will", "come", "be", "there", "no", "not"])
)


@given(_WORDS)
def test_the_match_worth_most_is_as_good_as_when_every_rule_is_searched_for_everywhere(words: list[str]) -> None:
    text = " " + " ".join(words) + " "
    best = Rules(_RULES, (_START, r"\b(?:i|we) ", rf"(?:{_START}|\bwe )")).best(text)
    searched = [worth for source, worth in _RULES if re.search(source, text)]

    assert (best[0] if best else None) == max(searched, default=None)


def test_alternatives_inside_brackets_stay_together() -> None:
    assert ways(r"^ a(?:b|c)|[|(]d\||e") == ["^ a(?:b|c)", r"[|(]d\|", "e"]
