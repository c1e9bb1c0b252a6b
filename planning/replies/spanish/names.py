"""Names of dishes and of what goes with them, word by word: where one ends, and what sort of thing it is."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

from planning.dishes import lookup
from planning.dishes.catalogue import Dish
from planning.dishes.index import dish_in
from planning.replies.spanish.lexicon import PLAIN, value_of, words
from planning.replies.spanish.members import phrase
from planning.replies.spanish.verbs import finite
from planning.tables import rows

_INFINITIVE = re.compile(r"^[a-zñ]{2,}(?:ar|er|ir)(?:[mts]e|l[oa]s?|les?|nos)?$")
LONGEST_NAME = 7
"""Words of a dish's name."""
UNKNOWN_NAME = 5
"""Words of a name nobody here knows."""
JOINS = frozenset((",", "y", "e", "+", "&", "mas", "ademas", "tambien", "-", "–", "aparte", ":", "(", ")", "ni"))
_WITH = frozenset(("de", "del", "con", "sin", "al", "en", "tipo", "estilo"))
_OWN = frozenset(
    (
        "mi",
        "mis",
        "nuestra",
        "nuestro",
        "nuestras",
        "nuestros",
        "la",
        "el",
        "los",
        "las",
        "tu",
        "su",
        "ella",
        "ellos",
        "un",
        "una",
    )
)


def past_tail(said: Sequence[str], i: int) -> int:
    """Past what only praises or explains: "caseros", "de mi abuela", "para compartir"."""
    while i < len(said):
        _, n = phrase(said, i, "tail")
        rest = " " + " ".join(said[i : i + 6]) + " "
        if not n and (extra := _AFTER.match(rest)) is not None:
            n = len(extra[0].split())
        if not n:
            return i
        i += n
    return i


_AFTER = re.compile(
    r"^ (?:de (?:mi|nuestra|la) (?:abuela|madre|mama|suegra|tia|huerta|casa|jardin|receta|autora?)|de la (?:abuela|huerta|casa)|de l[oa]s? (?:de (?:mi |la |el |su )?[a-zñ]+|mi[oa]s?|nuestr[oa]s?|buen[oa]s?|ric[oa]s?|grandes?|caser[oa]s?|verdad)|del (?:bueno|rico|bueno bueno|barato)|de es[oa]s? (?:de|que|con) [a-zñ ]{2,30}|de (?:camino|paso|ida|vuelta)|(?:ese|el mismo) dia|para (?:el|este) (?:sabado|domingo|viernes|dia)|para la (?:fiesta|cena|comida|reunion)|el (?:sabado|domingo|viernes)|mañana|hoy|temprano|por la mañana|para (?:compartir|picar|acompañar|el postre|empezar|la sobremesa|la picada|los niños|los peques|brindar|el brindis|el aperitivo|el asado|la parrilla|comer|cenar|todo el mundo)"
    r"|que (?:hago|hacemos|siempre hago|me sale[n]? (?:bien|riquisim[oa]s?|muy bien)|hace mi (?:mama|madre|abuela|suegra|marido|esposa|mujer)|(?:me |nos )?(?:queda[n]?|sale[n]?) (?:muy )?(?:bien|ric[oa]s?|buen[oa]s?))|si (?:quieren|les parece|os parece|queres|quereis|gustan|no hay)|por si acaso|por si (?:faltan?|las moscas)|bien (?:fri[oa]s?|ric[oa]s?|picante|calientit[oa]s?)|recien hech[oa]s?|como siempre|otra vez|de siempre|hech[oa]s? en casa|en (?:el|la) (?:super|panaderia|pasteleria|mercado|mercadona|tienda|supermercado|pescaderia|carniceria)|del (?:super|mercado|chino)|de la (?:tienda|panaderia|pasteleria|esquina|carniceria)|comprad[oa]s?|de (?:compra|supermercado)|y ya(?: esta)?|y listo|y arreando|y va que chuta) "
)


