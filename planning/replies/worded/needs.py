"""Diets and allergies, from a table of phrases. None of them is ever taken off by these words: that is asked."""

from __future__ import annotations

import re

from planning.potluck import Need
from planning.replies.intents import Intent, ReplyContext, SetNeeds
from planning.replies.text import Sentence
from planning.replies.worded.words import Words


def read_needs(sentence: Sentence, words: Words, context: ReplyContext) -> list[Intent]:
    """What the writer, or a member of the party, can't eat."""
    text = sentence.text
    if (none := words.find("none", text)) is not None:
        start, end = sentence.span_of(none)
        return [SetNeeds(context.writer, (), True, start=start, end=end, confidence=0.82)]
    found: dict[str, Need] = {}
    spans: list[tuple[int, int]] = []
    feared = words.find("allergic", text)
    if feared is not None:
        severity = "severe allergy" if words.find("severe", text) is not None else words.means("allergic", feared[0])
        rest = text[feared.end() :]
        for match in re.finditer(rf"(?:(?<= )|(?<='))({words.any_of('allergen')})(?= )", rest):
            need = words.means("allergen", match[1])
            found.setdefault(need, Need(need, 1, severity or "allergy"))
        spans.append(sentence.span_of(feared))
    for match in re.finditer(rf"(?<= )({words.any_of('need')})(?= )", text):
        need, _, severity = words.means("need", match[1]).partition("|")
        counted = re.search(r" ([0-9]{1,2}) $", text[: match.start()])
        found.setdefault(need, Need(need, int(counted[1]) if counted else 1, severity or "diet"))
        spans.append(sentence.span_of(match))
    if not found:
        return []
    # "A vegetarian lasagna" is a dish, "I bring" before it shows it; who is meant is asked.
    of_a_dish = feared is None and words.find("bring", text) is not None
    sure = 0.6 if of_a_dish or words.find("not", text) is not None else 0.86
    kin = words.find("kin", text)
    start, end = min(s for s, _ in spans), max(e for _, e in spans)
    member = kin[0] if kin is not None else None
    return [SetNeeds(context.writer, tuple(found.values()), False, member, start=start, end=end, confidence=sure)]
