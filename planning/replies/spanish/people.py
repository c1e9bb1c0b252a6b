"""Who comes along: a whole party, or how many more or fewer."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Sequence

from planning.potluck import Party
from planning.replies.intents import AddPerson, Intent, ReplyContext, SetParty
from planning.replies.spanish import company
from planning.replies.spanish.fewer import LEFT, fewer_of, of_whom_is_left
from planning.replies.spanish.lexicon import any_of
from planning.replies.spanish.members import Group, counts_of, groups, phrase
from planning.replies.spanish.names import known_dish
from planning.replies.spanish.parties import count, end_of, party, relative
from planning.replies.spanish.verbs import any_form
from planning.replies.text import Sentence

_GO = rf"(?:{any_form('come', '1s', '1p', 'f1')}|iria|iriamos|estare|estaremos|estamos|somos|seremos|vamos a (?:ser|ir|estar)|voy a ir|queremos ir|podemos ir|puedo ir)"
_FILL = r"(?: (?:en total|en|total|solo|solamente|nada mas|unos|unas|a ser|ya|como|por|todos|finalmente|entonces|aca|por ahora|seguro|ahora|al final|casi|unicamente|ahi|alli|alla|de|aqui|tambien|los|las|nosotros|a|lo|mas|bien))*"
_NOT_PEOPLE = r"(?! ?(?:kilos?|kg|litros?|docenas?|horas?|hs|h|min|minutos?|dias?|semanas?|meses|años|anos|veces|botellas?|latas?|bandejas?|paquetes?|cajas?|bolsas?|tortillas?|pizzas?|cuadras?|calles?|km|de la (?:tarde|mañana|noche)|pm|am|vegan[oa]s?|vegetarian[oa]s?|celiac[oa]s?|alergic[oa]s?|intolerantes?|diabetic[oa]s?|en punto|y media|tarde|a [0-9]|-|% |grados?|euros?|pesos?|menos|por ciento)(?= |$))"
_COMES = re.compile(
    rf" (?P<verb>{_GO}|quedamos|sumamos|asistiriamos|iriamos|seriamos|se presentan|nos (?:apuntamos|sumamos|anotamos|prendemos)|en total|total|cuen(?:ten|ta|tame|tenme|tennos|tanos)(?: con)?|contad(?:nos)?(?: con)?|conta(?:nos)?(?: con)?|contame"
    r"|(?:apunt|anot|pon|reserv|agreg|inscrib)[a-z]*(?:me|nos|dme|dnos)(?: (?:a|para|con))?|confirm(?:ad[oa]s?|o|amos|ando)|(?:mesa|reserva|lugar|sitio|plazas?|sillas?) para|(?:de|en) (?:mi|nuestra) (?:casa|familia)(?: (?:van|vamos|somos|seremos|iremos))?|(?:de|por) (?:mi|nuestra) (?:parte|lado)(?: (?:van|vamos|somos|seremos|iremos))?"
    rf"|familia de|nosotros|nosotras|mi familia y yo somos|sino){_FILL} (?P<n>[0-9]{{1,4}}){_NOT_PEOPLE}(?= )"
    rf"|(?:^|(?<= ,)|(?<= y)|(?<= si)|(?<= todos)|(?<= todas)|(?<= familia)|(?<= nosotros)|(?<= estamos)|(?<= estaremos)) (?:todos )?(?:los|las|nosotros|nosotras) (?P<los>[0-9]{{1,2}})(?= ,| \.| $| pero | de casa| de siempre| de la familia| con | y | : | \(| juntos)"
    rf"| [a-zñ]+mos (?:todos )?(?:los|las) (?P<losn>[0-9]{{1,2}})(?= ,| \.| $)"
    rf"| (?P<many>[0-9]{{1,3}}) (?:en total|personas?(?! mas)|personitas|de nosotros(?! (?:somos|son|no|comen|tienen|es))|comensales|cabezas|lugares|sitios|puestos|cupos|cubiertos|asistentes|plazas|bocas)(?= )"
)
_ALONE = re.compile(
    rf" (?:{_GO}|viajo) (?:yo |nada mas |solo )*(?:, )?(?:pero )?(?:sin mi (?:pareja|esposo|esposa|marido|mujer|novio|novia|familia|gente)|sol[oa](?! [0-9]| los| las| nosotr| con| mi| ell| un)|solit[oa]|por mi cuenta|sin (?:compañia|acompañante|pareja|nadie))(?= )|^ (?:solo|nada mas|nomas|unicamente|solamente|solo voy|nada mas voy|nomas voy) yo(?= ,| \.| $| nada| y)|^ (?:(?:voy|vengo|solo|nomas) )*(?:su|un|una|este|esta) servidora? (?:y ya|solo|sola|nada mas|y nadie mas|y punto)?(?= ?$)|^ yo (?:y (?:ya|nadie mas|punto|solo yo)|nomas|solito|solita|solo|sola) $"
    r"|(?<! y)(?<! e) yo (?:sol[oa]|solit[oa]|nada mas)(?= ,| \.| $)|^ (?:yo )?(?:sol[oa]|solit[oa])(?= ,| $)| (?:voy|vengo|ire) (?:solo|nada mas) yo(?= )|^ (?:solo|solamente|unicamente|nada mas) (?:podria|puedo|podre|voy a|iria|ire|voy|asistire|asistiria) (?:ir |asistir )?yo(?= )|^ (?:solo )?yo y (?:mi|el) (?:perr|gat)[oa](?= )|^ (?:1|un[oa]?)(?: (?:sol[oa]|persona|adult[oa]|nada mas))+ $| (?:somos|soy) (?:solo |nada mas )*(?:yo|1)(?: sol[oa])?(?= ,| $)|^ yo $"
)
_MORE = re.compile(
    r"^ \+ ?(?P<plus>[0-9]{1,2})(?= |$)| \+ ?(?P<plus2>[0-9]{1,2})(?= ,| $)"
    r"| (?P<more>un[oa]?|[0-9]{1,2}) (?:personas? |adult[oa]s? |niñ[oa]s? |invitad[oa]s? |amig[oa]s? |person[ai]tas? )?mas(?= |$|,)(?! de )"
    r"|(?<! y)(?: y)? mas (?P<mas>un[oa]|[0-9]{1,2})(?= |$)"
    r"| (?:sum|agreg|añad|anad|apunt|anot|pon)(?:a|e|en|ad|o|amos|ganle|les?)[a-z]* (?:a )?(?P<add>un[oa]|otr[oa]|[0-9]{1,2})(?: mas| personas?| adultos?| niños?)(?= )"
)
_JOIN = re.compile(
    r" (?:(?:se|tambien se) (?:(?:me|nos) )?(?:sum[ao]n?|sumaron|apunt[ao]n?|apuntaron|un[ei]n?|unio|peg[ao]n?|pegaron|anot[ao]n?|agreg[ao]n?|cuel[ao]n?|colo|viene|vienen|incorpor[ao]n?|añad[eo]n?|prend[eo]n?)"
    r"|(?:me|nos) acompañ(?:a|an|ara|aran)|(?:viene|vienen|vendra|vendran|va|van|ira|iran) (?:tambien )?(?:conmigo|con nosotros)"
    r"|(?:me )?(?:llevo|traigo|llevare|traere|llevamos|traemos|llevaremos|invito|invite|voy a (?:llevar|traer)|vamos a (?:llevar|traer)|puedo (?:llevar|traer)|sumo|agrego) (?:tambien )?(?:a|al)"
    r"|tambien (?:vienen|van|vendran|iran)|(?:vienen|van|vendran|iran) tambien)(?= )"
)
_TOTAL_ONLY = re.compile(
    r"^ (?:,? ?)?(?:(?:los|las|unos|unas|como|solo|nada mas|con|para) )*([0-9]{1,3})(?: (?:personas|en total|nosotros|de nosotros|todos|nada mas|solo))*(?= ,| $| con | \(| : | y | contando | incluyendo | incluid)"
)
_WITH_ME = re.compile(
    rf" {_GO}(?: (?:yo|nosotros|todos|tambien|ahi|alli|alla|contento|contenta|encantados|seguro|ya|los dos|juntos|sola|solo|feliz|felices|encantada|encantado|mañana))*(?: ,)? (?:con(?! ustedes| vosotros| mucho| todo| gusto)|mi|yo y|y|yo ,) | yo(?: ,)? (?:y|con|mas|e) | (?:y|,|e|mas) yo(?= |$)| (?:va|van|viene|vienen|llevo|traigo) conmigo(?= |$)|^ (?:vamos |voy |iremos |ire )?con (?:mi|mis|la|el|los|las|un|una|nuestr[oa]s?) | yo , | ademas de mi | y (?:un |una )?servidor[a]?(?= )| y menda "
)
_WHOLE = re.compile(
    rf"^ (?:(?:{_GO}|confirm(?:ad[oa]s?|o|amos)|en total|familia|si|pues|ok|de mi parte|por mi parte|de casa|seremos|total) (?:: |, )?)*(?:toda la familia|[0-9]{{1,2}} (?:{any_of('group')})(?= ))"
)
_NO_PARTY = re.compile(
    r"^ (?:ya )?no (?:somos|vamos|voy|se|puedo|podemos|puede)| (?:cumple|cumplen|cumplio|cumplira|trabaja|nacio) [0-9]+|(?<! vamos)(?<! ir)(?<! voy) con (?:mi|mis) [a-z]+ (?:tengo|tenemos|estoy|estamos|ceno|cenamos)| (?:regalo|recoger|recojo|cuidar|cuido) "
)
_BRINGS = re.compile(rf" (?:{any_form('bring', '1s', '1p', 'f1')}) ")
_COMING = re.compile(rf" (?:{_GO}|confirmo|confirmamos) ")
_ENDS = re.compile(r" ,(?: en total| total| asi que(?: somos)?| somos)? (?P<end>[0-9]{1,2})(?= (?:(?:entonces|ahora|ya|en total|por todos|todos) )*$)")
_BETWEEN = re.compile(
    r"^ (?:si|claro|voy|vamos|asisto|asistimos|confirmo|confirmado|presente) [,:] (?P<n>[0-9]{1,2})(?= ,| $)"
)
""" "Sí / 3 / flan"."""
_MEANT = re.compile(
    r"^ (?:digo|perdon|corrijo|mejor dicho|quise decir|error|no|ay|uy|,| )*(?:digo|corrijo|mejor dicho|quise decir|somos|seremos) (?P<n>[0-9]{1,2}) $"
)
""" "Digo 3": said again by who is coming."""
_GOES = re.compile(
    rf"(?:^|(?<= ,)) (?:(?:(?:los|las) (?:[a-zñ]+ ){{0,4}}[a-zñ]+|si|claro|ok|dale|pues|nosotros|,) )*(?:{_GO}|confirmo|confirmamos|presentes?|(?:me|nos) (?:apunto|apuntamos|sumo|sumamos|anoto|anotamos))(?: (?:en familia|todos|juntos|la [a-zñ]+|en bloque|en bola|en grupo|en combo|en banda|completos|con gusto|encantad[oa]s|la familia|toda la familia|ahi|alli|alla|al asado|a la [a-z]+|con los niños|con las niñas|con los chicos))* ,"
)
_BARE = re.compile(
    r"^ (?:(?:si|claro|ok|dale|pues) ,? ?)?(?P<n>[0-9]{1,2})(?: (?:x favor|por favor|porfa|nosotros|nosotras))? $"
)
""" "3", "si, 3": said to the board, how many come."""
BIG = 12


_RANGE = re.compile(
    rf"(?: {_GO}{_FILL}|^) (?:entre )?(?P<n>[0-9]{{1,2}}) (?:o|y|a|-) (?P<to>[0-9]{{1,2}})(?: personas| en total| o asi| mas o menos)*(?= $| ,)"
)
""" "Seremos 4 o 5": the larger is asked about."""
_ME_PLUS = re.compile(
    r"(?:^|(?<= ,)|(?<= si)) voy (?:\+|mas) (?P<n3>[0-9]{1,2})(?= $| ,)|(?:^|(?<= ,)|(?<= si)|(?<= voy)|(?<= somos)|(?<= vamos)) yo (?:\+|y|mas|con) (?P<may>(?:quizas?|tal vez|a lo mejor|capaz|puede que|posiblemente) )?(?P<n>[0-9]{1,2}) ?(?P<who>mas|amig[oa]s|personas|acompañantes|invitad[oa]s|compas|adult[oa]s)?(?= $| ,| y )"
    r"|^ (?:acompañantes?|invitados|mas|ademas)(?: de mi)? : (?P<n2>[0-9]{1,2})(?= $| ,)"
)
""" "Yo + 2", "yo y quizá 3 amigos"."""


def read_people(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The party this sentence tells of: whole, or how many more."""
    text = sentence.text
    if context.asked in ("people", "party") and re.match(r" un[oa] (?:,|pero|y ya|$)", text):
        return [party(sentence, context, Party(1), 0, 5)]
    if (some := _RANGE.search(text)) is not None and 0 < int(some["to"]) - int(some["n"]) <= 4:
        return [party(sentence, context, Party(int(some["to"])), some.start(), some.end(), 0.6)]
    if not sentence.question and (plus := _ME_PLUS.search(text)) is not None:
        return [
            party(
                sentence,
                context,
                Party(1 + int(plus["n"] or plus["n2"] or plus["n3"])),
                plus.start(),
                plus.end(),
                0.6 if plus["may"] else 0.88,
            )
        ]
    if sentence.question or (_NO_PARTY.search(text) and context.asked not in ("people", "party")):
        return []
    said = [t.plain for t in sentence.tokens]
    told = groups(said)
    if (alone := _ALONE.search(text)) is not None and (
        alone[0].strip() != "yo" or context.asked in ("people", "party")
    ):
        stays = LEFT.search(text) if context.party is not None else None
        first = min(alone.start(), stays.start()) if stays is not None else alone.start()
        return [party(sentence, context, Party(1), first, alone.end())]
    if (fewer := fewer_of(sentence, context, told)) is not None:
        return [of_whom_is_left(_whole(sentence, context, ()), fewer, context)]
    joining = _JOIN.search(text)
    if joining is not None and (ends := _ENDS.search(text)) is not None:
        return [party(sentence, context, Party(int(ends['end'])), joining.start(), ends.end())]
    if joining is not None and (all_told := _whole(sentence, context, ())) and " mas " not in text:
        return all_told  # "se suma mi hermano, somos 3"
    if joining is not None:
        at = text.count(" ", 0, joining.end())
        joined = [g for g in told if g.first >= at - 1]
        if joined and all(g.sure for g in joined) and _brings_persons(joining[0], joined):
            return [relative(sentence, context, counts_of(joined), joining.start(), end_of(sentence, joined), joined)]
        if joined:
            return []
    if (added := _added_person(sentence, context)) is not None:
        return [added]
    more = _MORE.search(text)
    if more is not None and not re.search(
        r" (?:porciones|kilos?|mas (?:de|que)|no .*mas|algo mas|litros?|docenas?|botellas?) ", text
    ):
        n = count(next(g for g in more.groups() if g))
        counts = counts_of(told)
        if sum(counts.values()) != n:
            counts = counts_of(()) | {"children" if " niñ" in more[0] else "adults": n}
        return [relative(sentence, context, counts, more.start(), more.end())]
    return _whole(sentence, context, told)


