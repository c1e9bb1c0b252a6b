"""Things without "I'll bring": a reply to the bot that names a dish, or only a number below its question."""

# ruff: noqa: E501 - a pattern is easier to read on one line

from __future__ import annotations

import re
from dataclasses import replace

from planning.amounts import unit_of
from planning.replies.english.lexicon import NUMBER, any_of, number_of, words
from planning.replies.english.nouns import is_ingredient
from planning.replies.english.offers import added
from planning.replies.english.sizes import Behind, amount_behind
from planning.replies.english.things import things_at
from planning.replies.intents import AddPromise, ChangePromise, Intent, ReplyContext
from planning.replies.text import Sentence, Token

BARE = 0.72
"""How sure a dish is that was only named, without an amount."""
KNOWN_HALF, HEATED = 0.5, 0.85
_IDIOMS = ("table", "place", "seat", "seats", "chair", "room", "spot")
"""What is kept for people who come ("table for two")."""
MOST_STRANGE = 6
"""Beside more words nobody knows here, a dish that is only named is part of a story."""
_MARVELS = frozenset(("those", "these", "such", "ooh", "wow", "mmm"))
"""Who begins so speaks of a dish that is there."""
_FIRST_PERSON = re.compile(r" (?:i|we|me|us|my|our|mine|ours) ")
_HOW_MANY = re.compile(
    rf"^ (?:(?:about|around|enough|for|roughly|maybe|say|call|let us|put|reckon|count|like|probably|it|will|feed|feeds|serves|is|up|to|make|just|only|the|all|do not know|not sure|no idea|hmm|um|uh|oh|well|i think|i guess|should|be|can|would|,) )*(?P<n>[0-9]{{1,6}}|{NUMBER}|(?:half )?an? dozen|two dozen)(?:(?: ,)?(?: (?:or|to|maybe|perhaps|-))+ (?P<hi>[0-9]{{1,6}}|{NUMBER}))?(?: (?:people|servings|portions|or so|i think|eaters|guests|ish|of us|really|i guess|maybe|i suppose|adults|portions|,|at least|at most))*(?= $)"
)
_FOR_EVERYBODY = re.compile(
    r"^ (?:(?:enough|plenty|for|to feed|feeds|serves|it|is|should|will|do|be|about) )*(?:everyone|everybody|all of us|the lot of us|the whole (?:lot|group|gang|crowd|party)|us all|all|the lot)(?= $)"
)


