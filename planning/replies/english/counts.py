"""Numbers of people: "4 of us", "we're six", "party of 3", "make that 5", "one more", "+1", "just me"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from planning.potluck import AGE_GROUPS, Party
from planning.replies.english.lexicon import NUMBER, number_of, whole_number
from planning.replies.english.lists import Members
from planning.replies.english.parts import division
from planning.replies.english.persons import noun_at
from planning.replies.intents import ReplyContext
from planning.replies.text import Sentence

N = rf"(?:half a dozen|an? dozen|two dozen|{NUMBER})"
_OF_US = re.compile(
    rf" (?:(?:the |all |just |only |both |about )*)(?P<n>{N}|both|couple|pair) of (?:us|our lot)\b(?: (?:in total|altogether|all together|coming|now))?"
)
_WE_ARE = re.compile(
    rf" (?:we (?:are|will be|would be)|there (?:are|will be|is)|it (?:is|will be)|that (?:is|makes|will be|would be)|make (?:that|it|us)|makes it|now|only|just|so|will be|coming with|down to|up to|party of|family of|group of|total of|table of|all|for)"
    rf"(?: (?:just|only|now|actually|still|all|about|in total|a|bringing|going to be|coming|the|us|party of|family of|group of|total of|down to|up to))*"
    rf" (?P<n>{N})(?: (?:of us|people|persons|in all|in total|altogether|total|now|adults|grown-ups|guests|instead|heads|after all|coming))*(?= \x00| $| ,| \(| and| for| including| plus| \+| in| -| with| incl| but| not| because| as| since| so| at| (?:my|our|his|her|i|we|it|they|he|she|just) )"
)
_SEATS = re.compile(
    rf" (?P<n>{N}) (?:seats?|places?|spots?|chairs?) (?:for (?:us|me)|please|at the table|from us|reserved)(?: please)?(?= $| ,| and)"
)
_GROWN = re.compile(
    rf" (?:grown|gone up|gone down|up|down|shrunk|increased|us down|us up|now at|(?:drop|cut|take|bring|bump|push|raise|lower|reduce|knock|trim|move|switch) (?:us|me|it|our number|our party)(?: down| up)?) to (?:be )?(?:a )?(?P<n>{N})(?: of us| people| now)*(?= $| ,| -| as | because| since| (?:my|our|i|we|it) )"
)
_OF_SO_MANY = re.compile(
    rf" (?:(?:just|only|about) )?(?P<n>{N}|all)(?: out)? of (?:(?:the|our) {N}(?: of us)?|us {N}|(?:the )?{N} of us)(?! (?:can|will|could|is|are|has|have) not)(?= )"
)
"""So many of the writer's own come ("3 of the 4 of us can make it")."""
_WE_ALL = re.compile(
    rf" (?:(?:we|us)(?: (?:will|are|can|would|all|both|be|come|coming|in|as|with))* (?P<n>{N})(?: of us)?(?: (?:will|are|can|all))*) (?:be there|be here|come|coming|make it|join|in|persons?|people)(?= $| ,| and| with| too| for)"
)
_TABLE = re.compile(rf" (?:table|room|space|places?|seats?|spots?) for (?P<n>{N})(?: of us| people)?(?= $| ,| please)")
_WE_OF = re.compile(
    rf" (?:we are|we will be|make (?:it|us)|it is)(?: (?:only|just|now|down to))* (?P<n>{N}) (?:out )?of (?:the )?{N}(?= $| ,| now)"
)
_FAMILY = re.compile(
    rf" (?:a |the |our )?(?:party|family|group|total|lot|crew|gang|household|bunch|tribe) of (?P<n>{N})\b(?! (?:years|bags|boxes))"
)
_GANG = re.compile(
    rf"(?:^|(?<= ,)) (?:(?:it is|all of us|yes|ok|bringing|coming) ?,? )*(?:the |my |our )?(?:whole |entire |full )?(?:gang|family|crew|lot|clan|tribe|house|household)(?: (?:is|are|makes|will be))?(?: ,| :| -| of)? (?:of )?(?P<n>{N})(?: (?:of us|people|in total|in all|altogether))*(?= $| ,| \()"
)
_HEADCOUNT = re.compile(
    rf" (?:our |my |total |the )?(?:head ?count|pax|party size|attendees|number of (?:people|guests|attendees|us)|how many|(?<=^ )(?:people|guests|adults|number|total|persons))(?: (?:is|of|now|will be|stands at|at|for us|goes to|becomes|from (?:me|us)|:|,|-))* (?P<n>{N})(?: (?:people|adults|of us|in total|total|please|now))*(?= $| ,)"
)
_BY = re.compile(
    rf" (?:down|up|increase|decrease|reduce(?:d)?|minus|plus|raise(?:d)?|lower(?:ed)?|drop(?:ped)?|less|fewer)(?: (?:us|me|it|our (?:number|party|count)|head ?count))?(?: now)? by (?P<n>{N})(?: (?P<who>kids?|children|child|adults?|people|person))?(?= $| ,)"
)
_FROM_US = re.compile(
    rf" (?:count|put|reckon|expect|make it|have|that is|it is|say|we are|and)(?: down)? (?P<n>{N}) (?:from|for) (?:us|our (?:side|house|lot|end))(?= $| ,| \(| and)"
)
_ALTOGETHER = re.compile(
    rf" (?P<n>{N})(?: of us| people| heads)? (?:altogether|in total|in all|all in all|all told|total)(?= $| ,| \(| and)"
)
_MAYBES = re.compile(rf" (?P<n>{N}|both) (?:maybes?|possibles?|(?:of us )?if (?:so|we (?:do|can|come|make it)))(?= $| ,)")
_ABSENT = re.compile(
    r"^ (?:(?:dropped|pulled|bowed|backed) out|bailed|cancelled|(?:has|have) (?:had to )?(?:dropped out|drop out|cancelled|pulled out|cancel)|(?:is|are) (?:out|not coming)|can not|will not|is not|are not|has to|have to|had to|is ill|are ill|is sick|are sick)\b"
)
_INSTEAD = re.compile(
    rf"^ (?:now |it is |we are |make it )*(?P<n>{N}) (?:people )?(?:instead of|rather than|not) {N}(?= $| ,| now)"
)
_SO_N = re.compile(rf" (?:so|now|leaves|leaving|makes)(?: (?:just|only|now|it is|we are|that leaves|us|with|down to))* (?P<n>{NUMBER})(?: (?:of us|now|people|then))*(?= $)")
_FEWER = re.compile(
    rf" (?:minus|less) (?P<n>{NUMBER})(?: (?P<who>kids?|children|child|adults?|people|person))?(?: (?:from|of|for) us)?(?= $| ,)"
)
_PLUS = re.compile(
    rf" (?:(?P<me>me|i|myself|yes|coming|in) )?(?:(?:and|with|bringing|a|my|have|will bring|have got) )*(?:\+|plus)[ -]?(?P<n>{NUMBER})(?! ?/)(?: (?P<who>kids?|children|child|adults?|people|guests?|friends?|toddlers?|teens?|teenagers?|bab(?:y|ies)))?(?= $| ,| for| and| coming| please| \(| \x00| as| now| too| after all)"
)
_COMING_N = re.compile(
    rf"(?:^|(?<= ,)) (?P<n>{N}) (?:coming|attending|joining|from us|from our side|for us|from our house)(?= $| ,| and| with| \()"
)
_FOR_US = re.compile(
    rf" (?:(?:put|count|sign|mark|note|book|have) (?:me|us) (?:down |in )?(?:for|as|at|with|in as|down as)|count on (?:me|us) (?:being|to be|as)|change (?:us|me|it) to|make (?:us|it|that)|can you make (?:it|that|us)|(?:yes|coming|in|on|count|reserve|confirm|confirmed|confirming) (?:for|x))(?= |) ?(?:x|for|us)? ?(?P<n>{N})(?: of us| people)?(?= $| ,|!| instead| now| then| please| and | with )"
)
_JUST_ME = re.compile(
    r" (?:(?:it is|it will be|will be|only|am coming|i will be|i am|coming) )*(?<!not )(?:just|only) (?:going to be |gonna be |be |down to )?(?P<who>me|myself|yours truly|(?:little |good |plain |poor )*(?:old |ol )?me(?: dear| myself)?|one|us|us two|the two of us|we two)(?= $| ,| this| and| now| for| coming| then| after| tonight| though| please| sadly| again| i am afraid| sorry| from| with| but| so| and(?: i am| also| no)| -)|^ (?:me|myself) (?:only|alone)(?= $| ,)|\b(?:alone|(?:flying |going |coming )?solo|on my own|by myself|solo|only i (?:can|will|am|could))\b"
)
MORE = re.compile(
    rf" (?:(?:and|make that|add|plus|so|then|need|will need|it is|that is|leaves|minus|there is|there are|we have|we are|i have|will be|so|actually|with|bringing|can i add|also) )*(?P<n>an?|{NUMBER}|another|a couple)(?: (?P<extra>more|extra|additional|fewer|less))?"
    rf"(?: (?P<who>person|people|adults?|grown-ups?|kids?|child|children|teens?|teenagers?|toddlers?|bab(?:y|ies)|guests?|mouths?|of us|seats?|chairs?|places?|spots?|heads?|covers?|settings?))?(?P<extra2> more| extra| less| fewer)?(?: to feed| for us| coming| from (?:us|our side)| with us| joining us| joining| coming along| on our side| now| than before| than i said| then)*(?= $| ,| and| -)"
)
_GROUP_ONLY = re.compile(
    rf"(?: (?:only|just|so|it is|it will be|there (?:is|are|will be)|we have|now|make it|make that|will be|with|meant|mean|said|actually|sorry|no|be|wait)|^(?= [a-z0-9]+ [a-z]+ (?:instead of|not|rather than) [a-z0-9]+ )|^(?= no [a-z]+ (?:after all|now|this time|any ?more|instead))) (?P<n>{NUMBER}|no) (?P<who>kids?|child|children|adults?|grown-ups?|teens?|teenagers?|toddlers?|bab(?:y|ies)|infants?)(?: (?P<now>after all|now|instead|then|this time|any ?more|not {NUMBER}|instead of {NUMBER}|rather than {NUMBER}))*(?= $| ,| -| because| as | since)"
)
_ROUGHLY = re.compile(
    rf" (?:between {N} (?:and|to) {N}|{N} ?(?:or|to|-|/|maybe|possibly|perhaps|if not|, maybe|, possibly|, perhaps|maybe even) (?:maybe |possibly |perhaps |even )?{N}|{N} ?-? ?ish|(?:couple|two|few|some|bunch|lot|loads) of us , (?:maybe|possibly|perhaps) {N})(?= |$)"
)
_BY_SO_MANY = re.compile(
    rf"^ (?:(?:ok|so|sorry|actually|update|hey|hi|please|also|and|,|:|make that|can you|could you|you can) )*(?:(?:the )?(?:head ?count|numbers?|party|count|we are|we go|go|that is|knock|take|put) )*(?:(?:us|me) )*(?P<how>up|down|add|\+|plus|minus|less|count|drop|remove)(?: by)? (?P<n>an?|{NUMBER})(?: (?P<how2>more|extra|less|fewer))?(?: (?P<who>person|people|adults?|kids?|child|children|teens?|toddlers?|bab(?:y|ies)))?(?: (?:for us|from us|from our side|of us|now|then|on our side|to (?:our|my) (?:party|count|number|lot)))*(?= $| ,| - )"
)
"""By how many a known party grows or shrinks ("headcount down by one", "add one", "count one less")."""
_CHANGED_TO = re.compile(
    rf"^ (?:(?:ok|so|oh|hi|hey|well|also|and|wait|update|sorry|actually|correction|oops|no|nope|scratch that|turns out|,|:|-|=) )*(?:(?P<mark>(?:head ?count|numbers?)(?: is| now| :)*|(?:i |we )?(?:meant|mean|said|should have said)(?: to say)?|(?:it |that )?should (?:be|say|have been)|not {NUMBER} ?,?(?: but)?|no longer {NUMBER} ?,?(?: but)?|now|it is now|we are now|{NUMBER} (?:to|->|→)|change(?:d)? to|up to|down to) ?,? ?)*(?P<n>{NUMBER})(?P<now>(?: (?:now|then|instead|after all|actually|in the end|not {NUMBER}|instead of {NUMBER}|rather than {NUMBER}|of us|people|adults|in total|total))*)(?= $| ,| -| because | as | since | cause )"
)
"""What a known party is now ("actually 3, my mom too", "2 now", "sorry, meant 4", "not 3, 4")."""
_GROUP_WORD = {"kid": "children", "chi": "children", "adu": "adults", "peo": "adults", "per": "adults", "gue": "adults",
               "fri": "adults", "tod": "toddlers", "tee": "teens", "bab": "infants", "inf": "infants", "new": "infants", "gro": "adults", "mou": "adults", "of ": "adults"}  # fmt: skip


