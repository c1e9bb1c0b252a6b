"""Who brings what, and how much of it."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from functools import cache

from planning.dishes import lookup
from planning.dishes.index import dish_in
from planning.replies.intents import AddPromise, ChangePromise, DropPromise, Intent, ReplyContext, TakeTopping
from planning.replies.spanish.lexicon import any_of, value_of
from planning.replies.text import Sentence

_BRING = (
    r"(?:llevo|llevamos|llevare|llevaremos|llevaria|traigo|traemos|traere|pongo|ponemos|aporto|aportamos|hago|hacemos|hare"
    r"|preparo|preparamos|mando|mandamos|compro|compramos|ofrezco|cocino|horneo)"
)
_VERB = re.compile(
    rf" (?:{_BRING[3:-1]}|(?:puedo|podemos|podria|podriamos|voy a|vamos a|quiero|queremos) (?:llevar|traer|hacer|preparar|poner|aportar|mandar|hornear|comprar)"
    r"|me (?:encargo|ocupo) (?:de|del)|nos (?:encargamos|ocupamos) (?:de|del)|(?:yo )?me pongo con|cuenten con mi|cuenten con mis)(?= )"
)
_NOT = re.compile(
    rf" (?:no|ya no|tampoco|mejor no|al final no) (?:(?:voy a|vamos a|puedo|podemos|podre) (?:llevar|traer|hacer)|{_BRING[3:-1]})(?= |$)(?! (?:nada))"
)
_STOP = re.compile(
    r" (?:porque|pero|aunque|si |cuando|para que|(?<! lo) que (?!lleva)|a las |el (?:sabado|domingo|viernes)|de parte|desde|(?:y )?(?:soy|somos|es|son|tengo|tenemos) (?:alergic|intoleran|celiac|vegan|vegetarian|alergia)|gracias|nos vemos|con mucho)"
)
_FOR = re.compile(
    r" (?:para|como para|que alcance para|alcanza para)(?: (?:unas|unos|como|aprox|todos los|las|los))? ([0-9]{1,4})(?: (?:personas|porciones|gente|invitados|comensales))?(?= |$)| ([0-9]{1,4}) (?:porciones|raciones)(?= |$)"
)
_ALL = re.compile(r" (?:para|que alcance para) tod[oa]s(?: (?:nosotros|ustedes))?(?= |$)")
_LEAD = re.compile(
    r"^(?: (?:yo|nosotros|tambien|y|mi|mis|nuestro|nuestra|su|famos[oa]s?|ric[oa]s?|el|la|los|las|un|una|unos|unas|algo de|algunos|algunas|de|del|casero|de mi|con))+(?= )"
)


@cache
def _amount() -> re.Pattern[str]:
    return re.compile(
        rf"^ (?:unos |unas |como |aprox )?(?:(?P<n>[0-9]+(?:[.,][0-9]+)?|un|una|medio|media)(?: y (?P<half>medio|media))?"
        rf"|(?=(?:kilo|litro|docena) ))(?: ?(?P<unit>{any_of('unit')})(?: y (?P<after>medio|media))?(?: de| del)?)?(?= )"
    )


def read_promises(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Promises, changes of one's own and what is no longer brought."""
    if sentence.question:
        return []
    dropped = _dropped(sentence, context)
    if dropped:
        after = _VERB.search(sentence.text, dropped[1])
        return [*dropped[0], *(_things(sentence, after.end(), context) if after is not None else [])]
    if (swapped := _swapped(sentence, context)) is not None:
        return swapped
    changed = _changed(sentence, context)
    if changed:
        return changed
    text = sentence.text
    verb = _VERB.search(text)
    if verb is None:
        if context.asked in ("bring", "dish", "askdish"):
            return _things(sentence, 0, context)
        return _bare(sentence, context) if context.addressed else []
    if re.search(r" no $| ya no $| tampoco $| nunca $", text[: verb.start() + 1]):
        return []
    rest = text[verb.end() :]
    if re.match(r" (?:nada|[0-9]+ (?:horas?|dias?|minutos?|años?))(?= |$)", rest):
        return []
    return _things(sentence, verb.end(), context)


