"""A reason not to come, told with regret: "I'm afraid we're away that weekend" leaves no doubt."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.intents import AddPerson, AddPromise, Intent, ReplyContext, SetAnswer, SetParty
from planning.replies.text import Message

SURE, DOUBTED = 0.86, 0.6
_REGRETS = re.compile(
    r"\b(?:sorry|afraid|sadly|unfortunately|alas|regrettably|gutted|bummed|(?:a |what a |such a )?(?:shame|pity|bummer)|apologies|forgive (?:me|us)|(?:will|shall|would) (?:miss|have loved)"
    r"|(?:have|enjoy) (?:fun|a (?:lovely|great|good|nice|wonderful|brilliant|fab) (?:time|day|evening|one|meal|party|supper)|yourselves|it|the (?:day|evening|party|food|supper|meal))|(?:next|another) time|maybe next|next year|save me (?:a|some) (?:plate|leftovers)|eat (?:some|one|a plate) for me|without (?:me|us)|raincheck|rain check)\b"
)


def told(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """The intents, a "no" that only a reason spoke for made sure by a word of regret anywhere in the message."""
    mine = [i for i in found if isinstance(i, SetAnswer) and i.who == context.writer]
    if len(mine) != 1 or mine[0].answer is not Answer.NO or mine[0].conditional or mine[0].confidence >= SURE:
        return list(found)
    if mine[0].confidence < DOUBTED or _REGRETS.search(message.plain) is None:
        return list(found)
    if any(isinstance(i, (SetParty, AddPromise, AddPerson)) for i in found) or any(s.question for s in message.sentences):
        return list(found)
    if re.search(r"\b(?:(?<!sorry )but|if|unless|might|maybe (?!next)|late|until|till|after)\b", message.plain):
        return list(found)
    return [replace(i, confidence=SURE) if i is mine[0] else i for i in found]
