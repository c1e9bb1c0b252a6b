"""A sentence around a dish its writer promised: given up, of another size, or another one's now.

The name of the dish is what holds these together; the words for giving up and for sizes may stand anywhere beside it.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass

from planning.amounts import read_number
from planning.replies.english.lexicon import NUMBER, number_of, singulars
from planning.replies.english.own import ONE_MORE
from planning.replies.intents import ChangePromise, DropPromise, Intent, ReplyContext
from planning.replies.text import Sentence

_GIVEN_UP = re.compile(
    r" (?:called off|no (?:[a-z]+ ){1,3}from (?:me|us)|take (?:the |my |our )?[a-z ]{2,30} off|strike|ditch(?:ing)?|nix|axe|abandon(?:ing)?|on hold|cross (?:the |my )?[a-z ]{2,30} off|bail(?:ing)? (?:out )?(?:on|of)|no-go|no go|leave out|leaving out|give up|giving up|hand(?:ing)? over|hand(?:ing)? off|pass(?:ing)? on|fell through|falls? through|gone bad|gone off|went off|went wrong|did not work|not happening|not going to happen|not making it|off the (?:menu|list|table|cards)|off the list|ruined|spoilt|spoiled|burnt|burned|inedible|a disaster|a write-off|in the bin|out of (?:the question|my hands)|not me|count me out|withdraw(?:ing|n)?|pull(?:ing)? out|back(?:ing)? out|scratch|scrap|scrapping|cancel(?:led|ing)?|drop(?:ping)?(?! off\b)|skip(?:ping)?|can not (?:serve|offer|manage|do|make|bring|bake|cook|deliver|commit)|will not (?:manage|be making|be bringing|be doing|be baking|happen|work)|not (?:bringing|making|baking|doing|cooking)|no longer) "
)
_PLAINLY_UP = re.compile(
    r" (?:not happening|called off|cancelled|no (?:[a-z]+ )?from (?:me|us)|no-go|no go|bail(?:ing)? (?:out )?(?:on|of)|leave out|leaving out|give up|giving up|off the (?:menu|list|table|cards)) "
)
_LINKS = frozenset(
    [
        "up",
        "down",
        "back",
        "to",
        "for",
        "serves",
        "feeds",
        "feeding",
        "serving",
        "will",
        "is",
        "be",
        "now",
        "should",
        "can",
        "enough",
        "that",
        "do",
        "does",
        "about",
        "around",
        "only",
        "just",
        "going",
        "gonna",
        "it",
        "which",
        "servings",
        "would",
        "must",
        "good",
        "stretch",
        "go",
        "run",
        "cover",
        "make",
        "→",
        "instead",
    ]
)


@dataclass(frozen=True)
class Mention:
    """A promise named by tokens `first` up to `last`."""

    promise: str
    dish: str
    first: int
    last: int


def mention(sentence: Sentence, context: ReplyContext) -> Mention | None:
    """The promise of the writer's that is named, all words of it or its last one; None for none or several."""
    found: list[Mention] = []
    plain = [t.plain.removesuffix("'s") for t in sentence.tokens]
    for promise, dish in context.own_promises:
        names = [w for w in dish.lower().split() if w.isalnum()]
        for shape in (names, names[-1:]):
            at = next((i for i in range(len(plain)) if shape and _same(plain[i : i + len(shape)], shape)), None)
            if at is not None and sentence.free(at):
                found.append(Mention(promise, dish, at, at + len(shape)))
                break
    return found[0] if len(found) == 1 else None


def _same(said: list[str], name: list[str]) -> bool:
    return len(said) == len(name) and all(
        set(singulars(a)) & set(singulars(b)) for a, b in zip(said, name, strict=True)
    )


