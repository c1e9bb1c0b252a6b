"""Somebody else's answer: "Pat can't come", "Grandma Jo and uncle Pete are coming too", "Priya brings rolls for 12".

What is said of others is asked about, but for kin with a name, who come along with the writer.
"""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass

from planning.potluck import AGE_GROUPS, Answer, Party
from planning.replies.english.lexicon import any_of, words
from planning.replies.english.nouns import known_thing
from planning.replies.english.things import things_at
from planning.replies.intents import AddPerson, AddPromise, Intent, ReplyContext, SetAnswer, SetParty
from planning.replies.text import Sentence

_ALSO = (
    r"(?: (?:both|also|all|definitely|certainly|probably|sadly|unfortunately|now|actually|still|just|for sure|sorry))*"
)
_AFTER = (
    (Answer.NO, re.compile(rf"{_ALSO} (?:(?:is|are) not (?:coming|able to (?:come|make it)|joining|going to (?:make it|come))|(?:can|will|could) not (?:come|make it|be (?:there|coming|able to (?:come|make it))|join(?: us)?|attend)|(?:has|have) to (?:cancel|skip|pass|miss|bail)|(?:is|are){_ALSO} out|(?:can|will) not(?= $| ,| sorry| unfortunately| this time| either)|(?:is|are){_ALSO} (?:away|busy|abroad|on holiday|working|ill|sick|poorly|out of town|down with (?:the |a )?(?:flu|cold|bug|covid|fever)|in bed|unwell)(?= $| ,| that| then| this| and| till| until)|(?:is|are) (?:a )?no(?= $| ,)|has (?:cancelled|dropped out|canceled)|will (?:miss|skip) it)\b")),
    (Answer.MAYBE, re.compile(rf"{_ALSO} (?:might|may) (?:not )?(?:come|make it|join|be (?:there|coming))\b| (?:is|are) (?:a maybe|not sure)(?= $| ,| if| whether)")),
    (Answer.YES, re.compile(rf"{_ALSO} (?:(?:is|are){_ALSO} (?:coming|joining|in|attending|a yes)|(?:will|shall|would love to|wants to|want to|would like to|would be (?:pleased|delighted|happy|glad|honou?red) to) (?:also )?(?:come|be (?:there|coming|joining)|join(?: us)?|make it)|can (?:come|make it)(?: after all| too)?)\b(?= (?:too|as well|after all|with|also|and|for|along)| $| ,)")),
)  # fmt: skip
_AND = frozenset(("and", "&", "+", ",", "plus"))
_BRINGS = re.compile(
    r"^ ?(?:(?:too|as well|also|,|and|who|she|he|they) )*(?:is |are |will (?:be )?)?(?:also )?(?P<verb>brings|bringing|bring|makes|making|make|bakes|baking|bake|cooks|cooking|does|doing) "
)
_TITLES = frozenset(
    (
        "grandma",
        "grandpa",
        "granny",
        "gran",
        "grandmother",
        "grandfather",
        "nan",
        "nana",
        "nanna",
        "grandad",
        "granddad",
        "aunt",
        "auntie",
        "aunty",
        "uncle",
        "cousin",
        "mr",
        "mrs",
        "ms",
        "miss",
        "dr",
    )
)
_NOT_NAMES = frozenset(
    ("i", "we", "you", "he", "she", "they", "it", "everyone", "everybody", "nobody", "someone", "somebody", "anyone", "anybody", "who", "people", "all", "none",
     "both", "that", "this", "there", "what", "which", "the", "my", "our", "your", "a", "an", "yes", "no", "ok", "okay", "sorry", "sadly", "unfortunately", "maybe",
     "hopefully", "and", "but", "so", "now", "then", "also", "still", "just", "not", "really", "definitely", "summer", "winter", "autumn", "spring", "rain", "snow",
     "christmas", "easter", "dinner", "supper", "lunch", "food", "dessert", "more", "others", "friends", "family", "kids", "children", "monday", "tuesday",
     "wednesday", "thursday", "friday", "saturday", "sunday", "good", "great", "nice", "thanks", "when", "where", "how", "if", "because", "me", "us", "neither")
)  # fmt: skip
_NAME = re.compile(r"[^\W\d_][\w'’-]{1,30}")


@dataclass(frozen=True)
class _Named:
    """A name at tokens `first` up to `last`; `guest` its id, None for one the group does not know."""

    name: str
    guest: str | None
    first: int
    last: int
    titled: bool = False