def _whole(sentence: Sentence, context: ReplyContext, told: Sequence[Group]) -> list[Intent]:
    text = sentence.text
    asked = context.asked in ("people", "party")
    said = [t.plain for t in sentence.tokens]
    total = _COMES.search(text) or (_TOTAL_ONLY.search(text) if asked else None)
    if total is not None and re.search(
        r" (?:no|ni|(?:para|pa|alcanza|alcance|rinde|rinda|sirve|da|calculo)(?: (?:unos|unas|como|casi|las|los|mas de|para|hasta))*|unos|porciones) $",
        text[: total.start() + 1],
    ):
        total = None
    if total is not None and " en total" in total[0] and _BRINGS.search(text[: total.start() + 1]):
        total = None  # "llevo tamales, 20 en total"
    if total is not None and _of_food(text[total.end() :]):
        total = None  # "apúntame con dos pasteles"
    if total is None and (alone := re.search(r" sol[oa] con ", text)) is not None:
        told = [g for g in told if sentence.offset(g.first) >= alone.end() - 1]
    if total is None and context.replying_to in ("board", "bot") and context.addressed:
        bare = _BARE.match(text) or (_MEANT.match(text) if context.party is not None else None)
        bare = bare or _BETWEEN.match(text)
        if bare is not None and 0 < int(bare["n"]) <= BIG:
            return [party(sentence, context, Party(int(bare["n"])), 0, bare.end(), 0.82)]
    if total is None and ((any(not g.sure for g in told) and _COMING.search(text)) or (context.addressed and _GOES.search(text))):
        total = _ENDS.search(text)  # "vamos con los chicos, 4"
    if (listed := _listed(sentence, context, total, asked=asked)) is not None:
        return [listed]
    with_me = _WITH_ME.search(text) is not None
    pair = re.search(
        r" (?:en pareja|(?:los|nosotros|nosotras) (?:dos|2)" + _NOT_PEOPLE + r"|con (?:un )?acompañante)(?= )", text
    )
    if pair is not None and "los" not in pair[0] and total is None:
        counts = counts_of(told)
        counts["adults"] = max(2, counts["adults"] + 1) if " acomp" not in pair[0] else counts["adults"] + 1
        return [party(sentence, context, Party(**counts), pair.start(), max(pair.end(), end_of(sentence, told)))]
    if company.told_of(sentence, context):
        return []  # "mi esposo y yo no vamos"
    told = [
        g
        for g in told
        if not company.PREDICATE.match(text[sentence.offset(g.last) - 1 :])
        and not re.search(r" (?:sin|menos|salvo|excepto|ni) $", text[: sentence.offset(g.first)])
    ]
    people = [company.known_ones(g, said, context) for g in told if g.letters]
    if people and (total is not None or with_me or _WHOLE.search(text) is not None or asked):
        counts = counts_of(people)
        spoken = sum(counts.values())
        first, last = people[0].first, people[-1].last
        start, end = sentence.offset(first), sentence.offset(last)
        sure = 0.88
        if total is not None:
            whole = _number_of(total)
            at = _number_at(total)
            overlapping = any(sentence.offset(g.first) <= at < sentence.offset(g.last) for g in people)
            if overlapping:  # "vamos 2 adultos y 1 niño": the number belongs to the first of the groups
                counts["adults"] += int(with_me and not _starts_with_number(sentence, people[0]))
            else:
                counts["adults"] += max(0, whole - spoken)
                sure = 0.9 if whole >= spoken else 0.6
            start, end = min(start, total.start() + 1), max(end, total.end())
        elif with_me:
            counts["adults"] += 1
            me = _WITH_ME.search(text)
            start, end = min(start, me.start() + 1) if me else start, max(end, me.end()) if me else end
        if not all(g.sure for g in told) and (total is None or sum(counts.values()) == spoken):
            sure = 0.6
        return [party(sentence, context, Party(**counts), start - 1, end, sure)]
    if total is not None:
        whole = _number_of(total)
        if whole < 1:
            return []
        sure = 0.9 if all(g.sure for g in told) else 0.7  # "we're 5 with the kids": how many are children?
        return [party(sentence, context, Party(whole), total.start(), total.end(), sure)]
    return []


