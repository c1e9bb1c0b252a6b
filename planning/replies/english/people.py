"""Who comes with one answer: "3 of us", "me, my wife and the three girls (4, 7 and 9)", "+1", "only two now"."""

# ruff: noqa: E501 - a table of words is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from planning.potluck import AGE_GROUPS, Party
from planning.replies.english import kin
from planning.replies.english.counts import (
    MOST_ALONE,
    Count,
    anew,
    breakdown,
    counts,
    only_group,
    roughly,
    starts_with_plus_me,
    totals,
)
from planning.replies.english.families import family, summed
from planning.replies.english.lexicon import whole_number
from planning.replies.english.lists import Members
from planning.replies.english.named import names_first
from planning.replies.english.nouns import known_thing
from planning.replies.english.parts import division
from planning.replies.english.persons import DETERMINERS, People, noun_at
from planning.replies.english.tally import tallies
from planning.replies.intents import Intent, ReplyContext, SetParty
from planning.replies.text import Sentence, Token

LARGEST = 30
"""A party of more people is asked about (common practice, no source)."""
_MARVELS = ("wow", "omg", "those", "gosh", "whoa")
_FILLER = ("i", "think", "of", "us", "in", "total", "for", "now", "then", "or", "so", "altogether", ",")
_BEFORE = (
    "no",
    "actually",
    "sorry",
    "last",
    "year",
    "time",
    "like",
    ",",
    "the",
    "usual",
    "same",
    "still",
    "just",
    "only",
    "all",
    "about",
    "us",
    "as",
    "always",
)
_EDGES = (",", ":", "-", "(", "yes", "so", "are", "be", "is", "meant", "said", "actually", "it", "now", "bringing", "ok")  # fmt: skip


_ONLY_IF = re.compile(r" (?:if|unless|until|once|in case|depending on|depends on) (?:(?:the|my|our) )?$")


def _only_if(sentence: Sentence, first: int) -> bool:
    """ "A yes unless the baby comes early": whether those at token `first` are only a condition."""
    return _ONLY_IF.search(sentence.text[: sentence.offset(first)]) is not None


