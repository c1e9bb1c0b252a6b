"""One's own promises named again: no longer brought, brought instead, more or fewer of them."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re

from planning.dishes import Dish, lookup
from planning.potluck import Answer
from planning.replies.intents import ChangePromise, DropPromise, Intent, ReplyContext, SetAnswer
from planning.replies.spanish.names import known_dish
from planning.replies.spanish.offers import offered
from planning.replies.spanish.verbs import any_form
from planning.replies.spanish.ways import ME
from planning.replies.text import Message, Sentence

_INF = any_form("bring", "inf")
_NOT = re.compile(
    rf" (?:no|ya no|tampoco|mejor no|al final no) (?:(?:les|te|os|lo|la|los|las|me|nos|se|le|yo) )*(?:(?:voy a|vamos a|puedo|podemos|podre|podremos|alcanzo a|llego a|me da tiempo (?:a|de)|me va a dar tiempo (?:a|de)|me dara tiempo (?:a|de)|tendre tiempo (?:de|para)|alcanzare a|me alcanza el tiempo (?:de|para)|tengo (?:tiempo|ganas) (?:de|para)|quiero|creo que pueda|voy a poder|vamos a poder|me animo a|consigo|logro) (?:{_INF})|{ME}|consigo|encuentro|puedo con)(?= )"
)
_GONE = re.compile(
    r" (?:quit(?:a|en|ad|ame|enme|adme|alo|enlo|arme|o|amos|ar)|borr(?:a|en|ad|ame|enme|adme|o|ar)|sac(?:a|en|ad|ame|enme|a me|o|ar)|elimin(?:a|en|ad|o|ar)|tach(?:a|en|ad|ame|enme|o|ar)|cancel(?:a|en|ad|ame|o|ar|amos)|anul(?:a|en|ad|o|ar)|olvid(?:a|en|ad|ate|ense|aos)(?: de)?|baj(?:ame|enme|adme) de|descart(?:a|en|ad|o|ar)|retir(?:a|en|o|ar)|me bajo (?:con|de|del)|me desapunto de|paso del?|suelto|dejo)(?: (?:ya|mejor|lo de|lo del|por favor|de la lista))*(?= (?:de|del|el|la|los|las|mi|mis|lo|ese|esa|esos|esas|nuestr))"
    r"|(?:^| ,) ?(?:lo de(?:l)?|el|la|los|las|mi|mis|con|de|ni) .{2,40} (?:no va a (?:poder ser|ser|salir|ir|haber)|no (?:podra ser|puede ser|sale|saldra|va|ira|llega|llegara|podre|puedo|me (?:da|dara) tiempo|me (?:sale|salio|queda))|se (?:me )?(?:quemo|quemaron|arruino|arruinaron|echo a perder|rompio|cayo|cayeron|cancela|cae|estropeo|salo|pego)|queda (?:cancelad[oa]|anulad[oa])|fuera|cancelad[oa]s?|se lo (?:dejo|paso) a|mejor no|ya no|al final no)(?= |$)"
    r"| (?:se me|se nos) (?:quemo|quemaron|arruino|arruinaron|echo a perder|cayo|cayeron|estropeo|pego|pegaron) (?:el|la|los|las|mi|mis) "
)
_FOR = re.compile(
    r" (?:para|como para|por|a|en|hasta|de|seran|son|sean|sea) (?:(?:unas|unos|como|casi|aprox|los|las|solo) )?(?P<n>[0-9]{1,4})(?= |$)(?! (?:de la|pm|am|h|hs|horas|euros|pesos|y media|en punto))| (?P<p>[0-9]{1,4}) (?:porciones|raciones|personas)(?= |$)"
)
_DOUBLE = re.compile(r" (?:el |al )?(?P<x>doble|duplic[a-z]+|doblar|dobla|doblo|triple|triplic[a-z]+|mitad)(?= )")
_SWAP = re.compile(
    r" (?:(?:yo )?(?:me )?(?:cambio|cambiamos|cambiare|cambien|cambia|cambiad|cambiame|cambienme|cambiadme|sustituyo|reemplazo|sustituye|reemplaza|voy a cambiar|vamos a cambiar|quiero cambiar|puedo cambiar)) (?P<old>.+?) (?:por|x|a) (?P<new>.+) $"
)
_INSTEAD = re.compile(
    rf" (?:en (?:vez|lugar) (?:de|del)|a cambio (?:de|del)|no (?:sera|es)) (?P<old>.+?) ,? ?(?:(?:yo|mejor|les|os|te|al final|va|van|sera|sino|pues|ahora|nosotros) )*(?:(?:{ME})|(?:voy a|vamos a|puedo|prefiero) (?:{_INF})|va|van|sera|sino) (?P<new>.+) $"
    rf"| (?:(?:{ME})|(?:voy a|vamos a|puedo|prefiero) (?:{_INF})) (?P<new2>.+?) ,? ?(?:en (?:vez|lugar) (?:de|del)|y no) (?P<old2>.+) $"
)


_FOR_IT = re.compile(r"^ (?:(?:mejor|perdon|cambio|pues|,) )*(?:en (?:vez|lugar) (?:de|del)|cambio de) (?P<old>[^,]+?) , (?P<new>.+) $")


def mine_in(text: str, context: ReplyContext) -> str | None:
    """The writer's promise named in a sentence, in its own words or as the dish is called in Spanish."""
    if (mine := context.own_promise_in(text)) is not None:
        return mine
    pieces = text.split()
    for promise, dish in context.own_promises:
        own = known_dish(" ".join(dish.casefold().split())) or _named(dish)
        if own is None:
            continue
        for i in range(len(pieces)):
            for k in range(min(len(pieces), i + 4), i, -1):
                said = [w for w in pieces[i:k] if w not in ("esa", "ese", "esos", "esas", "mi", "la", "el")]
                found = known_dish(" ".join(said)) if said else None
                if found is not None and found.name == own.name:
                    return promise
    return None