def read_bare(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """ "slaw for 12": things without "I'll bring", in what is left of a reply to the bot."""
    if context.asked == "servings" or (sentence.tokens[0].plain in _MARVELS and context.asked is None):
        return []
    found: list[Intent] = []
    i, sized_any, firm = 0, False, set[int]()
    edges = (",", "and", "+", "&", "-", "–", "plus", "with", "also", ":", "but", "so")
    while i < len(sentence.tokens):
        plain = sentence.tokens[i].plain
        if i > 1 and sentence.tokens[i - 1].plain == ":" and not sentence.free(i - 2):
            break  # "two salads: one greek, one potato"
        much = i < len(sentence.tokens) and plain in ("many", "much", "few")
        start_here = i == 0 or not sentence.free(i - 1) or sentence.tokens[i - 1].plain in edges
        if much or not sentence.free(i) or plain in edges or not start_here:
            i += 1
            continue
        things = things_at(sentence, i, len(sentence.tokens), bare=True, loose=context.asked == "bring")
        things = [t for t in things if not t.other and t.dish.lower() not in _IDIOMS]
        if not things or {t.plain for t in sentence.tokens[max(0, i - 3) : i]} & {"if", "unless", "where"}:
            i += 1
            continue  # "if there's cake I'm there"
        whole = (
            things[-1].last >= len(sentence.tokens)
            or not sentence.free(things[-1].last)
            or sentence.tokens[things[-1].last].plain in (",", "and", "-", "+", "(", ":")
        )
        only_if = not whole and context.asked == "bring" and sentence.tokens[things[-1].last].plain in ("if", "unless")
        if not whole and not only_if:
            i += 1
            continue
        # "Green salad for 20 and dressing": an amount of one makes a list of it.
        sized = any((t.servings or t.quantity or t.for_all) and t.category != "supplies" for t in things) and not re.search(
            r" (?:maybe|perhaps|possibly|might|or) ", sentence.text
        )
        sized_any = sized_any or sized
        first, last = things[0].first, things[-1].last
        own_words = " ".join(t.plain for t in sentence.tokens[first:last])
        mine = re.search(r" (?:(?:from|on|by|with) (?:me|us)|coming (?:your way|up|from (?:me|us)|with (?:me|us))|incoming|on (?:the|its|it is) way)\b", " " + own_words) is not None
        confidence = 0.9 if sized or mine or context.asked == "bring" else BARE
        if only_if:
            confidence = 0.7  # "pasta salad if nobody else has one"
        if mine and whole and (i == 0 or sentence.tokens[i - 1].plain == ","):
            firm |= {sentence.tokens[t.first].start for t in things}
        found += added(sentence, context, things, i, "", "", confidence)
        i = things[-1].last
    found = _kinds(found)
    left = {t.plain for i, t in enumerate(sentence.tokens) if sentence.free(i) and t.plain[0].isalpha()}
    strange = left - words("filler").keys()
    if not strange or context.asked == "bring":
        return found
    if (
        strange & words("tells").keys()
        or len(strange) > MOST_STRANGE
        or not (sized_any or _FIRST_PERSON.search(sentence.text))
    ):
        return []  # the dish is part of a sentence that says something else
    return [i if i.start in firm else replace(i, confidence=min(i.confidence, 0.6)) for i in found]


def read_heated(sentence: Sentence, context: ReplyContext) -> list[AddPromise]:
    """What is beside words about cooking and is one thing to its last word, though the table does not know its name."""
    things = things_at(sentence, 0, len(sentence.tokens))
    if len(things) != 1 or things[0].last < len(sentence.tokens) or things[0].vague or things[0].other:
        return []
    if things[0].known < KNOWN_HALF or any(w in words("tells") for w in things[0].dish.lower().split()):
        return []
    found = added(sentence, context, things, 0, "", "", HEATED)
    return [replace(i, confidence=HEATED) for i in found if isinstance(i, AddPromise) and not i.conditional]


def _kinds(found: list[Intent]) -> list[Intent]:
    """ "Samosas - 30 veg, 20 lamb": amounts of plain ingredients behind a dish without one are kinds of that dish."""
    first = found[0] if len(found) > 1 else None
    if not isinstance(first, AddPromise) or first.servings or first.quantity or _plain_food(first.dish):
        return found
    if not all(isinstance(i, AddPromise) and i.quantity and _plain_food(i.dish) for i in found[1:]):
        return found
    return [replace(first, end=found[-1].end, confidence=BARE)]


def _plain_food(dish: str) -> bool:
    return is_ingredient(dish.lower()) or dish.lower() in words("diet") or dish.lower() in ("veg", "meat", "plain")


def read_servings(sentence: Sentence, context: ReplyContext) -> list[Intent]:
    """Below "how many will it feed?": the number alone, for the newest promise."""
    if not context.own_promises:
        return []
    match = _HOW_MANY.match(sentence.left)
    if match is None and (loose := _one_number(sentence)) is not None:
        start, end = sentence.span(0, len(sentence.tokens))
        sentence.take(0, len(sentence.tokens))
        return [ChangePromise(context.own_promises[-1][0], servings=loose, start=start, end=end, confidence=0.85)]
    if match is None:
        if (whole := _FOR_EVERYBODY.match(sentence.left)) is None:
            return []
        start, end = sentence.span_of(whole)
        sentence.take(0, len(sentence.tokens))
        return [ChangePromise(context.own_promises[-1][0], for_all=True, start=start, end=end, confidence=0.9)]
    start, end = sentence.span_of(match)
    n = (number_of(match["n"]) + number_of(match["hi"] or match["n"])) / 2
    return [ChangePromise(context.own_promises[-1][0], servings=n, start=start, end=end, confidence=0.92)]


_OR_SO_MANY = re.compile(rf"^ {NUMBER} , or ")


def _one_number(sentence: Sentence) -> float | None:
    """The only number, or the middle of the only range, in a short answer to the question for how many it is."""
    found = [
        m for t in sentence.tokens if (m := re.fullmatch(r"([0-9]{1,4})(?:[-–]([0-9]{1,4}))?", t.plain)) is not None
    ]
    plain = {t.plain for t in sentence.tokens}
    if _OR_SO_MANY.match(sentence.text) and (first := _HOW_MANY.match(f" {sentence.tokens[0].plain} ")) is not None:
        return float(number_of(first["n"]))  # "six, or two teenagers"
    if len(found) == 1 and sentence.tokens[1:2] and sentence.tokens[1].plain == "," and sentence.tokens[0].plain == found[0][0]:
        return (int(found[0][1]) + int(found[0][2] or found[0][1])) / 2  # "6, or two teenagers"
    if (
        len(found) != 1
        or len(sentence.tokens) > 9
        or any(unit_of(w) is not None for w in plain)
        or (plain & {"not", "or", "but", "of", "us", "we", "if"} and not sentence.tokens[0].plain[0].isdecimal())
    ):
        return None
    low = int(found[0][1])
    return (low + int(found[0][2] or low)) / 2


_OWN_VESSEL = re.compile(
    rf" (?:a |one |the |my |our )?(?:(?:{any_of('sizeword')}) )*(?:{any_of('vessel')})(?: full| of it)? "
)


def read_amount(sentence: Sentence, before: list[Intent]) -> bool:
    """ "Salad from me! Maybe 10 portions": a sentence that is only an amount goes to the dish before it."""
    last = before[-1] if before else None
    if not isinstance(last, AddPromise) or last.servings or last.quantity or last.vague or len(sentence.tokens) > 8:
        return False
    dish = [Token(word, word, 0, 0) for word in last.dish.lower().split()]
    behind = amount_behind(sentence.tokens, 0, len(sentence.tokens), dish)
    if _OWN_VESSEL.fullmatch(sentence.text):
        sentence.take(0, len(sentence.tokens))
        return True  # "Big bowl." says no more than that there is enough
    if behind is None and re.fullmatch(rf" (?:(?:about|around|maybe|say|like|roughly) )?(?:[0-9]{{1,4}}|{NUMBER}) of (?:them|those|these|em) ", sentence.text):
        behind = Behind(len(sentence.tokens), None, sentence.tokens[-3].raw)
    if (
        behind is None
        or behind.after < len(sentence.tokens)
        or not (behind.servings or behind.quantity or behind.for_all)
    ):
        return False
    said = {t.plain for t in sentence.tokens}
    if behind.servings and not said & (words("eaters").keys() | words("feeds").keys()):
        return False  # "10" alone may be people
    end = sentence.tokens[-1].end
    before[-1] = replace(last, servings=behind.servings, quantity=behind.quantity, for_all=behind.for_all, end=end)
    return True
