"""How much of a sentence was understood: words that nobody read make what was read beside them doubtful.

A reading is only as good as the rest of its sentence: "3 of the 4 of us can make it" is no party of four. What is
left over counts against an intent by its kind: a number or a person against a party, another dish or a size against a
promise, "but", "not" and "or" against all of them. Doubtful means asked about below the bot's own messages, and left
alone in the open chatter. Needs are not touched: an allergy is noted at once.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from planning.amounts import number_words
from planning.potluck import Answer
from planning.replies.english.lexicon import NUMBER, number_of, singulars, words
from planning.replies.english.nouns import is_ingredient, known_thing
from planning.replies.intents import (
    AddPerson,
    AddPromise,
    ChangePromise,
    DropPromise,
    Intent,
    ReplyContext,
    SetAnswer,
    SetNeeds,
    SetParty,
    TakeTopping,
    spans_of,
)  # fmt: skip
from planning.replies.text import Message, Sentence, Token

DOUBTFUL = 0.78
"""Below what is done at once, above what is asked about."""
MOST_UNREAD = 2
"""So many words of content may be left beside a reading (common practice, no source)."""
PLAINLY = 0.9
"""From here on a promise says so itself ("I'll bring ...")."""
_TURNS = frozenset(("not", "no", "never", "none", "neither", "nor", "except", "unless", "without", "minus", "or", "either", "hardly", "until"))  # fmt: skip
"""Words that turn the sense of those beside them."""
_IDLY = re.compile(
    r" (?:can not wait|(?:will|would) not (?:want to )?miss|why not|whether or not|more or less|or so|or less|not (?:just|only)|no (?:problem|worries|doubt|bother|idea|matter|need|pressure)"
    r"|(?:not|without) (?:bringing|bring) (?:anything|a thing|food|any food)|or (?:something|whatever|anything|other)|(?:do|does|can|will) not eat|(?:no|not|without) (?:[a-z]+ )?(?:allerg[a-z]+|dietary|meat|fish|seafood|special|picky)"
    rf"|(?:not|instead of|rather than) {NUMBER}|sorry not sorry|(?:no|not) (?:the |any |enough )?time|(?:yes|no) to [a-z]+ing|(?:yes|no) to the (?:cooking|washing up|dishes)"
    r"|not (?:a )?(?:cook|baker|chef)|no (?:cook|baker|chef)|can not (?:cook|bake|complain|resist|say no)|not (?:that|too) (?:bad|far|hard)|if not|last but not least) "
)
"""Where such a word turns nothing that matters here."""
_EXPLAINED = frozenset(("taken", "covered", "sorted", "gone", "stays", "stay", "already", "done", "remains", "still"))
"""Behind a dish that is named only to say that it is looked after."""
_JOINS = frozenset(("and", "plus", "with", "&", "+"))


@dataclass(frozen=True)
class Unread:
    """What of one sentence nobody read: numbers, persons, dishes, words that turn the sense, other content."""

    numbers: tuple[int, ...] = ()
    persons: tuple[Token, ...] = ()
    dishes: int = 0
    turns: int = 0
    instead: bool = False
    content: int = 0


def doubt(message: Message, found: Sequence[Intent], context: ReplyContext) -> list[Intent]:
    """The intents, less sure where words of their sentence were left unread."""
    made: list[Intent] = []
    seen: dict[int, Unread] = {}
    for intent in found:
        at = next((k for k, s in enumerate(message.sentences) if _holds(s, intent)), None)
        if at is None or intent.confidence <= DOUBTFUL or isinstance(intent, SetNeeds):
            made.append(intent)
            continue
        sentence = message.sentences[at]
        if at not in seen:
            seen[at] = unread(sentence, found, context)
        joined = isinstance(intent, SetParty) and _joined_on(intent, sentence, found)
        doubtful = (
            joined
            or _contradicted(intent, message, found, context)
            or _doubtful(intent, sentence, seen[at], found, context)
        )
        made.append(replace(intent, confidence=DOUBTFUL) if doubtful else intent)
    return made


def _holds(sentence: Sentence, intent: Intent) -> bool:
    return sentence.tokens[0].start <= intent.start < sentence.tokens[-1].end and intent.end > intent.start


_SENDS = re.compile(
    r" (?:send|sending|drop|dropping|leave|leaving|deliver|with pat|via|anyway|regardless|still|though) "
)
"""Who stays away may let a dish come all the same."""


def _contradicted(intent: Intent, message: Message, found: Sequence[Intent], context: ReplyContext) -> bool:
    """Whether the writer's no stands beside a party that comes ("not me, but my wife will")."""
    mine = [i for i in found if isinstance(i, SetAnswer) and i.who == context.writer]
    sends = _SENDS.search(f" {message.plain} ") is not None
    if isinstance(intent, DropPromise) or (isinstance(intent, SetParty) and not intent.relative):
        both = [i for i in found if isinstance(i, (DropPromise, SetParty))]  # "can't do slaw for 12, only 8"
        whole = [next((k for k, s in enumerate(message.sentences) if _holds(s, i)), -1) for i in both]
        at = whole[both.index(intent)]
        if any(type(i) is not type(intent) and w == at for i, w in zip(both, whole, strict=True)):
            return True
    if isinstance(intent, SetParty):
        return any(i.answer is Answer.NO for i in mine)
    return (
        isinstance(intent, SetAnswer) and intent in mine and intent.answer is Answer.NO
        and any(
            (isinstance(i, (SetParty, AddPerson)) and i.party.total > 0)
            or (isinstance(i, AddPromise) and not i.conditional and not sends)
            for i in found
        )
    )  # fmt: skip


