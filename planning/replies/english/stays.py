"""Who of a party stays away, and of what age they are: "the 13yo has a match", "the younger lad's got practice"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from planning.potluck import AGE_GROUPS, Party
from planning.replies.english.lexicon import number_of
from planning.replies.english.members import item
from planning.replies.text import Message, Sentence, Token

_ELSEWHERE = r"(?:match(?:es)?|games?|exams?|tests?|practice|training|shifts?|work|party|parties|sleepovers?|sleep over|rehearsals?|lessons?|tournaments?|camp|football|soccer|gigs?|recital|plans?|homework|trip|concert|dad's|mum's|mom's|grandma's|gran's|fever|flu|chickenpox|bug|cold|covid|class|course|meeting)"
AWAY = rf"(?:(?:also|sadly|now|really) )*(?:(?:has|have|got|have got|has got|is at|are at|is on|are on|is off to|are off to|is in|are in|has to go to) (?:a |an |the |her |his |their |to |other |better )*(?:[a-z]+ ){{0,2}}?{_ELSEWHERE}|(?:is|are) (?:now |both |all )?(?:ill|sick|poorly|unwell|away|out|off|busy|working|grounded|not coming|not joining|not well|staying (?:at )?(?:home|behind|here|in|with [a-z]+)|at (?:home|uni|university|school|college|[a-z]+'s))|(?:can|will|could) not (?:be )?(?:come|make|join|coming|there|attend)|(?:can|will|could) not(?= $| ,)|(?:is|are) not (?:coming|joining|able|in|around)|stays? (?:at )?(?:home|behind|here)|(?:has|have) (?:to|got to) (?:work|study|stay)|dropped out|bailed|(?:has|have) (?:dropped out|cancelled|bailed))(?: (?:it|after all|now|this time|sadly|with a [a-z]+|then|that day|today|too|at home|home))*(?= |$)"
_AWAY = re.compile(rf"^ {AWAY}")
_RANKS = frozenset(
    ("youngest", "eldest", "oldest", "middle", "smallest", "littlest", "younger", "older", "elder", "little", "other")
)
_AFTER_IS = frozenset(
    (
        "a",
        "an",
        "only",
        "just",
        "nearly",
        "almost",
        "turning",
        "still",
        "in",
        "under",
        "about",
        "away",
        "sick",
        "ill",
        "off",
        "busy",
        "out",
        "at",
        "staying",
        "working",
    )
)


@dataclass(frozen=True)
class Absent:
    """Members by their age groups, and the characters that tell of them."""

    groups: tuple[str, ...]
    start: int
    end: int


def spoken(sentence: Sentence) -> Sentence:
    """The sentence with "my daughter's 15" as "my daughter is 15"."""
    made: list[Token] = []
    for k, token in enumerate(sentence.tokens):
        after = sentence.tokens[k + 1].plain if k + 1 < len(sentence.tokens) else ""
        if token.plain.endswith("'s") and (after[:1].isdecimal() or after in _AFTER_IS or number_of(after) > 0):
            made += [replace(token, plain=token.plain[:-2]), replace(token, plain="is")]
        elif token.plain.endswith("'s") and after == "got":
            made += [replace(token, plain=token.plain[:-2]), replace(token, plain="has")]
        else:
            made.append(token)
    return Sentence(made, sentence.question) if len(made) != len(sentence.tokens) else sentence


def absent(message: Message) -> list[Absent]:
    """All members who are told to stay away."""
    return [one for sentence in message.sentences if not sentence.question for one in _absent(sentence)]


def _absent(sentence: Sentence) -> list[Absent]:
    tokens, found, i = sentence.tokens, list[Absent](), 0
    while i < len(tokens):
        groups, last = _members(tokens, i)
        match = _AWAY.match(sentence.text[sentence.offset(last) - 1 :]) if groups else None
        if match is None:
            i += 1
            continue
        last = min(len(tokens), last + len(match[0].split()))
        found.append(Absent(groups, tokens[i].start, tokens[last - 1].end))
        i = last
    return found


def _members(tokens: Sequence[Token], i: int) -> tuple[tuple[str, ...], int]:
    """Those named at token `i` by age groups, and where they end."""
    told = item(tokens, i, True)
    if told is not None and not told.me and told.total and not told.unknown_number:
        return tuple(g for g, n in told.counts.items() for _ in range(n)), told.last
    j = i
    while j < len(tokens) and tokens[j].plain in ("the", "my", "our"):
        j += 1
    if j < len(tokens) and tokens[j].plain in _RANKS:
        one = j + 1 < len(tokens) and tokens[j + 1].plain in ("one", "kid", "boy", "girl")
        return ("children",), j + 1 + one
    return (), i


_NEXT = ("children", "teens", "toddlers", "infants")


def without(known: Party, stay: Sequence[Absent]) -> Party | None:
    """The party without them; None where it has not so many. A child of ours may be of any age."""
    counts = {g: getattr(known, g) for g in AGE_GROUPS}
    for group in (g for a in stay for g in a.groups):
        among = (group, *_NEXT) if group in _NEXT else (group,)
        taken = next((g for g in among if counts[g]), None)
        if taken is None:
            return None
        counts[taken] -= 1
    return Party(**counts)
