""" "Pat says she'll bring rolls for 12": what a guest we know lets be told, said over in the guest's own name."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.english.lexicon import any_of
from planning.replies.intents import ReplyContext
from planning.replies.text import Sentence, Token

_TELLS = re.compile(
    r"^ (?:(?:and|also|so|ok|yes|by the way|btw|,) )*(?P<name>[^\W\d_]+(?: [^\W\d_]+)?) (?:just |also |has )?"
    r"(?:says|said|tells me|told me|texted(?: me)?|messaged(?: me)?|replied|wrote|writes|lets you know|let me know|confirmed|confirms|wants you to know|asked me to (?:say|tell you(?: all)?|pass on|let you know|mention|pass it on)|asks me to (?:say|tell you|pass on|let you know)|sends word|called to say|rang to say)"
    r"(?: (?:that|to say|me|:|,))*(?= )"
)
_FOR_US_ALL = re.compile(
    rf"^ (?:(?:ok|so|and|yes|well|,) )*(?:(?:my|the|our) )?(?:{any_of('kin')}|{any_of('guestkin')}|boss|doctor) (?:just |also |has )?(?:says|said|tells me|told me|reckons|thinks|confirms|confirmed|decided|agreed|promised|lets me know)(?: (?:that|to say|:|,))*(?= (?:(?:yes|no|ok) ,? ?)?(?:we (?:are|will|can|could|have|would love|would like|both|all)|all of us) )"
)
_ANSWERS = {"yes": ("is", "coming"), "no": ("can", "not", "come"), "maybe": ("might", "come")}
_PRONOUNS = ("he", "she", "they")


def spoken_for(sentence: Sentence) -> Sentence:
    """ "Mum says we're coming, 5 of us": one of the writer's own speaks for all of them; the sentence without its lead."""
    match = _FOR_US_ALL.match(sentence.text)
    if match is None or sentence.question:
        return sentence
    return Sentence(sentence.tokens[sentence.token_range(match)[1] :], False)


def told_of(sentence: Sentence, context: ReplyContext) -> list[Sentence]:
    """The clauses of what was told, each with the guest's name in front; none when nobody known tells it."""
    match = _TELLS.match(sentence.text)
    if match is None or sentence.question:
        return []
    said = match["name"].split()
    names = {n.lower().split()[0] for g, n in context.guests if g != context.writer and n}
    if said[0] not in names:
        return []
    last = sentence.token_range(match)[1]
    at = next(i for i, t in enumerate(sentence.tokens) if t.plain == said[0])
    name = sentence.tokens[at]
    clauses: list[list[Token]] = [[]]
    for i, token in enumerate(sentence.tokens[last:], start=last):
        after = sentence.tokens[i + 1].plain if i + 1 < len(sentence.tokens) else ""
        if token.plain in (",", "and", "but") and (after in _PRONOUNS or after in _ANSWERS):
            clauses.append([])
        elif token.plain in _ANSWERS and not clauses[-1]:
            clauses[-1] += [Token(word, token.raw, token.start, token.end) for word in _ANSWERS[token.plain]]
        elif token.plain not in _PRONOUNS or clauses[-1]:
            clauses[-1].append(token)
    while clauses and clauses[-1] and clauses[-1][-1].plain == ",":
        clauses[-1].pop()
    return [Sentence([name, *clause], False) for clause in clauses if clause]