@dataclass(frozen=True)
class Count:
    """People counted from token `first` up to `last`; `relative`: so many more (or fewer)."""

    first: int
    last: int
    party: Party
    relative: bool
    confidence: float


def only_group(word: str | None) -> str:
    """The age group a word for persons means ("kids": children)."""
    return _GROUP_WORD.get((word or "people")[:3], "adults")


def only(group: str, n: int) -> Party:
    """A party of that age group alone; negative: fewer of them."""
    return Party(**(dict.fromkeys(AGE_GROUPS, 0) | {group: n}))


MOST_ALONE = 12
"""A larger number by itself counts things rather than people (common practice, no source)."""


_IF_ANY = re.compile(r" if there (?:is|are|was|were) (?:one|any|some|more|two)(?= $| ,)")


def sure_total(n: int) -> float:
    return 0.95 if 0 < n <= 30 else 0.5


def roughly(sentence: Sentence) -> int | None:
    """The largest number when it is left open ("4 or 5 of us", "5ish", "between 4 and 6")."""
    match = _ROUGHLY.search(sentence.text)
    return max(map(number_of, re.findall(rf"{N}|couple", match[0]))) if match is not None else None


_LEADS_ON = ("here", "altogether", "(", ",", "including", "incl", "counting", "-", "–", "—", ":", "with", "and", "so", "that", "is", "being", "namely")  # fmt: skip