def _name_at(sentence: Sentence, i: int, context: ReplyContext) -> _Named | None:
    """Whose name stands at token `i`: a known guest's, "Grandma Jo", or a word with a capital letter."""
    tokens = sentence.tokens
    if not sentence.free(i):
        return None
    for guest, name in context.guests:
        if guest == context.writer:
            continue
        parts = name.lower().split()
        for n in dict.fromkeys((len(parts), 1)):
            if parts and len(parts[0]) > 1 and [t.plain for t in tokens[i : i + n]] == parts[:n]:
                return _Named(name, guest, i, i + n)
    token = tokens[i]
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    if (
        token.plain in _TITLES
        and after is not None
        and _NAME.fullmatch(after.raw)
        and after.plain not in _NOT_NAMES | _AND
        and (
            after.raw[0].isupper()
            or after.plain
            not in (
                "is",
                "are",
                "can",
                "will",
                "might",
                "may",
                "has",
                "have",
                "could",
                "would",
                "wants",
                "too",
                "also",
                "for",
            )
        )
    ):
        return _Named(f"{token.raw} {after.raw}", None, i, i + 2, True)
    if (
        not token.raw[0].isupper()
        or not _NAME.fullmatch(token.raw)
        or token.plain in _NOT_NAMES
        or token.plain != token.raw.lower()
    ):
        return None
    if (
        any(
            token.plain in words(role) for role in ("kin", "kins", "guestkin", "notdish", "neutral", "diet", "allergen")
        )
        or known_thing(token.plain)[1] >= 0.5
    ):
        return None
    last = i + 1
    while (
        last < min(i + 3, len(tokens))
        and tokens[last].raw[0].isupper()
        and _NAME.fullmatch(tokens[last].raw)
        and tokens[last].plain not in _NOT_NAMES
    ):
        last += 1
    if token.raw.isupper() and len(token.raw) > 1:
        return None  # in capitals nobody can tell a name
    return _Named(" ".join(t.raw for t in tokens[i:last]), None, i, last)


