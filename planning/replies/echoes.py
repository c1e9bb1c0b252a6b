""" "Same here", "me too", "me neither": what somebody else has just said of themselves holds for the writer, too.

The words stand in `data/words_echo.csv`. What is meant is told in `ReplyContext.replied_text`; without it nobody can
know, so who wrote it to the bot is asked whether they come.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache

from planning.potluck import Answer, Need, Say
from planning.replies.decide import SURE, decide
from planning.replies.intents import AddPromise, Intent, Reading, ReplyContext, SetAnswer, SetNeeds, SetPregnant
from planning.replies.spanish.lexicon import neutral
from planning.word_patterns import restored, said_in

LONGEST = 60
BELOW_THE_BOARD, BELOW_ANOTHER, A_DISH_TOO = 0.9, 0.7, 0.6
"""How sure "me too" is a yes below the question itself and below other words of the bot; that it is a dish as well."""
_ENDS = " .!…:)(~\n"


@cache
def _patterns(language: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    return tuple((row["kind"], pattern) for row, pattern in said_in("words_echo", language))


def echo(text: str, language: str) -> str | None:
    """ "same", "neither" or "plus" where the words say no more than that what stands before them holds for their
    writer, too; None for all other words."""
    if len(text) > 2 * LONGEST:
        return None
    words = "".join(c for c in restored(text).casefold() if c.isalnum() or c in " ,'!-+")
    words = _without_thanks(" ".join(words.split()).strip(_ENDS), language)
    return next((kind for kind, p in _patterns(language) if len(words) <= LONGEST and p.fullmatch(words)), None)


@cache
def _polite(language: str) -> re.Pattern[str] | None:
    """Thanks and greetings at the end, of a language that has a list of them."""
    if language != "es":
        return None
    said = "|".join(re.escape(w) for w in sorted(neutral(), key=len, reverse=True))
    return re.compile(rf"(?:,? (?:{said}))+$")


def _without_thanks(words: str, language: str) -> str:
    polite = _polite(language)
    return polite.sub("", words).strip(_ENDS) if polite is not None else words


def read_echo(text: str, context: ReplyContext, read: Callable[[str, ReplyContext], Reading]) -> Reading | None:
    """The echo's reading; None when the words are none, or an answer to a question of the bot's."""
    kind = echo(text, context.language) if context.asked is None else None
    if kind is None or (context.addressed and kind == "plus"):
        return None
    if context.addressed:
        sure = BELOW_THE_BOARD if context.replying_to == "board" and kind == "same" else BELOW_ANOTHER
        answer = Answer.YES if kind == "same" else Answer.NO
        return decide([SetAnswer(context.writer, answer, confidence=sure)], [], context, text)
    if not context.replied_text:
        return None
    said = read(context.replied_text, replace(context, replying_to="bot", replied_text="", answer=Answer.NONE))
    mine = [one for i in said.intents if (one := _held(i, context)) is not None]
    if kind == "neither":  # said after what somebody does not or can not do
        mine = [i for i in mine if not isinstance(i, AddPromise) and not _is_yes(i)]
    if not any(not isinstance(i, AddPromise) for i in mine) or any(
        isinstance(i, SetNeeds) and i.cleared for i in mine
    ):
        return Reading(why=Say("reply-why-chatter", {"reason": "unsure"}))
    made = decide(mine, [], replace(context, replying_to="bot"), text)
    return replace(made, why=Say("reply-why-read", {"words": context.replied_text[:60]}))


def _is_yes(intent: Intent) -> bool:
    return isinstance(intent, SetAnswer) and intent.answer is not Answer.NO


def _held(intent: Intent, context: ReplyContext) -> Intent | None:
    """What of somebody's words can hold for another: that they come or not, and what they can't eat; their number and
    their family are their own. A dish may be meant or not, so it is asked about."""
    match intent:
        case SetAnswer() if intent.who == context.writer and intent.confidence >= SURE:
            return replace(intent, start=0, end=0, implied=False)
        case SetNeeds() if intent.who == context.writer and intent.confidence >= SURE and not intent.member:
            needs = tuple(Need(n.need, 1, n.severity) for n in intent.needs)
            return replace(intent, needs=needs, start=0, end=0)
        case SetPregnant() if intent.who == context.writer and not intent.member:
            return replace(intent, start=0, end=0)
        case AddPromise() if intent.by is None and not intent.vague and intent.confidence >= SURE:
            return AddPromise(intent.dish, intent.category, confidence=A_DISH_TOO)
    return None
