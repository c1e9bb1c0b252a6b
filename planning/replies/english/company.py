"""Who brings it together with the writer: "potato salad with Ravi", "Ravi and I will bring lasagna"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from planning.replies.english.nouns import known_thing
from planning.replies.intents import AddPromise, Intent, ReplyContext
from planning.replies.text import Sentence, Token

_VERB = r"(?:(?:will|can|are|would|could|are going to|plan to|would like to) )?(?:also |both )?(?:bring|bringing|make|making|bake|baking|cook|cooking|do|doing|be bringing|be making|contribute|prepare|provide|share|sharing)"


@dataclass(frozen=True)
class Company:
    """`all_of_it`: every dish of the sentence, else the one named before `start`."""

    guest: str
    start: int
    all_of_it: bool


def split(sentence: Sentence, context: ReplyContext) -> tuple[Sentence, Company | None]:
    """The sentence without the other cook's name, and who it is; only guests the group knows."""
    if " with " not in sentence.text and " and " not in sentence.text and " & " not in sentence.text:
        return sentence, None
    for guest, name in context.guests:
        words = name.lower().split()
        if guest == context.writer or not words or len(words[0]) < 2:
            continue
        for shape in dict.fromkeys((" ".join(words), words[0])):
            if f" {shape} " not in sentence.text:
                continue
            safe = re.escape(shape)
            both = re.search(
                rf" (?:{safe} (?:and|&) (?:i|me|myself)|(?:me|i|myself) (?:and|&) {safe})(?= {_VERB} )", sentence.text
            )
            if both is not None:
                first, last = sentence.token_range(both)
                held = sentence.tokens[first:last]
                one = Token("we", " ".join(t.raw for t in held), held[0].start, held[-1].end)
                return Sentence([*sentence.tokens[:first], one, *sentence.tokens[last:]], sentence.question), Company(
                    guest, one.start, True
                )
            match = re.search(
                rf" (?:together |along |jointly |shared? )?with {safe}(?= $| ,| and | for | -| \)| \(| feeds | serves | as )",
                sentence.text,
            )
            if match is None:
                continue
            first, last = sentence.token_range(match)
            if not sentence.tokens[last - 1].raw[:1].isupper() and known_thing(shape)[1] >= 0.5:
                continue  # "pasta with basil" is no cook
            rest = [*sentence.tokens[:first], *sentence.tokens[last:]]
            return Sentence(rest, sentence.question), Company(guest, sentence.tokens[first].start, False)
    return sentence, None


def attach(intents: list[Intent], company: Company) -> list[Intent] | None:
    """The dishes with their second cook; None when there is no dish it could be about."""
    dishes = [
        i for i, intent in enumerate(intents)
        if isinstance(intent, AddPromise) and (company.all_of_it or intent.start < company.start)
    ]  # fmt: skip
    if not dishes:
        return None
    made = list(intents)
    for i in dishes if company.all_of_it else dishes[-1:]:
        promise = made[i]
        assert isinstance(promise, AddPromise)
        sure = max(promise.confidence, 0.85) if promise.category and not promise.conditional else promise.confidence
        made[i] = replace(promise, with_guest=company.guest, confidence=sure)
    return made
