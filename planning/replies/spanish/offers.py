"""Who brings what, and how much of it: the ways to offer, the things behind (or before) them."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from planning.replies.intents import AddPromise, Intent, ReplyContext, TakeTopping
from planning.replies.spanish.company import runs
from planning.replies.spanish.lexicon import PLAIN, words
from planning.replies.spanish.members import groups
from planning.replies.spanish.names import known_dish
from planning.replies.spanish.things import Thing, attached, read_things
from planning.replies.spanish.ways import AFTER, ELIDED, ELSE, IF_NONE, LATER, VERB
from planning.replies.text import Sentence

_NO_DISH = frozenset(("nosotros", "nosotras", "conmigo", "ustedes", "vosotros", "retraso", "ganas", "gusto", "mucho", "mucha", "toda", "muchas", "fiebre", "gripe", "prisa", "hambre", "cuidado", "ilusion", "todo", "todos"))  # fmt: skip
"""What one comes with, or counts on, that is no dish."""


def read_promises(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """The things this sentence offers."""
    if sentence.question:
        return []
    text = sentence.text
    if (lacking := IF_NONE.search(text)) is not None:
        made = _before_only(sentence, lacking, context)
        if made:
            return made
    verb = next((v for v in VERB.finditer(text) if not _denied(text, v)), None)
    if verb is not None and _with_persons(sentence, verb, context):
        later = VERB.finditer(text, verb.end() - 1)
        verb = next((v for v in later if not _denied(text, v) and not _with_persons(sentence, v, context)), None)
    if verb is not None and not ELSE.match(text[verb.end() :]):
        made = offered(sentence, verb.end(), context)
        if made:
            first = text[: verb.start()].rstrip(" ,")
            return _held_back(made, text, verb.start()) if first else _held_back(made, text, 0)
    after = AFTER.search(text)
    if after is not None and not re.search(r" no $", text[: after.start() + 1]):
        made = _before(sentence, after.start(), context)
        if made:
            made = _with_amount(sentence, after.end(), made)
            return _held_back([*made, *_more_behind(sentence, after.end(), context)], text, 0)
    if verb is not None:
        return []
    if (elided := ELIDED.match(text)) is not None:
        begins = text[: elided.end()].count(" ") - 1
        things, last = read_things([t.plain for t in sentence.tokens], begins, toppings=context.toppings)
        if things and last >= len(sentence.tokens) and all(t.known >= 0.85 for t in things):
            return _held_back(list(_made(sentence, things, context)), text, 0)
    if context.asked in ("bring", "dish", "askdish"):
        return _intents(sentence, *_named(sentence), context)
    return _bare(sentence, context) if context.addressed or context.near_board else []


def offered(sentence: Sentence, at: int, context: ReplyContext) -> list[Intent]:
    """The things from that place of the sentence's text on; further ones behind another verb of bringing."""
    text, found = sentence.text, []
    while True:
        first = text.count(" ", 0, at + 1) - 1 if at < len(text) else len(sentence.tokens)
        first = next((i for i in range(len(sentence.tokens)) if sentence.offset(i) >= at), len(sentence.tokens))
        said = [t.plain for t in sentence.tokens[: _others_from(sentence, first, context)]]
        things, last = read_things(said, first, toppings=context.toppings)
        found += list(_made(sentence, things, context))
        again = next((v for v in VERB.finditer(text, max(0, sentence.offset(last) - 1)) if not _denied(text, v)), None)
        if again is None or again.end() <= at or ELSE.match(text[again.end() :]) or _with_persons(sentence, again, context):
            return found
        at = again.end()


def _others_from(sentence: Sentence, first: int, context: ReplyContext) -> int:
    """Where in a list of things another guest's begin: "llevo la carne y Pat el postre"."""
    names = {n.casefold().translate(PLAIN).split()[0] for g, n in context.guests if g != context.writer and n.strip()}
    for i in range(first + 1, len(sentence.tokens)):
        token = sentence.tokens[i]
        if not token.raw[:1].isupper() or sentence.tokens[i - 1].plain not in ("y", "e", ","):
            continue
        article = i + 1 < len(sentence.tokens) and sentence.tokens[i + 1].plain in ("el", "la", "los", "las", "un", "una")
        if token.plain in names or (article and known_dish(token.plain) is None and token.plain not in words("head")):
            return i - 1
    return len(sentence.tokens)