def breakdown(sentence: Sentence, total: int, after: int) -> tuple[Party | None, int]:
    """ "(2 adults, 1 kid)", "including two kids", ", one baby", ": me, Taro and two kids" after a total: how it
    divides, and where that ends. Persons not told about are adults; a list that comes to more is no part of it."""
    tokens = sentence.tokens
    i = after
    while i < len(tokens) and tokens[i].plain in _LEADS_ON:
        i += 1
    if i == after:
        return None, after
    members = Members(sentence)
    listed = members.at(i)
    if listed is not None and listed.items == 1 and members.told_of(listed.last):
        parts = division(tokens, after, loose=True)  # "five, the youngest is 2"
        if parts is not None and sum(parts[0].values()) < total:
            return _with_rest(parts[0], total), parts[1]
        return None, after  # "4 of us, my daughter has a nut allergy"
    if listed is not None and listed.me and listed.total == total and not listed.unknown_number:
        return listed.party(), listed.last + (listed.last < len(tokens) and tokens[listed.last].plain == ")")
    if listed is None or listed.me or listed.total > total or listed.unknown_number or not sentence.free(i):
        parts = division(tokens, after, loose=True)
        if parts is None or sum(parts[0].values()) > total:
            return None, after
        return _with_rest(parts[0], total), parts[1]
    last = listed.last
    if last < len(tokens) and tokens[last].plain == ")":
        last += 1
    parts = division(tokens, after, loose=True)
    if parts is not None and parts[1] > last and sum(parts[0].values()) <= total:
        return _with_rest(parts[0], total), parts[1]
    return _with_rest(listed.counts, total), last


