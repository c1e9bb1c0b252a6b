"""How a number of persons divides: "(one's a toddler)", ", two of them under 4", "incl. 2 kids"."""

from __future__ import annotations

from collections.abc import Sequence

from planning.replies.ages import group_of_age
from planning.replies.english.ages import aged_noun, bare_age, year_old
from planning.replies.english.lexicon import whole_number, words
from planning.replies.english.persons import AND, ROLES, noun_at
from planning.replies.text import Token

_PAUSE = ("(", ",", "-", "–", "—", ":")
_INCLUDING = ("including", "incl", "inc", "counting", "where", "of")
_THEM = frozenset(("them", "whom", "which", "those", "these", "us", "kids", "children", "ones"))


def of_them(tokens: Sequence[Token], i: int) -> int:
    """Where "of them", "from these", "out of the five" at token `i` ends; `i` where nothing like it stands."""
    j = i + ([t.plain for t in tokens[i : i + 2]] == ["out", "of"])
    if j >= len(tokens) or tokens[j].plain not in ("of", "from", "among"):
        return i
    j += 1
    if j < len(tokens) and tokens[j].plain in _THEM:
        return j + 1
    if j + 1 < len(tokens) and tokens[j].plain in ("the", "those", "these", "our"):
        read = whole_number(tokens, j + 1)
        return read[1] if read is not None else j + 2 if tokens[j + 1].plain in _THEM else i
    return i


_SIZES = {"big": "adults", "large": "adults", "grown": "adults", "small": "children", "little": "children"}


def _part(tokens: Sequence[Token], i: int, strict: bool) -> tuple[str, int, int] | None:
    """One part of a number of persons: "one is a toddler", "two of them under 4", "the youngest is 3", "one 5":
    age group, how many, end. `strict`: only what can be nothing but a part."""
    start = i
    number: int | None = None
    marked = not strict
    if i < len(tokens) and tokens[i].plain == "both":
        number, i = 2, i + 1
    elif (
        (read := whole_number(tokens, i)) is not None
        and not year_old(tokens, read[1])
        and tokens[i].plain not in ("a", "an")
    ):
        number, i = read
    else:
        while i < len(tokens) and tokens[i].plain in ("the", "my", "our", "a", "an"):
            i += 1
        if i < len(tokens) and tokens[i].plain in (
            "youngest",
            "eldest",
            "oldest",
            "other",
            "smallest",
            "middle",
            "third",
            "second",
            "last",
            "little",
        ):
            number, i = 1, i + 1
            i += i < len(tokens) and tokens[i].plain in ("one", "kid")
    if (them := of_them(tokens, i)) > i:
        i, marked = them, True
    linked = False
    while i < len(tokens) and tokens[i].plain in (
        "is",
        "are",
        "being",
        "be",
        "will",
        "aged",
        "a",
        "an",
        "just",
        "only",
        "still",
        "who",
        "under-age",
    ):
        linked |= tokens[i].plain in ("is", "are", "being", "aged")
        marked |= tokens[i].plain in ("is", "are", "being", "aged") or (
            tokens[i].plain in ("a", "an") and number is not None
        )
        i += 1
    if marked and tokens[i + 1 : i + 2] and tokens[i].plain in ("small", "little", "tiny", "young", "wee", "very"):
        i += noun_at(tokens, i + 1)
    if i >= len(tokens):
        return None
    if (aged := aged_noun(tokens, i)) is not None:
        return (aged[0], 1 if number is None else number, aged[1]) if marked else None
    age = bare_age(tokens, i)
    if (
        age is not None
        and age[0] <= 20
        and number is not None
        and (linked or number == 1)
        and not noun_at(tokens, age[1])
    ):
        return group_of_age(age[0]), number, age[1]
    if not strict and number is not None and tokens[i].plain in _SIZES and not noun_at(tokens, i + 1):
        return _SIZES[tokens[i].plain], number, i + 1  # "four big, two small"
    if not marked:
        return None
    for n in range(min(3, len(tokens) - i), 0, -1):
        phrase = " ".join(t.plain for t in tokens[i : i + n])
        group = next((words(role)[phrase] for role in ROLES if phrase in words(role)), None)
        if group is not None and (i > start or phrase in words("kin")):
            return group, 1 if number is None else number, i + n
    return None


def division(tokens: Sequence[Token], i: int, *, loose: bool = False) -> tuple[dict[str, int], int] | None:
    """How a number of persons divides: "(one's a toddler)", ", two of them under 4", "incl. 2 kids"; the parts and
    where they end. `loose` after a total, where ", one toddler" is a part as well."""
    opened = i < len(tokens) and tokens[i].plain == "("
    start, strict = i, not (opened or loose)
    while i < len(tokens) and tokens[i].plain in (*_PAUSE, *_INCLUDING):
        strict &= tokens[i].plain not in _INCLUDING
        i += 1
    if (them := of_them(tokens, i)) > i:
        i, strict = them, False  # "from these one is a baby"
    if i == start and strict:
        return None
    parts: dict[str, int] = {}
    end = i
    while (part := _part(tokens, i, strict)) is not None:
        told = tokens[part[2]].plain if part[2] < len(tokens) else ""
        if parts and told in ("has", "have", "does", "can", "is", "needs"):
            break  # "my kid has a milk allergy" tells of one that is counted already
        parts[part[0]] = parts.get(part[0], 0) + part[1]
        i = end = part[2] + (tokens[part[2] : part[2] + 1] != [] and tokens[part[2]].plain in ("included", "inclusive"))
        while i < len(tokens) and tokens[i].plain in AND:
            i += 1
    if end < len(tokens) and opened:
        if tokens[end].plain != ")":
            return None
        end += 1
    return (parts, end) if parts else None
