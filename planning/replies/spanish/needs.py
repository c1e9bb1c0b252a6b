"""Diets and allergies of the writer or a member of the party."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

from planning.potluck import Need
from planning.replies.intents import Intent, ReplyContext, SetNeeds, SetPregnant
from planning.replies.spanish.lexicon import any_of, value_of, words
from planning.replies.spanish.names import category_of, known_dish
from planning.replies.spanish.traps import laughing
from planning.replies.text import Message, Sentence

_NONE = re.compile(
    r" (?:sin (?:ninguna |ningun )?(?:alergias?|restriccion(?:es)?|problemas?|intolerancias?|manias)|no (?:tengo|tenemos|hay|tiene nadie|somos) (?:ningun[ao]s? )?(?:alergias?|alergic[oa]s?|restriccion(?:es)?|intolerancias?|problemas con la comida)(?: a nada)?|(?:no (?:soy|somos) )(?:alergic[oa]s? a nada)"
    r"|ninguna (?:alergia|restriccion|intolerancia)|cero (?:alergias|restricciones)|(?:como|comemos|comen|come) (?:de )?todo|nadie (?:tiene|es) (?:alergic[oa]|alergias?|ninguna)[a-z ]*|no (?:somos )?delicados|nada especial|nada en especial|de todo)(?= |$)"
)
_NONE_ASKED = re.compile(
    r"^ (?:(?:no|ningun[ao]s?|nada|nadie|nop|para nada|que (?:yo|nosotros) (?:sepa|sepamos)|de momento|por ahora|todo bien|todo|todos|libre|cero|estamos bien|no hay|no tengo|no tenemos|gracias|de nada|en absoluto|las? de siempre no|que sepamos|comemos lo que (?:haya|sea)|de eso|a nada|especial|aqui|en casa|por suerte|por fortuna) ?,? ?)+ $"
)
_GONE = re.compile(
    r" (?:ya no (?:soy|es|somos|tiene|tengo|son|estoy|esta)|(?:quita|quiten|quitad|quitar|quitame|quitenme|borra|borrar|borren|elimina|saca|saquen|sacame|tacha)|(?:dejo|deje|dejamos) de ser|se (?:le|me) (?:paso|quito|fue|curo)|ha vuelto a(?:l)?|volvi(?:o)? a comer|ya (?:puede|puedo|come|como|tolera)|supero) "
)
_SEVERE = re.compile(
    r" (?:(?:muy |bastante )?(?:grave|graves|sever[oa]s?|serias?|fuertes?|fuertisima|brutal|bestial|tremenda|extrema)|gravemente|(?:muy|super|extremadamente|altamente|terriblemente|re|demasiado|mega) alergic[oa]s?|anafilaxi[sa]|anafilactic[oa]s?|epinefrina|adrenalina|epipen|epi pen|autoinyector|inyeccion|jeringa|mortal|mortales|matar|mata|matan|al hospital|morir(?:se|me)?|se muere|me muero|se nos muere|puede morir|matar(?:la|lo|me)?|la mata|lo mata|me mata|peligros[oa]s?|hospital|urgencias|emergencias?|ambulancia|shock|choque|se (?:le|me|nos|les) (?:cierra|cerro|cierran)|cierra la garganta|se (?:ahoga|asfixia)|me (?:ahogo|asfixio)|no (?:puede|puedo) respirar|se (?:le|me) hincha|se hincha|ni (?:una )?(?:traza|trazas|pizca|gota|olerl[oa]|verl[oa])|trazas|vida o muerte|se pone (?:muy )?(?:mal|grave|fatal|morad[oa])|se nos pone (?:muy )?mal|me pongo (?:muy )?(?:mal|grave|fatal)|contacto) "
)
_MILD = re.compile(
    r" (?:leve|leves|levemente|ligera|ligeramente|suave|poca cosa|nada grave|no (?:es )?(?:muy )?(?:grave|severa|fuerte)|un poco) "
)
_PREGNANT = re.compile(
    r" (?:(?:estoy|esta|estamos|sigo|anda|ando) (?:de [0-9a-z]+ (?:meses|semanas) )?(?:(?:muy|super|ya|re) )?(?:embarazadas?|embarazadisima|encinta|preñada|esperando (?:un )?(?:bebe|peque|niño|niña)|en cinta|en estado)|embarazada|espera(?:mos)? (?:un )?bebe|(?:estoy|esta) de [0-9]+ meses de embarazo)(?= |$)"
)
_DISH = re.compile(
    r" (?:ensalada|plato|opcion(?:es)?|pastel|tarta|lasaña|pan|torta|postre|platillo|version|paella|tortilla|hamburguesa|queso|salsa|chorizo|comida|menu|pizza|empanada|croqueta|curry|mole|chili|guiso|pasta|arroz|bizcocho|brownie|galleta|crema|sopa|helado|leche|cerveza|vino|bebida|yogur|harina|base|alternativa|algo|cosa|aperitivo|dip|hummus|budin|flan|mayonesa|tamal|taco|canape|picoteo|cosita|todo|parte)(?:e?s)?(?: [a-z]+){0,2} $"
)
_NOT_MINE = re.compile(
    r"(?<! ya) (?:no|ni ahi|tampoco|nunca|ni) (?:soy|es|somos|son|fui|he sido|era|tengo|tiene|tenemos)(?: (?:ni|tan|muy|nada|alguien|de los|de las|una|un|el|la))* $| (?:era|eran|fue|eramos|fui) (?:[a-z]+ )?$| (?:si|aunque) (?:fuera|fueras|fuese) $| (?:parezco|parece|falso|falsa|casi|medio|media|antes) $"
)
_LEADS = r"(?:a la|a el|a los|a las|al|a|el|la|los|las|ni|de|del|de la|de los|nada de|nada con|con|ningun|ninguna|ningun tipo de|todo tipo de|cualquier|todos los|todas las|tipo|muy|casi|todo|comer|tomar|beber|probar|su|lo|que lleve|que tenga|cosas con|productos con|cualquier cosa con|y)"
_HOW = (
    r"(?P<how>alergi(?:c[oa]s?|a|as|quit[oa])|anafilactic[oa]s?|anafilaxia|alergi[oa]s?|(?:desensibilizad|reaccion)[a-z]*|intoleran(?:tes?|cia)|sensib(?:le|les|ilidad)|no (?:lo |la |los |las |le |les |nos |me |se )*(?:puede|puedo|podemos|pueden|debe|debo|debemos|deben|podria)(?: (?:ni|con|comer|tomar|probar|oler|ver|tocar|tener|beber|consumir|ingerir))*"
    r"|no (?:les |le |me |nos )?(?:como|come|comemos|comen|comere|tolero|tolera|toleramos|toleran|bebo|bebe|bebemos|beben|tomo|toma|tomamos|toman|consumo|consume|consumimos|pruebo|prueba|soporto|soporta|aguanto|aguanta|quiero|quiere)|(?:le|me|les|nos) (?:da|dan|hace|hacen|cae|caen|sienta|sientan|produce|producen) (?:mucha |muy |super )?(?:alergia|daño|mal|fatal|diarrea|ronchas|reaccion|urticaria)|no (?:le|me|les|nos) (?:cae|caen|sienta|sientan|hace|hacen) (?:muy |nada |tan )?bien|(?:evito|evita|evitamos|evitan)|nada (?:de|con)|cero|ni)"
)
_REACTS = re.compile(
    r" (?:alergi[a-z]*|ronchas|urticaria|se hincha|hincho|garganta|hospital|urgencias|reaccion|anafil[a-z]+|sarpullido|diarrea|daño|sienta (?:mal|fatal)|cae (?:mal|fatal)|brota|broto) "
)


@cache
def _allergic() -> re.Pattern[str]:
    things = f"{any_of('allergen')}|{any_of('avoid')}"
    return re.compile(
        rf" {_HOW}(?: (?:grave|severa|fuerte|leve|alimentaria|seria|confirmada|muy fuerte|muy grave|tambien|:|,|son|es|seria))* (?:{_LEADS} )*"
        rf"(?P<first>{things})(?P<more>(?: (?:,|y|ni|o|e|u|,? ?tampoco(?: puede)?)(?: y| ni| a)? (?:{_LEADS} )*(?:{things})(?= |$))*)(?= |$)"
    )


@cache
def _behind() -> re.Pattern[str]:
    """The food first: "maní, alergia leve", "los mariscos me dan alergia", "gluten, soy alérgica"."""
    things = any_of("allergen")
    return re.compile(
        rf"(?:^|(?<= ,)|(?<= que)|(?<= pero)|(?<= y)|(?<= porque)) (?:(?:a|al|el|la|los|las|lo|de|del) )*(?P<first>{things})(?P<more>(?: (?:,|y|ni|o|e) (?:(?:a|al|el|la|los|las) )*(?:{things})(?= ))*) ?,? (?:(?:no|me|le|les|nos|se|la|lo|los|las|soy|es|somos|tengo|tiene|muy|a|por|mi|su|que) )*"
        rf"(?P<how>alergi[a-z]+|intoleran[a-z]+|(?:da|dan|cae|caen|sienta|sientan|hace|hacen|produce|producen) (?:alergia|mal|fatal|daño|ronchas|urticaria|diarrea)|puedo (?:comer|tomar|probar)|puede (?:comer|tomar|probar)|(?:puede|pueden|podria) matar(?:la|lo|me|los|nos)?|mata|matan|manda(?:n)? al hospital|pone(?:n)? (?:muy )?mal|prohibid[oa]s?|ni verl[oa]s?|ni olerl[oa]s?)(?= |$)"
    )


@cache
def _diet() -> re.Pattern[str]:
    return re.compile(rf" ({any_of('need')})(?= |$|,)")


def read_needs(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    text = sentence.text
    if sentence.question:
        return []
    if (none := _NONE.search(text)) is not None and (
        (" nada" not in none[0] and none[0] != " de todo") or " alergi" in none[0] or context.asked == "diets"
    ):
        start, end = sentence.span_of(none)
        return [SetNeeds(context.writer, (), True, start=start, end=end, confidence=0.88)]
    if context.asked == "diets" and _NONE_ASKED.match(text):
        start, end = sentence.span(0, len(sentence.tokens))
        return [SetNeeds(context.writer, (), True, start=start, end=end, confidence=0.9)]
    if laughing(sentence):
        return []
    member = _member(text)
    found: dict[str, Need] = {}
    starts: list[tuple[int, int]] = []
    for match in (*_allergic().finditer(text), *_behind().finditer(text)):
        if _denied(text, match):
            continue
        for need in _named(f"{match['first']}{match['more']} ", avoided=not _ill(match["how"], text)):
            severity = _severity(match["how"], text, need)
            _note(found, Need(need, _count(text, match.start()), severity))
        starts.append(sentence.span_of(match))
        sentence.take_match(match)
    for match in _diet().finditer(text):
        before = text[: match.start() + 1]
        need, _, severity = value_of("need", match[1]).partition("|")
        if _DISH.search(before) or _NOT_MINE.search(before) or _of_a_dish(before):
            continue  # of a dish, not of a person
        if (
            match[1].startswith("sin ")
            and context.asked != "diets"
            and not re.fullmatch(rf" (?:(?:todo|lo mio|la mia|para (?:mi|nosotros)|mi (?:{any_of('kin')})|yo|nosotros|si|,) )*", before)
            and not re.search(
                r" (?:soy|es|como|come|comemos|comida|dieta|somos|necesito|necesita|necesitamos|tiene que (?:ser|comer)|todo|va|vamos|para (?:mi|ella|el|nosotros)|comiendo|lo mio|la mia) (?:[a-z]+ )?$",
                before,
            )
        ):
            continue
        if severity == "allergy" and _SEVERE.search(text) and re.search(r" (?:muy |grave)", text):
            severity = "severe allergy"
        behind = re.match(r" (?:los |las |l[oa]s )?([2-9])(?= $| ,)", text[match.end() :])  # "somos celíacos dos"
        _note(found, Need(need, int(behind[1]) if behind else _count(text, match.start()), severity))
        starts.append(sentence.span_of(match))
    if "gluten-free" in found:
        found.pop("gluten", None)  # "es celíaca, nada de gluten para ella"
    intents: list[Intent] = []
    if context.asked == "diets" and not found:
        found, starts = _bare(sentence)
    if found:
        start, end = min(s for s, _ in starts), max(e for _, e in starts)
        gone = _GONE.search(text) is not None
        sure = 0.6 if gone else 0.9
        if re.search(r" (?:creo|quizas?|tal vez|me parece|a lo mejor|no se si|puede que|sospech[a-z]+) ", text):
            sure = min(sure, 0.7)
        intents.append(
            SetNeeds(context.writer, tuple(found.values()), gone, member, start=start, end=end, confidence=sure)
        )
    if (expecting := _PREGNANT.search(text)) is not None:
        start, end = sentence.span_of(expecting)
        denied = re.search(r" no (?:estoy|esta) ", text) is not None
        intents.append(SetPregnant(context.writer, not denied, member, start=start, end=end, confidence=0.88))
    return intents


def _of_a_dish(before: str) -> bool:
    """Whether a dish stands right before: "unas lentejas veganas", "dos quiches de verdura vegetarianas"."""
    pieces = [w for w in before.split() if w != "100"]
    for n in (1, 2, 3):
        said = " ".join(pieces[-n:])
        if len(pieces) >= n and (known_dish(said) is not None or (n == 1 and category_of(said)[0])):
            return said not in words("kin") and said not in words("plain")
    return False


_GRAVER = ("diet", "intolerance", "allergy", "severe allergy")


def _note(found: dict[str, Need], need: Need) -> None:
    """Of one need told twice the graver counts: "sin gluten, soy celíaca"."""
    before = found.get(need.need)
    if before is None or _GRAVER.index(need.severity) > _GRAVER.index(before.severity):
        found[need.need] = need


def _bare(sentence: Sentence) -> tuple[dict[str, Need], list[tuple[int, int]]]:
    """The answer to "allergies?": foods by themselves."""
    found: dict[str, Need] = {}
    starts = []
    rest = sentence.text
    for match in re.finditer(rf" (?:{any_of('allergen')}|{any_of('avoid')})(?= )", rest):
        for need in _named(match[0] + " ", avoided=False):
            found.setdefault(
                need,
                Need(
                    need,
                    1,
                    _severity("alergia" if match[0].strip() not in ("carne", "cerdo", "alcohol") else "", rest, need),
                ),
            )
        starts.append(sentence.span_of(match))
    return found, starts


def _named(text: str, *, avoided: bool) -> list[str]:
    """The needs for the foods in the text; `avoided` those one would rather not eat ("carne": vegetarian)."""
    made = []
    for word in re.findall(rf"(?:^| )({any_of('allergen')}|{any_of('avoid')})(?= |$|,)", text):
        roles = ("avoid", "allergen") if avoided else ("allergen", "avoid")
        for role in roles:
            if re.fullmatch(any_of(role), word):
                made.append(value_of(role, word))
                break
    return list(dict.fromkeys(made))


def _ill(how: str, text: str) -> bool:
    return (
        re.match(
            r"alergi|anafil|mata|puede[n]? mata|manda|intoleran|sensib|.*(?:alergia|daño|diarrea|ronchas|reaccion|urticaria)",
            how,
        )
        is not None
    )


def _denied(text: str, match: re.Match[str]) -> bool:
    before = text[: match.start() + 1]
    if _NOT_MINE.search(before):
        return True
    how = match["how"]
    if how in ("ni", "cero", "nada de", "nada con") and not re.search(
        r" (?:como|come|comemos|puede|puedo|tolera|tolero|bebo|bebe|alergi[a-z]+|por favor|para (?:mi|ella|el|nosotros|mis|la|las|los)) ", text
    ):
        return True
    if how.endswith(("quiero", "quiere", "soporto", "soporta", "aguanto", "aguanta")) and not _REACTS.search(text):
        return True
    return re.search(r" (?:no (?:comas|coman|comais)|el perro|el gato|perro|gato) ", text) is not None


def _severity(how: str, text: str, need: str) -> str:
    if (
        how.startswith(("intoleran", "sensib"))
        or "tolero" in how
        or "tolera" in how
        or re.search(r"(?:mal|fatal|daño|diarrea|bien)$", how)
    ):
        return "intolerance"
    diet = need.endswith("-free") or need in ("vegetarian", "vegan", "diabetic", "low-salt", "low-carb", "pescatarian")
    if diet and not how.startswith("alergi"):
        return "diet"
    if _SEVERE.search(text) and not re.search(
        r" (?:no (?:es |muy |tan )*(?:grave|severa|fuerte|mortal)|nada grave|leve) ", text
    ):
        return "severe allergy"
    if (
        how.startswith("no ")
        and "pued" not in how
        and "debe" not in how
        and "debo" not in how
        and not _REACTS.search(text)
    ):
        return "diet"
    if re.search(r" (?:diarrea|sienta (?:mal|fatal)|cae (?:mal|fatal)) ", text) and not how.startswith("alergi"):
        return "intolerance"
    return "allergy"


def harden(message: Message, found: list[Intent]) -> list[Intent]:
    """ "Alergia al maní. Es grave.": a sentence of its own that says how bad it is makes the allergies severe."""
    if not _SEVERE.search(f" {message.plain} ") or _MILD.search(f" {message.plain} "):
        return found
    alone = [
        s for s in message.sentences if _SEVERE.search(s.text) and not re.search(rf" (?:{any_of('allergen')}) ", s.text)
    ]
    if not alone:
        return found
    return [
        replace(i, needs=tuple(replace(n, severity="severe allergy") if n.severity == "allergy" else n for n in i.needs))
        if isinstance(i, SetNeeds) and not i.cleared else i
        for i in found
    ]  # fmt: skip


def _count(text: str, at: int) -> int:
    """ "2 somos veganos", "en casa somos 2 veganos": how many, where it is said right before."""
    before = text[: at + 1]
    said = re.search(
        r" ([0-9]{1,2}) (?:(?:de (?:nosotr[oa]s|ell[oa]s|l[oa]s [a-z0-9]+|mis [a-z]+) )?(?:somos|son|personas son|comen|no comen|no comemos)|personas?|adultos?|niñ[oa]s?|invitad[oa]s?)? ?$",
        before,
    )
    if said is None and re.search(r" (?:todos )?somos $", before):
        said = re.search(r" (?:somos|vamos|seremos) ([0-9]{1,2}) ", text)  # "somos 2 y somos veganos"
    return int(said[1]) if said and int(said[1]) > 0 else 1


def _member(text: str) -> str | None:
    match = re.search(rf" (?:mi|la|el|nuestr[oa]|su) ({any_of('kin')})(?= |$)", text)
    return match[1] if match else None
