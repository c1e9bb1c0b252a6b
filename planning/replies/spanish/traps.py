"""What looks like an answer and is none: jokes, memories, wishes, hearsay, requests of others."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.intents import ReplyContext
from planning.replies.text import Message, Sentence

_JOKE = re.compile(
    r" (?:es|era|fue|son) (?:una )?broma(?: |$)| (?:broma|bromeo|bromeando|mentira|no se crean|es chiste) "
)
_LAUGH = re.compile(r" (?:ja){2,}j?a?| (?:je){2,}| lunes ")
_PAST = re.compile(
    r" (?:el (?:año|ano) pasado|la (?:vez|otra vez) pasada|la ultima vez|la otra vez|ayer|anoche|hace (?:un|una|[0-9]+)"
    r"|de (?:niño|nino|chico)|aquella vez|en aquel)"
)
_REPORTED = re.compile(
    r" (?:dijo|dice|dicen|decia|conto|cuenta|segun|me dijeron|comento|cree|piensa) (?:que |a |mi |el |la )?"
)
_WISH = re.compile(
    r" ojala| (?:pudiera|pudieramos|hubiera|hubieramos|fuera|tuviera|lloviera|viniera|vinieran|quisiera haber)"
    r"| me (?:gustaria|encantaria) (?:ir|poder|llevar)(?! y)| (?:seria|estaria|iria|iriamos|llevaria|llevariamos) "
    r"| que tal si | y si (?!voy|vamos|es)| por que no "
)
_OTHERS = re.compile(
    r"^ (?:no )?(?:traigan|lleven|vengan|traiga|lleva tu|trae|traete|lleven|hagan|pongan|acuerdense|recuerden|no olviden)"
    r"| (?:alguien|quien|quienes|ustedes|vosotros) (?:lleva|trae|puede|quiere|va|vio|sabe)"
    r"|^ (?:tu|vos|usted|ustedes) "
)
_ELSEWHERE = re.compile(
    r" (?:al|del|en el) (?:super|supermercado|trabajo|medico|doctor|gimnasio|banco|colegio|cole|autobus|metro)"
    r"| llevo (?:[0-9]+|un|una|unos|unas|toda|todo|varios|varias|mucho|muchas) (?:horas?|dias?|minutos?|semanas?|mes|meses"
    r"|años?|anos?|rato|tiempo|la)| (?:a|en) casa | me duele "
)


def joking(message: Message) -> bool:
    """The writer takes it back as a joke."""
    return _JOKE.search(f" {message.plain} ") is not None


def laughing(sentence: Sentence) -> bool:
    """An allergy to Mondays."""
    return _LAUGH.search(sentence.text) is not None


def blocked(sentence: Sentence, context: ReplyContext) -> str | None:
    """Why the sentence is not read as what its writer does, or None."""
    text = sentence.text
    if _PAST.search(text):
        return "past"
    if _REPORTED.search(text):
        return "reported"
    if _WISH.search(text) and not re.search(r" si puedo | si podemos ", text):
        return "hypothetical"
    if _OTHERS.search(text):
        return "others"
    if _ELSEWHERE.search(text) and not context.asked:
        return "elsewhere"
    return None
