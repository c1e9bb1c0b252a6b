"""Answers in the open chatter of the group, where nobody wrote to the bot: only what can hardly mean anything else."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.english.doubt import unread
from planning.replies.intents import (
    AddPerson,
    AddPromise,
    Ask,
    Intent,
    ReplyContext,
    SetAnswer,
    SetNeeds,
    SetParty,
    spans_of,
)
from planning.replies.text import Message, Sentence

SUPPER = re.compile(
    r"\b(?:potluck|supper|harvest|dinner|feast|party|get-together|gathering|barbecue|bbq|picnic|brunch|lunch"
    r"|on the [0-9]{1,2}(?:st|nd|rd|th)?)\b"
    r"|^(?:\S+ ){1,5}(?:on )?(?:monday|tuesday|wednesday|thursday|friday|saturday|sunday)$"
)
"""In the open chatter an answer or a question is for us only beside such a word."""
TO_DO = re.compile(
    r"\b(?:come|coming|going|be there|round|over|along) to (?!(?:the|your|our|this|it|that|a|an|my|mine|yours|ours|see|eat|join|celebrate|feast|party|dinner|supper|lunch|potluck|everyone|you|meet|enjoy)\b)[a-z]+"
)
"""Coming for some other work ("coming to dig on Saturday")."""

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
_COUNTED_OUT = re.compile(r"^ (?:(?:sorry|sadly|ah|oh|,) )*(?:count|leave|scratch) (?:me|us) out(?: this time| this year| for this one| on this one| for this)?(?= $| ,| \.)")
_FREE_THEN = re.compile(r" (?:that (?:day|date|night|evening|weekend|afternoon|saturday|sunday|friday)|then)(?= )")


def again(message: Message) -> Message:
    """The message with nothing taken out of it yet."""
    return replace(message, sentences=tuple(Sentence(s.tokens, s.question) for s in message.sentences))


_ASKS_THEM = re.compile(
    r" (?:but|and|so) (?:have|had|has|did|do|does|are|is|was|were|can|could|would|will|what|how|why|where|when|who) (?:are |is |do |did )?(?:you|they|he|she|everyone|everybody|anyone|anybody) "
)
"""A question without its mark ("yes but have you seen the price")."""


def asks_them(message: Message) -> bool:
    """Whether others are asked something in a sentence that begins as an answer, with its mark or without."""
    return _ASKS_THEM.search(f" {message.plain} ") is not None


def worth_a_look(message: Message) -> bool:
    """Whether it is short enough and asks nothing."""
    words = sum(len(s.tokens) for s in message.sentences)
    asks = any(s.question for s in message.sentences) or asks_them(message)
    return 0 < words <= _LONGEST and not message.quoted and not asks


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
    if given.answer is Answer.NO and context.near_board and _COUNTED_OUT.search(text) and given.answer is not context.answer:
        return [replace(given, confidence=0.92)]
    if given.answer is context.answer or reason.search(text) is None or len(message.plain.split()) > 14:
        return []
    return [replace(given, confidence=0.92)]


def _covered(message: Message, found: Sequence[Intent]) -> bool:
    """Whether no word is left over that says something else."""
    return all(
        token.plain in _FILLER or any(a <= token.start < b for i in found for a, b in spans_of(i))
        for sentence in message.sentences for token in sentence.tokens
    )  # fmt: skip


_ASKED = frozenset(("missing", "when", "where", "what-should-i-bring", "can-eat"))
_FOR_US = re.compile(r" (?:needed|missing|short|bring|brought|covered|there|here|come|eat|it|we|supper|dinner|party) ")
"""A question right below the board is for us with one of these words."""
_ELSEWHERE = re.compile(
    r" (?:tonight|today|tomorrow|yesterday|this (?:morning|afternoon|evening)|now|home|work|office|school|shop|store|minute"
    r"|sec|bit|way|soon|phone|later|early|parking|parked|make that|(?:mon|tues|wednes|thurs)day|at [0-9:]+|by (?:[0-9:]+|ten|noon)|in [0-9]+) "
)
"""Said of another day or place, or of right now."""
LONE = frozenset(("yes", "no", "sure", "ok", "in", "maybe", "coming", "out", "nope", "yep", "yeah", "same", "perhaps"))
"""Words that may answer anybody's question."""


