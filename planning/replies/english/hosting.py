"""What the host tells the bot about the potluck itself: another day, another place, how many, what there is to cook with."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.lexicon import NUMBER, number_of
from planning.replies.hosted import OWN_PARTY, read_hosted
from planning.replies.intents import Intent, KitchenSays, ReplyContext, Resize
from planning.replies.text import Sentence, raw_words

_POLITE = r"^ (?:(?:can we|could we|bot|ok|so|right|sorry|actually|folks|all|please|update|change of plan|new plan|change|let us|can you|could you|we will be|it will be|we (?:will|have to|need to|must|are going to|had to|want to|have)|i (?:have to|need to|want to|would like to|am going to|will)|do|it is|we are|now)(?: [,:-])? )*"
_SIZE = (
    (re.compile(rf"{_POLITE}(?:(?:expect|expecting|reckon with|plan for|planning for|count on|size|headcount|guests|people)(?: is| are| :|:)*) (?:about |around |roughly |some |up to )*(?P<n>{NUMBER})(?: (?:people|guests|persons|folks|heads|of us|in all|in total|altogether|total))* $"), 0.9),
    (re.compile(rf"{_POLITE}(?:about|around|roughly|some|probably|maybe|more like|up to|closer to) (?P<n>{NUMBER})(?: (?:people|guests|persons|folks|heads|of us|in all|in total|altogether|total|coming|now))+ $"), 0.7),
    (re.compile(rf"^ (?:now |so |then |ok )*(?:we (?:are|will be)|there (?:are|will be)|it (?:is|will be)|makes? (?:that|it)) (?:about |around |roughly |probably |now |more like |going to be |up to )*(?P<n>{NUMBER})(?: (?:people|guests|persons|folks|heads|of us|in all|in total|altogether|total|now|coming))* $"), 0.7),
    (re.compile(rf"^ (?P<n>{NUMBER}) (?:people|guests|persons|folks|heads)(?: (?:in all|in total|altogether|total|coming|now|instead))* $"), 0.7),
)  # fmt: skip
_ROOM = (
    (re.compile(rf" (?:room|space|seats?|chairs|places?) for (?:only |just |at most |up to |about |around )*(?P<n>{NUMBER})(?: (?:people|guests|persons|of us|only|at most|max|now|in all|in total))*(?= $| ,)"), 0.7),
)  # fmt: skip
_APPLIANCE = r"(?:ovens?|racks?|burners?|hobs?|rings?|stoves?|grills?|barbecues?|bbqs?|slow cookers?|microwaves?|circuits?|outlets?|sockets?|fridges?|freezers?|cooks?|helpers?|pans? (?:per|on a) rack)"
_KITCHEN = re.compile(
    rf"^ (?:(?:we have|we have got|i have|i have got|there is|there are|the kitchen has|my kitchen has|our kitchen has|the kitchen|kitchen|only|just|about|in the kitchen|with|:|,) )*(?P<what>(?:{NUMBER}|an?|no) (?:[a-z-]+ )??{_APPLIANCE}(?:(?: ,)?(?: and| with| ,| \+| each)* (?:{NUMBER}|an?|no) (?:[a-z-]+ )??{_APPLIANCE})*)(?: (?:each|here|there|in the kitchen|at the (?:hut|hall|venue|house)|in all|only|that is all))* $"
)
_WISHED = re.compile(
    r"^ (?:ok |so |and |bot |, )*(?:(?:can|could|will|would|shall) (?:you|we|i)|let us|how about|what about|[a-z ]+ , (?:how|what) about) "
)


def read_hosting(sentence: Sentence, context: ReplyContext) -> tuple[list[Intent], list[Sentence]]:
    """The host's own words about the whole potluck, and what of the sentence is left to be read; nothing from
    anybody else."""
    if not context.host or context.asked is not None or (sentence.question and not _WISHED.match(sentence.text)):
        return [], [sentence]
    if context.addressed and (match := _KITCHEN.match(sentence.text)) is not None:
        start, end = sentence.span(0, len(sentence.tokens))
        said = raw_words(sentence.tokens[slice(*sentence.token_range(match, "what"))]).strip(" ,")
        return [KitchenSays(said, start=start, end=end, confidence=0.9)], []
    found, left = read_hosted(sentence, context, "en", number_of, NUMBER)
    if found and context.addressed:  # "moving inside to the clubhouse, there's one oven and 2 burners"
        for clause in list(left):
            if (kitchen := _KITCHEN.match(clause.text)) is not None:
                start, end = clause.span(0, len(clause.tokens))
                said = raw_words(clause.tokens[slice(*clause.token_range(kitchen, "what"))]).strip(" ,")
                found.append(KitchenSays(said, start=start, end=end, confidence=0.9))
                left.remove(clause)
    if found or not context.addressed:
        return found, left
    for pattern, sure in (*_SIZE, *_ROOM):
        if (match := pattern.match(sentence.text)) is not None:
            n = number_of(match["n"])
            if OWN_PARTY < n <= 1000:
                start, end = sentence.span(0, len(sentence.tokens))
                return [Resize(n, start=start, end=end, confidence=sure)], []
    return [], [sentence]