def _named(dish: str) -> Dish | None:
    guess = lookup(dish)
    return guess.dish if guess.confidence >= 0.9 else None


def read_withdrawals(sentence: Sentence, context: ReplyContext, earlier: str = "") -> list[Intent] | None:
    """What becomes of one's own promises, what comes instead with it; None where nothing is said of them. `earlier` are
    the sentences before."""
    if not context.own_promises:
        return None
    text = sentence.text
    if earlier and mine_in(text, context) is None and (mine := mine_in(earlier, context)) is not None:
        return _of_it(sentence, mine, context)
    for pattern in (_SWAP, _INSTEAD, _FOR_IT):
        found = pattern.search(text)
        if found is None:
            continue
        got = found.groupdict()
        old, new = ("old", "new") if got.get("old") else ("old2", "new2")
        if re.match(r"(?:unas |unos |como |para )*[0-9]+ ?(?:raciones|porciones|personas|$)", got[new]):
            continue  # "cambiad mi slaw a 16 raciones"
        mine = mine_in(f" {got[old]} ", context)
        if (
            mine is None
            and re.fullmatch(r"(?:(?:lo|el|la) )?(?:mi[oa]|que dije|anterior|eso|el plato|mi plato)", got[old])
            and len(context.own_promises) == 1
        ):
            mine = context.own_promises[0][0]
        if mine is None:
            continue
        return [_drop(sentence, mine, found, context), *offered(sentence, found.start(new), context)]
    if (dropped := _dropped(sentence, context)) is not None:
        return dropped
    if sentence.question:
        return None
    return _changed(sentence, context)


