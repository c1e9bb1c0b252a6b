"""What is brought, read word by word: how much, what, for how many - "docena y media de empanadas, unas 30, para 12"."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache

from planning.replies.spanish.lexicon import any_of, value_of, words
from planning.replies.spanish.members import group_at, phrase
from planning.replies.spanish.names import JOINS, NUMERALS, known_dish, more_of_a_name, name_at, past_tail

_NUMBER = re.compile(r"[0-9]+(?:[.,][0-9]+)?|[1-9]/[2-9]")
_ABOUT = frozenset(("unos", "unas", "como", "casi", "aprox", "alrededor", "cerca", "unas", "minimo", "maximo", "hasta"))
_FOR = re.compile(
    r"^ (?:(?:que )?(?:da|dan|alcanza|alcanzan|alcance|alcancen|rinde|rinden|rinda|llega|sirve|sirven|sale|salen|calcul[oae]|comen|hay|es|son|seria|seran|sera|eso da|eso alcanza|me da|ahi da) )?(?:(?:como|justo|bien|facil|mas o menos|comida|suficiente|de sobra|cantidad) )*"
    r"(?:para|por|pa) (?:(?:unos|unas|como|aprox|casi|los|las|todos los|todas las|alrededor de|mas o menos|cerca de|minimo|maximo|hasta|por lo menos|al menos|mas de|nosotros los|toda la banda de|las|un grupo de|bien) )*(?P<n>[0-9]{1,4})(?: (?:o|a|-) (?P<to>[0-9]{1,4}))?(?P<who>(?: (?:@EATERS))*)(?: (?:facil|por lo menos|minimo|mas o menos|aprox|sobrad[oa]s?|mas|de sobra|o asi|o mas|bien|tranqui|comodamente|y pico|tragones))*(?= )"
    r"|^ (?:(?:que )?(?:comen|alcanza|rinde|sirve|dan?|salen?) )(?:(?:unos|unas|como|casi|hasta) )?(?P<n2>[0-9]{1,4})(?: (?:@EATERS))*(?= )"
    r"|^ (?:de |unas |unos |como )*(?P<n3>[0-9]{1,4}) (?:porciones|raciones)(?= )"
)  # fmt: skip
_ALL = re.compile(
    r"^ (?:(?:que )?(?:alcance|alcanza|alcanzan|da|rinde|haya|hay|suficiente|bastante) )*(?:para|pa|de sobra para) (?:tod[oa]s?(?: (?:nosotros|ustedes|vosotros|los? que vengan|el mundo|la banda|la gente|la familia|el grupo|los invitados|los presentes))?|un (?:regimiento|batallon|ejercito)|medio mundo|el grupo(?: entero)?|los que (?:seamos|vengan)|la banda|toda la (?:banda|gente|familia|raza|tropa|peña))(?= )"
)


_THAT_ONE = frozenset(("ese", "esa", "esos", "esas", "aquel", "aquella", "una", "uno", "unas", "unos", "otra", "otro", "otras", "otros", "todo", "toda", "todos", "todas", "la", "el", "las", "los"))  # fmt: skip
_HOW_IT_IS = frozenset(("con", "que", "de", "sin", "del", "tipo", "estilo"))


def _told(said: Sequence[str], i: int) -> bool:
    """Whether an article or an amount makes a thing of what follows."""
    if said[i] in ("el", "la", "los", "las") and i + 1 < len(said):
        return not any(said[i + 1] in words(role) for role in ("stop", "plain", "kin", "group", "nofood"))
    return said[i] in ("un", "una", "unos", "unas", "mi", "mis") or _NUMBER.fullmatch(said[i]) is not None


def _describes(said: Sequence[str], i: int) -> bool:
    """Whether what stands behind a comma or "y" tells of the thing before it: "una con cebolla y otra sin"."""
    if said[i] in ("sin", "con", "de", "tipo", "estilo"):
        return True
    return said[i] in _THAT_ONE and i + 1 < len(said) and said[i + 1] in _HOW_IT_IS


@dataclass(frozen=True)
class Thing:
    """One thing of a list: tokens `first` up to, not including, `last`; its name is tokens `name[0]` up to `name[1]`."""

    first: int
    last: int
    name: tuple[int, int]
    category: str = ""
    known: float = 0.0
    """How sure it is food or what goes with it."""
    servings: float | None = None
    quantity: str | None = None
    vague: bool = False
    for_all: bool = False


@cache
def _for() -> re.Pattern[str]:
    return re.compile(_FOR.pattern.replace("@EATERS", any_of("eaters")))


def read_things(
    said: Sequence[str], i: int, *, toppings: Sequence[str] = (), most: int = 12
) -> tuple[list[Thing], int]:
    """The things told from word `i` on, and the first word that belongs to none of them."""
    found: list[Thing] = []
    at = i
    while at < len(said) and len(found) < most:
        start = at
        while at < len(said) and said[at] in JOINS:
            at += 1
        if at >= len(said):
            break
        if found and at > start and (skipped := _other_cook(said, at)) != at:
            if skipped < 0:
                return found, start
            at = skipped
        if found and at > start and _describes(said, at):
            return found, start  # "un flan, ese con mucho caramelo", "lasaña, sin carne"
        if found and (more := attached(said, at, found[-1])) is not None:
            found[-1] = replace(more[0], last=more[1])
            at = more[1]
            continue
        if found and start == at:
            # Nothing joins what follows to the thing before it.
            return found, start
        thing = thing_at(said, at, toppings)
        if thing is None or (found and found[0].category and not thing.category and not thing.vague and not _told(said, at)):
            return found, start  # a word nobody knows behind a dish is hardly another one
        found.append(thing)
        at = thing.last
    return found, at


def _other_cook(said: Sequence[str], i: int) -> int:
    """Behind "mi marido" in "llevo arroz y mi marido el pan", whose verb is left out; -1 where somebody is spoken of
    otherwise ("y mi hija es vegana"); `i` itself where it is nobody."""
    if i < len(said) and said[i] in ("yo", "nosotros", "nosotras"):
        return i
    group = group_at(said, i, False)
    if group is None or not (group.own or group.kin) or said[i] not in ("mi", "mis", "nuestro", "nuestra", "la", "el"):
        return i
    after = group.last
    while after < len(said) and said[after] in (",", "tambien"):
        after += 1
    if after < len(said) and said[after] in ("el", "la", "los", "las", "un", "una", "unos", "unas"):
        return after
    return -1


def attached(said: Sequence[str], i: int, thing: Thing) -> tuple[Thing, int] | None:
    """What is added to the thing before: "para unos 15", ", 40", ", tres botellas", "un caldero grande"."""
    if said[i] in ("blanco", "blanca", "tinto", "rosado", "rojo", "roja", "verde", "integral", "dulce", "salado", "negro"):
        return thing, i + 1  # "vino tinto y blanco"
    if said[i] == "de" and i + 1 < len(said) and _NUMBER.fullmatch(said[i + 1]):
        size, after = quantity_at(said, i + 1)  # "refresco de 3 litros"
        if size is not None and " " in size:
            bare = thing.quantity is not None and _NUMBER.fullmatch(thing.quantity) is not None
            return replace(thing, quantity=f"{thing.quantity} de {size}" if bare else thing.quantity or size), after
    servings, after, for_all = _feeds(said, i)
    if after > i:
        return replace(thing, servings=servings or thing.servings, for_all=for_all or thing.for_all), after
    if thing.quantity is None:
        amount, after = quantity_at(said, i)
        if amount is None and said[i] in ("un", "una") and i + 1 < len(said) and phrase(said, i + 1, "unit")[1]:
            amount, after = f"1 {said[i + 1]}", i + 2
        if amount is not None:
            while after < len(said) and said[after] in words("size"):
                after += 1
            if (
                after < len(said)
                and said[after] == "de"
                and after + 1 < len(said)
                and _NUMBER.fullmatch(said[after + 1])
            ):
                size, end = quantity_at(said, after + 1)  # "6 de dos litros"
                if size is not None:
                    amount, after = f"{amount} de {size}", end
            if after >= len(said) or said[after] in (",", "y", ")", "para", "por", "que", "pero", "mas", "-", "."):
                return replace(thing, quantity=amount), after
    return None


def _feeds(said: Sequence[str], i: int) -> tuple[float | None, int, bool]:
    if not 0 <= i < len(said):
        return None, i, False
    rest = " " + " ".join(said[i : i + 16]) + " "
    if (every := _ALL.match(rest)) is not None:
        return None, i + len(every[0].split()), True
    many = _for().match(rest)
    if many is None:
        return None, i, False
    n = many["to"] or many["n"] or many["n2"] or many["n3"]
    return float(n), i + len(many[0].split()), False


def _figure(said: str) -> float:
    """ "1,5" or "1/2" as a number."""
    whole, _, parts = said.partition("/")
    return float(whole) / float(parts) if parts else float(whole.replace(",", "."))


def quantity_at(said: Sequence[str], i: int) -> tuple[str | None, int]:
    """An amount at word `i` as the tables of amounts read it ("1.5 kilos"), and the position after it."""
    at = i
    while at < len(said) and said[at] in _ABOUT:
        at += 1 + (at + 1 < len(said) and said[at] in ("alrededor", "cerca") and said[at + 1] == "de")
    number: float | None = None
    if at < len(said) and _NUMBER.fullmatch(said[at]):
        number, at = _figure(said[at]), at + 1
        if at + 1 < len(said) and said[at] in ("o", "-", "a") and _NUMBER.fullmatch(said[at + 1]):
            number, at = _figure(said[at + 1]), at + 2
    elif at < len(said) and said[at] in ("medio", "media"):
        number, at = 0.5, at + 1
    elif at < len(said) and said[at] in ("un", "una"):
        number, at = 1.0, at + 1
        if at < len(said) and said[at] in ("par", "parcito"):
            number, at = 2.0, at + 1
            if at < len(said) and said[at] == "de":
                at += 1
            if not phrase(said, at, "unit")[1]:
                return f"{number:g}", at
    elif at < len(said) and said[at] == "par":
        return "2", at + 1 + (at + 1 < len(said) and said[at + 1] == "de")
    half = at + 1 < len(said) and said[at] == "y" and said[at + 1] in ("medio", "media")
    if half and number is not None:
        number, at = number + 0.5, at + 2
    while (
        at < len(said) and said[at] in ("buen", "buena", "gran", "tremenda", "buenas", "buenos") and number is not None
    ):
        at += 1
    unit, n = phrase(said, at, "unit")
    if not n and at + 1 < len(said) and said[at] in words("size"):
        unit, n = phrase(said, at + 1, "unit")
        at += 1 if n else 0
    if n:
        bare = number is None
        number, at = number if number is not None else 1.0, at + n
        if at + 1 < len(said) and said[at] == "y" and said[at + 1] in ("medio", "media"):
            number, at = number + 0.5, at + 2
        elif bare and (at >= len(said) or said[at] not in ("de", "y")):
            return None, i  # "fuente" by itself is no amount
        end = at
        while at < len(said) and said[at] in words("size"):
            at += 1
        size = " ".join(said[end:at])
        if (
            at < len(said)
            and said[at] in ("de", "del", "con")
            and not (at + 1 < len(said) and _NUMBER.fullmatch(said[at + 1]) and not _numbered(said, at + 1))
        ):
            at += 1
        return f"{number:g} {unit}" + (f" {size}" if size else ""), at
    if number is not None and number >= 1 and said[at - 1] not in ("un", "una"):
        return f"{number:g}", at
    return None, i


def _numbered(said: Sequence[str], i: int) -> bool:
    """Whether a dish's name begins with a number here: "tres leches"."""
    return i + 1 < len(said) and said[i] in NUMERALS and known_dish(f"{NUMERALS[said[i]]} {said[i + 1]}") is not None