def _number_of(total: re.Match[str]) -> int:
    return int(next(v for v in total.groups() if v and v.isdecimal()))


def _number_at(total: re.Match[str]) -> int:
    """Where in the sentence's text its number stands."""
    return next(total.start(k + 1) for k, v in enumerate(total.groups()) if v and v.isdecimal())


def _listed(sentence: Sentence, context: ReplyContext, total: re.Match[str] | None, *, asked: bool) -> SetParty | None:
    """The party counted off person by person, with the number in all where one is told beside it."""
    found = company.counted(sentence, context, _number_of(total) if total is not None else None, asked=asked)
    if found is None:
        return None
    run, counts = found
    first, last = sentence.offset(run.first), sentence.offset(run.last)
    sure = 0.88
    if total is not None and not first <= _number_at(total) < last:
        whole, spoken = _number_of(total), sum(counts.values())
        beside = re.search(r" [0-9]+ (?:y|mas|\+) $", sentence.text[:first]) is not None  # "somos tres y un bebé"
        beside = beside and _number_at(total) < first and not run.me
        counts["adults"] += whole if beside else max(0, whole - spoken)
        sure = 0.9 if beside or whole >= spoken else 0.6
        first, last = min(first, total.start() + 1), max(last, total.end())
    return party(sentence, context, Party(**counts), first - 1, last, sure)


