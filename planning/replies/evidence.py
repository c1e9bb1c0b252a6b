"""What the words of an English message speak for when no rule understood it: coming, not coming, perhaps, or nothing.

A linear model (multinomial logistic regression) over words and pairs of neighbouring words. Its weights,
`data/words_evidence.csv`, are fitted to the labelled sentences of our own corpus by `python -m tests.replies.learn`.
It never changes anything: what it makes likely is asked, with buttons.
"""

from __future__ import annotations

import re
from functools import cache
from itertools import pairwise
from math import exp

from planning.potluck import Answer
from planning.replies.intents import Intent, ReplyContext, SetAnswer
from planning.replies.text import Message
from planning.tables import rows

CLASSES = ("none", "yes", "no", "maybe")
LIKELY = 0.65
"""From this probability on it is worth a question: on sentences of files it was not fitted to, 475 of 551 such
were right (`python -m tests.replies.learn --leave-out`)."""
MOST_WORDS = 30
"""A longer message is a story."""


def features(message: Message, asked: str | None) -> frozenset[str]:
    """The words, pairs of words (with the sentence's ends), how long it is, and below which question it stands."""
    found = {f"asked:{asked}" if asked else "asked:"}
    count = 0
    for sentence in message.sentences:
        words = ["#" if t.plain[0].isdecimal() else t.plain for t in sentence.tokens if re.match(r"\w", t.plain)]
        count += len(words)
        found.update(words)
        ends = ["^", *words, "?" if sentence.question else "$"]
        found.update(f"{a} {b}" for a, b in pairwise(ends))
    found.add(f"length:{min(4, count // 4)}")
    return frozenset(found)


@cache
def _weights() -> dict[str, tuple[float, ...]]:
    return {row["feature"]: tuple(float(row[name]) for name in CLASSES) for row in rows("words_evidence")}


def odds(message: Message, asked: str | None) -> dict[str, float]:
    """The probability of each of CLASSES; they add up to 1."""
    weights = _weights()
    score = list(weights[""])
    for feature in features(message, asked):
        for i, weight in enumerate(weights.get(feature, ())):
            score[i] += weight
    top = max(score)
    parts = [exp(s - top) for s in score]
    return {name: part / sum(parts) for name, part in zip(CLASSES, parts, strict=True)}


_WAS_GOING_TO = re.compile(
    r" (?:was|were) (?:going|about|planning|hoping|meaning) to (?!come|join|be there|make it|attend)"
)
"""What nearly came to pass answers nothing ("I was going to bring flan, then I remembered I can't cook")."""


def guessed(message: Message, context: ReplyContext) -> list[Intent]:
    """The writer's answer, to be asked about, or nothing. For what was written to the bot and no rule understood."""
    if not message.sentences or message.quoted or sum(len(s.tokens) for s in message.sentences) > MOST_WORDS:
        return []
    if _WAS_GOING_TO.search(f" {message.plain} "):
        return []
    likely = odds(message, context.asked)
    best = max(CLASSES, key=lambda name: likely[name])
    if best == "none" or likely[best] < LIKELY:
        return []
    return [SetAnswer(context.writer, Answer(best), confidence=0.6)]
