"""Members of a party as people list them: "me, Taro and two kids (5 and 8)", "2 adults, 3 kids (one's a toddler)"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache

from planning.amounts import number_words
from planning.replies.ages import group_of_age
from planning.replies.english.ages import (
    OLDER_OR_YOUNGER,
    age_list,
    aged_noun,
    ages,
    bare_age,
    between,
    under,
    year_old,
)
from planning.replies.english.lexicon import whole_number, words
from planning.replies.english.nouns import known_thing
from planning.replies.english.parts import division
from planning.replies.english.persons import ADJECTIVES, DETERMINERS, ROLES, People, named_kin, noun_at, phrase_at
from planning.replies.text import Token

_GROUP_OF_ADJECTIVE = {
    "teenage": "teens",
    "adult": "adults",
    "grown-up": "adults",
    "grown": "adults",
    "baby": "infants",
}
_TWO = ("twins", "folks", "parents", "in-laws", "in laws", "grandparents")
"""Plurals that are two persons when no number is said."""
_MANNER = re.compile(r"[a-z]+(?:-[a-z]+)*(?:ed|ing|y|free|ful|ous|ish)")
"""How an adjective looks that says nothing of age."""
_CHILDREN = ("kids", "children", "girls", "boys", "sons", "daughters", "grandchildren", "grandkids")


MOST_AGES = 12
"""So many ages in a row may be those of one family's children (common practice, no source)."""


def _one_in_brackets(tokens: Sequence[Token], i: int) -> bool:
    """ "(2)" alone counts heads; "(age 2)" and "(4, 7)" are ages."""
    read = whole_number(tokens, i + 1)
    return [t.plain for t in tokens[i : i + 3 : 2]] == ["(", ")"] and read is not None and read[1] == i + 2


GOES_ON = (",", "and", "&", "+", "plus", "with", ")", "(", "-", "coming", "please", "no", "so", "for", "but", "too")


def _ages_after(tokens: Sequence[Token], i: int, number: int | None, group: str) -> tuple[list[int], int] | None:
    """Ages behind a noun; behind a comma when there are as many as persons ("3 boys, 2, 3 & 4", "my son, 14, and I")."""
    told = ages(tokens, i, after_plural=i > 0 and tokens[i - 1].plain in _CHILDREN)
    if told is not None or i >= len(tokens) or tokens[i].plain != "," or group == "adults":
        return told
    several = number is None and i > 0 and tokens[i - 1].plain in _CHILDREN
    found, end = age_list(tokens, i + 1, MOST_AGES if several else number or 1)
    wanted = max(2, len(found)) if several else number or 1  # "the girls, 8 and 5"
    if len(found) != wanted or max(found) > 17 or (end < len(tokens) and tokens[end].plain not in GOES_ON):
        return None
    return found, end


def _us(tokens: Sequence[Token], i: int) -> tuple[int, int] | None:
    """The writer's own in a number: "us two", "both of us", "the 3 of us", "we two": how many, end."""
    plain = [t.plain for t in tokens[i : i + 4]]
    if plain[:3] == ["both", "of", "us"]:
        return 2, i + 3
    if (
        plain[:1] in (["us"], ["we"])
        and (read := whole_number(tokens, i + 1)) is not None
        and 1 < read[0] <= 30
        and not noun_at(tokens, read[1])
    ):
        return read[0], read[1]
    j = i + (plain[:1] == ["the"] or plain[:1] == ["all"])
    if (
        j > i
        and (read := whole_number(tokens, j)) is not None
        and read[0] > 1
        and [t.plain for t in tokens[read[1] : read[1] + 2]] == ["of", "us"]
    ):
        return read[0], read[1] + 2
    return None