def _unit_in_name(said: Sequence[str], i: int, after: int) -> int | None:
    """Where a name begins whose first word was taken for a measure: "tabla de quesos"."""
    for k in range(i, min(after, len(said))):
        of = said[k + 1 : k + 2] == ["de"] and phrase(said, k, "unit")[1]
        if of and said[k] in words("head") and value_of("head", said[k]) != "supplies":
            return k
    return None


def thing_at(said: Sequence[str], i: int, toppings: Sequence[str] = ()) -> Thing | None:
    """One thing from word `i` on, or None."""
    first, at = i, i
    amount: str | None = None
    at = _past_leads(said, at)
    servings, for_all = None, False
    vague, n = phrase(said, i, "vague")
    if not n:
        vague, n = phrase(said, at, "vague")
        begins = at
    else:
        begins = i
    if n and not more_of_a_name(said, begins + n, vague):
        servings, after, for_all = _feeds(said, begins + n)
        after = past_tail(said, after)
        return Thing(first, after, (begins, begins + n), value_of("vague", vague), 0.85, servings, None, True, for_all)
    numbered = _numbered(said, at)
    if not numbered:  # "una tres leches" is one dish
        amount, after = quantity_at(said, i)
    if amount is None and at > i and not numbered:
        amount, after = quantity_at(said, at)
    if amount is not None and (named := _unit_in_name(said, i, after)) is not None:
        amount, after = (said[i] if _NUMBER.fullmatch(said[i]) else None), named  # "una tabla de quesos"
        at = named
    if amount is not None:
        at = _past_leads(said, after)
        servings, after, for_all = _feeds(said, at)
        if after > at:
            at = after
    end, category, sure = name_at(said, at, toppings)
    if end == at:
        return None
    name = (at, end)
    at = end
    more, after, every = _feeds(said, at)
    servings, for_all, at = more or servings, every or for_all, after
    if amount is None and at < len(said) and said[at] == "(":
        inner, after = quantity_at(said, at + 1)
        if inner is not None and after < len(said) and said[after] == ")":
            amount, at = inner, after + 1
        else:
            more, after, every = _feeds(said, at + 1)
            if after > at + 1 and after < len(said) and said[after] == ")":
                servings, for_all, at = more or servings, every or for_all, after + 1
    at = past_tail(said, at)
    return Thing(first, at, name, category, sure, servings, amount, False, for_all)


def _past_leads(said: Sequence[str], i: int) -> int:
    while i < len(said):
        _, n = phrase(said, i, "lead")
        if not n or (
            n == 1 and said[i] in ("de", "del", "con", "a", "al") and i + 1 < len(said) and said[i + 1] in ("que",)
        ):
            break
        i += n
    return i
