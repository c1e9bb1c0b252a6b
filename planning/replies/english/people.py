"""Who comes with one answer: "3 of us", "me, my wife and the three girls (4, 7 and 9)", "+1", "only two now"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from planning.potluck import AGE_GROUPS, Party
from planning.replies.english.lexicon import NUMBER, number_of, whole_number, words
from planning.replies.intents import AddPerson, Intent, ReplyContext, SetParty
from planning.replies.text import Sentence, Token

_DETERMINERS = frozenset(("my", "our", "the", "a", "an", "his", "her", "their", "both", "all", "those", "these", "some"))
_ADJECTIVES = frozenset(
    ("little", "older", "younger", "small", "big", "lovely", "dear", "new", "hungry", "other", "extra", "more", "grown",
     "whole", "them", "us", "whom", "young", "old", "two", "elderly", "wee", "tiny", "teenage", "adult", "grown-up", "very", "dearest",
     "wonderful", "noisy", "of", "own", "best", "sweet", "better", "vegetarian", "vegan", "visiting")
)  # fmt: skip
_NAMED_KIN = frozenset(
    ("mum", "mom", "mam", "mummy", "mommy", "mama", "dad", "daddy", "papa", "hubby", "wifey", "grandma", "grandpa", "granny", "gran", "grandad",
     "granddad", "nan", "nana", "nanna", "auntie", "aunty", "missus")
)  # fmt: skip
"""Words for kin that need no "my" ("mum and dad are coming")."""


def _named(token: Token) -> bool:
    return re.sub(r"['’]s$", "", token.raw.lower()) in _NAMED_KIN


_GROUP_OF_ADJECTIVE = {"teenage": "teens", "adult": "adults", "grown-up": "adults", "grown": "adults", "baby": "infants"}


def group_of_age(years: int) -> str:
    """Infants under 1, toddlers 1-3, children 4-12, teens 13-17, else adults (the groups of `planning.potluck`)."""
    if years < 1:
        return "infants"
    return "toddlers" if years <= 3 else "children" if years <= 12 else "teens" if years <= 17 else "adults"


@dataclass
class People:
    """Counts found from token `first` up to `last`; `me` when the writer is among them."""

    first: int
    last: int
    counts: dict[str, int] = field(default_factory=dict)
    me: bool = False
    kin: str = ""
    kin_raw: str = ""
    household: bool = True
    unknown_number: bool = False
    items: int = 1
    bare: bool = False
    """Only numbers with general words ("2 people")."""

    def add(self, group: str, n: int) -> None:
        self.counts[group] = self.counts.get(group, 0) + n

    def merge(self, other: People) -> None:
        self.items += 1
        self.last = other.last
        for group, n in other.counts.items():
            self.add(group, n)
        self.me |= other.me
        self.household &= other.household
        self.unknown_number |= other.unknown_number

    @property
    def total(self) -> int:
        return sum(self.counts.values())

    def party(self) -> Party:
        return Party(**{group: self.counts.get(group, 0) for group in AGE_GROUPS})


def _ages(tokens: list[Token], i: int) -> tuple[list[int], int] | None:
    """Ages at token `i`: "( 4 , 7 and 9 )", "aged 4 and 7", "who are 4 and 7", "( ages 3 & 5 )"."""
    if i + 2 < len(tokens) and tokens[i].plain == "," and tokens[i + 1].plain in ("they", "who") and tokens[i + 2].plain == "are":
        i += 1
    start, opened = i, False
    if i < len(tokens) and tokens[i].plain == "(":
        opened, i = True, i + 1
    worded = False
    while i < len(tokens) and tokens[i].plain in ("aged", "age", "ages", "who", "are", "is", ":", "they", "he", "she"):
        worded |= tokens[i].plain in ("aged", "age", "ages")
        worded |= tokens[i].plain in ("are", "is") and i > start and tokens[i - 1].plain in ("who", "they", "he", "she")
        i += 1
    noun_after = (end := whole_number(tokens, i)) is not None and end[1] < len(tokens) and _noun_at(tokens, end[1])
    plainly = i == start and not noun_after and whole_number(tokens, i) is not None and start > 0 and tokens[start - 1].plain in ("kids", "children", "girls", "boys", "sons", "daughters")
    if not (opened or worded or plainly):
        return None
    ages: list[int] = []
    while i < len(tokens):
        read = whole_number(tokens, i)
        if read is not None and read[0] <= 99:
            ages.append(read[0])
            i = read[1]
            if i < len(tokens) and tokens[i].plain in ("months", "month", "mo", "mos", "weeks", "week"):
                ages[-1] = ages[-1] // (12 if tokens[i].plain.startswith("mo") else 52)
                i += 1
            while i < len(tokens) and tokens[i].plain in ("years", "year", "yrs", "yr", "y", "yo", "old", "months", "-"):
                i += 1
        elif tokens[i].plain in (",", "and", "&", "+"):
            i += 1
        else:
            break
    if not ages:
        return None
    if opened:
        if i >= len(tokens) or tokens[i].plain != ")":
            return None
        i += 1
    while i > start and tokens[i - 1].plain in (",", "and", "&"):
        i -= 1
    return ages, i


def _item(tokens: list[Token], i: int, listed: bool = False) -> People | None:
    """One member or group of members at token `i`; `listed`: in a list with the writer, where no "my" is needed."""
    first = i
    if i < len(tokens) and tokens[i].plain in ("me", "myself", "i"):
        return People(first, i + 1, {"adults": 1}, me=True)
    for both in (("both", "of", "us"), ("the", "two", "of", "us"), ("us", "two"), ("we", "two")):
        if tuple(t.plain for t in tokens[i : i + len(both)]) == both:
            return People(first, i + len(both), {"adults": 2}, me=True)
    number: int | None = None
    group_hint = ""
    determined = False
    while i < len(tokens):
        plain = tokens[i].plain
        read = whole_number(tokens, i) if plain not in ("a", "an") else None
        if read is not None and number is None and 0 < read[0] <= 500:
            if _year_old(tokens, read[1]):
                break
            number, i = read
        elif plain in _DETERMINERS:
            determined = True
            if plain == "both" and number is None:
                number = 2
            i += 1
        elif plain in _ADJECTIVES and not _phrase_at(tokens, i) and not (plain in ("adult", "grown-up") and not _noun_at(tokens, i + 1)):
            group_hint = _GROUP_OF_ADJECTIVE.get(plain, group_hint)
            i += 1
        else:
            break
    aged = _aged_noun(tokens, i)
    if aged is not None:
        group, after = aged
        return People(first, after, {group: number or 1}, bare=False)
    for n in range(min(3, len(tokens) - i), 0, -1):
        phrase = " ".join(t.plain for t in tokens[i : i + n])
        for role in ("kin", "kins", "guestkin"):
            group = words(role).get(phrase, "")
            if not group and role == "guestkin" and phrase.endswith("s") and number is not None:
                group = words(role).get(phrase[:-1], "")
            if not group:
                continue
            if role != "kins" and not determined and number is None and not _named(tokens[i]) and not listed:
                continue
            found = People(first, i + n, household=role != "guestkin", bare=phrase in ("people", "persons", "adults", "adult", "grown-ups", "grown ups", "grownups"))
            found.kin, found.kin_raw = phrase, " ".join(re.sub(r"['’]s$", "", t.raw) if t.plain.endswith(("r", "a", "e")) else t.raw for t in tokens[i : i + n])
            if phrase == "twins" and number is None:
                number = 2
            ages = _ages(tokens, found.last)
            if ages is None and role != "guestkin" and number == 1:
                ages = None
            if ages is not None and number is None and role == "kins" and _one_in_brackets(tokens, found.last):
                found.add(group_hint or group, ages[0][0])  # "the kids (2)" are two of them
                found.last = ages[1]
                return found
            if ages is not None and (number is None or number == len(ages[0]) or len(ages[0]) == 1):
                years, found.last = ages
                if len(years) == 1 and number is not None:
                    found.add(group_of_age(years[0]), number)
                else:
                    for year in years:
                        found.add(group_of_age(year), 1)
                return found
            count = number if number is not None else 2 if phrase in ("twins", "parents", "in-laws", "in laws", "grandparents") else 1
            found.unknown_number = role == "kins" and number is None and phrase not in ("twins", "parents", "in-laws", "in laws", "grandparents")
            found.add(group_hint or group, count)
            return found
    return None


def _one_in_brackets(tokens: list[Token], i: int) -> bool:
    """ "(2)" alone counts heads; "(age 2)" and "(4, 7)" are ages."""
    read = whole_number(tokens, i + 1)
    return [t.plain for t in tokens[i : i + 3 : 2]] == ["(", ")"] and read is not None and read[1] == i + 2


def _phrase_at(tokens: list[Token], i: int) -> bool:
    """Whether an adjective here is the first word of a name for persons ("little ones", "other half")."""
    phrase = " ".join(t.plain for t in tokens[i : i + 2])
    return any(phrase in words(role) for role in ("kin", "kins", "guestkin"))


def _noun_at(tokens: list[Token], i: int) -> bool:
    """Whether a word for a person or persons stands at `i`."""
    phrase = tokens[i].plain if i < len(tokens) else ""
    return any(phrase in words(role) for role in ("kin", "kins", "guestkin"))


def _year_old(tokens: list[Token], i: int) -> bool:
    plain = " ".join(t.plain for t in tokens[i : i + 3])
    return plain.startswith(("year old", "yo", "yr old", "month old", "months old", "years old", "- year", "year-old"))


def _aged_noun(tokens: list[Token], i: int) -> tuple[str, int] | None:
    """ "5 year old", "3yo", "18 month old", "five-year-old"."""
    if i < len(tokens) and (match := re.fullmatch(rf"({NUMBER})-(year|month)-olds?", tokens[i].plain)):
        years = number_of(match[1]) if match[2] == "year" else number_of(match[1]) // 12
        return group_of_age(years), i + 1
    read = whole_number(tokens, i)
    if read is None:
        return None
    j = read[1]
    rest = [t.plain for t in tokens[j : j + 4]]
    if rest[:1] in (["yo"], ["yos"]):
        return group_of_age(read[0]), j + 1
    for unit, per in (("year", 1), ("yr", 1), ("years", 1), ("month", 12), ("months", 12), ("week", 52)):
        for shape in ([unit, "old"], [unit, "olds"], ["-", unit, "-", "old"], [f"{unit}-old"], [f"{unit}-olds"]):
            if rest[: len(shape)] == shape:
                return group_of_age(read[0] // per), j + len(shape)
    return None


def people_at(tokens: list[Token], i: int) -> People | None:
    """A list of people from token `i`: items with commas, "and", "&", "+", "plus", "with" between."""
    found = _item(tokens, i)
    if found is None:
        return None
    while True:
        j = found.last
        while j < len(tokens) and tokens[j].plain in (",", "and", "&", "+", "plus", "with", "also"):
            j += 1
        if [t.plain for t in tokens[j : j + 2]] in (["from", "our"], ["from", "my"]) and tokens[j + 2 : j + 3] and tokens[j + 2].plain in ("side", "house", "end", "family"):
            j += 3  # "three adults from our side plus one toddler"
            while j < len(tokens) and tokens[j].plain in (",", "and", "&", "+", "plus", "with", "also"):
                j += 1
        if j == found.last and whole_number(tokens, j) is None:
            return found
        comma = "," in [t.plain for t in tokens[found.last : j]]
        more = _item(tokens, j, found.me or _named(tokens[found.last - 1]))
        if more is None or more.first == more.last:
            return found
        if more.me and tokens[j].plain == "i" and (comma or not found.kin) and tokens[j + 1 : j + 2] and tokens[j + 1].plain in ("will", "can", "am", "would"):
            return found
        if more.me and found.me and more.total == 1:
            found.last = more.last  # "me, myself and I"
            continue
        found.merge(more)


_UNDER = re.compile(r" (?:under|below|younger than) (?:the age of )?[0-9]{1,2} ")
"""An age group told so is asked about, for it is not read."""
_OF_US = re.compile(rf" (?:(?:the |all |just |only |both |about )*)(?P<n>{NUMBER}|both|couple|pair) of us\b(?: (?:in total|altogether|all together|coming|now))?")
_WE_ARE = re.compile(
    rf" (?:we (?:are|will be|would be)|there (?:are|will be|is)|it (?:is|will be)|that (?:is|makes|will be)|make (?:that|it)|makes it|now|only|just|so|will be|coming with|down to|up to|party of|family of|group of|total of|table of|all|for)"
    rf"(?: (?:just|only|now|actually|still|all|about|in total|a|bringing|going to be|coming|the|us|party of|family of|group of|total of|down to|up to))*"
    rf" (?P<n>{NUMBER})(?: (?:of us|people|persons|in all|in total|altogether|total|now|adults|grown-ups|guests|instead|heads|after all|coming))*(?= \x00| $| ,| \(| and| for| including| plus| \+| in| -| with| incl| but| not| because| as| since| so| at)"
)
_FAMILY = re.compile(rf" (?:a |the |our )?(?:party|family|group|total) of (?P<n>{NUMBER})\b")
_ABSENT = re.compile(r"^ (?:can not|will not|is not|are not|has to|have to|had to|is ill|are ill|is sick|are sick)\b")
_INSTEAD = re.compile(rf"^ (?:now |it is |we are |make it )*(?P<n>{NUMBER}) (?:people )?(?:instead of|rather than|not) {NUMBER}(?= $| ,| now)")
_FEWER = re.compile(rf" (?:minus|less) (?P<n>{NUMBER})(?: (?P<who>kids?|children|child|adults?|people|person))?(?= $| ,)")
_PLUS = re.compile(rf" (?:(?P<me>me|i|myself|yes|coming|in) )?(?:(?:and|with|bringing|a|my|have|will bring|have got) )*(?:\+|plus)[ -]?(?P<n>{NUMBER})(?! ?/)(?: (?P<who>kids?|children|child|adults?|people|guests?|friends?|toddlers?|teens?|teenagers?|bab(?:y|ies)))?(?= $| ,| for| and| coming| please| \(| \x00| as| now| too)")
_COMING_N = re.compile(rf"^ (?P<n>{NUMBER}) (?:coming|attending|joining|from us|from our side|for us|from our house)(?= $| ,| and| with| \()")
_FOR_US = re.compile(rf" (?:(?:put|count|sign) (?:me|us) (?:down|in) for|count on (?:me|us) (?:being|to be|as)|change (?:us|me|it) to|make (?:us|it|that)|can you make (?:it|that|us)|(?:yes|coming|in|count|reserve) (?:for|x))(?= |) ?(?:x|for)? ?(?P<n>{NUMBER})(?: of us| people)?(?= $| ,|!)")
_JUST_ME = re.compile(r" (?:(?:it is|it will be|will be|only|am coming|i will be|i am|coming) )*(?:just|only) (?P<who>me|myself|one|us|us two|the two of us|we two)(?= $| ,| this| and| now| for| coming| then| after| tonight| -)|\b(?:alone|on my own|by myself|solo)\b")
_MORE = re.compile(
    rf" (?:(?:and|make that|add|plus|there is|there are|we have|we are|i have|will be|so|actually|with|bringing|can i add|also) )*(?P<n>an?|{NUMBER}|another|a couple)(?: (?P<extra>more|extra|additional|fewer|less))?"
    rf"(?: (?P<who>person|people|adults?|grown-ups?|kids?|child|children|teens?|teenagers?|toddlers?|bab(?:y|ies)|guests?|mouths?|of us))?(?P<extra2> more| extra| less| fewer)?(?: to feed| for us| coming| from (?:us|our side)| with us| on our side| now| than before| than i said| then)*(?= $| ,| and| -)"
)
_WITH = re.compile(
    r" (?:bringing|bring|with|along with|together with|accompanied by|and|plus|taking|will bring|coming with|come with) (?:along )?(?=(?:my|our|the|a|both|[0-9]|one|two|three|four|five|six) )"
)
_COMES_TOO = re.compile(
    r"^ (?:(?: ,)? ?(?:is|are|will be|would like to|would love to|wants to|want to|will|can|might|may))? ?(?:also )?(?:comes?|coming|joins?|joining|be coming|come along|tagging|tag|attend|attending|be there|make it|in)\b(?: (?:along|too|as well|with (?:me|us)))*"
)
_COMES_WITH = re.compile(r"(?:^|, |\b(?:come|coming|be there|make it|yes|in|join|there|attend|us|too|all) )with$")
_MISSING_KIN = re.compile(r"^ (?:can|will|is|are|am|could) not (?:be )?(?:come|coming|make|join|joining|able|attend|attending|be)\b")
_GROUP_WORD = {"kid": "children", "chi": "children", "adu": "adults", "peo": "adults", "per": "adults", "gue": "adults",
               "fri": "adults", "tod": "toddlers", "tee": "teens", "bab": "infants", "gro": "adults", "mou": "adults", "of ": "adults"}  # fmt: skip


def _group(word: str | None) -> str:
    return _GROUP_WORD.get((word or "people")[:3], "adults")


def _breakdown(sentence: Sentence, total: int, after: int) -> tuple[Party | None, int]:
    """ "(2 adults, 1 kid)", "including two kids", ", one baby" after a total: how it divides, and where it ends."""
    tokens = sentence.tokens
    i = after
    while i < len(tokens) and tokens[i].plain in ("(", ",", "including", "incl", "-", "–", ":", "with", "of", "them", "whom", "which", "and", "where"):
        i += 1
    if i == after or not sentence.free(i):
        return None, after
    found = people_at(tokens, i)
    if found is None or found.total > total or found.unknown_number:
        return None, after
    last = found.last
    if last < len(tokens) and tokens[last].plain == ")":
        last += 1
    rest = total - found.total
    counts = dict(found.counts)
    counts["adults"] = counts.get("adults", 0) + rest
    return Party(**{g: counts.get(g, 0) for g in AGE_GROUPS}), last


def _sure_total(n: int) -> float:
    return 0.95 if 0 < n <= 30 else 0.5


def read_people(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """How many come with the writer, or how many more or fewer."""
    tokens, me = sentence.tokens, context.writer

    def said(first: int, last: int, party: Party, relative: bool, confidence: float) -> list[Intent]:
        start, end = sentence.span(first, last)
        sentence.take(first, last)
        if not relative and (not 0 < party.total <= 30 or _UNDER.search(sentence.text)):
            confidence = min(confidence, 0.5)
        return [SetParty(me, party, relative, start=start, end=end, confidence=confidence)]

    # "me, my wife and the three girls (4, 7 and 9)"; "my husband and I"
    for i in range(len(tokens)):
        if not sentence.free(i) or (i and tokens[i - 1].plain in _DETERMINERS):
            continue
        own = tokens[i].plain in ("me", "i", "myself") or (tokens[i].plain == "both" and tokens[i + 1 : i + 2] and tokens[i + 1].plain == "of")
        if own and (plus := _PLUS.match(sentence.left, _offset(sentence, i) - 1)) is not None and plus["me"]:
            break
        if tokens[i].plain == "i" and not (
            tokens[i + 1 : i + 2] and tokens[i + 1].plain in ("and", "&", "+", ",", "plus")
        ):
            continue
        found = people_at(tokens, i) if own or tokens[i].plain in _DETERMINERS else None
        if found is not None and found.me and found.items > 1 and found.total > 1:
            if tokens[found.last - 1].plain == "i" and found.last < len(tokens) and not own and not found.kin:
                continue
            for k in range(found.last, len(tokens) - 1):
                if tokens[k].plain in ("with", "bringing") and (more := people_at(tokens, k + 1)) is not None and not more.me:
                    found.merge(more)
                    sentence.take(k, more.last)
                    break
            with_more = _with_more(tokens, found) or (
                i > 1 and tokens[i - 1].plain in (",", "and", "&") and tokens[i - 2].raw[:1].isupper() and i > 2
            )
            return said(i, found.last, found.party(), False, 0.6 if found.unknown_number or with_more else 0.95)
    for i in range(len(tokens)):
        edge = i == 0 or tokens[i - 1].plain in (",", ":", "-", "(", "yes", "so", "are", "be", "is") or not sentence.free(i - 1)
        if not edge or not sentence.free(i):
            continue
        found = people_at(tokens, i)
        if found is None or found.me or not found.total or not _counted(tokens, found):
            continue
        if tokens[0].plain in ("wow", "omg", "that", "those", "gosh", "whoa"):
            continue
        if _whole(sentence, found) and (found.bare or found.items > 1 or context.asked == "people"):
            if tokens[found.last : found.last + 1] and tokens[found.last].plain == "more":
                continue
            return said(i, found.last, found.party(), False, 0.9 if context.addressed and not found.unknown_number else 0.6)
    bare = whole_number(tokens, 0)
    if bare is not None and 0 < bare[0] <= 200 and sentence.free(0):
        sub, end = _breakdown(sentence, bare[0], bare[1])
        rest = [t.plain for t in tokens[bare[1] :]]
        filler = all(w in ("i", "think", "of", "us", "in", "total", "for", "now", "then", "or", "so", "altogether", ",") for w in rest)
        if context.asked == "people" and rest[:1] and rest[0] in ("+", "plus", "and", "&"):
            more = people_at(tokens, bare[1] + 1)
            if more is not None and not more.me and more.last == len(tokens):
                more.add("adults", bare[0])
                return said(0, len(tokens), more.party(), False, 0.85)
        if filler and "us" not in rest and context.addressed and context.asked is None and bare[0] <= 30:
            return said(0, len(tokens), Party(adults=bare[0]), False, 0.6)
        if context.asked == "people" and filler:
            return said(0, len(tokens), Party(adults=bare[0]), False, 0.93)
        if context.addressed and sub is not None:
            return said(0, end, sub, False, 0.75)
    match = _INSTEAD.match(sentence.left)
    if match is not None and context.addressed:
        first, last = sentence.token_range(match)
        return said(first, last, Party(adults=number_of(match["n"])), False, 0.85)
    match = _FOR_US.search(sentence.left)
    if match is not None and context.addressed:
        first, last = sentence.token_range(match)
        return said(first, last, Party(adults=number_of(match["n"])), False, 0.85)
    match = _COMING_N.match(sentence.left)
    if match is not None and context.addressed:
        first, last = sentence.token_range(match)
        n = number_of(match["n"])
        sub, end = _breakdown(sentence, n, last)
        return said(first, end, sub or Party(adults=n), False, 0.9)
    match = _OF_US.search(sentence.left)
    if match is not None and match["n"] in ("one", "1") and not _ABSENT.match(sentence.left[match.end() :]) and not re.search(r"(?:just|only) ", match[0]):
        match = None  # "one of us is vegan" counts nobody
    if match is not None and _ABSENT.match(sentence.left[match.end() :]):
        n = 2 if match["n"] in ("both", "couple", "pair") else number_of(match["n"])
        first, last = sentence.token_range(match)
        return said(first, last, _only("adults", -n), True, 0.7)
    match = _FEWER.search(sentence.left) or match
    if match is not None and match.re is _FEWER:
        first, last = sentence.token_range(match)
        return said(first, last, _only(_group(match["who"]), -number_of(match["n"])), True, 0.85)
    if match is not None:
        n = 2 if match["n"] in ("both", "couple", "pair") else number_of(match["n"])
        first, last = sentence.token_range(match)
        sub, end = _breakdown(sentence, n, last)
        return said(first, end, sub or Party(adults=n), False, _sure_total(n))
    for pattern in (_FAMILY, _WE_ARE):
        match = pattern.search(sentence.left)
        if match is not None and (pattern is _FAMILY or _about_people(match, sentence, context)):
            n = number_of(match["n"])
            first, last = sentence.token_range(match)
            sub, end = _breakdown(sentence, n, last)
            return said(first, end, sub or Party(adults=n), False, _sure_total(n))
    match = _PLUS.search(sentence.left)
    if match is not None:
        n, group = number_of(match["n"]), _group(match["who"])
        first, last = sentence.token_range(match)
        if match["me"] in ("me", "i", "myself"):
            counts = {"adults": 1}
            counts[group] = counts.get(group, 0) + n
            return said(first, last, Party(**{g: counts.get(g, 0) for g in AGE_GROUPS}), False, _sure_total(n))
        return said(first, last, _only(group, n), True, 0.92 if n <= 6 else 0.5)
    match = _JUST_ME.search(sentence.left)
    if match is not None and (match["who"] != "us" or "two" in match[0]):
        first, last = sentence.token_range(match)
        return said(first, last, Party(2 if "two" in match[0] or match["who"] == "us" else 1), False, 0.93)
    match = _MORE.search(sentence.left)
    if match is not None and (match["extra"] or match["extra2"] or match["n"] == "another") and context.addressed:
        n = 1 if match["n"] in ("a", "an", "another") else 2 if match["n"] == "a couple" else number_of(match["n"])
        less = (match["extra"] or match["extra2"] or "").strip() in ("fewer", "less")
        first, last = sentence.token_range(match)
        return said(first, last, _only(_group(match["who"]), -n if less else n), True, 0.9 if n <= 6 else 0.5)
    found_kin = _kin(sentence, context)
    if found_kin is not None:
        return found_kin
    return []


def _counted(tokens: list[Token], found: People) -> bool:
    """Whether the list begins with a number or "a", as one counts one's own people ("2 adults and a baby")."""
    return whole_number(tokens, found.first) is not None or tokens[found.first].plain in ("a", "an", "one")


