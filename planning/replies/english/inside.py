"""A dish somewhere in a sentence whose verb nobody here knows: "I shall produce a lemon tart", "mine's a tray of buns".

Asked about, never noted at once: all there is to go by is a known dish, the writer, and nothing that speaks against it.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.replies.english.lexicon import words
from planning.replies.english.nouns import known_thing
from planning.replies.english.offers import added
from planning.replies.english.things import Thing, things_at
from planning.replies.intents import Intent, ReplyContext
from planning.replies.text import Sentence

SURE = 0.6
LONGEST = 20
"""A sentence of more words tells a story (common practice, no source)."""
_MINE = re.compile(
    r" (?:i|we|me|us|my|our|mine|ours|let us) |^ (?:might|may|will|could|can|shall|going|planning|thinking|happy|ready|making|doing|got|have|probably|maybe|definitely) "
)
_AGAINST = re.compile(
    r" (?:i|we) [a-z]{3,}ed | (?:die for|dying for|crave|craving|murder|dream of|not|no|never|nobody|none|without|hardly|anyone|anybody|someone|somebody|everyone|everybody|you|your|he|she|they|his|her|their|who|which|what|why|how|whose|when|was|were|had|did|would rather|would love|wish|if only|too (?:much|many)|another of|enough of|kill for|ran out of|run out of|out of|already|still on|have (?:a|an|another)|water the|to water|eat|eating|ate|have the|having the|try|trying|taste|tasted|smell|smells|want|wants|hope|hoping|looking forward|miss|missing|love|loved|like|liked|hate|prefer|remember|forgot|lost|sell|selling|sold|won|ordered|because|than|between|deciding|undecided|recipe|best|better|worst|favou?rite|like me|allergic|allergy|intolerant|vegan|vegetarian|coming) "
)


_ASKS = re.compile(r"^ (?:is|are|was|were|do|does|did|has|have|why|should|would) ")
"""How a question begins that was left without its mark."""


def read_inside(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The dishes the sentence names, if it is about its writer or says how much of them there is."""
    tokens = sentence.tokens
    if len(tokens) > LONGEST or _ASKS.match(sentence.text) or _AGAINST.search(sentence.text):
        return []
    for i in range(len(tokens)):
        if not sentence.free(i) or not _may_begin(sentence, i):
            continue
        if {t.plain for t in tokens[max(0, i - 3) : i]} & {"if", "unless", "where"}:
            continue
        things = [t for t in things_at(sentence, i, len(tokens), bare=True) if not t.other]
        if not things:
            continue
        if not all(_exact(t) for t in things):
            if sentence.tokens[i].plain in ("a", "an", "some", "my", "our", "the"):
                return []  # "a walnut loaf" is no loaf
            continue
        if not (_MINE.search(sentence.text) or all(t.servings or t.quantity for t in things)):
            return []
        strange = {t.plain for t in tokens[: things[0].first] if t.plain[0].isalpha()} - words("filler").keys()
        if strange & words("tells").keys() or len(strange) > 4:
            return []
        return [
            replace(f, confidence=min(f.confidence, SURE)) for f in added(sentence, context, things, i, "", "", SURE)
        ]
    return []


def _exact(thing: Thing) -> bool:
    small = thing.category == "supplies" and not (thing.servings or thing.quantity)  # "we should get a tent"
    return thing.known >= 0.95 and not thing.vague and not small


def _may_begin(sentence: Sentence, i: int) -> bool:
    """Whether the name of a dish may begin here: behind an article or an amount, or at the word of a known dish."""
    plain = sentence.tokens[i].plain
    if plain in ("a", "an", "some", "my", "our", "the") or plain[0].isdecimal() or i == 0:
        return True
    for n in (3, 2, 1):
        name = " ".join(t.plain for t in sentence.tokens[i : i + n])
        if len(sentence.tokens) >= i + n and known_thing(name)[1] >= 0.95:
            return True
    return False
