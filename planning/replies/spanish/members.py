"""Persons as they are counted off: "mi mujer, yo y los peques (4 y 7)", "dos mayores, un crío de 7 y una de 2"."""

# ruff: noqa: E501 - a table of words is easier to read on one line

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cache

from planning.replies.ages import group_of_age
from planning.replies.spanish.lexicon import words

LETTER = {"a": "adults", "t": "teens", "c": "children", "d": "toddlers", "i": "infants"}
_BEFORE = frozenset(("mi", "mis", "su", "sus", "la", "el", "los", "las", "un", "una", "unos", "unas", "nuestro", "nuestra", "nuestros", "nuestras", "tu", "otro", "otra", "otros", "otras", "al", "del"))  # fmt: skip
_PRAISE = frozenset(("querido", "querida", "nuevo", "nueva", "otro", "otra", "propio", "propia", "futuro", "futura", "santa", "pobre", "linda", "bella", "buen", "buena", "mejor", "ex"))  # fmt: skip
_ONE_MORE = frozenset(("uno", "una", "otro", "otra", "el", "la", "un"))
_MANY = frozenset(("mis", "los", "las", "sus", "nuestros", "nuestras", "unos", "unas"))
_PAIR = 2
"""So many are "mis padres" and other adults told in the plural without a number."""


@dataclass(frozen=True)
class Group:
    """Some of a party, and the tokens `first` up to, not including, `last` that tell of them."""

    first: int
    last: int
    letters: tuple[str, ...]
    kin: str = ""
    """The word for whose relative they are, or ""."""
    own: bool = False
    """Whether they are named as the writer's ("mi hija"), not as anybody's ("un niño")."""
    sure: bool = True
    """Whether their number was said."""
    plural: bool = field(default=False, kw_only=True)
    kind: str = field(default="a", kw_only=True)
    """The letter of one of them, also where their number was not said."""


def groups(words_said: Sequence[str]) -> list[Group]:
    """All groups told of, in order."""
    found: list[Group] = []
    i = 0
    while i < len(words_said):
        group = group_at(words_said, i, bool(found))
        if group is None:
            i += 1
            continue
        found.append(group)
        i = group.last
    return found


def counts_of(told: Sequence[Group]) -> dict[str, int]:
    """How many of each age group, by the names of a party's fields."""
    counts = dict.fromkeys(LETTER.values(), 0)
    for group in told:
        for letter in group.letters:
            counts[LETTER[letter]] += 1
    return counts


@cache
def longest(role: str) -> int:
    return max(len(w.split()) for w in words(role))


def phrase(words_said: Sequence[str], i: int, role: str) -> tuple[str, int]:
    """(the longest phrase of that role at `i`, its number of words), ("", 0) for none. An ñ may be typed as n."""
    known = words(role)
    for n in range(min(longest(role), len(words_said) - i), 0, -1):
        said = " ".join(words_said[i : i + n])
        if said in known:
            return said, n
        if (other := _with_n(role).get(said)) is not None:
            return other, n
    return "", 0


@cache
def _with_n(role: str) -> dict[str, str]:
    return {w.replace("ñ", "n"): w for w in words(role) if "ñ" in w}


def group_at(said: Sequence[str], i: int, among: bool) -> Group | None:
    """The group told from word `i` on; `among` others told before it."""
    start, number, own, many, definite = i, None, False, False, False
    while i < len(said) and (said[i] in _BEFORE or said[i] in _PRAISE or _number(said[i])):
        if _number(said[i]):
            if number is not None:
                return None
            number = int(said[i])
        elif said[i] in ("un", "una", "otro", "otra") and number is None:
            number = 1
        own = own or said[i] in ("mi", "mis", "nuestro", "nuestra", "nuestros", "nuestras")
        many = many or said[i] in _MANY
        if number is not None and said[i + 1 : i + 2] in (["son"], ["somos"]) and i + 2 < len(said) and not _number(said[i + 2]):
            i += 1  # "4 personas, 2 son niños"
        if (number is not None or said[i] in ("uno", "una")) and said[i + 1 : i + 3] in (["de", "ellos"], ["de", "ellas"]):
            number, i = number or 1, i + 2  # "somos 4, uno de ellos bebé"
        definite = definite or said[i] in ("el", "la", "los", "las", "su", "sus", "al", "del", "mi", "mis")
        i += 1
    if among and i < len(said) and said[i] == "de" and i > start:
        ages, after = ages_at(said, i)  # "y una de 2", "otro de 5"
        if len(ages) == 1 and after > i and (number or 1) == 1 and ages[0] < 18:
            return Group(start, after, (letter_of(ages[0]),))
    if among and i == start and i < len(said) and said[i] == "uno" and i + 1 < len(said) and said[i + 1] == "de":
        ages, after = ages_at(said, i + 1)
        if len(ages) == 1:
            return Group(start, after, (letter_of(ages[0]),))
    word, n = phrase(said, i, "group")
    value = words("group").get(word, "")
    kin, k = phrase(said, i, "kin")
    if kin == "papas" and i > start and said[i - 1] not in ("mis", "sus", "los", "nuestros"):
        k = 0  # potatoes
    if k > n or (k and (own or (definite and number is None))):
        word, n, value = kin, k, words("kin")[kin]
    if not n or (i == start and not _alone(said, i, word)):
        return None
    if value == "a" and word in ("mayores", "grandes") and number is None:
        return None
    after = i + n
    ages, last = ages_at(said, after)
    plural = value.isupper() or (word.endswith("s") and value[:1] not in "23")
    sure = number is not None or not plural or value[:1] in ("2", "3")
    each = value[1:] if value[:1] in "23" else value.lower()
    count = (number or 1) * (int(value[0]) if value[:1] in "23" else 1)
    if number is None and plural:
        count = _PAIR if value.isupper() and (own or many) else 0
        sure = count > 0
    letters = [each] * count
    if plural and not count and len(ages) == 1 and not {"de", "años", "añitos", "meses"} & {*said[after:last]}:
        ages = []  # "los chicos, 4"
    if ages and (each != "a" or all(a < 18 for a in ages)):
        told = [letter_of(a) for a in ages]
        if len(told) == 1 and count > 1:
            told *= count
        letters = told + letters[len(told) :] if count else told
        sure = True
        if number is not None and len(told) > count:
            letters = told[:count]
    else:
        last = after
    return Group(
        start,
        last,
        tuple(letters),
        word if k and value == words("kin").get(word) else "",
        own,
        sure,
        plural=plural,
        kind=each,
    )


