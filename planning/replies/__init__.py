"""What a guest's sentence means, in the guest's own words: pure, quick, without a network.

`read` is the whole of it. English and Spanish are folders of rules beside their words in `data/`, named in
`LANGUAGES` with a function `message_of(text)` and a function `read(message, context)`. Any other language needs no
code: `worded` reads it by its table of phrases.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache, partial

from planning.potluck import Party, Say
from planning.replies import english, evidence, hosted, intents, spanish, worded
from planning.replies.asides import contents_beside, labels_beside, told_and_asked, with_contents, with_labels
from planning.replies.corrected import corrected
from planning.replies.decide import SURE, decide, tidy, with_implied
from planning.replies.details import Detail, details_beside, with_details
from planning.replies.echoes import echo, read_echo
from planning.replies.intents import *  # noqa: F403 - the one list of intents is theirs
from planning.replies.intents import Intent, Reading, ReplyContext, spans_of
from planning.replies.languages import other_language
from planning.replies.text import Message

__all__ = [*intents.__all__, "echo", "read", "read_party", "says_later"]

Rules = tuple[Callable[[str], Message], Callable[[Message, ReplyContext], tuple[list[Intent], list[str]]]]

LANGUAGES: dict[str, Rules] = {"en": (english.message_of, english.read), "es": (spanish.message_of, spanish.read)}

PARTIES: dict[str, Callable[[str], Party | None]] = {
    "en": english.people.read_party,
    "es": spanish.people.read_party,
}


@cache
def rules_of(language: str) -> Rules | None:
    """How a language is read: by rules of its own, by its table of phrases, or not at all."""
    if language in LANGUAGES:
        return LANGUAGES[language]
    if language in worded.languages():
        return partial(worded.message_of, language=language), partial(worded.read, language=language)
    return None


def read(text: str, context: ReplyContext) -> Reading:
    """What the text asks for, seen from that context. Never raises, whatever the text; 4,096 characters at most
    are looked at. The group's language goes first; what is plainly in another one we know is read in that."""
    told = told_and_asked(text)
    plain, details = details_beside(told)
    if details and context.asked != "diets":
        reading = _read_beside(plain, context, text, details)
        if reading is not None:
            return reading
    return _read_beside(told, context, text) or Reading()


def _read_beside(
    told: str, context: ReplyContext, text: str, details: Sequence[Detail] = ()
) -> Reading | None:
    """With what is said of the contents and the diet of a dish set aside first; None where a detail finds no dish."""
    plain, beside = contents_beside(told)
    if beside:
        if (reading := _read(plain, context, text, details)) is None:
            return None
        made = with_contents(reading.intents, beside)
        if made is not None:
            now = tuple(new for new, old in zip(made, reading.intents, strict=True) if old in reading.now)
            return replace(reading, intents=tuple(made), now=now)
    plain, labels = labels_beside(told)
    if labels and context.asked != "diets":
        if (reading := _read(plain, context, text, details)) is None:
            return None
        made = with_labels(reading.intents, labels)
        if made is not None:
            now = tuple(new for new, old in zip(made, reading.intents, strict=True) if old in reading.now)
            return replace(reading, intents=tuple(made), now=now)
    return _read(told, context, text, details)


def _read(text: str, context: ReplyContext, original: str, details: Sequence[Detail] = ()) -> Reading | None:
    own = context.language if rules_of(context.language) is not None else "en"
    other = other_language(text, own)
    # Every language shares small words with English: what the group's own rules understand is in its own language.
    if other is not None and rules_of(other) is not None and (own == "en" or not _understood(own, text, context)):
        own, other = other, None
    message_of, understand = rules_of(own) or LANGUAGES["en"]
    if (echoed := read_echo(text, context, read)) is not None:
        return echoed
    message = message_of(text)
    overheard = False
    if own == "en" and context.replying_to is None:
        below = english.as_to_the_board(message, context)
        overheard = english.overheard(message, below, context)
        if overheard:
            found, passed, message = below.found, below.passed, below.message
            context = replace(context, replying_to="board")
        else:
            found, passed = english.read(message, context, below)
    else:
        found, passed = understand(message, context)
    if other is not None and context.addressed and (own == "en" or not found):
        told = Say("reply-other-language", {"language": other})
        return Reading(question=told, why=Say("reply-why-nothing", {"reason": "none"}))
    if own == "en" and not found and not passed and context.addressed:
        found = evidence.guessed(message, context)
    if not passed:
        found = corrected(found, message.plain, text, context, partial(_part, own, context))
    if details:
        if (detailed := with_details(found, details)) is None:
            return None
        found = detailed
    lost = own == "en" and not overheard and english.for_us(message)
    reading = decide(with_implied(tidy(found), context), passed, context, original, lost=lost)
    if own != "en" or not reading.intents or not context.addressed:
        return reading
    return replace(reading, unread=_unread(message, found, text), overheard=overheard)


def _part(language: str, context: ReplyContext, words: str) -> list[Intent]:
    """What a part of a message says is brought, read by itself."""
    message_of, understand = rules_of(language) or LANGUAGES["en"]
    return understand(message_of(words), replace(context, replying_to="question:bring", own_promises=()))[0]


def _unread(message: Message, found: list[Intent], text: str) -> tuple[str, ...]:
    """What must not get lost beside what was read: whole sentences for us that no intent came from."""
    spans = [span for i in found for span in spans_of(i)]
    if not spans or any(end <= start for start, end in spans):
        return ()
    left: list[str] = []
    for sentence in message.sentences:
        if len(left) == MOST_UNREAD:
            break
        start, end = sentence.tokens[0].start, sentence.tokens[-1].end
        if any(a < end and b > start for a, b in spans) or _ALONE.fullmatch(sentence.text.strip()):
            continue
        if english.for_us(replace(message, sentences=(sentence,), plain=sentence.text.strip(), symbols=())):
            left.append(text[start:end])
    return tuple(left)


_ALONE = re.compile(r"(?:just |only )?(?:1|one) (?:person|adult)(?: only)?")
"""What a party is that nobody told more of."""
MOST_UNREAD = 2
"""More is a story, which nobody asked us to understand."""


def _understood(language: str, text: str, context: ReplyContext) -> bool:
    message_of, understand = rules_of(language) or LANGUAGES["en"]
    return any(i.confidence >= SURE for i in understand(message_of(text), context)[0])


def says_later(text: str, language: str = "en") -> bool:
    """Whether an answer leaves the question open: "not sure yet", "later", "todavía no sé"."""
    for one in dict.fromkeys((language if language in LANGUAGES else "en", "en")):
        message = LANGUAGES[one][0](text[:200])
        if len(message.sentences) == 1 and hosted.leaves_open(message.sentences[0].text.strip(), one):
            return True
    return False


def read_party(text: str, language: str = "en") -> Party | None:
    """A party in words by itself ("2 adults and 1 child", "3"), or None."""
    if language not in PARTIES and language in worded.languages():
        return worded.party_of(text, language)
    return PARTIES.get(language, PARTIES["en"])(text)
