"""Who brings what, from a table of phrases: "I bring # litres of juice and a salad for #"."""

from __future__ import annotations

import re

from planning.dishes import lookup
from planning.dishes.index import dish_in
from planning.replies.intents import AddPromise, ChangePromise, DropPromise, Intent, ReplyContext, TakeTopping
from planning.replies.text import Sentence
from planning.replies.worded.words import Words
from planning.tables import in_languages

LONGEST_NAME = 6
"""More words than these are a story and no dish."""


def read_promises(sentence: Sentence, words: Words, context: ReplyContext) -> list[Intent]:
    """Promises, changed amounts of one's own and what is no longer brought."""
    text = sentence.text
    if (gone := words.find("drop", text)) is not None:
        mine = context.own_promise_in(text)
        if mine is None and len(context.own_promises) == 1:
            mine = context.own_promises[0][0]
        if mine is None:
            return []
        start, end = sentence.span_of(gone)
        return [DropPromise(mine, dict(context.own_promises)[mine], start=start, end=end, confidence=0.82)]
    brought = words.find("bring", text)
    if brought is None:
        many = words.find("for", text)
        mine = context.own_promise_in(text)
        if many is not None and mine is not None and (n := words.number_in(many)) is not None:
            start, end = sentence.span_of(many)
            return [ChangePromise(mine, float(n), start=start, end=end, confidence=0.82)]
        return _things(sentence, 0, words, context) if context.asked in ("bring", "dish", "askdish") else []
    return _things(sentence, brought.end(), words, context)


def _things(sentence: Sentence, at: int, words: Words, context: ReplyContext) -> list[Intent]:
    region = sentence.text[at:]
    if (stop := words.find("stop", region)) is not None:
        region = region[: stop.start()]
    doubtful = words.find("not", sentence.text) is not None
    for_all = words.find("for-all", region) is not None
    found: list[Intent] = []
    offset = at
    for i, piece in enumerate(re.split(rf"((?<= )(?:,|{words.any_of('and')})(?= ))", region)):
        start, offset = offset, offset + len(piece)
        if i % 2:
            continue  # what stood between two things
        made = _thing(sentence, start, f" {piece.strip()} ", words, context, for_all)
        if isinstance(made, AddPromise) and doubtful:
            made = AddPromise(made.dish, made.category, made.servings, made.quantity, vague=made.vague,
                              start=made.start, end=made.end, confidence=0.6)  # fmt: skip
        if made is not None:
            found.append(made)
    return found


def _thing(
    sentence: Sentence, at: int, piece: str, words: Words, context: ReplyContext, for_all: bool
) -> Intent | None:
    servings = None
    if (many := words.find("for", piece)) is not None:
        number = words.number_in(many)
        servings = float(number) if number is not None else None
        piece = f"{piece[: many.start()]}{piece[many.end() :].lstrip()}"
    if (whole := words.find("for-all", piece)) is not None:
        piece = f"{piece[: whole.start()]}{piece[whole.end() :].lstrip()}"
    vague = words.find("vague", piece)
    if vague is not None and vague[0] == piece.strip():
        category = words.means("vague", vague[0])
        return AddPromise(vague[0], category, servings, vague=True, for_all=for_all, confidence=0.82)
    quantity = None
    amount = re.match(
        rf" (?:(?:{words.any_of('article')}) )?([0-9]+(?:[.,][0-9]+)?)(?: ?({words.any_of('unit')})(?= ))?(?= )", piece
    )
    if amount is not None:
        number_text = amount[1].replace(",", ".")
        unit = words.means("unit", amount[2]) if amount[2] else ""
        quantity = f"{number_text} {unit}".strip() if unit or number_text != "1" else None  # "a salad" is no amount
        piece = piece[amount.end() :]
    elif (one := re.match(rf" (?:{words.any_of('article')}) ({words.any_of('unit')})(?= )", piece)) is not None:
        quantity = f"1 {words.means('unit', one[1])}"
        piece = piece[one.end() :]
    name = _without_articles(piece, words).strip(" ,")
    if not name or not re.search(r"[^\W\d]", name) or len(name.split()) > LONGEST_NAME:
        return None
    dish, start, end = _as_typed(sentence, name, at)
    topping = next((t for t in context.toppings if t.casefold() == dish.casefold()), None)
    if topping is not None:
        return TakeTopping(topping, start=start, end=end, confidence=0.85)
    category, sure = category_of(dish, words.language)
    return AddPromise(dish, category, servings, quantity, for_all=for_all, start=start, end=end, confidence=sure)


def _without_articles(piece: str, words: Words) -> str:
    """ "some of my salad" -> "salad"; an article that ends in an apostrophe hangs on the word."""
    article = words.any_of("article")
    before = None
    while before != piece:
        before = piece
        piece = re.sub(rf"^ *(?:{article})(?: |(?<='))(?=\S)", " ", piece)
    return piece


def _as_typed(sentence: Sentence, name: str, at: int) -> tuple[str, int, int]:
    """The name as its writer typed it, and where; the elided article stays out."""
    text = sentence.text
    first = text.find(name, max(0, at - 1))
    if first < 0:
        return name, 0, 0
    tokens = [t for i, t in enumerate(sentence.tokens) if first - 3 < sentence.offset(i) < first + len(name)]
    tokens = [t for t in tokens if t.plain in name.split() or any(t.plain.endswith(w) for w in name.split()[:1])]
    if not tokens:
        return name, 0, 0
    lead = len(tokens[0].plain) - len(name.split()[0])
    raws = [tokens[0].raw[max(0, lead) :], *(t.raw for t in tokens[1:])]
    return " ".join(raws), tokens[0].start + max(0, lead), tokens[-1].end


def category_of(name: str, language: str) -> tuple[str, float]:
    """(category, how sure): by the language's own table of dishes, else by the catalogue's guess. What neither knows
    is asked about."""
    if language in in_languages("dishes"):
        said = name.split()
        for n in range(len(said), 0, -1):
            if (known := dish_in(language, " ".join(said[:n]))) is not None:
                return known.category, 0.9 if n == len(said) else 0.82
    guess = lookup(name)
    if guess.category is not None and guess.confidence >= 0.8:
        return guess.category, 0.82
    return "", 0.6
