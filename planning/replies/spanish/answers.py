"""Coming, perhaps, not coming."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.potluck import Answer
from planning.replies.intents import Intent, ReplyContext, SetAnswer
from planning.replies.text import Sentence

_GO = r"(?:voy|vamos|ire|iremos|vengo|venimos|asisto|asistimos|estare|estaremos|estoy|estamos|llegare|llegaremos)"
_NO = re.compile(
    rf" (?:no|tampoco|ya no) (?:(?:me|nos|creo que|te|lo) )?(?:{_GO[3:-1]}|puedo|podemos|podre|podremos|vamos a poder|voy a poder"
    r"|llego|llegamos|alcanzo|cuenten|cuentes|cuenta|va a poder ser|me apunto|nos apuntamos)(?! (?:a )?(?:llevar|traer|hacer|comer"
    r"|preparar|tomar|beber|usar|cocinar|con las|con el|con la))(?= |$)"
    r"|^ (?:,? ?)?(?:imposible|ni modo|(?:yo |nosotros )?paso(?:mos)?(?: esta vez)?|lamentablemente no|desgraciadamente no|esta vez no|al final no|mejor no|no)(?= ,| \.| $|$)"
    r"| no (?:me|nos) (?:va a dar|da|dara) tiempo(?: de [a-z]+)?| (?:no nos veremos|sera en otra|otra vez sera|me lo pierdo|nos lo perdemos)"
)
_MAYBE = re.compile(
    r" (?:tal vez|quiza|quizas|a lo mejor|puede que|capaz que|no se (?:todavia|aun|si)|todavia no se|aun no se|depende"
    r"|si puedo (?:cambiar|escaparme|arreglar|salir|voy)|si (?:logro|consigo|alcanzo|salgo|llego|me dan|podemos)|lo intento"
    r"|intentare|intentaremos|hare lo posible|no prometo|les confirmo|te confirmo|os confirmo|aviso luego|luego confirmo"
    r"|lo mas probable|probablemente|no estoy segur[oa]|no estamos seguros|veremos|a ver si)(?= |$|,)"
)
_YES = re.compile(
    rf"^ (?:(?:si|claro|perfecto|genial|yo|nosotros|nosotras|pues|tambien|por supuesto|ahi|alli|aqui|alla|obvio|seguro|al final"
    rf"|todos|familia) ,? ?)*{_GO}(?= (?!a (?:llevar|llegar|traer|hacer|preparar|poner|ver|comprar|tener|decir|al|por)|al |tarde|media hora|una hora|con retraso|[0-9]+ (?:minutos|min|horas?) tarde"
    r"|de viaje|a casa|a la (?:tienda|compra))|$)"
    r"|^ (?:si|sip|claro(?: que si)?|por supuesto|obvio|desde luego|ok si|dale|va|sale|listo)(?: (?:si|claro|vamos|voy|ahi))?(?= ,| $|$| y )"
    r"| (?:cuent[ae]n? (?:con(?:migo| nosotros)|me)|cuent[ae]n? con [0-9]+|me apunto|nos apuntamos|confirm(?:o|amos|ad[oa]s?)|asistencia confirmada|me sumo"
    r"|nos sumamos|no me lo pierdo|no nos lo perdemos|sin falta|aqui estaremos|ahi nos vemos|nos vemos ahi)(?= |$)"
)


def read_answer(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The writer's own answer; a question is none."""
    if sentence.question:
        return []
    text = sentence.text
    for pattern, answer, sure in ((_MAYBE, Answer.MAYBE, 0.9), (_NO, Answer.NO, 0.92), (_YES, Answer.YES, 0.92)):
        found = pattern.search(text)
        if found is None:
            continue
        start, end = sentence.span_of(found)
        conditional = answer is Answer.MAYBE and " si " in text
        return [SetAnswer(context.writer, answer, conditional, start=start, end=end, confidence=sure)]
    if context.asked in ("answer", "yes-no") and (said := re.fullmatch(r" (si|no|quiza|quizas|tal vez) ", text)):
        answer = {"si": Answer.YES, "no": Answer.NO}.get(said[1], Answer.MAYBE)
        return [SetAnswer(context.writer, answer, confidence=0.95)]
    return []