def _bare(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "2 adultos, arroz rojo para 12": a known dish that stands by itself between commas, said to the bot."""
    found: list[Intent] = []
    offset = 0
    for piece in re.split(r"( ,| y )", sentence.text):
        start, offset = offset, offset + len(piece)
        if not piece.strip(" ,"):
            continue
        made = _thing(sentence, start, f" {piece.strip()} ", context, for_all=False)
        if isinstance(made, AddPromise) and made.category and not made.vague and dish_in("es", made.dish) is not None:
            found.append(made)
    return found


def _things(sentence: Sentence, at: int, context: ReplyContext) -> list[Intent]:
    text = sentence.text
    stop = _STOP.search(text, at)
    end = stop.start() if stop is not None else len(text)
    region = text[at:end]
    for_all = _ALL.search(region) is not None
    found: list[Intent] = []
    offset = at
    for piece in re.split(r"( ,| y (?!medi[oa] )| e | mas | ademas )", region):
        start, offset = offset, offset + len(piece)
        if not piece.strip(" ,") or piece in (" ,", " y ", " e ", " mas ", " ademas "):
            continue
        made = _thing(sentence, start, f" {piece.strip()} ", context, for_all)
        if made is not None:
            found.append(made)
    return found


def _thing(sentence: Sentence, at: int, piece: str, context: ReplyContext, for_all: bool) -> Intent | None:
    if (again := _VERB.search(piece)) is not None and re.fullmatch(
        r" *(?:yo|tambien|luego)? *", piece[: again.start() + 1]
    ):
        piece = piece[again.end() :]
    servings: float | None = None
    if (many := _FOR.search(piece)) is not None:
        servings = float(many[1] or many[2])
        piece = piece[: many.start()] + " " + piece[many.end() :]
    piece = _ALL.sub(" ", piece)
    vague = re.fullmatch(
        rf" (?:(?:yo|tambien|el|la) )*({any_of('vague')})(?: (?:rico|rica|bueno|buena|para compartir))? *", piece
    )
    if vague is not None and not (value_of("vague", vague[1]) and servings):
        category = value_of("vague", vague[1])
        return AddPromise(vague[1], category, servings, vague=True, confidence=0.85)
    quantity = None
    lead = _LEAD.match(piece)
    amount = _amount().match(piece)
    counted = amount is not None and (amount["unit"] is not None or amount["n"][0].isdigit())
    if lead is not None and not counted:
        piece = piece[lead.end() :]
        amount = _amount().match(piece)
        counted = amount is not None and (amount["unit"] is not None or amount["n"][0].isdigit())
    if amount is not None and counted:
        quantity = _quantity(amount)
        piece = piece[amount.end() :]
        if (lead := _LEAD.match(piece)) is not None:
            piece = piece[lead.end() :]
    name = re.sub(r" (?:casero|casera|caseros|caseras|de mi abuela|si quieren|por favor|tambien) *$", " ", piece).strip(
        " ,"
    )
    if not name:
        return None
    original, start, end = _as_typed(sentence, name, at)
    category, sure = category_of(original)
    if context.toppings and (
        topping := next((t for t in context.toppings if t.casefold() == original.casefold()), None)
    ):
        return TakeTopping(topping, start=start, end=end, confidence=0.9)
    if not category and len(name.split()) > 5:
        return None
    return AddPromise(original, category, servings, quantity, for_all=for_all, start=start, end=end, confidence=sure)


def _quantity(amount: re.Match[str]) -> str:
    """As the tables of amounts read it: "1.5 kilos"."""
    number = {None: 1.0, "un": 1.0, "una": 1.0, "medio": 0.5, "media": 0.5}.get(amount["n"])
    value = number if number is not None else float(amount["n"].replace(",", "."))
    if amount["half"] or amount["after"]:
        value += 0.5
    return f"{value:g} {amount['unit']}" if amount["unit"] else f"{value:g}"


def _as_typed(sentence: Sentence, name: str, at: int) -> tuple[str, int, int]:
    """The name as its writer typed it, and where."""
    found = re.search(re.escape(f" {name} "), sentence.text[max(0, at - 1) :])
    if found is None:
        return name, 0, 0
    first = max(0, at - 1) + found.start() + 1
    tokens = [t for i, t in enumerate(sentence.tokens) if first <= sentence.offset(i) < first + len(name)]
    if not tokens:
        return name, 0, 0
    return " ".join(t.raw for t in tokens), tokens[0].start, tokens[-1].end


def category_of(name: str) -> tuple[str, float]:
    """(category, how sure): by the Spanish table, by its first words, else by the catalogue's own guess."""
    known = dish_in("es", name)
    if known is not None:
        return known.category, 0.9
    words = name.split()
    for n in range(len(words) - 1, 0, -1):
        if (known := dish_in("es", " ".join(words[:n]))) is not None:
            return known.category, 0.86
    guess = lookup(name)
    if guess.category is not None and guess.confidence >= 0.8:
        return guess.category, 0.85
    return "", 0.6


def _swapped(sentence: Sentence, context: ReplyContext) -> list[Intent] | None:
    """ "cambio el slaw por guacamole", "en vez de slaw llevo flan": the one goes, the other comes."""
    text = sentence.text
    found = re.search(r" (?:cambio|cambiamos) (?P<old>.+?) por (?P<new>.+) $", text)
    if found is None:
        found = re.search(rf" en (?:vez|lugar) (?:de|del) (?P<old>.+?) ,? ?(?:yo )?{_BRING} (?P<new>.+) $", text)
    if found is None or (mine := context.own_promise_in(f" {found['old']} ")) is None:
        return None
    start, end = sentence.span_of(found)
    gone = DropPromise(mine, dict(context.own_promises)[mine], start=start, end=end, confidence=0.9)
    return [gone, *_things(sentence, found.start("new") - 1, context)]


def _dropped(sentence: Sentence, context: ReplyContext) -> tuple[list[Intent], int] | None:
    """What is no longer brought, and where that was said to its end."""
    found = _NOT.search(sentence.text)
    if found is None or not context.own_promises:
        return None
    mine = context.own_promise_in(sentence.text)
    if mine is None and len(context.own_promises) == 1 and re.search(r" (?:nada|el mio|lo mio) ", sentence.text):
        mine = context.own_promises[0][0]
    if mine is None:
        return None
    start, end = sentence.span_of(found)
    return [DropPromise(mine, dict(context.own_promises)[mine], start=start, end=end, confidence=0.9)], found.end()


def _changed(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    mine = context.own_promise_in(sentence.text)
    many = _FOR.search(sentence.text)
    if mine is None or many is None:
        return []
    start, end = sentence.span_of(many)
    return [ChangePromise(mine, float(many[1] or many[2]), start=start, end=end, confidence=0.86)]
