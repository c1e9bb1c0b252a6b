"""Needs told of other guests ("Pat has a severe peanut allergy", "put Mei down as vegan"), and of nobody here at all."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from planning.replies.english.lexicon import any_of, words
from planning.replies.intents import Intent, ReplyContext, SetNeeds
from planning.replies.text import Sentence, Token

Reader = Callable[[Sentence, ReplyContext], list[Intent]]

NOBODY_HERE = re.compile(
    r" (?:dogs?|cats?|pupp(?:y|ies)|kittens?|pets?|hamsters?|rabbits?|horses?|goats?|parrots?|hens?|chickens?|tortoises?) (?:(?:is|are|has|have|can|does|do|must|should|gets?|got|will)|(?:[a-z]+ )?(?:allergy|allergic|intolerant))(?= )"
    r"| (?:died|passed away|dies) (?:of|from|because) "
    r"| (?:did you know|fun fact|they say|i read|apparently) "
    r"| (?:%|percent|most|many|lots of|plenty of|more and more|so many|some) (?:of )?(?:kids|people|children|folks|adults|everyone) "
    r"| (?:anyone|anybody|someone|somebody|people|those|everyone|everybody|whoever|folks|any guests?|any vegans?) (?:(?:who|that|here|with|is|has|can|needs|wants|does) )+"
    r"| if (?:anyone|anybody|someone|somebody|people|they|you) "
)
"""Told of animals, of people in general or of nobody in particular."""
_VERBS = frozenset(
    ("is", "are", "has", "have", "can", "does", "do", "must", "will", "should", "needs", "need", "eats", "eat", "avoids", "avoid", "follows", "keeps", "keep",
     "reacts", "react", "swells", "gets", "carries", "wants", "cannot", "got", "never", "also", "both", "really", "still", "now", "only", "just", "who", "actually")
)  # fmt: skip
_JOINS = frozenset(("and", "&", ",", "+", "plus"))
_OPENS = frozenset(
    (",", "and", "but", "so", "while", "whereas", "though", "because", "as", "-", "(", "then", "also", "plus")
)
_SELF = frozenset(("i", "we", "my", "our", "me", "us", "mine"))
_DOWN = frozenset(("put", "mark", "note", "list", "count", "set", "enter", "log", "save", "record", "remember"))


def leave_out(sentence: Sentence) -> None:
    """Takes out what is told of nobody here, up to the next words about the writer's own."""
    while (match := NOBODY_HERE.search(sentence.left)) is not None:
        first, last = sentence.token_range(match)
        while last < len(sentence.tokens) and not (
            sentence.tokens[last].plain in ("i", "we", "my", "our")
            and sentence.tokens[last - 1].plain not in ("as", "than")
        ):
            last += 1
        sentence.take(first, last)


def of_guests(sentence: Sentence, context: ReplyContext, reader: Reader) -> list[Intent]:
    """What is told of guests the group knows, read as if each told it; always to be asked about.

    What was read is taken out of the sentence."""
    found: list[Intent] = []
    at = 0
    while at < len(sentence.tokens):
        clause = _clause(sentence, context, at)
        if clause is None:
            at += 1
            continue
        guests, first, last, tokens = clause
        inner = replace(context, guests=(), needs=())
        heard = [i for i in reader(Sentence(tokens, sentence.question), inner) if isinstance(i, SetNeeds)]
        for who, name in guests:
            for intent in heard:
                needs = (
                    intent.needs
                    if len(guests) == 1 and "'s " in name
                    else tuple(replace(n, count=1) for n in intent.needs)
                )
                start, end = sentence.span(first, last)
                sure = min(intent.confidence, 0.6)
                found.append(replace(intent, who=who, needs=needs, member=name, start=start, end=end, confidence=sure))
        if heard:
            sentence.take(first, last)
        at = last if heard else at + 1
    return found


def _guest_at(token: Token, context: ReplyContext) -> tuple[str, str] | None:
    plain = token.plain.removesuffix("'s").removesuffix("s'")
    for guest, name in context.guests:
        said = name.lower().split()[:1]
        if guest != context.writer and said and len(said[0]) > 1 and plain == said[0]:
            return guest, name
    return None


