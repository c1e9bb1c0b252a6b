"""What looks like an answer and is none: jokes, memories, wishes, hearsay, requests of others."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.intents import ReplyContext
from planning.replies.spanish.verbs import any_form, forms
from planning.replies.text import Message, Sentence

_JOKE = re.compile(
    r" (?:es|era|fue|son) (?:una )?(?:broma|chiste|guasa|joda|coña|vacilada|choro|talla)(?: |$)| (?:broma|bromi|bromita|bromeo|bromeando|mentira|mentiras|no se crean|no te creas|no os lo creais|es chiste|es joda|jodiendo|naa mentira|es coña|de coña|en broma|de broma|es guasa|los vacilo|te la creiste|no es cierto) "
)
_LAUGH = re.compile(
    r" (?:ja){2,}j?a?| (?:je){2,}| a(?:l| los?) (?:lunes|madrugar|trabajo|ejercicio|gimnasio|despertador|estupidos?|gente|drama)| xd+ "
)
_OURS = r"(?:lleve|traje|trajimos|hice|hicimos|prepare|compre|puse|cocine)"
_PAST = re.compile(
    r" (?:el (?:año|ano|mes|verano|invierno|finde|sabado|domingo|fin de semana) pasado|la (?:vez|otra vez|semana|navidad|fiesta|cena) pasada|la ultima vez|la otra vez|la vez (?:que|anterior)|ayer|antier|anteayer|anoche|(?<!desde )hace (?:un|una|unos|unas|mucho|muchos|[0-9]+|años|tiempo|poco)"
    r"|de (?:niñ[oa]|nin[oa]|chic[oa]|pequeñ[oa]|joven)|aquella vez|en aquel|en (?:mis|nuestros) tiempos|en mi epoca|cuando (?:era|eramos|tenia|viviamos|vivia)|antes (?:siempre |se )?(?:llevaba|traia|haciamos|ibamos)|siempre (?:traiamos|llevabamos|haciamos|ibamos)|en la otra (?:fiesta|cena|reunion)|aquel (?:dia|año))(?= |$)"
)
_BROUGHT = "|".join(sorted(forms("bring", "p3") - forms("bring", "1s"), key=len, reverse=True))
_WAS = re.compile(
    rf" (?:{any_form('bring', 'i')}|{_BROUGHT}|[a-zñ]+ó|eramos|fuimos|estuvimos|vinimos|trajimos|hicimos|sobro|sobraron|quedaron|salio|dijiste|habia)(?= )"
)
_REPORTED = re.compile(
    r" (?:dijo|dice|dicen|decia|dijeron|conto|cuentan|(?:me|nos|le) cuenta|segun (?:el|la|mi|dicen|me)|me dijeron|comento|cree|piensa|escribio|prometio|asegura|jura|juro|avisa|opina|pregunto|grito) (?:que |a |mi |el |la )?"
)
_WISH = re.compile(
    r" ojala(?! (?:pueda|podamos))| (?:pudiera|pudieramos|hubiera|hubieramos|(?<!estoy )(?<!estamos )(?<!estare )(?<!estaremos )(?<!ando )(?<!de )(?<!por )fuera(?! de)|fueramos|tuviera|tuvieramos|lloviera|viniera|vinieran|supiera|sacara|ganara|quisiera haber|pudiese|tuviese|fuese)"
    r"| me (?:gustaria|encantaria) (?:ir|poder|llevar|estar|verlos)(?! y)|(?<! le)(?<! nos)(?<! me) (?:seria|estaria|iria(?! (?:yo|sol[oa]|con|[0-9]|mi|nosotros))|iriamos(?! (?:l[oa]s|con|[0-9]|mi|tod[oa]s|nosotros))|llevaria|llevariamos|haria|comeria|deberia|deberiamos|habria|podrian|podria alguien) "
    r"| que tal si | el (?:año|mes|verano|invierno) que viene | el proximo (?:año|mes|verano) | algun dia |^ (?:oye |pero |che |oigan |, )*y si (?!, |$|voy|puedo|quier|quer|les|os|te|hace|falta|necesit|gust|alguien|nadie|no hay|vamos|es|cuent|contad|me|nos|lo)| por que no | deberia(?:n|mos)? | habria que | hay que (?:llevar|traer|hacer) (?!$)| alguien deberia "
)
_THEY = any_form("bring", "3s", "3p", "s3p", "imp")
_OTHERS = re.compile(
    r"^ (?:no )?(?:traigan|lleven|vengan|traiga|lleva tu|trae|traete|traela|traelo|llevala|hagan|pongan|acuerdense|recuerden|recordad|acordaos|no olviden|llevad|traed|venid|poned|haced|traigais|lleveis|no (?:llevad|traigais|traigan|lleven|olvideis)|que (?:alguien|cada|todos))(?= |$)(?! (?:con|me|que (?:yo |nosotros )?(?:llevo|llevamos|traigo|traemos|voy|vamos|somos|pongo|ponemos|hago)))"
    r"| (?:alguien|quien|quienes|ustedes|vosotros|cada (?:uno|quien|cual)) (?:lleva|trae|puede|quiere|va|vio|sabe|lleve|traiga|ponga|pone|que)(?= |$)"
    r"|^ (?:tu|vos|usted|ustedes|vosotros|vosotras) "
)
_ELSEWHERE = re.compile(
    r" (?:voy|vamos|ir|iba|estoy|estamos|llego|llegue|llegamos|salgo|vengo|venimos|ire)(?: [a-z]+)? (?:al|del|en el|para el|de el) (?:super|supermercado|trabajo|medico|doctor|gimnasio|gym|banco|colegio|cole|autobus|metro|baño|pueblo|hospital|taller|dentista|partido|cine|aeropuerto)"
    r"| (?:me )?llevo (?:ya )?(?:[0-9]+|un|una|unos|unas|toda|todo|varios|varias|mucho|muchas|como|todo el|toda la)(?: [0-9]+)? (?:horas?|dias?|minutos?|semanas?|mes|meses"
    r"|años?|anos?|rato|tiempo|vida|la (?:vida|tarde|mañana|noche)|el dia)(?= )| (?:estoy|estamos|llego|llegue|ando|voy|sigo|ya) (?:[a-z]+ )?(?:a|en|de) (?:mi )?casa (?:de mi|con|a las|ya)| (?:llego|voy|estoy|vamos) (?:a|en) (?:mi )?casa(?= )| me duele | (?:al taller|al cole|a la escuela|al colegio|a la oficina|al trabajo|a la junta|al medico) | (?:los niños|los nenes|las niñas|el coche|el carro|el auto|al perro|el perro|la moto|a los (?:niños|nenes|chicos)) (?:a|al) "
)


def joking(message: Message) -> bool:
    """The writer takes it back as a joke."""
    return _JOKE.search(f" {message.plain} ") is not None


def laughing(sentence: Sentence) -> bool:
    """An allergy to Mondays."""
    return _LAUGH.search(sentence.text) is not None


_MADE_BEFORE = re.compile(
    rf" (?:{any_form('bring', '1s', '1p', 'f1')}) (?!que )[a-zñ0-9 ]+ que (?:ya )?(?:hice|hicimos|prepare|preparamos|compre|compramos|cocine|hornee|me sobro|me sobraron|me quedo|me quedaron|sobro|sobraron) "
)
""" "Llevo un bizcocho que hice ayer": brought now, though made before."""


def blocked(sentence: Sentence, context: ReplyContext) -> str | None:
    """Why the sentence is not read as what its writer does, or None."""
    text = sentence.text
    if (_PAST.search(text) or _told_past(sentence)) and _MADE_BEFORE.search(text) is None:
        return "past"
    if _REPORTED.search(text):
        return "reported"
    if _WISH.search(text) and not re.search(
        r" (?:si puedo|si podemos|no podria(?:mos)? (?:faltar|perder)|podria (?:llevar|traer|hacer|poner|preparar|aportar|comprar)|podriamos (?:llevar|traer|poner|aportar)|me (?:gustaria|encantaria) llevar|nos gustaria llevar) ",
        text,
    ):
        return "hypothetical"
    if _OTHERS.search(text):
        return "others"
    if _ELSEWHERE.search(text) and not context.asked:
        return "elsewhere"
    return None


_NOW = re.compile(
    rf" (?:{any_form('bring', '1s', '1p', 'f1')}|voy|vamos|somos|seremos|puedo|podemos|soy|tengo|es|somos|no como) "
)


def _told_past(sentence: Sentence) -> bool:
    """Whether it tells of what somebody brought once and of nothing now."""
    if any(
        t.raw.endswith(("é", "ó")) and t.plain.rstrip("oe") and re.fullmatch(_OURS, t.plain) and t.raw.endswith("é")
        for t in sentence.tokens
    ):
        return True
    return _WAS.search(sentence.text) is not None and _NOW.search(sentence.text) is None