def read_others(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Answers of named guests, and people to be added; asked about unless they are the writer's own kin by name."""
    tokens, i = sentence.tokens, 0
    while i < len(tokens):
        first = _name_at(sentence, i, context)
        if first is None:
            i += 1
            continue
        named = [first]
        while True:
            j = named[-1].last
            while j < len(tokens) and tokens[j].plain in _AND:
                j += 1
            more = _name_at(sentence, j, context) if j > named[-1].last and j < len(tokens) else None
            if more is None:
                break
            named.append(more)
        end = named[-1].last
        before = i > 0 and tokens[i - 1].plain in ("and", "&", "with", "plus", "+")
        own = before or (end < len(tokens) and tokens[end].plain in _AND)
        found = _said_of(sentence, named, context, own=own)
        if found:
            return found
        if named[0].guest is not None and (found := _pronoun_said(sentence, named[0])):
            return found
        i = end
    return []


_PRONOUN = re.compile(r" (?:,|and|but|so|that) (?:he|she|they)(?= )")


def _pronoun_said(sentence: Sentence, named: _Named) -> list[Intent]:
    """ "Spoke to Pat and she's coming": an answer told of the guest named before."""
    for match in _PRONOUN.finditer(sentence.text, sentence.offset(named.last) - 1):
        rest = sentence.text[match.end() :]
        for answer, pattern in _AFTER:
            if (said := pattern.match(rest)) is not None and named.guest is not None:
                first = sentence.token_range(match)[0]
                last = first + len(f"{match[0]}{said[0]}".split())
                start, end = sentence.span(named.first, last)
                sentence.take(named.first, last)
                return [SetAnswer(named.guest, answer, start=start, end=end, confidence=0.7)]
    return []


_FAMILY = re.compile(r" (?:and|&|\+|plus) (?:the |his |her |their )?(?:family|crew|co|gang|lot|rest)(?= )")
_THEIRS = re.compile(
    rf"(?: (?:after all|too|as well|also|,|for sure))* (?:and|&|with|plus) (?:her|his|their) (?P<kin>{any_of('kin')}|{any_of('kins')}|{any_of('guestkin')})(?= )"
)


def _one_of(kin: str) -> Party:
    group = next(words(role)[kin] for role in ("kin", "kins", "guestkin") if kin in words(role))
    return Party(**(dict.fromkeys(AGE_GROUPS, 0) | {group: 1}))


_DOWN_AS = re.compile(
    r"(?: down| in)?(?: too| also)?(?: as| for)(?: an?| being)? (?P<what>yes|no|maybe|coming|not coming|attending)(?: too| also| as well)*(?= $| ,| and| -| \))"
)
_ANSWER_OF = {"coming": "yes", "attending": "yes", "not coming": "no"}
_PRAISED = re.compile(
    r" (?:best|mean|great|amazing|lovely|always|usually|never|famous|wonderful|fantastic|incredible|nicest|good) "
)
"""What somebody's cooking is said to be, and not what they bring now."""


def _said_of(sentence: Sentence, named: list[_Named], context: ReplyContext, *, own: bool) -> list[Intent]:
    tokens, end = sentence.tokens, named[-1].last
    rest = " " + " ".join(t.plain for t in tokens[end:]) + " "
    if any(not sentence.free(k) for k in range(end, min(end + 2, len(tokens)))):
        return []
    opens = named[0].first == 0 or tokens[named[0].first - 1].plain in (",", "and", "but", "yes", "also", "ok")
    if (family := _FAMILY.match(rest)) is not None:
        end += len(family[0].split())
        rest = rest[family.end() :]
    theirs = _THEIRS.match(rest)
    if theirs is not None and len(named) == 1:
        end += len(theirs[0].split())
        rest = rest[theirs.end() :]
    elif (me := re.match(r" (?:and|&) (?:i|me|myself)(?= )", rest)) is not None:
        rest = rest[me.end() :]  # "Dave and I are coming": the writer's own part is read by the others
    bringing = _BRINGS.match(rest) if opens and all(n.guest is not None for n in named) else None
    if bringing is not None and _PRAISED.search(rest):
        bringing = None
    answer, after = None, end
    put = named[0].first > 0 and tokens[named[0].first - 1].plain in ("put", "mark", "count", "note", "sign", "list")
    if put and (down := _DOWN_AS.match(rest)) is not None:
        answer, after = Answer(_ANSWER_OF.get(down["what"], down["what"])), end + len(down[0].split())
    for kind, pattern in _AFTER:
        if (match := pattern.match(rest)) is not None:
            answer, after = kind, end + len(match[0].split())
            break
    if answer is None and bringing is None:
        return []
    if theirs is None and answer is Answer.YES and len(named) == 1:
        theirs = _THEIRS.match(" " + " ".join(t.plain for t in tokens[after:]) + " ")
        after += len(theirs[0].split()) if theirs is not None else 0
    unknown = [n for n in named if n.guest is None]
    with_me = (
        re.match(r"(?:and|&) (?:i|me|myself) ", " ".join(t.plain for t in tokens[end : end + 2]) + " ") is not None
    )
    if unknown and own and not with_me and not any(n.titled for n in unknown):
        return []  # "me, Tom and the twins are coming" is read elsewhere, or not at all
    start, stop = sentence.span(named[0].first, after)
    found: list[Intent] = []
    for n in named:
        if answer is None:
            continue
        if n.guest is not None:
            found.append(SetAnswer(n.guest, answer, start=start, end=stop, confidence=0.75))
            if theirs is not None and answer is Answer.YES:
                found.append(SetParty(n.guest, _one_of(theirs["kin"]), True, start=start, end=stop, confidence=0.7))
        elif answer is Answer.YES:
            sure = 0.85 if n.titled or with_me else 0.7
            found.append(AddPerson(n.name, Party(), start=start, end=stop, confidence=sure))
            if theirs is not None:
                found.append(
                    AddPerson(
                        f"{n.name}'s {theirs['kin']}", _one_of(theirs["kin"]), start=start, end=stop, confidence=sure
                    )
                )
        else:
            found.append(SetAnswer("", answer, unknown_name=n.name, start=start, end=stop, confidence=0.7))
    if with_me:
        sentence.take(named[0].first, end + 1)
        return found
    sentence.take(named[0].first, after)
    brings = _BRINGS.match(" " + " ".join(t.plain for t in tokens[after:]) + " ")
    if brings is not None and len(named) == 1:
        begin = after + len(brings[0].split())
        for thing in things_at(sentence, begin, len(tokens)):
            if thing.other or thing.vague or thing.known < 0.5:
                continue
            a, b = sentence.span(thing.first, thing.last)
            found.append(
                AddPromise(
                    thing.dish, thing.category, thing.servings, thing.quantity, for_all=thing.for_all,
                    by=named[0].guest or "", by_name=None if named[0].guest else named[0].name, start=a, end=b, confidence=0.7,
                )
            )  # fmt: skip
            sentence.take(after, thing.last)
    return found
