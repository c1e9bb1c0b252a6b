"""Phrases that turn or polish what is said, in the plain words the rules read: "no way I can come" is "I can not come",
"would you put me down" is "put me down", and a name spoken to somebody says nothing."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.replies.english.lexicon import NUMBER
from planning.replies.text import Message, Sentence, Token

LONGEST = 70
"""A sentence of more words is a story (common practice, no source)."""
_NO_WAY = re.compile(
    r" (?:there is |absolutely |sorry |so )*(?:no way|no chance|zero chance|not a chance|fat chance|no hope|no shot|zero way|no possibility)(?: in hell| at all| on earth)?(?: that)? (?P<who>i|we) (?P<aux>can|will|could|would|am|are|be|get|make)(?: (?:be )?able to)? "
)
_CALLED = re.compile(
    r"(?:^|(?<= ,)) (?:(?:my |oh )*(?:dears?|dearest|darlings?|love|loves)(?<! love)|dearie|sweetie|sweeties|sweetheart|sweethearts|mate|bro|bruh|bruv|dude|dudes|fam|y'all|pal|buddy|chef|boss|captain|peeps|hon|luv|kind (?:host|people|friends)|good people)(?= ,| $)"
    r"|^ (?:guys|folks|lads|ladies|friends|everyone|everybody|team|gang|neighbou?rs?|all|people|mates)(?= ,)"
)
_END_CALLED = re.compile(
    r" (?:(?:,|-) )?(?:dears?|dearest|dearie|darlings?|sweetie|mate|bro|bruh|bruv|dude|fam|y'all|buddy|peeps|luv|my (?:dears?|loves?)) $"
    r"| (?:,|-) (?:guys|folks|lads|ladies|friends|everyone|everybody|team|gang|neighbou?rs?|people|mates) $"
)
_OWED = re.compile(r" (?:must|should|can|will) to (?=[a-z]+)")
_DO_CAN = re.compile(r" (?:do|does) not can ")


def straightened(message: Message) -> Message:
    """The message with such phrases put plainly; the same message where there are none."""
    made = [_straight(s) for s in message.sentences]
    kept = [s for s in made if s.tokens]
    if not kept or (len(kept) == len(made) and all(a is b for a, b in zip(made, message.sentences, strict=True))):
        return message
    return replace(message, sentences=tuple(kept), plain=" . ".join(s.text.strip() for s in kept))


def _straight(sentence: Sentence) -> Sentence:
    if len(sentence.tokens) > LONGEST:
        return sentence
    tokens = _uncalled(sentence)
    for rule in (_no_way, _without_to, _recounted, _labelled):
        tokens = rule(tokens)
    return sentence if tokens is sentence.tokens else Sentence(tokens, sentence.question)


def _uncalled(sentence: Sentence) -> list[Token]:
    """Without a name for those spoken to, between commas or at the end."""
    tokens = sentence.tokens
    spans = [sentence.token_range(m) for m in _CALLED.finditer(sentence.text)]
    if (end := _END_CALLED.search(sentence.text)) is not None and end.start() > 0:
        spans.append(sentence.token_range(end))
    spans = [s for s in spans if s[1] - s[0] < len(tokens)]
    if not spans:
        return tokens
    gone = {k for first, last in spans for k in range(first, last)}
    kept: list[Token] = []
    for k, token in enumerate(tokens):
        if k in gone or (token.plain == "," and (not kept or kept[-1].plain == ",")):
            continue
        kept.append(token)
    while kept and kept[-1].plain == ",":
        kept.pop()
    return kept


def _no_way(tokens: list[Token]) -> list[Token]:
    text = " " + " ".join(t.plain for t in tokens) + " "
    match = _NO_WAY.search(text)
    if match is None:
        return tokens
    first = text.count(" ", 1, match.start() + 1)
    last = first + len(match[0].split())
    at = tokens[first]
    words = ["i" if match["who"] == "i" else "we"]
    words += ["can", "not"] if match["aux"] in ("can", "could", "get", "make", "be") else [match["aux"], "not"]
    if match["aux"] in ("make", "get"):
        words.append(match["aux"])
    turned = [Token(w, at.raw, at.start, tokens[last - 1].end) for w in words]
    return [*tokens[:first], *turned, *tokens[last:]]


def _without_to(tokens: list[Token]) -> list[Token]:
    """ "I must to go", "she doesn't can eat": as one says it in one's first language."""
    text = " " + " ".join(t.plain for t in tokens) + " "
    if (owed := _OWED.search(text)) is not None:
        at = text.count(" ", 1, owed.start() + 1) + 1
        return [*tokens[:at], *tokens[at + 1 :]]
    if (able := _DO_CAN.search(text)) is not None:
        at = text.count(" ", 1, able.start() + 1)
        do, no, can = tokens[at : at + 3]
        return [*tokens[:at], replace(do, plain="can"), no, *tokens[at + 3 :]] if can else tokens
    return tokens


_RECOUNTED = re.compile(
    rf" (?P<first>{NUMBER}) (?:[,-] )?(?:(?:no|wait|sorry|actually|oops|nope|rather|scratch that|i mean|make that|hang on|hold on|oh)(?: ,)? )+(?P<then>{NUMBER})(?= )"
)
_LABEL = re.compile(r"(?:^|(?<= ,)) (?:food|dish(?:es)?|contribution|bringing|we bring|i bring) :(?= )")


def _recounted(tokens: list[Token]) -> list[Token]:
    """ "5, no wait, 6" is 6."""
    sentence = Sentence(tokens, False)
    match = _RECOUNTED.search(sentence.text)
    if match is None:
        return tokens
    return [*tokens[: sentence.token_range(match, "first")[0]], *tokens[sentence.token_range(match, "then")[0] :]]


def _labelled(tokens: list[Token]) -> list[Token]:
    """ "Food: chicken wings" says what is brought."""
    sentence = Sentence(tokens, False)
    match = _LABEL.search(sentence.text)
    if match is None:
        return tokens
    first, last = sentence.token_range(match)
    return [*tokens[:first], replace(tokens[first], plain="bringing"), *tokens[last:]]
