"""What is said of somebody else: another guest's answer, dish or allergy - asked about - and who brings it with the writer."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.potluck import Answer
from planning.replies.intents import AddPromise, Intent, ReplyContext, SetAnswer, SetNeeds
from planning.replies.spanish.lexicon import PLAIN, any_of
from planning.replies.spanish.needs import read_needs
from planning.replies.spanish.offers import offered
from planning.replies.spanish.verbs import any_form
from planning.replies.text import Sentence, Token

HEARD = 0.7
"""How sure we are of what somebody says of others."""
_GO = r"(?:viene|va|vendra|ira|puede|podra|llega|asiste|asistira|se apunta|se suma|se prende|confirma|confirmo|cae|estara|va a (?:venir|ir|poder))"
_NO = rf"(?:(?:(?:al final|ya|tampoco|creo que|este año|esta vez) )*no (?:{_GO[3:-1]}|se apunta|llega)|se (?:baja|bajo|cae|rajo|raja)|cancela|cancelo|(?:que )?esta (?:enferm[oa]|de viaje|fuera|con (?:gripe|fiebre|covid)|mal[oa]?|de guardia|indispuest[oa]|engripad[oa]|resfriad[oa]))"
_TOLD = r"(?: (?:me|nos|os|les|ya))*(?: (?:dijo|dice|ha dicho|comenta|comento|avisa|aviso|escribio|confirmo|confirma|pide que (?:diga|avise)|pidio que (?:diga|avise)|manda decir|cuenta))(?: (?:que|a))?"
_AFTER = re.compile(
    rf"(?:{_TOLD})? ?(?: (?:tambien|al final|si|seguro|mañana|entonces|finalmente|pues))* (?:(?P<no>{_NO})|(?P<maybe>(?:tal vez|quizas?|a lo mejor|capaz que|igual|no sabe si|puede que) (?:viene|va|venga|vaya|puede|pueda))|(?P<yes>(?:si )?{_GO}(?! a (?:llevar|traer|hacer|la|el|su)| (?:celiac|vegan|vegetarian|alergic|embarazad|llevar|comer|al |en |mal|bien|con el|de ))))(?= )"
)
_BRINGS = re.compile(
    rf"(?:{_TOLD})?(?: (?:tambien|y|, |les|os|nos|se encarga de|se encarga del|va a|puede|quiere))* (?:{any_form('bring', '3s', '3p', 'f3', 'inf')})(?= )|(?: (?:tambien|ya))* se encarga (?:de|del)(?= )"
)
_KIN_BRINGS = re.compile(
    rf" (?:mi|nuestr[oa]) (?P<kin>{any_of('kin')})(?: (?:tambien|les|os|nos|te|va a|quiere|puede|dice que|dijo que|se ofrece a|se encarga de|se encarga del))* (?:{any_form('bring', '3s', 'f3', 'inf')})(?: (?:{any_form('bring', 'inf')}))?(?= )"
)


def read_others(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Another guest's answer, dish or needs; a dish a relative makes: all asked about."""
    if sentence.question:
        return []
    text = sentence.text
    for guest, name in context.guests:
        if guest == context.writer:
            continue
        for shape in dict.fromkeys((name.casefold().translate(PLAIN), name.casefold().translate(PLAIN).split()[0])):
            at = re.search(
                rf"(?:^|(?<= ,)|(?<= y)|(?<= que)|(?<= pero)|(?<= -)|(?<= dice)|(?<= dijo)|(?<= avisa)|(?<= aviso)|(?<= cuenta)|(?<= segun)) (?:a )?{re.escape(shape)}(?= )(?! y yo)(?: que(?: (?:ella|el|al final|siempre|ya))*(?= ))?",
                text,
            )
            if at is not None and (made := _of_guest(sentence, context, guest, at.start(), at.end())):
                return made
    return []


def _of_guest(sentence: Sentence, context: ReplyContext, guest: str, first: int, after: int) -> list[Intent]:
    text = sentence.text
    rest = text[after:]
    if (came := _AFTER.match(rest)) is not None:
        answer = Answer.NO if came["no"] else Answer.MAYBE if came["maybe"] else Answer.YES
        start, end = _span(sentence, first, after + came.end())
        made: list[Intent] = [SetAnswer(guest, answer, start=start, end=end, confidence=HEARD)]
        brings = re.match(rf" y (?:{any_form('bring', '3s', 'f3')})(?= )", rest[came.end() :])
        if brings is not None and answer is Answer.YES:
            made += _brought(sentence, after + came.end() + brings.end(), context, guest)
        return made
    if (brings := _BRINGS.match(rest)) is not None:
        return _brought(sentence, after + brings.end(), context, guest)
    if re.match(r"(?: (?:tambien|si))* (?:es|tiene|no (?:puede|come|tolera|bebe|toma))(?= )", rest):
        told = [i for i in read_needs(Sentence(sentence.tokens, False), context) if isinstance(i, SetNeeds)]
        return [replace(i, who=guest, member=None, confidence=HEARD) for i in told]
    return []


def _brought(sentence: Sentence, at: int, context: ReplyContext, guest: str) -> list[Intent]:
    made = [i for i in offered(sentence, at, context) if isinstance(i, AddPromise)]
    return [replace(i, by=guest, confidence=min(HEARD, i.confidence)) for i in made]


def read_kin_brings(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "Mi vieja hace la ensalada rusa para 12": asked about, as a dish of the writer's house."""
    found = _KIN_BRINGS.search(sentence.text)
    if found is None or sentence.question or re.search(r" (?:hacia|siempre|antes|no) ", sentence.text[: found.end()]):
        return []
    made = [i for i in offered(sentence, found.end() - 1, context) if isinstance(i, AddPromise) and i.category]
    return [replace(i, confidence=min(HEARD, i.confidence)) for i in made]


def with_another(sentence: Sentence, context: ReplyContext) -> tuple[Sentence, str | None]:
    """The sentence without the other cook ("Pat y yo hacemos" -> "nosotros hacemos"), and the other's id."""
    text = sentence.text
    for guest, name in context.guests:
        if guest == context.writer:
            continue
        for shape in dict.fromkeys((name.casefold().translate(PLAIN), name.casefold().translate(PLAIN).split()[0])):
            safe = re.escape(shape)
            both = re.search(
                rf" (?:entre )?(?:{safe} (?:y|e) yo|yo (?:y|con) {safe})(?= )(?! (?:vamos|iremos|venimos|no) )", text
            )
            beside = re.search(rf" (?:junto (?:a|con) |a medias con |con )(?:{safe})(?= $| ,| para | y )", text)
            match = both or beside
            if match is None:
                continue
            first, last = sentence.token_range(match)
            if both is None and not sentence.tokens[last - 1].raw[:1].isupper():
                continue
            held = sentence.tokens[first:last]
            one = (
                [Token("nosotros", " ".join(t.raw for t in held), held[0].start, held[-1].end)]
                if both is not None
                else []
            )
            return Sentence([*sentence.tokens[:first], *one, *sentence.tokens[last:]], sentence.question), guest
    return sentence, None


def _span(sentence: Sentence, first: int, last: int) -> tuple[int, int]:
    at = [
        t
        for i, t in enumerate(sentence.tokens)
        if first < sentence.offset(i) + len(t.plain) and sentence.offset(i) < last
    ]
    return (at[0].start, at[-1].end) if at else (0, 0)
