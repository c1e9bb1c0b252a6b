"""What somebody asks: answered from the plan, shortly. And who says they will be late."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from functools import cache

from planning.replies.intents import Ask, Intent, Late, ReplyContext, Undo
from planning.replies.spanish.lexicon import any_of
from planning.replies.text import Sentence

_WHO = r"quien(?:es)?"
_TELL = re.compile(
    r"^ (?:(?:y|oye|che|bot|porfa|por favor|a ver|oigan|,) )*(?:(?:ruego|rogaria|agradeceria|agradezco|quisiera|queria|me gustaria|quiero) (?:que )?(?:me |nos )?(?:indiquen?|digan?|pasen?|manden?|envien?|saber|confirmen?|compartan?|recuerden?|facilit[ae]n)|me (?:regala[ns]?|regalan|facilita[ns]?|comparte[ns]?|colabora[ns]? con)|me (?:recuerdas?|recuerdan|dices|dicen|das|dan|pasas?|pasan|mandas?|mandan|confirmas?|confirman)|pas[ae]n?me|pasad(?:me|nos)|pas[ae]n?(?: otra vez)?|mand[ae]n?(?:me|nos)?|mandad(?:me|nos)|envi[ae]n?(?:me|nos)?|compart[ae]n?(?:me)?|recuerd[ae]n?(?:me|nos)?|record[ae](?:me|nos)|recordad(?:me|nos)|d[ií](?:me|nos|ganme)|dig[ae]n?(?:me|nos)|decidme|deci(?:me|nos)|indic[ae]n?me|necesito|quiero saber|quisiera saber|me falta|perdi|no (?:tengo|encuentro|recuerdo|me acuerdo de|se)) (?:(?:otra vez|de nuevo|porfa|por favor|bien|cual es|cuando es|donde es|a) )*(?:(?:la|el|los|las|que|mi) )?(?P<what>direccion|ubicacion|ubi|domicilio|lugar|sitio|hora|fecha|dia|horario|lista|que falta|cuando|donde)(?= )"
)
_TOPICS = (
    ("why", r"(?:por que|porque|xq|como es que|a que viene que) (?:no )?(?:(?:me|nos|le|lo|la|te|se|a mi) )*(?:hiciste|dijiste|anotaste|pusiste|pides|pide|pedis|preguntas|preguntais|quitaste|cambiaste|borraste|apuntaste|toca|sale|dice|mandas|recomiendas|sugieres|propones|insistes|piden|asignaste|moviste)"),
    ("my-list", r"que (?:llevo|llevaba|traigo|prometi|pongo|traia|llevabamos|traemos) (?:yo|nosotros)|que (?:dije|habia dicho|dijimos|quede|habia quedado|prometi|me anotaron|me apuntaron|me apunte|me comprometi|me anote|tengo anotado|tengo apuntado|tenia que|me habia apuntado)(?: (?:que|en|a|de|yo))*|(?:yo )?que me toca(?: a mi)?|^ (?:a mi )?(?:me|nos) (?:toca|tocaba|toco) (?:llevar|traer|poner|hacer)|^ (?:yo|nosotros) (?:llevaba|llevabamos|iba a llevar|era (?:el|la) de(?:l)?|quede (?:en|de))|que es lo mio|cual es mi (?:plato|parte|lista)|(?:yo )?que (?:era lo que )?(?:llevaba|iba a llevar|habia dicho)|(?:estoy|me tienes|me tenes) (?:apuntad[oa]|anotad[oa])|mi lista|que tengo (?:yo )?(?:anotado|apuntado)|con que (?:quede|me apunte)|(?:recuerd[ae]me|record[ae]me|me recuerdas?|me recuerdan) (?:lo )?que (?:yo )?(?:llevo|llevaba|traigo|dije|prometi|me toca|quede)"),
    ("what-should-i-bring", r"que (?:deberia|debo|puedo|podria|podemos|podriamos|tengo que|tenemos que|hay que|ay que|toca|se tiene que|quieren que|quieres que|queres que|quereis que|queris que|necesitan que|necesitais que|prefieren que|preferis que|os parece que|les parece que|conviene)"
     r"(?: (?:yo|les|os|te|nosotros))* ?(?:llevar|traer|lleve|traiga|llevemos|traigamos|haga|hagamos|poner|ponga|aportar|aporte|hacer|cocinar|cocine|prepare|preparar|comprar|compre)|que (?:llevo|traigo|pongo|hago|llevamos|traemos|cocino|preparo|compro)(?: entonces| mejor| yo)?(?= $| ,)|(?:hay|tengo|tenemos) que (?:llevar|traer) [a-zñ]+|(?:llevo|llevamos|traigo|traemos) (?:algo|algun|alguna)|(?:hace falta|falta|necesitan|necesitais|quieren|quereis) que (?:yo )?(?:lleve|traiga|haga|llevemos)|que se (?:lleva|trae|puede llevar|puede traer)(?= $| ,)|(?:en|con) que (?:ayudo|ayudamos|colaboro|colaboramos|contribuyo|apoyo|coopero|aporto)|con que (?:puedo|podemos|me|nos) (?:ayud|colabor|contribu|apunt|coop|anot)[a-z]*|en que (?:puedo|podemos|te|os|les) (?:ayud|colabor|contribu|ech)[a-z]*|que (?:me|nos) (?:recomiendas|recomiendan|recomendas|sugieres|sugieren|sugeris|aconsejas|pides|piden|encargan|asignan|dejan)|que (?:seria|viene) (?:bueno|bien) (?:que )?(?:llevar|lleve|traer)|de que (?:me|nos) (?:encargo|encargamos|ocupo)|(?:les|os|te) (?:llevo|traigo|hago|preparo)"),
    ("can-eat", r"(?:hay|habra|tienen|tendran|tendreis|tenemos|tendremos|queda|existe|va a haber|hubiera) (?:algo|alguna cosa|comida|opcion|opciones|alguna opcion|platos?|algun plato|postres?|algun postre|cosas)(?: (?:ahi|alli|alla|aca|aqui|mas|rico|de comer|de postre))* ?(?:que (?:yo |nosotros |mi [a-z]+ |un |una )?(?:[a-z]+ )?(?:pueda|puedo|podamos|puede|puedan|coma|comamos|no (?:lleve|tenga)|sea (?:vegan|vegetarian|apt|sin))[a-z]*(?: comer)?|(?:sin|para|apto|apta|aptos|aptas|vegan[oa]s?|vegetarian[oa]s?|kosher|halal|libre)(?: [a-z]+)?)|que (?:puedo|puede|podemos|pueden|podria) (?:yo |mi [a-z]+ |un |una )?(?:[a-z]+ )?comer|(?:puedo|puede|podemos|podre|podra) (?:yo |mi [a-z]+ )?(?:comer|tomar|probar)|(?:es|son|sera|seran|esta|estan) (?:apt[oa]s?|libres? de|sin (?:gluten|lactosa|huevo|frutos secos|leche|nueces)|vegan[oa]s?|vegetarian[oa]s?|picantes?)|que (?:lleva|llevan|tiene|contiene|ingredientes) (?:el|la|los|las|tu|su)|para (?:celiac[oa]s|vegan[oa]s|vegetarian[oa]s|alergic[oa]s)"),
    ("missing", r"(?:que|cuanto|cuantos|cuantas) (?:es lo que )?(?:mas )?(?:falta|faltan|hace falta|hacen falta|queda por|nos falta|falta por|hay que (?:llevar|traer) todavia)|(?:falta|faltan|hace falta) (?:algo|algun|alguna|mas|muchas?)|que (?:no )?(?:tenemos|hay)(?: todavia| aun| por ahora| hasta ahora)?(?= $| ,| para (?:comer|beber|tomar|cenar))|ya (?:esta|tenemos) todo|^ (?:todavia |aun |ya )?(?:falta|faltan|hace falta|hacen falta|no falta) [a-zñ ]{2,24} $|que mas (?:falta|se necesita|hace falta|necesitan|necesitais)|que (?:se )?necesita(?:n|mos|is)?(?= $| ,| todavia| aun)|(?:ya )?(?:hay|tenemos) (?:suficiente|bastante)s?|nos (?:falta|hace falta)|que queda (?:libre|pendiente|por cubrir)|en que vamos cort[oa]s"),
    ("who-brings", rf"(?:a )?{_WHO} (?:(?:mas|se|nos|va a|van a|me|ha|han|es el que|es la que|iba a|dijo que) )*(?:lleva|llevan|llevaba|llevar|llevara|trae|traen|traera|traer|traia|hace|hacen|hacer|hara|pone|ponen|poner|pondra|prepara|preparan|preparar|encarga|encargan|encarga de|ocupa|compra|compran|comprar|aporta|cocina|toca|pillo|puso|tiene)|(?:alguien|alguno|nadie) (?:(?:mas|ya|se|va a|ha|esta|nos) )*(?:lleva|llevar|trae|traer|llevara|pone|poner|hace|hacer|encarga de|encarga del|dijo que llevaba|apunto|pidio|trayendo|llevando|compra|prepara)|(?:ya )?(?:hay|tenemos) quien (?:lleve|traiga|haga|ponga)|(?:lleva|llevan|trae|traen|pilla|compra|pone|hace|llevara|traera|consigue|puede (?:llevar|traer|comprar|poner|hacer)) (?:alguien|alguno|alguna)(?: ya| mas)?|quien con que|{_WHO} (?:lleva|trae) que|ya (?:hay|tenemos|llevan|traen|pidieron)(?= (?!algo|todo|suf))"),
    ("who-comes", rf"{_WHO} (?:(?:mas|al final|ya|todos|si|se|ha|han) )*(?:va|van|viene|vienen|confirmo|confirmaron|confirmado|asiste|asisten|vendra|vendran|va a ir|van a ir|va a venir|van a venir|faltan? (?:por )?confirmar|estara|estaran|son|somos|apunto|apuntado|falta por contestar|apuntaron|anotaron|sumaron|(?:esta|estan) (?:apuntad|anotad|confirmad)[oa]s?)|cuant[oa]s (?:(?:personas?|gente|al final|en total|ya) )*(?:somos|seremos|vamos|van|vienen|seran|hay|sois|son|vais|confirmad[oa]s|confirmaron|vendran|estamos|sumamos|quedamos|iremos|bocas)|cuanta gente|(?:viene|va|vendra|ira|vienen|van) (?:al final )?(?:mucha gente|todos|alguien|pat|mei|ravi|mei lin)|(?:al final )?(?:pat|ravi|mei|mei lin) (?:va|viene|confirmo)|(?:ya )?confirm(?:o|ó|aron) [a-zñ]+(?: [a-zñ]+)?(?= $)"),
    ("oven", r"(?:puedo|podemos|se puede|podre|podria|podriamos|me dejan|me dejais|me dejas|nos dejan|hay (?:forma|modo|manera) de|hay donde|habra donde|hay lugar para|hay sitio para|hay espacio para) (?:usar|ocupar|prender|encender|meter|calentar|recalentar|enchufar|poner|terminar|hornear|gratinar|en)? ?(?:.{0,30} )?(?:horno|estufa|cocina|microondas|hornilla|hornalla|fuego|fogon|fogones|vitro|placa|nevera|heladera|refri|refrigerador|frigorifico|parrilla|calentar|recalentar|gratinar)|(?:el|la|tu|su) (?:horno|estufa|cocina|microondas|parrilla|nevera|heladera|refri) (?:esta|estara|va a estar|queda|hay|funciona|se puede)|(?:hay|habra|tienen|tienes|teneis|tenes|queda) (?:algun |un |el )?(?:sitio|espacio|lugar|hueco|turno)? ?(?:en el |en la |para el |de )?(?:horno|microondas|estufa|nevera|heladera|refri|hornalla)|a que hora (?:me toca|puedo usar|tengo) (?:el )?horno|horno libre|puedo (?:calentar|recalentar|gratinar|hornear)"),
    ("when", r"(?:a|sobre|desde|hasta|para) ?que hora(?:s)?|que horas? (?:es|era|son|empieza|quedamos)|(?:cuando|cuándo) (?:es|era|empieza|arranca|sera|seria|va a ser|nos|quedamos|toca|comienza|hay que|llegamos|comemos|cenamos|habiamos|se hace|hacemos)|(?:que|cual) (?:dia|fecha)|hora es|(?:es|era|seria) (?:el|este) (?:sabado|domingo|viernes|jueves|lunes|martes|miercoles)|es (?:a las|hoy|mañana)|a partir de cuando|de que hora"),
    ("where", r"(?:a|en|por|pa|para|hacia)? ?donde (?:es|era|sera|seria|va a ser|van a hacerlo|queda|quedaria|nos|hay que|vive|vives|vivis|quedamos|vamos|tenemos que|toca|caemos|caigo|llego|llegamos|voy|se hace|lo hacen)|(?:cual es|me pasas?|me pasan|nos pasan|pasan|pasas|pasame|pasenme|pasadme|manda|mandan|mandas|mandame|mandenme|comparten|compartes|envian|envias|recuerdame|recordarme|tienen|me das|me dan|alguien tiene) (?:(?:de nuevo|otra vez|por favor|me) )?(?:la |su |tu )?(?:direccion|ubicacion|ubi|loc|locacion|domicilio|maps?|calle|google maps)|(?:en|a) que (?:lugar|sitio|domicilio|direccion|casa|parte|calle|numero|piso|salon|distrito|barrio|colonia|ciudad|pueblo|zona|urbanizacion|portal|bloque|torre|local|parque|plaza|edificio)|(?:es|sera) en (?:casa|tu casa|el|la|lo de)|la direccion|como (?:llego|se llega|llegamos)"),
    ("can-eat", "@CONTAINS"),
)  # fmt: skip
_LEAD = re.compile(
    r"^ (?:(?:y|oye|che|bot|pero|perdon|disculpa|una pregunta|pregunta|duda|ey|hola|entonces|bueno|ok|oigan|por cierto|al final|, |: ?|a ver|me dices|me dicen|me decis|sabes|saben|sabeis|alguien sabe|puedes decirme|decime|dime|diganme|decidme|recuerdame|recordame|me recuerdas|me recuerdan|no se|no recuerdo|me olvide|yo|ya) ,? ?)*(?P<asks>a |en |de |por |para |con |desde |)(?:que(?! (?:rico|bien|bueno|buena|bonit[oa]|lind[oa]|padre|chido|guay|risa|hambre|pena|lastima|ilusion|alegria|va|mal|emocion|ganas|asco|frio|calor|dios|tal |suerte|conste|vivan|viva|no |si |se |sea|te |os |les |oso|detalle|fuerte|pasada|verguenza|envidia|sueño))|quien|quienes|cuando|donde|cuantos|cuantas|cuanto|cuanta|cual|hay|habra)(?= )"
)
_TOLD = re.compile(
    r" (?:donde sea|cuando sea|que (?:haya|sea|digan|quieran)|cuando (?:pueda|salga|llegue|este|quieran)) "
)
_LATE = re.compile(
    r" (?:llego|llegamos|voy|vamos|llegare|llegaremos)(?: (?:un poco|algo|bastante))? tarde ,? ?(?:(?:como|unos|unas|mas o menos) )*(?:(?P<n5>[0-9]{1,3}) ?min(?:utos?|s)?|(?P<hours5>una|1|media|[2-9]) horas?)(?= )"
    r"| (?:llego|llegamos|voy|vamos|llegare|llegaremos|ire|iremos|(?:voy|vamos) a llegar|estare|estaremos|aparezco|caigo|caemos|apareceremos|vengo|venimos|andamos|ando)(?: (?:a llegar|con|como|un|unos|unas|poco|poquito|algo|mas|a|ya|por lo menos|al menos|aprox|bastante|muy|super|por ahi de))* ?(?:(?P<n>[0-9]{1,3}) ?(?:min(?:utos?|s|utitos)?|m) |(?P<hours>una|1|media|[2-9]) horas? (?P<half>y media )?)?(?:(?:de|un poco|algo|mas) )*(?:tarde|con retraso|de retraso|retrasad[oa]s?|atrasad[oa]s?|demorad[oa]s?|retraso|tardecito|tardisimo|despues|mas tarde)(?= )"
    r"| (?:me|nos|se me|se nos) (?:retraso|retrase|retrasamos|atraso|atrase|atrasamos|demoro|demore|demoramos|demorare|hizo tarde|hace tarde|hizo tardisimo|voy a (?:retrasar|demorar|atrasar)|vamos a (?:retrasar|demorar|atrasar)|retrasare|atrasare|tardo|tardamos)(?: (?:(?P<n3>[0-9]{1,3}) min(?:utos?)?|(?P<hours3>una|1|media|[2-9]) horas?))?(?= )"
    r"| (?:voy|vamos|llevo|llevamos|tengo|tenemos|con) (?:un )?retraso(?: de (?:(?P<n2>[0-9]{1,3}) ?min(?:utos?)?|(?P<hours2>una|1|media|[2-9]) horas?))?(?= )"
    r"| (?:llego|llegamos|llegare|llegaremos|caigo|caemos)(?: (?:como|tipo|sobre|hasta|recien|a|por ahi de|pasadas|mas bien))* (?:a )?(?:las? )?[0-9]{1,2}(?::[0-9]{2})?(?: y media)? ?,? ?(?:empiecen|empezad|arranquen|coman|comiencen|no me esperen|no nos esperen|vayan)"
    r"| (?:tipo|sobre las|hasta las|a las|recien a las|pasadas las|como a las) [0-9]{1,2}(?::[0-9]{2})?(?: y media)? (?:llego|llegamos|llegare|llegaremos|caigo|caemos) ,? ?(?:empiecen|empezad|arranquen|coman|comiencen|no me esperen|no nos esperen|vayan)"
    r"| (?:salgo|salimos) (?:tarde|mas tarde) (?:de|del) "
    r"|^ (?P<n4>[0-9]{1,3}) ?min(?:utos?|s)? (?:tarde|de retraso|mas tarde|atrasad[oa]s?|retrasad[oa]s?)(?= )"
)
_UNDO = re.compile(
    r"^ (?:(?:no|perdon|ay|uy|ups|bot|espera|esperate|,) ,? ?)*(?:me equivoque(?! (?:de|al))|te equivocaste|se equivoco|os equivocasteis|te confundiste|nos equivocamos|deshaz(?:lo)?|deshacer|deshacelo|borra (?:eso|lo ultimo|lo anterior|mi ultimo)|borralo|borrenlo|borradlo|borrala|eso no(?: (?:era|es|fue|queria)[a-z ]*)?|no era eso|no queria decir eso|no dije eso|yo no dije eso|(?:eso )?esta mal|lo anotaste mal|lo pusiste mal|anula(?:lo| eso| lo ultimo)|cancela (?:eso|lo ultimo|lo anterior)|olvidalo|olvida (?:eso|lo que dije|lo ultimo)|olviden (?:eso|lo que dije)|quita eso|quitalo|me retracto|retiro lo dicho|vuelve atras|volve atras|revierte|revertir|fue (?:un )?error|error mio|me confundi)(?= |$|,)"
)


@cache
def _patterns() -> tuple[tuple[str, re.Pattern[str]], ...]:
    contains = rf"(?:lleva|llevan|llevara|tiene|tienen|tendra|contiene|contienen|trae|traen|hay) (?:algo de |un poco de |trazas de )?(?:{any_of('allergen')}|{any_of('avoid')})"
    return tuple(
        (topic, re.compile(rf"(?: |^)(?:{pattern.replace('@CONTAINS', contains)})(?= |$)"))
        for topic, pattern in _TOPICS
    )


_NOUN = re.compile(
    r"^ (?:(?:y|la|el|cual|,) )*(?:(?P<where>direccion|ubicacion|ubi|lugar|sitio|domicilio|mapa|donde)|(?P<when>hora|fecha|dia|horario|cuando|a que hora))(?: (?:exact[oa]|porfa|por favor|final|de la [a-z]+|del [a-z]+|y [a-z]+))* $"
)
""" "Dirección?": a question of one noun."""
_INDIRECT = re.compile(
    r"^ (?:(?:oye|hola|bot|disculpen?|una pregunta|y|pues|,|:) )*(?:(?:quisiera|queria|quiero|me gustaria|necesito|querria|quisieramos|queriamos) saber|me pregunto|alguien sabe|saben|sabes|sabeis|sabras|me (?:pueden|puedes|podrian|podrias) decir|quiero preguntar|pregunto|consulto|consulta|duda)(?: ?[,:])? (?P<si>si )?(?=(?:[a-zñ]+ ){1,20}$)"
)
""" "Quisiera saber si hay opciones vegetarianas": asked without a question."""


def straight(sentence: Sentence) -> Sentence:
    """An indirect question as the question it is."""
    found = _INDIRECT.match(sentence.text)
    if found is None or (not found["si"] and _LEAD.match(sentence.text[found.end() - 1 :]) is None):
        return sentence
    _, first = sentence.token_range(found)
    return Sentence(sentence.tokens[first:], True) if first < len(sentence.tokens) else sentence


def read_question(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """A question of a known kind; of another kind it goes to the host when it was put to the bot."""
    text = sentence.text
    if (tell := _TELL.search(text)) is not None and context.addressed:
        what = tell["what"]
        topic = (
            "when"
            if what in ("hora", "fecha", "dia", "horario", "cuando")
            else "missing"
            if what in ("lista", "que falta")
            else "where"
        )
        start, end = sentence.span_of(tell)
        return [Ask(topic, start=start, end=end, confidence=0.85)]
    if sentence.question and context.addressed and (noun := _NOUN.match(text)) is not None:
        start, end = sentence.span_of(noun)
        return [Ask("where" if noun["where"] else "when", start=start, end=end, confidence=0.88)]
    led = _LEAD.match(text) if _TOLD.search(text) is None else None
    if not (sentence.question or led):
        return []
    for topic, pattern in _patterns():
        found = pattern.search(text)
        if found is None or (not sentence.question and led is not None and found.start() > led.start("asks") + 4):
            continue
        if not sentence.question and re.match(r" ?(?:hay|tengo|tenemos) que ", found[0]):
            continue  # "hay que llevar sillas" tells, and asks nothing
        start, end = sentence.span_of(found)
        about = ""
        if topic == "who-brings":
            rest = re.sub(r"^(?: (?:el|la|los|las|un|una|algo de|de|del|ya))+ ", " ", text[found.end() :])
            about = re.split(r" (?:ya|al final|entonces|por fin|,) ?", rest)[0].strip()
            about = "" if about in ("que", "que cosa", "cada cosa", "cada que", "las cosas") else about
        near = context.near_board and topic in ("when", "where", "what-should-i-bring", "who-brings")
        sure = 0.9 if context.addressed or topic == "missing" or near else 0.5
        return [Ask(topic, about, start=start, end=end, confidence=sure)]
    if (
        context.addressed
        and (sentence.question or (led is not None and _IS_THERE.search(text)))
        and re.search(
            r" (?:hay|habra|puedo|podemos|podria|se puede|se pueden|tienen|tienes|teneis|tenes|cuanto|como|cual|donde|es|va a|toca|ocupan|piensan|saben|sabes|sabeis|tengo que|tenemos que|hay que|tendran|tendras|tendreis|sirve|sirven|vale|valen|prefieren|preferis|prefieres|quieren|quieres|queres|quereis|necesitan|necesitas|necesitais|dan|sirve|funciona|queda|quedan|llevo|llevamos|traigo|hace falta|necesito|necesitamos|pagan|pago|pagamos|cobran|cuesta|cuestan|termina|acaba|dura|entra|entran|incluye|permiten|aceptan|dejan|importa|molesta|esta bien|podre|puede|pueden|cabe|cabemos|sera|van a|me dejan) ",
            text,
        )
    ):
        return [Ask("host", confidence=0.82)]
    return []


_IS_THERE = re.compile(
    r"^ (?:[a-z]+ |, ){0,3}(?:hay|habra|tienen|tendran|va a haber) (?:donde|lugar|sitio|espacio|forma|manera|modo|como|algun|alguna|estacionamiento|parking|wifi|internet|alberca|piscina|pileta|sombra|sillas|mesas|enchufes?|luz|baño|baños|juegos|area) "
)
""" "Oiga y hay donde conectar la plancha": asked without the sign."""


def read_undo(sentence: Sentence) -> list[Intent]:
    found = _UNDO.search(sentence.text)
    if found is None:
        return []
    start, end = sentence.span_of(found)
    return [Undo(start=start, end=end, confidence=0.75)]


_ARRIVES = re.compile(
    r" (?:(?:solo|recien|nada mas)(?: (?:puedo|podemos|podre|podremos|llego|llegamos|vengo|estoy libre|llegar|estar|ir|venir|alli|ahi|voy|recien))* (?:a partir de|desde|despues de|a|sobre|como a)"
    r"|no (?:(?:puedo|podemos|podre|podremos|voy a poder|vamos a poder) )?(?:llego|llegamos|llegar|llegare|llegaremos|ir|venir|estar|estoy|estamos|salgo)(?: (?:alli|ahi|libre))* (?:antes de|hasta)"
    r"|(?:llego|llegamos|llegare|llegaremos|puedo llegar|podemos llegar|caigo|caemos|caere)(?: (?:recien|solo|por ahi|por alla|yo|tipo|alli|ahi))* (?:a|sobre|como a|despues de|a eso de|hacia|por ahi de|por ahi a|tipo|mas o menos a)) las? (?P<h>[0-9]{1,2}(?:[:.][0-9]{2})?)(?: (?:de la (?:tarde|noche)|pm))?(?= |$)"
)
"""The writer's own hour of arrival."""


def read_late(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    if not sentence.question and (hour := _ARRIVES.search(sentence.text)) is not None:
        start, end = sentence.span_of(hour)
        sentence.take_match(hour)
        return [Late(None, hour["h"].replace(".", ":"), start=start, end=end, confidence=0.88)]
    found = _LATE.search(sentence.text)
    if found is None or sentence.question or re.search(r" (?:no|nunca) $", sentence.text[: found.start() + 1]):
        return []
    start, end = sentence.span_of(found)
    sentence.take_match(found)
    got = found.groupdict()
    n, hours = got["n"] or got["n2"] or got["n3"] or got["n4"] or got["n5"], got["hours"] or got["hours2"] or got["hours3"] or got["hours5"]
    minutes = int(n) if n else None
    if hours:
        minutes = {"una": 60, "media": 30}.get(hours) or 60 * int(hours)
        minutes += 30 if got["half"] else 0
    sure = (
        0.88
        if re.search(r" (?:empiecen|empezad|arranquen|coman|esperen) ?", sentence.text) is None or minutes
        else 0.75
    )
    return [Late(minutes, start=start, end=end, confidence=sure)]