def _doubtful(
    intent: Intent, sentence: Sentence, left: Unread, found: Sequence[Intent], context: ReplyContext
) -> bool:
    match intent:
        case SetAnswer():
            return intent.answer is Answer.YES and (left.turns > 0 or left.content > MOST_UNREAD)
        case AddPerson():
            return left.turns > 0 or left.content > MOST_UNREAD or any(n > 1 for n in left.numbers)
        case SetParty():
            if not intent.relative and intent.party == context.party:
                return False  # nothing changes
            agreed = {intent.party.total, context.party.total if context.party is not None else 0}
            others = [n for n in left.numbers if n not in agreed]
            return bool(others or left.turns or _more_come(intent, sentence, left)) or left.content > MOST_UNREAD
        case ChangePromise() | DropPromise():
            return bool(left.numbers or left.dishes or left.turns or left.instead) or left.content > MOST_UNREAD
        case AddPromise() | TakeTopping():
            if isinstance(intent, AddPromise) and not intent.vague and odd_name(intent.dish):
                return True
            if intent.confidence >= PLAINLY and not left.turns and (clause := _own_clause(intent, sentence)) is not None:
                left = unread(clause, found, context)  # "sorry, quiche is out, I'll bring a cake instead"
            return bool(left.numbers or left.dishes or left.turns) or left.content > MOST_UNREAD
    return False


def _own_clause(intent: Intent, sentence: Sentence) -> Sentence | None:
    """The part between commas in which somebody says in the first person what they bring; None where they don't."""
    tokens = sentence.tokens
    at = next((k for k, t in enumerate(tokens) if t.start >= intent.start), len(tokens))
    first = next((k + 1 for k in reversed(range(at)) if tokens[k].plain in (",", "-", ";")), 0)
    last = next((k for k in range(at, len(tokens)) if tokens[k].plain in (",", "-", ";")), len(tokens))
    if (first, last) == (0, len(tokens)) or not {t.plain for t in tokens[first:at]} & _FIRST_PERSON:
        return None
    before = [t.plain for t in tokens[:first]]
    if _CONDITIONS & set(before):
        return None
    return Sentence(list(tokens[first:last]), False)


_FIRST_PERSON = frozenset(("i", "we"))
_CONDITIONS = frozenset(("if", "when", "unless", "assuming", "provided", "because", "depending", "once", "whether", "in"))


def odd_name(dish: str) -> bool:
    """Whether most of a dish's name is no food: "the meat one, the veg" beside a known word."""
    if known_thing(dish)[1] >= 0.95:
        return False  # the table knows the whole name
    said = dish.lower().split()
    odd = [w for w in said if w in words("tells") or w in _TURNS or w in ("one", "two", "other") or _strange(w)]
    return len(said) > 2 and len(odd) >= 2