def more_of_a_name(said: Sequence[str], i: int, vague: str) -> bool:
    """ "Algo de queso", "el postre de limón", "una ensalada de garbanzos" are more than the vague words they begin with."""
    if i >= len(said):
        return False
    if vague in ("algo", "unas cosas") and said[i] not in ("de", "para", "y", ",", "que", "por", "tambien", "a"):
        return phrase(said, i, "stop")[1] == 0 and said[i] not in finite()
    return said[i] in ("de", "con", "sin", "al") or (
        _plausible(said[i]) and not phrase(said, i, "tail")[1] and said[i] not in JOINS
    )


def _plausible(word: str) -> bool:
    return word.replace("-", "").isalpha() and word not in words("stop") and word not in finite() and word not in JOINS


def name_at(said: Sequence[str], i: int, toppings: Sequence[str]) -> tuple[int, str, float]:
    """(the end of the name at word `i`, its category, how sure it is one)."""
    best, category, sure = i, "", 0.0
    if i < len(said) and said[i] in words("nofood"):
        return i, "", 0.0
    lowered = {t.casefold() for t in toppings}
    for k in range(min(len(said), i + LONGEST_NAME), i, -1):
        text = " ".join(NUMERALS.get(w, w) for w in said[i:k])
        if text in lowered:
            return k, "topping", 0.9
        if (
            said[k - 1] in JOINS
            or said[k - 1] in _WITH
            or not text.replace(" ", "").replace("-", "").isalnum()
            or not text[:1].isalpha()
            or (said[i].isdecimal() and k < i + 2)
        ):
            continue
        if (dish := known_dish(text)) is not None and not (
            k == i + 1
            and (said[i] in finite() or (said[i] in ("te", "mate", "mesa") and k < len(said) and said[k] in finite()))
        ):
            best, category, sure = k, dish.category, 0.9
            break
    end = _onward(said, best if best > i else i, i, known=best > i)
    if best > i:
        while end > best and " ".join(said[best:end]) in words("tail"):
            end = best
        end = _without_tail(said, best, end)
        return end, category, sure if end == best else min(sure, 0.88)
    end = _without_tail(said, i + 1, end)
    if end - i > UNKNOWN_NAME and not category_of(" ".join(said[i:end]))[0]:
        return i, "", 0.0
    if end == i or not any(len(w) > 2 for w in said[i:end]):
        return i, "", 0.0
    name = " ".join(said[i:end])
    category, sure = category_of(name)
    if not category and (_INFINITIVE.search(said[i]) or any(w in words("nofood") for w in said[i:end])):
        return i, "", 0.0  # "hago constar", "traigo hambre"
    return end, category, sure


NUMERALS = {"2": "dos", "3": "tres", "4": "cuatro", "5": "cinco", "7": "siete"}
"""Inside a name numbers are words: "pastel de tres leches"."""


def _without_tail(said: Sequence[str], least: int, end: int) -> int:
    """The end of a name without the praise at its end."""
    while end > least:
        cut = next((n for n in (4, 3, 2, 1) if end - n >= least and " ".join(said[end - n : end]) in words("tail")), 0)
        if not cut:
            break
        end -= cut
    return end


def _onward(said: Sequence[str], at: int, first: int, *, known: bool) -> int:
    """How far a name goes on behind what is known of it."""
    i = at
    while i < len(said) and i - first < LONGEST_NAME:
        word = said[i]
        if i > first and word in ("al", "a", "en") and _FEAST.match(" " + " ".join(said[i : i + 3]) + " "):
            break
        if word in ("y", "e") and _beside_inside(said, first, i):
            i += 2  # "sandwiches de jamón y queso"
            continue
        if word in _WITH and i > first:
            if i + 1 >= len(said) or not _plausible(said[i + 1]) or said[i + 1] in _OWN or phrase(said, i, "eaters")[1]:
                break
            if (phrase(said, i + 1, "kin")[1] and known_dish(said[i + 1]) is None and said[i + 1] not in words("head")) or said[i + 1] in (
                "parte",
                "casa",
                "camino",
                "paso",
                "regreso",
                "final",
                "amor",
                "gusto",
                "ganas",
                "gusto",
                "cariño",
                "cuenta",
                "ustedes",
                "vosotros",
            ):
                break
            i += 2
            continue
        if (
            word == "a"
            and i > first
            and i + 2 < len(said)
            and said[i + 1] in ("la", "las", "los")
            and _plausible(said[i + 2])
            and said[i + 2] not in ("fiesta", "cena", "comida", "reunion", "una", "tarde", "noche")
        ):
            i += 3
            continue
        if (
            not _plausible(word)
            or phrase(said, i, "eaters")[1]
            or _AFTER.match(" " + " ".join(said[i : i + 6]) + " ")
            or (known and i > first and phrase(said, i, "neutral")[1])
        ):
            break
        i += 1
    return i


