"""Diets and allergies of the writer or a member of the party."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from functools import cache

from planning.potluck import Need
from planning.replies.intents import Intent, ReplyContext, SetNeeds, SetPregnant
from planning.replies.spanish.lexicon import any_of, value_of
from planning.replies.spanish.traps import laughing
from planning.replies.text import Sentence

_NONE = re.compile(
    r" (?:sin (?:alergias|restricciones|problemas)|no (?:tengo|tenemos|hay) (?:ningun[ao]s? )?(?:alergias?|restriccion(?:es)?)"
    r"|ninguna alergia|(?:como|comemos) de todo|nada especial|nada en especial)(?= |$)"
)
_GONE = re.compile(r" (?:ya no (?:soy|es|somos|tiene|tengo)|quita|quitar|borra|elimina) ")
_SEVERE = re.compile(r" (?:grave|severa|muy alergic[oa]|anafilaxia|anafilactic[oa]|epinefrina|mortal|peligros[oa]) ?")
_PREGNANT = re.compile(r" (?:(?:estoy|esta|estamos) (?:embarazadas?|esperando (?:un )?bebe)|embarazada)(?= |$)")


@cache
def _allergic() -> re.Pattern[str]:
    things = any_of("allergen")
    return re.compile(
        rf" (?P<how>alergic[oa]s?(?: grave)?|alergia(?: grave| severa)?|intolerantes?|intolerancia|no (?:puede|puedo|podemos|pueden)"
        rf" (?:comer|tomar|probar)|no (?:como|come|comemos|comen|tolero|tolera)) (?:muy )?(?:a |al |a la |a los |a las |el |la |los |las |ni |de )*"
        rf"(?P<first>{things})(?P<more>(?: ?,? ?(?:y|ni|o|e)? (?:a |al |a la |a los |a las |el |la |los |las )*(?:{things}))*)"
    )


@cache
def _diet() -> re.Pattern[str]:
    return re.compile(rf" ({any_of('need')})(?= |$|,)")


def read_needs(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    text = sentence.text
    if sentence.question:
        return []
    if (none := _NONE.search(text)) is not None and (" nada" not in none[0] or context.asked == "diets"):
        start, end = sentence.span_of(none)
        return [SetNeeds(context.writer, (), True, start=start, end=end, confidence=0.88)]
    if laughing(sentence):
        return []
    member = _member(text)
    found: dict[str, Need] = {}
    starts: list[tuple[int, int]] = []
    for match in _allergic().finditer(text):
        severity = _severity(match["how"], text)
        for word in re.findall(rf"(?:{any_of('allergen')})(?= |$|,)", f"{match['first']}{match['more']} "):
            need = value_of("allergen", word)
            found.setdefault(need, Need(need, _count(text, match.start()), severity))
        starts.append(sentence.span_of(match))
        sentence.take_match(match)
    for match in _diet().finditer(text):
        before = text[: match.start() + 1]
        need, _, severity = value_of("need", match[1]).partition("|")
        if re.search(
            r" (?:ensalada|plato|opcion|pastel|tarta|lasaña|pan|torta|postre|platillo|version|paella|tortilla)s?(?: [a-z]+)? $",
            before,
        ):
            continue  # of a dish, not of a person
        if (
            match[1].startswith("sin ")
            and context.asked != "diets"
            and not re.search(r" (?:soy|es|como|come|comemos|comida|dieta|somos) ", before)
        ):
            continue
        found.setdefault(need, Need(need, _count(text, match.start()), severity))
        starts.append(sentence.span_of(match))
    intents: list[Intent] = []
    if found:
        start, end = min(s for s, _ in starts), max(e for _, e in starts)
        gone = _GONE.search(text) is not None
        sure = 0.6 if gone else 0.9
        intents.append(
            SetNeeds(context.writer, tuple(found.values()), gone, member, start=start, end=end, confidence=sure)
        )
    if (expecting := _PREGNANT.search(text)) is not None:
        start, end = sentence.span_of(expecting)
        denied = re.search(r" no (?:estoy|esta) ", text) is not None
        intents.append(SetPregnant(context.writer, not denied, member, start=start, end=end, confidence=0.88))
    return intents


def _severity(how: str, text: str) -> str:
    if how.startswith("intoleran") or "tolero" in how or "tolera" in how:
        return "intolerance"
    if _SEVERE.search(text):
        return "severe allergy"
    return "allergy"


def _count(text: str, at: int) -> int:
    """ "2 somos veganos": how many, where it is said right before."""
    before = text[: at + 1]
    said = re.search(r" ([0-9]{1,2}) (?:somos|son|de nosotros son|personas son) $", before)
    if said is None and re.search(r" (?:todos )?somos $", before):
        said = re.search(r" (?:somos|vamos|seremos) ([0-9]{1,2}) ", text)  # "somos 2 y somos veganos"
    return int(said[1]) if said else 1


def _member(text: str) -> str | None:
    match = re.search(rf" mi ({any_of('kin')})(?= |$)", text)
    return match[1] if match else None