_IT_GOES = re.compile(
    r"^ (?:(?:asi que|mejor|por favor|entonces|pues|y|,) )*(?:quit|borr|sac|elimin|tach|cancel|anul|retir|baj)[a-z]*(?:la|lo|las|los)(?= $| ,| de la lista| por| mejor)|^ (?:(?:asi que|mejor|por favor|entonces|pues|y|,) )*(?:la|lo|las|los) (?:quit|borr|sac|elimin|tach|cancel|anul|retir)[a-z]*(?= )"
)
_IT_BECOMES = re.compile(
    r"^ (?:(?:asi que|mejor|por favor|entonces|pues|y|,|que) )*(?:(?:anot|apunt|pon|cambi|sub|baj|hag|dej|ajust|corrij)[a-z]* (?:(?:la|lo|en|a|para|por|mejor|que|sean|con) )*|(?:que )?(?:sean|seran|son|mejor|para)(?: (?:mejor|para|unas|unos))* )(?P<n>[0-9]{1,4})(?: (?:porciones|raciones|personas|mejor))*(?= $| ,| por favor)"
)


def _of_it(sentence: Sentence, mine: str, context: ReplyContext) -> list[Intent] | None:
    """What is said of the dish the sentence before named: "sácala de la lista", "anoten dieciocho"."""
    if (goes := _IT_GOES.search(sentence.text)) is not None:
        return [_drop(sentence, mine, goes, context)]
    if (becomes := _IT_BECOMES.search(sentence.text)) is not None:
        start, end = sentence.span_of(becomes)
        return [ChangePromise(mine, float(becomes["n"]), start=start, end=end, confidence=0.86)]
    return None


def _drop(sentence: Sentence, mine: str, found: re.Match[str], context: ReplyContext) -> DropPromise:
    start, end = sentence.span_of(found)
    return DropPromise(mine, dict(context.own_promises)[mine], start=start, end=end, confidence=0.9)


def _dropped(sentence: Sentence, context: ReplyContext) -> list[Intent] | None:
    text = sentence.text
    found = _NOT.search(text) or _GONE.search(text)
    if found is None or re.search(r" no (?:me |lo |la |se )?(?:quit|borr|cancel|tach)", text):
        return None
    mine = mine_in(text, context)
    if (
        mine is None
        and len(context.own_promises) == 1
        and re.search(
            r" (?:nada(?: al final)?|el mio|lo mio|la mia|lo nuestro|mi plato|(?:lo|el|la|el plato|la comida) que (?:yo )?(?:dije|ofreci|prometi|anote|apunte|puse|habia (?:dicho|ofrecido|prometido|anotado|apuntado)|iba a (?:llevar|traer|hacer)|quede)|mi parte|mi platillo|mi aporte) ", text
        )
    ):
        mine = context.own_promises[0][0]
    if mine is None:
        return None
    made: list[Intent] = [_drop(sentence, mine, found, context)]
    after = re.search(
        rf" (?:mejor |pero |sino |entonces |en su lugar |a cambio |, |y )+(?:(?:si|mejor|yo|les|os|te|nosotros|en su lugar|a cambio) )*(?:(?:{ME})|(?:puedo|voy a|vamos a|podemos) (?:{_INF}))(?= )",
        text[found.end() - 1 :],
    )
    sino = re.search(r" (?:sino|, mejor|pero mejor) (?:que )?(?=(?!llev|trai|pong|hag|voy|vamos|no|otro|otra|para)[a-z])", text[found.end() - 1 :])
    if after is None and sino is not None:
        made += offered(sentence, found.end() - 1 + sino.end(), context)
    if after is not None and not re.search(r" no $", text[: found.end() - 1 + after.start() + 1]):
        made += offered(sentence, found.end() - 1 + after.end(), context)
    return made