def read_mine(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """What a sentence that names the writer's own dish asks for it; read when nothing narrower was understood."""
    named = mention(sentence, context)
    if named is None or ONE_MORE.search(sentence.text):
        return []
    start, end = sentence.span(0, len(sentence.tokens))
    sized = _sized(sentence, named)
    if sized is not None:
        servings, sure = sized
        sentence.take(0, len(sentence.tokens))
        return [ChangePromise(named.promise, servings=servings, start=start, end=end, confidence=sure)]
    if _GIVEN_UP.search(sentence.text) is None:
        return []
    sure = 0.9 if _PLAINLY_UP.search(sentence.text) else 0.7
    sentence.take(0, len(sentence.tokens))
    return [DropPromise(named.promise, named.dish, start=start, end=end, confidence=sure)]


def _sized(sentence: Sentence, named: Mention) -> tuple[float, float] | None:
    """How many it is for now, and how sure: the number behind linking words ("slaw serves twenty"), or before it."""
    if _NOT_ENOUGH.search(sentence.text):
        return None
    if (other := _NOT_BEFORE.search(sentence.text) or _NOW_FOR.search(sentence.text)) is not None:
        return float(number_of(other["n"] or other["m"])), 0.9
    plain = [t.plain for t in sentence.tokens]
    if (behind := _JUST.match(sentence.text, sentence.offset(named.last) - 1)) is not None:
        return float(number_of(behind["n"])), 0.88  # "less slaw, just 8 servings"
    i = named.last
    while i < len(plain) and (plain[i] in _LINKS or (i == named.last and plain[i] in (",", ":", "-", "–", "="))):
        i += 1
    if i > named.last and (read := _count(plain, i)) is not None and (read[1] >= len(plain) or plain[read[1]] in _ENDS):
        return read[0], 0.9
    for j in (named.first - 1, named.first - 2):
        if (
            j > 0
            and plain[j - 1] in ("only", "just")
            and (read := _count(plain, j)) is not None
            and read[1] <= named.first
        ):
            return read[0], 0.7
    return None


_NOT_ENOUGH = re.compile(
    r" (?:(?:will|would) not (?:suffice|do(?= $)|stretch|cover)|not (?:be )?(?:enough|sufficient)|too (?:few|little|small)) "
)
"""A number is told to be the wrong one."""
_NOT_BEFORE = re.compile(
    rf" (?P<n>{NUMBER})(?: (?:servings|portions|people))?(?: ,)? (?:not|instead of|rather than) {NUMBER} | for {NUMBER}(?: ,)?(?: but)? (?:only|just) (?:for )?(?P<m>{NUMBER}) "
)
_NOW_FOR = re.compile(
    rf" {NUMBER} (?:is now|now|becomes|became|goes to|went to|to|turned into|->|- >|up to|down to) (?:[a-z]+ ){{0,3}}?(?P<n>{NUMBER})(?P<m>)(?= $| ,| servings| people| portions| please| now)"
)
"""One number in place of another."""


_JUST = re.compile(
    rf" (?:, |- |: )(?:(?:just|only|now|enough|it is|make it|down to|up to|about|around) )+(?:for |feeds |serves )?(?P<n>{NUMBER})(?: (?:servings|portions|people|now|instead|sorry))*(?= $| ,)"
)
_ENDS = frozenset(
    (
        ",",
        "and",
        "but",
        "not",
        "now",
        "instead",
        "people",
        "servings",
        "portions",
        "after",
        "if",
        "because",
        "so",
        "-",
        "(",
        "or",
        "please",
        "then",
        "of",
        "at",
        "in",
        "ppl",
        "guests",
        "this",
        "sorry",
        "max",
        "tops",
        "i",
        "we",
        "though",
    )
)


def _count(plain: list[str], i: int) -> tuple[float, int] | None:
    if i >= len(plain):
        return None
    if plain[i].isascii() and plain[i].isdecimal() and len(plain[i]) <= 4:
        return (float(plain[i]), i + 1) if int(plain[i]) else None
    read = read_number(plain[i : i + 4])
    return (float(read[0]), i + read[1]) if read is not None and read[0] >= 1 else None