def _clause(
    sentence: Sentence, context: ReplyContext, at: int
) -> tuple[list[tuple[str, str]], int, int, list[Token]] | None:
    """The guests named at token `at` as those it is told of, the clause's first token and the one past its last, and
    its words with a pronoun in the names' place; None where no guest is the subject."""
    tokens = sentence.tokens
    first = _guest_at(tokens[at], context)
    if first is None:
        return None
    guests, i = [first], at + 1
    own = False
    while i + 1 < len(tokens) and tokens[i].plain in _JOINS:
        if (more := _guest_at(tokens[i + 1], context)) is not None:
            guests.append(more)
        elif tokens[i + 1].plain in ("i", "me", "myself") and tokens[i].plain != ",":
            own = True
        else:
            break
        i += 2
    if own:
        guests.append((context.writer, ""))
    pronoun = "they" if len(guests) > 1 else "she"
    if tokens[at].plain.endswith("'s") and len(guests) == 1 and (kin := _kin_at(tokens, i)) is not None:
        guests, i = [(first[0], f"{first[1]}'s {kin[0]}")], kin[1]
        pronoun = "they" if kin[0] in words("kins") else "she"
    last = _end(tokens, i, context)
    put = at > 0 and tokens[at - 1].plain in _DOWN
    if put and i + 1 < len(tokens) and tokens[i].plain in ("down", "as"):
        i += 2 if tokens[i + 1].plain in ("as", "for") else 1
        body = [_token("she", tokens[at]), _token("is", tokens[at]), *tokens[i:last]]
        return guests, at - 1, last, body
    if _ordered(tokens, at) and tokens[at].plain == tokens[at].plain.removesuffix("'s"):
        before = tokens[_start(tokens, at) : at - 1]
        return guests, _start(tokens, at), at + 1, [*before, _token("for", tokens[at - 1]), _token("me", tokens[at])]
    if at > 0 and tokens[at - 1].plain in (
        "for",
        "to",
        "with",
        "by",
        "from",
        "like",
        "at",
        "hi",
        "hey",
        "hello",
        "thanks",
    ):
        return None
    rest = tokens[i:last]
    if tokens[at].plain.endswith("'s") and len(guests) == 1 and "'s " not in guests[0][1]:
        rest = [_token("is", tokens[at]), *rest]  # "Pat's allergic"
    elif rest and rest[0].plain in (",", ":", "-", "("):
        rest = _labelled(tokens[at], rest)
    if not rest or rest[0].plain not in _VERBS:
        return None
    return guests, at, last, [_token(pronoun, tokens[at]), *rest]


def _labelled(name: Token, rest: list[Token]) -> list[Token]:
    """ "Pat - nut allergy", "Pat: vegan": a need put behind the name like a label."""
    after = rest[1:]
    while after and after[-1].plain == ")":
        after = after[:-1]
    told = " ".join(t.plain for t in after[:5])
    illness = re.match(rf"(?:a |an |severe |bad |mild |the )*(?:{any_of('allergen')}) (?:allergy|intolerance)", told)
    if illness is not None or re.match(r"(?:severely |badly |also )?allergic ", told):
        verb = "has" if illness is not None else "is"
        return [_token(verb, name), *after]
    if re.match(rf"(?:{any_of('diet')})(?![a-z])", told):
        return [_token("is", name), *after]
    if told.startswith("no ") and re.match(rf"no (?:{any_of('allergen')})(?![a-z])", told):
        return [_token("eats", name), *after]
    return []


def _kin_at(tokens: list[Token], i: int) -> tuple[str, int] | None:
    for length in (3, 2, 1):
        said = " ".join(t.plain for t in tokens[i : i + length])
        if any(said in words(role) for role in ("kin", "kins", "guestkin")):
            return said, i + length
    return None


def _ordered(tokens: list[Token], at: int) -> bool:
    """ "No nuts for Pat": an order, with the guest at its end."""
    return at > 1 and tokens[at - 1].plain == "for" and tokens[_start(tokens, at)].plain in ("no", "not", "without")


def _start(tokens: list[Token], at: int) -> int:
    k = at
    while k > 0 and tokens[k - 1].plain not in (",", "and", "but", "so"):
        k -= 1
    return k


def _end(tokens: list[Token], i: int, context: ReplyContext) -> int:
    """Where what is told of them ends: before the writer's own part or the next guest's."""
    for k in range(i, len(tokens)):
        plain = tokens[k].plain
        opened = k > 0 and tokens[k - 1].plain in _OPENS
        if opened and (plain in _SELF or (_guest_at(tokens[k], context) is not None and k > i)):
            return k - 1
        if k > i and plain in ("i", "we") and tokens[k - 1].plain not in ("as", "than", "am", "do", "are"):
            return k
    return len(tokens)


def _token(plain: str, where: Token) -> Token:
    return Token(plain, where.raw, where.start, where.end)