def _strange(word: str) -> bool:
    roles = (
        "plainword",
        "manner",
        "diet",
        "allergen",
        "filler",
        "plain",
        "vessel",
        "sizeword",
        "sauce",
        "inside",
        "dish",
    )
    return not (
        any(s in words(role) for role in roles for s in singulars(word))
        or is_ingredient(word)
        or known_thing(word)[1] >= 0.5
        or word.endswith(("ed", "y"))
    )


def _more_come(intent: SetParty, sentence: Sentence, left: Unread) -> bool:
    """Whether somebody unread may belong to the party: always where it was put together from persons, behind a number
    only where joined to it ("just us two and little Theo")."""
    if not left.persons:
        return False
    own = [t for t in sentence.tokens if intent.start <= t.start < intent.end]
    told = {t.plain for t in own}
    if intent.relative or not (
        any(_number(w) for w in told) or told & {"just", "only", "own", "alone", "both", "myself"}
    ):
        return True
    last = sentence.tokens.index(own[-1]) + 1
    after = sentence.tokens[last : last + 4]
    return bool(after) and after[0].plain in _JOINS and any(t in left.persons for t in after[1:])


def _joined_on(intent: SetParty, sentence: Sentence, found: Sequence[Intent]) -> bool:
    """Whether something nobody read is joined to a party ("three plus a vegetarian au pair")."""
    own = [t for t in sentence.tokens if intent.start <= t.start < intent.end]
    if not own:
        return False
    last = sentence.tokens.index(own[-1]) + 1
    after = [t for t in sentence.tokens[last : last + 4] if t.plain not in ("(", ")")]
    leads = len(after) > 2 and after[0].plain in ("plus", "and", "with", "&", "+")
    return leads and after[1].plain in ("a", "an", "my", "our") and not any(_read(t, found) for t in after[1:])


def unread(sentence: Sentence, found: Sequence[Intent], context: ReplyContext) -> Unread:
    """What is left of the sentence beside these intents."""
    idle = {k for match in _IDLY.finditer(sentence.text) for k in range(*_tokens_of(sentence, match))}
    tokens = [
        t for k, t in enumerate(sentence.tokens) if t.plain[0].isalnum() and k not in idle and not _read(t, found)
    ]
    members = " ".join(i.member for i in found if isinstance(i, SetNeeds) and i.member).split()
    own = {w for _, dish in context.own_promises for w in dish.lower().split()}
    following = {
        id(a): {b.plain, c.plain}
        for a, b, c in zip(
            sentence.tokens, [*sentence.tokens[1:], _END], [*sentence.tokens[2:], _END, _END], strict=False
        )
    }
    plain = [t.plain for t in tokens]
    return Unread(
        numbers=tuple(_value(w) for w in plain if _number(w)),
        persons=tuple(t for t in tokens if _person(t, t is sentence.tokens[0]) and t.plain not in members),
        dishes=sum(
            t.plain not in words("filler")
            and t.plain not in words("plain")
            and not own & set(singulars(t.plain))
            and not following[id(t)] & _EXPLAINED
            and known_thing(t.plain.removesuffix("'s"))[1] >= 0.95
            for t in tokens
        ),
        turns=sum(w in _TURNS for w in plain),
        instead=any(w in ("instead", "rather") for w in plain),
        content=len({w for w in plain if w not in words("plain") and w not in words("filler")}),
    )


_END = Token("", "", 0, 0)


def _tokens_of(sentence: Sentence, match: re.Match[str]) -> tuple[int, int]:
    """The tokens a match in the sentence's text covers."""
    first = sentence.text.count(" ", 0, match.start())
    return first, first + len(match[0].split())


def _read(token: Token, found: Sequence[Intent]) -> bool:
    return any(
        any(a <= token.start < b for a, b in spans_of(i))
        or (isinstance(i, AddPromise) and token.raw in (i.heat_text or ""))
        for i in found
    )


def _number(word: str) -> bool:
    return word[0].isdecimal() or (word in number_words() and word not in ("one", "a", "an"))


def _value(word: str) -> int:
    return number_of(word) if word.isalnum() else 0


def _person(token: Token, first: bool) -> bool:
    plain = token.plain.removesuffix("'s")
    if any(s in words(role) for role in ("kin", "kins", "guestkin") for s in singulars(plain)):
        return True
    name = token.raw[:1].isupper() and not token.raw.isupper() and not first and plain == token.raw.lower()
    return name and plain not in words("plain") and plain not in words("filler")