def _lead(tokens: Sequence[Token], i: int) -> tuple[int, int | None, str, bool]:
    """What stands before the noun: where it ends, the number, the age group an adjective tells, "my" or the like."""
    number: int | None = None
    hint, determined = "", False
    while i < len(tokens):
        plain = tokens[i].plain
        read = whole_number(tokens, i) if plain not in ("a", "an") else None
        if read is not None and number is None and 0 <= read[0] <= 500:
            if year_old(tokens, read[1]):
                break
            number, i = read
        elif plain in DETERMINERS and not (number is not None and plain in ("my", "our", "his", "her", "their", "the", "a", "an")):
            determined = True
            if plain == "both" and number is None:
                number = 2
            i += 1
        elif (
            plain in ADJECTIVES
            and not phrase_at(tokens, i)
            and not (plain in ("adult", "grown-up") and not noun_at(tokens, i + 1))
        ):
            hint = _GROUP_OF_ADJECTIVE.get(plain, hint)
            i += 1
        elif (number is not None or determined) and _MANNER.fullmatch(plain) and noun_at(tokens, i + 1):
            i += 1  # "1 meat-eating teen", "one tired dad"
        else:
            break
    return i, number, hint, determined


@cache
def _first_words() -> frozenset[str]:
    own = ("me", "myself", "i", "himself", "herself", "us", "we", *OLDER_OR_YOUNGER)
    kin = (phrase.split()[0] for role in ROLES for phrase in words(role))
    return frozenset((*own, *kin, *DETERMINERS, *ADJECTIVES, *number_words()))


@lru_cache(maxsize=8192)
def _may_begin(word: str) -> bool:
    """Whether members may begin with the word: most do not, and need no closer look."""
    return word in _first_words() or word[:1].isdecimal() or "-" in word


def item(tokens: Sequence[Token], i: int, listed: bool = False) -> People | None:
    """One member or group of members at token `i`; `listed`: in a list with the writer, where no "my" is needed."""
    first = i
    if i >= len(tokens) or not _may_begin(tokens[i].plain):
        return None
    if tokens[i].plain in ("me", "myself", "i"):
        return People(first, i + 1, {"adults": 1}, me=True)
    if listed and tokens[i].plain in ("himself", "herself"):
        return People(first, i + 1, {"adults": 1})  # "me, himself and the weans"
    if (own := _us(tokens, i)) is not None:
        return People(first, own[1], {"adults": own[0]}, me=True)
    if listed and (many := whole_number(tokens, i)) is not None and tokens[i].plain not in ("a", "an"):
        end = _of_a_group(tokens, many[1])
        if end is not None and 0 < many[0] <= 30:
            return People(first, end, {"adults": many[0]})  # "me and three of the crew"
    i, number, hint, determined = _lead(tokens, i)
    aged = aged_noun(tokens, i)
    if aged is not None and number is None and i > first and tokens[i - 1].plain == "all":
        return None  # "three kids, all under ten"
    if aged is not None:
        return People(first, aged[1], {aged[0]: 1 if number is None else number})
    if number is not None and number > 1 and (several := _several_aged(tokens, i, number)) is not None:
        return People(first, several[1], several[0])
    for n in range(min(3, len(tokens) - i), 0, -1):
        phrase = " ".join(t.plain for t in tokens[i : i + n])
        for role in ROLES:
            group = words(role).get(phrase, "")
            if not group and role == "guestkin" and phrase.endswith("s") and number is not None:
                group = words(role).get(phrase[:-1], "")
            if not group or (
                role != "kins" and not determined and number is None and not named_kin(tokens[i]) and not listed
            ):
                continue
            found = People(
                first,
                i + n,
                household=role != "guestkin",
                bare=phrase in ("people", "persons", "adults", "adult", "grown-ups", "grown ups", "grownups"),
            )
            found.kin = phrase
            found.kin_raw = " ".join(re.sub(r"['’]s$", "", t.raw) for t in tokens[i : i + n])
            _count(found, tokens, hint or group, number, role)
            return found
    if determined and number is not None and tokens[i : i + 1] and tokens[i].plain in (":", "(", ","):
        years, end = age_list(tokens, i + 1, number)  # "our three: 14, 11 and 6"
        if len(years) == number and max(years) <= 17:
            counts: dict[str, int] = {}
            for year in years:
                counts[group_of_age(year)] = counts.get(group_of_age(year), 0) + 1
            return People(first, end + (end < len(tokens) and tokens[end].plain == ")"), counts)
    return None