def _starts_with_number(sentence: Sentence, group: Group) -> bool:
    return sentence.tokens[group.first].plain.isdecimal()


def _of_food(rest: str) -> bool:
    """Whether a number counts what follows it, and no persons."""
    said = rest.split()[:3] if not rest.startswith(" ,") else []
    return bool(said) and (phrase(said, 0, "unit")[1] > 0 or any(known_dish(" ".join(said[:n])) for n in (1, 2, 3)))


def _brings_persons(said: str, joined: Sequence[Group]) -> bool:
    """ "Llevo a mi hermana" is a person; "llevo a los niños a la escuela" is told apart before, as a trap."""
    return bool(joined) and bool(said)


def read_party(text: str) -> Party | None:
    """A party by itself: "2 adultos y 1 niño", "3", "mi mujer y yo"."""
    from planning.replies.spanish import message_of

    message = message_of(text)
    alone = ReplyContext("", replying_to="question:people")
    for sentence in message.sentences:
        for intent in read_people(Sentence(sentence.tokens, False), alone):
            if isinstance(intent, SetParty) and not intent.relative:
                return intent.party
    bare = re.fullmatch(r"\D*([0-9]{1,3})\D*", message.plain)
    return Party(int(bare[1])) if bare else None


_ALSO = re.compile(
    r"^ (?:tambien |y )*(?:viene|va|vienen|van|vendra|ira)(?: tambien)? (?:mi|nuestr[oa]) ([a-zñ]+)(?= ,| $| tambien| a | el | y| de [0-9]| \( )|^ (?:y |tambien )*(?:mi|nuestr[oa]) ([a-zñ]+) (?:tambien )?(?:viene|va|vendra|ira|se viene|quiere (?:venir|ir))(?= |$)(?! a )"
)


def _added_person(sentence: Sentence, context: ReplyContext) -> AddPerson | SetParty | None:
    match = _ALSO.search(sentence.text)
    if match is None:
        return None
    who = match[1] or match[2]
    told = [g for g in groups(["mi", who]) if len(g.letters) == 1]
    start, end = sentence.span_of(match)
    if told and told[0].letters != ("a",):
        at = next(i for i, t in enumerate(sentence.tokens) if t.plain == who)
        with_age = next(
            (g for g in groups([t.plain for t in sentence.tokens[: at + 6]]) if g.first <= at < g.last), told[0]
        )
        return relative(
            sentence, context, counts_of([with_age]), match.start(), sentence.offset(with_age.last), [with_age]
        )
    if not told:
        return None
    return AddPerson(f"{who} de {context.name}" if context.name else who, start=start, end=end, confidence=0.86)
