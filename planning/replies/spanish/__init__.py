"""Spanish: the words in `data/words_es.csv` and `data/dishes_es.csv`, the rules here, put together in `read`."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from planning.potluck import Answer
from planning.replies.hosted import read_hosted
from planning.replies.intents import AddPerson, Intent, ReplyContext, SetAnswer, SetNeeds, Undo
from planning.replies.spanish import answers, needs, offers, people, questions, traps
from planning.replies.spanish.lexicon import PLAIN, words
from planning.replies.text import Message, Sentence, cut

__all__ = ["message_of", "people", "read"]

MOST_WORDS = 70
_UNDO = re.compile(
    r"^ (?:no ,? )?(?:me equivoque|deshaz|deshacer|borra eso|eso no|olvidalo|olviden lo que dije)(?= |$)"
)
_OTHER = re.compile(
    r"^ (?P<name>[a-zñ]+(?: [a-zñ]+)?) (?:(?P<no>no (?:puede|viene|va|podra|llega))|(?P<yes>si (?:viene|va|puede)|viene|va))(?= |$)"
)


@dataclass(frozen=True)
class SpanishMessage(Message):
    """`original` is the text with its accents: places in it are those of the words."""

    original: str = ""


@cache
def _expand() -> dict[str, str]:
    return words("expand")


@cache
def _neutral() -> frozenset[str]:
    return frozenset(words("neutral"))


def message_of(text: str) -> SpanishMessage:
    """The message in plain words: no accents, short forms written out, numbers as digits."""
    made = cut(text.translate(PLAIN), _expand(), _neutral())
    for sentence in made.sentences:
        for i, token in enumerate(sentence.tokens):
            sentence.tokens[i] = type(token)(token.plain, text[token.start : token.end], token.start, token.end)
    return SpanishMessage(made.sentences, made.plain, made.quoted, made.symbols, text)


def read(message: Message, context: ReplyContext) -> tuple[list[Intent], list[str]]:
    """All that the message says for us, and the reasons for what was passed over."""
    found: list[Intent] = []
    passed: list[str] = []
    if traps.joking(message):
        return [], ["joke"]
    if not message.sentences and context.addressed and any(s in "👍✅🙋🙌💯" for s in message.symbols):
        return [SetAnswer(context.writer, Answer.YES, confidence=0.6)], []
    for sentence in _unhosted(message, context, found):
        if len(sentence.tokens) > MOST_WORDS:
            passed.append("long")
            continue
        if (undo := _UNDO.search(sentence.text)) is not None:
            start, end = sentence.span_of(undo)
            found.append(Undo(start=start, end=end, confidence=0.75))
            continue
        asked = questions.read_question(sentence, context)
        if asked:
            found += asked
            continue
        trap = traps.blocked(sentence, context)
        if trap == "hypothetical" and (turn := re.search(r" pero (?=no )", sentence.text)) is not None:
            # "I'd love to come but I can't": what follows is what holds.
            first = sentence.token_range(turn)[1]
            found += answers.read_answer(Sentence(sentence.tokens[first:], False), context)
            continue
        if trap is not None:
            passed.append(trap)
            continue
        found += questions.read_late(sentence, context)
        found += needs.read_needs(sentence, context)
        other = _of_another(sentence.text, context)
        if other is not None:
            found.append(other)
            continue
        found += answers.read_answer(sentence, context)
        added = people.read_people(sentence, context)
        found += added
        if not any(isinstance(i, AddPerson) for i in added):
            found += offers.read_promises(sentence, context)
    if not context.addressed:
        found = [i for i in found if not isinstance(i, SetAnswer) or i.confidence >= 0.92]
        # In the open, "I can't" and "perhaps" are said of many things: only what is plainly for the table counts.
        found = [
            i
            for i in found
            if not isinstance(i, SetAnswer) or any(not isinstance(o, (SetAnswer, SetNeeds)) for o in found)
        ]
    return found, passed


def _unhosted(message: Message, context: ReplyContext, found: list[Intent]) -> Iterator[Sentence]:
    """The sentences that are not a host's about the potluck itself; what those say is added to `found`."""
    for sentence in message.sentences:
        if len(sentence.tokens) > MOST_WORDS:
            yield sentence
            continue
        said, rest = read_hosted(sentence, context, "es", float, "[0-9]{1,4}")
        found += said
        yield from rest


def _of_another(text: str, context: ReplyContext) -> SetAnswer | None:
    """Somebody else's answer: always asked about."""
    match = _OTHER.search(text)
    if match is None:
        return None
    for guest, name in context.guests:
        if guest != context.writer and match["name"].startswith(name.casefold().split()[0].translate(PLAIN)):
            answer = Answer.NO if match["no"] else Answer.YES
            return SetAnswer(guest, answer, confidence=0.7)
    return None