_FEAST = re.compile(
    r" (?:(?:al|en el) (?:asado|convite|convivio|almuerzo|evento|picnic|cumple[a-z]*)|(?:a|en) la (?:fiesta|cena|comida|reunion|barbacoa|parrillada|juntada|junta|merienda)) "
)
""" "Empanadas al asado": where they go, not how they are made."""
_FILLINGS = re.compile(r"(?:harina|azucar|sal|agua|vino|cerveza|ron|aceite|galletas|vinagre|gelatina|hielo|pan)$")
"""What is no filling, though it is an ingredient: "guacamole con chips y cerveza"."""


@cache
def _ingredients() -> frozenset[str]:
    return frozenset(r["name"].translate(PLAIN) for r in rows("ingredients_es") if " " not in r["name"])


def _beside_inside(said: Sequence[str], first: int, i: int) -> bool:
    """Whether "y queso" at word `i` goes on with what a dish is of: "de jamón y queso", one word each, nothing behind."""
    if i - 2 <= first or said[i - 2] not in ("de", "con") or i + 1 >= len(said):
        return False
    inside, beside = said[i - 1], said[i + 1]
    after = said[i + 2] if i + 2 < len(said) else ","
    return (
        inside in _ingredients()
        and beside in _ingredients()
        and _FILLINGS.match(beside) is None
        and (after in (",", "y", "para", "pa", "como", ".", "(", "que", "por", "unos", "unas") or after in words("tail"))
    )


def known_dish(text: str) -> Dish | None:
    """The dish of that Spanish name, its words in the singular or plural."""
    text = words("alias").get(text, text)
    if (dish := dish_in("es", text)) is not None:
        return dish
    pieces = text.split()
    for form in _singulars(pieces) if pieces else ():
        if (dish := dish_in("es", form)) is not None:
            return dish
    return None


def _singulars(pieces: Sequence[str]) -> list[str]:
    """ "flanes" -> "flan", "empanada" -> "empanadas": the head changed, or every word."""
    found = []
    head, rest = pieces[0], list(pieces[1:])
    for one in _numbers(head):
        found.append(" ".join([one, *rest]))
        if rest:
            found.append(" ".join([one, *(_numbers(w)[0] if w not in _WITH else w for w in rest)]))
    for small, plain in (
        ("itos", "os"),
        ("itas", "as"),
        ("ito", "o"),
        ("ita", "a"),
        ("cito", ""),
        ("citos", "es"),
        ("ecito", "e"),
    ):
        if head.endswith(small) and len(head) > len(small) + 2:
            stem = head.removesuffix(small)
            stem = stem[:-2] + "c" if stem.endswith("qu") else stem
            found += [
                " ".join([stem + end, *rest]) for end in (plain, plain + "s" if not plain.endswith("s") else plain[:-1])
            ]
    return found


def _numbers(word: str) -> list[str]:
    if word.endswith("ces"):
        return [word[:-3] + "z"]
    if word.endswith("es") and len(word) > 4:
        return [word[:-2], word[:-1]]
    if word.endswith("s") and len(word) > 3:
        return [word[:-1]]
    return [word + "s", word + "es"] if len(word) > 2 else [word]


def category_of(name: str) -> tuple[str, float]:
    """(category, how sure): by the Spanish table, by its first words, else by the catalogue's own guess."""
    known = known_dish(name)
    if known is not None:
        return known.category, 0.9
    pieces = name.split()
    for n in range(len(pieces) - 1, 0, -1):
        if (known := known_dish(" ".join(pieces[:n]))) is not None:
            return known.category, 0.86
    for form in (pieces[0], *_singulars(pieces[:1])):
        if form in words("head"):
            return value_of("head", form), 0.86
    guess = lookup(name)
    if guess.category is not None and guess.confidence >= 0.8:
        return guess.category, 0.85
    return "", 0.6