def _with_rest(parts: dict[str, int], total: int) -> Party:
    counts = dict(parts)
    counts["adults"] = counts.get("adults", 0) + total - sum(parts.values())
    return Party(**{g: counts.get(g, 0) for g in AGE_GROUPS})


def _value(word: str) -> int:
    return 2 if word in ("both", "couple", "pair") else number_of(word)


_NO_LONGER = re.compile(
    rf" (?:there )?(?:were|was|will not be|are not|is not|not|no longer|said|thought|meant to be) (?:[a-z]+ )??{N}\b.* (?:so|now|make it|it is|that is|we are|we will be|leaves|only|but) (?:now |it is |only |just |we are |that is |make it |make that |to )*(?P<n>{N})(?: (?:of us|people|now|then|please))*(?= $)"
)
"""A number that was, and then the one that is ("there were 4 of us but Lou is ill, so 3")."""


def counts(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    """The count in a sentence, by the first rule that reads one; nothing when none does."""
    yield from totals(sentence, context)
    yield from _changes(sentence, context)


def _total(sentence: Sentence, match: re.Match[str], confidence: float | None = None) -> Count:
    """A total with what divides it after it."""
    n = _value(match["n"])
    first, last = sentence.token_range(match)
    listed = Members(sentence).at(sentence.token_range(match, "n")[0])
    if (
        listed is not None and not listed.me and not listed.unknown_number and listed.total >= n and listed.last >= last
        and (listed.items > 1 or listed.counts.get("adults", 0) < n)
    ):  # fmt: skip
        return Count(first, listed.last, listed.party(), False, sure_total(n))  # "that's 2 adults plus 2 littles"
    party, end = breakdown(sentence, n, last)
    sure = sure_total(n) if confidence is None else confidence
    return Count(first, end, party or Party(adults=n), False, sure if n else 0.5)


def _an_age(sentence: Sentence, match: re.Match[str]) -> bool:
    """Whether the number stands behind a person and a comma ("3 boys, 5, 11, 15 coming")."""
    at = sentence.token_range(match, "n")[0]
    if at < 2 or sentence.tokens[at - 1].plain != ",":
        return False
    return noun_at(sentence.tokens, at - 2) or whole_number(sentence.tokens, at - 2) is not None


def totals(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    """How many there are in all ("4 of us", "party of 5, one a baby")."""
    left = sentence.left
    if " makes two of us " in left:
        return  # "so it is with me"
    yield from anew(sentence, context)
    if context.addressed and (now := _NO_LONGER.search(left)) is not None:
        yield Count(*sentence.token_range(now), Party(adults=number_of(now["n"])), False, 0.85)
    if (fewer := _FEWER.search(left)) is not None:
        yield Count(*sentence.token_range(fewer), only(only_group(fewer["who"]), -number_of(fewer["n"])), True, 0.85)
    if context.addressed and not context.own_promises and (by := _BY.search(left)) is not None:
        n = number_of(by["n"])
        less = re.match(r" (?:down|decrease|reduce|minus|lower|drop|less|fewer)", by[0]) is not None
        yield Count(*sentence.token_range(by), only(only_group(by["who"]), -n if less else n), True, 0.88)
    if context.addressed:
        for pattern, sure in (
            (_OF_SO_MANY, 0.9),
            (_WE_ALL, 0.9),
            (_WE_OF, 0.88),
            (_TABLE, 0.75),
            (_INSTEAD, 0.85),
            (_FOR_US, 0.85),
            (_FROM_US, 0.9),
            (_HEADCOUNT, 0.9),
            (_SEATS, 0.88),
            (_GROWN, 0.9),
            (_COMING_N, 0.9),
            (_GANG, 0.88),
            (_ALTOGETHER, 0.88),
            (_MAYBES, 0.88),
        ):
            if (match := pattern.search(left)) is not None and not _an_age(sentence, match):
                yield _total(sentence, match, sure)
    left = _IF_ANY.sub(lambda m: " " * len(m[0]), left)
    match = _OF_US.search(left)
    if match is not None and _ABSENT.match(left[match.end() :]) and (so := _SO_N.search(left)) is not None:
        yield Count(*sentence.token_range(so), Party(adults=number_of(so["n"])), False, 0.88)  # "one of us has to work, so 3"
    if match is not None and _ABSENT.match(left[match.end() :]):
        yield Count(*sentence.token_range(match), only("adults", -_value(match["n"])), True, 0.7)
    if match is not None and match["n"] in ("one", "1") and not re.search(r"(?:just|only) ", match[0]):
        match = None  # "one of us is vegan" counts nobody
    if (grouped := _group_set(sentence, context)) is not None:
        yield grouped
    if match is not None:
        yield _total(sentence, match)
    for pattern in (_FAMILY, _WE_ARE):
        match = pattern.search(left)
        if match is not None and (pattern is _FAMILY or _about_people(match, context)):
            yield _total(sentence, match)


def _group_set(sentence: Sentence, context: ReplyContext) -> Count | None:
    """ "Only 1 kid after all", "2 kids, not 1": one age group of a known party gets another number."""
    if context.party is None or (match := _GROUP_ONLY.search(sentence.left)) is None:
        return None
    group, n = only_group(match["who"]), 0 if match["n"] == "no" else number_of(match["n"])
    if group == "adults" or (match["now"] is None and not match[0].startswith((" only", " just", " no"))):
        return None
    party = {g: getattr(context.party, g) for g in AGE_GROUPS} | {group: n}
    return Count(*sentence.token_range(match), Party(**party), False, 0.85)


def anew(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    """What a party we know of is now, or by how much it changed."""
    if context.party is None or not context.addressed or context.asked not in (None, "people"):
        return
    left = sentence.left
    if (match := _BY_SO_MANY.match(left)) is not None:
        n = 1 if match["n"] in ("a", "an") else number_of(match["n"])
        less = match["how"] in ("down", "minus", "less", "drop", "remove") or match["how2"] in ("less", "fewer")
        plain = match["how"] in ("up", "down", "minus", "less") or match["how2"] or match["who"] or match["how"] in ("add", "+", "plus")
        if plain and 0 < n <= 6 and n < context.party.total + (not less) * 99:
            group = only_group(match["who"]) if match["who"] else _likely(context.party, less)
            sure = 0.9 if match["who"] or not less or context.party.adults == context.party.total else 0.7
            yield Count(*sentence.token_range(match), only(group, -n if less else n), True, sure)
    match = _CHANGED_TO.match(left)
    if match is None or not 0 < (n := number_of(match["n"])) <= 12:
        return
    rest = left[match.end() :]
    marked = match["mark"] or match["now"].strip() or re.match(r" (?:actually|turns out|correction|no ,?|nope|sorry|oops|scratch)", left)
    told = _WHY.search(rest) is not None
    if marked and (told or not rest.strip(" ")) and not (context.own_promises and not told and not re.search(r"of us|people|adults|head", match[0])):
        yield Count(*sentence.token_range(match), Party(adults=n), False, 0.88)


def _likely(known: Party, less: bool) -> str:
    return "adults" if known.adults > 1 or not less else "children"


_WHY = re.compile(
    r" (?:too|as well|also|com(?:es?|ing)|joins?|joining|wants?|along|sick|ill|poorly|away|not|work|working|has|have|stays?|staying|home|free|in town|dropped|bailed|cancelled|instead|visiting|plus|and|with) "
)
"""Why it is another number: somebody comes too, or stays away."""


def _changes(sentence: Sentence, context: ReplyContext) -> Iterator[Count]:
    left = sentence.left
    if (match := _PLUS.search(left)) is not None:
        n, group = number_of(match["n"]), only_group(match["who"])
        first, last = sentence.token_range(match)
        if match["me"] in ("me", "i", "myself"):
            both = {"adults": 1}
            both[group] = both.get(group, 0) + n
            yield Count(first, last, Party(**{g: both.get(g, 0) for g in AGE_GROUPS}), False, sure_total(n))
        yield Count(first, last, only(group, n), True, 0.92 if n <= 6 else 0.5)
    if (match := _JUST_ME.search(left)) is not None and (match["who"] != "us" or "two" in match[0]):
        two = "two" in match[0] or match["who"] == "us"
        yield Count(*sentence.token_range(match), Party(2 if two else 1), False, 0.93)
    match = MORE.search(left)
    if (
        match is not None
        and (match["extra"] or match["extra2"] or (match["n"] == "another" and match["who"]))
        and context.addressed
    ):
        n = 1 if match["n"] in ("a", "an", "another") else 2 if match["n"] == "a couple" else number_of(match["n"])
        less = (match["extra"] or match["extra2"] or "").strip() in ("fewer", "less")
        yield Count(
            *sentence.token_range(match),
            only(only_group(match["who"]), -n if less else n),
            True,
            0.9 if n <= 6 else 0.5,
        )


def starts_with_plus_me(sentence: Sentence, i: int) -> bool:
    """Whether "me + 1" stands at token `i`: a count, and no list."""
    match = _PLUS.match(sentence.left, sentence.offset(i) - 1)
    return match is not None and bool(match["me"])


def _about_people(match: re.Match[str], context: ReplyContext) -> bool:
    """Whether "make that 30", "for 4", "only two" counts people and not servings or something else."""
    text = match[0]
    if text.startswith(" for "):
        return False
    if re.search(
        r"of us|people|persons|adults|grown-ups|we (?:are|will be)|guests|heads|party|family|coming|make us", text
    ):
        return True
    if re.search(r"make (?:that|it)", text):
        return context.asked in (None, "people") and not context.own_promises and number_of(match["n"]) <= 12
    if re.search(r" (?:that|it) (?:is|makes) ", text):
        return context.addressed and number_of(match["n"]) > 1
    if text.startswith(" so "):
        ends = context.addressed and match.end() == len(match.string) - 1 and not context.own_promises
        return ends and (context.party is not None or number_of(match["n"]) <= MOST_ALONE)
    return context.addressed and bool(re.search(r" (?:only|just|now|down to|up to|will be|would be|there) ", text))