def _with_more(tokens: list[Token], found: People) -> bool:
    """Whether somebody we can't tell follows ("me, Tom and the twins")."""
    following = [t for t in tokens[found.last : found.last + 2] if t.plain in (",", "and", "&")]
    return bool(following) and found.last + 1 < len(tokens) and tokens[found.last + 1].raw[:1].isupper() and tokens[found.last + 1].plain not in ("i",)


def _offset(sentence: Sentence, i: int) -> int:
    return 1 + sum(len(t.plain) + 1 for t in sentence.tokens[:i])


def _only(group: str, n: int) -> Party:
    return Party(**(dict.fromkeys(AGE_GROUPS, 0) | {group: n}))


def _whole(sentence: Sentence, found: People) -> bool:
    """Whether the list of people is all there is up to a pause."""
    return found.last >= len(sentence.tokens) or sentence.tokens[found.last].plain in (",", "coming", "-", "(", "for", "total") or not sentence.free(found.last)


def _about_people(match: re.Match[str], sentence: Sentence, context: ReplyContext) -> bool:
    """Whether "make that 30", "for 4", "only two" counts people and not servings or something else."""
    text = match[0]
    if re.match(r" for ", text):
        return False
    if re.search(r"of us|people|persons|adults|grown-ups|we (?:are|will be)|guests|heads|party|family|coming", text):
        return True
    if re.search(r"make (?:that|it)", text):
        return context.asked in (None, "people") and not context.own_promises and number_of(match["n"]) <= 12
    return context.addressed and bool(re.search(r" (?:only|just|now|down to|up to|will be|there)", text))