def _alone(said: Sequence[str], i: int, word: str) -> bool:
    """Whether a bare word without an article stands for one person: "mamá y yo", "bebé de 7 meses"."""
    if word in (
        "mama",
        "papa",
        "abuela",
        "abuelo",
        "bebe",
        "esposo",
        "esposa",
        "marido",
        "novia",
        "novio",
        "mujer",
        "hijo",
        "hija",
        "niña",
        "niño",
    ):
        before = said[i - 1] if i else ","
        return before in (",", "y", "con", "e", "mas", "(", ":", "+")
    return False


def _number(word: str) -> bool:
    return word.isascii() and word.isdecimal() and len(word) <= 3


def ages_at(said: Sequence[str], i: int) -> tuple[list[int], int]:
    """The ages told from word `i` on, in whole years (months: 0), and the position after them."""
    start, at, closed = i, i, True
    end = len(said)
    while at < end and said[at] in (
        "(",
        ",",
        ":",
        "que",
        "solo",
        "apenas",
        "tiene",
        "tienen",
        "con",
        "ya",
        "tienen ya",
        "-",
    ):
        closed = False
        at += 1
    marked = any(w in ("(", "tiene", "tienen") for w in said[start:at])
    if at < end and said[at] == "de":
        marked, at = True, at + 1
    while at < end and said[at] in ("casi", "unos", "apenas", "solo", "como"):
        at += 1
    ages: list[int] = []
    while at < end and _number(said[at]) and int(said[at]) <= 99:
        ages.append(int(said[at]))
        at += 1
        if at < end and said[at] in (
            "años",
            "anos",
            "añitos",
            "año",
            "ano",
            "meses",
            "mes",
            "mesecitos",
            "semanas",
            "dias",
        ):
            if said[at] in ("meses", "mes", "mesecitos", "semanas", "dias"):
                ages[-1] = 0 if said[at] in ("semanas", "dias") else ages[-1] // 12
            at += 1
            marked = True
            if at + 1 < end and said[at : at + 2] == ["y", "medio"]:
                at += 2
        if at + 1 < end and said[at] in (",", "y", "e", "&", "/") and _age_follows(said, at + 1):
            at += 2 if said[at + 1] in ("y", "e", "de") and said[at] == "," else 1
            if at < end and said[at] == "de":
                at += 1
            continue
        break
    if not ages:
        return [], start
    months = next((w for w in said[start:at] if w in ("meses", "mesecitos")), None)
    if months and len(ages) > 1 and said[at - 1] == months:
        pass  # "de 4 años y de 8 meses": each has its own
    if at < end and said[at] == ")":
        at += 1
    elif not marked and (closed or (at < end and said[at] not in (",", "y", "."))):
        return [], start  # "2 niños, 3 botellas"
    elif not marked and at < end and said[at] == "y":
        return [], start
    return ages, at


def _age_follows(said: Sequence[str], i: int) -> bool:
    if i < len(said) and said[i] in ("y", "e", "de"):
        i += 1
    if i >= len(said) or not _number(said[i]) or int(said[i]) > 99:
        return False
    after = said[i + 1] if i + 1 < len(said) else "."
    return after in (
        ",",
        "y",
        "e",
        ")",
        ".",
        "años",
        "anos",
        "añitos",
        "meses",
        "año",
        "pero",
        "mas",
        "con",
        "que",
        "para",
        "en",
    )


def letter_of(age: int) -> str:
    return next(letter for letter, group in LETTER.items() if group == group_of_age(age))