def _of_a_group(tokens: Sequence[Token], i: int) -> int | None:
    """Where "of the crew", "from my choir" behind a number ends."""
    if i < len(tokens) and tokens[i].plain in ("others", "other", "more", "extras", "randoms", "strangers"):
        return i + 1 + (tokens[i].plain == "other" and i + 1 < len(tokens) and tokens[i + 1].plain in ("people", "adults", "persons"))
    if i + 2 >= len(tokens) or tokens[i].plain not in ("of", "from") or tokens[i + 1].plain not in ("the", "my", "our"):
        return None
    word = tokens[i + 2].plain
    if not word.isalpha() or whole_number(tokens, i + 2) is not None or word in words("dish") or known_thing(word)[1] >= 0.75:
        return None
    return i + 3


def _side_after(tokens: Sequence[Token], i: int) -> tuple[str, int] | None:
    """ "Under 5" behind a noun, in brackets or not."""
    opened = i < len(tokens) and tokens[i].plain in ("(", "aged", "all")
    side = under(tokens, i + opened)
    if side is None:
        return None
    return side[0], side[1] + (opened and side[1] < len(tokens) and tokens[side[1]].plain == ")")


def _several_aged(tokens: Sequence[Token], i: int, number: int) -> tuple[dict[str, int], int] | None:
    """ "Two 3 and 5 year olds" after the number."""
    years: list[int] = []
    while (read := bare_age(tokens, i)) is not None:
        years.append(read[0])
        if year_old(tokens, read[1]) or (read[1] > i and tokens[read[1] - 1].plain in ("old", "yo")):
            break
        i = read[1]
        while i < len(tokens) and tokens[i].plain in (",", "and", "&"):
            i += 1
    if len(years) != number or read is None:
        return None
    counts: dict[str, int] = {}
    for year in years:
        counts[group_of_age(year)] = counts.get(group_of_age(year), 0) + 1
    return counts, read[1]


def _so_many(tokens: Sequence[Token], i: int) -> tuple[int, int] | None:
    """ "The kids, 3 of them", "the kids (all three)": how many, and where that ends."""
    j = i
    while j < len(tokens) and tokens[j].plain in (",", "(", "all", "-"):
        j += 1
    read = whole_number(tokens, j) if j > i else None
    if read is None or not 0 < read[0] <= 12:
        return None
    end = read[1]
    if [t.plain for t in tokens[end : end + 2]] == ["of", "them"]:
        end += 2
    elif tokens[j - 1].plain != "all":
        return None
    return read[0], end + (end < len(tokens) and tokens[end].plain == ")")


def _count(found: People, tokens: Sequence[Token], group: str, number: int | None, role: str) -> None:
    """Counts the persons of one noun by the ages or the parts told after it, else by its number."""
    told = _ages_after(tokens, found.last, number, group)
    if told is None and (side := _side_after(tokens, found.last)) is not None:
        found.add(side[0], number if number is not None else 1)  # "2 littles under 5"
        found.unknown_number = role == "kins" and number is None
        found.last = side[1]
        return
    if (
        told is not None
        and number is None
        and role == "kins"
        and found.kin != "twins"
        and _one_in_brackets(tokens, found.last)
    ):
        found.add(group, told[0][0])  # "the kids (2)" are two of them
        found.last = told[1]
        return
    if found.kin == "twins" and number is None:
        number = 2
    if told is not None and (number is None or number == len(told[0]) or len(told[0]) == 1):
        years, found.last = told
        if len(years) == 1 and number is not None:
            found.add(group_of_age(years[0]), number)
        else:
            for year in years:
                found.add(group_of_age(year), 1)
        return
    parted = division(tokens, found.last) if role == "kins" or (number or 0) > 1 else None
    if parted is not None and (number is None or sum(parted[0].values()) <= number):
        found.add(group, number if number is not None else sum(parted[0].values()))
        found.divide(group, parted[0])
        found.last = parted[1]
        return
    if (aged := between(tokens, found.last)) is not None:
        found.last = aged
    if number is None and role == "kins" and (many := _so_many(tokens, found.last)) is not None:
        number, found.last = many
    several = number is None and (found.kin in _TWO)
    found.unknown_number = role == "kins" and number is None and not several
    found.add(group, number if number is not None else 2 if several else 1)