def _before_only(sentence: Sentence, found: re.Match[str], context: ReplyContext) -> list[Intent]:
    """What is brought if nobody else brings it."""
    first = next((i for i in range(len(sentence.tokens)) if sentence.offset(i) >= found.start("what")), 0)
    said = [t.plain for i, t in enumerate(sentence.tokens) if sentence.offset(i) < found.end("what")]
    things, last = read_things(said, first, toppings=context.toppings)
    if not things or last < len(said):
        return []
    made = _with_amount(sentence, found.start("much") + 1, list(_made(sentence, things, context)))
    return [
        replace(i, conditional=True, confidence=min(0.75, i.confidence)) if isinstance(i, AddPromise) else i
        for i in made
    ]


def _with_amount(sentence: Sentence, at: int, made: list[Intent]) -> list[Intent]:
    """ "Arroz de mi parte, un caldero grande": how much, told last."""
    said = [t.plain for t in sentence.tokens]
    i = next((i for i in range(len(said)) if sentence.offset(i) >= at - 1), len(said))
    while i < len(said) and said[i] == ",":
        i += 1
    last = made[-1]
    if i >= len(said) or not isinstance(last, AddPromise):
        return made
    more = attached(said, i, Thing(0, i, (0, i), servings=last.servings, quantity=last.quantity))
    if more is None:
        return made
    end = sentence.tokens[more[1] - 1].end
    return [
        *made[:-1],
        replace(last, servings=more[0].servings, quantity=more[0].quantity, for_all=more[0].for_all, end=end),
    ]


def _more_behind(sentence: Sentence, at: int, context: ReplyContext) -> list[Intent]:
    again = VERB.search(sentence.text, max(0, at - 1))
    return offered(sentence, again.end(), context) if again is not None and not _denied(sentence.text, again) else []


def _made(sentence: Sentence, things: Sequence[Thing], context: ReplyContext) -> Iterator[Intent]:
    for thing in things:
        first, last = thing.name
        tokens = sentence.tokens[first:last]
        name = " ".join(t.raw for k, t in enumerate(tokens) if not k or t.start != tokens[k - 1].start)
        plain = " ".join(t.plain for t in tokens)
        start = sentence.tokens[thing.first].start
        end = sentence.tokens[thing.last - 1].end
        topping = next((t for t in context.toppings if _is_topping(t, name, plain)), None)
        if topping is not None:
            yield TakeTopping(topping, start=start, end=end, confidence=0.9)
            continue
        if thing.vague:
            yield AddPromise(plain, thing.category, thing.servings, vague=True, start=start, end=end, confidence=0.85)
            continue
        yield AddPromise(
            name, thing.category, thing.servings, thing.quantity, for_all=thing.for_all, start=start, end=end,
            confidence=thing.known,
        )  # fmt: skip


def _is_topping(topping: str, name: str, plain: str) -> bool:
    if topping.casefold() in (name.casefold(), plain):
        return True
    dish = known_dish(plain)
    return dish is not None and topping.casefold() in (dish.name, *dish.aliases)


def _intents(sentence: Sentence, first: int, last: int, context: ReplyContext) -> list[Intent]:
    said = [t.plain for t in sentence.tokens[:last]]
    things, _ = read_things(said, first, toppings=context.toppings)
    return list(_made(sentence, things, context))


