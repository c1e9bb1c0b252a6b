"""Ages as people write them: "5 yr old", "under 4s", "(4, 7 and 9)", "who's 3", "18 months"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from planning.replies.ages import group_of_age
from planning.replies.english.lexicon import NUMBER, number_of, whole_number
from planning.replies.english.persons import AND, noun_at
from planning.replies.text import Token

_LOOK = 6
"""Tokens looked at for one age; the longest form ("11 - year - old") has five."""
_OLD = re.compile(
    r"(?:- )?(?:(?P<unit>years?|yrs?|months?|mos?|mths?|weeks?|wks?)[ -]+(?:- ?)?olds?|yrs? ?o|yos?)(?= |$)"
)
_MONTHS = re.compile(r"(?:- )?(?P<unit>months?|mos?|mths?|weeks?|wks?)(?= |$)")
_UNDER = re.compile(
    r"(?P<side>under|below|younger than|less than|over|above|older than)(?: the age of)?(?: -)?"
    rf" (?:a (?=year )|(?P<n>{NUMBER}))"
    r"(?: years?(?: old)?| yrs?(?: old)?| months?(?: old)?)?(?: s)?(?= |$)"
)
OLDER_OR_YOUNGER = frozenset(("under", "below", "younger", "less", "over", "above", "older"))
"""How an age told by what it is under or over begins."""
_HYPHENED = re.compile(rf"(?P<n>{NUMBER})-(?P<unit>year|yr|month)s?-olds?")
_FILLER = frozenset(("years", "year", "yrs", "yr", "y", "yo", "old", "months", "month", "-", "of", "age"))


def _in_years(n: int, unit: str | None) -> int:
    if (unit and unit.startswith("mo")) or (unit and unit.startswith("mth")):
        return n // 12
    return n // 52 if unit and unit.startswith("w") else n


def _tail(tokens: Sequence[Token], i: int) -> str:
    return " ".join(t.plain for t in tokens[i : i + _LOOK])


def _after(tail: str, end: int, i: int) -> int:
    return i + tail[:end].count(" ") + 1


def year_old(tokens: Sequence[Token], i: int) -> bool:
    """Whether the number before token `i` was an age ("5 | year old", "7 | mo" in one word)."""
    return _OLD.match(_tail(tokens, i)) is not None or _months_on(tokens, i)


def _months_on(tokens: Sequence[Token], i: int) -> bool:
    """Whether a short unit is written on to the number before token `i` ("7mo")."""
    return 0 < i < len(tokens) and tokens[i].plain in _ON and tokens[i].start == tokens[i - 1].end


_ON = ("mo", "mos", "mth", "mths")


def aged_noun(tokens: Sequence[Token], i: int) -> tuple[str, int] | None:
    """Somebody called by the age at token `i` ("5 year old", "3yo", "five-year-old", "under 4s"): group, end."""
    if i >= len(tokens):
        return None
    if "-" in tokens[i].plain and (whole := _HYPHENED.fullmatch(tokens[i].plain)) is not None:
        return group_of_age(_in_years(number_of(whole["n"]), whole["unit"])), i + 1
    if (side := under(tokens, i)) is not None:
        return side
    read = whole_number(tokens, i)
    if read is None or read[0] > 120:
        return None
    tail = _tail(tokens, read[1])
    match = _OLD.match(tail) or (_MONTHS.match(tail) if _months_on(tokens, read[1]) else None)
    if match is None:
        return None
    return group_of_age(_in_years(read[0], match["unit"])), _after(tail, match.end(), read[1])


def under(tokens: Sequence[Token], i: int) -> tuple[str, int] | None:
    """ "Under 4s" and "over 60": taken as old as they may be, so that nobody is counted as eating less than they do."""
    if i >= len(tokens) or tokens[i].plain not in OLDER_OR_YOUNGER:
        return None
    tail = _tail(tokens, i)
    match = _UNDER.match(tail)
    if match is None:
        return None
    n = number_of(match["n"]) if match["n"] else 1
    younger = match["side"] in ("under", "below", "younger than", "less than")
    if " month" in match[0]:
        n = max(1, -(-n // 12)) if younger else n // 12
    years = n - 1 if younger else n
    return (group_of_age(max(0, years)), _after(tail, match.end(), i)) if n <= 120 else None


_BETWEEN = re.compile(rf"(?:aged |ages )?(?:between|from) (?P<low>{NUMBER}) (?:and|to|-) (?P<high>{NUMBER})(?= |$)")


def between(tokens: Sequence[Token], i: int) -> int | None:
    """Where "between 4 and 12", which says the age of several, ends."""
    tail = _tail(tokens, i)
    match = _BETWEEN.match(tail)
    return _after(tail, match.end(), i) if match is not None else None


def bare_age(tokens: Sequence[Token], i: int) -> tuple[int, int] | None:
    """A number meant as an age, with or without its unit ("3", "18 months", "7 years"): whole years, end."""
    read = whole_number(tokens, i) if i < len(tokens) and tokens[i].plain not in ("a", "an") else None
    if read is None or read[0] > 120:
        return None
    years, j = read
    tail = _tail(tokens, j)
    if (match := _MONTHS.match(tail)) is not None:
        years, j = _in_years(years, match["unit"]), _after(tail, match.end(), j)
    while (
        j < len(tokens)
        and tokens[j].plain in _FILLER
        and not (tokens[j].plain == "-" and j + 1 < len(tokens) and tokens[j + 1].plain not in _FILLER)
    ):
        j += 1
    return years, j


_TELLS_AGE = ("aged", "age", "ages", "who", "are", "is", ":", "they", "he", "she", "their")


def ages(tokens: Sequence[Token], i: int, *, after_plural: bool = False) -> tuple[list[int], int] | None:
    """Ages at token `i`: "( 4 , 7 and 9 )", "aged 4 and 7", "who are 4 and 7", "4 and 7" after a word for several
    persons. A number before a word for persons counts heads and ends them."""
    if (
        i + 2 < len(tokens)
        and tokens[i].plain == ","
        and tokens[i + 1].plain in ("they", "who", "aged", "ages", "their")
    ):
        i += 1
    start, opened = i, False
    if i < len(tokens) and tokens[i].plain == "(":
        opened, i = True, i + 1
    worded = False
    while i < len(tokens) and tokens[i].plain in _TELLS_AGE:
        worded |= tokens[i].plain in ("aged", "age", "ages")
        worded |= tokens[i].plain in ("are", "is") and i > start and tokens[i - 1].plain in ("who", "they", "he", "she")
        i += 1
    if i == start and (read := whole_number(tokens, i)) is not None and year_old(tokens, read[1]):
        worded = True  # "1 baby 10mo"
    worded |= after_plural and i == start + 1 and tokens[start].plain == "are"  # "the kids are 8 and 14"
    if not (opened or worded or (after_plural and i == start)):
        return None
    found, end = age_list(tokens, i)
    if not found:
        return None
    if opened:
        if end >= len(tokens) or tokens[end].plain != ")":
            return None
        end += 1
    return found, end


def age_list(tokens: Sequence[Token], i: int, most: int = 30) -> tuple[list[int], int]:
    """Numbers in a row at token `i`, at most so many, as ages; and where they end."""
    found: list[int] = []
    end = i
    while i < len(tokens) and len(found) < most:
        read = bare_age(tokens, i)
        if read is not None and read[0] <= 99 and not _heads(tokens, i):
            found.append(read[0])
            i = end = read[1]
        elif found and tokens[i].plain in (",", "and", "&", "+"):
            i += 1
        else:
            break
    return found, end


def _heads(tokens: Sequence[Token], i: int) -> bool:
    """Whether the number at `i` counts persons ("3 kids", "one teen", "2 big boys")."""
    read = whole_number(tokens, i)
    if read is None or noun_at(tokens, read[1]):
        return read is not None
    return noun_at(tokens, read[1] + 1) and tokens[read[1]].plain not in (*AND, ")")
