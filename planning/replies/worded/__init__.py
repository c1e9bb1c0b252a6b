"""A language that is data alone: `data/sentences_<code>.csv` has its phrases, and no line of code is its own.

It is read with restraint: only what is written to the bot, jokes, memories, wishes and hearsay passed over, and what
is not plain asked about. A language with rules of its own (`planning/replies/LANGUAGES`) does better.
"""

from __future__ import annotations

from planning.potluck import Answer, Party
from planning.replies.intents import Ask, Intent, Late, ReplyContext, SetAnswer, Undo
from planning.replies.text import Message, Sentence
from planning.replies.worded.needs import read_needs
from planning.replies.worded.party import read_party, read_people
from planning.replies.worded.things import read_promises
from planning.replies.worded.words import ROLES, Words, languages, words_of

__all__ = ["ROLES", "Words", "languages", "message_of", "party_of", "read", "read_with", "words_of"]

MOST_WORDS = 60
_PASSED = (("past", "past"), ("reported", "reported"), ("wish", "hypothetical"), ("others", "others"))
_ANSWERS = (("maybe", Answer.MAYBE), ("no", Answer.NO), ("yes", Answer.YES))


def message_of(text: str, language: str) -> Message:
    """The message in the language's plain words."""
    return words_of(language).message_of(text)


def party_of(text: str, language: str) -> Party | None:
    """A party in words by itself, or None."""
    return read_party(text, words_of(language))


def read(message: Message, context: ReplyContext, language: str) -> tuple[list[Intent], list[str]]:
    """All that the message says for us, and the reasons for what was passed over."""
    return read_with(words_of(language), message, context)


def read_with(words: Words, message: Message, context: ReplyContext) -> tuple[list[Intent], list[str]]:
    """The same by a table in hand."""
    if not context.addressed:
        return [], ["unsure"]
    if any(words.find("joke", s.text) is not None for s in message.sentences):
        return [], ["joke"]
    if not message.sentences and any(s in "👍✅🙋🙌💯" for s in message.symbols):
        return [SetAnswer(context.writer, Answer.YES, confidence=0.6)], []
    found: list[Intent] = []
    passed: list[str] = []
    for sentence in message.sentences:
        if len(sentence.tokens) > MOST_WORDS:
            passed.append("long")
            continue
        if (asked := _question(sentence, words)) is not None:
            found.append(asked)
            continue
        why = next((why for role, why in _PASSED if words.find(role, sentence.text) is not None), None)
        if why is not None:
            passed.append(why)
            continue
        found += _told(sentence, words, context)
    return found, passed


def _told(sentence: Sentence, words: Words, context: ReplyContext) -> list[Intent]:
    text = sentence.text
    if (back := words.find("undo", text)) is not None:
        start, end = sentence.span_of(back)
        return [Undo(start=start, end=end, confidence=0.75)]
    if (late := words.find("late", text)) is not None:
        start, end = sentence.span_of(late)
        return [Late(words.number_in(late), start=start, end=end, confidence=0.85)]
    found = read_needs(sentence, words, context)
    for role, answer in _ANSWERS:
        match = words.find(role, text)
        if match is None:
            continue
        start, end = sentence.span_of(match)
        found.append(SetAnswer(context.writer, answer, start=start, end=end, confidence=0.86))
        break
    found += read_people(sentence, words, context)
    return found + read_promises(sentence, words, context)


def _question(sentence: Sentence, words: Words) -> Intent | None:
    """A question of a known kind; another one goes to the host."""
    if not sentence.question and words.find("asking", sentence.text) is None:
        return None
    if (known := words.find("ask", sentence.text)) is not None:
        start, end = sentence.span_of(known)
        return Ask(words.means("ask", known[0]), start=start, end=end, confidence=0.85)
    return Ask("host", confidence=0.81) if sentence.question and len(sentence.tokens) > 2 else None
