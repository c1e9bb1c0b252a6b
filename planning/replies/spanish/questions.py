"""What somebody asks: answered from the plan, shortly."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.replies.intents import Ask, Intent, Late, ReplyContext
from planning.replies.spanish.lexicon import any_of
from planning.replies.text import Sentence

_TOPICS = (
    ("missing", r"(?:que|cuanto) (?:falta|hace falta|queda por)|falta algo|que (?:no )?(?:tenemos|hay)(?: todavia)?"),
    ("what-should-i-bring", r"que (?:deberia|debo|puedo|podria|podemos|tengo que|hay que|quieren que|necesitan que)"
     r" ?(?:yo )?(?:llevar|traer|lleve|traiga|llevemos|haga)|que (?:llevo|traigo)(?: entonces)?$|llevo algo|hace falta que lleve"),
    ("my-list", r"que (?:llevo|llevaba|traigo|prometi) yo|que dije que llev|que me toca"),
    ("who-brings", r"quien(?:es)? (?:lleva|llevan|trae|traen|hace|va a llevar|pone)|alguien (?:lleva|trae|va a llevar)"),
    ("who-comes", r"quien(?:es)? (?:va|van|viene|vienen|confirmo|confirmaron|asiste)|cuantos (?:somos|vamos|van|vienen)"),
    ("can-eat", r"(?:hay|habra|tienen) algo (?:que (?:yo )?(?:pueda|puedo|podamos)(?: comer)?|(?:sin|para) (?:[a-z]+))|que puedo comer|puedo comer"),
    ("oven", r"(?:puedo|podemos|se puede) (?:usar|ocupar) (?:el|la|su|tu|un) (?:horno|estufa|cocina|microondas|hornilla)"),
    ("when", r"(?:a )?que hora|cuando (?:es|empieza|sera|nos)|que dia|hora es"),
    ("where", r"donde (?:es|sera|queda|nos)|(?:cual es|me pasas?|pasan) la direccion|en que lugar"),
    ("can-eat", rf"(?:lleva|llevan|tiene|tienen|contiene|contienen|hay) (?:algo de |un poco de )?(?:{any_of('allergen')})"),
    ("why", r"por que (?:hiciste|dijiste|anotaste|pusiste|me)"),
)  # fmt: skip
_PATTERNS = tuple((topic, re.compile(rf"(?: |^)(?:{pattern})(?= |$)")) for topic, pattern in _TOPICS)
_LATE = re.compile(
    r" (?:llego|llegamos|voy|vamos|llegare|llegaremos)(?: a llegar| con| como)? (?:unos |como |aprox )?(?:(?P<n>[0-9]{1,3}) min(?:utos?)? |(?P<hours>una|media|[0-9]) horas? )?(?:de )?(?:mas )?(?:tarde|con retraso|retrasad[oa]s?|atrasad[oa]s?)"
    r"| (?:me|nos|se me) (?:retraso|retrase|retrasamos|atraso|atrase|hizo tarde)"
)


def read_question(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """A question of a known kind; of another kind it goes to the host when it was put to the bot."""
    text = sentence.text
    asking = (
        sentence.question
        or re.match(r"^ (?:y |oye |bot )?(?:que|quien|quienes|cuando|donde|a que|cuantos|hay) ", text) is not None
    )
    if not asking:
        return []
    for topic, pattern in _PATTERNS:
        if (found := pattern.search(text)) is not None:
            start, end = sentence.span_of(found)
            about = ""
            if topic == "who-brings":
                rest = re.sub(r"^(?: (?:el|la|los|las|un|una|algo de|de))+ ", " ", text[found.end() :])
                about = rest.strip()
            sure = 0.9 if context.addressed or topic in ("missing",) else 0.5
            return [Ask(topic, about, start=start, end=end, confidence=sure)]
    if (
        context.addressed
        and sentence.question
        and re.search(r" (?:hay|habra|puedo|podemos|se puede|tienen|cuanto|como|cual|donde|es) ", text)
    ):
        return [Ask("host", confidence=0.82)]
    return []


def read_late(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    found = _LATE.search(sentence.text)
    if found is None or sentence.question:
        return []
    start, end = sentence.span_of(found)
    sentence.take_match(found)
    minutes = int(found["n"]) if found["n"] else None
    if found["hours"]:
        minutes = {"una": 60, "media": 30}.get(found["hours"]) or 60 * int(found["hours"])
    return [Late(minutes, start=start, end=end, confidence=0.88)]