def read_absent(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "The kids can't come": fewer with the writer; asked about, for it may not be the writer's kids."""
    tokens = sentence.tokens
    for i in range(len(tokens)):
        bare = _named(tokens[i]) or tokens[i].plain in ("husband", "wife", "partner", "kids")
        if not (bare or tokens[i].plain in ("my", "our", "the", "both")) or not sentence.free(i) or (bare and i and tokens[i - 1].plain in _DETERMINERS):
            continue
        found = people_at(tokens, i) if not bare else _item(tokens, i, True)
        if found is None or found.me or not found.total or not found.household:
            continue
        left_out = i > 0 and tokens[i - 1].plain == "without"
        if not left_out and _MISSING_KIN.match(sentence.left[_offset(sentence, found.last) - 1 :]) is None:
            continue
        start, end = sentence.span(i, found.last)
        sentence.take(i, found.last + 3)
        counts = dict(found.counts)
        if found.unknown_number and context.party is not None:
            group = next(iter(found.counts))
            counts = {group: max(1, getattr(context.party, group))}
        less = Party(**{g: -counts.get(g, 0) for g in AGE_GROUPS})
        with_them = context.party is not None and all(
            getattr(context.party, g) - n >= (g == "adults") for g, n in counts.items()
        )
        sure = 0.88 if with_them and tokens[i].plain != "the" else 0.75
        return [SetParty(context.writer, less, True, start=start, end=end, confidence=sure)]
    return []


def _kin(sentence: Sentence, context: ReplyContext) -> list[Intent] | None:
    """ "bringing my wife", "with the two kids", "my mother comes too", "the kids can't come"."""
    tokens = sentence.tokens
    for i in range(len(tokens)):
        if not sentence.free(i) or (i and tokens[i - 1].plain in _DETERMINERS):
            continue
        found = people_at(tokens, i)
        if found is None or not found.total or found.me:
            continue
        after = sentence.left[_offset(sentence, found.last) - 1 :]
        before = sentence.text[: _offset(sentence, i) - 1]
        lead = re.search(r" (?:bringing|bring|with|along with|plus|\+|taking|and|add|adding|including)(?: along| also)?$", before)
        comes = _COMES_TOO.match(after)
        if tokens[i].plain not in _DETERMINERS and whole_number(tokens, i) is None and not _named(tokens[i]):
            continue  # "how many people are coming"
        if _named(tokens[found.last - 1]) and found.last < len(tokens) and tokens[found.last].raw[:1].isupper() and comes is None:
            continue
        start, end = sentence.span(i, found.last)
        if comes is None and (lead is None or (lead[0].strip() in ("have", "and") and not found.household)):
            continue
        if lead is not None and lead[0].strip() == "with" and i > 1 and not _COMES_WITH.search(before):
            continue
        maybe = re.match(r" (?:might|may|wants|would)", after) is not None or sentence.question
        if comes is not None:
            end = sentence.span(i, found.last)[1]
            last = found.last + len(comes[0].split())
        else:
            last = found.last
        sentence.take(i - 1 if lead is not None and i else i, last)
        if not found.household and found.total == 1:
            owner = context.name
            name = f"{owner}'s {found.kin_raw}" if owner else found.kin_raw
            return [AddPerson(name, found.party(), start=start, end=end, confidence=0.6 if maybe else 0.9)]
        loose = lead is not None and lead[0].strip() == "and" and comes is None
        named = i > 2 and tokens[i - 1].plain in (",", "and", "&", "+") and tokens[i - 2].raw[:1].isupper() and sentence.free(i - 2)
        sure = 0.55 if maybe or found.unknown_number or loose or named else 0.9
        return [SetParty(context.writer, found.party(), True, start=start, end=end, confidence=sure)]
    return None


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
    found = people_at(sentence.tokens, 0)
    if found is not None and found.last == len(sentence.tokens) and found.total and not found.unknown_number:
        return found.party()
    context = ReplyContext("", replying_to="question:people")
    for intent in read_people(sentence, context):
        if isinstance(intent, SetParty) and not intent.relative and intent.confidence >= 0.8:
            return intent.party
    return None


def read_may_bring(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Can I bring my sister?": asked about before anybody is added."""
    if not context.addressed or not re.search(r" (?:i|we) (?:bring|brought|add|come with)\b| (?:bring|add) |^ (?:can|could|may|is it ok if) (?:my|our) ", sentence.left):
        return []
    match = _MORE.search(sentence.left)
    if match is not None and (match["extra"] or match["extra2"]) and "more" in match[0]:
        start, end = sentence.span_of(match)
        n = 1 if match["n"] in ("a", "an", "another") else 2 if match["n"] == "a couple" else number_of(match["n"])
        return [SetParty(context.writer, _only(_group(match["who"]), n), True, start=start, end=end, confidence=0.6)]
    return [replace(i, confidence=min(i.confidence, 0.6)) for i in _kin(sentence, context) or []]