def read_people(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """How many come with the writer, or how many more or fewer."""
    count = next(_all_counts(sentence, context), None)
    if count is None:
        more = kin.read_kin(sentence, context)
        at = {t.start: k for k, t in enumerate(sentence.tokens)}
        return [i for i in more if not _only_if(sentence, at.get(i.start, 0))]
    if count.relative and _only_if(sentence, count.first):
        return []
    start, end = sentence.span(count.first, count.last)
    most = roughly(sentence)
    sentence.take(count.first, count.last)
    sure, party = count.confidence, count.party
    if not count.relative and party == Party(party.adults):
        party = _with_the_baby(sentence, count) or party
    if not count.relative and _stranger_follows(sentence.tokens, count.last):
        sure = min(sure, 0.6)
    if most is not None and not count.relative and party == Party(party.adults):
        party = Party(adults=max(most, party.adults))
    if most is not None or (not count.relative and not 0 < count.party.total <= LARGEST):
        sure = min(sure, 0.6 if most is not None else 0.5)
    return [SetParty(context.writer, party, count.relative, start=start, end=end, confidence=sure)]


_SMALL = re.compile(r" (?:the|our|my) (?P<who>baby|newborn|infant|toddler)(?! (?:can|will|is|could) not)(?= )")


def _with_the_baby(sentence: Sentence, count: Count) -> Party | None:
    """ "Three of us but the baby doesn't eat yet": one of a number is small though it is told elsewhere."""
    match = _SMALL.search(sentence.text, sentence.offset(count.last) - 1)
    if match is None or count.party.total < 2:
        return None
    return _divided(count.party, {only_group(match["who"]): 1})


def _stranger_follows(tokens: list[Token], i: int) -> bool:
    """Whether more are counted in a word we do not know ("2 adults, 1 lodger's cousin"): then the sum is in doubt."""
    while i < len(tokens) and tokens[i].plain in (",", "and", "&", "+", "plus"):
        i += 1
    read = whole_number(tokens, i) if i and tokens[i - 1].plain in (",", "and", "&", "+", "plus") else None
    if read is None or read[1] >= len(tokens) or not tokens[read[1]].plain.isalpha():
        return False
    word = tokens[read[1]].plain
    return word not in _NOT_COUNTED and not noun_at(tokens, read[1]) and known_thing(word)[1] < 0.5


_NOT_COUNTED = frozenset(
    (
        "of",
        "is",
        "are",
        "vegan",
        "vegans",
        "vegetarian",
        "vegetarians",
        "celiac",
        "with",
        "can",
        "who",
        "more",
        "times",
        "will",
        "has",
        "for",
        "x",
        "am",
        "pm",
        "minutes",
        "min",
        "mins",
        "hours",
    )
)


def _all_counts(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    yield from names_first(sentence, context)
    yield from anew(sentence, context)
    for count in _list_with_me(sentence, context):
        n = summed(sentence)
        if n >= count.party.total and count.confidence < 0.9:  # "me and the lads, so 4"
            yield replace(count, last=len(sentence.tokens), party=Party(adults=n), confidence=0.88)
        yield count
    for first, last, party, relative, sure in tallies(sentence, context):
        yield Count(first, last, party, relative, sure)
    yield from _known_divided(sentence, context)
    for count in _list_alone(sentence, context):
        total = next((t for t in totals(sentence, context) if not t.relative), None)
        parted = total is not None and total.first < count.first and total.party.total >= count.party.total
        yield total if total is not None and parted else count  # "party of 5, 1 girl and a teen"
    yield from _bare_number(sentence, context)
    yield from counts(sentence, context)


def _list_with_me(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    """ "Me, my wife and the three girls (4, 7 and 9)"; "my husband and I"."""
    tokens, members = sentence.tokens, Members(sentence)
    for i in range(len(tokens)):
        if not sentence.free(i) or (i and tokens[i - 1].plain in DETERMINERS):
            continue
        following = tokens[i + 1].plain if i + 1 < len(tokens) else ""
        if i == 0 and tokens[0].plain in ("yes", "in", "coming") and following in ("+", "plus", "&", "and") and (also := members.at(2)) is not None and not also.me and also.kin:
            also.add("adults", 1)  # "yep + hubby + 2 kiddos"
            yield Count(0, also.last, also.party(), False, 0.6 if also.unknown_number else 0.88)
        own = tokens[i].plain in ("me", "i", "myself", "us", "we") or (tokens[i].plain == "both" and following == "of")
        if own and starts_with_plus_me(sentence, i):
            return
        if tokens[i].plain == "i" and following not in ("and", "&", "+", ",", "plus"):
            continue
        found = members.at(i) if own or tokens[i].plain in DETERMINERS else None
        if found is None or not found.me or not _told(found, tokens[i]):
            continue
        if tokens[found.last - 1].plain == "i" and found.last < len(tokens) and not own and not found.kin:
            continue
        for k in range(found.last, len(tokens) - 1):
            if tokens[k].plain in ("with", "bringing") and (more := members.at(k + 1)) is not None and not more.me:
                found.merge(more)
                sentence.take(k, more.last)
                break
        before = i > 2 and tokens[i - 1].plain in (",", "and", "&") and tokens[i - 2].raw[:1].isupper()
        stated = any((n := whole_number(tokens, k)) is not None and n[0] == found.total for k in range(i))
        if found.unknown_number and context.party is not None and not found.names and (own_kids := context.party.children + context.party.toddlers + context.party.teens + context.party.infants):
            told = Party(found.counts.get("adults", 0), context.party.teens, context.party.children, context.party.toddlers, context.party.infants)
            if own_kids and found.counts.get("children") and set(found.counts) <= {"adults", "children"}:
                yield Count(i, found.last, told, False, 0.88)  # "just me and the kids": how many they are is known
        doubt = found.unknown_number or before or _name_follows(tokens, found) or (found.names and not stated)
        yield Count(i, found.last, found.party(), False, 0.6 if doubt else 0.95)


def _told(found: People, first: Token) -> bool:
    """Whether it is a list: others beside the writer, "us two", or "me, myself and I"."""
    if found.again and found.items == 1 and not found.names:
        return True
    return found.total > 1 and (found.items - found.names > 1 or first.plain in ("us", "we"))


def _name_follows(tokens: list[Token], found: People) -> bool:
    """Whether somebody we can't tell follows ("me, Tom and the twins")."""
    following = [t for t in tokens[found.last : found.last + 2] if t.plain in (",", "and", "&")]
    if not following or found.last + 1 >= len(tokens):
        return False
    return tokens[found.last + 1].raw[:1].isupper() and tokens[found.last + 1].plain not in ("i",)


def _list_alone(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    """ "2 adults and a baby (8 months)"."""
    tokens, members = sentence.tokens, Members(sentence)
    for i in range(len(tokens)):
        if not sentence.free(i) or not (i == 0 or tokens[i - 1].plain in _EDGES or not sentence.free(i - 1)):
            continue
        found = members.at(i)
        if found is None or found.me or not found.total or not _counted(tokens, found) or _marvels(tokens):
            continue
        if not _whole(sentence, found):
            continue
        alone = i == 0 and found.last == len(tokens) and not found.unknown_number
        if context.addressed and alone and not found.counts.get("adults"):
            yield Count(i, found.last, found.party(), True, 0.6)  # "3 kids (one's a toddler)": beside the writer
        if not (found.bare or found.items > 1 or context.asked == "people"):
            continue
        if tokens[found.last : found.last + 1] and tokens[found.last].plain == "more":
            continue
        yield Count(i, found.last, found.party(), False, 0.9 if context.addressed and not found.unknown_number else 0.6)


def _marvels(tokens: list[Token]) -> bool:
    """Whether somebody wonders at the people ("wow, 5 kids", "that family of 7")."""
    following = tokens[1].plain if len(tokens) > 1 else ""
    return tokens[0].plain in _MARVELS or (
        tokens[0].plain == "that" and (noun_at(tokens, 1) or following in ("family", "lot", "crowd", "many"))
    )


def _counted(tokens: list[Token], found: People) -> bool:
    """Whether the list begins with a number or "a", as one counts one's own people ("2 adults and a baby")."""
    return whole_number(tokens, found.first) is not None or tokens[found.first].plain in ("a", "an", "one", "both")


def _whole(sentence: Sentence, found: People) -> bool:
    """Whether the list of people is all there is up to a pause."""
    ends = (",", "coming", "-", "(", "for", "total", "from", "attending", "joining", "please")
    return (
        found.last >= len(sentence.tokens) or sentence.tokens[found.last].plain in ends or not sentence.free(found.last)
    )


def _bare_number(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    """ "4", "4, one's 3", "3 and the baby": sure only below the question how many."""
    tokens, asked = sentence.tokens, context.asked == "people"
    lead = next((k for k, t in enumerate(tokens) if t.plain not in _BEFORE), 0)
    bare = whole_number(tokens, lead)
    if lead and bare is not None and asked and bare[1] == len(tokens):
        yield Count(0, bare[1], Party(adults=bare[0]), False, 0.9)  # "the usual 4"
    if asked and (most := roughly(sentence)) is not None:
        yield Count(0, len(tokens), Party(adults=most), False, 0.6)
    if (named := family(tokens)) is not None and context.addressed:
        yield Count(named[1], named[2], Party(adults=named[0]), False, 0.85 if asked else 0.75)
    if context.replying_to == "board" and (alone := _alone(sentence)) is not None:
        yield alone
    bare = whole_number(tokens, 0)
    if bare is None or not 0 < bare[0] <= 200 or not sentence.free(0) or not context.addressed:
        return
    rest = [t.plain for t in tokens[bare[1] :]]
    if len(rest) == 2 and rest[0] in ("+", "plus") and (kids := whole_number(tokens, bare[1] + 1)) is not None:
        yield Count(
            0, len(tokens), Party(bare[0], 0, kids[0]), False, 0.6
        )  # "2+2": so many big ones, so many small ones
    comma = rest[:1] == [","] and rest[1:2] in (["plus"], ["and"], ["+"])
    if asked and rest[:1] and (comma or rest[0] in ("+", "plus", "and", "&")):
        more = Members(sentence).at(bare[1] + 1 + comma)
        if more is not None and not more.me and more.last == len(tokens):
            more.add("adults", bare[0])
            yield Count(0, len(tokens), more.party(), False, 0.85)
    if context.asked is None and bare[0] <= MOST_ALONE and _NOW.match(" ".join(rest)):
        yield Count(0, len(tokens), Party(adults=bare[0]), False, 0.9 if context.party is not None else 0.82)
    alone_first = rest[:1] == [","] and context.asked is None and bare[0] <= MOST_ALONE and not context.own_promises
    if alone_first and whole_number(tokens, bare[1] + 1) is None and things_follow(sentence, bare[1] + 1):
        yield Count(0, bare[1], Party(adults=bare[0]), False, 0.85)  # "3, peanut noodles"
    if all(w in _FILLER for w in rest):
        if "us" not in rest and context.asked is None and bare[0] <= LARGEST:
            yield Count(0, len(tokens), Party(adults=bare[0]), False, 0.6)
        if asked:
            yield Count(0, len(tokens), Party(adults=bare[0]), False, 0.93)
    party, end = breakdown(sentence, bare[0], bare[1])
    if party is not None:
        yield Count(0, end, party, False, 0.9 if asked else 0.75)


_NOW = re.compile(r"(?:of us )?(?:now|then|instead|after all|in the end|actually|sorry|not [0-9]+|i mean|i meant)(?: (?:now|then|instead|sorry|,|i mean|please))*$")
""" "7 now", "3 instead"."""
_COMING = frozenset(("yes", "coming", "in", "there", "sure", "yup", "attending", "joining", "definitely"))


def _alone(sentence: Sentence) -> Count | None:
    """ "Coming, 2, apple pie": a number by itself behind the answer."""
    tokens = sentence.tokens
    for i in range(1, len(tokens)):
        read = whole_number(tokens, i)
        if read is None or not 0 < read[0] <= MOST_ALONE or tokens[i].plain in ("a", "an"):
            continue
        joint = tokens[i - 1].plain in (",", "x", "-", ":")
        answered = tokens[i - 1 - joint].plain in _COMING and (i - 1 - joint == 0 or tokens[i - 2 - joint].plain in (",", "we", "i", "am", "are", "count", "us", "me", "definitely", "all", "yes"))
        ends = read[1] >= len(tokens) or tokens[read[1]].plain in (",", "-", "+", "and")
        if answered and ends and (joint or read[1] >= len(tokens) or tokens[read[1]].plain == ","):
            return Count(i, read[1], Party(adults=read[0]), False, 0.88)
    return None


def things_follow(sentence: Sentence, i: int) -> bool:
    """Whether what begins at token `i` names something for the table."""
    plain = [t.plain for t in sentence.tokens[i : i + 4]]
    return any(known_thing(" ".join(plain[:n]))[1] >= 0.9 for n in (4, 3, 2, 1) if len(plain) >= n)


def _known_divided(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    """ "One of the five is a 2 year old": what the known party is made of."""
    parts = division(sentence.tokens, 0, loose=True) if context.party is not None and context.addressed else None
    if parts is None or context.party is None or parts[1] != len(sentence.tokens):
        return
    party = _divided(context.party, parts[0])
    if party is not None:
        yield Count(0, parts[1], party, False, 0.75)


def _divided(party: Party, parts: dict[str, int]) -> Party | None:
    """The party with `parts` moved out of the adults, or else out of the children; None when it has not so many."""
    n = sum(parts.values())
    group = next((g for g in ("adults", "children") if getattr(party, g) >= n), None)
    if group is None or n >= party.total:
        return None
    return Party(**{g: getattr(party, g) + parts.get(g, 0) - (n if g == group else 0) for g in AGE_GROUPS})


def divide_last(sentence: Sentence, before: list[Intent]) -> bool:
    """ "Six of us. Two of them are under 3.": a sentence that only divides the party of the one before it."""
    at = next((k for k in reversed(range(len(before))) if isinstance(before[k], SetParty)), None)
    parts = division(sentence.tokens, 0, loose=True) if at is not None else None
    if at is None or parts is None or parts[1] != len(sentence.tokens):
        return False
    told = before[at]
    assert isinstance(told, SetParty)
    party = None if told.relative else _divided(told.party, parts[0])
    if party is None:
        return False
    before[at] = replace(told, party=party, end=sentence.tokens[-1].end)
    return True


def read_party(text: str) -> Party | None:
    """A party in words by itself: "2 adults and 1 child", "3", "me and the kids (4, 7)"; None when it is none."""
    from planning.replies.english import message_of

    message = message_of(text[:200])
    if len(message.sentences) != 1:
        return None
    sentence = message.sentences[0]
    read = whole_number(sentence.tokens, 0)
    if read is not None and read[1] == len(sentence.tokens):
        return Party(adults=read[0]) if 0 < read[0] <= 500 else None
    found = Members(sentence).at(0)
    if found is not None and found.last == len(sentence.tokens) and found.total and not found.unknown_number:
        return found.party()
    context = ReplyContext("", replying_to="question:people")
    for intent in read_people(sentence, context):
        if isinstance(intent, SetParty) and not intent.relative and intent.confidence >= 0.8:
            return intent.party
    return None
