"""Answers in the open chatter of the group, where nobody wrote to the bot: only what can hardly mean anything else."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.intents import AddPerson, Intent, ReplyContext, SetAnswer, SetNeeds, SetParty
from planning.replies.text import Message, Sentence

SUPPER = re.compile(
    r"\b(?:potluck|supper|harvest|dinner|feast|party|get-together|gathering|barbecue|bbq|picnic|brunch|lunch"
    r"|on the [0-9]{1,2}(?:st|nd|rd|th)?)\b"
    r"|^(?:\S+ ){1,5}(?:on )?(?:monday|tuesday|wednesday|thursday|friday|saturday|sunday)$"
)
"""In the open chatter an answer or a question is for us only beside such a word."""

_LONGEST = 30
"""Words; what says more is talk."""
_SURE, _PLAIN = 0.85, 0.88
_FILLER = frozenset(
    ("i", "we", "us", "me", "am", "are", "is", "will", "be", "come", "comes", "coming", "there", "in", "too", "as", "well", "also",
     "and", "plus", "with", "for", "all", "of", "my", "our", "her", "his", "the", "so", "just", "only", "now", "then", "yes", "no", "maybe", "sorry", "sadly",
     "can", "not", "make", "it", "that", "this", "time", "thanks", "definitely", "count", "both", "after", "actually", "wants", "want", "would",
     "to", "love", "like", "join", "joining", "bring", "bringing", "along", "ok", "okay", "oh", "ah", "but", "or", "from", "please", "total", "altogether",
     "congrats", "congratulations", "sounds", "fun", "good", "fantastic", "amazing", "brilliant", "wonderful", "perfect", "nice", "super",
     "exciting", "excited", "wait", "looking", "forward", "see", "you", "everyone", "folks", "guys", "hooray", "hurrah", "wow", "ooh", "a", "an",
     ",", "-", "–", "—", "(", ")", "+", "&", ":", "saturday", "sunday", "friday")
)  # fmt: skip
_AVAILABLE = re.compile(
    r" (?:(?:my|his|her|our|the) )?(?:shifts?|rota|sitter|babysitter|baby sitter|childcare|work|boss|train|trains|flights?|lift|ride|car|exams?|treatment|husband|wife|partner|knee|back|hip|doctor)(?= $| ,| is | are | lets? | can | works? | plans? |')"
)
"""Reasons one gives for not knowing whether one can be at something."""
_FREE_THEN = re.compile(r" (?:that (?:day|date|night|evening|weekend|afternoon|saturday|sunday|friday)|then)(?= )")


def again(message: Message) -> Message:
    """The message with nothing taken out of it yet."""
    return replace(message, sentences=tuple(Sentence(s.tokens, s.question) for s in message.sentences))


def worth_a_look(message: Message) -> bool:
    """Whether it is short enough and asks nothing."""
    words = sum(len(s.tokens) for s in message.sentences)
    return 0 < words <= _LONGEST and not message.quoted and not any(s.question for s in message.sentences)


def answered(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """What of `found`, read as if it were written to the bot, is plain in the open chatter as well: who comes, said
    with how many; a new number from somebody who has answered; a maybe or a no for a reason of one's own. Every word
    must be part of it."""
    mine = [i for i in found if isinstance(i, (SetAnswer, SetParty, AddPerson))]
    if not mine or len(mine) + sum(isinstance(i, SetNeeds) for i in found) < len(found):
        return []
    given = next((i for i in mine if isinstance(i, SetAnswer)), None)
    if any(i.confidence < _SURE for i in mine) or (given is not None and given.who != context.writer):
        return []
    counted = any(not isinstance(i, SetAnswer) for i in mine)
    if given is None or given.implied:
        if context.answer is not Answer.YES or not counted:
            return []
        given = SetAnswer(context.writer, Answer.YES)
    elif given.answer is not Answer.YES:
        return _reasoned(message, given, context)
    if not counted or not _covered(message, mine):
        return []
    return [replace(i, confidence=0.92) for i in (given, *(i for i in mine if not isinstance(i, SetAnswer)))]


def beside_supper(found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """The writer's own answer and party of `found`, read as if written to the bot, when the supper is named beside."""
    given = next((i for i in found if isinstance(i, SetAnswer) and i.who == context.writer and not i.implied), None)
    mine = [i for i in found if isinstance(i, SetParty)]
    if given is None or given.confidence < _PLAIN or any(i.confidence < _SURE for i in mine):
        return []
    return [replace(i, confidence=0.92) for i in (given, *mine)]


def _reasoned(message: Message, given: SetAnswer, context: ReplyContext) -> list[Intent]:
    """A maybe, or a no for that day, from somebody who has not answered so."""
    text = f" {message.plain} "
    reason = _FREE_THEN if given.answer is Answer.NO else _AVAILABLE
    if given.answer is context.answer or reason.search(text) is None or len(message.plain.split()) > 14:
        return []
    return [replace(given, confidence=0.92)]


def _covered(message: Message, found: Sequence[Intent]) -> bool:
    """Whether no word is left over that says something else."""
    return all(
        token.plain in _FILLER or any(i.start <= token.start < i.end for i in found)
        for sentence in message.sentences for token in sentence.tokens
    )  # fmt: skip
