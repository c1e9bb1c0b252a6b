"""One piece of what a message tells of who comes: "the youngest is 2", "my son is 15", "kids 6 and 13", "Mia (4)",
"two of those under one", "one's still in diapers"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from planning.replies.ages import group_of_age
from planning.replies.english.ages import age_list, aged_noun, bare_age, under
from planning.replies.english.lexicon import whole_number, words
from planning.replies.english.members import item
from planning.replies.english.nouns import known_thing
from planning.replies.english.parts import of_them
from planning.replies.english.persons import AND, DETERMINERS, ROLES, noun_at
from planning.replies.text import Token

_RANKS = frozenset(
    (
        "youngest",
        "eldest",
        "oldest",
        "middle",
        "smallest",
        "littlest",
        "younger",
        "older",
        "elder",
        "big",
        "little",
        "third",
        "last",
    )
)
_ONES = frozenset(("one", "kid", "boy", "girl", "child", "lad", "son", "daughter", "two", "ones"))
_LINKS = frozenset(
    ("is", "are", "being", "be", "aged", "age", "ages", "who", "just", "only", "turned", "turning", "turns", "nearly", "almost", "about", "still", "now", "already",
     ",", "(", ":", "-", "at", "will", "has", "they", "he", "she", "both", "all", "like", "barely", "not", "even", "quite", "yet", "ca", "around", "a", "an", "in", "of")
)  # fmt: skip
_WEAK = frozenset((",", "(", ":", "-", "of", "in", "a", "an", "at", "has", "not", "both", "all"))
_ENDS = frozenset(
    (
        ",",
        ")",
        "and",
        "&",
        "+",
        "but",
        "so",
        "the",
        "with",
        "plus",
        "-",
        "coming",
        "the",
        "bringing",
        "both",
        "(",
        "all",
        "btw",
        "fyi",
        "too",
        "now",
        "lol",
        "vegan",
        "vegetarian",
        "we",
        "i",
        "who",
        "he",
        "she",
    )
)
_SMALL = re.compile(
    r"(?:(?:still |not even |only )*(?:in|wears?|wearing) (?:nappies|diapers)|(?:still )?(?:a )?(?:crawling|not walking(?: yet)?|can not walk(?: yet)?)|on (?:formula|the bottle)|breast ?-?feeding|(?:still )?nursing|not on solids(?: yet)?)(?= |$)"
)
_CRAWLERS = re.compile(r"crawl|walk|formula|bottle|breast|nursing|solids")
_NOT_NAMES = frozenset(
    ("yes", "no", "sorry", "ok", "thanks", "nope", "yep", "sure", "well", "it", "this", "that", "there", "here", "what", "who", "everyone", "everybody", "everything", "party", "start", "dinner", "time", "he", "she", "they", "we", "you",
     "i", "one", "two", "number", "address", "all", "none", "both", "which", "mine", "ours", "total", "potluck", "saturday", "sunday", "friday", "monday", "today", "tomorrow", "price", "cost", "oven", "door")
)  # fmt: skip


_TELLS = frozenset(
    (
        "has",
        "have",
        "is",
        "are",
        "can",
        "does",
        "do",
        "needs",
        "need",
        "eats",
        "eat",
        "avoids",
        "who",
        "will",
        "must",
        "gets",
        "loves",
        "hates",
        "wants",
    )
)


@dataclass(frozen=True)
class Piece:
    """Persons told of up to token `last`, by their age groups."""

    groups: tuple[str, ...]
    last: int
    aged: bool
    """Whether an age was told, and not only "my son"."""
    refines: bool = False
    """Whether they belong to those told of before ("the youngest", "one of them", "he")."""
    named: bool = False
    """Whether it is somebody by name, or a member with an age."""
    start: int = 0
    end: int = 0
    added: bool = False
    """Whether it is joined to the number before it ("two of us and a newborn"), and so counted besides."""


def piece_at(tokens: Sequence[Token], i: int) -> Piece | None:
    """The piece that begins at token `i`."""
    return _ranked(tokens, i) or _member(tokens, i) or _numbered(tokens, i) or _by_name(tokens, i)


def _ranked(tokens: Sequence[Token], i: int) -> Piece | None:
    """ "The youngest is 2", "the other two are 8 and 12", "he's 16"."""
    if tokens[i].plain in ("he", "she", "they"):
        linked = i + 1 < len(tokens) and tokens[i + 1].plain in ("is", "are", "just", "turned", "will")
        return _aged(tokens, i + 1, 0 if tokens[i].plain == "they" else 1) if linked else None
    j = i
    while j < len(tokens) and tokens[j].plain in ("the", "my", "our"):
        j += 1
    word = tokens[j].plain if j < len(tokens) else ""
    following = tokens[j + 1].plain if j + 1 < len(tokens) else ""
    if word in _RANKS:
        one = following in _ONES
        return _aged(tokens, j + 1 + one, 2 if following == "two" else 0 if following == "ones" else 1)
    if word in ("others", "rest") or (word == "other" and following in ("ones", "kids")):
        return _aged(tokens, j + 1 + (word == "other"), 0)
    if word != "other":
        return None
    read = whole_number(tokens, j + 1) if following else None
    if read is not None and not _unit(tokens, read[1]) and following not in ("a", "an") and not read[1] >= len(tokens):
        return _aged(tokens, read[1], read[0])
    return _aged(tokens, j + 1 + (following in _ONES), 1)


def _numbered(tokens: Sequence[Token], i: int) -> Piece | None:
    """ "Two of those under one", "one's 15", "2 little (1 and 5)"."""
    if (read := _number(tokens, i)) is None:
        return None
    number, j = read
    them = of_them(tokens, j)
    if marked := them > j:
        j = them
    word = tokens[j].plain if j < len(tokens) else ""
    if not marked and not (number == 1 or word in ("is", "are", "being", "under", "over") or word in _SIZES):
        return None
    if not marked and j < len(tokens) and noun_at(tokens, j):
        return None
    if word not in _SIZES or noun_at(tokens, j + 1):
        return _aged(tokens, j, number)
    group = _SIZES[word]
    sized = _aged(tokens, j + 1, number) if group == "children" else None
    return sized or Piece((group,) * number, j + 1, True, True)


_SIZES = {"big": "adults", "large": "adults", "grown": "adults", "little": "children", "small": "children"}


def _number(tokens: Sequence[Token], i: int) -> tuple[int, int] | None:
    if i < len(tokens) and tokens[i].plain == "both":
        return 2, i + 1
    read = whole_number(tokens, i) if i < len(tokens) and tokens[i].plain not in ("a", "an") else None
    return read if read is not None and 0 < read[0] <= 12 and not _unit(tokens, read[1]) else None


def _unit(tokens: Sequence[Token], i: int) -> bool:
    return i < len(tokens) and tokens[i].plain.split("-")[0] in (
        "year",
        "years",
        "yr",
        "yrs",
        "yo",
        "y",
        "months",
        "month",
        "mo",
        "mos",
        "weeks",
        "wks",
        "mths",
    )


def _aged(tokens: Sequence[Token], i: int, number: int) -> Piece | None:
    """The ages of so many (0: of as many as are told) told from token `i` on, behind "is", "who are", a comma."""
    j, linked = i, False
    while j < len(tokens) and tokens[j].plain in _LINKS and j - i < 5:
        if (small := _SMALL.match(_tail(tokens, j))) is not None:
            break
        linked |= tokens[j].plain not in _WEAK
        j += 1
    if j >= len(tokens):
        return None
    if (small := _SMALL.match(_tail(tokens, j))) is not None:
        group = "infants" if _CRAWLERS.search(small[0]) else "toddlers"
        return Piece((group,) * max(1, number), j + len(small[0].split()), True, True)
    opened = any(t.plain == "(" for t in tokens[i:j])
    if (side := under(tokens, j)) is not None or (side := aged_noun(tokens, j)) is not None:
        return _close(tokens, Piece((side[0],) * max(1, number), side[1], True, True), opened)
    years, end = age_list(tokens, j, max(1, number) if number else 30)
    if years and (number in (0, len(years)) or len(years) == 1) and _ends(tokens, end, linked or opened or number == 1):
        many = number if number > 1 and len(years) == 1 else len(years)
        groups = tuple(group_of_age(y) for y in years) * (many if len(years) == 1 else 1)
        return _close(tokens, Piece(groups, end, True, True), opened)
    if not (linked or opened or j == i):
        return None
    return _grouped(tokens, j, number)


def _grouped(tokens: Sequence[Token], j: int, number: int) -> Piece | None:
    """ "(is) a toddler", "(are) teens"."""
    while j < len(tokens) and tokens[j].plain in ("a", "an", "still", "tiny", "small", "little", "very", "young"):
        j += 1
    for n in (2, 1):
        phrase = " ".join(t.plain for t in tokens[j : j + n])
        group = next((words(role)[phrase] for role in ROLES if phrase in words(role)), "")
        if not group or group == "adults" or len(phrase.split()) != n:
            continue
        if (told := _aged(tokens, j + n, number)) is not None and tokens[j + n].plain not in AND:
            return told  # "four of them kids under 10"
        return Piece((group,) * max(1, number), _past_range(tokens, j + n), True, True)
    return None


def _past_range(tokens: Sequence[Token], i: int) -> int:
    """Behind "aged 4 to 9", which tells no single age."""
    opened = i < len(tokens) and tokens[i].plain in ("aged", "ages", "(")
    match = (
        re.match(r"(?:(?:between|from) )?[0-9]+ (?:to|and|-) [0-9]+(?= |$)", _tail(tokens, i + opened))
        if opened or (i < len(tokens) and tokens[i].plain in ("between", "from"))
        else None
    )
    if opened and match is None and re.match(r"[0-9]+-[0-9]+(?= |$)", _tail(tokens, i + 1)):
        return i + 2
    return i + opened + len(match[0].split()) if match is not None else i


def _ends(tokens: Sequence[Token], i: int, linked: bool) -> bool:
    """Whether an age may end before token `i`: no thing and no unit stands there."""
    if i >= len(tokens):
        return True
    return linked and tokens[i].plain in _ENDS


def _close(tokens: Sequence[Token], piece: Piece, opened: bool) -> Piece:
    closed = opened and piece.last < len(tokens) and tokens[piece.last].plain == ")"
    return Piece(piece.groups, piece.last + closed, piece.aged, piece.refines, piece.named)


def _tail(tokens: Sequence[Token], i: int) -> str:
    return " ".join(t.plain for t in tokens[i : i + 6])


def _member(tokens: Sequence[Token], i: int) -> Piece | None:
    """ "My son is 15", "kids 6 and 13", "the twins are 9 months", "a 10 month old", "2 kids"."""
    found = item(tokens, i, True)
    if found is None or found.me or not found.total:
        return None
    adult = set(found.counts) == {"adults"}
    last = found.last
    if (
        last < len(tokens)
        and tokens[last].raw[:1].isupper()
        and tokens[last].raw[1:2].islower()
        and not noun_at(tokens, last)
    ):
        last += 1  # "our daughter Ella is 4"
    number = 2 if found.kin == "twins" else 0 if found.unknown_number else found.total
    if (
        not adult
        and set(found.counts) <= {"children", "infants", "toddlers"}
        and (aged := _aged(tokens, last, number)) is not None
    ):
        return Piece(aged.groups, aged.last, True, False, True)
    if (
        adult
        and last < len(tokens)
        and (aged := _aged(tokens, last, found.total)) is not None
        and aged.groups[0] != "adults"
        and tokens[last].plain in ("is", "are", "(", "aged")
    ):
        return Piece(aged.groups, aged.last, True, False, True)
    if last < len(tokens) and tokens[last].plain in _TELLS:
        return None  # "my son has a peanut allergy" tells of one who may be counted already
    if found.unknown_number or (found.kin == "twins" and tokens[i].plain == "twins"):
        return None
    groups = tuple(g for g, n in found.counts.items() for _ in range(n))
    return Piece(
        groups, found.last, not adult and ("children" not in found.counts or _told_by_age(tokens, i, found.last))
    )


def _told_by_age(tokens: Sequence[Token], i: int, last: int) -> bool:
    return any(t.plain[0].isdecimal() for t in tokens[i + 1 : last])


def _by_name(tokens: Sequence[Token], i: int) -> Piece | None:
    """ "Mia is 7", "Theo (4)", "Theo, 4"."""
    token = tokens[i]
    plain = token.plain
    if (
        not plain.isalpha()
        or plain in _NOT_NAMES
        or plain in DETERMINERS
        or plain in AND
        or noun_at(tokens, i)
        or plain in words("neutral")
    ):
        return None
    if (
        i + 1 >= len(tokens)
        or (tokens[i + 1].plain not in ("is", "(", ",", "aged", "turned", "just", "will")
        and bare_age(tokens, i + 1) is None)
    ):
        return None
    cased = token.raw[:1].isupper() and not token.raw.isupper()
    if not cased and (tokens[i + 1].plain != "is" or plain in words("plain") or plain in words("filler")):
        return None
    if known_thing(plain)[1] >= 0.5:
        return None
    if (aged := _aged(tokens, i + 1, 1)) is None or "adults" in aged.groups:
        return None
    return Piece(aged.groups, aged.last, True, False, True)