def _changed(sentence: Sentence, context: ReplyContext) -> list[Intent] | None:
    text = sentence.text
    mine = mine_in(text, context)
    if mine is None and len(context.own_promises) == 1 and _THAT_ONE.search(text):
        mine = context.own_promises[0][0]
    if mine is None:
        return None
    if (twice := _DOUBLE.search(text)) is not None:
        start, end = sentence.span_of(twice)
        factor = 3.0 if twice["x"].startswith("trip") else 0.5 if twice["x"] == "mitad" else 2.0
        return [ChangePromise(mine, factor=factor, start=start, end=end, confidence=0.86)]
    if (times := re.search(r" (?:x|por) (?P<x>[23]) $", text)) is not None:
        start, end = sentence.span_of(times)
        return [ChangePromise(mine, factor=float(times["x"]), start=start, end=end, confidence=0.82)]
    many = next((m for m in _FOR.finditer(text) if not _SHORT.match(text[m.end() :])), None)
    if many is not None:
        start, end = sentence.span_of(many)
        return [ChangePromise(mine, float(many["n"] or many["p"]), start=start, end=end, confidence=0.86)]
    if re.search(r" (?:para|pa) tod[oa]s ", text):
        return [ChangePromise(mine, for_all=True, confidence=0.86)]
    return None


_THAT_ONE = re.compile(
    r" (?:lo (?:mio|nuestro)|el mio|la mia|mi (?:plato|platillo|aporte)|lo que (?:dije|ofreci|prometi|anote|llevo|voy a llevar)) (?:alcance|alcanza|alcanzara|da|rinde|rinda|es|era|sera|sea|seria|sirve|va|que sea)(?= )"
)
_SHORT = re.compile(
    r" (?:no (?:bastan|alcanzan|alcanza|van a alcanzar|son suficientes|llegan|da)|(?:son|es) (?:poc[oa]s?|muy poc[oa]s?)|se (?:queda|quedan) cort)"
)


def not_answered(found: list[Intent], context: ReplyContext) -> list[Intent]:
    """ "Lo del slaw no va a poder ser" is a no to the dish, not to the evening."""
    if not any(isinstance(i, DropPromise) for i in found):
        return found
    drops = [i for i in found if isinstance(i, DropPromise)]
    return [
        i for i in found
        if not (isinstance(i, SetAnswer) and i.answer is Answer.NO and any(d.start <= i.start < d.end for d in drops))
    ]  # fmt: skip


_HOW_MANY = re.compile(
    r" ?(?:(?:pues|para|pa|como|unos|unas|como para|unas|casi|mas o menos|aprox|alcanza|rinde|da|comen|salen|son|seran|de|hasta|creo que|yo creo que|calculo|alrededor de|por|ahi de|,|minimo|por lo menos|sirve|bien) )*(?P<n>[0-9]{1,4})(?: ?(?:a|o|-) ?(?P<to>[0-9]{1,4}))?(?: (?:personas|porciones|raciones|platos|gentes?|comensales|mas o menos|o asi|aprox|y pico|facil|bien|creo|maximo|minimo|adultos|bocas))* ?"
)
_EVERYBODY = re.compile(r" ?(?:(?:pues|que|alcanza|da|rinde) )*(?:para|pa) tod[oa]s(?: (?:los que vengan|nosotros|ustedes|el mundo))? ?")


def read_servings(message: Message, context: ReplyContext) -> list[Intent]:
    """Below "how many will it feed?": the number alone, for the newest promise."""
    if len(message.sentences) != 1:
        return []
    sentence = message.sentences[0]
    start, end = sentence.span(0, len(sentence.tokens))
    mine = context.own_promises[-1][0]
    if _EVERYBODY.fullmatch(sentence.text):
        return [ChangePromise(mine, for_all=True, start=start, end=end, confidence=0.9)]
    ranged = re.sub(r"([0-9]+)[-–]([0-9]+)", r"\1 a \2", sentence.text)
    many = _HOW_MANY.fullmatch(ranged)
    if many is None:
        return []
    n = (float(many["n"]) + float(many["to"] or many["n"])) / 2
    return [ChangePromise(mine, n, start=start, end=end, confidence=0.9)]
