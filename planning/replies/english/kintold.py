"""One of the family is told of and comes, in one breath: "my sister's pregnant and coming", "my wife comes too, no
sesame for her". What is told of them and their coming are put side by side, as two sentences."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.replies.english.foods import ALLERGEN
from planning.replies.english.lexicon import any_of
from planning.replies.english.nouns import known_thing
from planning.replies.text import Message, Sentence, Token

_KIN = rf"(?:my|our|the) (?:[a-z]+ )??(?:{any_of('kin')}|{any_of('kins')}|{any_of('guestkin')})"
_COMES = r"(?:(?:is|are|will be|will|would (?:love|like) to(?: be)?|wants? to) )?(?:also |now |definitely )?(?:comes?|coming|come along|joins?|joining|tagging along|in|attending|attend)"
_STAYS = r"(?:(?:is|are|will) )?(?:not (?:be )?(?:coming|joining|attending|make it)|staying (?:at )?home)|can not (?:come|make it|join)|will not (?:come|make it|join)"
_STAY = re.compile(r"\bnot\b|\bstaying\b")
_TOLD_AND_COMES = re.compile(
    rf"^ (?:(?:so|and|also|yes|oh|fyi|btw|,) )*(?P<kin>{_KIN}) (?P<told>(?:is|are|has|have|can not|does not|do not|will not|avoids?|eats?|carries) (?!not |(?:also |now )*(?:com|join|attend))[^,]{{1,60}}?)(?: ,)? (?:and|but|so|&|,) "
    rf"(?:(?:he|she|they) )?(?:is also |are also )?(?P<comes>{_COMES}|{_STAYS})(?P<rest>(?: (?:along|too|as well|with (?:me|us)|me|us|after all|on (?:the )?[a-z]+|then))*)(?= $| ,| \.| and )"
)
_NONE_FOR = re.compile(
    rf"(?: ,| -| but| and| so) (?:(?:and|but|so|just|please|,) )*(?:no|nothing with|nothing containing|without|keep off|avoid) (?:any )?(?P<list>(?:{ALLERGEN})(?:(?: ,| and| or| &| ,? nor(?: any)?) (?:no )?(?:{ALLERGEN}))*) (?:please )?for (?P<who>her|him|them)(?: please)?(?= $| ,| \.| and )"
)
_NONE_TOO = re.compile(
    rf"(?: ,| -| but| and| so| \() (?:(?:and|but|so|just|please|,|also|\() )*(?:no|nothing with|nothing containing|without|avoid|can not have|can not eat|not able to eat|hold the) (?:any )?(?P<list>(?:{ALLERGEN})(?:(?: ,| and| or| &| ,? nor(?: any)?) (?:no )?(?:{ALLERGEN}))*)(?: (?:please|pls|though|if possible|ok|food|in anything|here|\)|for (?:me|us)(?! all)))* $"
)
_COMING = re.compile(
    r" (?:(?:i|we) (?:am|are|will be) (?:in|there|coming|on)|(?:me|us) in|coming|(?:i|we) (?:can|will) (?:come|be there)|of us|party of|will be there|(?:2|two|both) adults|see you there)(?= )|^ (?:yes|yep|yeah|yup|sure|in)(?= )"
)
_BRINGS = re.compile(
    r" (?:bring|bringing|make|making|bake|baking|cook|cooking|doing|got|have|for [0-9]+|not (?:coming|come|make)|if|unless|last|yesterday|week|left) "
)
_KIN_BEFORE = re.compile(rf" (?:{_KIN}|(?:{any_of('kin')})) ")
_WHO = {"her": "she", "him": "he", "them": "they"}


LONGEST = 70
"""A sentence of more words is a story (common practice, no source); the time for one grows with the square of them."""


def parted(message: Message) -> Message:
    """The message with each such sentence in two; every other one as it is."""
    parts = [part for sentence in message.sentences for part in _parts(sentence)]
    return replace(message, sentences=tuple(parts))


def _parts(sentence: Sentence) -> list[Sentence]:
    if sentence.question or len(sentence.tokens) > LONGEST:
        return [sentence]
    if (match := _TOLD_AND_COMES.match(sentence.text)) is not None:
        first, last = sentence.token_range(match, "kin")
        kin = sentence.tokens[first:last]
        told = sentence.tokens[slice(*sentence.token_range(match, "told"))]
        begin, _ = sentence.token_range(match, "comes")
        comes = sentence.tokens[begin:]
        if comes[0].plain in ("not", "staying"):
            comes = [replace(told[0], plain="is"), *comes]
        coming = Sentence([*kin, *comes], False)
        if _STAY.search(match["comes"]) is not None:
            return [coming]  # what those who stay away can't eat is nothing to cook by
        return [coming, Sentence([*kin, *told], False)]
    if (match := _NONE_TOO.search(sentence.text)) is not None and _only_coming(sentence, match):
        return _said_alone(sentence, match, "i")
    match = _NONE_FOR.search(sentence.text)
    if match is None or _KIN_BEFORE.search(sentence.text[: match.start() + 1]) is None:
        return [sentence]
    return _said_alone(sentence, match, _WHO[match["who"]])


def _only_coming(sentence: Sentence, match: re.Match[str]) -> bool:
    """Whether what stands before "no peanuts please" tells who comes, and of no dish it may belong to."""
    before = sentence.text[: match.start() + 1]
    if _COMING.search(before) is None or _BRINGS.search(before) is not None:
        return False
    return not any(len(word) > 3 and known_thing(word)[1] >= 0.9 for word in before.split())


def _said_alone(sentence: Sentence, match: re.Match[str], who: str) -> list[Sentence]:
    """The sentence without "no sesame for her", and that as one of its own: "she can not have sesame"."""
    first, last = sentence.token_range(match)
    listed = sentence.tokens[slice(*sentence.token_range(match, "list"))]
    where = listed[0]
    said = [Token(word, where.raw, where.start, where.start) for word in (who, "can", "not", "have")]
    rest = [*sentence.tokens[:first], *sentence.tokens[last:]]
    return [Sentence(rest, False), Sentence([*said, *listed], False)]
