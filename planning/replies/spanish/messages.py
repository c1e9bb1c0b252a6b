"""A message in plain Spanish words, before anything is understood of it."""

from __future__ import annotations

from dataclasses import dataclass

from planning.replies.spanish import kintold, spelling
from planning.replies.spanish.lexicon import expand, neutral
from planning.replies.spanish.vocatives import spoken_to, without_vocatives
from planning.replies.text import DISMAY, Message, Sentence, Token, cut


@dataclass(frozen=True)
class SpanishMessage(Message):
    """`original` is the text with its accents: places in it are those of the words."""

    original: str = ""


def message_of(text: str) -> SpanishMessage:
    """The message in plain words: no accents, short forms written out, numbers as digits, slips mended."""
    text = DISMAY.sub(lambda m: " " * len(m[0]), text)
    flat, slips = spelling.prepared(text)
    made = cut(flat, expand() | slips if slips else expand(), neutral() - spoken_to(), here=spelling.there_is(flat))
    sentences = []
    for sentence in made.sentences:
        raws = ((t, text[t.start : t.end]) for t in without_vocatives(sentence.tokens))
        tokens = spelling.joined(
            [
                Token(t.plain, _as_meant(t, slips.get(flat[t.start : t.end].lower(), raw)), t.start, t.end)
                for t, raw in raws
            ]
        )
        while tokens and tokens[0].plain in (":", ",", "-"):
            tokens = tokens[1:]
        if tokens:
            sentences += [p for one in _at_signs(tokens, text, sentence.question) for p in kintold.parts(one)]
    plain = " . ".join(s.text.strip() for s in sentences)
    return SpanishMessage(tuple(sentences), plain, made.quoted, made.symbols, text, mended=frozenset(slips))


def _as_meant(token: Token, raw: str) -> str:
    """The word as typed or mended; of two words that ran together the one it is."""
    return token.plain if " " in raw and token.plain in raw.split() else raw


def _at_signs(tokens: list[Token], text: str, question: bool) -> list[Sentence]:
    """ "Obvio, ¿cuándo dije que no?": the sign before a question begins a sentence of its own."""
    for k in range(1, len(tokens)):
        if question and "¿" in text[tokens[k - 1].end : tokens[k].start]:
            before = tokens[:k]
            while before and before[-1].plain in (",", "-", ":"):
                before = before[:-1]
            return [*([Sentence(before, False)] if before else []), Sentence(tokens[k:], True)]
    return [Sentence(tokens, question)]