def composed(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """What of `found`, read as if written to the bot, is plainly an answer to the board though it hangs below nothing:
    either two of who comes, what they can't eat and what they bring at once ("2 of us, slaw for 12"), or, right below
    the board and from somebody who has not answered, one of them. Every word of it must have been read, and nothing
    in it may be in doubt or of another day."""
    if not found or message.quoted or _ELSEWHERE.search(f" {message.plain} ") is not None:
        return []
    if any(isinstance(i, Ask) for i in found):
        return _asking(message, found, context)
    if any(s.question for s in message.sentences) or not all(_own(i, context) for i in found):
        return []
    if any(_left(s, found, context) for s in message.sentences):
        return []
    given = next((i for i in found if isinstance(i, SetAnswer) and not i.implied), None)
    party = next((i for i in found if isinstance(i, SetParty)), None)
    brings = [i for i in found if isinstance(i, AddPromise)]
    needs = [i for i in found if isinstance(i, SetNeeds)]
    kinds = sum((given is not None, party is not None, bool(needs), bool(brings)))
    says_more = any(i.servings or i.quantity for i in brings) or bool(needs) or party is not None
    if party is not None and party.relative and context.answer is not Answer.YES:
        return []
    if kinds >= 2 and says_more and (party is not None or given is not None):
        return _sure_of(found, context)
    if not context.near_board or context.answer is not Answer.NONE or needs or brings:
        return []
    words = [t.plain for s in message.sentences for t in s.tokens if t.plain[0].isalnum()]
    if len(words) < 2 or (len(words) < 3 and set(words) & LONE and party is None):
        return []
    return _sure_of(found, context)


def listed(message: Message, found: Sequence[Intent], context: ReplyContext) -> bool:
    """A list with numbers right below the board, of known dishes and nothing else ("1. guacamole 2. rolls")."""
    dishes = [i for i in found if isinstance(i, AddPromise)]
    if not (message.numbered and context.near_board and len(dishes) > 1 and all(_own(i, context) for i in found)):
        return False
    return not any(s.question or _left(s, found, context) for s in message.sentences)


def _own(intent: Intent, context: ReplyContext) -> bool:
    """Whether it is the writer's own, sure, and no more than an answer, a party, a need or a dish."""
    if not isinstance(intent, (SetAnswer, SetParty, SetNeeds, AddPromise)) or intent.confidence < _SURE:
        return False
    if isinstance(intent, SetNeeds):
        return intent.who == context.writer and not intent.cleared
    if isinstance(intent, AddPromise):
        return bool(intent.category) and not intent.conditional and intent.by is None
    return intent.who == context.writer


def _left(sentence: Sentence, found: Sequence[Intent], context: ReplyContext) -> bool:
    left = unread(sentence, found, context)
    return bool(left.content or left.numbers or left.dishes or left.turns)


def _sure_of(found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    yes = SetAnswer(context.writer, Answer.YES, confidence=0.92)
    told = [replace(i, implied=False) if isinstance(i, SetAnswer) else i for i in found]
    if not any(isinstance(i, SetAnswer) for i in told):
        told = [yes, *told]
    return [replace(i, confidence=max(i.confidence, 0.92)) for i in told]


def _asking(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """A question of the table right below the board, nothing else in it."""
    asked = [i for i in found if isinstance(i, Ask) and i.topic in _ASKED]
    text = f" {message.plain} "
    if not context.near_board or len(asked) < len(found) or len(message.sentences) > 1 or not _FOR_US.search(text):
        return []
    if any(_left(s, found, context) for s in message.sentences):
        return []
    return [replace(i, confidence=max(i.confidence, 0.92)) for i in asked]
