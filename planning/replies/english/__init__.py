"""English: the words in `data/words_en.csv`, the rules in this folder, put together in `read`."""

from __future__ import annotations

import re
from functools import cache

from planning.potluck import Answer
from planning.replies.english import answers, needs, others, people, promises, questions, traps
from planning.replies.english.lexicon import neutral, words
from planning.replies.intents import AddPromise, Ask, Intent, Late, ReplyContext, SetAnswer, SetParty, Undo
from planning.replies.text import Message, Sentence, cut

_ILL = re.compile(
    r"\b(?:(?P<i>ill)|(?P<we>well)) "
    r"(?=(?:bring|make|be|come|do|take|cook|bake|get|grab|try|let|send|pick|buy|contribute|provide)\b)",
    re.IGNORECASE,
)


@cache
def _expand() -> dict[str, str]:
    return words("expand")


def message_of(text: str) -> Message:
    """The message in plain words. "ill bring" is "I'll bring"; "I am ill" stays."""
    fixed = _ILL.sub(lambda m: "i'l " if m["i"] else "we'l ", text)  # as long as before: places must not move
    return cut(fixed, _expand(), neutral())


def read(message: Message, context: ReplyContext) -> tuple[list[Intent], list[str]]:
    """All that the message says for us, and the reasons for what was passed over."""
    found: list[Intent] = []
    passed: list[str] = []
    if traps.joking(message):
        return [], ["joke"]
    for sentence in message.sentences:
        trap = traps.blocked(sentence, context)
        undo = questions.read_undo(sentence, context)
        found += undo
        asked = [] if undo else questions.read_question(sentence, context)
        found += asked
        if asked:
            continue
        if trap is not None:
            passed.append(trap)
            continue
        found += _statement(sentence, context)
    return found, passed


def _statement(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    found: list[Intent] = []
    found += questions.read_late(sentence, context)
    found += needs.read_needs(sentence, context)
    if sentence.question:
        return [*found, *promises.read_offer_question(sentence, context)]
    found += promises.read_withdrawals(sentence, context)
    found += others.read_others(sentence, context)
    given = answers.read_answer(sentence, context)
    found += given
    found += people.read_people(sentence, context)
    found += promises.read_promises(sentence, context)
    if context.addressed and not any(isinstance(i, Late) for i in found):
        if not any(isinstance(i, AddPromise) for i in found):
            found += promises.read_bare(sentence, context)
    return found