def _named(sentence: Sentence) -> tuple[int, int]:
    """Where the answer to "what do you bring?" begins: behind "pues", "yo", "creo que"."""
    first = 0
    said = [t.plain for t in sentence.tokens]
    while first < len(said) and said[first] in (
        "pues",
        "yo",
        "nosotros",
        "creo",
        "que",
        ",",
        "seria",
        "sera",
        "entonces",
        "bueno",
        "mmm",
        "ok",
        "vale",
        "dale",
        "si",
        "va",
        "venga",
        "quiza",
        "con",
        "nosotras",
        "mejor",
        "serian",
        "seran",
        "ahi",
    ):
        first += 1
    return first, len(said)


def _before(sentence: Sentence, at: int, context: ReplyContext) -> list[Intent]:
    """The things told before that place: the whole clause must be their list."""
    said = [t.plain for i, t in enumerate(sentence.tokens) if sentence.offset(i) < at]
    best: list[Intent] = []
    for first in range(len(said)):
        if first and said[first - 1] not in (
            ",",
            "y",
            "pero",
            "que",
            "pues",
            "entonces",
            "bueno",
            ":",
            "del",
            "de",
            "familia",
            "si",
            "voy",
            "vamos",
            "por",
            "cae",
            "caen",
            "va",
            "van",
            "habra",
            "hay",
            "llega",
            "llegan",
            "sale",
            "salen",
        ):
            continue
        things, last = read_things(said, first, toppings=context.toppings)
        if things and last >= len(said):
            best = list(_made(sentence, things, context))
            break
    return [i for i in best if not isinstance(i, AddPromise) or i.category or i.vague]


def _bare(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "2 adultos, arroz rojo para 12": known dishes that stand by themselves between commas, said to the bot."""
    found: list[Intent] = []
    said = [t.plain for t in sentence.tokens]
    i = 0
    persons = {k for run in runs(sentence, context) for k in range(run.first, run.last)}
    while i < len(said):
        if i in persons or (i + 1 in persons and said[i] == "con"):
            i += 1
            continue
        if i and said[i - 1] not in (",", "y", "+", ":", "mas", "-", "&"):
            i += 1
            continue
        things, last = read_things(said, i, toppings=context.toppings)
        closed = last >= len(said) or said[last] in (",", ".", "pero", "y")
        least = 0.86 if i == 0 and last >= len(said) else 0.9  # nothing but things: they need not be in the catalogue
        kept = [t for t in things if t.known >= least and t.category and not t.vague]
        if kept and closed and len(kept) == len(things):
            found += _made(sentence, kept, context)
            i = last
        i += 1
    return found


def _denied(text: str, verb: re.Match[str]) -> bool:
    return (
        re.search(
            r" (?:no|ni|tampoco|nunca|jamas|sin) (?:(?:lo|la|los|las|les|te|os|me|nos|se|le|yo|ya|voy a) )*$",
            text[: verb.start() + 1],
        )
        is not None
    )


def _with_persons(sentence: Sentence, verb: re.Match[str], context: ReplyContext) -> bool:
    """ "Voy con mi esposa", "llevo a mi hermana", "cuenten con nosotros": persons, no food."""
    if re.search(r" (?:con|mi|mis|nuestr[oa]s?) $", verb[0] + " ") is None:
        return False
    said = [t.plain for i, t in enumerate(sentence.tokens) if sentence.offset(i) >= verb.end()]
    if verb[0].split()[-1] in ("mi", "mis"):
        said = ["mi", *said]
    if not said:
        return False
    at = len(sentence.tokens) - len(said) + (verb[0].split()[-1] in ("mi", "mis"))
    if any(run.first <= at < run.last for run in runs(sentence, context)):
        return True
    told = groups(said[:6])
    if told and told[0].first <= 1:
        return True
    counted = said[0].isdecimal() and (len(said) < 2 or said[1] in ("personas", "de", ",", "mas", "adultos"))
    return counted or said[0] in _NO_DISH


def _held_back(made: list[Intent], text: str, before: int) -> list[Intent]:
    """On a condition ("si nadie trae hielo") or perhaps: asked about."""
    if LATER.search(text) is None:
        return made
    return [
        replace(i, conditional=True, confidence=min(i.confidence, 0.75)) if isinstance(i, AddPromise) else i
        for i in made
    ]
